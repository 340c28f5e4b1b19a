"""Design, rule 4: costs, margins and private notes cannot reach what the customer gets.

Everything private in a made-up world is marked, and every byte of the customer's files is
searched, unpacked and decoded. The second half plants a leak of each kind, to see it found.
"""

import base64
import io
import re
from collections.abc import Callable
from datetime import date
from decimal import Decimal

import pikepdf
import pytest
from PIL import Image

from quotegen.publish.data.calendar import CalendarEvent, Status, to_ics
from quotegen.publish.pdf import to_pdf
from tests.architecture.tree import REPO
from tests.publish import private_world
from tests.publish.built import unprinted
from tests.publish.private_world import LEAST, SHOWN_ALT, SHOWN_TITLE, SHOWN_TOWN, MarkedWorld
from tests.publish.reading import DATA_URL, found, found_amounts, read_mail, unpacked

SIGNED_JOB = "cutters-row-drive"
OTHER_JOBS = ("orchard-bend-pool-deck", "ferry-road-drive")


@pytest.fixture(scope="module")
def world(tmp_path_factory) -> MarkedWorld:
    """Return a marked world after signing, measuring and changes: it has every paper."""
    return private_world.build(tmp_path_factory.mktemp("world"), SIGNED_JOB)


def _written(amount: Decimal) -> tuple[str, ...]:
    """Return an amount in the ways that a program or a person writes it."""
    return f"{amount:.2f}", f"{amount:,.2f}"


@pytest.mark.parametrize("job", OTHER_JOBS)
def test_other_jobs_as_their_pages_are_read_and_printed(tmp_path_factory, job: str):
    """On no page of the largest job and of a metric one, nor on what is printed, is a marker."""
    with unprinted():
        world = private_world.build(tmp_path_factory.mktemp("other"), job)
    pages = {path: data for path, data in world.customer().items() if path.endswith(".html")}
    papers = {f"printed/{name}.html": text.encode() for name, text in world.package.printed.items()}
    assert "customer/quote.html" in pages
    assert "printed/quote.html" in papers
    assert found(pages | papers, world.texts) == []
    assert found_amounts(pages | papers, world.amounts) == []


class TestNothingPrivateLeaves:
    """The search of what was built."""

    def test_no_marked_text(self, world: MarkedWorld):
        """No note, contact, place, path or camera data is in any file of the customer."""
        hits = found(world.customer(), world.texts)
        assert hits == [], [world.texts[hit.rpartition(": ")[2]] for hit in hits]

    def test_no_cost_and_no_margin(self, world: MarkedWorld):
        """No cost, no margin and no sum of them is in any file of the customer."""
        assert min(world.amounts) > LEAST
        assert found_amounts(world.customer(), world.amounts) == []

    def test_no_words_of_the_owner(self, world: MarkedWorld):
        """The owner's words for it are not there either: no field was carried over empty."""
        for where, layer in unpacked(world.customer()):
            if "stream" not in where and "data" not in where:
                words = re.findall(
                    rb"\b(?:margin_share|private_notes|cost_title|other_bids|walk_away|under_floor)\b",
                    layer,
                )
                assert words == [], where

    def test_no_path_of_this_machine(self, world: MarkedWorld):
        """No file says where it was made."""
        places = [str(REPO), "file://", "rate-book.yaml", "example_jobs", "site-packages"]
        assert found(world.customer(), places) == []

    def test_no_place_of_a_photo(self, world: MarkedWorld):
        """The pictures that are shown carry no data but the picture."""
        data = world.customer()["customer/past-jobs.html"]
        pictures = [base64.b64decode(match[1]) for match in DATA_URL.finditer(data)]
        photos = [picture for picture in pictures if picture.startswith(b"\xff\xd8")]
        assert len(photos) == 1  # one past job agreed to its photo
        with Image.open(io.BytesIO(photos[0])) as photo:
            assert dict(photo.getexif()) == {}
            assert set(photo.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}
        for marker in (b"Exif", b"http://ns.adobe.com", b"GPS"):
            assert marker not in photos[0]

    def test_what_was_agreed_is_there(self, world: MarkedWorld):
        """The search sees what may be seen: the title, the town and the words of the photo."""
        quote = {"customer/past-jobs.html": world.customer()["customer/past-jobs.html"]}
        for text in (SHOWN_TITLE, SHOWN_TOWN, SHOWN_ALT):
            assert found(quote, [text]) != [], text
        pdf = {"customer/quote.pdf": world.customer()["customer/quote.pdf"]}
        assert found(pdf, [SHOWN_TITLE]) != []

    def test_the_owner_has_it(self, world: MarkedWorld):
        """The private files do hold the notes and every cost of the chosen finish."""
        (notes,) = (
            mark for mark, what in world.texts.items() if what == "private notes of the job"
        )
        assert found(world.private(), [notes]) != []
        written = {what: mark for mark, what in world.texts.items()}
        for what in (
            "reason to quote under a floor",
            "bill of the job",
            "note on another bid",
            "name of another bid",
            "machine of the book",
            "note on how it came out",
        ):
            assert found(world.private(), [written[what]]) != [], what
        sheet = world.private()["private/cost-sheet.html"].decode()
        assert sum(any(text in sheet for text in _written(a)) for a in world.amounts) > 20

    def test_every_private_field_is_marked(self, world: MarkedWorld):
        """The world marks each kind of thing that is private, so that none goes unsearched."""
        kinds = {what.partition(" of ")[0] for what in world.texts.values()}
        assert kinds == {
            "folder", "comment in a file", "file name", "private notes", "contact", "phone",
            "photo file", "alt text", "title", "town", "town not agreed to",
            "what a job without consent shows", "what a withdrawn job shows",
            "EXIF description", "EXIF artist", "EXIF copyright", "EXIF camera", "GPS stamp", "XMP",
            "JPEG comment", "PNG text", "reason to quote under a floor", "bill", "machine",
            "name", "reinforcement", "note on another bid", "note on how it came out",
        }  # fmt: skip


MARK, AMOUNT = "qzmark00xw", "4,071.37"
DATED = date(2026, 5, 14)


def _page(body: str) -> bytes:
    return f'<!DOCTYPE html><html lang="en"><title>T</title><body>{body}</body></html>'.encode()


def _photo() -> bytes:
    exif = Image.Exif()
    exif[0x013B] = MARK
    out = io.BytesIO()
    Image.new("RGB", (8, 8)).save(out, "JPEG", exif=exif)
    return out.getvalue()


def _pdf(change: Callable[[pikepdf.Pdf], None]) -> bytes:
    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(to_pdf(_page("<h1>T</h1>").decode(), DATED))) as pdf:
        change(pdf)
        pdf.save(out, object_stream_mode=pikepdf.ObjectStreamMode.generate)
    return out.getvalue()


def _into_docinfo(pdf: pikepdf.Pdf) -> None:
    pdf.docinfo["/Keywords"] = MARK


def _into_metadata(pdf: pikepdf.Pdf) -> None:
    with pdf.open_metadata() as metadata:
        metadata["dc:description"] = MARK


def _into_a_stream(pdf: pikepdf.Pdf) -> None:
    pdf.Root.Hidden = pdf.make_indirect(pikepdf.Stream(pdf, b"q " + MARK.encode() * 3))


def _into_an_attachment(pdf: pikepdf.Pdf) -> None:
    pdf.attachments["costs.txt"] = pikepdf.AttachedFileSpec(pdf, MARK.encode(), filename="c.txt")


def _into_alt_text(pdf: pikepdf.Pdf) -> None:
    pdf.Root.Alt = pikepdf.String(f"Zeichnung ü {MARK}")


def _calendar(text: str) -> bytes:
    event = CalendarEvent(
        uid="u", status=Status.TENTATIVE, summary="s", description="x" * 66 + text, location="l",
        first_day=DATED, last_day=DATED,
    )  # fmt: skip
    return to_ics((event,), "n", DATED, 1)


LEAKS: dict[str, Callable[[], tuple[str, bytes]]] = {
    "file name": lambda: (f"customer/{MARK}.html", b""),
    "comment": lambda: ("customer/quote.html", _page(f"<!-- {MARK} -->")),
    "alternative text": lambda: ("customer/quote.html", _page(f'<img src="data:," alt="{MARK}">')),
    "entities": lambda: (
        "customer/quote.html", _page("".join(f"&#{ord(sign)};" for sign in MARK))),
    "split by tags": lambda: ("customer/quote.html", _page(f"{MARK[:4]}<b>{MARK[4:]}</b>")),
    "link": lambda: (
        "customer/quote.html", _page('<a href="mailto:a@b.example?body=%71%7Amark00xw">a</a>')),
    "base64": lambda: (
        "customer/quote.html",
        _page(f'<p data-a="{base64.b64encode(f"costs {MARK} end".encode()).decode()}">')),
    "camera data": lambda: (
        "customer/quote.html",
        _page(f'<img src="data:image/jpeg;base64,{base64.b64encode(_photo()).decode()}" alt="">')),
    "words of a PDF": lambda: (
        "customer/quote.pdf", to_pdf(_page(f"<h1>{MARK}</h1>").decode(), DATED)),
    "title of a PDF": lambda: ("customer/quote.pdf", _pdf(_into_docinfo)),
    "metadata of a PDF": lambda: ("customer/quote.pdf", _pdf(_into_metadata)),
    "packed stream of a PDF": lambda: ("customer/quote.pdf", _pdf(_into_a_stream)),
    "attachment of a PDF": lambda: ("customer/quote.pdf", _pdf(_into_an_attachment)),
    "alternative text of a PDF": lambda: ("customer/quote.pdf", _pdf(_into_alt_text)),
    "folded line of a calendar": lambda: ("customer/visits.ics", _calendar(MARK)),
}  # fmt: skip


@pytest.mark.parametrize("kind", LEAKS)
def test_a_planted_text_is_found(kind: str):
    """A leak of every kind is found, so that the silence of the search above means something."""
    path, data = LEAKS[kind]()
    assert found({path: data}, [MARK]) != []
    assert found({path: data}, ["qzmark99xw"]) == []


@pytest.mark.parametrize("kind", ["comment", "words of a PDF", "folded line of a calendar"])
def test_a_leak_in_the_mail_is_found(world: MarkedWorld, kind: str):
    """Planted in the built e-mail, as its text or in its attachment, a marker is found."""
    message = read_mail(world.customer()["customer/email.eml"])
    _, data = LEAKS[kind]()
    attached, *_ = message.iter_attachments()
    if kind == "words of a PDF":
        attached.set_payload(base64.encodebytes(data).decode())
    else:
        body = message.get_body(("html",))
        assert body is not None
        body.set_content(data.decode(errors="replace"), subtype="html", cte="base64")
    assert found({"customer/email.eml": bytes(message)}, [MARK]) != []


@pytest.mark.parametrize("path", ["customer/quote.html", "customer/visits.ics"])
def test_a_cost_in_a_built_file_is_found(world: MarkedWorld, path: str):
    """A copy of a built file into which one cost has slipped does not pass."""
    data = world.customer()[path]
    leaking = data.replace(b"Sealer", f"Sealer (${AMOUNT})".encode())
    if leaking == data:
        leaking = data.replace(b"Quote ", f"Quote ${AMOUNT} ".encode(), 1)
    assert leaking != data
    assert found_amounts({path: data}, world.amounts) == []
    assert found_amounts({path: leaking}, world.amounts) != []


def test_a_cost_on_the_printed_page_is_found(world: MarkedWorld):
    """A printed page with a margin in it does not pass."""
    leaking = to_pdf(_page(f"<h1>{max(world.amounts):,.2f}</h1>").decode(), DATED)
    assert found_amounts({"customer/quote.pdf": leaking}, world.amounts) != []
