"""Stage 6, publish: the views of one job become all of its files, gathered in memory."""

from collections.abc import Mapping
from dataclasses import dataclass
from importlib.resources.abc import Traversable
from types import MappingProxyType

from quotegen.explain.cancellation_form import cancellation_form
from quotegen.explain.customer import customer_view
from quotegen.explain.law_sheet import law_sheet
from quotegen.explain.order_list import order_list_view
from quotegen.explain.private import private_sheet
from quotegen.explain.results import Results
from quotegen.explain.statement import change_orders_view, statement_view
from quotegen.explain.views import CustomerView, Paper
from quotegen.explain.weather_sheet import weather_sheet
from quotegen.pricing.records import FinishCosts
from quotegen.publish.artifacts import Artifacts, joined, under
from quotegen.publish.calendar import CalendarVisit, to_ics
from quotegen.publish.figures import figures, to_json
from quotegen.publish.html import render
from quotegen.publish.mail import Draft, to_eml
from quotegen.publish.pdf import to_pdf


@dataclass(frozen=True, slots=True, kw_only=True)
class Package:
    """All files of one job, and the HTML documents that were printed to PDF."""

    artifacts: Artifacts
    printed: Mapping[str, str]


def package(results: Results, costs: tuple[FinishCosts, ...], theme: Traversable) -> Package:
    """Gather the package of one job: what the customer gets, and what stays in the truck."""
    view = customer_view(results)
    printed = {
        name: render(f"{name}.html.j2", view, results.words, theme)
        for name in ("quote", "door-sheet")
    }
    pdfs = {name: to_pdf(html, results.job.quote_date) for name, html in printed.items()}
    after = _after_signing(results, theme)
    customer = {
        **after,
        "cancellation.pdf": to_pdf(_cancellation(results, theme), results.job.quote_date),
        "quote.html": printed["quote"].encode(),
        "quote.pdf": pdfs["quote"],
        "door-sheet.pdf": pdfs["door-sheet"],
        "email.eml": _email(results, view, theme, pdfs["quote"]),
        "visits.ics": _calendar(results),
    }
    return Package(
        artifacts=joined(
            under("customer", customer), under("private", _private(results, costs, theme))
        ),
        printed=MappingProxyType(printed),
    )


def _cancellation(results: Results, theme: Traversable) -> str:
    return render("cancellation.html.j2", cancellation_form(results), results.words, theme)


def _after_signing(results: Results, theme: Traversable) -> dict[str, bytes]:
    """Return the papers that are signed after the quote, each as a page and for print."""
    contract, files = results.contract, dict[str, bytes]()
    papers: dict[str, Paper] = {}
    if contract.remeasure is not None:
        papers["measured"] = statement_view(results, contract.remeasure)
    if contract.changes:
        papers["changes"] = change_orders_view(results)
    for name, view in papers.items():
        html = render(f"{name}.html.j2", view, results.words, theme)
        files[f"{name}.html"] = html.encode()
        files[f"{name}.pdf"] = to_pdf(html, results.job.quote_date)
    return files


def _private(results: Results, costs: tuple[FinishCosts, ...], theme: Traversable) -> Artifacts:
    sheet = private_sheet(results, costs)
    return {
        **_weather(results, theme),
        "cost-sheet.html": render("cost-sheet.html.j2", sheet, results.words, theme).encode(),
        "order-list.html": render(
            "order-list.html.j2", order_list_view(results), results.words, theme
        ).encode(),
        "law-checklist.html": render(
            "law-checklist.html.j2", law_sheet(results, results.laws), results.words, theme
        ).encode(),
        "figures.json": to_json(figures(results, costs)),
    }


def _weather(results: Results, theme: Traversable) -> Artifacts:
    forecast = results.job.forecast
    if forecast is None:
        return {}
    view = weather_sheet(results, forecast)
    return {"weather.html": render("weather.html.j2", view, results.words, theme).encode()}


def _email(results: Results, view: CustomerView, theme: Traversable, pdf: bytes) -> bytes:
    job, words = results.job, results.words
    return to_eml(Draft(
        sender_name=job.company.name,
        sender=job.company.email,
        recipient_name=job.customer.name,
        recipient=job.customer.email or "",
        subject=words("email_subject", quote=job.quote, title=job.title, site=job.site.address),
        plain=render("email.txt.j2", view, words, theme),
        html=render("email.html.j2", view, words, theme),
        attachment_name=f"quote-{job.quote}-{job.revision}.pdf",
        attachment=pdf,
        dated=job.quote_date,
    ))  # fmt: skip


def _calendar(results: Results) -> bytes:
    job, words = results.job, results.words
    domain = job.company.email.partition("@")[2]
    visits = tuple(
        CalendarVisit(
            uid=f"{job.quote}-{visit.id}@{domain}",
            summary=words("visit_summary", company=job.company.name, visit=visit.name),
            description=words("visit_description", quote=job.quote, phone=job.company.phone),
            location=f"{job.site.address}, {job.site.town}",
            first_day=visit.first_day,
            last_day=visit.last_day,
        )
        for visit in results.chosen_visits
    )
    name = words("calendar_name", title=job.title, company=job.company.name)
    return to_ics(visits, name, job.quote_date, job.revision)
