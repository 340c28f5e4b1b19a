"""What both sign after the quote: the statement and the change orders, in words."""

from pathlib import Path
from typing import Any

from quotegen.explain.papers.final_measurement import change_orders_view, final_measurement_view
from quotegen.explain.results import Results
from tests.pricing import shop

BOOK = shop.book({"step": shop.rate("$200 each", "steps", applies="asked")})


def results(folder: Path, **more: Any) -> Results:
    """Return the results of a patio of 200 sq ft at $1.00 with what happened to it since."""
    return shop.results(folder, shop.job(**more), rate_book=BOOK)


def measured(area: str) -> dict[str, Any]:
    """Return a remeasure with a typed area."""
    return {"date": "2026-06-09", "placements": {"patio": {"area": area}}}


def said(folder: Path, area: str) -> str:
    """Return the sentence that the statement says of the price."""
    made = results(folder, measured=measured(area))
    assert made.contract.remeasure is not None
    return final_measurement_view(made, made.contract.remeasure).verdict


def test_more(tmp_path):
    """A larger slab: by how much, to how much."""
    assert "rises by $5.00 to $205.00" in said(tmp_path, "205 sq ft")


def test_less(tmp_path):
    """A smaller slab lowers the price the same way."""
    assert "falls by $5.00 to $195.00" in said(tmp_path, "195 sq ft")


def test_the_same(tmp_path):
    """What measures as quoted stays as quoted."""
    assert "stays $200.00" in said(tmp_path, "200 sq ft")


def test_a_large_rise_needs_both(tmp_path):
    """Over the promised rise nothing is poured before both have signed, and it says so."""
    assert "more than 10%" in said(tmp_path, "221 sq ft")
    assert "more than 10%" not in said(tmp_path, "220 sq ft")


def test_each_line_can_be_redone(tmp_path):
    """A line states both quantities, their difference, the rate and the money, as one reads it."""
    made = results(tmp_path, measured=measured("212.5 sq ft"))
    assert made.contract.remeasure is not None
    (part,) = final_measurement_view(made, made.contract.remeasure).parts
    (line,) = part.lines
    assert part.place == ""
    assert (line.estimated, line.measured, line.difference) == ("200.0", "212.5", "+12.5")
    assert (line.rate, line.before, line.change, line.after) == (
        "$1.00 / sq ft", "$200.00", "+$12.50", "$212.50",
    )  # fmt: skip


def test_lines_stand_under_their_part(tmp_path):
    """With two placements the lines of each stand together under its name, in plan order."""
    both = (shop.placement("20 ft x 10 ft"), shop.placement("10 ft x 10 ft", "walk", at="30 ft"))
    made = shop.results(
        tmp_path,
        shop.job(*both, measured={"date": "2026-06-09", "placements": {
            "patio": {"area": "200 sq ft"}, "walk": {"area": "104 sq ft"}}}),
        rate_book=BOOK,
    )  # fmt: skip
    assert made.contract.remeasure is not None
    parts = final_measurement_view(made, made.contract.remeasure).parts
    assert [(part.place, [line.change for line in part.lines]) for part in parts] == [
        ("Patio", ["$0.00"]), ("Walk", ["+$4.00"]),
    ]  # fmt: skip


def test_a_slice_outside_the_band_is_named(tmp_path):
    """15 % over 200 is 230: at 240 the slice that may be talked about is 10 sq ft."""
    made = results(tmp_path, measured=measured("240 sq ft"))
    assert made.contract.remeasure is not None
    (area,) = final_measurement_view(made, made.contract.remeasure).areas
    assert (area.share, area.outside) == ("+20%", "10.0 sq ft outside the band")


def test_change_orders_run_the_total_on(tmp_path):
    """Each sheet has the price before, the change with its working, and the price after."""
    change = {"number": "1", "date": "2026-06-10", "what": "two steps", "asked_by": "you"}
    made = results(
        tmp_path,
        accepted={"date": "2026-05-20"},
        paid=[{"payment": "deposit", "date": "2026-05-20", "amount": "$20"}],
        changes=[change | {"rate": "step", "quantity": "2", "days": "1"}],
    )
    view = change_orders_view(made)
    (sheet,) = view.changes
    assert (sheet.previous_total, sheet.amount, sheet.revised_total) == (
        "$200.00", "+$400.00", "$600.00",
    )  # fmt: skip
    assert sheet.working == "2 × $200.00 each"
    assert (view.total, view.paid, view.balance) == ("$600.00", "$20.00", "$580.00")


def test_what_follows_other_lines_is_a_sum_in_the_statement(tmp_path):
    """200 sq ft at $1 and 10 % are 220; 205 are 225.50, rounded to 226: two sums that moved."""
    book = shop.book({"fuel": shop.share("10 %", "everything")})
    job, company = shop.job(measured=measured("205 sq ft")), shop.company(round_total_to="$1")
    made = shop.results(tmp_path, job, rate_book=book, company=company)
    assert made.contract.remeasure is not None
    view = final_measurement_view(made, made.contract.remeasure)
    part = view.parts[-1]
    assert [(line.name, line.rate, line.before, line.after) for line in part.lines] == [
        ("Fuel", "", "$20.00", "$20.50"), ("Rounding", "", "$0.00", "$0.50"),
    ]  # fmt: skip
    assert view.revised_total == "$226.00"
