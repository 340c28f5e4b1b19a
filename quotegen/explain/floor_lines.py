"""The owner's floors in sentences."""

from quotegen.explain.wording import Words
from quotegen.money import to_cents
from quotegen.pricing.cost_records import FinishCosts, Floor, FloorKind
from quotegen.quantity import decimal_of


def floor_verdict(words: Words, costs: FinishCosts) -> str:
    """Say in one sentence where the price stands over the least that the owner takes."""
    price = words.money(costs.walk_away)
    if not costs.floors:
        return words("floor_none", price=price)
    room = words.money(abs(costs.net_price - costs.walk_away))
    key = "floor_room" if costs.net_price >= costs.walk_away else "floor_short"
    return words(key, price=price, room=room)


def floor_lines(words: Words, costs: FinishCosts) -> tuple[str, ...]:
    """Say of each floor what is wanted, what is there, and from which price it holds."""
    return tuple(
        words(
            "floor_holds" if floor.holds else "floor_breaks",
            floor=words(f"floor_on_{floor.kind.value}"),
            wanted=_figure(words, floor, wanted=True),
            found=_figure(words, floor, wanted=False),
            price=words.money(floor.price),
        )
        for floor in costs.floors
    )


def _figure(words: Words, floor: Floor, *, wanted: bool) -> str:
    value = floor.wanted if wanted else floor.found
    if floor.kind is FloorKind.MARGIN:
        return words.signed_percent(value)
    return words.signed_money(to_cents(decimal_of(value)))
