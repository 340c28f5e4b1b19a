"""What the cost sheet and the phone sheet both say of the owner's floors, and of a what-if."""

from quotegen.explain.private.owners_sheet import Table, TableRow, table
from quotegen.explain.wording import Words
from quotegen.money import to_cents
from quotegen.pricing.costs.records import FinishCosts, Floor, FloorKind, What, WhatIf
from quotegen.quantity import decimal_of


def floor_verdict(words: Words, costs: FinishCosts) -> str:
    """How far the price is above or below the least that the owner takes, in a sentence."""
    price = words.money(costs.walk_away)
    if not costs.floors:
        return words("floor_none", price=price)
    room = words.money(abs(costs.net_price - costs.walk_away))
    key = "floor_room" if costs.net_price >= costs.walk_away else "floor_short"
    return words(key, price=price, room=room)


def floor_lines(words: Words, costs: FinishCosts) -> tuple[str, ...]:
    """For each floor: what is wanted, what is found, and from which price on it holds."""
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


def what_if_table(
    words: Words,
    ifs: tuple[WhatIf, ...],
    *,
    of: str = "cost_if",
    with_cost: bool = False,
    with_margin: bool = True,
) -> Table:
    """What each change does to price, margin and floors, and on the cost sheet to the cost.

    Args:
        words: of the language.
        ifs: a row for each.
        of: the key of what heads the changes.
        with_cost: whether there is a column for the change of the cost.
        with_margin: whether costs are typed, so that margin and floors are known.
    """
    margin = ("cost_margin", "cost_share", "cost_if_floors") if with_margin else ()
    head = (of, "cost_price", "cost_if_price", *(("cost_if_cost",) if with_cost else ()), *margin)
    rows = (
        TableRow(
            name=_what_if(words, one),
            cells=(
                words.money(one.price),
                words.signed_money(one.price_change),
                *((words.signed_money(one.cost_change),) if with_cost else ()),
                *(_margin(words, one) if with_margin else ()),
            ),
        )
        for one in ifs
    )
    return table(words, head, rows)


def _margin(words: Words, one: WhatIf) -> tuple[str, str, str]:
    """What a change leaves, its share of the price, and whether the floors hold."""
    share = words.signed_percent(one.margin_share)
    return words.signed_money(one.margin), share, floors_hold(words, one)


def floors_hold(words: Words, one: WhatIf) -> str:
    """Whether the owner's floors hold, in words."""
    if not one.floors:
        return words("cost_no_floors")
    return words("cost_floors_hold" if one.holds else "cost_floors_break")


def _what_if(words: Words, one: WhatIf) -> str:
    """What is changed, in words."""
    change = "" if one.change is None else words.signed_percent(one.change)
    if one.what is What.DISCOUNT:
        share = "" if one.change is None else words.percent(one.change)
        money = words.money(abs(one.price_change))
        return words("if_discount_share", share=share, money=money) if share else money
    return words(f"if_{one.what.value}", name=_phase(words, one), change=change)


def _phase(words: Words, one: WhatIf) -> str:
    return words(f"phase_{one.name}") if one.what is What.TWO_PHASES else one.name
