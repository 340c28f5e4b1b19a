"""Checks of what each price pays for: known scope items, each paid once, and none left out."""

from collections.abc import Iterable, Iterator

from quotegen.problem import Problem
from quotegen.reading.files.company import EVERYTHING, Company
from quotegen.reading.files.job import JobFile
from quotegen.reading.files.rate_book import (
    ALWAYS_ASKED_ABOUT,
    FINISH,
    SEAL,
    SEALING,
    USUAL,
    Applies,
    Finish,
    Sealer,
)
from quotegen.reading.files.rate_book_file import CostedPrice, CostedRate, RateBookFile
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.near import near_miss
from quotegen.reading.yaml.typed_file import Typed

USUALLY_COVERED = (
    "dig_out", "base", "layout", "forms", "slab", "placing", "reinforcement", "isolation", "joints",
    "curing", "wash", "sealing", "cleanup",
)  # fmt: skip
"""What one price a square foot commonly pays for: the lines to paste (common practice)."""


def cover_faults(book: Typed[RateBookFile], scope_items: frozenset[str]) -> Iterator[Problem]:
    """Yield what is wrong with `covers` and `of_which`, and with `usual_cover`."""
    value = book.value
    for index, item in enumerate(value.usual_cover):
        if item not in scope_items:
            yield unknown_item(book, ("usual_cover", index), item, scope_items)
    for rate_id, rate in value.rates.items():
        path = ("rates", rate_id)
        yield from _items(book, path, rate.covers, scope_items)
        yield from _of_which(book, path, rate, rate.covers)
        yield from _share_of(book, path, rate, scope_items)
    for finish_id, finish in value.finishes.items():
        path = ("finishes", finish_id)
        yield from _items(book, path, finish.covers, scope_items | {USUAL})
        yield from _of_which(book, path, finish, value.covered_by(finish))
        if USUAL in finish.covers and not value.usual_cover:
            said = f"the finish `{finish_id}` covers what is usual, and this book does not say what"
            hint = f"add a line `usual_cover: [{', '.join(USUALLY_COVERED)}]`, as far as it is so"
            yield book.fault((*path, "covers"), "no-usual-cover", said, hint)
        yield from _paid_twice(book, finish_id, finish)
        yield from _never_sealed(book, finish_id, finish)
        yield from _pays_for_nothing(book, finish_id, finish)


def unknown_item(
    file: Typed[JobFile] | Typed[RateBookFile] | Typed[Company],
    path: DocumentPath,
    item: str,
    known: Iterable[str],
) -> Problem:
    """Return the fault of a scope item that no page explains."""
    said = f"`{item}` is not a scope item that content/ explains"
    return file.fault(path, "unknown-scope-item", said, near_miss(item, known))


def _items(
    book: Typed[RateBookFile], path: DocumentPath, covers: tuple[str, ...], known: frozenset[str]
) -> Iterator[Problem]:
    for index, item in enumerate(covers):
        if item not in known:
            yield unknown_item(book, (*path, "covers", index), item, known)


def _share_of(
    book: Typed[RateBookFile], path: DocumentPath, rate: CostedRate, known: frozenset[str]
) -> Iterator[Problem]:
    """Yield unknown scope items, and those that no price pays for: a share of them is nothing."""
    value = book.value
    others = (one.covers for one in value.rates.values() if one.share is None)
    finishes = (value.covered_by(one) for one in value.finishes.values())
    paid = {EVERYTHING, *(item for covers in (*others, *finishes) for item in covers)}
    for index, item in enumerate(rate.share_of):
        here = (*path, "share_of", index)
        if item not in known | {EVERYTHING}:
            yield unknown_item(book, here, item, known | {EVERYTHING})
        elif item not in paid:
            said = f"no price in this book pays for `{item}`, so a share of it is nothing"
            yield book.fault(here, "share-of-unpaid", said, near_miss(item, paid))


def _of_which(
    book: Typed[RateBookFile], path: DocumentPath, price: CostedPrice, covered: tuple[str, ...]
) -> Iterator[Problem]:
    """Yield parts that the price does not pay for, count differently, or leave nothing of it."""
    if not price.of_which or not price.rates:
        return
    (_, whole), *others = price.rates
    for item, part in price.of_which.items():
        here = (*path, "of_which", item)
        if item not in covered:
            said = f"this price does not pay for `{item}`, so no part of it is for that"
            yield book.fault(here, "not-covered", said, near_miss(item, covered))
        elif part.unit is not whole.unit:
            said = f"this part is per {part.unit.value}, the price per {whole.unit.value}"
            hint = f"type it like ${part.amount:,} / {whole.unit.value}"
            yield book.fault(here, "part-unit", said, hint)
    least = min(rate.amount for rate in (whole, *(rate for _, rate in others)))
    parts = sum(part.amount for part in price.of_which.values())
    if parts >= least:
        said = f"the parts come to ${parts:,}, and the lowest rate of this price is ${least:,}"
        hint = "type what each part is worth when it alone is left out"
        yield book.fault((*path, "of_which"), "parts-over-price", said, hint)


def _paid_twice(book: Typed[RateBookFile], finish_id: str, finish: Finish) -> Iterator[Problem]:
    """Warn of a rate that always comes with a finish and pays for what the finish pays for."""
    covered = set(book.value.covered_by(finish)) - {FINISH}  # color and hand work add to that
    for rate_id, rate in book.value.rates.items():
        twice = sorted(covered & set(rate.covers))
        if twice and _comes_along(rate_id, rate, finish):
            both = f"the finish `{finish_id}` and the rate `{rate_id}` both pay for"
            said = f"{both} {', '.join(f'`{item}`' for item in twice)}, and the homeowner pays both"
            hint = "take it out of one of the two `covers`; an upcharge has `applies: asked`"
            yield book.places.warning(("rates", rate_id, "covers"), "covered-twice", said, hint)


def _never_sealed(book: Typed[RateBookFile], finish_id: str, finish: Finish) -> Iterator[Problem]:
    """Warn of a finish that pays for sealing, on no visit: a quote would promise it on no day."""
    value = book.value
    pays = SEALING in value.covered_by(finish) or any(
        SEALING in value.rates[rate].covers for rate in finish.brings if rate in value.rates
    )
    if pays and finish.sealer is not Sealer.NONE and SEAL not in {v.visit for v in finish.visits}:
        said = f"the price of `{finish_id}` pays for sealing, and none of its visits is `{SEAL}`"
        hint = f"add a visit such as {{visit: {SEAL}, days: 1, wait_days: 28}}, or take sealing out"
        yield book.places.warning(("finishes", finish_id, "visits"), "never-sealed", said, hint)


def _comes_along(rate_id: str, rate: CostedRate, finish: Finish) -> bool:
    """Tell whether a rate is part of every job with a finish; one for some jobs is an upcharge."""
    if rate.share is not None:  # an addition by its nature
        return False
    some = rate.uses or rate.reinforcement or rate.season
    return not some and (rate.applies is Applies.ALWAYS or rate_id in finish.brings)


def _pays_for_nothing(
    book: Typed[RateBookFile], finish_id: str, finish: Finish
) -> Iterator[Problem]:
    """Yield a finish that is the only price of a slab and does not say what it pays for."""
    by_rates = {item for rate in book.value.rates.values() for item in rate.covers}
    if finish.covers or not by_rates.isdisjoint(ALWAYS_ASKED_ABOUT):
        return
    said = (
        f"nothing in this book pays for {', '.join(ALWAYS_ASKED_ABOUT)}, and the finish"
        f" `{finish_id}` does not say that its price does; the quote could not explain them"
    )
    usual = f"`usual_cover: [{', '.join(USUALLY_COVERED)}]` at the top level"
    hint = f"if its price has all in it, add `covers: usual` here and {usual}; or a rate for each"
    yield book.fault(("finishes", finish_id), "finish-covers-nothing", said, hint)
