"""A takeoff with every area more or less by a share, down to what is ordered for it."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from quotegen.pricing.price import with_area_changed
from quotegen.quantity import decimal_of, rounded
from quotegen.spec.records import JobSpec
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
