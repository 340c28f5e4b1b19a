"""Checks of what a job asks for against the rate book: finishes, rates and how much, its days."""

from collections.abc import Iterator, Mapping
from datetime import date

from quotegen.problem import Problem
from quotegen.quantity import METRIC, Unit
from quotegen.reading.fields.text_fields import Count
from quotegen.reading.files.job import Job, JobFile
from quotegen.reading.files.rate_book import Applies, BookRate, RateBook
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.near import near_miss
from quotegen.reading.yaml.typed_file import Typed

FIRST_DAY = date(2021, 1, 1)
"""The youngest of the trade's rules says nothing of an earlier day; a test holds this."""


def asked_faults(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    """Yield what the job names and the rate book does not have, or has in another unit."""
    yield from _finishes(job, book)
    for index, placement in enumerate(job.value.placements):
        yield from _rates(job, book, ("placements", index, "include"), placement.include)
    for key, asked in (("include", job.value.include), ("extras", job.value.extras)):
        yield from _rates(job, book, (key,), asked)
    yield from _twice(job)
    yield from _days(job, book)
    yield from _road(job, book)


def _finishes(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    named: list[tuple[DocumentPath, str]] = [(("finish",), job.value.finish)]
    named += [(("compare", i), name) for i, name in enumerate(job.value.compare)]
    named += [
        (("placements", i, "finish"), p.finish)
        for i, p in enumerate(job.value.placements)
        if p.finish
    ]
    for path, name in named:
        if name not in book.finishes:
            said = f"the rate book has no finish `{name}`"
            yield job.fault(path, "unknown-finish", said, near_miss(name, book.finishes))
    seen = {job.value.finish}
    for index, name in enumerate(job.value.compare):
        if name in seen:
            said = f"the finish `{name}` is already offered"
            yield job.fault(("compare", index), "finish-twice", said, "delete it here")
        seen.add(name)


def _rates(
    job: Typed[JobFile], book: RateBook, path: DocumentPath, asked: Mapping[str, Count]
) -> Iterator[Problem]:
    for rate_id, count in asked.items():
        rate, here = book.rates.get(rate_id), (*path, rate_id)
        if rate is None:
            offered = [i for i, r in book.rates.items() if r.applies is Applies.ASKED]
            said = f"the rate book has no rate `{rate_id}`"
            yield job.fault(here, "unknown-rate", said, near_miss(rate_id, offered))
        elif rate.applies is not Applies.ASKED:
            said = f"`{rate_id}` applies {rate.applies.value}, so a job does not ask for it"
            hint = "delete the line, or write `applies: asked` in the rate book"
            yield job.fault(here, "rate-not-asked", said, hint)
        elif rate.share is not None:
            yield from _share(job, here, count)
        elif rate.travel is None and not rate.by_thickness:
            (_, priced), *_ = rate.rates
            yield from _count(job, here, rate, priced.unit, count)


def _share(job: Typed[JobFile], path: DocumentPath, count: Count) -> Iterator[Problem]:
    if count.amount is not None:
        said = f"`{path[-1]}` is a share of other lines; there is no number of it"
        yield job.fault(path, "share-counted", said, "type yes")
    if path[0] == "placements":
        said = f"`{path[-1]}` is a share of the lines of the whole job"
        hint = "ask for it under `include` of the job, not of one placement"
        yield job.fault(path, "share-on-placement", said, hint)


def _count(
    job: Typed[JobFile], path: DocumentPath, rate: BookRate, unit: Unit, count: Count
) -> Iterator[Problem]:
    by_foot = unit is Unit.FT and rate.of is None
    needs_number = unit in {Unit.CU_YD, Unit.HOUR, Unit.MILE} or by_foot
    priced = f"`{path[-1]}` is priced per {unit.value}"
    if count.unit is not None and count.unit not in {unit, METRIC.get(unit)}:
        said = f"{priced}; the quantity here is in {count.unit.value}"
        hint = f"type a number of {unit.value}{'' if needs_number else ', or yes'}"
        yield job.fault(path, "count-unit", said, hint)
    if count.unit is None and needs_number:
        said = f"{priced} and needs to know how many"
        yield job.fault(path, "count-missing", said, f"type a quantity such as 6 {unit.value}")


def _twice(job: Typed[JobFile]) -> Iterator[Problem]:
    whole, extras = set(job.value.include), set(job.value.extras)
    on_placements = {rate for placement in job.value.placements for rate in placement.include}
    hint = "keep it in one of the two places"
    for rate in sorted(whole & on_placements):
        said = f"`{rate}` is included for the whole job and for a placement as well"
        yield job.fault(("include", rate), "priced-twice", said, hint)
    for rate in sorted(extras & (whole | on_placements)):
        said = f"`{rate}` is both included and offered as an extra"
        yield job.fault(("extras", rate), "priced-twice", said, hint)


def _days(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    day, start = job.value.date, job.value.start
    if day < FIRST_DAY:
        said = f"the quote is dated {day}, before any rule of the trade that is used here"
        hint = f"check the year; the first day is {FIRST_DAY}"
        yield job.fault(("date",), "date-too-early", said, hint)
    elif book.valid_from > day:
        began = f"before the rate book begins to hold ({book.valid_from})"
        hint = "quote with the book of that day, or change the date"
        yield job.fault(("date",), "book-too-new", f"the quote is dated {day}, {began}", hint)
    if start < day:
        said = f"the work starts on {start}, before the date of the quote"
        hint = "change `start` or `date`"
        yield job.places.warning(("start",), "start-before-quote", said, hint)


def _road(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    """Yield a way to the site that the book prices and the job does not tell."""
    for rate_id, rate in book.rates.items():
        if rate.travel is None or rate.rate is None or not _in_use(rate_id, rate, job.value):
            continue
        by_mile = rate.rate.unit is Unit.MILE
        if (job.value.site.distance if by_mile else job.value.site.drive_time) is None:
            key, example = ("distance", "14 miles") if by_mile else ("drive_time", "35 min")
            priced = f"`{rate_id}` is priced per {rate.rate.unit.value} of the way to the site"
            hint = f"add `{key}: {example}` to `site`, counted one way"
            yield job.fault(("site",), "road-unknown", f"{priced}, which is not given", hint)


def _in_use(rate_id: str, rate: BookRate, job: Job) -> bool:
    asked = {*job.include, *job.extras, *(i for p in job.placements for i in p.include)}
    return rate.applies is not Applies.ASKED or rate_id in asked
