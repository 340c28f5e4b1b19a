"""The customer view: the six sheets of the quote, its terms, and the guide beside them."""

from quotegen.explain.guide.guide import guide_of
from quotegen.explain.results import Results
from quotegen.explain.sheets.agreement_sheet import agreement_sheet, notice_of_cancellation
from quotegen.explain.sheets.choices import choice_sheet
from quotegen.explain.sheets.day_sheet import day_sheet
from quotegen.explain.sheets.door_sheet import door_sheet
from quotegen.explain.sheets.finish_sheet import finish_sheet
from quotegen.explain.sheets.money_sheet import money_sheet, rounding_sentence
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.past_jobs import photo_views
from quotegen.explain.sheets.price_sheet import price_sheet
from quotegen.explain.sheets.slab_sheet import slab_sheet
from quotegen.explain.sheets.views import CustomerView
from quotegen.explain.words.prose import clause, prose
from quotegen.explain.words.rows import Prose


def customer_view(results: Results) -> CustomerView:
    """Build all that a homeowner reads of the quote."""
    job, words = results.job, results.words
    title = words("document_title", title=job.title, site=job.site.address, quote=job.quote)
    return CustomerView(
        head=paper_head(results, title, job.quote_date),
        price=price_sheet(results),
        slab=slab_sheet(results),
        finishes=finish_sheet(results),
        choice=choice_sheet(results),
        money=money_sheet(results),
        days=day_sheet(results),
        agreement=agreement_sheet(results),
        terms=_terms(results),
        photos=photo_views(job.photos),
        # It is handed over filled in (16 CFR 429.1(c)), so it waits for the day of signing.
        notice=notice_of_cancellation(results) if results.contract.accepted_on else None,
        guide=guide_of(results),
        door=door_sheet(results),
    )


def _terms(results: Results) -> tuple[Prose, ...]:
    """Every clause that binds, in the order of its page, and how we round."""
    said = rounding_sentence(results)
    rounding = prose("rounding", results.words("rounding"), said, results)
    return (*(clause(name, results) for name in results.content.clauses), rounding)
