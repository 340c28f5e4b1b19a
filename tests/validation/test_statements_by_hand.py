"""The two final measurements and the change orders of the examples, done again by hand.

Nothing of the program is used but what it printed. Areas and lengths follow from the tape sizes in
the job files by school geometry (rectangle, circle and its sectors); rates are typed from the
example rate book; amounts are quantity times rate, half up to the cent; payments follow the rule
that stands under their table.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import ROUND_DOWN, ROUND_HALF_UP, Decimal
from math import asin, hypot, radians, sin

import pytest

from tests.publish.built import built, page_text
from tests.world import EXAMPLES

JOBS = EXAMPLES / "jobs"
CENT, TENTH = Decimal("0.01"), Decimal("0.1")


def _tenth(value: float) -> Decimal:
    return Decimal(repr(value)).quantize(TENTH, ROUND_HALF_UP)


def _sector(outer_ft: float, width_ft: float, sweep_deg: float) -> tuple[float, float]:
    """Return area and outline of a part of a ring."""
    inner, sweep = outer_ft - width_ft, radians(sweep_deg)
    return sweep / 2 * (outer_ft**2 - inner**2), sweep * (outer_ft + inner) + 2 * width_ft


@dataclass(frozen=True, slots=True)
class Sizes:
    """What is measured of one part: in square feet and in feet, before and after."""

    area: tuple[Decimal, Decimal]
    formed: tuple[Decimal, Decimal]
    strip: tuple[Decimal, Decimal]


def _both(before: float, after: float) -> tuple[Decimal, Decimal]:
    return _tenth(before), _tenth(after)


# 14 x 7 and 22 x 11 ft as quoted, 14 x 7'-4" and 22'-6" x 11'-2" as measured; 14 ft at the house,
# and the end of the walk, whose form and strip stand with the patio.
PATIO = Sizes(
    area=_both(14 * 7 + 22 * 11, 14 * (7 + 4 / 12) + 22.5 * (11 + 2 / 12)),
    formed=_both(2 * 7 + 8 + 2 * 11 + 22, 2 * (7 + 4 / 12) + 8.5 + 2 * (11 + 2 / 12) + 22.5),
    strip=_both(14 + 4, 14 + 4.25),
)
# A ring of 70 degrees, 14 ft outside and 4 ft wide; 14'-3" and 4'-3" as measured. One end meets the
# patio, the other a drive that stays: neither is formed, and at the drive is a strip.
WALK_BEFORE, WALK_AFTER = _sector(14, 4, 70), _sector(14.25, 4.25, 70)
WALK = Sizes(
    area=_both(WALK_BEFORE[0], WALK_AFTER[0]),
    formed=_both(WALK_BEFORE[1] - 2 * 4, WALK_AFTER[1] - 2 * 4.25),
    strip=_both(4, 4.25),
)


def _flare(along: float, out: float, radius: float) -> tuple[float, float]:
    """Return area and arc of a triangle whose long side is hollowed by an arc of a radius."""
    turn = 2 * asin(hypot(along, out) / 2 / radius)
    return along * out / 2 - radius**2 / 2 * (turn - sin(turn)), radius * turn


# 42 x 18 ft and a hollow flare of 9 by 6 ft at 14 ft radius; 41'-4" x 17'-9" and 8'-6" by 5'-9" as
# measured. A strip stands at the garage floor and along the curb, and no form.
FLARE_BEFORE, FLARE_AFTER = _flare(9, 6, 14), _flare(8.5, 5.75, 14)
LONG, WIDE = 41 + 4 / 12, 17 + 9 / 12
DRIVE = Sizes(
    area=_both(42 * 18 + FLARE_BEFORE[0], LONG * WIDE + FLARE_AFTER[0]),
    formed=_both(42 + FLARE_BEFORE[1] + (42 - 9), LONG + FLARE_AFTER[1] + (LONG - 8.5)),
    strip=_both(18 + 18 + 6, WIDE + WIDE + 5.75),
)

BY_AREA, BY_FORMED, BY_STRIP = "area", "formed", "strip"
TANAGER = (
    ("Dig out and haul away", PATIO, BY_AREA, "1.35"),
    ("Stone base, compacted", PATIO, BY_AREA, "1.75"),
    ("Layout and forms", PATIO, BY_FORMED, "4.80"),
    ("Concrete, placed", PATIO, BY_AREA, "4.20"),
    ("Wire sheets", PATIO, BY_AREA, "0.80"),
    ("Soft joint where the slab meets what stands there", PATIO, BY_STRIP, "2.40"),
    ("Sawn joints", PATIO, BY_AREA, "0.60"),
    ("Curing", PATIO, BY_AREA, "0.25"),
    ("Wash", PATIO, BY_AREA, "0.45"),
    ("Sealer, two thin coats", PATIO, BY_AREA, "1.05"),
    ("Exposed aggregate", PATIO, BY_AREA, "4.30"),
    ("Dig out and haul away", WALK, BY_AREA, "1.35"),
    ("Stone base, compacted", WALK, BY_AREA, "1.75"),
    ("Layout and forms", WALK, BY_FORMED, "4.80"),
    ("Concrete, placed", WALK, BY_AREA, "4.20"),
    ("Fiber", WALK, BY_AREA, "0.40"),
    ("Soft joint where the slab meets what stands there", WALK, BY_STRIP, "2.40"),
    ("Sawn joints", WALK, BY_AREA, "0.60"),
    ("Curing", WALK, BY_AREA, "0.25"),
    ("Sealer that soaks in, one coat", WALK, BY_AREA, "0.65"),
    ("Broom", WALK, BY_AREA, "1.90"),
)
CUTTERS = (
    ("Dig out and haul away", DRIVE, BY_AREA, "1.35"),
    ("Stone base, compacted", DRIVE, BY_AREA, "1.75"),
    ("Layout and forms", DRIVE, BY_FORMED, "4.80"),
    ("Concrete, placed", DRIVE, BY_AREA, "4.95"),  # 5 in: the step from 4-3/4 in
    ("Steel bar grid", DRIVE, BY_AREA, "1.55"),
    ("Soft joint where the slab meets what stands there", DRIVE, BY_STRIP, "2.40"),
    ("Sawn joints", DRIVE, BY_AREA, "0.60"),
    ("Curing", DRIVE, BY_AREA, "0.25"),
    ("Sealer that soaks in, one coat", DRIVE, BY_AREA, "0.65"),
    ("Break out the old slab", DRIVE, BY_AREA, "2.60"),
    ("Broom", DRIVE, BY_AREA, "1.90"),
)
HAUL_OFF = Decimal(13) * Decimal(58)  # typed, and not measured again


def _money(amount: Decimal, *, signed: bool = False) -> str:
    sign = "" if not amount else "−" if amount < 0 else "+"
    return f"{sign if signed or amount < 0 else ''}${abs(amount):,.2f}"


def _change(amount: Decimal) -> str:
    sign = "" if not amount else "−" if amount < 0 else "+"
    return f"{sign}{abs(amount):,.1f}"


@dataclass(frozen=True, slots=True)
class ByHand:
    """One line of a statement, worked out and as it should be printed."""

    before: Decimal
    after: Decimal
    printed: str


def _lines(rows: tuple[tuple[str, Sizes, str, str], ...]) -> Iterator[ByHand]:
    for name, sizes, of, rate in rows:
        quantities: tuple[Decimal, Decimal] = getattr(sizes, of)
        first, last = quantities
        before, after = ((q * Decimal(rate)).quantize(CENT, ROUND_HALF_UP) for q in quantities)
        unit = "sq ft" if of == BY_AREA else "ft"
        printed = (
            name, f"{first:,}", f"{last:,}", _change(last - first), f"${rate} / {unit}",
            _money(before), _money(after - before, signed=True), _money(after),
        )  # fmt: skip
        yield ByHand(before, after, "\n".join(printed))


def _page(job: str, name: str) -> str:
    return page_text(built(JOBS / f"{job}.yaml")[f"customer/{name}.html"].decode())


@pytest.mark.parametrize(
    ("job", "rows", "fixed", "also_measured"),
    [
        # trips of 4 visits at 85, protection 180, cleanup 320, two steps of 265
        ("tanager-lane-patio", TANAGER, 4 * 85 + 180 + 320 + 2 * 265, Decimal(0)),
        ("cutters-row-drive", CUTTERS, 4 * 85 + 180 + 320, HAUL_OFF),
    ],
)
def test_each_line_and_the_total(job: str, rows, fixed: int, also_measured: Decimal):
    """Every line of the statement is what a pocket calculator says, and so are its three totals."""
    page, lines = _page(job, "final-measurement"), tuple(_lines(rows))
    at = [page.index(line.printed) for line in lines]
    assert at == sorted(at)
    still = fixed + also_measured
    before = sum((line.before for line in lines), still)
    after = sum((line.after for line in lines), still)
    assert f"do not move\n{_money(Decimal(fixed))}\nPrice before\n{_money(before)}\n" in page
    assert f"Change\n{_money(after - before, signed=True)}\nPrice now\n{_money(after)}\n" in page


def _payments(total: Decimal, quoted: Decimal, first: Decimal) -> list[Decimal]:
    """Return 10, 40, 35 and 15 %: the first as it stands, the rest in the quoted proportions."""
    shares = [
        (quoted * share).quantize(CENT, ROUND_DOWN) for share in (Decimal(".40"), Decimal(".35"))
    ]
    last = quoted - (quoted * Decimal(".10")).quantize(CENT, ROUND_DOWN) - sum(shares)
    rest, open_ones = total - first, [*shares, last]
    split = [(rest * one / sum(open_ones)).quantize(CENT, ROUND_DOWN) for one in shares]
    return [first, *split, rest - sum(split)]


def _afters(page: str) -> list[str]:
    """Return the last column of each table of payments, in order."""
    rows = page.split("\n")
    ends = ("When you sign", "When the forms are", "On the day after", "When we have walked")
    return [rows[at + 2] for at, row in enumerate(rows) if row.startswith(ends)]


@pytest.mark.parametrize(
    ("job", "name", "quoted", "totals", "first"),
    [
        ("tanager-lane-patio", "final-measurement", "7545.70", ["7812.07"], "754.57"),
        ("cutters-row-drive", "final-measurement", "14199.67", ["13821.52"], "1420"),
        # 17.5 ft of drain at 46 come to it, 240 off for the apron
        ("cutters-row-drive", "changes", "14199.67", ["14626.52", "14386.52"], "1420"),
    ],
)
def test_the_payments(job: str, name: str, quoted: str, totals: list[str], first: str):
    """What is paid stays; the others follow the rule that stands under the table."""
    expected = [
        _money(payment)
        for total in totals
        for payment in _payments(Decimal(total), Decimal(quoted), Decimal(first))
    ]
    assert _afters(_page(job, name)) == expected


def test_the_running_total():
    """13,821.52 measured, 805.00 for the drain, 240.00 less for the apron, 1,420.00 paid."""
    page = _page("cutters-row-drive", "changes")
    now = Decimal("13821.52") + Decimal("17.5") * 46 - 240
    assert f"Price with all changes\n{_money(now)}\nPaid so far\n$1,420.00\n" in page
    assert f"Still to pay\n{_money(now - 1420)}\n" in page
