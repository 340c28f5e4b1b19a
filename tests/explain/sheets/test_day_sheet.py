"""Sheet 5: a plan of the days for each that differs, and a line for each thing to mind."""

from pathlib import Path

from quotegen.explain.sheets.day_sheet import day_sheet
from tests.explain.examples import EVERY_EXAMPLE, example_view
from tests.pricing import shop


@EVERY_EXAMPLE
def test_each_plan_of_the_days_is_drawn(job_file: Path):
    """The plan of the quote comes first; every other one has its picture and its name."""
    plans = example_view(job_file).days.plans
    assert len(plans) == len(shop.example_results(job_file).day_plans)
    assert len({plan.name for plan in plans}) == len(plans)


@EVERY_EXAMPLE
def test_each_caution_and_each_care_of_the_guide_has_its_line(job_file: Path):
    """What the guide explains in full stands on the sheet in a line."""
    view = example_view(job_file)
    assert len(view.days.safety) == len(view.guide.safety)
    assert len(view.days.care) == len(view.guide.care)
    assert all((*view.days.safety, *view.days.care))


def test_the_total_under_the_payments_is_the_price(tmp_path):
    """200 sq ft at $1.00."""
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book())
    assert day_sheet(results).total == "$200.00"
