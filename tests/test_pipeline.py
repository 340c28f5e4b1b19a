"""The pipeline: what finished jobs tell, worked out for their hours alone."""

from dataclasses import replace

import pytest

from quotegen import pipeline
from quotegen.pricing.costs.outcome import outcome_of
from quotegen.reading.files.after_signing import Actual
from tests.pricing import shop
from tests.pricing.costed import COSTS, ORDER
from tests.world import EXAMPLES, write_world


@pytest.mark.parametrize("name", ["orchard-bend-pool-deck", "cutters-row-drive"])
def test_the_hours_are_those_of_the_job_in_full(tmp_path, name: str):
    """With every step of the book timed, what is measured for hours alone gives the same hours.

    The deck takes a conveyor, whose hours go by where the truck stands.
    """
    job_file = EXAMPLES / "jobs" / f"{name}.yaml"
    made = shop.example(job_file)
    assert made.results is not None
    assert made.owner is not None
    costs = made.owner.job.costs
    assert costs is not None
    steps = (*costs.hours, "drive", "set_up", "clean_up")
    timed = {"done": "2026-12-01", "hours": dict.fromkeys(steps, "5 hours"),
             "concrete": "9 cu yd", "days": "4"}  # fmt: skip
    file = made.owner.job.file.model_copy(update={"actual": Actual.model_validate(timed)})
    in_full = outcome_of(made.results.job, replace(made.owner.job, file=file), made.results.takeoff)
    text = job_file.read_text(encoding="utf-8").partition("\nactual:")[0]
    write_world(tmp_path, f"{text}\n{shop.as_yaml({'actual': timed})}")
    assert pipeline.outcomes_in(tmp_path, shop.shared()) == (in_full,)
    assert in_full is not None
    assert sum(step.estimated > 0 for step in in_full.steps) > 10


def test_hours_by_the_foot_of_joint(tmp_path):
    """A step that is timed by the foot of joint has the joints laid out for it."""
    saw = {"saw": shop.rate("$2 / ft", "joints", of="joint length")}
    costs = {**COSTS, "hours": {"saw": {"work": "1 hour / ft"}}}
    actual = {"done": "2026-07-01", "hours": {"saw": "12 hours"}}
    book = shop.book(saw, order=ORDER, costs=costs)
    made = shop.figured(tmp_path, shop.job(actual=actual), rate_book=book)
    (outcome,) = pipeline.outcomes_in(tmp_path, shop.shared())
    assert made.owner is not None
    assert outcome == made.owner.outcome
    assert outcome.steps[0].estimated > 0
