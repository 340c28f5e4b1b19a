"""The federal notice of cancellation, in duplicate, for a sale signed at the buyer's home."""

from dataclasses import dataclass

from quotegen.explain.results import Results
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.views import PaperHead
from quotegen.explain.words.prose import comma_joined
from quotegen.trade.cancellation import cancel_by


@dataclass(frozen=True, slots=True, kw_only=True)
class CancellationForm:
    """The form of 16 CFR 429.1(b); both days are blank lines until the quote is signed."""

    head: PaperHead
    seller: str
    signed: str
    last_day: str


def cancellation_form(results: Results) -> CancellationForm:
    """Build the form: the wording of the rule, the seller, and the days once they are known."""
    job, words, signed = results.job, results.words, results.contract.accepted_on
    title = words("cancel_form_title", quote=job.quote)
    company = job.company
    return CancellationForm(
        head=paper_head(results, title, job.quote_date),
        seller=comma_joined(company.name, company.address, company.town, company.state),
        signed=words.day(signed) if signed else "",
        last_day=words.day(cancel_by(signed, results.rules).day) if signed else "",
    )
