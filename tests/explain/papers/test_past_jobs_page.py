"""The page of past jobs: those of sheet 6 and more, each with what its owner agreed to."""

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
def test_it_begins_with_those_of_sheet_6(job_file: Path):
    """The page leaves out none that may be shown, up to five; the quote names the first three."""
    results = shop.example_results(job_file)
    page = past_jobs_page(results)
    assert len(page.jobs) == min(len(results.job.references), 5)
    assert page.jobs[:3] == example_view(job_file).agreement.past_jobs
