"""The customer view: what is on it follows the job, and what is not agreed to is not there."""

import dataclasses
from collections.abc import Iterator
from pathlib import Path
from types import NoneType
from typing import get_args, get_type_hints

from markupsafe import Markup

from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.sheets.views import CustomerView
from tests.explain.examples import EVERY_EXAMPLE, example_view
from tests.pricing import shop

PRIVATE_WORDS = ("cost", "margin", "private", "floor", "bid", "supplier", "profit")


@EVERY_EXAMPLE
def test_the_total_is_the_same_on_each_sheet(job_file: Path):
    """Sheets 1, 3, 4 and 5 and the agreement name one price."""
    view = example_view(job_file)
    priced = shop.example_results(job_file).quote.chosen.total
    (chosen,) = [column.total for column in view.finishes.columns if column.chosen]
    (quoted,) = [row.total for row in view.money.worked if row.is_quote]
    (agreed,) = [str(row.text) for row in view.agreement.parties if row.name == "Price"]
    assert {view.price.total, view.money.total, view.days.total, chosen, quoted} == {
        f"${priced:,.2f}"
    }
    assert view.price.total in agreed


@EVERY_EXAMPLE
def test_each_short_clause_stands_in_full_in_the_terms(job_file: Path):
    """What sheets 4 to 6 say of a clause is the short of one that the terms have."""
    view = example_view(job_file)
    short = (view.money.measuring, view.days.weather, view.agreement.warranty,
             view.agreement.promised)  # fmt: skip
    full = {clause.id for clause in view.terms}
    assert {one.id.removesuffix("-short") for one in short} <= full
    assert all(one.html for one in short)


def test_every_clause_binds_on_every_job(tmp_path: Path):
    """The terms are all clauses in the order of their pages, and how we round."""
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book())
    ids = [clause.id for clause in customer_view(results).terms]
    assert ids == [*results.content.clauses, "rounding"]


def test_how_we_round_is_a_term(winter_view: CustomerView):
    """A tax of the whole invoice is said to be rounded once."""
    (rounding,) = [clause for clause in winter_view.terms if clause.id == "rounding"]
    assert "Tax is worked out on the sum and rounded once" in rounding.html


class TestTheAllowList:
    """The view is built from an allow-list: what is private has no field to stand in."""

    def test_no_field_for_what_is_private(self):
        """No record of the view has a field with such a name."""
        found = {
            f"{record.__name__}.{field.name}"
            for record in _records(CustomerView, set())
            for field in dataclasses.fields(record)
            if any(word in field.name for word in PRIVATE_WORDS)
        }
        assert found == set()

    def test_only_text(self):
        """The view holds texts and drawings, and no result that a template could compute with."""
        records = _records(CustomerView, set())
        kinds = {kind for record in records for kind in _kinds(record)}
        assert kinds - records == {str, bool, Markup}


def _records(record: type, seen: set[type]) -> set[type]:
    """Return a record and every record that stands in a field of it."""
    if record not in seen:
        seen.add(record)
        for kind in _kinds(record):
            if dataclasses.is_dataclass(kind):
                _records(kind, seen)
    return seen


def _kinds(record: type) -> Iterator[type]:
    """Yield what the fields of a record hold, or hold many of."""
    for hint in get_type_hints(record).values():
        yield from _inner(hint)


def _inner(hint: type) -> Iterator[type]:
    parts = get_args(hint)
    if not parts:
        yield hint
    for part in parts:
        if part not in {Ellipsis, NoneType}:
            yield from _inner(part)
