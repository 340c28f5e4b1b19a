"""Sheet 1, the price: what, how much, how long it holds, what is in it, what could move it."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from datetime import date
from decimal import Decimal

from quotegen.explain.results import Results
from quotegen.explain.sheets.combination import agreed_finish
from quotegen.explain.sheets.views import PriceSheet
from quotegen.explain.wording import Words
from quotegen.explain.words.line_notes import taxes_of
from quotegen.explain.words.numbers import depths, edge_length, joint_spacing, reseal
from quotegen.explain.words.prose import in_a_sentence
from quotegen.explain.words.rows import Row
from quotegen.pricing.quoted.no_work import DISCOUNT, MINIMUM, TAX
from quotegen.pricing.quoted.quantities import typed_quantity
from quotegen.pricing.quoted.rates import shown_rate
from quotegen.pricing.quoted.shares import is_share, lines_shared
from quotegen.quantity import decimal_places
from quotegen.reading.files.shapes import EdgeKind
from quotegen.schedule.openings import Opening
from quotegen.trade.cancellation import sign_by

SHORT_LIST = ("base", "slab", "reinforcement", "joints", "finish", "cast_edge", "steps", "drain",
              "placing", "demolition", "sealing")  # fmt: skip
"""The scope items that sheet 1 names, most asked about first; sheet 3 has them all."""


_SHOWN_PLACES = 3
"""Decimals of a dollar that a price by area is shown with."""


def price_sheet(results: Results) -> PriceSheet:
    """Build sheet 1."""
    job, words, quote = results.job, results.words, results.quote
    return PriceSheet(
        headline=words("headline", title=job.title, area=total_area(results)),
        total=words.money(quote.chosen.total),
        finish=agreed_finish(results),
        sentence=_sentence(results),
        keep_dates=_keep_dates(results),
        others=tuple(
            Row(name=f.name, text=words.signed_money(quote.difference(f)),
                amount=words.money(f.total))
            for f in quote.finishes[1:]
        ),
        covers=tuple(cover_rows(results)),
        dates=tuple(_dates(results)),
        could_move=tuple(_could_move(results)),
        note=job.typed.note or "",
    )  # fmt: skip


def total_area(results: Results) -> str:
    """The area of all placements as it is priced: the adjustment's row without a change."""
    row = next(row for row in results.quote.adjustment if row.change == 0)
    return results.words.quantity(row.area, results.quote.area_unit)


def area_prices(results: Results) -> tuple[Row, ...]:
    """What one unit of area moves the price by; nothing where the minimum is the price."""
    words, quote = results.words, results.quote
    if holds_at_minimum(results):
        return ()
    names = {p.id: p.name for p in results.job.placements}
    return tuple(
        Row(
            name=names[a.placement],
            text=words(_before_what(results), unit=words.unit_one(a.unit)),
            amount=_rate(words, a.rate),
        )
        for a in quote.chosen.area_price
    )


def _rate(words: Words, rate: Decimal) -> str:
    """A price by area as it is, or about it where shares of shares would not fit a line."""
    if decimal_places(rate) <= _SHOWN_PLACES:
        return words.price(rate)
    return words("about_money", amount=words.money(rate))


def _before_what(results: Results) -> str:
    """The text that says what still comes on top of a price by area."""
    if results.job.company.round_total_to is None:
        return "for_each_before_tax" if taxes_of(results) else "for_each"
    return "for_each_before_both" if taxes_of(results) else "for_each_before_rounding"


def area_rows(results: Results) -> tuple[Row, ...]:
    """What one unit of area moves the price by, with what that pays for and what it does not."""
    placements = (price.placement for price in results.quote.chosen.area_price)
    return tuple(
        replace(row, text=_what_it_pays_for(results, placement, row.text))
        for placement, row in zip(placements, area_prices(results), strict=False)
    )


def _what_it_pays_for(results: Results, placement: str, each: str) -> str:
    words, scope = results.words, results.content.scope
    book, chosen = results.job.rate_book, results.quote.chosen.lines
    by_area = [one for one in chosen if one.placement == placement and one.follows_area]
    shown = results.scope_items()
    items = dict.fromkeys(item for line in by_area for item in line.scope if item in shown)
    shares = [one for one in chosen if is_share(book, one)]
    along = [
        share
        for share in shares
        if any(one in by_area for one in lines_shared(book, share.rate_id, chosen))
    ]
    names = (
        *(in_a_sentence(scope[item].front.title) for item in items),
        *(in_a_sentence(share.name) for share in along),
    )
    paid = words("area_pays_for", each=each, names=words.listing(names))
    others = dict.fromkeys(
        in_a_sentence(one.name)
        for one in chosen
        if one.pays_for_work
        and one.placement in {None, placement}
        and not one.follows_area
        and one not in along
    )
    return words("area_pays_not", paid=paid, names=words.listing(tuple(others))) if others else paid


def small_job_sentences(results: Results) -> Iterator[str]:
    """For each line at a rate for small jobs: from which size a foot costs less, and why."""
    words, job = results.words, results.job
    for line in results.quote.chosen.lines:
        price = job.rate_book.price_of(line.rate_id)
        if price is None or line.band is None or price.by_slice:
            continue
        large = price.bands[-1]
        rate = shown_rate(large.rate, job.units)
        if line.rate > rate.amount and large.from_ is not None:
            size = words.quantity(typed_quantity(large.from_, line.unit), line.unit)
            yield words("small_job_why", size=size)


def holds_at_minimum(results: Results) -> bool:
    """Whether the company's minimum is part of the price."""
    return any(MINIMUM in line.scope for line in results.quote.chosen.lines)


def _sentence(results: Results) -> str:
    parts = (_what_moves(results), *_discount(results), *_by_area(results), *_taxes(results))
    return " ".join(parts)


def _discount(results: Results) -> Iterator[str]:
    words = results.words
    for line in results.quote.chosen.lines:
        if DISCOUNT in line.scope:
            yield words("discount_in_price", name=line.name, amount=words.money(-line.amount))


def _by_area(results: Results) -> Iterator[str]:
    """Why a foot costs more on a small job, and the whole price by the area."""
    words, units = results.words, results.job.units
    yield from dict.fromkeys(small_job_sentences(results))
    each = words("for_each", unit=words.unit_one(units.area_unit))
    yield words("whole_by_area", amount=words.money(results.quote.chosen.by_area), unit=each)


def _taxes(results: Results) -> Iterator[str]:
    words = results.words
    if results.job.typed.tax_exempt and results.job.company.tax:
        yield words("tax_exempt", reason=results.job.typed.tax_exempt)
    for line in results.quote.chosen.lines:
        if TAX in line.scope:
            yield words("tax_in_price", name=line.name, amount=words.money(line.amount))


def _what_moves(results: Results) -> str:
    words = results.words
    prices = area_prices(results)
    if not prices:
        minimum = results.job.rate_book.minimum
        return words("price_is_minimum", minimum=words.money(minimum) if minimum else "")
    if len(prices) == 1:
        return words("price_follows", rate=prices[0].amount, unit=prices[0].text)
    listed = words.listing(tuple(f"{p.amount} ({p.name})" for p in prices))
    return words("price_follows", rate=listed, unit=prices[0].text)


def cover_rows(results: Results) -> Iterator[Row]:
    """What the chosen price covers, each scope item of which this job has something to say."""
    included = results.scope_items()
    for item in SHORT_LIST:
        text = in_a_dozen_words(item, results) if item in included else ""
        if text:
            yield Row(name=results.content.scope[item].front.title, text=text)


def in_a_dozen_words(item: str, results: Results) -> str:
    """What a scope item is on this job; empty where its own page says enough."""
    return _SHORT[item](results) if item in _SHORT else _names(item, results)


def _names(item: str, results: Results) -> str:
    """The lines that are for one item alone."""
    lines = results.lines_for(item)
    alone = dict.fromkeys(line.name for line in lines if line.scope == (item,))
    return results.words.joined(tuple(alone))


def _base(results: Results) -> str:
    return results.words(
        "cover_base",
        depth=depths(results, "base", lambda p: p.base),
        material=results.job.rate_book.base_material,
    )


def _slab(results: Results) -> str:
    mix, words = results.job.rate_book.mix, results.words
    return words(
        "cover_slab",
        depth=depths(results, "slab", lambda p: p.thickness),
        strength=words.number(mix.strength_psi, 0),
        air=mix.air,
    )


def _reinforcement(results: Results) -> str:
    choices = results.job.rate_book.reinforcement
    placements = results.placements_with("reinforcement")
    return results.by_placement({p.id: choices[p.reinforcement].name for p in placements})


def _joints(results: Results) -> str:
    placements = results.placements_with("joints")
    spacing = results.by_placement({p.id: joint_spacing(results, p) for p in placements})
    return results.words("cover_joints", spacing=spacing)


def _finish(results: Results) -> str:
    job = results.job
    return results.by_placement(
        {p.id: job.finish_of(p, job.finish)[1].name for p in job.placements}
    )


def _cast_edge(results: Results) -> str:
    placements = results.placements_with("cast_edge")
    length = results.by_placement(
        {p.id: edge_length(results, p.id, EdgeKind.POOL) for p in placements}
    )
    return results.words("cover_cast_edge", length=length)


def _sealing(results: Results) -> str:
    job, placements = results.job, results.placements_with("sealing")
    coat = results.by_placement(
        {p.id: reseal(results, job.finish_of(p, job.finish)[1].sealer) for p in placements}
    )
    return results.words("cover_sealing", reseal=coat)


_SHORT: Mapping[str, Callable[[Results], str]] = {
    "base": _base,
    "slab": _slab,
    "reinforcement": _reinforcement,
    "joints": _joints,
    "finish": _finish,
    "cast_edge": _cast_edge,
    "sealing": _sealing,
}


def _dates(results: Results) -> Iterator[Row]:
    """What a homeowner waits for, day by day."""
    for day, text in sorted(_days(results), key=lambda one: one[0]):
        yield Row(name=results.words.weekday(day), text=text)


def _days(results: Results) -> Iterator[tuple[date, str]]:
    words = results.words
    for visit in results.chosen_visits:
        if visit.id == "form":
            yield visit.last_day, words("date_forms")
        elif visit.id == "pour":
            yield visit.first_day, words("date_pour")
    for opened in results.openings:
        if opened.use is Opening.WALK:
            yield opened.day, words("date_walk")
    last = results.chosen_visits[-1]
    if last.id not in {"form", "pour"}:
        yield last.last_day, words("date_last", visit=last.name)


def _keep_dates(results: Results) -> str:
    """By when to sign so that work can start on its day, if the offer holds longer than that."""
    job, words = results.job, results.words
    last = sign_by(results.chosen_visits[0].first_day, results.rules, results.job.site.state)
    if results.contract.accepted_on is None and job.quote_date <= last < job.holds_until:
        return words("keep_dates", date=words.weekday(last))
    return ""


def _could_move(results: Results) -> Iterator[Row]:
    words = results.words
    if not holds_at_minimum(results):
        most = results.quote.adjustment[-1]
        yield Row(
            name=words("area_more", change=words.percent(most.change)),
            text="",
            amount=words.signed_money(most.difference),
        )
    if results.quote.unit_prices:
        first, *others = (price.name for price in results.quote.unit_prices)
        found = (first, *map(in_a_sentence, others))
        yield Row(name=words("if_found", names=words.listing(found)), text="")
