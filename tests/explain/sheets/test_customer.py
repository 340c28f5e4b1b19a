"""The customer view: what is on it follows the job, and what is not agreed to is not there."""

import dataclasses
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path
from types import NoneType
from typing import ClassVar, get_args, get_type_hints

from markupsafe import Markup

from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.sheets.views import CustomerView
from quotegen.pricing.quoted.no_work import AFTER_THE_PRICE
from quotegen.reading.files.shapes import EdgeKind
from tests.explain.examples import EVERY_EXAMPLE, example_view
from tests.pricing import shop

PRIVATE_WORDS = ("cost", "margin", "private", "floor", "bid", "supplier", "profit")


ISOLATED = (EdgeKind.ISOLATED,)


def _view(folder: Path, job: str, **files: str) -> CustomerView:
    return customer_view(shop.results(folder, job, **files))


@EVERY_EXAMPLE
class TestIncluded:
    """Sheet 3 explains what the price covers: neither more nor less."""

    def test_it_follows_the_scope_of_the_lines(self, job_file: Path):
        """Each scope item that a line pays for has its page, in the order of the pages.

        What follows the price of the work, such as a discount, has none.
        """
        results = shop.example_results(job_file)
        covered = {item for line in results.quote.chosen.lines for item in line.scope}
        covered -= AFTER_THE_PRICE
        edges = [p.edges_ft[e] for p in results.takeoff.placements for e in ISOLATED]
        if not any(edges):
            covered.discard("isolation")  # an all-in price covers it, and this job has none
        ids = [item.id for item in example_view(job_file).included]
        assert set(ids) == covered
        assert ids == [item for item in results.content.scope if item in covered]

    def test_each_has_its_three_parts(self, job_file: Path):
        """What, why and how to check: none of them is empty."""
        for item in example_view(job_file).included:
            assert item.title
            assert item.what_html
            assert item.why_html
            assert item.check_html
            assert item.normal_html

    def test_their_amounts_are_the_lines_of_the_work(self, job_file: Path):
        """Each line's amount stands under one item: they add up to the price of the work."""
        results = shop.example_results(job_file)
        shown = [
            row.amount
            for item in example_view(job_file).included
            for row in item.numbers
            if row.name.startswith("In the price:")
        ]
        lines = (one for one in results.quote.chosen.lines if AFTER_THE_PRICE.isdisjoint(one.scope))
        assert sorted(shown) == sorted(results.words.money(line.amount) for line in lines)


def test_with_a_discount_and_a_round_total(followed_view: CustomerView):
    """What is only a matter of the sum has no page: 430, 870, 170, 200 and fuel of 27."""
    shown = {
        item.id: (row.amount, row.text)
        for item in followed_view.included
        for row in item.numbers
        if row.name.startswith("In the price:")
    }
    assert {item: amount for item, (amount, _) in shown.items()} == {
        "base": "$430.00", "slab": "$870.00", "travel": "$170.00", "finish": "$200.00",
        "surcharge": "$27.00",
    }  # fmt: skip
    assert shown["surcharge"][1].startswith("4.5% of the lines for travel and base")


def test_what_is_not_asked_for_is_not_explained(tmp_path):
    """A job without steps, drain or demolition does not speak of them."""
    ids = {item.id for item in _view(tmp_path, shop.job(), rate_book=shop.book()).included}
    assert ids == {"finish", "slab"}


@EVERY_EXAMPLE
def test_the_lines_by_what_moves_them(job_file: Path):
    """Sheet 6 has every line once, and its total is the price on sheet 1."""
    results = shop.example_results(job_file)
    view = example_view(job_file)
    change = view.change
    rows = (*change.measured, *change.fixed, *change.allowances, *change.taxes, *change.round_total)
    assert sorted(row.amount for row in rows) == sorted(
        results.words.money(line.amount) for line in results.quote.chosen.lines
    )
    assert view.change.total == view.price.total == view.agreement.total


@EVERY_EXAMPLE
def test_the_finishes_side_by_side(job_file: Path):
    """Each finish has its own total, and what it costs more or less than the chosen one."""
    results = shop.example_results(job_file)
    first, *others = example_view(job_file).finishes
    assert (first.chosen, first.difference) == (True, "")
    for column, finish in zip(others, results.quote.finishes[1:], strict=True):
        assert not column.chosen
        assert column.total == results.words.money(finish.total)
        moved = Decimal(finish.total) - results.quote.chosen.total
        assert column.difference == results.words.signed_money(moved)


class TestReferences:
    """A past job is shown only as far as its owner agreed."""

    JOB = shop.job(finish="plain", references=["here"])
    PAST: ClassVar = {"title": "Deck", "finished": "2022-06-17", "town": "Tollgate", "use": "patio",
            "finish": "broom", "area_sqft": "1940", "shows": "four winters",
            "contact": {"name": "Marta Oyelaran", "phone": "555-0131"}}  # fmt: skip

    def _shown(self, folder: Path, consent: dict[str, object]) -> tuple[str, str]:
        past = shop.as_yaml({"past_jobs": {"here": {**self.PAST, "consent": consent}}})
        (shown,) = _view(folder, self.JOB, rate_book=shop.book(), past_jobs=past).past_jobs
        assert shown.photo == shown.alt == ""
        return shown.facts, shown.contact

    def test_the_kind_and_size_of_the_work(self, tmp_path):
        """With consent alone: what was done, how large, and when; neither town nor name."""
        facts, contact = self._shown(tmp_path, {"given": "2024-06-01"})
        assert facts == "Broom finish · 1,940 sq ft · finished in June 2022"
        assert contact == ""

    def test_the_town(self, tmp_path):
        """The town where its owner agreed to it."""
        facts, contact = self._shown(tmp_path, {"given": "2024-06-01", "shows": ["town"]})
        assert facts.endswith(" · Tollgate")
        assert contact == ""

    def test_the_contact(self, tmp_path):
        """A name and a number where their owner agreed to be called."""
        facts, contact = self._shown(tmp_path, {"given": "2024-06-01", "shows": ["contact"]})
        assert "Tollgate" not in facts
        assert "Marta Oyelaran" in contact
        assert "555-0131" in contact


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
