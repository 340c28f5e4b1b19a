"""A job that is only paced: what is usual for it, and its sides made longer and shorter."""

from dataclasses import replace
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from quotegen.quantity import Length
from quotegen.reading.fields.text_fields import Size
from quotegen.reading.files.job import Use
from quotegen.reading.files.rate_book import Applies
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.paced_job import Asked, paced_by, paced_job
from quotegen.reading.records import JobSpec, ReadJob
from tests.pricing.shop import shared
from tests.world import write_world

SIZE = Size(Length(Fraction(24)), Length(Fraction(16)))


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    """Return what is asked on a first visit of the example company."""
    write_world(tmp_path)
    return Asked(
        folder=tmp_path,
        sizes=(SIZE,),
        finish="slate",
        use=Use.PATIO,
        on=date(2026, 5, 14),
        distance=None,
        drive_time=None,
    )


def _paced(asked: Asked) -> JobSpec:
    read = paced_job(asked, frozenset(shared().content.scope))
    assert isinstance(read, ReadJob), read
    assert read.problems == ()
    return read.job


def _sides(job: JobSpec) -> tuple[Fraction, Fraction]:
    size = job.placements[0].add[0].rectangle
    assert size is not None
    return size.length.feet, size.width.feet


def test_what_is_usual_is_filled_in(asked: Asked):
    """The asked finish comes first, all others are compared, and thickness and steel are usual."""
    job = _paced(asked)
    usual = job.rate_book.usual[Use.PATIO]
    assert (job.placements[0].thickness, job.placements[0].reinforcement) == (
        usual.thickness,
        usual.reinforcement,
    )
    assert job.finish == "slate"
    assert {"slate", *job.typed.compare} == set(job.rate_book.finishes)
    assert job.references == ()


def test_sides_are_longer_and_shorter_by_a_factor(asked: Asked):
    """Each side is taken to a ten-thousandth of a foot."""
    job = _paced(asked)
    for factor, sides in (
        (Fraction(1), (Fraction(24), Fraction(16))),
        (Fraction(21, 20), (Fraction("25.2"), Fraction("16.8"))),
        (Fraction(1, 7), (Fraction("3.4286"), Fraction("2.2857"))),
    ):
        longer, counts = paced_by(job, asked, factor)
        assert (_sides(longer), counts) == (sides, None)


def test_an_area_goes_with_the_square_of_the_factor(asked: Asked):
    """What was not paced as one rectangle is drawn as a square, and its own area and edges count.

    The edge at a pool is also an inner one, and asks for what the book casts there.
    """
    asked = replace(asked, sizes=(), area_sqft=Fraction(400),
                    edges={EdgeKind.POOL: Length(Fraction(60))})  # fmt: skip
    job = _paced(asked)
    assert _sides(job) == (Fraction(20), Fraction(20))
    _, counts = paced_by(job, asked, Fraction(21, 20))
    assert counts is not None
    slab = counts.placements["slab"]
    assert slab.area == Fraction(441)
    assert slab.edges == dict.fromkeys((EdgeKind.POOL, EdgeKind.INNER), Length(Fraction(63)))


def test_without_a_day_no_season_applies(asked: Asked):
    """Seasonal lines are then asked for, and the newest book counts from its first day."""
    job = _paced(replace(asked, on=None))
    seasonal = [rate for rate in job.rate_book.rates.values() if rate.season]
    assert seasonal
    assert {rate.applies for rate in seasonal} == {Applies.ASKED}
    assert job.quote_date == job.rate_book.valid_from
