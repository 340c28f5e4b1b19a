"""Sheet 9, the agreement: who, how much when, on what terms, and how to say yes."""

from collections.abc import Iterator, Mapping
from datetime import timedelta
from urllib.parse import quote as percent_encoded

from markupsafe import Markup

from quotegen.explain.results import Results
from quotegen.explain.sheets.change_sheet import clause
from quotegen.explain.sheets.combination import agreed_finish
from quotegen.explain.sheets.views import AgreementSheet, CompanyView
from quotegen.explain.wording import Words
from quotegen.explain.words.no_break import on_page, ties
from quotegen.explain.words.prose import comma_joined, sentence
from quotegen.explain.words.rows import Row
from quotegen.explain.words.rule_words import rule_text
from quotegen.pricing.quoted.records import PricedPayment
from quotegen.schedule.visits import Visit
from quotegen.trade.cancellation import cancel_by, sale_at_home

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
    """Build sheet 9."""
    job, words, quote = results.job, results.words, results.quote
    subject = words("reply_subject", quote=job.quote, revision=str(job.revision))
    values = {
        "company": job.company.name, "quote": job.quote, "revision": str(job.revision),
        "date": words.day(job.quote_date), "site": site_line(results),
        "customer": job.customer.name, "finish": agreed_finish(results),
        "total": words.money(quote.chosen.total),
    }  # fmt: skip
    to = f"mailto:{job.company.email}?subject={percent_encoded(subject)}&body="
    body = words("reply_body", **values)
    return AgreementSheet(
        parties=tuple(_parties(results)),
        payments=tuple(payment_rows(results)),
        total=words.money(quote.chosen.total),
        warranty=clause("warranty", results),
        terms=tuple(clause(one, results) for one in ("buried_lines", "way_in", "stopping")),
        acceptance=clause("acceptance", results),
        legal=clause("not_legal_advice", results),
        how=_how(results),
        reply_link=to + percent_encoded(_with_crlf(body)),
        reply_subject=subject,
        reply_letter=with_slots(words.labels["reply_body"], values, words),
    )


def _how(results: Results) -> str:
    """How to accept and by when, or when it was accepted."""
    job, words, accepted = results.job, results.words, results.contract.accepted_on
    if accepted is not None:
        return words("was_accepted", date=words.day(accepted), phone=job.company.phone)
    until = words.day(job.holds_until)
    return words("how_to_accept", date=until, email=job.company.email, phone=job.company.phone)


def company_view(results: Results) -> CompanyView:
    """What a customer reads of the company."""
    company, words = results.job.company, results.words
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
    company = company_view(results)
    yield Row(
        name=words("party_company"),
        text=comma_joined(
            company.name, company.address, company.phone, company.email, _taxpayer_id(results)
        ),
    )
    customer = job.customer
    named = comma_joined(customer.name, customer.phone, customer.email)
    yield Row(name=words("party_customer"), text=named)
    yield Row(name=words("party_site"), text=site_line(results))
    yield Row(name=words("party_work"), text=_work(results))
    for other in job.typed.subcontractors:
        named = comma_joined(other.name, other.does, other.address, other.license)
        yield Row(name=words("party_subcontractor"), text=named)
    yield Row(name=words("party_dates"), text=dates_sentence(results), mark="work_dates")
    yield Row(name=words("party_cancel"), text=_cancel(results))


def _taxpayer_id(results: Results) -> str:
    number = results.job.company.taxpayer_id
    return results.words("taxpayer_id", number=number) if number else ""


def _work(results: Results) -> Markup:
    """What is built, and in which finish."""
    values = {"title": results.job.title, "finish": agreed_finish(results)}
    return with_slots(results.words.labels["work_sentence"], values, results.words)


def dates_sentence(results: Results) -> str:
    """From when to when the work goes on."""
    words = results.words
    first, last = results.chosen_visits[0], results.chosen_visits[-1]
    return words("dates_sentence", start=words.day(first.first_day), end=words.day(last.last_day))


def _with_crlf(text: str) -> str:
    """End lines as a mail link must (RFC 6068, 5)."""
    return text.replace("\n", "\r\n")


def _cancel(results: Results) -> str:
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


def _about(words: Words, visit: Visit, days_after: int) -> str:
    return words("about_day", day=words.weekday(visit.last_day + timedelta(days=days_after)))


def payment_rows(results: Results) -> Iterator[Row]:
    """Each payment: when it is due, its share and day, and its amount."""
    words = results.words
    days = {visit.id: visit for visit in results.chosen_visits}
    for number, payment in enumerate(results.quote.payments, start=1):
        share = _how_much(results, payment)
        visit = days.get(payment.at_visit or "")
        about = _about(words, visit, payment.days_after) if visit else ""
        yield Row(
            name=sentence(payment.when).removesuffix("."),
            text=comma_joined(share, about),
            amount=words.money(payment.amount),
            mark=str(number),
        )


def _how_much(results: Results, payment: PricedPayment) -> str:
    """A payment as agreed: a sum, a share of the total or of what the sum leaves, the rest."""
    words = results.words
    if payment.typed is not None:
        return words("a_sum")
    if payment.share is None:
        return words("the_rest")
    share, first = words.percent(payment.share), results.quote.payments[0]
    return share if first.typed is None else words("share_of_the_rest", share=share)
