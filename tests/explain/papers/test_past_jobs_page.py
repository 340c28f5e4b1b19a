"""The page of past jobs: those that sheet 6 names, each with what its owner agreed to."""

from pathlib import Path

from quotegen.explain.papers.past_jobs_page import past_jobs_page
from tests.explain.examples import EVERY_EXAMPLE, example_view
from tests.pricing import shop

DECK = {
    "title": "Patio", "finished": "2022-06-17", "town": "Harrow Bend", "use": "patio",
    "finish": "broom", "area_sqft": "200", "shows": "wear", "now": "as on the first day",
    "scope": ["base", "slab"], "consent": {"given": "2024-01-01"},
}  # fmt: skip


def test_scope_size_finish_and_how_it_looks_now(tmp_path):
    """What its owner agreed to is said in full; the town, which was not agreed to, is not."""
    past = shop.as_yaml({"past_jobs": {"a": DECK}})
    results = shop.results(tmp_path, shop.job(), rate_book=shop.book(), past_jobs=past)
    (job,) = past_jobs_page(results).jobs
    assert job.facts == "Broom finish · 200 sq ft · finished in June 2022"
    assert (job.now, job.scope) == ("as on the first day", ("Base", "Slab"))


@EVERY_EXAMPLE
def test_it_shows_those_of_sheet_6(job_file: Path):
    """No past job is on the page that the quote does not name, and none is left out."""
    page = past_jobs_page(shop.example_results(job_file))
    assert page.jobs == example_view(job_file).agreement.past_jobs
