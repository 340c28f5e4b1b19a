"""Reads a published file as a curious person would: unpacked, decoded, every layer of it."""

import base64
import binascii
import email
import html
import io
import re
import subprocess
from collections.abc import Iterable, Iterator, Mapping
from decimal import Decimal
from email.message import EmailMessage
from email.policy import default
from functools import lru_cache
from urllib.parse import unquote

import pikepdf
from icalendar import Calendar
from PIL import ExifTags, Image

Layer = tuple[str, bytes]
"""Where it was found, and the bytes there."""

AMOUNT = re.compile(rb"(?<![\d.])\d[\d,]*\.\d\d(?!\d)")
LEAST_CODED = 8  # signs; a shorter piece of base64 occurs in any picture
DATA_URL = re.compile(rb"data:[\w/+.-]*;base64,([A-Za-z0-9+/=]+)")


def layers(path: str, data: bytes) -> Iterator[Layer]:
    """Yield the name and every layer of one file, down to what is packed inside it."""
    yield f"{path} (name)", path.encode()
    yield path, data
    if path.endswith((".html", ".htm")):
        yield from _html(path, data)
    elif path.endswith(".pdf"):
        yield from _pdf(path, data)
    elif path.endswith(".eml"):
        yield from _mail(path, data)
    elif path.endswith(".ics"):
        yield from _calendar(path, data)
    elif path.endswith((".jpg", ".png")):
        yield from _image(path, data)


def pdf_text(data: bytes) -> str:
    """Return the words of a PDF as they are laid out on its pages."""
    done = subprocess.run(
        ["pdftotext", "-layout", "-", "-"], input=data, capture_output=True, check=True
    )
    return done.stdout.decode()


def decoded(message: EmailMessage, kind: str) -> str:
    """Return the plain or HTML text of a message."""
    part = message.get_body((kind,))
    assert part is not None
    return str(part.get_content()).replace("\r\n", "\n")


def read_mail(data: bytes) -> EmailMessage:
    """Parse a message that must be without defect."""
    message = email.message_from_bytes(data, policy=default)
    assert isinstance(message, EmailMessage)
    assert [part.defects for part in message.walk() if part.defects] == []
    return message


def _html(path: str, data: bytes) -> Iterator[Layer]:
    plain = html.unescape(data.decode())
    yield f"{path} (entities)", plain.encode()
    yield f"{path} (percent)", unquote(plain).encode()
    yield f"{path} (no tags)", re.sub(r"<[^>]*>", "", plain).encode()
    for number, match in enumerate(DATA_URL.finditer(data)):
        inner = base64.b64decode(match[1])
        yield from _image(f"{path} (data {number})", inner)


def _image(where: str, data: bytes) -> Iterator[Layer]:
    yield where, data
    try:
        with Image.open(io.BytesIO(data)) as image:
            image.load()
            info = {key: value for key, value in image.info.items() if key != "icc_profile"}
            exif = image.getexif()
            tags = dict(exif) | {
                key: value for ifd in ExifTags.IFD for key, value in exif.get_ifd(ifd).items()
            }
    except OSError:  # a font or a text
        return
    yield f"{where} (image data)", repr((info, tags)).encode()


def _mail(path: str, data: bytes) -> Iterator[Layer]:
    message = email.message_from_bytes(data, policy=default)
    for number, part in enumerate(message.walk()):
        where = f"{path} (part {number})"
        yield f"{where} headers", "\n".join(f"{k}: {v}" for k, v in part.items()).encode()
        content = part.get_payload(decode=True)
        if isinstance(content, bytes):
            end = {"text/html": ".html", "application/pdf": ".pdf"}.get(part.get_content_type(), "")
            yield from layers(f"{where}{end}", content)


def _calendar(path: str, data: bytes) -> Iterator[Layer]:
    yield f"{path} (unfolded)", data.replace(b"\r\n ", b"")
    calendar = Calendar.from_ical(data)
    for part in calendar.walk():
        yield f"{path} (values)", "\n".join(str(value) for value in part.values()).encode()


def _pdf(path: str, data: bytes) -> Iterator[Layer]:
    yield f"{path} (text)", pdf_text(data).encode()
    with pikepdf.open(io.BytesIO(data)) as pdf:
        yield f"{path} (metadata)", str(pdf.open_metadata()).encode()
        for number, thing in enumerate(pdf.objects):
            if isinstance(thing, pikepdf.Stream):
                yield f"{path} (stream {number} as stored)", thing.read_raw_bytes()
                for inner in _unpacked(thing):
                    yield from _image(f"{path} (stream {number})", inner)
        strings = (_strings(thing) for thing in (pdf.trailer, *pdf.objects))
        yield f"{path} (strings)", "\n".join(text for some in strings for text in some).encode()


def _unpacked(stream: pikepdf.Stream) -> Iterator[bytes]:
    try:
        yield stream.read_bytes()
    except pikepdf.PdfError:  # a picture in a coding of its own, which was yielded as stored
        return


def _strings(thing: object) -> Iterator[str]:
    """Yield every string and name of an object; what it refers to is an object of its own."""
    if isinstance(thing, pikepdf.String | pikepdf.Name):
        yield str(thing)
    elif isinstance(thing, pikepdf.Array):
        for inner in thing.as_list():
            yield from () if _is_elsewhere(inner) else _strings(inner)
    elif isinstance(thing, pikepdf.Dictionary | pikepdf.Stream):
        for key, inner in thing.items():
            yield key
            yield from () if _is_elsewhere(inner) else _strings(inner)


def _is_elsewhere(thing: object) -> bool:
    return isinstance(thing, pikepdf.Object) and thing.is_indirect


def codings(text: str) -> tuple[bytes, ...]:
    """Return a text in every coding in which a file may hold it."""
    plain = text.encode()
    wide = text.encode("utf-16-be")
    shifted = (base64.b64encode(b"\0" * n + plain) for n in range(3))
    return (
        plain,
        wide,
        text.encode("utf-16-le"),
        binascii.hexlify(plain),
        binascii.hexlify(wide),
        # The first and last signs depend on the neighbours, so they are left out.
        *(inner for coded in shifted if len(inner := coded.rstrip(b"=")[4:-2]) >= LEAST_CODED),
    )


def found(files: Mapping[str, bytes], texts: Iterable[str]) -> list[str]:
    """Say which of the texts occur in the files, whatever they are packed in, and where."""
    needles = {text: tuple(c.lower() for c in codings(text)) for text in texts}
    hits = set()
    for where, layer in unpacked(files):
        low = layer.lower()
        hits |= {
            f"{where}: {text}" for text, coded in needles.items() if any(c in low for c in coded)
        }
    return sorted(hits)


def found_amounts(files: Mapping[str, bytes], amounts: Iterable[Decimal]) -> list[str]:
    """Say which of the amounts occur in the files as numbers with cents, and where."""
    wanted = {f"{amount:.2f}" for amount in amounts}
    hits = set()
    for where, layer in unpacked(files):
        narrow = layer.replace(b"\0", b"")  # UTF-16 is plain digits with zeros between
        for number in AMOUNT.findall(narrow):
            plain = number.replace(b",", b"").decode()
            hits |= {f"{where}: {plain}"} if plain in wanted else set()
    return sorted(hits)


def unpacked(files: Mapping[str, bytes]) -> Iterator[Layer]:
    """Yield every layer of every file."""
    for path, data in files.items():
        yield from _layers_once(path, data)


@lru_cache(maxsize=64)  # the files of one world are asked many things
def _layers_once(path: str, data: bytes) -> tuple[Layer, ...]:
    return tuple(layers(path, data))
