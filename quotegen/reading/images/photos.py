"""Photos of past jobs: only from the company's own folder, made small, stripped of metadata."""

import base64
import io
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from PIL import Image, ImageFile, ImageOps

from quotegen.problem import Problem, Source

LARGEST_SIDE_PX = 1_000
MOST_BYTES = 90_000
"""Of a photo in a page, where it takes a third more as text: what a phone loads in a blink."""
SIDES_AND_QUALITIES = (
    (LARGEST_SIDE_PX, 80), (LARGEST_SIDE_PX, 65), (800, 60), (640, 50), (480, 40),
)  # fmt: skip
"""What is tried in turn until a photo is small enough; only one that is all noise comes last."""
MOST_PIXELS = 60_000_000
FORMATS = ("JPEG", "PNG")


def inside(folder: Path, name: str) -> Path | None:
    """Return the file of that name under the folder, or None if the name leads out of it."""
    try:
        path = (folder / name).resolve()
    except (OSError, RuntimeError, ValueError):  # links that go in a circle, no name at all
        return None
    return path if path.is_relative_to(folder.resolve()) else None


def shown_jpeg(folder: Path, name: str, source: Source) -> bytes | Problem:
    """Read a photo and make it fit to be sent: no EXIF, no location, no side over 1,000 px."""
    path = inside(folder, name)
    if path is None:
        return Problem(
            code="path-leaves-folder",
            source=source,
            message=f"`{name}` leads out of the folder of this file",
            hint="copy the photo beside this file or below it, and name it from there",
        )
    try:
        with whole_pictures_only(), opened(path, FORMATS) as image:
            if image.width * image.height > MOST_PIXELS:
                return _too_large(source, f"{image.width} by {image.height}")
            image.draft("RGB", (LARGEST_SIDE_PX, LARGEST_SIDE_PX))
            upright = ImageOps.exif_transpose(image).convert("RGB")
    except FileNotFoundError:
        return Problem(
            code="no-photo",
            source=source,
            message=f"there is no file `{name}`",
            hint="check the name, or delete the line",
        )
    except Image.DecompressionBombError:
        return _too_large(source, "far too many")
    except Exception:  # noqa: BLE001 - a broken picture fails in more ways than can be named
        return Problem(
            code="not-a-photo",
            source=source,
            message=f"`{name}` is not a picture that can be read",
            hint="use a JPEG or PNG",
        )
    return _small(upright)


def _small(image: Image.Image) -> bytes:
    """Write the pixels alone, as large and as well as the size of a page allows."""
    data = b""
    for side, quality in SIDES_AND_QUALITIES:
        image.thumbnail((side, side))
        clean, out = Image.new("RGB", image.size), io.BytesIO()
        clean.paste(image)
        clean.save(out, "JPEG", quality=quality, optimize=True)
        data = out.getvalue()
        if len(data) <= MOST_BYTES:
            break
    return data


def opened(picture: Path | io.BytesIO, formats: tuple[str, ...]) -> Image.Image:
    """Read the head of a picture: its kind and size, and none of its pixels."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", Image.DecompressionBombWarning)  # we look ourselves
        return Image.open(picture, formats=formats)


@contextmanager
def whole_pictures_only() -> Iterator[None]:
    """Refuse half a picture, though the print engine, once loaded, makes Pillow accept it."""
    before = ImageFile.LOAD_TRUNCATED_IMAGES
    ImageFile.LOAD_TRUNCATED_IMAGES = False
    try:
        yield
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = before


def _too_large(source: Source, size: str) -> Problem:
    return Problem(
        code="photo-too-large",
        source=source,
        message=f"the photo is {size} pixels; at most {MOST_PIXELS // 1_000_000} million are read",
        hint="save a smaller copy of it",
    )


def data_address(kind: str, data: bytes) -> str:
    """Return the data: address that holds a file (RFC 2397)."""
    return f"data:{kind};base64,{base64.b64encode(data).decode('ascii')}"
