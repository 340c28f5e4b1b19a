"""HTML to PDF: silent, dated, and closed to the world."""

import io
import os
import socket
from datetime import UTC, date, datetime

import pikepdf
import pytest
from weasyprint import HTML

from quotegen.publish.pdf import PrintError, to_pdf

DATED = date(2026, 5, 14)
PIXEL = (
    "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhf"
    "DwAChwGA60e6kgAAAABJRU5ErkJggg=="
)


def _page(body: str, style: str = "") -> str:
    return (
        f'<!DOCTYPE html><html lang="en"><head><title>T</title><style>{style}</style></head>'
        f"<body><h1>T</h1>{body}</body></html>"
    )


@pytest.fixture
def no_network(monkeypatch):
    """Make every attempt to reach the network a failure of the test."""
    reached: list[object] = []

    def refuse(*given: object, **_more: object) -> None:
        reached.append(given)
        raise OSError

    monkeypatch.setattr(socket.socket, "connect", refuse)
    monkeypatch.setattr(socket, "getaddrinfo", refuse)
    yield
    assert reached == []


def test_a_plain_page_is_printed():
    """A page without fault is a tagged PDF with its title and language."""
    with pikepdf.open(io.BytesIO(to_pdf(_page("<p>Text</p>"), DATED))) as pdf:
        assert str(pdf.docinfo["/Title"]) == "T"
        assert str(pdf.Root.Lang) == "en"
        assert bool(pdf.Root.MarkInfo.Marked)


@pytest.mark.parametrize(
    "body",
    [
        '<img src="missing.png" alt="a">',
        '<img src="https://pictures.example/a.png" alt="a">',
        '<img src="http://127.0.0.1:9/a.png" alt="a">',
        '<img src="file:///etc/hostname" alt="a">',
        '<img src="data:image/png;base64,AAAA" alt="a">',
        '<object data="https://pictures.example/a.svg">a</object>',
        '<svg width="9" height="9"><title>a</title><image href="file:///etc/hostname"/></svg>',
    ],
)
@pytest.mark.usefixtures("no_network")
def test_a_picture_that_is_not_in_the_page(body: str):
    """A picture from elsewhere is neither fetched nor passed over in silence."""
    with pytest.raises(PrintError):
        to_pdf(_page(body), DATED)


@pytest.mark.parametrize(
    "style",
    [
        "@import url(https://styles.example/a.css);",
        "@font-face { font-family: A; src: url(https://fonts.example/a) } p { font-family: A }",
        "p { background: url(file:///etc/hostname) }",
        "p { no-such-property: 1 }",
    ],
)
@pytest.mark.usefixtures("no_network")
def test_a_style_that_is_not_in_the_page(style: str):
    """Neither style sheets nor fonts are fetched, and what the engine does not know is told."""
    with pytest.raises(PrintError):
        to_pdf(_page("<p>Text</p>", style), DATED)


def test_a_picture_in_the_page_is_fine():
    """A picture that is part of the document prints."""
    assert to_pdf(_page(f'<img src="{PIXEL}" alt="a dot">'), DATED).startswith(b"%PDF")


def test_no_file_is_attached_from_the_disk():
    """A link that asks for an attachment cannot bring a file of this machine into the PDF."""
    with pytest.raises(PrintError):
        to_pdf(_page('<a rel="attachment" href="file:///etc/hostname">a</a>'), DATED)


def test_the_same_page_on_the_same_date():
    """The same document and date are the same bytes."""
    page = _page("<p>Text</p>")
    assert to_pdf(page, DATED) == to_pdf(page, DATED)


@pytest.mark.parametrize("before", [None, "1700000000"])
def test_the_clock_is_put_back(monkeypatch, before: str | None):
    """The engine sees the date of the quote, or the one that was set, and then it is as before."""
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)
    if before:
        monkeypatch.setenv("SOURCE_DATE_EPOCH", before)
    seen: list[str | None] = []
    real = HTML.write_pdf

    def watched(document: HTML, *given: object, **more: object) -> object:
        seen.append(os.environ.get("SOURCE_DATE_EPOCH"))
        return real(document, *given, **more)

    monkeypatch.setattr(HTML, "write_pdf", watched)
    to_pdf(_page("<p>Text</p>"), DATED)
    assert seen == [before or f"{datetime(2026, 5, 14, tzinfo=UTC).timestamp():.0f}"]
    assert os.environ.get("SOURCE_DATE_EPOCH") == before
