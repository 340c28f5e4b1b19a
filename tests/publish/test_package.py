"""The package of a job: its files agree with each other and with figures.json."""

import json
import re
from calendar import month_abbr, month_name
from datetime import date, timedelta
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from icalendar import Calendar

from quotegen.explain.sheets.past_jobs import shown_references
from tests.explain.examples import example_view
from tests.golden.numbers import about, dollars, of_groups
from tests.pricing import shop
from tests.publish.built import EVERY_BUILT, EVERY_PRINTED, build, built, page_text, text_with_ties
from tests.publish.reading import decoded, pdf_text, read_mail
from tests.world import PATIO, write_world

AMOUNT = re.compile(r"[+−]?\$[\d,]+(?:\.\d\d)?")
MONTH = "|".join((*month_abbr[1:], *month_name[1:]))
DAY = re.compile(r"(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun), \w{3} \d+|\w+ \d+, \d{4}")


def _figures(job_file: Path) -> Any:
    return json.loads(built(job_file)["private/figures.json"])


@EVERY_PRINTED
def test_the_files_of_a_package(job_file: Path):
    """A package has the files that the design lists for its stage, and no others."""
    results = shop.example_results(job_file)
    job, accepted = results.job, results.contract.accepted_on is not None
    past = ["past-jobs"] if shown_references(results) else []
    pages = ["quote", "guide", "compare-bids", *past]
    after = [
        name
        for name, there in (
            ("final-measurement", job.typed.measured),
            ("changes", job.typed.changes),
            ("care", job.typed.completed),
        )
        if there
    ]
    weather = ["private/weather.html"] if job.typed.forecast else []
    form = [] if accepted else ["private/cancellation.pdf"]
    letters = {"final-measurement": "email-measured", "changes": "email-changes",
               "care": "email-care"}  # fmt: skip
    mails = ["email", *([] if accepted else ["email-reminder"]), *(letters[one] for one in after)]
    assert sorted(built(job_file)) == sorted([
        *weather, *form,
        "customer/door-sheet.pdf", "customer/measuring-sheet.pdf", "customer/visits.ics",
        *(f"customer/{name}.eml" for name in mails),
        *(f"customer/{name}.{ending}" for name in (*pages, *after) for ending in ("html", "pdf")),
        "private/crew-sheet.pdf",
        "private/phone-sheet.html", "private/cost-sheet.html", "private/figures.json",
        "private/law-checklist.html", "private/order-list.html",
    ])  # fmt: skip


@EVERY_PRINTED
def test_a_package_is_a_draft(job_file: Path):
    """Every page of every customer paper, each web page, the mail and the calendar say so.

    Once the quote is accepted nothing says that it is no offer: there is a contract.
    """
    accepted = shop.example_results(job_file).contract.accepted_on is not None
    mark = "Copy, not yet sent" if accepted else "Draft, not yet an offer"
    for path, data in built(job_file).items():
        if path.startswith("private/"):
            continue
        if path.endswith(".pdf"):
            pages = pdf_text(data).removesuffix("\f").split("\f")
            assert [n for n, page in enumerate(pages, start=1) if mark not in page] == [], path
        elif path.endswith(".html"):
            shown = re.sub(r'(?s)<div class="title-block">.*?</p>', "", data.decode())
            assert mark in page_text(shown), path
        elif path.endswith(".eml"):
            mail = read_mail(data)
            assert mail["Subject"].strip().startswith(mark)
            assert decoded(mail, "plain").startswith(mark)
            assert mark in decoded(mail, "html")
        else:
            assert mark in str(Calendar.from_ical(data)["NAME"]), path


@EVERY_PRINTED
class TestTheMail:
    """email.eml, as the customer's mail program takes it apart."""

    def test_both_texts_say_the_same(self, job_file: Path):
        """The plain and the HTML text agree on every amount and every date, in their order."""
        message = read_mail(built(job_file)["customer/email.eml"])
        plain, rich = decoded(message, "plain"), page_text(decoded(message, "html"))
        for pattern in (AMOUNT, DAY):
            assert pattern.findall(plain)
            # The title of the HTML text has no counterpart in the plain one, and no number either.
            assert pattern.findall(plain) == pattern.findall(rich)

    def test_its_amounts_are_figures(self, job_file: Path):
        """Every amount in it is in figures.json, and the total is among them."""
        text = decoded(read_mail(built(job_file)["customer/email.eml"]), "plain")
        found = {_money(amount) for amount in AMOUNT.findall(text)}
        figures = _figures(job_file)
        assert found <= _amounts_in(figures)
        assert Decimal(figures["total"]) in found

    def test_what_is_attached_are_files_of_the_package(self, job_file: Path):
        """Each file that the company attaches is in the mail byte for byte, with the number."""
        job, files = shop.example_results(job_file).job, built(job_file)
        attached = read_mail(files["customer/email.eml"]).iter_attachments()
        assert {one.get_filename(): one.get_payload(decode=True) for one in attached} == {
            f"{job.quote}-{name}": files[f"customer/{name}"] for name in job.company.attach
        }

    def test_it_goes_to_the_customer(self, job_file: Path):
        """From the company to the customer, about this quote."""
        job = shop.example_results(job_file).job
        message = read_mail(built(job_file)["customer/email.eml"])
        (sender,), (recipient,) = message["From"].addresses, message["To"].addresses
        assert (sender.addr_spec, recipient.addr_spec) == (job.company.email, job.customer.email)
        assert job.quote in message["Subject"]


@EVERY_BUILT
def test_the_calendar_has_the_days_of_the_figures(job_file: Path):
    """One event for each visit as it stands now, at the site, its end exclusive, its UID its own.

    What is no visit has no place, and nothing is sure before the yes.
    """
    calendar: Any = Calendar.from_ical(built(job_file)["customer/visits.ics"])
    figures = _figures(job_file)
    events = calendar.walk("VEVENT")
    on_site = [event for event in events if "location" in event]
    assert [(e.decoded("dtstart"), e.decoded("dtend") - timedelta(days=1)) for e in on_site] == [
        (date.fromisoformat(v["first_day"]), date.fromisoformat(v["last_day"]))
        for v in figures["contract"]["visits"]
    ]
    number, job = figures["quote"]["number"], shop.example_results(job_file).job
    domain = job.company.email.partition("@")[2]
    assert [str(e["uid"]) for e in on_site] == [
        f"{number}-{visit['id']}@{domain}" for visit in figures["visits"]
    ]
    assert len({str(event["uid"]) for event in events}) == len(events)
    if job.typed.accepted is None:
        assert {str(event["status"]) for event in events} == {"TENTATIVE"}
        assert f"{number}-yes@{domain}" in {str(event["uid"]) for event in events}


@EVERY_PRINTED
@pytest.mark.parametrize("name", ["quote", "door-sheet"])
def test_the_printed_amounts_are_figures(job_file: Path, name: str):
    """The PDFs print the total, and no amount that is not in figures.json or typed as a text.

    A group of lines has their sum, which a test of sheet 4 adds up, and what is about so much is
    rounded to ten dollars.
    """
    text = pdf_text(built(job_file)[f"customer/{name}.pdf"])
    figures = _figures(job_file)
    covers = shop.example_results(job_file).job.company.insurance
    assert covers is not None
    typed = {_money(amount) for amount in AMOUNT.findall(covers.covers)}
    found = {_money(amount) for amount in AMOUNT.findall(text)}
    told = _amounts_in(figures)
    assert found - typed - of_groups(example_view(job_file)) - about(told) <= told
    assert Decimal(figures["total"]) in found


@EVERY_PRINTED
def test_the_customer_gets_the_payments(job_file: Path):
    """The page and the PDF print each payment."""
    page = page_text(built(job_file)["customer/quote.html"].decode())
    printed = pdf_text(built(job_file)["customer/quote.pdf"])
    for payment in _figures(job_file)["payments"]:
        shown = f"${Decimal(payment['amount']):,.2f}"
        assert shown in page
        assert shown in printed


@EVERY_BUILT
def test_nothing_is_fetched(job_file: Path):
    """A page names nothing that a reader's machine would fetch: no address outside itself."""
    for path, data in built(job_file).items():
        if path.endswith(".html"):
            page = re.sub(r"<script[ >].*?</script>", _ours, data.decode(), flags=re.DOTALL)
            loads = re.findall(
                r"""(?:src|srcset|poster|data|action)\s*=\s*["']?(?!data:)(\S+)""", page
            )
            assert loads == [], path
            assert re.findall(r"url\(\s*[\"']?(?!data:|#|&quot;#)([^)]*)\)", page) == []
            assert "@import" not in page
            assert "<script" not in page


def _ours(script: re.Match[str]) -> str:
    """Take a script out of a page, which must be written in it and ask for nothing."""
    head, _, body = script.group().partition(">")
    assert head in {"<script", '<script type="application/json" id="combinations"'}
    assert not re.search(r"fetch|XMLHttp|import|https?:", body)
    return ""


@EVERY_BUILT
def test_a_number_and_its_unit_never_part(job_file: Path):
    """On no page can a line end between a number and its unit, or between a month and its day."""
    words = shop.example_results(job_file).words
    unit = "|".join(re.escape(one) for one in (*words.units_said(), "in", "days", "years", "%"))
    parted = re.compile(rf"\d (?:{unit})(?!\w)|\d\s(?:sq|cu) |\b(?:{MONTH}) \d")
    for path, data in built(job_file).items():
        if path.endswith(".html"):
            page = re.sub(r"<svg.*?</svg>", "", data.decode(), flags=re.DOTALL)
            text = re.sub(r"\$[\d,.]+ in ", "", text_with_ties(page))  # a sum in so many years
            assert parted.findall(text) == [], path


class TestAName:
    """A customer's name may be anything, and stays a name."""

    @pytest.mark.usefixtures("unprinted")
    def test_it_passes_through_every_file(self, tmp_path):
        """The package is built, one recipient gets it, and the page shows the name as text."""
        name = (
            "Renée Nuñez\\nBcc: thief@post.example "
            "<script>alert(1)</script> & {{ 7 * 7 }} %(x)s {0}"
        )
        job = PATIO.replace("name: Wren Abernathy", f'name: "{name}"')
        made = build((write_world(tmp_path, job),), shop.shared())
        assert made.problems == ()
        files = made.packages["T-1"].files
        message = read_mail(files["customer/email.eml"])
        assert [a.addr_spec for a in message["To"].addresses] == ["wren@post.example"]
        assert "Bcc" not in message
        page = files["customer/quote.html"].decode()
        assert "<script>alert" not in page
        events = Calendar.from_ical(files["customer/visits.ics"]).walk("VEVENT")
        assert len([event for event in events if "location" in event]) == 4
        assert name.replace("\\n", " ") in page_text(page)


def _money(text: str) -> Decimal:
    return abs(dollars(text))


def _amounts_in(value: object) -> set[Decimal]:
    """Return every decimal string below a value, without its sign; what is private is left out."""
    if isinstance(value, dict):
        inner = (_amounts_in(v) for key, v in value.items() if key not in {"costs", "bids"})
        return set().union(*inner)
    if isinstance(value, list):
        return set().union(*(_amounts_in(v) for v in value))
    if isinstance(value, str) and re.fullmatch(r"-?\d+(\.\d+)?", value):
        return {abs(Decimal(value))}
    return set()
