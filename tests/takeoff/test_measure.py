"""Stage 2 on a whole job."""

from decimal import Decimal

from quotegen.takeoff.measure import measure
from quotegen.trade.rules import load_rules
from tests.takeoff.plans import feet, job, placement, problems_of, takeoff

DECK = placement({"rectangle": "24 ft x 16 ft"}, name="deck")


def test_placements_keep_their_order():
    """Each placement of the job has its takeoff, found again by its id."""
    walk = placement({"rectangle": "4 ft x 30 ft", "at": feet((30, 0))}, name="walk", number=1)
    found = takeoff(DECK, walk)
    assert [each.id for each in found.placements] == ["deck", "walk"]
    assert found.placement("walk").area_sqft == Decimal("120.0")


def test_the_job_rounds_up_once():
    """Two small pads are ordered together, not each rounded up by itself."""
    pads = [
        placement({"rectangle": "9 ft x 9 ft", "at": feet((20 * n, 0))}, name=f"pad{n}", number=n)
        for n in range(2)
    ]
    found = takeoff(*pads, allowance="5 %")
    assert [pad.order_cuyd for pad in found.placements] == [Decimal("1.25"), Decimal("1.25")]
    assert (found.volume_cuyd, found.order_cuyd) == (Decimal(2), Decimal("2.25"))
    assert found.working[-1].value == found.order_cuyd


def test_thickness_of_each_placement_counts():
    """A thicker apron takes more concrete on the same area."""
    apron = placement({"rectangle": "24 ft x 16 ft", "at": feet((30, 0))}, number=1,
                      name="apron", thickness_in="6")  # fmt: skip
    deck, thick = takeoff(DECK, apron).placements
    assert thick.area_sqft == deck.area_sqft
    assert abs(thick.volume_cuyd - deck.volume_cuyd * Decimal("1.5")) < Decimal("1e-20")


def test_placements_side_by_side_are_fine():
    """A walk may begin where the deck ends."""
    walk = placement({"rectangle": "4 ft x 30 ft", "at": feet((24, 0))}, name="walk", number=1)
    assert takeoff(DECK, walk).placement("walk").area_sqft == Decimal("120.0")


def test_a_pad_in_an_opening_is_fine():
    """One placement may lie in what another one leaves open."""
    hole = {"rectangle": "6 ft x 6 ft", "at": feet((4, 4))}
    deck = placement({"rectangle": "24 ft x 16 ft"}, take_away=(hole,))
    pad = placement(hole, name="pad", number=1)
    assert len(takeoff(deck, pad).placements) == 2


def test_placements_that_overlap_are_told():
    """Two placements on the same ground would be priced twice."""
    walk = placement({"rectangle": "4 ft x 30 ft", "at": feet((22, 0))}, name="walk", number=1)
    (problem,) = problems_of(DECK, walk)
    assert problem.code == "placements-overlap"
    assert problem.path == "placements[1]"
    assert "`deck` and `walk` overlap by 32.0 sq ft near [23'-0\", 8'-0\"]" in problem.message


def test_problems_of_all_placements_come_together():
    """A fault in one placement hides no fault in another."""
    bad = {"rectangle": "9 ft x 9 ft", "corner_radius": "5 ft"}
    problems = problems_of(placement(bad), placement(bad, {"right_triangle": "2 ft x 2 ft"},
                           take_away=({"ring": {"outer_radius": "1 ft", "width": "2 ft",
                                                "sweep": "9 deg"}},), number=1))  # fmt: skip
    assert [problem.path for problem in problems] == [
        "placements[0].add[0].corner_radius",
        "placements[1].add[0].corner_radius",
        "placements[1].take_away[0].ring.width",
    ]
    assert [problem.source.line for problem in problems] == [5, 5, 6]


def test_the_same_job_gives_the_same_takeoff():
    """Nothing in the takeoff depends on chance."""
    spec = job(DECK)
    assert measure(spec, load_rules()) == measure(spec, load_rules())
