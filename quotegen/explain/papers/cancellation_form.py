"""The notice of cancellation as a paper of its own, to be filled in by hand where it is signed."""

from dataclasses import dataclass

from quotegen.explain.results import Results
from quotegen.explain.sheets.agreement_sheet import notice_of_cancellation
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.views import Notice, PaperHead


@dataclass(frozen=True, slots=True, kw_only=True)
class CancellationForm:
    """The federal form in duplicate."""

    head: PaperHead
    notice: Notice


def cancellation_form(results: Results) -> CancellationForm:
    """Build the form; once the quote is signed, quote.pdf holds it with its dates."""
    job = results.job
    title = results.words("cancel_form_title", quote=job.quote)
    return CancellationForm(
        head=paper_head(results, title, job.quote_date), notice=notice_of_cancellation(results)
    )
