"""The strip along a deep edge, and the concrete below it."""

from datetime import date
from decimal import Decimal
from fractions import Fraction

import pytest

from quotegen.problem import Source
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.files.site_parts import DeepEdge
from quotegen.takeoff.slab.deep_edges import deep_edge_step, strip_sqft
from quotegen.takeoff.slab.edges import edge_runs, runs_along
from quotegen.trade.rules import load_rules
from quotegen.working import Step
from tests.takeoff.plans import Typed, slab

ON = date(2026, 5, 14)
DECK: Typed = {"rectangle": "24 ft x 16 ft"}
FOUR_INCHES = Fraction(1, 3)


def _step(**typed: str) -> Step | None:
    measured = slab(DECK)
    return deep_edge_step(
        name="Thickened edge",
        deep=DeepEdge.model_validate({"along": "formed edge", **typed}),
        region=measured.region,
        runs=edge_runs(measured.boundary),
        thickness=FOUR_INCHES,
        source=Source(file="job.yaml"),
        rules=load_rules(),
        on=ON,
    )


@pytest.mark.parametrize(("depth", "cuyd"), [("3 in", None), ("4 in", None), ("10 in", "1.4074")])
def test_an_edge_takes_concrete_only_where_it_is_deeper(depth: str, cuyd: str | None):
    """An edge as deep as the slab takes nothing more; 76 sq ft by 6 in deeper take 38 cu ft."""
    step = _step(width="12 in", depth=depth)
    assert (step and str(round(step.value, 4))) == cuyd


def test_a_corner_counts_once():
    """A strip of 1 ft inside 24 x 16 ft is 80 ft long less its four corners: 76 sq ft."""
    measured = slab(DECK)
    runs = runs_along(edge_runs(measured.boundary), EdgeKind.FORMED)
    assert strip_sqft(measured.region, runs, 1.0) == pytest.approx(76)
    assert strip_sqft(measured.region, runs, 0.0) == 0


def test_a_taper_counts_by_the_average_strip():
    """From 12 in at the bottom to 18 in at the top: (76 + 111) / 2 is 93.5 sq ft."""
    step = _step(width="12 in", depth="10 in", taper="6 in")
    assert step is not None
    assert step.inputs[0].value == Decimal("93.50")


def test_a_slab_without_that_edge_has_no_step():
    """No house edge, nothing along it."""
    assert _step(along="house edge", width="12 in", depth="10 in") is None
