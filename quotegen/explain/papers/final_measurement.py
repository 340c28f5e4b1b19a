"""The final measurement and the change orders: what both sign before concrete is ordered."""

from collections.abc import Iterator
from dataclasses import dataclass

from quotegen.explain.results import Results
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.views import PaperHead
from quotegen.explain.words.prose import sentence
from quotegen.pricing.contract.records import AdjustedLine, ChangeOrder, Remeasure, RevisedPayment
from quotegen.pricing.contract.remeasure import together
from quotegen.quantity import Unit
from quotegen.reading.files.company import Show
from quotegen.schedule.moved import MovedVisit


@dataclass(frozen=True, slots=True, kw_only=True)
class StatementLine:
    """One measured line: estimated, measured, difference, rate, and the money before and after."""

    name: str
    estimated: str
    measured: str
    difference: str
    rate: str
    before: str
    change: str
    after: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StatementPart:
    """The measured lines of one placement, or of the whole job; one alone has no name."""

    place: str
    lines: tuple[StatementLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StatementPayment:
    """One payment, before the change and after it."""

    when: str
    before: str
    after: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StatementArea:
    """The area of one placement against its estimate."""

    name: str
    estimated: str
    measured: str
    difference: str
    share: str
    outside: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FinalMeasurementView:
    """The final measurement."""

    head: PaperHead
    areas: tuple[StatementArea, ...]
    parts: tuple[StatementPart, ...]
    unmoved: str
    changed_before: str
    previous_total: str
    change: str
    revised_total: str
    payments: tuple[StatementPayment, ...]
    verdict: str
    dates: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeOrderView:
    """One change order."""

    number: str
    on: str
    what: str
    asked_by: str
    working: str
    previous_total: str
    amount: str
    revised_total: str
    days: str
    moves: tuple[str, ...]
    payments: tuple[StatementPayment, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeOrdersView:
    """All change orders of a job, each to be signed, with the total after each."""

    head: PaperHead
    changes: tuple[ChangeOrderView, ...]
    quoted_total: str
    total: str
    paid: str
    balance: str


def final_measurement_view(results: Results, adjusted: Remeasure) -> FinalMeasurementView:
    """Build the final measurement."""
    job, words = results.job, results.words
    names = {p.id: p.name for p in job.placements}
    title = words("final_measurement_title", title=job.title, quote=job.quote)
    return FinalMeasurementView(
        head=paper_head(results, title, adjusted.on),
        areas=tuple(
            StatementArea(
                name=names[area.placement],
                estimated=words.quantity(area.estimated, area.unit),
                measured=words.quantity(area.measured, area.unit),
                difference=words.signed_quantity(area.difference, area.unit),
                share=words.signed_percent(area.share),
                outside=words("slice_outside", slice=words.quantity(area.outside, area.unit))
                if area.outside
                else "",
            )
            for area in adjusted.areas
        ),
        parts=tuple(_parts(results, adjusted)),
        unmoved=words.money(adjusted.unmoved),
        changed_before=words.signed_money(adjusted.changed_before) if adjusted.earlier else "",
        previous_total=words.money(adjusted.previous_total),
        change=words.signed_money(adjusted.change),
        revised_total=words.money(adjusted.revised_total),
        payments=tuple(_payments(results, adjusted.payments)),
        verdict=_verdict(results, adjusted),
        dates=words("final_measurement_dates"),
    )


def change_orders_view(results: Results) -> ChangeOrdersView:
    """Build the change orders."""
    job, words, contract = results.job, results.words, results.contract
    title = words("changes_title", title=job.title, quote=job.quote)
    return ChangeOrdersView(
        head=paper_head(results, title, contract.changes[-1].on),
        changes=tuple(
            _change(results, change, moves)
            for change, moves in zip(contract.changes, results.days.moves, strict=True)
        ),
        quoted_total=words.money(contract.quoted_total),
        total=words.money(contract.total),
        paid=words.money(contract.paid),
        balance=words.money(contract.balance),
    )


def _parts(results: Results, adjusted: Remeasure) -> Iterator[StatementPart]:
    """The lines of each placement in the order of the job, then those of the whole job."""
    names = {p.id: p.name for p in results.job.placements}
    shown = adjusted.lines
    if results.job.company.show is not Show.LINES:
        shown = together(shown)
    for place in (*names, None):
        lines = tuple(line for line in shown if line.placement == place)
        if lines:
            name = names[place] if place else results.words("subtotal_whole_job")
            yield StatementPart(
                place=name if len(names) > 1 else "",
                lines=tuple(_line(results, line) for line in lines),
            )


def _line(results: Results, line: AdjustedLine) -> StatementLine:
    words = results.words
    is_sum = line.unit is Unit.LUMP
    return StatementLine(
        name=line.name,
        estimated="" if is_sum else words.amount_of(line.estimated, line.unit),
        measured="" if is_sum else words.amount_of(line.measured, line.unit),
        difference="" if is_sum else words.signed_amount_of(line.difference, line.unit),
        rate="" if is_sum else words.rate(line.rate, line.unit),
        before=words.money(line.before),
        change=words.signed_money(line.change),
        after=words.money(line.after),
    )


def _payments(results: Results, payments: tuple[RevisedPayment, ...]) -> Iterator[StatementPayment]:
    words = results.words
    for payment in payments:
        yield StatementPayment(
            when=sentence(payment.when).removesuffix("."),
            before=words.money(payment.before),
            after=words.money(payment.after),
            note=words("paid") if payment.paid is not None else "",
        )


def _verdict(results: Results, adjusted: Remeasure) -> str:
    """What the measurement means for the price, in a sentence or two."""
    words = results.words
    if adjusted.change == 0:
        return words("final_measurement_same", total=words.money(adjusted.revised_total))
    key = "final_measurement_more" if adjusted.change > 0 else "final_measurement_less"
    verdict = words(
        key,
        change=words.money(abs(adjusted.change)),
        total=words.money(adjusted.revised_total),
    )
    if adjusted.needs_signatures:
        limit = words.percent(results.job.company.adjustment.no_pour_above)
        verdict = f"{verdict} {words('final_measurement_limit', limit=limit)}"
    return verdict


def _change(
    results: Results, change: ChangeOrder, moves: tuple[MovedVisit, ...]
) -> ChangeOrderView:
    words = results.words
    working = ""
    if change.rate is not None:
        quantity = words.quantity(change.quantity, change.rate.unit)
        working = f"{quantity} × {words.rate(change.rate.amount, change.rate.unit)}"
    return ChangeOrderView(
        number=str(change.number),
        on=words.day(change.on),
        what=sentence(change.what),
        asked_by=change.asked_by,
        working=working,
        previous_total=words.money(change.previous_total),
        amount=words.signed_money(change.amount),
        revised_total=words.money(change.revised_total),
        days=words.count("days_added", change.days) if change.days else words("days_same"),
        moves=tuple(_moved(results, move) for move in moves),
        payments=tuple(_payments(results, change.payments)),
    )


def _moved(results: Results, move: MovedVisit) -> str:
    """A visit that moved: from when to when."""
    words = results.words
    was, now = (words.days(one.first_day, one.last_day) for one in (move.was, move.now))
    return words("visit_moved", visit=move.now.name, was=was, now=now)
