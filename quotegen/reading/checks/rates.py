"""Checks of each price of the book: units, steps, bands; of each rate its travel and allowance."""

from collections.abc import Iterator
from itertools import pairwise

from quotegen.problem import Problem
from quotegen.quantity import METRIC, Unit
from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.files.price import Band, Price, SmallJob
from quotegen.reading.files.rate_book import Applies, Basis, BookRate, ExceededRule
from quotegen.reading.files.rate_book_file import CostedBand, CostedPrice, CostedRate, RateBookFile
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.near import near_miss
from quotegen.reading.yaml.typed_file import Typed

TRAVELED = (Unit.MILE, Unit.HOUR)
NOT_OF_A_SHARE = ("cutting", "travel", "of", "exceeded", "basis", "of_which", "cost")
"""The keys of a rate that say how much there is of it, or what moves it."""


def rate_faults(book: Typed[RateBookFile]) -> Iterator[Problem]:
    """Yield what is wrong within one rate or finish of the book."""
    for finish_id, finish in book.value.finishes.items():
        yield from _price(book, ("finishes", finish_id), finish)
    for rate_id, rate in book.value.rates.items():
        path = ("rates", rate_id)
        yield from _reinforcement(book, path, rate)
        yield from _price(book, path, rate)
        yield from _edge(book, path, rate)
        yield from _travel(book, path, rate)
        yield from _allowance(book, path, rate)
        yield from _share(book, path, rate)
        if (rate.applies is Applies.COLOR) != (rate.color is not None):
            said = "a color needs both `applies: with color` and `color:`, how it is made"
            hint = "add the other line: integral, hardener, release or antiquing"
            yield book.fault(path, "color-how", said, hint)


def _price(book: Typed[RateBookFile], path: DocumentPath, price: CostedPrice) -> Iterator[Problem]:
    yield from _nothing(book, path, price)
    yield from _units(book, path, price)
    yield from _steps(book, path, price)
    for kind, bands in (("by_size", price.by_size), ("by_slice", price.by_slice)):
        yield from _bands(book, (*path, kind), bands)
    if price.small_job:
        yield from _small_job(book, (*path, "small_job"), price.small_job, price.bands[1].rate)


def cost_unit(
    book: Typed[RateBookFile], path: DocumentPath, price: Rate | None, cost: Rate | None
) -> Iterator[Problem]:
    """Yield a cost that is for another unit than its price."""
    if price is not None and cost is not None and price.unit is not cost.unit:
        said = f"the cost is per {cost.unit.value}, the price per {price.unit.value}"
        yield book.fault(path, "cost-unit", said, f"type what one {price.unit.value} costs you")


def _nothing(book: Typed[RateBookFile], path: DocumentPath, price: Price) -> Iterator[Problem]:
    for place, rate in price.rates:
        if not rate.amount:
            said = "a price of $0.00 makes no line, so the quote says nothing of what it covers"
            hint = "delete it, and name what it covers under `covers` at the price that pays for it"
            yield book.places.warning((*path, *place), "price-of-nothing", said, hint)


def _reinforcement(
    book: Typed[RateBookFile], path: DocumentPath, rate: BookRate
) -> Iterator[Problem]:
    known = book.value.reinforcement
    if rate.reinforcement and rate.reinforcement not in known:
        said = f"there is no reinforcement `{rate.reinforcement}` in this book"
        hint = near_miss(rate.reinforcement, known)
        yield book.fault((*path, "reinforcement"), "unknown-reinforcement", said, hint)


def _units(book: Typed[RateBookFile], path: DocumentPath, price: CostedPrice) -> Iterator[Problem]:
    """A book is in US units; a metric job converts each rate once, to the cent."""
    for _, rate in price.rates:
        if rate.unit in METRIC.values():
            said = f"the price is per {rate.unit.value}; a rate book is in sq ft, ft and cu yd"
            hint = "a metric job is shown in meters all the same: each rate is converted once"
            yield book.fault((*path, "rate"), "metric-rate", said, hint)
    yield from cost_unit(book, (*path, "cost"), price.rate, price.cost)


def _edge(book: Typed[RateBookFile], path: DocumentPath, rate: BookRate) -> Iterator[Problem]:
    for _, priced in rate.rates:
        if priced.unit is Unit.FT and rate.of is None and rate.applies is not Applies.ASKED:
            said = "a price by the foot needs `of`: which edge does it follow?"
            yield book.fault(path, "rate-of", said, "add a line like `of: outer edge`")


def _steps(book: Typed[RateBookFile], path: DocumentPath, rate: CostedPrice) -> Iterator[Problem]:
    for index, step in enumerate(rate.by_thickness):
        here = (*path, "by_thickness", index)
        yield from cost_unit(book, (*here, "cost"), step.rate, step.cost)
        unit, first = step.rate.unit, rate.by_thickness[0].rate.unit
        if unit is not first:
            said = f"this price is per {unit.value}, the first one per {first.value}"
            hint = "price every thickness per the same unit"
            yield book.fault((*here, "rate"), "step-unit", said, hint)
    thick = [step.thickness for step in rate.by_thickness]
    if thick != sorted(set(thick)):
        said = "the thicknesses must rise from line to line"
        yield book.fault((*path, "by_thickness"), "thickness-order", said, "put the thinnest first")


def _bands(
    book: Typed[RateBookFile], path: DocumentPath, bands: tuple[CostedBand, ...]
) -> Iterator[Problem]:
    """Yield bands in different units, and gaps and overlaps between them."""
    unit = bands[0].rate.unit if bands else None
    for index, band in enumerate(bands):
        parts = (band.from_, band.to, band.rate, band.cost)
        wrong = [part.unit for part in parts if part and part.unit is not unit]
        if wrong and unit:
            found, per = wrong[0].value if wrong[0] else "nothing", unit.value
            said = f"the bands of a price per {per} count {per}; this one has {found}"
            hint = f"type sizes like 400 {per} and every rate per {per}"
            yield book.fault((*path, index), "band-unit", said, hint)
            return
    if bands and bands[0].from_ is not None:
        yield _gap(book, (*path, 0, "from"), "nothing", _size(bands[0], "from_"))
    for index, (below, above) in enumerate(pairwise(bands), start=1):
        yield from _border(book, (*path, index), below, above)
    if bands and bands[-1].to is not None:
        yield _gap(book, (*path, len(bands) - 1, "to"), _size(bands[-1], "to"), "any larger size")


def _border(
    book: Typed[RateBookFile], path: DocumentPath, below: Band, above: Band
) -> Iterator[Problem]:
    end = below.to.amount if below.to else None
    start = above.from_.amount if above.from_ else None
    begins = below.from_.amount if below.from_ else None
    if end is None or start is None or start < end or (begins or 0) >= end:
        said = (
            f"this band, from {_size(above, 'from_')}, overlaps the one before it, "
            f"which goes up to {_size(below, 'to')}"
        )
        hint = "let each band but the first have `from`, each but the last `to`, and let them meet"
        yield book.fault(path, "band-overlap", said, hint)
    elif start > end:
        yield _gap(book, path, _size(below, "to"), _size(above, "from_"))


def _small_job(
    book: Typed[RateBookFile], path: DocumentPath, small: SmallJob, usual: Rate
) -> Iterator[Problem]:
    typed = {small.rate.unit, small.under.unit, usual.unit}
    if len(typed) > 1:
        per = usual.unit.value
        said = f"the rate for a small job counts {per}, as `rate` does, and so does its size"
        hint = f"type it like {{under: 400 {per}, rate: $17.00 / {per}}}"
        yield book.fault(path, "small-job-unit", said, hint)
    elif small.rate.amount < usual.amount:
        said = (
            f"a small job has ${small.rate.amount:,} here, less than the ${usual.amount:,} of a"
            " larger one"
        )
        hint = "type the higher rate here; for a rate that rises with size use `by_slice`"
        yield book.fault((*path, "rate"), "small-job-lower", said, hint)


def _travel(book: Typed[RateBookFile], path: DocumentPath, rate: BookRate) -> Iterator[Problem]:
    unit = rate.rate.unit if rate.rate else None
    if rate.travel is None and unit in TRAVELED and rate.applies is not Applies.ASKED:
        said = f"nothing says how many {unit.value}s a job has" if unit else ""
        hint = "add `travel: {both_ways: yes}` for the way to the site, or `applies: asked`"
        yield book.fault(path, "how-many", said, hint)
    if rate.travel is None:
        return
    free = rate.travel.free
    other = free and (free.miles is None if unit is Unit.MILE else free.hours is None)
    if unit not in TRAVELED or other:
        said = "travel is priced by the mile with free miles, or by the hour with free time"
        hint = "type it like $1.80 / mile with free: 10 miles, or $85 / hour with free: 30 min"
        yield book.fault((*path, "travel"), "travel-unit", said, hint)


def _allowance(book: Typed[RateBookFile], path: DocumentPath, rate: BookRate) -> Iterator[Problem]:
    exceeded = rate.exceeded
    if exceeded is None:
        return
    if rate.basis is not Basis.ALLOWANCE:
        said = "only an allowance can be exceeded, and this rate is none"
        hint = "add `basis: allowance`, or delete `exceeded`"
        yield book.fault((*path, "exceeded"), "not-an-allowance", said, hint)
    if (exceeded.rule is ExceededRule.COST_PLUS) != (exceeded.plus is not None):
        said = "`plus` goes with the rule `cost plus`, and with no other"
        hint = "type {rule: cost plus, plus: 15%}, {rule: at cost} or {rule: capped}"
        yield book.fault((*path, "exceeded"), "plus-what", said, hint)


def _share(book: Typed[RateBookFile], path: DocumentPath, rate: CostedRate) -> Iterator[Problem]:
    """Yield what a share cannot have, since it is one sum that follows other lines."""
    if rate.share is None and rate.cost_share is not None:
        said = "`cost_share` is what a share of other lines costs, and this price is none"
        hint = "type `cost`, what one of it costs you"
        yield book.fault((*path, "cost_share"), "cost-share", said, hint)
    if rate.share is None:
        return
    for key in NOT_OF_A_SHARE:
        if getattr(rate, key):
            said = f"a price that is a share of other lines has no `{key}`"
            hint = "delete it; a share is one sum for the whole job, and follows its lines"
            yield book.fault((*path, key), "share-with", said, hint)
    if rate.applies in {Applies.IF_FOUND, Applies.COLOR}:
        said = f"a share of other lines cannot apply {rate.applies.value}"
        hint = "write `applies: always`, `asked` or `with finish`"
        yield book.fault((*path, "applies"), "share-applies", said, hint)


def _size(band: Band, end: str) -> str:
    count = getattr(band, end)
    return f"{count.amount} {count.unit.value}" if count else "no size"


def _gap(book: Typed[RateBookFile], path: DocumentPath, end: str, start: str) -> Problem:
    said = f"no band has a price between {end} and {start}"
    hint = "leave out `from` in the first band and `to` in the last, and let the others meet"
    return book.fault(path, "band-gap", said, hint)
