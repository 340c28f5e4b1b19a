"""Past jobs: only with consent, and only what was agreed."""

import io
from pathlib import Path

import pytest
from PIL import Image

from quotegen.reading.read import read_job
from quotegen.reading.records import JobSpec, ReadJob, Reason
from tests.world import PATIO, write_world

OPEN = """\
  {name}:
    title: Title of {name}
    finished: {finished}
    town: Town of {name}
    use: {use}
    finish: {finish}
    area_sqft: 100
    shows: what {name} shows
    private_notes: secret of {name}
    contact: {{name: Contact of {name}, phone: 740-555-0100}}
    photo: {{file: wall.jpg, alt: Photo of {name}}}
"""


def _past(name: str, consent: str | None, use: str = "patio", finish: str = "broom",
          finished: str = "2022-05-01") -> str:  # fmt: skip
    text = OPEN.format(name=name, use=use, finish=finish, finished=finished)
    return text if consent is None else f"{text}    consent: {consent}\n"


def _job(folder: Path, *past: str, asks: str = "") -> JobSpec:
    Image.new("RGB", (8, 8), "gray").save(folder / "wall.jpg")
    path = write_world(folder, PATIO + asks, past_jobs="past_jobs:\n" + "".join(past))
    read = read_job(path, _scope())
    assert isinstance(read, ReadJob), read
    assert read.problems == ()
    return read.job


def _scope() -> frozenset[str]:
    from quotegen.reading.content.content import Content, read_content
    from quotegen.resources import content_folder

    content = read_content(content_folder())
    assert isinstance(content, Content)
    return frozenset(content.scope)


@pytest.mark.parametrize(
    ("given", "finished", "shown"),
    [
        ("2026-05-14", "2022-05-01", ["hill"]),
        ("2026-05-15", "2022-05-01", []),
        ("2024-01-01", "2026-05-14", ["hill"]),
        ("2024-01-01", "2026-05-15", []),
    ],
)
def test_what_was_not_agreed_to_by_the_date_of_the_quote(
    tmp_path: Path, given: str, finished: str, shown: list[str]
):
    """Consent up to the day of the quote counts, and work done by it; what is later is none."""
    consent = f"{{given: {given}, shows: [town, photo, contact]}}"
    job = _job(tmp_path, _past("hill", consent, finished=finished))
    assert [one.id for one in job.references] == shown
    assert ("Contact of hill" in repr(job.references)) == bool(shown)


@pytest.mark.parametrize(
    ("shows", "town", "photo", "contact"),
    [
        ("[]", False, False, False),
        ("[town]", True, False, False),
        ("[photo]", False, True, False),
        ("[contact]", False, False, True),
        ("[town, photo, contact]", True, True, True),
    ],
)
def test_only_what_was_agreed_is_kept(tmp_path: Path, shows: str, town, photo, contact):
    """What a past customer did not agree to is gone before any later stage sees it."""
    (shown,) = _job(tmp_path, _past("hill", f"{{given: 2024-01-01, shows: {shows}}}")).references
    assert (shown.town is not None, shown.photo is not None, shown.contact is not None) == (
        town, photo, contact,
    )  # fmt: skip
    assert (shown.title, shown.shows) == ("Title of hill", "what hill shows")


def test_nothing_of_a_job_without_consent_is_left(tmp_path: Path):
    """Neither a job without consent nor a withdrawn one leaves a word in what is handed on."""
    job = _job(
        tmp_path,
        _past("silent", None),
        _past("gone", "{given: 2024-01-01, shows: [town, photo, contact], withdrawn: 2025-01-01}"),
        _past("hill", "{given: 2024-01-01}"),
    )
    assert [shown.id for shown in job.references] == ["hill"]
    assert "silent" not in repr(job)
    assert "gone" not in repr(job)
    assert "secret of" not in repr(job)


def test_a_past_job_that_is_not_shown_needs_no_photo(tmp_path: Path):
    """The photo of a job that is not shown is not even opened."""
    past = _past("silent", None).replace("wall.jpg", "lost.jpg")
    assert _job(tmp_path, past).references == ()


def test_the_nearest_come_first(tmp_path: Path):
    """The same finish counts most, then the same use, then the older job; others do not fit."""
    consent = "{given: 2024-01-01}"
    job = _job(
        tmp_path,
        _past("other", consent, use="drive", finish="stamped_pattern"),
        _past("use_only", consent, finish="stamped_pattern"),
        _past("finish_only", consent, use="drive"),
        _past("both_new", consent, finished="2025-05-01"),
        _past("both_old", consent, finished="2019-05-01"),
    )
    assert [shown.id for shown in job.references] == [
        "both_old", "both_new", "finish_only", "use_only"]  # fmt: skip


def test_why_a_past_job_fits(tmp_path: Path):
    """The reasons: same finish, same use, two years of wear; whole years to the quote's date."""
    job = _job(tmp_path, _past("hill", "{given: 2024-01-01}", finished="2024-05-15"),
               _past("old", "{given: 2024-01-01}", finished="2024-05-14", use="drive"))  # fmt: skip
    assert {shown.id: (shown.years, shown.reasons) for shown in job.references} == {
        "hill": (1, (Reason.FINISH, Reason.USE)), "old": (2, (Reason.FINISH, Reason.WEAR)),
    }  # fmt: skip


@pytest.mark.parametrize(("shows", "counts"), [("[town]", True), ("[photo]", False)])
def test_a_town_counts_only_where_it_may_be_shown(tmp_path: Path, shows: str, counts: bool):
    """That a past job is in the same town would tell its town, so it is no reason without leave."""
    past = _past("hill", f"{{given: 2024-01-01, shows: {shows}}}")
    (shown,) = _job(tmp_path, past.replace("Town of hill", "Harrow Bend")).references
    assert (Reason.TOWN in shown.reasons) is counts


def test_a_job_may_name_its_references(tmp_path: Path):
    """Those named are shown in the order named, near or not."""
    past = [_past(name, "{given: 2024-01-01}", use="drive") for name in ("a", "b", "c", "d")]
    job = _job(tmp_path, *past, asks="references: [d, a]\n")
    assert [shown.id for shown in job.references] == ["d", "a"]


def test_a_job_may_show_none(tmp_path: Path):
    """An empty list is a choice."""
    job = _job(tmp_path, _past("hill", "{given: 2024-01-01}"), asks="references: []\n")
    assert job.references == ()


def test_a_shown_photo_keeps_its_words(tmp_path: Path):
    """The photo comes as a small picture with what it shows."""
    (shown,) = _job(tmp_path, _past("hill", "{given: 2024-01-01, shows: [photo]}")).references
    assert shown.photo is not None
    assert shown.photo.alt == "Photo of hill"
    with Image.open(io.BytesIO(shown.photo.jpeg)) as image:
        assert image.size == (8, 8)
