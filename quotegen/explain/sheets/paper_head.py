"""The head of every paper: who, for whom, which quote, of which date."""

from datetime import date

from quotegen.explain.results import Results
from quotegen.explain.sheets.agreement_sheet import company_view, site_line
from quotegen.explain.sheets.views import PaperHead
from quotegen.reading.images.photos import data_address


def paper_head(results: Results, title: str, on: date) -> PaperHead:
    """Fill the head of a paper.

    Args:
        results: of the job.
        title: of this paper.
        on: the date that it bears.
    """
    job, words = results.job, results.words
    is_open = results.contract.accepted_on is None and on <= job.holds_until
    return PaperHead(
        language=words.locale.partition("_")[0],
        title=title,
        accent=job.company.accent,
        paper_size=job.paper.value,
        logo=data_address(job.logo.kind, job.logo.data) if job.logo else "",
        company=company_view(job.company, words),
        customer=job.customer.name,
        site=site_line(results),
        quote=job.quote,
        revision=str(job.revision),
        draft=draft_mark(results),
        date=words.day(on),
        holds_until=words.day(job.holds_until) if is_open else "",
    )


def draft_mark(results: Results) -> str:
    """Return what marks a paper that was not issued; after the yes it says nothing of an offer."""
    if results.issued:
        return ""
    accepted = results.contract.accepted_on is not None
    return results.words("draft_accepted" if accepted else "draft")
