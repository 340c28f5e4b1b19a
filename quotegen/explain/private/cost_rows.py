"""Rows of the cost sheet: finishes side by side, crew hours, items, lines, and what if."""

from fractions import Fraction

from quotegen.explain.private.owners_sheet import Table, TableRow
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.money import to_cents
from quotegen.pricing.costs.records import (
    CostItem,
    CostKind,
    FinishCosts,
    Floor,
    FloorKind,
    MissingKind,
    What,
    WhatIf,
)
from quotegen.quantity import Unit, decimal_of, decimal_places
from quotegen.trade.wording import unit_key


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


_HOUR_PLACES = 1


def each_finish(words: Words, finishes: tuple[FinishCosts, ...]) -> Table:
    """Set price, cost and margin of every finish side by side."""
    head = ("finish", "cost_price", "cost_cost", "cost_margin", "cost_share", "cost_crew_day",
            "cost_sq_ft", "cost_walk_away")  # fmt: skip
    return Table(
        head=tuple(words(key) for key in head),
        rows=tuple(
            TableRow(
                name=one.name,
                cells=(
                    words.money(one.price),
                    words.money(one.cost),
                    words.signed_money(one.margin),
                    words.signed_percent(one.margin_share),
                    _each(words, one, Fraction(one.crew_days)),
                    _each(words, one, Fraction(one.area_sqft)),
                    words.money(one.walk_away),
                ),
            )
            for one in finishes
        ),
    )


def _each(words: Words, costs: FinishCosts, count: Fraction) -> str:
    return words.signed_money(costs.margin_per(count)) if count else ""


def crew_hours(results: Results, finishes: tuple[FinishCosts, ...]) -> Table:
    """Return the crew hours of each step, one column for each finish."""
    words = results.words
    steps: dict[str, str] = {}
    for one in finishes:
        for item in one.of_kind(CostKind.LABOR):
            steps.setdefault(item.id, item_name(results, item))
    rows = [
        TableRow(name=name, cells=tuple(_hours(words, one, step) for one in finishes))
        for step, name in steps.items()
    ]
    if rows:
        sums = tuple(words.number(one.hours, _HOUR_PLACES) for one in finishes)
        rows.append(TableRow(name=words("total"), cells=sums, strong=True))
    return Table(head=(words("cost_step"), *(one.name for one in finishes)), rows=tuple(rows))


def _hours(words: Words, costs: FinishCosts, step: str) -> str:
    mine = [item.quantity for item in costs.of_kind(CostKind.LABOR) if item.id == step]
    return words.number(sum(mine), _HOUR_PLACES) if mine else ""


def item_name(results: Results, item: CostItem) -> str:
    """Return what an item is called: as the book has it, else in our words."""
    if item.name:
        return item.name
    kind = "material" if item.kind is CostKind.MATERIAL else "cost_item"
    return results.words(f"{kind}_{item.id}")


def quantity_of(words: Words, item: CostItem) -> str:
    """Write the quantity of an item; nothing for a sum that has none."""
    if item.unit in {"", Unit.LUMP.value}:
        return ""
    number = words.number(item.quantity, decimal_places(item.quantity))
    return words.count(f"cost_unit_{unit_key(item.unit)}", item.quantity, number=number)


def item_rate(words: Words, item: CostItem) -> str:
    """Write what one of an item costs, or of what it is a share; nothing for a sum."""
    if item.unit == "%":
        return words("cost_of", amount=words.money(item.rate))
    return "" if item.unit in {"", Unit.LUMP.value} else words.price(item.rate)


def line_rows(words: Words, costs: FinishCosts) -> Table:
    """Return each line of the price against the cost of what is for it alone."""
    head = ("line", "cost_price", "cost_cost", "cost_margin")
    return Table(
        head=tuple(words(key) for key in head),
        rows=tuple(
            TableRow(
                name=line.name,
                cells=(
                    words.money(line.price),
                    "" if line.cost is None else words.money(line.cost),
                    "" if line.margin is None else words.signed_money(line.margin),
                ),
            )
            for line in costs.lines
        ),
    )


def if_rows(results: Results, ifs: tuple[WhatIf, ...]) -> Table:
    """Return what each change does to price, cost and margin."""
    words = results.words
    head = ("cost_if", "cost_price", "cost_if_price", "cost_if_cost", "cost_margin", "cost_share",
            "cost_if_floors")  # fmt: skip
    return Table(
        head=tuple(words(key) for key in head),
        rows=tuple(
            TableRow(
                name=if_name(words, one),
                cells=(
                    words.money(one.price),
                    words.signed_money(one.price_change),
                    words.signed_money(one.cost_change),
                    words.signed_money(one.margin),
                    words.signed_percent(one.margin_share),
                    floors_say(words, one),
                ),
            )
            for one in ifs
        ),
    )


def floors_say(words: Words, one: WhatIf) -> str:
    """Say whether the owner's floors hold."""
    if not one.floors:
        return words("cost_no_floors")
    return words("cost_floors_hold" if one.holds else "cost_floors_break")


def if_name(words: Words, one: WhatIf) -> str:
    """Say what is changed."""
    change = "" if one.change is None else words.signed_percent(one.change)
    if one.what is What.DISCOUNT:
        share = "" if one.change is None else words.percent(one.change)
        money = words.money(abs(one.price_change))
        return words("if_discount_share", share=share, money=money) if share else money
    return words(f"if_{one.what.value}", name=_phase(words, one), change=change)


def _phase(words: Words, one: WhatIf) -> str:
    return words(f"phase_{one.name}") if one.what is What.TWO_PHASES else one.name


def missing_lines(results: Results, costs: FinishCosts) -> tuple[str, ...]:
    """Say what is counted as costing nothing, and what to type."""
    words = results.words
    said = []
    for kind in MissingKind:
        mine = dict.fromkeys(one.name for one in costs.missing if one.kind is kind)
        names = (
            tuple(words(f"material_{name}") for name in mine)
            if kind is MissingKind.MATERIAL
            else tuple(mine)
        )
        if mine:
            said.append(words(f"cost_missing_{kind.value}", names=words.listing(names)))
    return tuple(said)
