"""The cost sheet in words: plural forms, and differences with their sign."""

import re

from quotegen.explain.private.cost_sheet import cost_sheet
from quotegen.explain.private.owners_sheet import OwnersSheet
from tests.pricing import shop

COUNTED = "hour|day|load|sheet|roll|bar|ton|piece|mile|visit"


def _sheets() -> list[OwnersSheet]:
    made = [shop.example(path) for path in shop.JOBS]
    return [cost_sheet(m.results, m.owner, ()) for m in made if m.results and m.owner]


def _cells(sheet: OwnersSheet) -> list[str]:
    tables = [section.table for section in sheet.sections if section.table]
    return [cell for table in tables for row in table.rows for cell in row.cells]


def test_one_of_a_thing_is_said_as_one():
    """`1 day` and `2 days`, `1 hour` and `1.5 hours`, for every unit of every example."""
    found = [cell for sheet in _sheets() for cell in _cells(sheet)]
    one = re.compile(rf"1 ({COUNTED})")
    many = re.compile(rf"(?!1 )[\d.,]+ ({COUNTED})s")
    counted = [cell for cell in found if re.fullmatch(rf"[\d.,]+ ({COUNTED})s?", cell)]
    assert "1 day" in counted
    assert "1 hour" in counted
    assert [cell for cell in counted if not (one.fullmatch(cell) or many.fullmatch(cell))] == []


def test_no_difference_has_no_sign():
    """Estimate and outcome that agree differ by 0, and not by `−0.0`."""
    words = shop.example_results(shop.JOBS[0]).words
    assert [words.signed_number(n, 1) for n in (0, 1, -1)] == ["0.0", "+1.0", "−1.0"]
    assert not [cell for sheet in _sheets() for cell in _cells(sheet)
                if re.fullmatch(r"[+−]0(\.0+)?", cell)]  # fmt: skip


def test_an_owner_who_types_no_cost_sees_no_margin():
    """The all-in book has no costs: the sheet says what it lacks, and no amount but the price."""
    made = shop.example(shop.ALL_IN / "larch-row-patio.yaml")
    assert made.results
    assert made.owner
    sheet = cost_sheet(made.results, made.owner, ())
    assert [section.id for section in sheet.sections] == ["missing"]
    (lead,) = sheet.lead
    assert lead.startswith("The price is $5,240.00. The rate book types no costs, so")
    assert "%" not in lead
