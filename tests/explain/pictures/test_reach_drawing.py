"""The reach drawing: trucks, what they go round, and where each way ends."""

import pytest

from quotegen.explain.pictures.reach_drawing import OBSTACLE_DASH, REACH_DASH, draw_reach
from quotegen.explain.private.crew_sheet import FLAT, crew_sheet
from tests.explain.drawn import SVG, dashed, lettering, parsed, strokes, texts
from tests.pricing import shop

CHUTE = {"kind": "chute", "name": "chute", "reach": "16 ft"}
CONVEYOR = {"kind": "conveyor", "name": "conveyor", "reach": "40 ft", "rate": "conveyor"}
SHED = {"what": "shed", "shape": {"rectangle": "6 ft x 4 ft", "at": ["-12 ft", "14 ft"]}}
POOL = {"rectangle": "32 ft x 14 ft", "at": ["6 ft 6 in", "8 ft"], "is": "pool"}


@pytest.fixture
def results(tmp_path):
    """A deck round a pool, a truck on each side of it: the chute ends on it, a conveyor goes on."""
    deck = shop.placement("45 ft x 30 ft", take_away=[POOL])
    access = {"note": "By the lane.", "truck_stands": [["52 ft", "4 ft"], ["-12 ft", "14 ft"]]}
    job = shop.job(deck, access=access, include={"conveyor": "yes"})
    rates = {"conveyor": shop.rate("$640 lump", "placing", applies="asked")}
    book = shop.book(rates, access={"chute": CHUTE, "conveyor": CONVEYOR})
    return shop.results(tmp_path, job, rate_book=book)


@pytest.fixture
def svg(results):
    drawn = draw_reach(results, FLAT, "reach")
    assert drawn is not None
    return parsed(drawn)


def test_each_stand_is_a_dot_in_a_ring(results, svg):
    """Every truck stand of the job is marked and named."""
    stands = results.job.access.stands
    assert len(stands) == 2
    assert len(list(svg.iter(f"{SVG}circle"))) == 2 * len(stands)
    assert texts(svg).count(results.words("plan_truck")) == len(stands)


def test_a_way_that_ends_on_the_slab_is_drawn_and_named(results, svg):
    """Where the chute ends there is a dashed line; it says how long the chute is."""
    ending = [method for method in results.takeoff.reach.methods if method.edge_ft]
    assert [method.id for method in ending] == ["chute"]
    assert len(dashed(svg, REACH_DASH)) == sum(len(method.edge_ft) for method in ending)
    for method in ending:
        length = results.words.feet(method.reach_ft)
        assert results.words("plan_reach", method=method.name, length=length) in texts(svg)


def test_the_name_of_a_way_stands_at_its_end(svg):
    """Its name lies within a letter's height of one of the dashed lines that it names."""
    ends = strokes(svg, REACH_DASH)
    named = [where for text, where in lettering(svg) if " reaches " in text]
    assert named
    for where in named:
        assert min(where.distance(line) for line in ends) < 13


def test_what_each_way_reaches_is_said(results):
    """One sentence for each way in the rate book, with its share of the slab."""
    said = crew_sheet(results).reached
    assert len(said) == len(results.takeoff.reach.methods)
    chute = next(one for one in results.takeoff.reach.methods if not one.covers)
    assert 0 < chute.share < 100
    assert f"{chute.share.normalize():f}%" in said[0]


def _results(tmp_path, **access: object):
    patio = shop.placement("30 ft x 20 ft")
    job = shop.job(patio, access={"note": "By the drive.", **access})
    opened = shop.warned if access else shop.results
    return opened(tmp_path, job, rate_book=shop.book(access={"chute": CHUTE}))


def test_an_obstacle_is_drawn_and_named(tmp_path):
    """What stands in the way is drawn dotted, with its name."""
    results = _results(tmp_path, truck_stands=[["-4 ft", "5 ft"]], obstacles=[SHED])
    drawn = draw_reach(results, FLAT, "reach")
    assert drawn is not None
    svg = parsed(drawn)
    assert len(dashed(svg, OBSTACLE_DASH)) == 1
    assert "shed" in texts(svg)


def test_no_stand_no_drawing(tmp_path):
    """A job that does not say where the truck stands has no such drawing."""
    assert crew_sheet(_results(tmp_path)).reach is None
