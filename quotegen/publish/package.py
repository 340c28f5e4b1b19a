"""Stage 6, publish: the views of one job become all of its files, gathered in memory."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from types import MappingProxyType

from quotegen.explain.guide.guide import guide_title
from quotegen.explain.papers.calendar_days import calendar_days, changes_so_far, last_changed
from quotegen.explain.papers.cancellation_form import cancellation_form
from quotegen.explain.papers.care_card import care_card
from quotegen.explain.papers.compare_bids import compare_sheet
from quotegen.explain.papers.final_measurement import change_orders_view, final_measurement_view
from quotegen.explain.papers.letters import Letter, letters_of
from quotegen.explain.papers.measuring_sheet import measuring_sheet
from quotegen.explain.papers.past_jobs_page import past_jobs_page
from quotegen.explain.private.cost_sheet import cost_sheet
from quotegen.explain.private.crew_sheet import crew_sheet
from quotegen.explain.private.law_checklist import law_sheet
from quotegen.explain.private.order_list import order_list_view
from quotegen.explain.private.phone_sheet import phone_sheet
from quotegen.explain.private.weather_sheet import weather_sheet
from quotegen.explain.results import Results
from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.sheets.paper_head import draft_mark
from quotegen.explain.sheets.views import Paper
from quotegen.explain.wording import Words
from quotegen.pricing.costs.outcome import Drift
from quotegen.pricing.costs.owner import OwnersFigures
from quotegen.publish.data.calendar import CalendarEvent, Status, to_ics
from quotegen.publish.data.figures import figures, to_json
from quotegen.publish.data.mail import Draft, to_eml
from quotegen.publish.manifest import Whose
from quotegen.publish.pdf import page_count, to_pdf
from quotegen.publish.web.html import render
from quotegen.publish.web.themes import theme_of, themes_for
from quotegen.publish.write import Files

ON_PAPER_ALONE = frozenset({"door-sheet", "measuring-sheet"})
"""Papers that are no web page too."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Package:
    """All files of one job, whose they are, and the HTML documents that were printed to PDF."""

    whose: Whose
    files: Files
    printed: Mapping[str, str]


def package(results: Results, owner: OwnersFigures, drift: tuple[Drift, ...]) -> Package:
    """Gather the files of one job: `customer/` to send, `private/` for the owner alone."""
    theme = theme_of(results.job)
    view, later = customer_view(results), _after_signing(results)
    papers: dict[str, Paper] = {
        "quote": view,
        "guide": replace(view, head=replace(view.head, title=guide_title(results))),
        "door-sheet": view,
        "compare-bids": compare_sheet(results),
        "measuring-sheet": measuring_sheet(results),
        **({"past-jobs": past_jobs_page(results)} if view.agreement.past_jobs else {}),
        **later,
    }
    in_hand = crew_sheet(results, owner.job.photos)
    crew = render("crew-sheet.html.j2", in_hand, results.words, theme, on_paper=True)
    printed = {
        name: render(f"{name}.html.j2", one, results.words, theme, on_paper=True)
        for name, one in papers.items()
    }
    pdfs = {f"{name}.pdf": _print(html, results) for name, html in printed.items()}
    pages = {
        f"{name}.html": render(f"{name}.html.j2", one, results.words, theme).encode()
        for name, one in papers.items()
        if name not in ON_PAPER_ALONE
    }
    customer = {
        **pdfs,
        **pages,
        **_letters(results, theme, {**pdfs, **pages}),
        "visits.ics": _calendar(results),
    }
    private = {"crew-sheet.pdf": _print(crew, results), **_private(results, owner, drift, theme)}
    if view.notice is None:
        form = render(
            "cancellation.html.j2", cancellation_form(results), results.words, theme, on_paper=True
        )
        private["cancellation.pdf"] = _print(form, results)
    files = {f"customer/{name}": data for name, data in customer.items()}
    files |= {f"private/{name}": data for name, data in private.items()}
    return Package(
        whose=_whose(results), files=MappingProxyType(files), printed=MappingProxyType(printed)
    )


def quote_page(results: Results) -> bytes:
    """Return quote.html alone, as `package` writes it, with nothing printed."""
    theme = theme_of(results.job, results.job.company.theme)
    return render("quote.html.j2", customer_view(results), results.words, theme).encode()


def _print(html: str, results: Results) -> bytes:
    return to_pdf(html, results.job.quote_date)


def _whose(results: Results) -> Whose:
    job = results.job
    return Whose(quote=job.quote, customer=job.customer.name, place=job.source("quote"))


def specimens(results: Results) -> Files:
    """Render the specimen of each theme, the company's own too, with its accent and logo."""
    view, files = customer_view(results), dict[str, bytes]()
    for name in themes_for(results.job):
        theme = theme_of(results.job, name)
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


def _letters(results: Results, theme: Path, made: Mapping[str, bytes]) -> dict[str, bytes]:
    """Write a draft for each letter that the stage of the job calls for."""
    return {
        f"email-{letter.name}.eml" if letter.name else "email.eml": _draft(
            results, letter, theme, {name: made[name] for name in letter.attached}
        )
        for letter in letters_of(results)
    }


def _draft(results: Results, letter: Letter, theme: Path, attached: Mapping[str, bytes]) -> bytes:
    job, words = results.job, results.words
    listed = tuple(_file_line(words, name, data) for name, data in attached.items())
    letter = replace(letter, attached=listed)
    return to_eml(Draft(
        sender_name=job.company.name,
        sender=job.company.email,
        recipient_name=job.customer.name,
        recipient=job.customer.email or "",
        subject=_marked(results, letter.subject),
        plain=render("email.txt.j2", letter, words, theme),
        html=render("email.html.j2", letter, words, theme),
        attached={f"{job.quote}-{name}": data for name, data in attached.items()},
        dated=letter.on,
    ))  # fmt: skip


def _file_line(words: Words, name: str, data: bytes) -> str:
    """A file that goes along: its name, how long it is, and what it is."""
    about = words(f"letter_file_{name.replace('.', '_').replace('-', '_')}")
    pages = page_count(data)
    if pages:
        return words.count("letter_file_pages", pages, name=name, about=about)
    return words("letter_file", name=name, about=about)


def _marked(results: Results, text: str) -> str:
    """Return a subject or a name with the mark of a draft before it, where this is one."""
    mark = draft_mark(results)
    return results.words("draft_of", draft=mark, text=text) if mark else text


def _calendar(results: Results) -> bytes:
    job, words = results.job, results.words
    domain = job.company.email.partition("@")[2]
    sure = Status.TENTATIVE if results.contract.accepted_on is None else Status.CONFIRMED
    events = tuple(
        CalendarEvent(
            uid=f"{job.quote}-{day.id}@{domain}",
            status=Status.CANCELLED if day.is_off else sure,
            summary=day.summary,
            description=words("visit_description", quote=job.quote, phone=job.company.phone),
            location=f"{job.site.address}, {job.site.town}" if day.is_visit else "",
            first_day=day.first_day,
            last_day=day.last_day,
        )
        for day in calendar_days(results)
    )
    name = _marked(results, words("calendar_name", title=job.title, company=job.company.name))
    return to_ics(events, name, last_changed(results), changes_so_far(results))
