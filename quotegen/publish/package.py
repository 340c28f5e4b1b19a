"""Stage 6, publish: the views of one job become all of its files, gathered in memory."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType

from quotegen.explain.papers.cancellation_form import cancellation_form
from quotegen.explain.papers.care_card import care_card
from quotegen.explain.papers.compare_bids import compare_sheet
from quotegen.explain.papers.final_measurement import change_orders_view, final_measurement_view
from quotegen.explain.private.cost_sheet import cost_sheet
from quotegen.explain.private.law_checklist import law_sheet
from quotegen.explain.private.order_list import order_list_view
from quotegen.explain.private.phone_sheet import phone_sheet
from quotegen.explain.private.weather_sheet import weather_sheet
from quotegen.explain.results import Results
from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.sheets.past_jobs import past_job_page, shown_references
from quotegen.explain.sheets.views import CustomerView, Paper
from quotegen.pricing.costs.outcome import Drift
from quotegen.pricing.costs.owner import OwnersFigures
from quotegen.publish.data.calendar import CalendarVisit, to_ics
from quotegen.publish.data.figures import figures, to_json
from quotegen.publish.data.mail import Draft, to_eml
from quotegen.publish.manifest import Whose
from quotegen.publish.pdf import to_pdf
from quotegen.publish.web.html import render
from quotegen.publish.write import Files
from quotegen.resources import theme_names, themes_folder


@dataclass(frozen=True, slots=True, kw_only=True)
class Package:
    """All files of one job, whose they are, and the HTML documents that were printed to PDF."""

    whose: Whose
    files: Files
    printed: Mapping[str, str]


def package(results: Results, owner: OwnersFigures, drift: tuple[Drift, ...]) -> Package:
    """Gather the files of one job: `customer/` to send, `private/` for the owner alone."""
    theme = themes_folder() / results.job.company.theme
    view, later = customer_view(results), _after_signing(results)
    papers: dict[str, Paper] = {
        "quote": view,
        "door-sheet": view,
        "compare-bids": compare_sheet(results),
        "cancellation": cancellation_form(results),
        **later,
    }
    printed = {
        name: render(f"{name}.html.j2", one, results.words, theme, on_paper=True)
        for name, one in papers.items()
    }
    pdfs = {name: to_pdf(html, results.job.quote_date) for name, html in printed.items()}
    # A notice to cancel is handed over filled in (16 CFR 429.1(c)): until the days are known it is
    # the owner's, to be filled in by hand where the sale is signed.
    unsigned = {"cancellation"} if results.contract.accepted_on is None else set[str]()
    customer = {
        **{f"{name}.pdf": pdf for name, pdf in pdfs.items() if name not in unsigned},
        **{
            f"{name}.html": render(f"{name}.html.j2", papers[name], results.words, theme).encode()
            for name in ("quote", "compare-bids", *later)
        },
        **_past_jobs(results, theme),
        "email.eml": _email(results, view, theme, pdfs["quote"]),
        "visits.ics": _calendar(results),
    }
    private = {**_private(results, owner, drift, theme),
               **{f"{name}.pdf": pdfs[name] for name in unsigned}}  # fmt: skip
    files = {f"customer/{name}": data for name, data in customer.items()}
    files |= {f"private/{name}": data for name, data in private.items()}
    return Package(
        whose=_whose(results), files=MappingProxyType(files), printed=MappingProxyType(printed)
    )


def _whose(results: Results) -> Whose:
    job = results.job
    return Whose(quote=job.quote, customer=job.customer.name, place=job.source("quote"))


def _past_jobs(results: Results, theme: Path) -> dict[str, bytes]:
    """Render a page for each past job that is shown, numbered as on sheet 8."""
    pages = (past_job_page(results, one) for one in shown_references(results))
    return {
        f"past-job-{number}.html": render("past-job.html.j2", page, results.words, theme).encode()
        for number, page in enumerate(pages, start=1)
    }


def specimens(results: Results) -> Files:
    """Render the specimen of each theme, web page and PDF, with the company's accent and logo."""
    view, files = customer_view(results), dict[str, bytes]()
    for name in theme_names():
        theme = themes_folder() / name
        html = render("specimen.html.j2", view, results.words, theme)
        paper = render("specimen.html.j2", view, results.words, theme, on_paper=True)
        files[f"{name}.html"] = html.encode()
        files[f"{name}.pdf"] = to_pdf(paper, results.job.quote_date)
    return files


def _after_signing(results: Results) -> dict[str, Paper]:
    """Build the papers that follow the quote: after measuring, after a change, at hand-over."""
    contract, papers = results.contract, dict[str, Paper]()
    if contract.remeasure is not None:
        papers["final-measurement"] = final_measurement_view(results, contract.remeasure)
    if contract.changes:
        papers["changes"] = change_orders_view(results)
    if results.job.typed.completed is not None:
        papers["care"] = care_card(results, results.job.typed.completed)
    return papers


def _private(
    results: Results, owner: OwnersFigures, drift: tuple[Drift, ...], theme: Path
) -> Files:
    sheets: dict[str, Paper] = {
        "cost-sheet": cost_sheet(results, owner, drift),
        "phone-sheet": phone_sheet(results, owner),
        "order-list": order_list_view(results, owner),
        "law-checklist": law_sheet(results, results.laws),
    }
    if results.job.typed.forecast is not None:
        sheets["weather"] = weather_sheet(results, results.job.typed.forecast)
    pages = {
        f"{name}.html": render(f"{name}.html.j2", sheet, results.words, theme).encode()
        for name, sheet in sheets.items()
    }
    return {**pages, "figures.json": to_json(figures(results, owner))}


def _email(results: Results, view: CustomerView, theme: Path, pdf: bytes) -> bytes:
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
        for visit in results.days.visits
    )
    name = words("calendar_name", title=job.title, company=job.company.name)
    dated = max((job.quote_date, *(change.date for change in job.typed.changes)))
    return to_ics(visits, name, dated, job.revision + len(job.typed.changes))
