"""What is asked for must come to something."""

import pytest

from quotegen.pipeline import figure
from tests.pricing import shop
from tests.world import write_world

RATES = {"rail": shop.rate("$38 / ft", "cast_edge", of="pool edge", applies="asked")}
POOL = {"rectangle": "8 ft x 4 ft", "at": ["4 ft", "3 ft"], "is": "pool"}


def test_nothing_to_price(tmp_path):
    """A cast pool edge on a slab without a pool is an error, and not a line that vanishes."""
    for name, asked in (
        ("include", {"include": {"rail": "yes"}}),
        ("extras", {"extras": {"rail": "yes"}}),
    ):
        job = write_world(tmp_path, shop.job(**asked), rate_book=shop.book(RATES))
        (problem,) = shop.faults(job)
        assert (problem.code, problem.path) == ("nothing-to-price", f"{name}.rail")


def test_nothing_to_price_on_a_placement(tmp_path):
    """The same where a placement asks for it; with a pool it is priced."""
    slab = shop.placement("20 ft x 10 ft", include={"rail": "yes"})
    job = write_world(tmp_path, shop.job(slab), rate_book=shop.book(RATES))
    (problem,) = shop.faults(job)
    assert problem.path == "placements[0].include.rail"
    priced = shop.quote(
        tmp_path, shop.job({**slab, "take_away": [POOL]}), rate_book=shop.book(RATES)
    )
    assert "rail.patio" in shop.by_id(priced.chosen)


@pytest.mark.parametrize(("thickness", "asked"), [("5 in", 0), ("7 in", 0), ("7-1/8 in", 1)])
def test_a_slab_thicker_than_the_book_goes(tmp_path, thickness: str, asked: int):
    """Rows for 4, 5 and 6 in: the last holds to 7 in, where the next one would have come."""
    steps = [{"thickness": f"{n} in", "rate": f"${n} / sq ft"} for n in (4, 5, 6)]
    rates = {"slab": {"name": "Concrete", "covers": ["slab"], "by_thickness": steps}}
    slab = shop.placement("20 ft x 10 ft", thickness=thickness)
    job = write_world(tmp_path, shop.job(slab), rate_book=shop.book(rates))
    codes = [problem.code for problem in figure(job, shop.shared()).problems]
    assert codes.count("thicker-than-book") == asked


@pytest.mark.parametrize(
    ("air", "state", "asked"),
    [
        ("4 %", "OH", 1),
        ("4.9%", "TX", 1),
        ("5 %", "OH", 0),
        ("4 to 6 %", "OH", 0),
        ("6 % +/- 1.5", "OH", 0),
        ("with air for frost", "OH", 0),
        ("2 %", "FL", 0),
    ],
)
def test_air_is_held_against_frost(tmp_path, air: str, state: str, asked: int):
    """Under 5 % where the weather freezes is asked about; no number, or no frost, is not."""
    mix = {"strength_psi": "4500", "air": air, "description": "ready-mixed"}
    job = shop.job(site={"address": "1 Test Lane", "town": "Harrow Bend", "state": state})
    made = figure(write_world(tmp_path, job, rate_book=shop.book(mix=mix)), shop.shared())
    assert [problem.code for problem in made.problems].count("mix-air-low") == asked
