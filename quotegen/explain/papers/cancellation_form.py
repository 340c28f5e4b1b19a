"""The federal notice of cancellation, in duplicate, for a sale signed at the buyer's home."""

from dataclasses import dataclass
from datetime import date

from quotegen.explain.results import Results
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.views import PaperHead
from quotegen.explain.words.prose import comma_joined
from quotegen.trade.cancellation import cancel_by, sale_at_home


@dataclass(frozen=True, slots=True, kw_only=True)
class CancellationForm:
    """The form of 16 CFR 429.1(b); both days are blank lines until the quote is signed.

    Attributes:
        days: how many business days, written out; longer where a state gives this buyer more.
    """

    head: PaperHead
    seller: str
    days: str
    signed: str
    last_day: str


def cancellation_form(results: Results) -> CancellationForm:
    """Build the form: the wording of the rule, the seller, and the days once they are known."""
    job, words, signed = results.job, results.words, results.contract.accepted_on
    state, over_65 = job.site.state, job.customer.over_65
    longer = over_65 and sale_at_home(state).longer_at_65
    title = words("cancel_form_title", quote=job.quote)
    company = job.company
    return CancellationForm(
        head=paper_head(results, title, job.quote_date),
        seller=comma_joined(company.name, company.address, company.town, company.state),
        days=words("cancel_five_days" if longer else "cancel_three_days"),
        signed=words.day(signed) if signed else "",
        last_day=_last_day(results, signed) if signed else "",
    )


def _last_day(results: Results, signed: date) -> str:
    job = results.job
    last = cancel_by(signed, results.rules, job.site.state, over_65=job.customer.over_65)
    return results.words.day(last.day)
