"""The page of past jobs: each with what its owner agreed to have shown."""

from dataclasses import dataclass

from quotegen.explain.results import Results
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.past_jobs import reference_view, shown_references
from quotegen.explain.sheets.views import PaperHead, ReferenceView


@dataclass(frozen=True, slots=True, kw_only=True)
class PastJobsPage:
    """Past jobs on one page."""

    head: PaperHead
    jobs: tuple[ReferenceView, ...]


def past_jobs_page(results: Results) -> PastJobsPage:
    """Build the page of past jobs: those on sheet 6, then the others that are most like the job."""
    title = results.words("past_jobs_title", company=results.job.company.name)
    return PastJobsPage(
        head=paper_head(results, title, results.job.quote_date),
        jobs=tuple(reference_view(results, one) for one in shown_references(results)),
    )
