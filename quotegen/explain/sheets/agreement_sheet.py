"""Sheet 6, the agreement: who, what, on what terms, whom to call, how to say yes or to cancel."""

from collections.abc import Iterator, Mapping
from urllib.parse import quote as percent_encoded

from markupsafe import Markup

from quotegen.explain.results import Results
from quotegen.explain.sheets.combination import agreed_finish
from quotegen.explain.sheets.past_jobs import reference_view, shown_references
from quotegen.explain.sheets.views import AgreementSheet, CompanyView, Notice, Reply
from quotegen.explain.wording import Words
from quotegen.explain.words.no_break import on_page, ties
from quotegen.explain.words.prose import comma_joined, short_clause
from quotegen.explain.words.rows import Row
from quotegen.explain.words.rule_words import rule_text
from quotegen.reading.files.company import Company
from quotegen.trade.cancellation import cancel_by, sale_at_home

ON_THE_SHEET = 3
"""So many past jobs stand on sheet 6, those with the most in common first."""

SLOTS = frozenset({"finish", "total"})
"""The values in a text that a choice on the page changes."""


def with_slots(text: str, values: Mapping[str, str], words: Words) -> Markup:
    """Fill values into a text of ours, each of `SLOTS` in an element that a choice can refill.

    Args:
        text: with `{name}` for each value.
        values: every value of the text.
        words: of the language, whose numbers are tied.
    """
    tied = ties(words)
    escaped = {name: on_page(value, tied) for name, value in values.items()}
    return on_page(text, tied).format(**{
        name: Markup('<span data-slot="{}">{}</span>').format(name, value)
        if name in SLOTS
        else value
        for name, value in escaped.items()
    })  # fmt: skip


def agreement_sheet(results: Results) -> AgreementSheet:
    """Build sheet 6."""
    return AgreementSheet(
        parties=tuple(_parties(results)),
        warranty=short_clause("warranty", results),
        promised=short_clause("promised", results),
        past_jobs=tuple(
            reference_view(results, one) for one in shown_references(results)[:ON_THE_SHEET]
        ),
        how=how_to_accept(results),
        cancel=cancel_sentence(results),
        cancel_statement="" if results.contract.accepted_on else results.words("cancel_statement"),
        yes=reply(results, "yes"),
        ask=reply(results, "ask"),
    )


def how_to_accept(results: Results) -> str:
    """How to say yes and by when, or when it was said."""
    job, words, accepted = results.job, results.words, results.contract.accepted_on
    phone = job.company.phone
    if accepted is not None:
        return words("was_accepted", date=words.day(accepted), phone=phone)
    return words("how_to_accept", date=words.weekday(job.holds_until), phone=phone)


def reply(results: Results, kind: str) -> Reply:
    """The letter that says yes to the quote, or that asks for another choice."""
    job, words = results.job, results.words
    values = {
        "company": job.company.name, "quote": job.quote, "revision": str(job.revision),
        "date": words.day(job.quote_date), "site": site_line(results),
        "customer": job.customer.name, "finish": agreed_finish(results),
        "total": words.money(results.quote.chosen.total),
    }  # fmt: skip
    subject = words(f"{kind}_subject", **values)
    body = words(f"{kind}_body", **values)
    to = f"mailto:{job.company.email}?subject={percent_encoded(subject)}&body="
    return Reply(
        link=to + percent_encoded(_with_crlf(body)),
        subject=subject,
        letter=with_slots(words.labels[f"{kind}_body"], values, words),
    )


def company_view(company: Company, words: Words) -> CompanyView:
    """What a customer reads of the company."""
    insurance = company.insurance
    return CompanyView(
        name=company.name,
        owner=company.owner,
        address=comma_joined(company.address, company.town, company.state),
        phone=company.phone,
        phone_link="tel:" + "".join(c for c in company.phone if c.isdigit() or c == "+"),
        email=company.email,
        license=words("license", number=company.license) if company.license else "",
        insurance=words(
            "insurance", carrier=insurance.carrier, covers=insurance.covers, phone=insurance.phone
        )
        if insurance
        else "",
    )


def site_line(results: Results) -> str:
    """The address of the site on one line."""
    site = results.job.site
    return comma_joined(site.address, site.town, site.state)


def _parties(results: Results) -> Iterator[Row]:
    job, words = results.job, results.words
    customer, company = job.customer, company_view(job.company, words)
    named = comma_joined(customer.name, customer.phone, customer.email, site_line(results))
    yield Row(name=words("party_customer"), text=named)
    backing = " ".join(f"{one}." for one in (company.license, company.insurance) if one)
    named = comma_joined(
        company.name, company.address, company.phone, company.email, _taxpayer_id(results)
    )
    we = f"{named}. {backing}"
    yield Row(name=words("party_company"), text=we.strip())
    for other in job.typed.subcontractors:
        named = comma_joined(other.name, other.does, other.address, other.license)
        yield Row(name=words("party_subcontractor"), text=named)
    yield Row(name=words("party_work"), text=_work(results))
    yield Row(name=words("party_price"), text=_price(results))
    yield Row(name=words("party_dates"), text=dates_sentence(results), mark="work_dates")


def _taxpayer_id(results: Results) -> str:
    number = results.job.company.taxpayer_id
    return results.words("taxpayer_id", number=number) if number else ""


def _work(results: Results) -> Markup:
    """What is built, and in which finish."""
    values = {"title": results.job.title, "finish": agreed_finish(results)}
    return with_slots(results.words.labels["work_sentence"], values, results.words)


def _price(results: Results) -> Markup:
    """The total, and the sheets that say how it follows the tape and how it is paid."""
    values = {"total": results.words.money(results.quote.chosen.total)}
    return with_slots(results.words.labels["price_sentence"], values, results.words)


def dates_sentence(results: Results) -> str:
    """From when to when the work goes on."""
    words = results.words
    first, last = results.chosen_visits[0], results.chosen_visits[-1]
    return words("dates_sentence", start=words.day(first.first_day), end=words.day(last.last_day))


def _with_crlf(text: str) -> str:
    """End lines as a mail link must (RFC 6068, 5)."""
    return text.replace("\n", "\r\n")


def cancel_sentence(results: Results) -> str:
    """Until when the customer may cancel: the rule, and a date once the quote is signed."""
    job, words, accepted = results.job, results.words, results.contract.accepted_on
    state, here = job.site.state, sale_at_home(job.site.state)
    sentences = []
    if accepted is None:
        sentences.append(words("cancel_rule"))
        if here.saturday_unsettled:
            sentences.append(words("cancel_saturday"))
        if job.customer.over_65 and here.longer_at_65:
            days = rule_text(results, here.longer_at_65)
            sentences.append(words("cancel_rule_65", days=days))
    else:
        last = cancel_by(accepted, results.rules, state)
        day = words.day(last.day)
        sentences.append(words("cancel_until", signed=words.day(accepted), day=day))
        if last.is_the_later_count:
            sentences.append(words("cancel_later"))
        if job.customer.over_65 and here.longer_at_65:
            senior = cancel_by(accepted, results.rules, state, over_65=True).day
            sentences.append(words("cancel_until_65", day=words.day(senior)))
    if here.by_email(accepted or job.quote_date):
        company = job.company
        sentences.append(words("cancel_by_email", email=company.email, phone=company.phone))
    return " ".join(sentences)


def notice_of_cancellation(results: Results) -> Notice:
    """The federal form: the seller, how many days, and the two dates once the quote is signed."""
    job, words, signed = results.job, results.words, results.contract.accepted_on
    company, state, over_65 = job.company, job.site.state, job.customer.over_65
    longer = over_65 and sale_at_home(state).longer_at_65
    last = cancel_by(signed, results.rules, state, over_65=over_65).day if signed else None
    return Notice(
        seller=comma_joined(company.name, company.address, company.town, company.state),
        days=words("cancel_five_days" if longer else "cancel_three_days"),
        signed=words.day(signed) if signed else "",
        last_day=words.day(last) if last else "",
    )
