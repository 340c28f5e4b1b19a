"""Checks of what is private: costs against the rest of the book, other bids, how a job came out."""

from collections.abc import Iterable, Iterator

from quotegen.problem import Problem
from quotegen.quantity import Unit
from quotegen.reading.checks.covers import unknown_item
from quotegen.reading.files.costs import CLEAN_UP, DRIVE, SET_UP, Costs
from quotegen.reading.files.job import JobFile
from quotegen.reading.files.order_parts import SOLD, MaterialId
from quotegen.reading.files.rate_book import RateBook
from quotegen.reading.files.rate_book_file import RateBookFile
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.near import near_miss
from quotegen.reading.yaml.typed_file import Typed

_EVERY_DAY = (SET_UP, CLEAN_UP, DRIVE)


def cost_faults(book: Typed[RateBookFile], scope_items: frozenset[str]) -> Iterator[Problem]:
    """Yield what the costs name and the book does not have, or has in another unit."""
    costs = book.value.costs
    if costs is None:
        return
    yield from _hours(book, costs)
    for material, price in costs.materials.items():
        here: DocumentPath = ("costs", "materials", material.value)
        allowed, path = SOLD[material].units, (*here, "price")
        if price.waste is not None and material is MaterialId.CONCRETE:
            said = "concrete is ordered with the `allowance` of `order`, and with no waste on top"
            hint = "delete this `waste`, and type all that you order beyond the measure there"
            yield book.fault((*here, "waste"), "concrete-waste", said, hint)
        if price.price.unit not in allowed:
            said = (
                f"the order list buys `{material.value}` by the {' or '.join(allowed)}; this "
                f"price is per {price.price.unit}"
            )
            hint = f"type what one {allowed[0]} costs you, delivered"
            yield book.fault(path, "material-unit", said, hint)
    yield from _equipment(book, costs, scope_items)
    if costs.floors.margin == 1:
        said, hint = "no price has a margin of 100%", "type a share of the price like 18%"
        yield book.fault(("costs", "floors", "margin"), "floor-margin", said, hint)


def _hours(book: Typed[RateBookFile], costs: Costs) -> Iterator[Problem]:
    for step, hours in costs.hours.items():
        here: DocumentPath = ("costs", "hours", step)
        units = _units(book.value, step)
        if not units:
            yield _unknown_hours(book, here, step, (*book.value.rates, *book.value.finishes))
        elif hours.work is not None and hours.work.unit not in units:
            unit, typed = next(iter(units)).value, hours.work.unit.value
            said = f"`{step}` is priced per {unit}; these hours are per {typed}"
            yield book.fault(
                (*here, "work"), "hours-unit", said, f"type them like 1.2 hours / {unit}"
            )


def _units(book: RateBook, step: str) -> set[Unit]:
    """Return the units that a rate or finish is priced in; none if the book does not have it."""
    price = book.price_of(step)
    return {rate.unit for _, rate in price.rates} if price else set()


def _equipment(
    book: Typed[RateBookFile], costs: Costs, scope_items: frozenset[str]
) -> Iterator[Problem]:
    for machine_id, machine in costs.equipment.items():
        here: DocumentPath = ("costs", "equipment", machine_id)
        if machine.visit not in book.value.visits:
            said = f"there is no visit `{machine.visit}` in this book"
            hint = near_miss(machine.visit, book.value.visits)
            yield book.fault((*here, "visit"), "unknown-visit", said, hint)
        if machine.covers is not None and machine.covers not in scope_items:
            yield unknown_item(book, (*here, "covers"), machine.covers, scope_items)
        for index, finish in enumerate(machine.finishes):
            if finish not in book.value.finishes:
                yield _unknown_finish(book, (*here, "finishes", index), finish, book.value)


def bid_faults(
    job: Typed[JobFile], book: RateBook, scope_items: frozenset[str]
) -> Iterator[Problem]:
    """Yield what is wrong with other bids."""
    seen: set[str] = set()
    for index, bid in enumerate(job.value.other_bids):
        here: DocumentPath = ("other_bids", index)
        if bid.id in seen:
            said = f"there is already a bid `{bid.id}`"
            yield job.fault((*here, "id"), "bid-twice", said, "give each its own id")
        seen.add(bid.id)
        if not bid.total:
            said = "a bid of nothing is none to compare with"
            hint = "type its total, or delete the bid"
            yield job.fault((*here, "total"), "bid-without-total", said, hint)
        if bid.finish is not None and bid.finish not in book.finishes:
            yield _unknown_finish(job, (*here, "finish"), bid.finish, book)
        for item in bid.scope:
            if item not in scope_items:
                yield unknown_item(job, (*here, "scope", item), item, scope_items)


def outcome_faults(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    """Yield what cannot be of how the job came out."""
    actual = job.value.actual
    if actual is None:
        return
    known = (*book.rates, *book.finishes, *_EVERY_DAY)
    for step in actual.hours:
        if step not in known:
            yield _unknown_hours(job, ("actual", "hours", step), step, known)
    if actual.done < job.value.date:
        said = f"the job was done on {actual.done}, before the date of the quote"
        yield job.fault(("actual", "done"), "done-before-quote", said, "change `done` or `date`")


def _unknown_hours(
    file: Typed[JobFile] | Typed[RateBookFile],
    path: DocumentPath,
    step: str,
    known: Iterable[str],
) -> Problem:
    said = f"the rate book has no rate or finish `{step}`"
    return file.fault(path, "unknown-hours", said, near_miss(step, known))


def _unknown_finish(
    file: Typed[JobFile] | Typed[RateBookFile], path: DocumentPath, finish: str, book: RateBook
) -> Problem:
    said = f"the rate book has no finish `{finish}`"
    return file.fault(path, "unknown-finish", said, near_miss(finish, book.finishes))
