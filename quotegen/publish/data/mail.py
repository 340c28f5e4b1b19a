"""An e-mail draft: plain and HTML text that agree, and files attached (RFC 5322, RFC 2046)."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime
from email.headerregistry import Address
from email.message import EmailMessage
from email.policy import SMTP
from email.utils import format_datetime
from hashlib import sha256

_TYPES = {"pdf": "application/pdf", "html": "text/html"}
"""The media type of what is attached, by the ending of its name."""

_NEEDS_QUOTES = re.compile(r"[^\w\s'-]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """What goes into the draft."""

    sender_name: str
    sender: str
    recipient_name: str
    recipient: str
    subject: str
    plain: str
    html: str
    attached: Mapping[str, bytes]
    dated: date


def to_eml(draft: Draft) -> bytes:
    """Write the draft as a file that a mail program opens, ready to send."""
    message = EmailMessage(policy=SMTP)
    message["From"] = _address("From", draft.sender_name, draft.sender)
    if draft.recipient:
        message["To"] = _address("To", draft.recipient_name, draft.recipient)
    message["Subject"] = _one_line(draft.subject)
    day = draft.dated
    message["Date"] = format_datetime(datetime(day.year, day.month, day.day, 12, tzinfo=UTC))
    message["X-Unsent"] = "1"  # opens as a draft where the mail program knows the header
    message.set_content(draft.plain)
    message.add_alternative(draft.html, subtype="html")
    for name, data in draft.attached.items():
        kind, _, subtype = _TYPES[name.rpartition(".")[2]].partition("/")
        message.add_attachment(data, maintype=kind, subtype=subtype, filename=name)
    _fix_boundaries(message, draft)
    return bytes(message)


def _address(header: str, name: str, address: str) -> Address:
    """Return a named address that stays one when its header is folded.

    Python drops the quotes of a long name as it folds the line, and then a comma or an address in
    the name is another recipient. Such a name keeps only what needs no quotes.
    """
    named = Address(display_name=_one_line(name), addr_spec=address)
    _, _, line = SMTP.fold(header, SMTP.header_factory(header, str(named))).partition(":")
    _, read_back = SMTP.header_store_parse(header, " ".join(line.split()))
    if tuple(read_back.addresses) == (named,):
        return named
    return Address(display_name=_one_line(_NEEDS_QUOTES.sub(" ", name)), addr_spec=address)


def _one_line(text: str) -> str:
    """A header is one line, whatever was typed: a line break would begin another header."""
    return " ".join(text.split())


def _fix_boundaries(message: EmailMessage, draft: Draft) -> None:
    """Name the boundaries, which are random otherwise: the same input gives the same bytes.

    They are a digest of what they divide, so no text can hold one.
    """
    digest = sha256(b"".join((draft.plain.encode(), draft.html.encode(), *draft.attached.values())))
    multiparts = [part for part in message.walk() if part.is_multipart()]
    for number, part in enumerate(multiparts):
        part.set_boundary(f"=={digest.hexdigest()[:32]}-{number}==")
