"""The care hand-over: what was built and when, and how to look after it."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import timedelta

from quotegen.explain.guide.care_rows import care_rows
from quotegen.explain.guide.guide import care_pages
from quotegen.explain.results import Results
from quotegen.explain.sheets.combination import with_combination
from quotegen.explain.sheets.covers import cover_rows
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.views import PaperHead
from quotegen.explain.words.prose import clause, comma_joined, prose
from quotegen.explain.words.rows import Prose, Row
from quotegen.reading.content.content import CareFront, First, Page
from quotegen.reading.files.after_signing import Completed
from quotegen.reading.files.rate_book import POUR, SEAL
from quotegen.schedule.visits import Visit

LASTS = {
    First.DAY: timedelta(days=1),
    First.WEEK: timedelta(weeks=1),
    First.MONTH: timedelta(days=31),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class CareCard:
    """What stays in the kitchen drawer: dates, care, what is normal, the warranty."""

    head: PaperHead
    verdict: str
    built: tuple[Row, ...]
    care_dates: tuple[Row, ...]
    care: tuple[Prose, ...]
    normal: Prose
    promised: Prose
    warranty: Prose


def care_card(results: Results, completed: Completed) -> CareCard:
    """Build the care card of a finished job, for the finish that was accepted."""
    results, words = as_accepted(results), results.words
    pages = [page for page in care_pages(results) if _still_to_come(page, completed)]
    return CareCard(
        head=paper_head(results, words("care_title", title=results.job.title), completed.date),
        verdict=words(
            "care_verdict",
            date=words.day(completed.date),
            phone=results.job.company.phone,
        ),
        built=(*cover_rows(results), *_changes(results), *_days(results, completed)),
        care_dates=care_rows(
            results, tuple(as_built(results.chosen_visits, completed)), completed.date
        ),
        care=tuple(prose(p.front.id, p.front.title, p.markdown, results) for p in pages),
        normal=clause("what_is_normal", results),
        promised=clause("promised", results),
        warranty=clause("warranty", results),
    )


def as_accepted(results: Results) -> Results:
    """Return the results as if the accepted finish and extras had been quoted."""
    accepted, finish = results.job.typed.accepted, results.contract.finish
    extras = set(accepted.extras) if accepted else set()
    chosen = next(
        one
        for one in results.quote.combinations
        if one.finish == finish and not one.alternates and set(one.extras) == extras
    )
    return with_combination(results, chosen)


def _still_to_come(page: Page[CareFront], completed: Completed) -> bool:
    first = page.front.first
    return first is None or completed.date <= completed.poured + LASTS[first]


def as_built(visits: tuple[Visit, ...], completed: Completed) -> Iterator[Visit]:
    """Yield the pour and the sealing, on the days when they were done."""
    days = {POUR: completed.poured, SEAL: completed.sealed}
    for visit in visits:
        day = days.get(visit.id)
        if day is not None:
            yield replace(visit, first_day=day, last_day=day)


def _changes(results: Results) -> Iterator[Row]:
    """Yield what was signed later: the rows above say what was quoted."""
    for change in results.contract.changes:
        yield Row(name=results.words("change_name", number=str(change.number)), text=change.what)


def _days(results: Results, completed: Completed) -> Iterator[Row]:
    words = results.words
    yield Row(name=words("care_poured"), text=words.day(completed.poured))
    if completed.sealed is not None:
        sealed = comma_joined(words.day(completed.sealed), completed.sealer)
        yield Row(name=words("care_sealed"), text=sealed)
