"""The concrete of steps, by plain geometry."""

from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from quotegen.pricing.costs.what_if import with_area_and_order
from quotegen.trade.rules import load_rules
from tests.takeoff.site_world import by_id, figured

STEPS = "    steps: {risers: [6-1/2 in, 6-1/2 in], width: 5 ft, tread: 12 in}\n"


@pytest.fixture(scope="module")
def with_steps(tmp_path_factory: pytest.TempPathFactory):
    """Return the deck of 928 sq ft with two steps."""
    return figured(tmp_path_factory.mktemp("steps"), STEPS)


def test_two_steps_stand_on_each_other(with_steps):
    """5 ft x 1 ft x (6-1/2 + 13) in are 8.125 cu ft, and 27 of them a yard: 0.30 cu yd."""
    part = by_id(with_steps)["steps_concrete"]
    assert (part.needed, part.buy_unit) == (Decimal("0.30"), "")
    blocks = [one.value for one in part.working.inputs if one.name.startswith("Block")]
    assert blocks == [Decimal("6.5"), Decimal(13)]  # the second carries the edge of the slab
    assert abs(part.working.value - Decimal("8.125") / 27) < Decimal("1e-12")


def test_they_are_ordered_and_no_part_of_the_slab(with_steps, tmp_path: Path):
    """11.457 cu yd of slab, 0.358 of uneven base, 0.301, and 5 %: 12.72, so not 12.5."""
    takeoff, plain = with_steps.results.takeoff, figured(tmp_path).results
    assert plain is not None
    assert takeoff.volume_cuyd == plain.takeoff.volume_cuyd
    assert (plain.takeoff.order_cuyd, takeoff.order_cuyd) == (Decimal("12.5"), Decimal("12.75"))
    assert takeoff.placements[0].order_cuyd == Decimal("12.75")


def test_without_their_sizes_nothing_is_ordered(tmp_path: Path):
    """Risers alone are for the rules of steps; how much concrete they take nobody knows."""
    risers = "    steps: {risers: [6-1/2 in, 6-1/2 in]}\n"
    assert "steps_concrete" not in by_id(figured(tmp_path, risers))


def test_they_stay_when_the_slab_is_measured(tmp_path: Path):
    """928 sq ft typed again as 928: the order is that of the quote, steps and all."""
    measured = "measured: {date: 2026-06-09, placements: {deck: {area: 928 sq ft}}}\n"
    found = figured(tmp_path, STEPS + measured).results
    assert found is not None
    ordered = {one.id: one.buy for one in found.to_order}
    assert ordered["concrete"] == Decimal("12.75")


def test_a_smaller_slab_keeps_its_steps(with_steps):
    """A tenth less area still orders the steps: 11.48, so 11.5 and not 11.25."""
    small = with_area_and_order(
        with_steps.results.job, with_steps.results.takeoff, Fraction(-1, 10), load_rules()
    )
    assert small.order_cuyd == Decimal(
        "11.5"
    )  # (928 - 92.8) x 4-1/8 / 324 = 10.63, and 0.30, and 5 %
