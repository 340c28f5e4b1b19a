"""What the days say in words: one truth, from the visits."""

from pathlib import Path

import pytest

from quotegen.explain.papers.compare_bids import answer
from quotegen.explain.words.days import joints_made, sealed_when, visit_name
from quotegen.explain.words.job_features import features_of
from quotegen.explain.words.numbers import numbers_for
from quotegen.reading.content.content import When
from tests.pricing import shop

SAW = {"visit": "saw", "days": "1"}
SEAL = {"visit": "seal", "days": "1", "wait_days": "3"}
JOINTS = {"cut": shop.rate("$1 / sq ft", "joints")}


def _made(folder: Path, *visits: shop.Typed, pours: str = "1", use: str = "patio", **finish: str):
    plain = {**shop.PLAIN, **finish, "visits": [shop.FORM, shop.POUR, *visits]}
    book = shop.book(JOINTS, {"plain": plain})
    job = shop.job(shop.placement("20 ft x 10 ft", use=use), start="2026-06-08", pours=pours)
    return shop.results(folder, job, rate_book=book)


@pytest.mark.parametrize(
    ("visits", "joints", "said"),
    [
        (
            (SAW,),
            "sawn",
            "cut with a saw on the day after the pour",
        ),
        ((), "sawn", "cut with a saw on the day of the pour, often 4 to 12 hours after it"),
        ((), "tooled", "pressed in with a tool while the slab is soft, on the day of the pour"),
    ],
)
def test_joints_are_made_when_the_visits_say(tmp_path, visits, joints, said):
    """The table and the sheet for other bidders say what the calendar says."""
    results = _made(tmp_path, *visits, joints=joints)
    assert joints_made(results, results.job.placements) == said
    assert said in answer(results, "joints")
    assert said in [row.text for row in numbers_for("joints", results)]
    assert (When.SAW in features_of(results)) == (joints == "sawn")


def test_the_sealer_says_its_day(tmp_path):
    """Poured on Wednesday; three days of waiting end on a Sunday, so it is sealed on Monday."""
    results = _made(tmp_path, SEAL, sealer="film", sealer_coats="1")
    assert sealed_when(results) == "5 days after the pour: Mon, Jun 15"


def test_a_part_of_a_pour_has_its_number(tmp_path):
    """Two pours are told apart; any other visit keeps its name."""
    results = _made(tmp_path, pours="2")
    names = [visit_name(results.words, visit) for visit in results.chosen_visits]
    assert names == ["Form", "Pour, part 1 of 2", "Pour, part 2 of 2"]
