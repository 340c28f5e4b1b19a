"""The job with one thing changed: what that does to price, cost, margin and floors."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from quotegen.money import ZERO, Money, to_cents, total
from quotegen.pricing.costs.costs import costs_at
from quotegen.pricing.costs.floors import floors_of
from quotegen.pricing.costs.items import loaded_wage
from quotegen.pricing.costs.records import CostKind, FinishCosts, What, WhatIf
from quotegen.pricing.quoted.adjustment import with_area_changed
from quotegen.pricing.quoted.finish import price_at, price_by_area
from quotegen.pricing.quoted.lines import with_what_follows
from quotegen.pricing.quoted.options import with_alternates
from quotegen.pricing.quoted.records import Line, PricedFinish
from quotegen.pricing.quoted.shares import is_share
from quotegen.quantity import NO_QUANTITY, Units, decimal_of, rounded
from quotegen.reading.fields.text_fields import Count
from quotegen.reading.files.job import Use
from quotegen.reading.files.order_parts import MaterialId
from quotegen.reading.records import JobSpec, OwnersJob, PlacementSpec
from quotegen.takeoff.records import PlacementTakeoff, Takeoff
from quotegen.takeoff.slab.flight_volume import flight_step
from quotegen.trade.concrete import net_volume_cuyd, order_cuyd
from quotegen.trade.rules import RuleBook

_EDGE_PLACES, _EDGE_PLACES_M = 1, 2


def with_area_and_order(
    job: JobSpec, takeoff: Takeoff, change: Fraction, rules: RuleBook
) -> Takeoff:
    """Return the takeoff with each area, volume and order of concrete changed; edges stay."""
    changed = with_area_changed(takeoff, change)
    slabs = tuple(
        replace(p, order_cuyd=_order(job, (spec,), p.volume_cuyd, p.area_sqft, rules))
        for spec, p in zip(job.placements, changed.placements, strict=True)
    )
    volume = sum((p.volume_cuyd for p in slabs), start=NO_QUANTITY)
    return replace(
        changed,
        placements=slabs,
        volume_cuyd=volume,
        order_cuyd=_order(job, job.placements, volume, changed.area(Units.US), rules),
    )


def half_of(job: JobSpec, takeoff: Takeoff, rules: RuleBook) -> Takeoff:
    """Return half of each area and of each edge, without the new edge between the halves."""
    half = with_area_and_order(job, takeoff, Fraction(-1, 2), rules)
    return replace(half, placements=tuple(_half_edges(p) for p in half.placements))


def _half_edges(placement: PlacementTakeoff) -> PlacementTakeoff:
    return replace(
        placement,
        edges_ft={e: rounded(Fraction(v) / 2, _EDGE_PLACES) for e, v in placement.edges_ft.items()},
        edges_m={e: rounded(Fraction(v) / 2, _EDGE_PLACES_M) for e, v in placement.edges_m.items()},
    )


def _order(
    job: JobSpec,
    slabs: tuple[PlacementSpec, ...],
    volume: Decimal,
    area: Decimal,
    rules: RuleBook,
) -> Decimal:
    """Return what to order for some slabs of a volume and an area; their steps stay as they are."""
    order = job.rate_book.order
    uneven_in = order.uneven_base.inches if order.uneven_base else Fraction(0)
    uneven = net_volume_cuyd(area, uneven_in, rules, job.quote_date) if uneven_in else Fraction(0)
    flights = (
        flight_step(one.typed.steps, job.source(*one.path), rules, job.quote_date) for one in slabs
    )
    steps = sum((Fraction(step.value) for step in flights if step), Fraction(0))
    whole = Fraction(volume) + uneven + steps
    return decimal_of(order_cuyd(whole, order.allowance, order.round_up_to))


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
class QuotedJob:
    """A priced and costed job, to change one thing at a time."""

    job: JobSpec
    owners: OwnersJob
    takeoff: Takeoff
    rules: RuleBook
    costs: FinishCosts
    lines: tuple[Line, ...]

    def costs_of(self, job: JobSpec, takeoff: Takeoff, extras: tuple[str, ...] = ()) -> FinishCosts:
        """Price a changed job at the quoted finish, and cost it."""
        priced = price_at(job, takeoff, self.costs.finish, extras)
        return costs_at(job, self.owners, takeoff, self.rules, priced)

    def against(
        self, what: What, after: FinishCosts, *, name: str = "", change: Fraction | None = None
    ) -> WhatIf:
        """Compare a changed job with the quote."""
        return WhatIf(
            what=what, name=name, change=change, price=after.price,
            price_change=Money(after.price - self.costs.price),
            cost_change=Money(after.cost - self.costs.cost),
            margin=after.margin, margin_share=after.margin_share, floors=after.floors,
        )  # fmt: skip

    def dearer(self, what: What, *, cost: Decimal, days: int = 0) -> WhatIf:
        """Return the quote at its own price, with a cost on top that nobody pays for."""
        after = _at_price(self, self.costs.net_price, Money(cost), days)
        return replace(after, what=what)


def extras_of(quoted: QuotedJob) -> Iterator[WhatIf]:
    """Yield the job with each extra by itself."""
    job = quoted.job
    for extra in job.extras:
        after = quoted.costs_of(job, quoted.takeoff, (extra,))
        yield quoted.against(What.EXTRA, after, name=job.rate_book.rates[extra].name)


def sensitivity(quoted: QuotedJob) -> Iterator[WhatIf]:
    """Yield one more truck, one day lost to rain, and the area a tenth smaller and larger.

    The truck brings one cubic yard as a short load. On the lost day everybody comes and is paid,
    and the day has its overhead.
    """
    costs = quoted.owners.costs
    if costs is not None:
        concrete = costs.materials.get(MaterialId.CONCRETE)
        short = quoted.owners.book.order.short_load
        load = (
            concrete.price.amount if concrete else None,
            costs.deliveries.concrete_load,
            short.charge_for(Fraction(1)) if short else None,
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


def _people(quoted: QuotedJob) -> int:
    finish = quoted.job.rate_book.finishes[quoted.costs.finish]
    costs = quoted.owners.costs
    return finish.crew or (costs.crew if costs else 0)


def _area(quoted: QuotedJob, what: What, change: Fraction) -> WhatIf:
    changed = with_area_and_order(quoted.job, quoted.takeoff, change, quoted.rules)
    return quoted.against(what, quoted.costs_of(quoted.job, changed), change=change)


def discounts(quoted: QuotedJob) -> Iterator[WhatIf]:
    """Yield each usual discount: the same work for less."""
    net = quoted.costs.net_price
    sums = [(off, None) for off in DISCOUNT_SUMS]
    shares = [(to_cents(net * decimal_of(share)), share) for share in DISCOUNT_SHARES]
    for off, share in (*sums, *shares):
        after = _at_price(quoted, Money(net - off), ZERO, 0)
        yield replace(after, change=share, price_change=Money(-off))


def _at_price(quoted: QuotedJob, net: Money, more: Money, days: int) -> WhatIf:
    """Return the same work at another price before tax, with a cost on top."""
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


def savings(quoted: QuotedJob, finishes: tuple[FinishCosts, ...]) -> tuple[WhatIf, ...]:
    """Return every honest saving: the job with less in it, the largest saving first.

    What does not lower the price is left out.
    """
    smaller = (
        *(quoted.against(What.FINISH, f, name=f.name) for f in finishes),
        *_alternates(quoted),
        *(_area(quoted, What.LESS_AREA, change) for change in LESS_AREA),
        *_left_out(quoted),
        *_base_by_owner(quoted),
    )
    return tuple(sorted((w for w in smaller if w.price_change < 0), key=lambda w: w.price_change))


def _alternates(quoted: QuotedJob) -> Iterator[WhatIf]:
    job = quoted.job
    for placement in job.placements:
        for finish in placement.alternates:
            changed = with_alternates(job, ((placement.id, finish),))
            after = quoted.costs_of(changed, quoted.takeoff)
            name = f"{placement.name}: {job.rate_book.finishes[finish].name}"
            yield quoted.against(What.ALTERNATE, after, name=name)


def _left_out(quoted: QuotedJob) -> Iterator[WhatIf]:
    """Yield the job without each request that it can do without."""
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
        after = quoted.costs_of(without, quoted.takeoff)
        yield quoted.against(What.LEAVE_OUT, after, name=rate.name)


def _less(asked: Mapping[str, Count], rate_id: str) -> dict[str, Count]:
    return {rate: count for rate, count in asked.items() if rate != rate_id}


def _base_by_owner(quoted: QuotedJob) -> Iterator[WhatIf]:
    """Yield the job without its lines for digging out and base alone, if it has any."""
    if any(p.use is Use.DRIVE for p in quoted.job.placements):
        return  # the base of a drive carries cars
    book, finish = quoted.job.rate_book, quoted.costs.finish
    work = tuple(ln for ln in quoted.lines if ln.pays_for_work and not is_share(book, ln))
    without_base = tuple(line for line in work if not set(line.scope) <= _BASE)
    if len(without_base) == len(work):
        return
    lines = with_what_follows(quoted.job, finish, (), without_base)
    price = total(tuple(line.amount for line in lines))
    priced = PricedFinish(
        id=finish, name=quoted.costs.name, visits=0, lines=lines, total=price,
        by_area=price_by_area(quoted.job, quoted.takeoff, price), area_price=(),
    )  # fmt: skip
    after = costs_at(quoted.job, quoted.owners, quoted.takeoff, quoted.rules, priced, _BASE)
    yield quoted.against(What.BASE_BY_OWNER, after)


def in_two_phases(quoted: QuotedJob) -> tuple[WhatIf, WhatIf]:
    """Return the first phase alone, and both phases together, against the quote.

    Of several placements the first is the first phase, and the rest are the second. A single one
    is halved, edges included; the new edge between the halves is not counted.
    """
    if len(quoted.job.placements) == 1:
        half = half_of(quoted.job, quoted.takeoff, quoted.rules)
        first = second = quoted.costs_of(quoted.job, half)
    else:
        first, second = (_phase(quoted, cut) for cut in (slice(0, 1), slice(1, None)))
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


def _phase(quoted: QuotedJob, cut: slice) -> FinishCosts:
    part = replace(quoted.job, placements=quoted.job.placements[cut])
    its_slabs = replace(quoted.takeoff, placements=quoted.takeoff.placements[cut])
    return quoted.costs_of(part, with_area_and_order(part, its_slabs, Fraction(0), quoted.rules))
