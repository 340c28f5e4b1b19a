"""The sheet for comparing bids: what every bidder can be asked. It names nobody but us."""

from quotegen.explain.numbers import numbers_for
from quotegen.explain.paper_head import paper_head
from quotegen.explain.price_sheet import in_a_dozen_words
from quotegen.explain.results import Results
from quotegen.explain.views import CompareRow, CompareView


def compare_sheet(results: Results) -> CompareView:
    """Build the sheet from our own scope alone; other bids have no way into it."""
    job, words = results.job, results.words
    title = words("compare_title", title=job.title, site=job.site.address)
    return CompareView(
        **paper_head(results, title, job.quote_date),
        rows=tuple(_row(results, item) for item in results.scope_items() if item != "minimum"),
        total=words.money(results.quote.chosen.total),
    )


BY_NUMBER = ("dig_out", "forms", "isolation", "curing", "travel", "demolition", "steps", "drain")
"""The scope items of which a number says more than the name of their line."""


def _row(results: Results, item: str) -> CompareRow:
    page = results.content.scope[item].front
    return CompareRow(
        title=page.title,
        ours=_number(results, item) or in_a_dozen_words(item, results) or page.short,
        ask=page.ask,
        check=page.check,
    )


def _number(results: Results, item: str) -> str:
    numbers = numbers_for(item, results) if item in BY_NUMBER else ()
    if not numbers:
        return ""
    return results.words("compare_number", name=numbers[0].name, text=numbers[0].text)
