"""Sheet 5: a bar in its lane for each use, and a line for each thing to mind."""

from pathlib import Path

from quotegen.explain.sheets.day_sheet import day_sheet
from tests.explain.examples import EVERY_EXAMPLE, example_view
from tests.pricing import shop


@EVERY_EXAMPLE
def test_each_row_has_a_cell_for_each_lane(job_file: Path):
    """The bars of a row stand under the names of the lanes, each lane has a bar, and a key."""
    sheet = example_view(job_file).days
    assert {len(row.lanes) for row in sheet.rows} == {len(sheet.lanes)} == {len(sheet.key)}
    for number, lane in enumerate(sheet.lanes):
        assert any(row.lanes[number] for row in sheet.rows), lane


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
