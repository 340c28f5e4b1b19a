"""Photos: small, without metadata, and only from the folder of the company."""

import io
import warnings
from base64 import b64encode
from pathlib import Path
from random import Random

import pytest
from PIL import Image, ImageFile
from PIL.ExifTags import GPS, IFD, Base

from quotegen.problem import Problem, Source
from quotegen.reading.images.photos import LARGEST_SIDE_PX, inside, shown_jpeg
from tests.messages.spoiled_files import huge_png

HERE = Source(file="past-jobs.yaml", line=3)


def _shown(folder: Path, name: str = "wall.jpg") -> Image.Image:
    jpeg = shown_jpeg(folder, name, HERE)
    assert isinstance(jpeg, bytes), jpeg
    image = Image.open(io.BytesIO(jpeg))
    image.load()
    return image


def _code(folder: Path, name: str = "wall.jpg") -> str:
    problem = shown_jpeg(folder, name, HERE)
    assert isinstance(problem, Problem)
    assert problem.source == HERE
    return problem.code


def _exif(turned: int = 1) -> Image.Exif:
    exif = Image.Exif()
    exif[Base.Make] = "Marker Camera"
    exif[Base.Orientation] = turned
    exif.get_ifd(IFD.GPSInfo)[GPS.GPSLatitudeRef] = "N"
    exif.get_ifd(IFD.GPSInfo)[GPS.GPSLatitude] = (40.0, 26.0, 46.0)
    return exif


def test_metadata_is_gone(tmp_path: Path):
    """Neither the camera nor the place where a photo was taken reaches a customer."""
    Image.new("RGB", (60, 40), "gray").save(
        tmp_path / "wall.jpg", exif=_exif(), comment=b"Marker comment",
        icc_profile=b"Marker profile",
    )  # fmt: skip
    assert b"Marker" in (tmp_path / "wall.jpg").read_bytes()
    jpeg = shown_jpeg(tmp_path, "wall.jpg", HERE)
    assert isinstance(jpeg, bytes)
    assert b"Marker" not in jpeg
    assert b"Exif" not in jpeg
    shown = _shown(tmp_path)
    assert not shown.getexif()
    assert set(shown.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}


def test_a_turned_photo_stands_upright(tmp_path: Path):
    """What the camera only noted, the picture itself shows once the note is gone."""
    Image.new("RGB", (60, 40)).save(tmp_path / "wall.jpg", exif=_exif(turned=6))
    assert _shown(tmp_path).size == (40, 60)


@pytest.mark.parametrize(
    ("size", "shown"),
    [((4_000, 3_000), (1_000, 750)), ((900, 3_000), (300, 1_000)), ((300, 200), (300, 200))],
)
@pytest.mark.parametrize("kind", ["JPEG", "PNG"])
def test_a_large_photo_is_made_small(tmp_path: Path, kind: str, size, shown):
    """No side is longer than 1,000 pixels; a small photo is left at its size."""
    Image.new("RGB", size).save(tmp_path / "wall.jpg", kind)
    assert _shown(tmp_path).size == shown
    assert max(shown) <= LARGEST_SIDE_PX


@pytest.mark.parametrize("mode", ["L", "P", "RGBA", "CMYK", "1"])
def test_every_kind_of_pixel_becomes_color(tmp_path: Path, mode: str):
    """Grey, palette, see-through and printer's colors are all shown."""
    kind = "JPEG" if mode == "CMYK" else "PNG"
    Image.new(mode, (20, 10)).save(tmp_path / "wall.jpg", kind)
    assert _shown(tmp_path).mode == "RGB"


def test_the_same_photo_is_the_same_bytes(tmp_path: Path):
    """A package is the same to the byte when it is built again."""
    Image.effect_noise((300, 200), 50).save(tmp_path / "wall.jpg")
    assert shown_jpeg(tmp_path, "wall.jpg", HERE) == shown_jpeg(tmp_path, "wall.jpg", HERE)


@pytest.mark.parametrize(
    "size", [(9_000, 8_000), (60_000_001, 1), (12_000, 10_000), (20_000, 20_000), (2**30, 2**30)]
)
def test_a_huge_photo_is_refused_from_its_head(tmp_path: Path, size: tuple[int, int]):
    """Over 60 million pixels nothing is decoded: the file holds no pixels to decode."""
    (tmp_path / "wall.jpg").write_bytes(huge_png(*size))
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        assert _code(tmp_path) == "photo-too-large"


@pytest.mark.parametrize(
    "data",
    [b"", b"not a picture", b"\xff\xd8\xff\xe0", huge_png(100, 100), b"%!PS-Adobe-3.0 EPSF-3.0\n",
     b"GIF89a\x01\x00\x01\x00\x00\x00\x00;", huge_png(100, 100)[:40]],
)  # fmt: skip
def test_what_is_no_photo(tmp_path: Path, monkeypatch, data: bytes):
    """A broken picture, or a kind that could run a program, is refused, printing loaded or not."""
    monkeypatch.setattr(ImageFile, "LOAD_TRUNCATED_IMAGES", True)  # as the print engine sets it
    (tmp_path / "wall.jpg").write_bytes(data)
    assert _code(tmp_path) == "not-a-photo"


def test_a_photo_that_is_not_there(tmp_path: Path):
    """A wrong name is told from a wrong file."""
    assert _code(tmp_path) == "no-photo"


@pytest.mark.parametrize(
    "name", ["../wall.jpg", "/etc/hostname", "below/../../wall.jpg", "a\0b.jpg", "..", "~/../../w"]
)
def test_no_name_leads_out_of_the_folder(tmp_path: Path, name: str):
    """A file of the company's may not carry a stranger's picture, or any other file, along."""
    folder = tmp_path / "company"
    (folder / "below").mkdir(parents=True)
    Image.new("RGB", (8, 8)).save(tmp_path / "wall.jpg")
    assert _code(folder, name) == "path-leaves-folder"


def test_no_link_leads_out_of_the_folder(tmp_path: Path):
    """A link is followed before it is judged, and one that goes in a circle leads nowhere."""
    folder = tmp_path / "company"
    folder.mkdir()
    Image.new("RGB", (8, 8)).save(tmp_path / "wall.jpg")
    (folder / "out.jpg").symlink_to(tmp_path / "wall.jpg")
    (folder / "round.jpg").symlink_to(folder / "round.jpg")
    assert inside(folder, "out.jpg") is None
    assert _code(folder, "out.jpg") == "path-leaves-folder"
    assert _code(folder, "round.jpg") in {"path-leaves-folder", "no-photo", "not-a-photo"}


def test_a_photo_may_lie_below_the_folder(tmp_path: Path):
    """Photos may be kept in a folder of their own."""
    (tmp_path / "photos").mkdir()
    Image.new("RGB", (8, 8)).save(tmp_path / "photos" / "wall.jpg")
    assert _shown(tmp_path, "photos/wall.jpg").size == (8, 8)
    assert _shown(tmp_path, "photos/../photos/wall.jpg").size == (8, 8)


def test_a_large_photo_costs_at_most_120_kb_in_a_page(tmp_path):
    """Twelve megapixels of noise, the worst there is: 90 kB as a file, a third more as text."""
    noise = Image.frombytes("RGB", (4000, 3000), Random(1).randbytes(36_000_000))
    noise.save(tmp_path / "noise.jpg", quality=90)
    small = shown_jpeg(tmp_path, "noise.jpg", Source(file="x"))
    assert isinstance(small, bytes)
    assert len(b64encode(small)) <= 120_000
