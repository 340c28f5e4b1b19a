"""Checks of the company file: its taxes, its theme, and the visits at which payments fall due."""

from collections.abc import Iterator
from pathlib import Path

from quotegen.problem import Problem
from quotegen.reading.checks.covers import unknown_item
from quotegen.reading.files.company import EVERYTHING, Company
from quotegen.reading.files.rate_book import RateBook
from quotegen.reading.yaml.near import near_miss, renamed_or_near
from quotegen.reading.yaml.typed_file import Typed
from quotegen.resources import own_themes, theme_names


def company_faults(company: Typed[Company], scope_items: frozenset[str]) -> Iterator[Problem]:
    """Yield taxes on something that no price covers, taxes with one id, and an unknown theme."""
    seen: set[str] = set()
    for index, tax in enumerate(company.value.tax):
        for which, item in enumerate(tax.covers):
            if item != EVERYTHING and item not in scope_items:
                path = ("tax", index, "covers", which)
                yield unknown_item(company, path, item, {*scope_items, EVERYTHING})
        if tax.id in seen:
            said = f"there is already a tax `{tax.id}`"
            yield company.fault(("tax", index, "id"), "tax-twice", said, "give each its own id")
        seen.add(tax.id)
    theme, names = company.value.theme, theme_names(own_themes(Path(company.places.file)))
    if theme not in names:
        said = f"there is no theme `{theme}`"
        yield company.fault(("theme",), "no-theme", said, renamed_or_near(theme, names))


def payment_faults(company: Typed[Company], book: RateBook) -> Iterator[Problem]:
    """Yield payments that fall due at a visit that the book does not have."""
    for index, payment in enumerate(company.value.payments):
        if payment.at_visit and payment.at_visit not in book.visits:
            said = f"there is no visit `{payment.at_visit}` in the rate book"
            hint = near_miss(payment.at_visit, book.visits)
            yield company.fault(("payments", index, "at_visit"), "unknown-visit", said, hint)
