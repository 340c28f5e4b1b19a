"""Checks of what is private: costs against the rest of the book, other bids, how a job came out."""

from collections.abc import Iterable, Iterator

from quotegen.problem import Problem
from quotegen.quantity import Unit
from quotegen.reading.files.costs import BOUGHT_BY, CLEAN_UP, DRIVE, SET_UP, Costs
from quotegen.reading.files.job import JobFile
from quotegen.reading.files.rate_book import RateBook
from quotegen.reading.files.rate_book_file import RateBookFile
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.typed_file import Typed
from quotegen.reading.yaml.validate import near_miss

_EVERY_DAY = (SET_UP, CLEAN_UP, DRIVE)


def costs_against_book(book: Typed[RateBookFile], scope_items: frozenset[str]) -> Iterator[Problem]:
    """Yield what the costs name and the book does not have, or has in another unit."""
    costs = book.value.costs
    if costs is None:
        return
    for step, hours in costs.hours.items():
        here: DocumentPath = ("costs", "hours", step)
        units = _units(book.value, step)
        if not units:
            yield _unknown_hours(book, here, step, (*book.value.rates, *book.value.finishes))
        elif hours.work is not None and hours.work.unit not in units:
            unit = next(iter(units))
            yield book.fault(
                (*here, "work"),
                "hours-unit",
                f"`{step}` is priced per {unit.value}; these hours are per {hours.work.unit.value}",
                f"type them like 1.2 hours / {unit.value}",
            )
    for material, price in costs.materials.items():
        allowed = BOUGHT_BY[material]
        if price.price.unit not in allowed:
            yield book.fault(
                ("costs", "materials", material.value, "price"),
                "material-unit",
                f"the order list buys `{material.value}` by the {' or '.join(allowed)}; this "
                f"price is per {price.price.unit}",
                f"type what one {allowed[0]} costs you, delivered",
            )
    yield from _equipment(book, costs, scope_items)
    if costs.floors.margin == 1:
        yield book.fault(
            ("costs", "floors", "margin"),
            "floor-margin",
            "no price has a margin of 100%",
            "type a share of the price like 18%",
        )


def _units(book: RateBook, step: str) -> set[Unit]:
    """Return the units that a rate or finish is priced in; none if the book does not have it."""
    if step in book.finishes:
        return {book.finishes[step].rate.unit}
    if step not in book.rates:
        return set()
    rate = book.rates[step]
    stepped = (one.rate for one in rate.by_thickness)
    banded = (band.rate for band in rate.bands)
    return {priced.unit for priced in (rate.rate, *stepped, *banded) if priced}


def _equipment(
    book: Typed[RateBookFile], costs: Costs, scope_items: frozenset[str]
) -> Iterator[Problem]:
    for machine_id, machine in costs.equipment.items():
        here: DocumentPath = ("costs", "equipment", machine_id)
        if machine.visit not in book.value.visits:
            yield book.fault(
                (*here, "visit"),
                "unknown-visit",
                f"there is no visit `{machine.visit}` in this book",
                near_miss(machine.visit, book.value.visits),
            )
        if machine.covers is not None and machine.covers not in scope_items:
            yield _unknown_item(book, (*here, "covers"), machine.covers, scope_items)
        for index, finish in enumerate(machine.finishes):
            if finish not in book.value.finishes:
                yield _unknown_finish(book, (*here, "finishes", index), finish, book.value)


def bids_and_outcome(
    job: Typed[JobFile], book: RateBook, scope_items: frozenset[str]
) -> Iterator[Problem]:
    """Yield what is wrong with other bids, and with how the job came out."""
    seen: set[str] = set()
    for index, bid in enumerate(job.value.other_bids):
        here: DocumentPath = ("other_bids", index)
        if bid.id in seen:
            yield job.fault(
                (*here, "id"),
                "bid-twice",
                f"there is already a bid `{bid.id}`",
                "give each its own id",
            )
        seen.add(bid.id)
        if not bid.total:
            yield job.fault(
                (*here, "total"),
                "bid-without-total",
                "a bid of nothing is none to compare with",
                "type its total, or delete the bid",
            )
        if bid.finish is not None and bid.finish not in book.finishes:
            yield _unknown_finish(job, (*here, "finish"), bid.finish, book)
        for item in bid.scope:
            if item not in scope_items:
                yield _unknown_item(job, (*here, "scope", item), item, scope_items)
    yield from _outcome(job, book)


def _outcome(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    actual = job.value.actual
    if actual is None:
        return
    known = (*book.rates, *book.finishes, *_EVERY_DAY)
    for step in actual.hours:
        if step not in known:
            yield _unknown_hours(job, ("actual", "hours", step), step, known)
    if actual.done < job.value.date:
        yield job.fault(
            ("actual", "done"),
            "done-before-quote",
            f"the job was done on {actual.done}, before the date of the quote",
            "change `done` or `date`",
        )


def _unknown_hours(
    file: Typed[JobFile] | Typed[RateBookFile], path: DocumentPath, step: str, known: Iterable[str]
) -> Problem:
    return file.fault(
        path,
        "unknown-hours",
        f"the rate book has no rate or finish `{step}`",
        near_miss(step, known),
    )


def _unknown_item(
    file: Typed[JobFile] | Typed[RateBookFile], path: DocumentPath, item: str, known: Iterable[str]
) -> Problem:
    return file.fault(
        path,
        "unknown-scope-item",
        f"`{item}` is not a scope item that content/ explains",
        near_miss(item, known),
    )


def _unknown_finish(
    file: Typed[JobFile] | Typed[RateBookFile], path: DocumentPath, finish: str, book: RateBook
) -> Problem:
    return file.fault(
        path,
        "unknown-finish",
        f"the rate book has no finish `{finish}`",
        near_miss(finish, book.finishes),
    )
