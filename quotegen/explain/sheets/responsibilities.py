"""Who does what beside our work: we, where the price covers it, else others."""

from collections.abc import Iterator

from quotegen.explain.results import Results
from quotegen.explain.sheets.job_features import features_of
from quotegen.explain.words.prose import filled, sentence
from quotegen.explain.words.rows import Row
from quotegen.pricing.quoted.visits_needed import POUR
from quotegen.reading.content.content import DoneBefore


def responsibility_rows(results: Results) -> tuple[Row, ...]:
    """The responsibilities on this job, then what else the price leaves out.

    What the company or the job says of a responsibility comes before what content/ says of it.
    """
    # What the job says of a responsibility replaces what the company says of it.
    excluded = {one.responsibility or one.what: one for one in results.job.not_included}
    rows = (Row(name=one.what, text=sentence(one.who)) for one in excluded.values())
    return (*_responsibilities(results), *rows)


def _responsibilities(results: Results) -> Iterator[Row]:
    features, covered = features_of(results), set(results.scope_items())
    excluded = {one.responsibility for one in results.job.not_included}
    for page in results.content.responsibilities.values():
        if page.front.id in excluded or not features & set(page.front.applies):
            continue
        ours = covered & set(page.front.ours)
        if ours:
            yield Row(name=page.front.title, text=results.words("responsibility_ours"))
        else:
            text = filled(page.markdown, results)
            by = _by(results, page.front.before)
            yield Row(name=page.front.title, text=f"{text} {by}".strip())


def _by(results: Results, before: DoneBefore | None) -> str:
    """The day by which it must be done; empty where none of our visits waits for it."""
    visits = results.chosen_visits
    waiting = {
        None: (),
        DoneBefore.START: visits,
        DoneBefore.POUR: tuple(visit for visit in visits if visit.id == POUR),
    }[before]
    if not waiting:
        return ""
    return results.words("responsibility_by", day=results.words.weekday(waiting[0].first_day))
