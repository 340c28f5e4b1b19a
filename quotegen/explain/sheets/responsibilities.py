"""Work beside ours: what the price leaves out, and who does each."""

from collections.abc import Iterator

from quotegen.explain.results import Results
from quotegen.explain.words.job_features import features_of
from quotegen.explain.words.prose import filled, sentence
from quotegen.explain.words.rows import Row
from quotegen.reading.content.content import DoneBefore
from quotegen.reading.files.rate_book import POUR


def excluded_rows(results: Results) -> tuple[Row, ...]:
    """What is not in the price: by the pages of content/, then by the company and the job.

    What the company or the job says of a responsibility comes before what content/ says of it.
    """
    # What the job says of a responsibility replaces what the company says of it.
    excluded = {one.responsibility or one.what: one for one in results.job.not_included}
    rows = (
        Row(name=one.what, text=sentence(one.who), mark=one.responsibility or "")
        for one in excluded.values()
    )
    return (*_of_the_pages(results), *rows, *_drains(results))


def _of_the_pages(results: Results) -> Iterator[Row]:
    features, covered = features_of(results), set(results.scope_items())
    typed = {one.responsibility for one in results.job.not_included}
    for page in results.content.responsibilities.values():
        ours = covered & set(page.front.ours)
        if page.front.id not in typed and not ours and features & set(page.front.applies):
            said = f"{filled(page.markdown, results)} {_by(results, page.front.before)}".strip()
            yield Row(name=page.front.title, text=said, mark=page.front.id)


def _by(results: Results, before: DoneBefore | None) -> str:
    """The day by which it must be done; empty where none of our visits waits for it."""
    visits = results.chosen_visits
    waiting = {
        None: (),
        DoneBefore.START: visits,
        DoneBefore.POUR: tuple(visit for visit in visits if visit.visit == POUR),
    }[before]
    if not waiting:
        return ""
    return results.words("responsibility_by", day=results.words.weekday(waiting[0].first_day))


def _drains(results: Results) -> Iterator[Row]:
    """The drains on the plan that somebody else supplies."""
    words = results.words
    by = dict.fromkeys(
        drain.by for spec in results.job.placements for drain in spec.typed.drains if drain.by
    )
    for who in by:
        said = f"{sentence(who)} {_by(results, DoneBefore.POUR)}".strip()
        yield Row(name=words("excluded_drain"), text=said)
