"""Sheet 6: who, what, by when, how to say yes and how to cancel."""

import re
from datetime import date
from email.utils import parseaddr
from html import unescape
from pathlib import Path
from urllib.parse import parse_qs, unquote, urlsplit

import pytest

from quotegen.explain.sheets.agreement_sheet import (
    agreement_sheet,
    company_view,
    notice_of_cancellation,
    reply,
)
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.views import Reply
from quotegen.explain.words.no_break import NO_BREAK
from quotegen.pipeline import figure
from tests.explain.examples import EVERY_EXAMPLE
from tests.pricing import shop
from tests.world import write_world


def _printed(reply: Reply) -> str:
    """Return the text of a reply as the page shows it, without what keeps it from breaking."""
    return unescape(re.sub(r"<[^>]+>", "", reply.letter)).replace(NO_BREAK, " ")


@EVERY_EXAMPLE
@pytest.mark.parametrize("kind", ["yes", "ask"])
class TestTheReplies:
    """The links that say yes, and that ask for another choice, by e-mail."""

    def test_it_decodes_to_the_text_beside_it(self, job_file: Path, kind: str):
        """A mail program that opens the link shows just the subject and the text that we print."""
        sent = reply(shop.example_results(job_file), kind)
        link = urlsplit(sent.link)
        fields = parse_qs(link.query, strict_parsing=True)
        assert link.scheme == "mailto"
        assert fields == {
            "subject": [sent.subject],
            "body": [_printed(sent).replace("\n", "\r\n")],
        }

    def test_it_goes_to_the_company(self, job_file: Path, kind: str):
        """The address in the link is the company's."""
        results = shop.example_results(job_file)
        address = unquote(urlsplit(reply(results, kind).link).path)
        assert parseaddr(address)[1] == results.job.company.email

    def test_its_lines_end_as_a_mail_link_must(self, job_file: Path, kind: str):
        """Line breaks are %0D%0A, and no character is left that would end the link (RFC 6068)."""
        link = reply(shop.example_results(job_file), kind).link
        assert link.count("%0A") == link.count("%0D%0A") > 0
        assert not set(link) & set(" \"<>\n\r#'")

    def test_it_says_what_it_is_about(self, job_file: Path, kind: str):
        """Number, revision, finish, price and names are in both; date and site in the yes."""
        results = shop.example_results(job_file)
        job, words = results.job, results.words
        body = _printed(reply(results, kind))
        named = (job.quote, f"revision {job.revision}", results.quote.chosen.name,
                 words.money(results.quote.chosen.total), job.customer.name,
                 job.company.name)  # fmt: skip
        of_a_yes = (words.day(job.quote_date), job.site.address) if kind == "yes" else ()
        for text in (*named, *of_a_yes):
            assert text in body


@pytest.mark.parametrize("title", ["A & B = C?", "50 % & more #1", "Árbol + Größe", "a\"b'c<d>"])
def test_any_name_survives_the_link(tmp_path, title: str):
    """Signs that mean something in a link are text in it."""
    named = {"name": title, "email": "wren@post.example"}
    results = shop.results(tmp_path, shop.job(customer=named), rate_book=shop.book())
    yes = agreement_sheet(results).yes
    body = parse_qs(urlsplit(yes.link).query, strict_parsing=True)["body"][0]
    assert body.replace("\r\n", "\n") == _printed(yes)
    assert title in body


def test_the_company_of_one_who_has_little(tmp_path):
    """Without license and insurance nothing is claimed."""
    company = {
        "name": "Sole Trader", "owner": "Ines", "address": "1 Lane", "town": "Harrow Bend",
        "phone": "740-555-0117", "email": "ines@sole.example", "holds_days": "30",
        "working_days": ["Monday"], "warranty": "one year",
        "adjustment": {"no_pour_above": "10 %", "reopen_outside": "15 %"},
        "payments": [{"id": "all", "when": "at the end"}],
    }  # fmt: skip
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book(),
                           company=shop.as_yaml(company), past_jobs="past_jobs: {}\n")  # fmt: skip
    view = company_view(results.job.company, results.words)
    assert (view.license, view.insurance) == ("", "")
    assert view.address == "1 Lane, Harrow Bend"
    assert view.phone_link == "tel:7405550117"
    assert results.job.holds_until == date(2026, 6, 13)


@pytest.mark.parametrize(
    ("state", "over_65", "accepted", "said"),
    [
        (
            "CA",
            "yes",
            "2026-05-20",
            "midnight of May 28, 2026, counted from",
        ),  # May 25 is a holiday
        ("CA", "yes", None, "At sixty-five or over you have 5 business days in this state"),
        ("CA", "no", "2026-05-20", None),
        ("OH", "yes", "2026-05-20", None),
    ],
)
def test_more_days_at_65(
    tmp_path: Path, state: str, over_65: str, accepted: str | None, said: str | None
):
    """California gives a buyer of 65 or over five business days; it is said where it holds."""
    more = {"accepted": {"date": accepted}} if accepted else {}
    job = shop.job(
        site={"address": "1 Test Lane", "town": "Harrow Bend", "state": state},
        customer={"name": "Wren Abernathy", "email": "wren@post.example", "over_65": over_65},
        **more,
    )
    made = figure(write_world(tmp_path, job, rate_book=shop.book()), shop.shared())
    assert made.results is not None
    told = agreement_sheet(made.results).cancel
    assert ("sixty-five" in told) == (said is not None)
    assert said is None or said in told


def test_only_a_yes_accepts(tmp_path):
    """The letter that asks for another choice says that it accepts nothing."""
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book())
    sheet = agreement_sheet(results)
    assert "accept" in _printed(sheet.yes)
    assert sheet.ask.subject != sheet.yes.subject
    assert "I accept" not in _printed(sheet.ask)


def test_the_price_is_said_once_and_follows_the_tape(tmp_path):
    """Under the parties stand the work, the price with its total, and the dates."""
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book())
    rows = {row.name: str(row.text) for row in agreement_sheet(results).parties}
    assert list(rows) == ["You", "We", "Work", "Price", "Dates"]
    assert "$200.00" in rows["Price"]
    assert [name for name, text in rows.items() if "$200.00" in text] == ["Price"]


def test_the_notice_has_its_days_once_signed(tmp_path: Path):
    """Signed on Wednesday, June 10, 2026: midnight of Saturday, June 13 (16 CFR 429.1(b))."""
    job = shop.job(accepted={"date": "2026-06-10"})
    form = notice_of_cancellation(shop.results(tmp_path, job, rate_book=shop.book()))
    assert (form.signed, form.last_day) == ("June 10, 2026", "June 13, 2026")


def test_an_accepted_quote_asks_for_no_yes(tmp_path: Path):
    """Once accepted, no paper says until when the price holds, nor how to accept."""
    accepted = {"date": "2026-05-20"}
    made = figure(
        write_world(tmp_path, shop.job(accepted=accepted), rate_book=shop.book()), shop.shared()
    )
    assert made.results is not None
    assert paper_head(made.results, "Quote", made.results.job.quote_date).holds_until == ""
    assert agreement_sheet(made.results).how.startswith("Accepted on May 20, 2026.")
    open_ = shop.results(tmp_path, shop.job(), rate_book=shop.book())
    assert paper_head(open_, "Quote", open_.job.quote_date).holds_until == "June 13, 2026"
    assert "Sat, Jun 13" in agreement_sheet(open_).how
