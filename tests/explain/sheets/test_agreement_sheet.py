"""Sheet 9: who, how much, when, and how to say yes."""

import re
from datetime import date
from email.utils import parseaddr
from html import unescape
from pathlib import Path
from urllib.parse import parse_qs, unquote, urlsplit

import pytest

from quotegen.explain.sheets.agreement_sheet import agreement_sheet, company_view
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.views import AgreementSheet, CustomerView
from quotegen.explain.words.no_break import NO_BREAK
from quotegen.pipeline import figure
from tests.explain.examples import EVERY_EXAMPLE
from tests.pricing import shop
from tests.world import write_world


def _printed(sheet: AgreementSheet) -> str:
    """Return the text of the reply as the sheet prints it, without what keeps it from breaking."""
    return unescape(re.sub(r"<[^>]+>", "", sheet.reply_letter)).replace(NO_BREAK, " ")


@EVERY_EXAMPLE
class TestTheReply:
    """The link that says yes by e-mail."""

    def test_it_decodes_to_the_text_beside_it(self, job_file: Path):
        """A mail program that opens the link shows just the subject and the text that we print."""
        sheet = agreement_sheet(shop.example_results(job_file))
        link = urlsplit(sheet.reply_link)
        fields = parse_qs(link.query, strict_parsing=True)
        assert link.scheme == "mailto"
        assert fields == {
            "subject": [sheet.reply_subject],
            "body": [_printed(sheet).replace("\n", "\r\n")],
        }

    def test_it_goes_to_the_company(self, job_file: Path):
        """The address in the link is the company's."""
        results = shop.example_results(job_file)
        address = unquote(urlsplit(agreement_sheet(results).reply_link).path)
        assert parseaddr(address)[1] == results.job.company.email

    def test_its_lines_end_as_a_mail_link_must(self, job_file: Path):
        """Line breaks are %0D%0A, and no character is left that would end the link (RFC 6068)."""
        link = agreement_sheet(shop.example_results(job_file)).reply_link
        assert link.count("%0A") == link.count("%0D%0A") > 0
        assert not set(link) & set(" \"<>\n\r#'")

    def test_it_says_what_is_accepted(self, job_file: Path):
        """Number, revision, date, finish, price and site are in the text."""
        results = shop.example_results(job_file)
        job, words = results.job, results.words
        body = _printed(agreement_sheet(results))
        for text in (job.quote, f"revision {job.revision}", words.day(job.quote_date),
                     results.quote.chosen.name, words.money(results.quote.chosen.total),
                     job.site.address, job.customer.name, job.company.name):  # fmt: skip
            assert text in body


@pytest.mark.parametrize("title", ["A & B = C?", "50 % & more #1", "Árbol + Größe", "a\"b'c<d>"])
def test_any_name_survives_the_link(tmp_path, title: str):
    """Signs that mean something in a link are text in it."""
    named = {"name": title, "email": "wren@post.example"}
    results = shop.results(tmp_path, shop.job(customer=named), rate_book=shop.book())
    sheet = agreement_sheet(results)
    body = parse_qs(urlsplit(sheet.reply_link).query, strict_parsing=True)["body"][0]
    assert body.replace("\r\n", "\n") == _printed(sheet)
    assert title in body


@EVERY_EXAMPLE
def test_payments(job_file: Path):
    """Each payment has its number, event, share and amount; the last has no share."""
    results = shop.example_results(job_file)
    rows = agreement_sheet(results).payments
    priced = results.quote.payments
    assert [row.amount for row in rows] == [results.words.money(p.amount) for p in priced]
    assert [row.mark for row in rows] == [str(n) for n in range(1, len(rows) + 1)]
    for row, payment in zip(rows[:-1], priced[:-1], strict=True):
        assert payment.share is not None
        assert results.words.percent(payment.share) in row.text
    assert "%" not in rows[-1].text


def test_the_company_of_one_who_has_little(tmp_path):
    """Without license and insurance nothing is claimed."""
    company = {
        "name": "Sole Trader", "owner": "Ines", "address": "1 Lane", "town": "Harrow Bend",
        "phone": "555-0117", "email": "ines@sole.example", "holds_days": "30",
        "working_days": ["Monday"], "warranty": "one year",
        "adjustment": {"no_pour_above": "10 %", "reopen_outside": "15 %"},
        "payments": [{"id": "all", "when": "at the end"}],
    }  # fmt: skip
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book(),
                           company=shop.as_yaml(company), past_jobs="past_jobs: {}\n")  # fmt: skip
    view = company_view(results)
    assert (view.license, view.insurance) == ("", "")
    assert view.address == "1 Lane, Harrow Bend"
    assert view.phone_link == "tel:5550117"
    assert results.job.holds_until == date(2026, 6, 13)
    assert len(agreement_sheet(results).payments) == 1


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
    texts = [str(row.text) for row in agreement_sheet(made.results).parties]
    assert any("sixty-five" in text for text in texts) == (said is not None)
    assert said is None or any(said in text for text in texts)


def test_a_sum_at_signing(followed_view: CustomerView):
    """$500 as a sum, 60 % of the 1290 that it leaves, and the rest: 1790 together."""
    rows = [(row.text, row.amount) for row in followed_view.agreement.payments]
    assert rows == [
        ("a fixed sum", "$500.00"), ("60% of what then remains", "$774.00"),
        ("the rest", "$516.00"),
    ]  # fmt: skip


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
    assert "by June 13, 2026" in agreement_sheet(open_).how
