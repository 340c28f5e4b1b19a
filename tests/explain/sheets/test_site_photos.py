"""Photos of the site: all for the crew, and for the homeowner those alone that are shown."""

import base64
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from quotegen.explain.private.crew_sheet import crew_sheet
from quotegen.explain.sheets.customer import customer_view
from quotegen.pipeline import PricedJob, figure
from quotegen.reading.ledger.inputs import inputs_of
from tests.pricing import shop
from tests.publish.built import build
from tests.world import write_world

GATE = {"file": "photos/gate.jpg", "caption": "The gate, code kept-from-them"}
TREE = {"file": "photos/tree.png", "caption": "The maple that stays", "shown": "yes"}


def _job(folder: Path, *photos: dict[str, str]) -> Path:
    job = write_world(folder, shop.job(photos=list(photos)), rate_book=shop.book())
    (job.parent / "photos").mkdir()
    exif = Image.Exif()
    exif[0x010E] = "where it was taken"
    picture = Image.new("RGB", (2_400, 1_800), "#887766")
    picture.save(job.parent / "photos" / "gate.jpg", exif=exif)
    picture.save(job.parent / "photos" / "tree.png")
    return job


def _made(job: Path) -> PricedJob:
    made = figure(job, shop.shared())
    assert made.results is not None, made.problems
    assert made.owner is not None
    return made


def test_the_crew_has_all_and_the_homeowner_what_is_shown(tmp_path: Path):
    """Each with its caption, in the order of the job; small, and nothing of where it was taken."""
    made = _made(_job(tmp_path, GATE, TREE))
    assert made.results is not None
    assert made.owner is not None
    crew = crew_sheet(made.results, made.owner.job.photos).photos
    shown = customer_view(made.results).photos
    assert [photo.caption for photo in crew] == [GATE["caption"], TREE["caption"]]
    assert [photo.caption for photo in shown] == [TREE["caption"]]
    for photo in crew:
        data = base64.b64decode(photo.source.removeprefix("data:image/jpeg;base64,"))
        assert b"where it was taken" not in data
        with Image.open(BytesIO(data)) as seen:
            assert max(seen.size) <= 1_000


@pytest.mark.usefixtures("unprinted")
def test_what_is_not_shown_reaches_no_customer_file(tmp_path: Path):
    """Neither its caption nor its file stands in what the homeowner gets, nor an empty page."""
    (made,) = build((_job(tmp_path, GATE),), shop.shared()).packages.values()
    customer = {name: data for name, data in made.files.items() if name.startswith("customer/")}
    assert not any(b"kept-from-them" in data or b"gate.jpg" in data for data in customer.values())
    assert b'id="photos"' not in customer["customer/quote.html"]


@pytest.mark.usefixtures("unprinted")
def test_what_is_shown_is_on_the_page(tmp_path: Path):
    """After the terms, with its caption."""
    (made,) = build((_job(tmp_path, TREE),), shop.shared()).packages.values()
    page = made.files["customer/quote.html"].decode()
    assert page.index('id="terms"') < page.index('id="photos"') < page.index("maple that stays")


def test_a_photo_that_is_not_there_is_said(tmp_path: Path):
    """With its line and what to do, as for a past job."""
    made = figure(_job(tmp_path, GATE | {"file": "photos/gat.jpg"}), shop.shared())
    (found,) = (one for one in made.problems if one.code == "no-photo")
    assert (found.source.file, made.results) == (str(tmp_path / "job.yaml"), None)
    outside = figure(_job_again(tmp_path), shop.shared())
    assert "path-leaves-folder" in {one.code for one in outside.problems}


def _job_again(folder: Path) -> Path:
    return write_world(folder, shop.job(photos=[GATE | {"file": "../gate.jpg"}]),
                       rate_book=shop.book())  # fmt: skip


def test_photos_are_frozen_with_the_quote(tmp_path: Path):
    """What is issued keeps the pictures that it was made of."""
    names = inputs_of(_job(tmp_path, GATE, TREE)).keys()
    assert {"jobs/photos/gate.jpg", "jobs/photos/tree.png"} <= names
