"""The job with one thing changed: what that does to price, cost, margin and floors."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from quotegen.money import ZERO, Money, to_cents, total
from quotegen.pricing.costs.basis import loaded_wage
from quotegen.pricing.costs.costs import costs_at
from quotegen.pricing.costs.floors import floors_of
from quotegen.pricing.costs.records import CostKind, FinishCosts, What, WhatIf
from quotegen.pricing.quoted.adjustment import with_area_changed
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.lines import with_minimum_and_tax
from quotegen.pricing.quoted.records import Line, PricedFinish
from quotegen.pricing.quoted.tax import TAX
from quotegen.quantity import decimal_of, rounded
from quotegen.reading.fields.text_fields import Count
from quotegen.reading.files.costs import MaterialId
from quotegen.reading.files.job import Use
from quotegen.reading.records import JobSpec, OwnersJob
from quotegen.takeoff.records import PlacementTakeoff, Takeoff
from quotegen.trade.concrete import net_volume_cuyd, order_cuyd
from quotegen.trade.rules import RuleBook

_EDGE_PLACES, _EDGE_PLACES_M = 1, 2

NONE = decimal_of(Fraction(0))


def with_area_and_order(
    job: JobSpec, takeoff: Takeoff, change: Fraction, rules: RuleBook
) -> Takeoff:
    """Return the takeoff with each area, its volume and its order changed; edges stay."""
    changed = with_area_changed(takeoff, change)
    slabs = tuple(
        replace(p, order_cuyd=_order(job, p.volume_cuyd, p.area_sqft, rules))
        for p in changed.placements
    )
    volume = sum((p.volume_cuyd for p in slabs), start=NONE)
    area = sum((p.area_sqft for p in slabs), start=NONE)
    return replace(
        changed,
        placements=slabs,
        volume_cuyd=volume,
        order_cuyd=_order(job, volume, area, rules),
    )


def half_of(job: JobSpec, takeoff: Takeoff, rules: RuleBook) -> Takeoff:
    """Return half of each area and half of each edge; the edge between the halves is not in it."""
    half = with_area_and_order(job, takeoff, Fraction(-1, 2), rules)
    return replace(half, placements=tuple(_half_edges(p) for p in half.placements))


def _half_edges(placement: PlacementTakeoff) -> PlacementTakeoff:
    return replace(
        placement,
        edges_ft={e: rounded(Fraction(v) / 2, _EDGE_PLACES) for e, v in placement.edges_ft.items()},
        edges_m={e: rounded(Fraction(v) / 2, _EDGE_PLACES_M) for e, v in placement.edges_m.items()},
    )


def _order(job: JobSpec, volume: Decimal, area: Decimal, rules: RuleBook) -> Decimal:
    order = job.rate_book.order
    uneven_in = order.uneven_base.inches if order.uneven_base else Fraction(0)
    uneven = net_volume_cuyd(area, uneven_in, rules, job.quote_date) if uneven_in else Fraction(0)
    return decimal_of(order_cuyd(Fraction(volume) + uneven, order.allowance, order.round_up_to))


AREA_CHANGES = (Fraction(-1, 10), Fraction(1, 10))
"""The changes of area that the cost sheet tries."""

LESS_AREA = (Fraction(-1, 20), Fraction(-1, 10))
"""How much smaller the phone sheet makes the slab."""

DISCOUNT_SUMS = tuple(to_cents(decimal_of(Fraction(dollars))) for dollars in (500, 1_000))
DISCOUNT_SHARES = (Fraction(1, 20), Fraction(1, 10))
"""The discounts that people ask for."""

_BASE = frozenset({"dig_out", "base"})
_NEVER_LEFT_OUT = frozenset({"placing", "demolition"})
"""Scope that the slab cannot do without once the site asks for it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Quoted:
    """A priced and costed job, to change one thing at a time."""

    job: JobSpec
    owners: OwnersJob
    takeoff: Takeoff
    rules: RuleBook
    costs: FinishCosts
    lines: tuple[Line, ...]

    def against(
        self, what: What, then: FinishCosts, *, name: str = "", change: Fraction | None = None
    ) -> WhatIf:
        """Set a changed job against the quote."""
        return WhatIf(
            what=what, name=name, change=change, price=then.price,
            price_change=Money(then.price - self.costs.price),
            cost_change=Money(then.cost - self.costs.cost),
            margin=then.margin, margin_share=then.margin_share, floors=then.floors,
        )  # fmt: skip

    def dearer(self, what: What, *, cost: Decimal, days: int = 0) -> WhatIf:
        """Return the quote at its price with a cost that nobody pays for."""
        then = _at_price(self, self.costs.net_price, Money(cost), days)
        return replace(then, what=what)


def extras_of(quoted: Quoted) -> Iterator[WhatIf]:
    """Yield the job with each extra by itself."""
    job, takeoff, rules = quoted.job, quoted.takeoff, quoted.rules
    for extra in job.extras:
        priced = price_at(job, takeoff, job.finish, (extra,))
        then = costs_at(job, quoted.owners, takeoff, rules, priced)
        yield quoted.against(What.EXTRA, then, name=job.rate_book.rates[extra].name)


def sensitivity(quoted: Quoted) -> Iterator[WhatIf]:
    """Yield one more truck, one day lost to rain, and the area a tenth smaller and larger.

    The truck brings one cubic yard as a short load. On the lost day everybody comes and is paid,
    and the overhead of the day stands.
    """
    costs = quoted.owners.costs
    if costs is not None:
        concrete = costs.materials.get(MaterialId.CONCRETE)
        short = quoted.owners.book.order.short_load
        load = (
            concrete.price.amount if concrete else None,
            costs.deliveries.concrete_load,
            short.charge if short else None,
        )
        yield quoted.dearer(What.MORE_TRUCK, cost=to_cents(sum((c for c in load if c), start=ZERO)))
        crew = sum((i.amount for i in quoted.costs.of_kind(CostKind.TRAVEL)), start=ZERO)
        people = _people(quoted)
        paid = loaded_wage(costs) * decimal_of(costs.day * people)
        road = to_cents(crew / quoted.costs.crew_days) if quoted.costs.crew_days else ZERO
        day = costs.overhead.crew_day or ZERO
        yield quoted.dearer(What.RAIN_DAY, cost=to_cents(paid + road + day), days=1)
    for change in AREA_CHANGES:
        yield _area(quoted, What.AREA, change)


def _people(quoted: Quoted) -> int:
    finish = quoted.job.rate_book.finishes[quoted.costs.finish]
    costs = quoted.owners.costs
    return finish.crew or (costs.crew if costs else 0)


def _area(quoted: Quoted, what: What, change: Fraction) -> WhatIf:
    job, rules = quoted.job, quoted.rules
    changed = with_area_and_order(job, quoted.takeoff, change, rules)
    priced = price_at(job, changed, quoted.costs.finish)
    then = costs_at(job, quoted.owners, changed, rules, priced)
    return quoted.against(what, then, change=change)


def discounts(quoted: Quoted) -> Iterator[WhatIf]:
    """Yield each usual discount: the price less it, and the same work."""
    net = quoted.costs.net_price
    sums = [(off, None) for off in DISCOUNT_SUMS]
    shares = [(to_cents(net * decimal_of(share)), share) for share in DISCOUNT_SHARES]
    for off, share in (*sums, *shares):
        then = _at_price(quoted, Money(net - off), ZERO, 0)
        yield replace(then, change=share, price_change=Money(-off))


def _at_price(quoted: Quoted, net: Money, more: Money, days: int) -> WhatIf:
    """Return the same work at a price before tax, with a cost on top."""
    now = quoted.costs
    margin = Money(now.margin + net - now.net_price - more)
    floors = floors_of(
        quoted.owners.costs, net, margin, now.crew_days + days, now.area_sqft
    )  # fmt: skip
    return WhatIf(
        what=What.DISCOUNT, name="", change=None, price=net,
        price_change=Money(net - now.net_price), cost_change=more, margin=margin,
        margin_share=Fraction(margin) / Fraction(net or 1), floors=floors,
    )  # fmt: skip


def ways_down(quoted: Quoted, finishes: tuple[FinishCosts, ...]) -> tuple[WhatIf, ...]:
    """Return every honest way to a lower price, each the job with less in it, dearest first.

    A way that does not lower the price is no way down and is left out.
    """
    ways = (
        *(quoted.against(What.FINISH, f, name=f.name) for f in finishes),
        *_alternates(quoted),
        *(_area(quoted, What.LESS_AREA, change) for change in LESS_AREA),
        *_left_out(quoted),
        *_base_by_owner(quoted),
    )
    return tuple(sorted((w for w in ways if w.price_change < 0), key=lambda w: w.price_change))


def _alternates(quoted: Quoted) -> Iterator[WhatIf]:
    job, takeoff = quoted.job, quoted.takeoff
    for index, placement in enumerate(job.placements):
        for finish in placement.alternates:
            changed = replace(placement, finish=finish)
            placements = (*job.placements[:index], changed, *job.placements[index + 1 :])
            then_job = replace(job, placements=placements)
            priced = price_at(then_job, takeoff, job.finish)
            then = costs_at(then_job, quoted.owners, takeoff, quoted.rules, priced)
            name = f"{placement.name}: {job.rate_book.finishes[finish].name}"
            yield quoted.against(What.ALTERNATE, then, name=name)


def _left_out(quoted: Quoted) -> Iterator[WhatIf]:
    """Yield the job without each thing that it asked for and can do without."""
    job = quoted.job
    asked = dict.fromkeys((*job.include, *(r for p in job.placements for r in p.include)))
    for rate_id in asked:
        rate = job.rate_book.rates[rate_id]
        if not _NEVER_LEFT_OUT.isdisjoint(rate.covers):
            continue
        without = replace(
            job,
            include=_less(job.include, rate_id),
            placements=tuple(replace(p, include=_less(p.include, rate_id)) for p in job.placements),
        )
        priced = price_at(without, quoted.takeoff, job.finish)
        then = costs_at(without, quoted.owners, quoted.takeoff, quoted.rules, priced)
        yield quoted.against(What.LEAVE_OUT, then, name=rate.name)


def _less(asked: Mapping[str, Count], rate_id: str) -> dict[str, Count]:
    return {rate: count for rate, count in asked.items() if rate != rate_id}


def _base_by_owner(quoted: Quoted) -> Iterator[WhatIf]:
    """Yield the job without digging out and base, where lines are for these alone."""
    if any(p.use is Use.DRIVE for p in quoted.job.placements):
        return  # what carries cars is not left to chance
    work = tuple(line for line in quoted.lines if TAX not in line.scope and not _is_minimum(line))
    kept = tuple(line for line in work if not set(line.scope) <= _BASE)
    if len(kept) == len(work):
        return
    lines = with_minimum_and_tax(quoted.job, kept)
    priced = PricedFinish(
        id=quoted.costs.finish, name=quoted.costs.name, visits=0, lines=lines,
        total=total(tuple(line.amount for line in lines)), area_price=(),
    )  # fmt: skip
    then = costs_at(quoted.job, quoted.owners, quoted.takeoff, quoted.rules, priced, _BASE)
    yield quoted.against(What.BASE_BY_OWNER, then)


def _is_minimum(line: Line) -> bool:
    return "minimum" in line.scope


def in_two_phases(quoted: Quoted) -> tuple[WhatIf, WhatIf]:
    """Return the first phase alone, and both phases together, against the quote.

    With several placements the first is the first phase, and the rest the second. A single one is
    halved, its edges too; the edge between the halves comes on top.
    """
    job, takeoff = quoted.job, quoted.takeoff
    if len(job.placements) == 1:
        half = half_of(job, takeoff, quoted.rules)
        priced = price_at(job, half, job.finish)
        first = second = costs_at(job, quoted.owners, half, quoted.rules, priced)
    else:
        first, second = (_part(quoted, cut) for cut in (slice(0, 1), slice(1, None)))
    one = quoted.against(What.TWO_PHASES, first, name="first")
    net, margin = Money(first.net_price + second.net_price), Money(first.margin + second.margin)
    price, cost = Money(first.price + second.price), Money(first.cost + second.cost)
    days = first.crew_days + second.crew_days
    both = WhatIf(
        what=What.TWO_PHASES, name="both", change=None, price=price,
        price_change=Money(price - quoted.costs.price),
        cost_change=Money(cost - quoted.costs.cost), margin=margin,
        margin_share=Fraction(margin) / Fraction(net or 1),
        floors=floors_of(quoted.owners.costs, net, margin, days, quoted.costs.area_sqft),
    )  # fmt: skip
    return one, both


def _part(quoted: Quoted, cut: slice) -> FinishCosts:
    job, takeoff = quoted.job, quoted.takeoff
    part = replace(job, placements=job.placements[cut])
    measured = with_area_and_order(
        part, replace(takeoff, placements=takeoff.placements[cut]), Fraction(0), quoted.rules
    )
    priced = price_at(part, measured, job.finish)
    return costs_at(part, quoted.owners, measured, quoted.rules, priced)
