"""Dates of care: every day after the pour that the homeowner should know, in order."""

from datetime import date

from quotegen.explain.results import Results
from quotegen.explain.words.rows import Row
from quotegen.schedule.care_dates import CareDate, care_dates_of
from quotegen.schedule.openings import openings_of
from quotegen.schedule.visits import Visit


def care_rows(
    results: Results, visits: tuple[Visit, ...], since: date = date.min
) -> tuple[Row, ...]:
    """The dates that follow from some visits: days in their order, then the years.

    What is over before `since` is left out.
    """
    dates = care_dates_of(results.job, visits, results.rules)
    words = results.words
    days = [(c.day, words(f"care_{c.care.value}")) for c in dates if c.day is not None]
    if days:
        opened = openings_of(results.job, visits, results.rules)
        days.extend((o.day, words(f"opening_{o.use.value}")) for o in opened)
    days.sort(key=lambda dated: dated[0])
    return (
        *(Row(name=words.weekday(day), text=text) for day, text in days if day >= since),
        *(_years(results, care) for care in dates if care.years is not None),
    )


def _years(results: Results, care: CareDate) -> Row:
    first, last = care.years or (0, 0)
    words = results.words
    return Row(
        name=words(f"care_{care.care.value}_when", first=str(first), last=str(last)),
        text=words(f"care_{care.care.value}"),
    )
