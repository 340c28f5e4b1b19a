"""The plan sheet: how the slab was measured, how sure that is, and the steps beside the area."""

from tests.explain.examples import example_plan_sheet
from tests.pricing import shop

(KIDNEY,) = (path for path in shop.JOBS if "kidney" in path.name)


def test_the_plan_sheet_says_how_and_how_sure():
    """The plan sheet names the way of measuring, the range, the money, and the step by the foot."""
    sheet = example_plan_sheet(KIDNEY)
    (row,) = sheet.measured
    assert "A border around the pool" in row.text
    assert "Two tapes to each point from pins 32'-0\" apart" in row.text
    assert "95 times in 100" in sheet.sure[0]
    assert "$" in sheet.sure[1]
    assert [step.amount for step in sheet.steps] == ["6.5 ft"]
