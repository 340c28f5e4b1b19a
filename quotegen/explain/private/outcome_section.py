"""After the job: what was estimated beside how it came out, and which hours of the book drift."""

from collections.abc import Iterator

from quotegen.explain.private.owners_sheet import Section, TableRow, table
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.pricing.costs.outcome import Drift, Outcome
from quotegen.pricing.costs.owner import OwnersFigures

_HOUR_PLACES, _RATE_PLACES, _YARD_PLACES = 1, 3, 2


def outcome_section(results: Results, owner: OwnersFigures) -> Section:
    """The job as estimated beside the job as it came out."""
    words, actual, outcome = results.words, owner.job.file.actual, owner.outcome
    note = actual.note if actual else None
    head = ("outcome_what", "outcome_estimated", "outcome_actual", "outcome_difference")
    rows = _outcome(words, outcome) if outcome else ()
    return Section(
        id="outcome",
        title=words("outcome"),
        lines=(note,) if note else (),
        table=table(words, head, rows),
    )


def _outcome(words: Words, outcome: Outcome) -> Iterator[TableRow]:
    for step in outcome.steps:
        yield TableRow(
            name=_name(words, step.id, step.name),
            note=words("cost_hours"),
            cells=(
                words.number(step.estimated, _HOUR_PLACES),
                words.number(step.actual, _HOUR_PLACES),
                words.signed_number(step.actual - step.estimated, _HOUR_PLACES),
            ),
        )
    if outcome.concrete:
        ordered, came = outcome.concrete
        yield TableRow(
            name=words("outcome_concrete"),
            cells=(
                words.number(ordered, _YARD_PLACES),
                words.number(came, _YARD_PLACES),
                words.signed_number(came - ordered, _YARD_PLACES),
            ),
        )
    if outcome.days:
        planned, took = outcome.days
        yield TableRow(
            name=words("outcome_days"),
            cells=(
                str(planned),
                str(took),
                words.signed_number(took - planned, 0),
            ),
        )


def drift_section(results: Results, drift: tuple[Drift, ...]) -> Section:
    """Crew hours of the book that are off over all completed jobs, and by how much."""
    words = results.words
    head = ("outcome_what", "outcome_estimated", "outcome_actual", "drift_of", "drift_rate",
            "drift_better")  # fmt: skip
    drifting = tuple(
        words(
            "drift_says",
            step=_name(words, one.id, one.name),
            off=words.signed_percent(one.ratio - 1),
            jobs=str(one.jobs),
        )
        for one in drift
        if one.drifts
    )
    return Section(
        id="drift",
        title=words("drift"),
        lines=(words("drift_about"),) if drift else (),
        points=drifting or ((words("drift_none"),) if drift else ()),
        table=table(words, head, (_drift(words, one) for one in drift)),
    )


def _drift(words: Words, drift: Drift) -> TableRow:
    return TableRow(
        name=_name(words, drift.id, drift.name),
        note=words("drift_jobs", jobs=str(drift.jobs)),
        cells=(
            words.number(drift.estimated, _HOUR_PLACES),
            words.number(drift.actual, _HOUR_PLACES),
            words.signed_percent(drift.ratio - 1),
            "" if drift.rate is None else _rate(words, drift, better=False),
            "" if drift.better is None else _rate(words, drift, better=True),
        ),
    )


def _rate(words: Words, drift: Drift, *, better: bool) -> str:
    hours = drift.better if better else drift.rate
    return words("drift_hours", hours=words.number(hours or 0, _RATE_PLACES), of=drift.of)


def _name(words: Words, step_id: str, name: str) -> str:
    known = f"cost_item_{step_id}"
    return name or (words(known) if known in words.labels else step_id.replace("_", " "))
