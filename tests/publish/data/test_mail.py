"""Every letter: read back with Python's own mail library."""

from dataclasses import replace
from datetime import UTC, date, datetime
from email.message import EmailMessage
from typing import Any

import pytest

from quotegen.publish.data.mail import Draft, to_eml
from tests.publish.reading import decoded, read_mail

PDF = bytes(range(256)) * 40
DRAFT = Draft(
    sender_name="Pennywort Flatwork",
    sender="office@pennywort.example",
    recipient_name="Wren Abernathy",
    recipient="wren@post.example",
    subject="Your quote T-1",
    plain="The price is $1,234.50.\n",
    html="<p>The price is $1,234.50.</p>\n",
    attached={"T-1-quote.pdf": PDF, "T-1-quote.html": b"<p>The quote</p>"},
    dated=date(2026, 5, 14),
)


def _read(draft: Draft) -> EmailMessage:
    return read_mail(to_eml(draft))


def _with(field: str, text: str) -> Draft:
    changed: dict[str, Any] = {field: text}
    return replace(DRAFT, **changed)


def test_what_was_written_is_read_back():
    """Sender, recipient, subject, both bodies and each file arrive as they were."""
    message = _read(DRAFT)
    assert str(message["From"]) == "Pennywort Flatwork <office@pennywort.example>"
    assert str(message["To"]) == "Wren Abernathy <wren@post.example>"
    assert message["Subject"] == DRAFT.subject
    assert decoded(message, "plain") == DRAFT.plain
    assert decoded(message, "html") == DRAFT.html
    attached = list(message.iter_attachments())
    assert [one.get_content_type() for one in attached] == ["application/pdf", "text/html"]
    assert {one.get_filename(): one.get_payload(decode=True) for one in attached} == DRAFT.attached


def test_a_mail_may_go_without_files():
    """A reminder has both texts and nothing else."""
    message = _read(replace(DRAFT, attached={}))
    assert list(message.iter_attachments()) == []
    assert decoded(message, "plain") == DRAFT.plain


def test_it_opens_as_a_draft():
    """Mail programs that know the header open the file for sending."""
    assert _read(DRAFT)["X-Unsent"] == "1"


def test_the_date_is_that_of_the_quote():
    """No clock is read."""
    assert _read(DRAFT)["Date"].datetime == datetime(2026, 5, 14, 12, tzinfo=UTC)


def test_without_an_address_there_is_no_recipient():
    """A customer without an e-mail address gets a draft to be addressed by hand."""
    assert "To" not in _read(replace(DRAFT, recipient=""))


@pytest.mark.parametrize("field", ["recipient_name", "sender_name", "subject"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r", "\n\n", "\x0b", "\x0c", "\x85", "\u2028"])
def test_a_line_break_begins_no_header(field: str, end: str):
    """A name or a title with a line break stays one header, and nobody else gets the mail."""
    message = _read(_with(field, f"Wren{end}Bcc: thief@post.example"))
    assert "Bcc" not in message
    assert set(message.keys()) == set(_read(DRAFT).keys())
    assert [a.addr_spec for a in message["To"].addresses] == ["wren@post.example"]
    assert decoded(message, "plain") == DRAFT.plain


@pytest.mark.parametrize(
    "name",
    ['O\'Brien, "Bo"', "Wren <thief@post.example>", "Renée Ağaoğlu", "a, b@post.example", ""],
)
def test_any_name_is_one_recipient(name: str):
    """Commas, quotes and angle brackets in a name make no second address."""
    (address,) = _read(replace(DRAFT, recipient_name=name))["To"].addresses
    assert (address.display_name, address.addr_spec) == (name, "wren@post.example")


def test_the_same_draft_is_the_same_bytes():
    """Boundaries are fixed, not random."""
    assert to_eml(DRAFT) == to_eml(DRAFT)
    message = _read(DRAFT)
    boundaries = [part.get_boundary() for part in message.walk() if part.is_multipart()]
    assert len(set(boundaries)) == 2


def test_a_text_that_holds_a_boundary():
    """A body with the lines that divided another draft does not end its own part."""
    other = [part.get_boundary() for part in _read(DRAFT).walk() if part.is_multipart()]
    text = "Before\n" + "".join(f"--{boundary}--\n\n--{boundary}\n" for boundary in other)
    message = _read(replace(DRAFT, plain=text, html=f"<pre>{text}</pre>\n"))
    assert decoded(message, "plain") == text
    pdf, page = message.iter_attachments()
    assert pdf.get_payload(decode=True) == PDF
    assert page.get_payload(decode=True) == b"<p>The quote</p>"


@pytest.mark.parametrize("field", ["recipient_name", "sender_name"])
@pytest.mark.parametrize(
    "name",
    [
        "Rosa and Emil Vandermeer of the Orchard Bend Pool House <evil@post.example>, and others",
        "Rosa and Emil, evil@post.example, of 12 Orchard Bend, Harrow Bend, in the state of Ohio",
        'A "quoted" (comment) \\ name <evil@post.example>; list: evil@post.example;' * 3,
        "Jürgen Müller, evil@post.example, of 12 Orchard Bend, Harrow Bend, in the state of Ohio",
        ", <evil@post.example>" * 40,
        "Wren Abernathy, evil@post.example",
    ],
)
def test_a_name_is_no_second_address(field: str, name: str):
    """However long a name is and whatever is in it, the header has one address, and it is ours."""
    message = _read(_with(field, name))
    for header, ours in (("From", DRAFT.sender), ("To", DRAFT.recipient)):
        assert [one.addr_spec for one in message[header].addresses] == [ours]


def test_a_short_name_keeps_its_comma():
    """Only a name that folding would break loses its signs (RFC 5322, 3.4: a quoted name)."""
    (one,) = _read(_with("recipient_name", "Abernathy, Wren"))["To"].addresses
    assert one.display_name == "Abernathy, Wren"
