"""Checks across files: what the job asks for must stand in the book, and only once."""

from collections.abc import Iterator, Mapping
from datetime import date

from quotegen.problem import Problem, Severity
from quotegen.quantity import Unit
from quotegen.reading.fields.text_fields import Count, Rate
from quotegen.reading.files.company import Company
from quotegen.reading.files.job import JobFile
from quotegen.reading.files.rate_book import Applies, BookRate, RateBook
from quotegen.reading.files.rate_book_file import CostedFinish, CostedRate, RateBookFile
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.typed_file import Typed
from quotegen.reading.yaml.validate import near_miss

FIRST_DAY = date(2021, 1, 1)
"""The youngest of the trade's rules says nothing of an earlier day; a test holds this."""

_METRIC = {Unit.SQ_FT: Unit.M2, Unit.FT: Unit.M, Unit.CU_YD: Unit.M3, Unit.MILE: Unit.KM}


def job_against_book(job: Typed[JobFile], book: Typed[RateBookFile]) -> Iterator[Problem]:
    """Yield what the job names and the rate book does not have."""
    yield from _finishes(job, book.value)
    yield from _placements(job, book.value)
    for name in ("include", "extras"):
        yield from _asked(job, book.value, (name,), getattr(job.value, name))
    for twice in sorted(set(job.value.include) & _on_placements(job.value)):
        yield job.fault(
            ("include", twice),
            "priced-twice",
            f"`{twice}` is included for the whole job and for a placement as well",
            "keep it in one of the two places",
        )
    for extra in sorted(
        set(job.value.extras) & (set(job.value.include) | _on_placements(job.value))
    ):
        yield job.fault(
            ("extras", extra),
            "priced-twice",
            f"`{extra}` is both included and offered as an extra",
            "keep it in one of the two places",
        )
    if job.value.date < FIRST_DAY:
        yield job.fault(
            ("date",),
            "date-too-early",
            f"the quote is dated {job.value.date}, before any rule of the trade that is used here",
            f"check the year; the first day is {FIRST_DAY}",
        )
    elif book.value.valid_from > job.value.date:
        yield job.fault(
            ("date",),
            "book-too-new",
            f"the quote is dated {job.value.date}, before the rate book begins to hold "
            f"({book.value.valid_from})",
            "quote with the book of that day, or change the date",
        )
    if job.value.start < job.value.date:
        said = f"the work starts on {job.value.start}, before the date of the quote"
        yield job.places.fault(
            ("start",), "start-before-quote", said, "change `start` or `date`", Severity.WARNING
        )


def book_against_itself(
    book: Typed[RateBookFile], scope_items: frozenset[str]
) -> Iterator[Problem]:
    """Yield what the rate book names and does not have, or has in the wrong unit."""
    rates, path = book.value.rates, ("rates",)
    for rate_id, rate in rates.items():
        yield from _rate(book, (*path, rate_id), rate, scope_items)
    for finish_id, finish in book.value.finishes.items():
        yield from _finish(book, finish_id, finish)
    for use, usual in book.value.usual.items():
        if usual.reinforcement not in book.value.reinforcement:
            yield book.fault(
                ("usual", use.value, "reinforcement"),
                "unknown-reinforcement",
                f"there is no reinforcement `{usual.reinforcement}` in this book",
                near_miss(usual.reinforcement, book.value.reinforcement),
            )


def _finish(book: Typed[RateBookFile], finish_id: str, finish: CostedFinish) -> Iterator[Problem]:
    rates = book.value.rates
    here = ("finishes", finish_id)
    for key, rate in (("rate", finish.rate), ("reseal", finish.reseal)):
        if rate is not None and rate.unit is not Unit.SQ_FT:
            yield book.fault(
                (*here, key),
                "finish-unit",
                f"a finish is priced by the square foot, not per {rate.unit.value}",
                "type it like $7.40 / sq ft; put a lump into `rates`",
            )
    yield from _cost(book, (*here, "cost"), finish.rate, finish.cost)
    for index, brought in enumerate(finish.brings):
        if brought not in rates:
            yield book.fault(
                (*here, "brings", index),
                "missing-rate",
                f"the finish `{finish_id}` needs the rate `{brought}`, which is missing",
                near_miss(brought, rates),
            )
        elif rates[brought].applies is not Applies.WITH_FINISH:
            yield book.fault(
                (*here, "brings", index),
                "brings-not-with-finish",
                f"the finish `{finish_id}` brings `{brought}`, which applies "
                f"{rates[brought].applies.value}",
                f"write `applies: with finish` at the rate `{brought}`, or take it out here",
            )
    if finish_id in rates:
        yield book.fault(
            here,
            "rate-and-finish",
            f"`{finish_id}` is the id of a rate and of a finish",
            "give one of the two another id",
        )
    for index, visit in enumerate(finish.visits):
        if visit.visit not in book.value.visits:
            yield book.fault(
                (*here, "visits", index, "visit"),
                "unknown-visit",
                f"there is no visit `{visit.visit}` in this book",
                near_miss(visit.visit, book.value.visits),
            )


def company_against_book(company: Typed[Company], book: Typed[RateBookFile]) -> Iterator[Problem]:
    """Yield payments that fall due at a visit that the book does not have."""
    for index, payment in enumerate(company.value.payments):
        if payment.at_visit and payment.at_visit not in book.value.visits:
            yield company.fault(
                ("payments", index, "at_visit"),
                "unknown-visit",
                f"there is no visit `{payment.at_visit}` in the rate book",
                near_miss(payment.at_visit, book.value.visits),
            )


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
            yield job.fault(
                path,
                "unknown-finish",
                f"the rate book has no finish `{name}`",
                near_miss(name, book.finishes),
            )
    seen: set[str] = {job.value.finish}
    for index, name in enumerate(job.value.compare):
        if name in seen:
            yield job.fault(
                ("compare", index),
                "finish-twice",
                f"the finish `{name}` is already offered",
                "delete it here",
            )
        seen.add(name)


def _placements(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    seen: set[str] = set()
    for index, placement in enumerate(job.value.placements):
        here: DocumentPath = ("placements", index)
        if placement.id in seen:
            yield job.fault(
                (*here, "id"),
                "placement-twice",
                f"there is already a placement `{placement.id}`",
                "give each its own id",
            )
        seen.add(placement.id)
        if placement.use not in book.usual:
            yield job.fault(
                (*here, "use"),
                "no-usual",
                f"the rate book does not say what is usual for a {placement.use.value}",
                f"add `{placement.use.value}` under `usual` in the rate book",
            )
        if placement.reinforcement and placement.reinforcement not in book.reinforcement:
            yield job.fault(
                (*here, "reinforcement"),
                "unknown-reinforcement",
                f"the rate book has no reinforcement `{placement.reinforcement}`",
                near_miss(placement.reinforcement, book.reinforcement),
            )
        directed = placement.falls_toward or placement.falls_away_from
        if placement.fall is not None and directed is None:
            yield job.fault(
                (*here, "fall"),
                "fall-without-direction",
                "the fall has no direction",
                "add `falls_toward: bottom`, top, left or right, as the plan is typed",
            )
        yield from _asked(job, book, (*here, "include"), placement.include)


def _asked(
    job: Typed[JobFile], book: RateBook, path: DocumentPath, asked: Mapping[str, Count]
) -> Iterator[Problem]:
    for rate_id, count in asked.items():
        rate = book.rates.get(rate_id)
        here = (*path, rate_id)
        if rate is None:
            offered = [i for i, r in book.rates.items() if r.applies is Applies.ASKED]
            yield job.fault(
                here,
                "unknown-rate",
                f"the rate book has no rate `{rate_id}`",
                near_miss(rate_id, offered),
            )
        elif rate.applies is not Applies.ASKED:
            yield job.fault(
                here,
                "rate-not-asked",
                f"`{rate_id}` applies {rate.applies.value}, so a job does not ask for it",
                "delete the line, or write `applies: asked` in the rate book",
            )
        elif rate.travel is None and not rate.by_thickness:
            priced = rate.rate or rate.bands[0].rate
            yield from _count(job, here, rate, priced.unit, count)


def _count(
    job: Typed[JobFile], path: DocumentPath, rate: BookRate, unit: Unit, count: Count
) -> Iterator[Problem]:
    allowed = {unit, _METRIC.get(unit, unit)}
    needs_number = unit in {Unit.CU_YD, Unit.HOUR, Unit.MILE} or (
        unit is Unit.FT and rate.of is None
    )
    if count.unit is not None and count.unit not in allowed:
        yield job.fault(
            path,
            "count-unit",
            f"`{path[-1]}` is priced per {unit.value}; the quantity here is in {count.unit.value}",
            f"type a number of {unit.value}{'' if needs_number else ', or yes'}",
        )
    if count.unit is None and needs_number:
        yield job.fault(
            path,
            "count-missing",
            f"`{path[-1]}` is priced per {unit.value} and needs to know how many",
            f"type a quantity such as 6 {unit.value}",
        )


def _rate(
    book: Typed[RateBookFile], path: DocumentPath, rate: CostedRate, scope_items: frozenset[str]
) -> Iterator[Problem]:
    for index, item in enumerate(rate.covers):
        if item not in scope_items:
            yield book.fault(
                (*path, "covers", index),
                "unknown-scope-item",
                f"`{item}` is not a scope item that content/ explains",
                near_miss(item, scope_items),
            )
    for price in (rate.rate, *(s.rate for s in rate.by_thickness), *(b.rate for b in rate.bands)):
        if price is not None:
            yield from _unit(book, (*path, "rate"), price.unit)
            if price.unit is Unit.FT and rate.of is None and rate.applies is not Applies.ASKED:
                yield book.fault(
                    path,
                    "rate-of",
                    "a price by the foot needs `of`: which edge does it follow?",
                    "add a line like `of: outer edge`",
                )
    yield from _cost(book, (*path, "cost"), rate.rate, rate.cost)
    for index, step in enumerate(rate.by_thickness):
        here = (*path, "by_thickness", index)
        yield from _cost(book, (*here, "cost"), step.rate, step.cost)
        first = rate.by_thickness[0].rate.unit
        if step.rate.unit is not first:
            yield book.fault(
                (*here, "rate"),
                "step-unit",
                f"this price is per {step.rate.unit.value}, the first one per {first.value}",
                "price every thickness per the same unit",
            )
    thick = [step.thickness for step in rate.by_thickness]
    if thick != sorted(set(thick)):
        yield book.fault(
            (*path, "by_thickness"),
            "thickness-order",
            "the thicknesses must rise from line to line",
            "put the thinnest first",
        )
    if rate.reinforcement and rate.reinforcement not in book.value.reinforcement:
        yield book.fault(
            (*path, "reinforcement"),
            "unknown-reinforcement",
            f"there is no reinforcement `{rate.reinforcement}` in this book",
            near_miss(rate.reinforcement, book.value.reinforcement),
        )


def _cost(
    book: Typed[RateBookFile], path: DocumentPath, price: Rate | None, cost: Rate | None
) -> Iterator[Problem]:
    if price is not None and cost is not None and price.unit is not cost.unit:
        yield book.fault(
            path,
            "cost-unit",
            f"the cost is per {cost.unit.value}, the price per {price.unit.value}",
            f"type what one {price.unit.value} costs you",
        )


def _unit(book: Typed[RateBookFile], path: DocumentPath, unit: Unit) -> Iterator[Problem]:
    """A book is in US units; a metric job converts each rate once, to the cent."""
    if unit in {Unit.M, Unit.M2, Unit.M3, Unit.KM}:
        yield book.fault(
            path,
            "metric-rate",
            f"the price is per {unit.value}; a rate book is in sq ft, ft and cu yd",
            "a metric job is shown in meters all the same: each rate is converted once",
        )


def _on_placements(job: JobFile) -> set[str]:
    return {rate for placement in job.placements for rate in placement.include}
