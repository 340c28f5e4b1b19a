"""The numbers on a page, and the numbers of the core, both as a reader sees them."""

import re
from collections.abc import Iterable, Iterator
from contextlib import suppress
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from quotegen.explain.drawing.scale import SCALES_US
from quotegen.explain.papers.how_measured import method_of, readings_of
from quotegen.explain.results import Results
from quotegen.explain.sheets.views import CustomerView
from quotegen.explain.words.line_notes import taxes_of
from quotegen.explain.words.numbers import joint_spacing
from quotegen.money import ZERO
from quotegen.pricing.quoted.quantities import typed_quantity
from quotegen.pricing.quoted.tax import taxed_amount
from quotegen.quantity import Length, Unit
from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.records import PlacementTakeoff
from quotegen.trade import joints
from tests.pricing.shop import all_lines

AMOUNT = re.compile(r"\$\d[\d,]*(?:\.\d+)?")
QUANTITY = re.compile(
    r"(?<![\d.,/'-])\d[\d,]*(?:\.\d+)? (?:sq ft|cu yd|visits|m²|m³|ft|mm|m)(?![\w²³])"
)
TAPE = re.compile(r"(?<![\d.])\d+'-\d+(?: \d/\d)?\"")


def amounts(text: str) -> set[str]:
    """Every sum of money in a text."""
    return set(AMOUNT.findall(text))


def quantities(text: str) -> set[str]:
    """Every quantity with a unit, and every tape length, in a text."""
    return set(QUANTITY.findall(text)) | set(TAPE.findall(text))


def core_amounts(results: Results) -> set[str]:
    """Every sum that pricing worked out, and those that the owner typed in words."""
    return amounts("\n".join((*_money(results), *_typed(results))))


def dollars(amount: str) -> Decimal:
    """Return the value of an amount as it is printed, its sign kept."""
    return Decimal(re.sub(r"[+$,]", "", amount).replace("−", "-"))


def about(sums: Iterable[Decimal]) -> set[Decimal]:
    """Sums to the ten dollars, as a sheet tells what is about so much."""
    return {(one / 10).quantize(Decimal(1), rounding=ROUND_HALF_UP) * 10 for one in sums}


def of_groups(view: CustomerView) -> set[Decimal]:
    """What the lines of each group come to; `test_the_groups_and_the_lines_add_up` holds."""
    return {dollars(group.together) for group in view.money.groups if group.together}


def core_quantities(results: Results) -> set[str]:
    """Every quantity that the core worked out, that a rule states or that was typed."""
    texts = (*_sizes(results), *_depths(results), *_stated(results), *_typed(results))
    return quantities("\n".join(texts))


def _money_of_choices(results: Results) -> Iterator[str]:
    words, quote = results.words, results.quote
    moves = [(one.amount, one.total) for one in quote.alternates]
    moves += [(one.amount, one.total) for one in quote.color_choices]
    for amount, total in moves:
        yield f"{words.money(abs(amount))} {words.money(total)}"
    for choice in quote.combinations:
        yield from map(words.money, (choice.total, choice.by_area))


def _money(results: Results) -> Iterator[str]:
    words, quote = results.words, results.quote
    for finish in quote.finishes:
        yield words.money(finish.total)
        yield words.money(finish.by_area)
        yield words.money(abs(quote.difference(finish)))
        yield from (words.price(area.rate) for area in finish.area_price)
    for line in all_lines(quote):
        yield words.money(line.amount)
        yield words.rate(line.rate, line.unit)
    yield from (words.money(extra.amount) for extra in quote.extras)
    yield from (words.money(payment.amount) for payment in quote.payments)
    for row in quote.adjustment:
        yield f"{words.money(row.total)} {words.money(abs(row.difference))}"
    yield from (words.rate(unit.rate, unit.unit) for unit in quote.unit_prices)
    for end in quote.tape_range:
        yield words.money(abs(end.difference))
    if results.job.company.round_total_to is not None:
        yield words.money(results.job.company.round_total_to)
    yield from _money_of_choices(results)
    for kept in results.upkeep.values():
        if kept.prices is not None:
            yield from map(words.money, (kept.prices.coat, kept.prices.least, kept.prices.most))
    for part in (*quote.by_placement, *quote.by_scope):
        yield words.money(part.amount)
    if results.job.rate_book.minimum is not None:
        yield words.money(results.job.rate_book.minimum)
    yield from (words.money(taxed_amount(tax, quote.chosen.lines)) for tax in taxes_of(results))


def _sizes(results: Results) -> Iterator[str]:
    words, takeoff = results.words, results.takeoff
    yield words.volume(takeoff.volume_cuyd)
    yield words.area_step()
    for line in all_lines(results.quote):
        yield words.quantity(line.quantity, line.unit)
    for finish in results.quote.finishes:
        yield f"{finish.visits} visits"
    for row in results.quote.adjustment:
        yield words.quantity(row.area, results.quote.area_unit)
    if takeoff.reach:
        yield from (words.feet(method.reach_ft) for method in takeoff.reach.methods)
        yield words.feet(takeoff.reach.route_ft or ZERO)
    for placement in takeoff.placements:
        yield from (words.area(placement), words.volume(placement.volume_cuyd))
        yield from (words.quantity(placement.edges_ft[edge], Unit.FT) for edge in EdgeKind)
        yield from (words.quantity(placement.edges_m[edge], Unit.M) for edge in EdgeKind)
        yield from _tapes(results, placement)
        yield from _ranges(results, placement)
    for falls in takeoff.falls:
        yield from (words.height(corner.height_ft) for corner in falls.corners)
        for edge in falls.edges:
            yield from map(words.height, (edge.highest_ft, edge.lowest_ft))
            yield words.feet(edge.drop_ft)
    book = results.job.rate_book
    for price in (*book.rates.values(), *book.finishes.values()):
        for band in price.bands:
            ends = (band.from_, band.to)
            yield from (words.quantity(typed_quantity(end, unit), unit) for end in ends if end
                        for unit in (Unit.SQ_FT, Unit.M2))  # fmt: skip


def _ranges(results: Results, placement: PlacementTakeoff) -> Iterator[str]:
    """Yield what the tape may have missed, the shapes that an area is made of, and its joints."""
    words, unit = results.words, results.quote.area_unit
    found, metric = placement.area_range, unit is Unit.M2
    for end in (found.low_m2, found.high_m2) if metric else (found.low_sqft, found.high_sqft):
        yield words.quantity(end, unit)
    for shape in placement.working[0].inputs:
        yield words.quantity(shape.value, unit)
    joints = placement.joints
    length = joints.length_m if metric else joints.length_ft
    yield words.quantity(length, Unit.M if metric else Unit.FT)
    for panel in joints.panels:
        yield from map(words.panel_side, (panel.long_ft, panel.short_ft))


def _tapes(results: Results, placement: PlacementTakeoff) -> Iterator[str]:
    words = results.words
    for edge in placement.edges:
        for feet in (edge.length_ft, edge.chord_ft, edge.rise_ft):
            yield words.feet(feet)
    for span in placement.spans:
        yield words.feet(span.length_ft)


def _depths(results: Results) -> Iterator[str]:
    words, on = results.words, results.job.quote_date
    for placement in results.job.placements:
        yield from map(words.depth, (placement.thickness, placement.base, placement.dig_depth))
        cut_in = joints.saw_depth_in(placement.thickness.inches, results.rules, on)
        yield words.depth(Length.of_inches(Fraction(cut_in)))
        yield joint_spacing(results, placement)
    yield from words.scale_bar(1.0)[2]
    yield from (name for name, _ in SCALES_US)
    yield "2 m"  # the middle of the scale bar is a bare number beside its last label


def _stated(results: Results) -> Iterator[str]:
    """The text of every rule, each with its source in the trade's rule files."""
    on = results.job.quote_date
    for rule_id, rule in results.rules.rules.items():
        yield f"{rule.description} {rule.at(on).reference}"
        with suppress(TypeError):  # a table has no text of its own
            yield results.rules.text(rule_id, on)


def _typed(results: Results) -> Iterator[str]:
    """Yield what people typed in words: the job's notes, the company's terms, names of the book."""
    job = results.job
    insurance = job.company.insurance
    yield from (insurance.covers if insurance else "", job.company.warranty, job.typed.note or "")
    yield from (job.access.note if job.access else "", job.title)
    yield from (f"{excluded.what} {excluded.who}" for excluded in job.not_included)
    yield from (choice.name for choice in job.rate_book.reinforcement.values())
    for placement in job.placements:
        for shape in (*placement.add, *placement.take_away):
            yield method_of(shape, results.words)
            yield from readings_of(shape, results.words)
    for reference in job.references:
        yield f"{reference.area_sqft:,} sq ft {reference.shows} {reference.title}"
