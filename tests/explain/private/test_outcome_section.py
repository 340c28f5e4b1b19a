"""After the job in words: which hours of the book are off."""

from quotegen.explain.private.outcome_section import drift_section
from quotegen.pipeline import outcomes_in
from quotegen.pricing.costs.outcome import drift_of
from tests.pricing import shop
from tests.world import EXAMPLES


def test_the_cost_sheet_says_what_drifts():
    """Beside a completed job the steps that are off are named; one within a tenth is not."""
    (job_file,) = (path for path in shop.JOBS if "tanager" in path.name)
    made = shop.example(job_file)
    assert made.owner is not None
    drift = drift_of(outcomes_in(EXAMPLES / "jobs", shop.shared()), made.owner.job.costs)
    points = drift_section(shop.example_results(job_file), drift).points
    assert "Steel bar grid: +46.3% (jobs: 1). Change it in the rate book" in points[0]
    assert not any(point.startswith("Broom: ") for point in points)
