"""After the job: estimate against outcome, and drift over all completed jobs."""

from decimal import Decimal
from fractions import Fraction

from quotegen.pricing.costs.outcome import Outcome, StepOutcome, drift_of
from quotegen.reading.files.costs import Costs
from tests.pricing import shop
from tests.pricing.costed import COSTS, ORDER, RATES

ACTUAL = {"done": "2026-07-01", "hours": {"base": "6 hours", "drive": "5 hours"},
          "concrete": "2.75 cu yd", "days": "4"}  # fmt: skip


def test_estimate_and_outcome(tmp_path):
    """Four hours estimated, six taken; six on the road, five taken; concrete and days beside."""
    book = shop.book(RATES, order=ORDER, costs=COSTS)
    made = shop.figured(tmp_path, shop.job(actual=ACTUAL), rate_book=book)
    assert made.owner is not None
    outcome = made.owner.outcome
    assert outcome is not None
    assert [(s.id, str(s.estimated), str(s.actual)) for s in outcome.steps] == [
        ("base", "4.00", "6.00"), ("drive", "6.00", "5.00")]  # fmt: skip
    assert outcome.concrete == (Decimal("2.5"), Decimal("2.75"))
    assert outcome.days == (3, 4)


def _outcome(estimated: str, actual: str) -> Outcome:
    step = StepOutcome(id="base", name="Base", estimated=Decimal(estimated), actual=Decimal(actual))
    return Outcome(steps=(step,), concrete=None, days=None)


def test_drift_is_over_all_jobs():
    """10 and 30 hours estimated, 12 and 36 taken: a fifth more, so 1.5 hours become 1.8."""
    costs = Costs.model_validate(COSTS)
    (drift,) = drift_of((_outcome("10", "12"), _outcome("30", "36")), costs)
    assert (drift.jobs, drift.ratio, drift.drifts) == (2, Fraction(6, 5), True)
    assert (str(drift.rate), str(drift.better), drift.of) == ("1.500", "1.800", "100 sq ft")


def test_jobs_that_even_out_do_not_drift():
    """One job over and one under by as much: the rate stands."""
    (drift,) = drift_of((_outcome("10", "12"), _outcome("10", "8")), None)
    assert (drift.ratio, drift.drifts, drift.better) == (Fraction(1), False, None)
