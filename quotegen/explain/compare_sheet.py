"""The sheet for comparing bids: what every bidder can be asked. It names nobody but us."""

from quotegen.explain.compare_answers import answer
from quotegen.explain.paper_head import paper_head
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


def _row(results: Results, item: str) -> CompareRow:
    page = results.content.scope[item].front
    return CompareRow(
        title=page.title, ours=answer(results, item), ask=page.ask, check=page.check
    )  # fmt: skip
