"""The customer view: all sheets of the quote, one after another."""

from quotegen.explain.pictures.charts import price_bars
from quotegen.explain.results import Results
from quotegen.explain.sheets.agreement_sheet import agreement_sheet
from quotegen.explain.sheets.change_sheet import change_sheet
from quotegen.explain.sheets.choices import choice_sheet
from quotegen.explain.sheets.day_sheet import day_sheet
from quotegen.explain.sheets.door_sheet import door_sheet
from quotegen.explain.sheets.finish_sheet import extras, finish_columns
from quotegen.explain.sheets.option_rows import alternate_rows, color_rows
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.past_jobs import reference_view, shown_references
from quotegen.explain.sheets.plan_sheet import plan_sheet
from quotegen.explain.sheets.price_sheet import price_sheet
from quotegen.explain.sheets.responsibilities import responsibility_rows
from quotegen.explain.sheets.standard_sheet import standard_sheet
from quotegen.explain.sheets.views import CustomerView, IncludedItem
from quotegen.explain.words.numbers import numbers_for
from quotegen.explain.words.prose import html, sections


def customer_view(results: Results) -> CustomerView:
    """Build all that a homeowner reads of the quote."""
    job, words = results.job, results.words
    title = words("document_title", title=job.title, site=job.site.address, quote=job.quote)
    return CustomerView(
        head=paper_head(results, title, job.quote_date),
        price=price_sheet(results),
        plan=plan_sheet(results),
        included=tuple(_included(item, results) for item in results.scope_items()),
        not_included=responsibility_rows(results),
        finishes=finish_columns(results),
        bars=price_bars(results),
        choice=choice_sheet(results),
        extras=extras(results),
        alternates=alternate_rows(results),
        colors=color_rows(results),
        days=day_sheet(results),
        change=change_sheet(results),
        standards=standard_sheet(results),
        past_jobs=tuple(reference_view(results, one) for one in shown_references(results)),
        agreement=agreement_sheet(results),
        door=door_sheet(results),
    )


def _included(item: str, results: Results) -> IncludedItem:
    page = results.content.scope[item]
    what, why, check, normal = (html(part, results) for part in sections(page.markdown))
    return IncludedItem(
        id=item,
        title=page.front.title,
        what_html=what,
        why_html=why,
        check_html=check,
        normal_html=normal,
        numbers=numbers_for(item, results),
    )
