"""A second way to work out the pool deck's costs: the rate book read aloud, and a pencil.

Nothing of quotegen is used here. Every figure stands as the example's rate book has it; the
quantities follow the formulas of its order list (324 sq ft x in to the yard, 1.98 tons to a
compacted yard, base 6 in past the forms, laps of 8 in, chairs every 3 ft, 4 % of 564 lb of cement
in a yard). What is bought beyond the measure is usual: 5 %, and 15 % of the sheets cut to a curve.
"""

from decimal import ROUND_HALF_UP, Decimal
from math import ceil
from typing import NamedTuple

D = Decimal
WAGE = D("34.84")  # $26 and 34 %


class Deck(NamedTuple):
    """What of the deck is built."""

    area: Decimal
    formed: Decimal = D("88.7")
    house: Decimal = D("38.8")
    pool: Decimal = D("65.7")
    finish: str = "ashlar"
    base: bool = True
    cast_edge: bool = True
    lawn: bool = True


class Sum(NamedTuple):
    """What it comes to."""

    price: Decimal
    cost: Decimal

    @property
    def margin(self) -> Decimal:
        return self.price - self.cost


PRICES = {"ashlar": D("7.60"), "exposed": D("4.30"), "broom": D("1.90")}
HOURS = {"ashlar": D("3.3"), "exposed": D("2.1"), "broom": D("1.6")}
SUPPLIES = {"ashlar": D("1.45"), "exposed": D("0.95"), "broom": D("0.02")}


def cents(amount: Decimal) -> Decimal:
    """Round as a person does."""
    return amount.quantize(D("0.01"), rounding=ROUND_HALF_UP)


def priced(deck: Deck) -> Decimal:
    """Add up the lines of the price."""
    film, visits = deck.finish != "broom", 5 if deck.finish == "ashlar" else 4
    by_area = [D("4.20"), D("0.80"), D("0.60"), D("0.25"), PRICES[deck.finish]]
    by_area += [D("1.35"), D("1.75")] if deck.base else []
    by_area += [D("0.45"), D("1.05")] if film else [D("0.65")]
    lines = [cents(deck.area * rate) for rate in by_area]
    lines += [cents(deck.formed * D("4.80")), cents(deck.house * D("2.40"))]
    lines += [D(85) * visits, D(180), D(320), D(890)]
    lines += [cents(deck.pool * 38)] if deck.cast_edge else []
    return sum(lines, D(0)) + (D(260) if deck.lawn else D(0))


def people(deck: Deck) -> int:
    """Count who comes, day by day: the crew to form and pour, fewer to saw, wash and seal."""
    crew = {"ashlar": 5, "exposed": 4, "broom": 4}[deck.finish]
    return 2 * crew + crew + 2 + (2 if deck.finish == "ashlar" else 0) + 1


def hours(deck: Deck) -> tuple[Decimal, ...]:
    """List the hours of the crew, work by work, to the hundredth."""
    area, film = deck.area / 100, deck.finish != "broom"
    worked_out = [
        deck.formed * D("0.06") + 1, area * D("0.9") + 1, area * D("0.35"),
        deck.house * D("0.02"), area * D("0.42") + D("0.5"), area * D("0.08"), D(1), D(3),
        area * HOURS[deck.finish] + 1, D("0.25") * people(deck), D("0.25") * people(deck),
    ]  # fmt: skip
    worked_out += [area * D("0.95") + 1, area * D("0.8") + D("0.5")] if deck.base else []
    worked_out += [area * D("0.4"), area * D("0.5") + 1] if film else [area * D("0.3") + 1]
    worked_out += [deck.pool * D("0.3")] if deck.cast_edge else []
    return tuple(map(cents, worked_out))


def materials(deck: Deck) -> Decimal:
    """Add up what the order list buys, with waste."""
    area, stamped, film = deck.area, deck.finish == "ashlar", deck.finish != "broom"
    yards = _yards(area)
    sheets = area / ((D(10) - D(8) / 12) * (D(5) - D(8) / 12))
    coats = _wasted(area * 2 / 150) * 31 if film else _wasted(area / 125) * 36
    bought = [
        yards * 168, _tons(deck) * D("27.50"), _wasted(sheets, 15) * D("10.80"),
        ceil(area / 9) * D("0.45"), _wasted(area, 10) * D("0.06"), coats,
        _wasted(deck.house) * D("0.55"),
        ceil(deck.pool) * D("0.20"), ceil(deck.pool) * D("0.65"),  # sheet and mastic at the beam
    ]  # fmt: skip
    if stamped:
        color = ceil(D("0.04") * 564 * yards) * D("2.15")
        bought += [color, ceil(area * D("3.5") / 100) * D("1.90")]
    bought += [ceil(cents(area * 2 / 150) * D("0.2")) * D(6)] if film else []
    bought += [ceil(area / 150) * D(34)] if deck.finish == "exposed" else []
    return sum(map(cents, bought), D(0))


def _wasted(needed: Decimal, waste: int = 5) -> Decimal:
    """Order so much more than the measure to two places, and all of what is sold."""
    return D(ceil(cents(needed) * (100 + waste) / 100))


def _tons(deck: Deck) -> Decimal:
    covered = deck.area + deck.formed / 2  # 6 in past the forms
    return _wasted(covered * 4 / 324 * D("1.98")) if deck.base else D(0)


def _loads(deck: Deck) -> Decimal:
    yards = _yards(deck.area)
    loads = [ceil(yards / 10) * D(42), ceil(_tons(deck) / 16) * D(95)]
    loads += [ceil(yards / 10) * D(65)] if deck.finish == "ashlar" else []  # the drum, washed
    last = yards - (ceil(yards / 10) - 1) * 10
    loads += [D(110)] if last < 4 else []
    return sum(loads, D(0))


def _yards(area: Decimal) -> Decimal:
    ordered = (area * 4 / 324 + area / 8 / 324) * D("1.05")
    return D(ceil(ordered * 4)) / 4


def _bought(deck: Deck) -> Decimal:
    by_area = [D("0.03"), D("0.05"), SUPPLIES[deck.finish]]
    by_area += [D("0.42"), D("0.04")] if deck.base else []
    by_area += [D("0.03"), D("0.04")] if deck.finish != "broom" else [D("0.03")]
    sums = [cents(deck.area * rate) for rate in by_area]
    sums += [cents(deck.formed * D("0.68")), cents(deck.house * D("0.12")), D(45), D(70), D(690)]
    sums += [cents(deck.pool * D("9.40"))] if deck.cast_edge else []
    return sum(sums, D(0)) + (D(185) if deck.lawn else D(0))


def worked(deck: Deck) -> Sum:
    """Work out the deck."""
    stamped = deck.finish == "ashlar"
    days = 6 if stamped else 5
    road = cents(people(deck) * D("0.6") * WAGE) + cents(2 * 9 * days * D("0.70"))
    machines = (2 * D(110) + 2 * D(38) if deck.base else D(0)) + D(65)
    machines += D(120) + D(40) if stamped else D(0)
    wages = sum((cents(each * WAGE) for each in hours(deck)), D(0))
    direct = wages + materials(deck) + _loads(deck) + _bought(deck) + road + machines
    shares = cents(direct * D("0.015")) + cents(direct * D("0.08")) + D(65) * days
    return Sum(priced(deck), direct + shares)


def least(deck: Deck) -> tuple[Decimal, Decimal, Decimal]:
    """Return the prices that reach each floor: 12 %, $100 for a day, $1.50 for a square foot."""
    cost, days = worked(deck).cost, 6 if deck.finish == "ashlar" else 5
    by_share = D(ceil(cost / D("0.88") * 100)) / 100
    return by_share, cost + 100 * days, D(ceil((cost + deck.area * D("1.50")) * 100)) / 100
