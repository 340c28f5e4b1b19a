"""Past jobs on paper: the nearest of them, the reason for each, and nothing that was not agreed."""

import re
from pathlib import Path
from typing import Any, ClassVar

import yaml

from quotegen.explain.results import Results
from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.sheets.past_jobs import MOST_SHOWN, shown_references
from tests.explain.examples import example_view
from tests.pricing import shop
from tests.world import EXAMPLES

BASE: dict[str, Any] = {
    "title": "Patio", "finished": "2022-06-17", "town": "Harrow Bend", "use": "patio",
    "finish": "broom", "area_sqft": "200", "shows": "wear",
    "consent": {"given": "2024-01-01"},
}  # fmt: skip


def _results(folder: Path, past: dict[str, Any], **job: Any) -> Results:
    text = shop.as_yaml({"past_jobs": past})
    return shop.results(folder, shop.job(**job), rate_book=shop.book(), past_jobs=text)


def test_size_counts_once_the_slab_is_measured(tmp_path):
    """Of six that fit alike, the one that is far larger than 200 sq ft is left out."""
    past = {name: {**BASE, "title": name, "area_sqft": size} for name, size in
            (("huge", "2000"), ("same", "200"), ("near", "290"), ("small", "140"),
             ("like", "210"), ("less", "190"))}  # fmt: skip
    shown = shown_references(_results(tmp_path, past))
    assert len(shown) == MOST_SHOWN
    assert {one.title for one in shown} == {"same", "near", "small", "like", "less"}


def test_the_reason_is_said(tmp_path):
    """Same finish, use and size, and the years to see; the town only where it may be named."""
    town = {**BASE, "consent": {"given": "2024-01-01", "shows": ["town"]}}
    views = customer_view(_results(tmp_path, {"a": BASE, "b": town})).agreement.past_jobs
    said = {view.facts.endswith("Harrow Bend"): view.why for view in views}
    assert said[False] == (
        "the same kind of finish, the same use, about the same size, and 3 years of wear to see"
    )
    assert "in your town, Harrow Bend" in said[True]


def test_those_that_the_job_names_are_all_shown(tmp_path):
    """A choice of the owner's stands, in his order, and says so where nothing else fits."""
    past = {f"p{n}": {**BASE, "title": f"P{n}"} for n in range(4)}
    past["far"] = {**BASE, "title": "Far", "use": "drive", "finish": "stamped_pattern",
                   "area_sqft": "3000", "finished": "2026-01-01"}  # fmt: skip
    results = _results(tmp_path, past, references=["far", "p3", "p2", "p1", "p0"])
    assert [one.title for one in shown_references(results)] == ["Far", "P3", "P2", "P1", "P0"]
    assert customer_view(results).agreement.past_jobs[0].why == "chosen for you by us"


def test_the_age_is_told_once():
    """The page works it out from the day of finishing; no words of an example say it again.

    Month and year stand beside it, so that a reader comes to the same whole years.
    """
    ages = re.compile(r"year|winter|summer|season|\bold\b", re.IGNORECASE)
    text = (EXAMPLES / "past-jobs.yaml").read_text(encoding="utf-8")
    for name, job in yaml.safe_load(text)["past_jobs"].items():
        assert not ages.search(f"{job['shows']} {job.get('now', '')}"), name
    deck = next(path for path in shop.JOBS if path.stem == "orchard-bend-pool-deck")
    shown = example_view(deck).agreement.past_jobs
    edge = next(one for one in shown if one.title == "Pool deck with a cast edge")
    assert "finished in June 2022" in edge.facts
    assert "3 years of wear to see" in edge.why  # in May 2026 the fourth is not full yet


class TestReferences:
    """A past job is shown only as far as its owner agreed."""

    JOB = shop.job(finish="plain", references=["here"])
    PAST: ClassVar = {"title": "Deck", "finished": "2022-06-17", "town": "Tollgate", "use": "patio",
            "finish": "broom", "area_sqft": "1940", "shows": "four winters",
            "contact": {"name": "Marta Oyelaran", "phone": "740-555-0131"}}  # fmt: skip

    def _shown(self, folder: Path, consent: dict[str, object]) -> tuple[str, str]:
        past = shop.as_yaml({"past_jobs": {"here": {**self.PAST, "consent": consent}}})
        results = shop.results(folder, self.JOB, rate_book=shop.book(), past_jobs=past)
        (shown,) = customer_view(results).agreement.past_jobs
        assert shown.photo == shown.alt == ""
        return shown.facts, shown.contact

    def test_the_kind_and_size_of_the_work(self, tmp_path):
        """With consent alone: what was done, how large, and when; neither town nor name."""
        facts, contact = self._shown(tmp_path, {"given": "2024-06-01"})
        assert facts == "Broom finish · 1,940 sq ft · finished in June 2022"
        assert contact == ""

    def test_the_town(self, tmp_path):
        """The town where its owner agreed to it."""
        facts, contact = self._shown(tmp_path, {"given": "2024-06-01", "shows": ["town"]})
        assert facts.endswith(" · Tollgate")
        assert contact == ""

    def test_the_contact(self, tmp_path):
        """A name and a number where their owner agreed to be called."""
        facts, contact = self._shown(tmp_path, {"given": "2024-06-01", "shows": ["contact"]})
        assert "Tollgate" not in facts
        assert "Marta Oyelaran" in contact
        assert "740-555-0131" in contact
