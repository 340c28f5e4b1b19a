"""The combinations in a table, for paper and for a page without scripts."""

from collections.abc import Iterator

from quotegen.explain.results import Results
from quotegen.explain.sheets.combination import surface_name
from quotegen.explain.sheets.views import TotalsRow
from quotegen.explain.words.prose import in_a_sentence
from quotegen.pricing.quoted.records import Combination

Extras = tuple[str, ...]

ALL_SETS = 2
"""Up to so many extras, each set of them has a column; beyond, none, each alone, and all."""

MOST_ROWS = 24
"""Up to so many rows, all finishes and colors are printed; beyond, one change at a time."""


def columns_of(results: Results) -> tuple[str, ...]:
    """The heads of the columns: the extras that each adds."""
    words, rates = results.words, results.job.rate_book.rates
    return tuple(
        words(
            "totals_with", names=words.listing(tuple(in_a_sentence(rates[e].name) for e in extras))
        )
        if extras
        else words("totals_without" if results.job.extras else "totals_plain")
        for extras in _sets(results)
    )


def rows_of(results: Results) -> tuple[TotalsRow, ...]:
    """A row for each choice of finishes and colors, that of the quote first.

    Choices that lead to the same slab have one row.
    """
    words, sets = results.words, _sets(results)
    totals = {(_surface(one), one.extras): one.total for one in results.quote.combinations}
    return tuple(dict.fromkeys(
        TotalsRow(
            name=surface_name(results, one),
            visits=str(one.visits),
            totals=tuple(words.money(totals[_surface(one), extras]) for extras in sets),
        )
        for one in _shown(results)
    ))  # fmt: skip


def note_of(results: Results) -> str:
    """That there are more combinations than the table shows, if there are."""
    every = len(results.quote.combinations)
    shown = len(tuple(_shown(results))) * len(_sets(results))
    if shown == every:
        return ""
    return results.words("totals_left_out", shown=str(shown), every=str(every))


def _shown(results: Results) -> Iterator[Combination]:
    plain = tuple(one for one in results.quote.combinations if not one.extras)
    quoted = plain[0]
    for one in plain:
        changes = (one.finish != quoted.finish, one.colors != quoted.colors)
        if len(plain) <= MOST_ROWS or sum(changes) + len(one.alternates) <= 1:
            yield one


def _sets(results: Results) -> tuple[Extras, ...]:
    sets = dict.fromkeys(one.extras for one in results.quote.combinations)
    every = len(results.job.extras)
    if every <= ALL_SETS:
        return tuple(sets)
    return tuple(one for one in sets if len(one) in {0, 1, every})


def _surface(one: Combination) -> tuple[str, tuple[tuple[str, str], ...], tuple[str, ...]]:
    return one.finish, one.alternates, one.colors
