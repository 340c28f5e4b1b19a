"""Upkeep: what renewing the sealer costs over the years, at the company's current price."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from quotegen.money import Money, to_cents, total
from quotegen.pricing.quoted.rates import shown_rate
from quotegen.pricing.quoted.records import PricedFinish
from quotegen.reading.files.job import ROUND_A_POOL
from quotegen.reading.files.rate_book import SEALING, Sealer
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.records import Takeoff
from quotegen.trade import sealing
from quotegen.trade.rules import RuleBook


@dataclass(frozen=True, slots=True, kw_only=True)
class CoatPrices:
    """The price of one new coat on all that is sealed, and of the least and most coats."""

    coat: Money
    least: Money
    most: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class Upkeep:
    """New coats of sealer over some years after the job.

    Attributes:
        years: how many are counted.
        least_coats, most_coats: how many coats fall due in them.
        prices: before tax; None where the rate book does not know what a coat costs.
    """

    years: int
    least_coats: int
    most_coats: int
    prices: CoatPrices | None


def upkeep_of(
    job: JobSpec, takeoff: Takeoff, finishes: tuple[PricedFinish, ...], rules: RuleBook
) -> Mapping[str, Upkeep]:
    """Return the upkeep at each finish by its id, without those that need no sealer."""
    counted = {one.id: _upkeep(job, takeoff, one, rules) for one in finishes}
    return MappingProxyType({key: upkeep for key, upkeep in counted.items() if upkeep is not None})


def _upkeep(job: JobSpec, takeoff: Takeoff, finish: PricedFinish, rules: RuleBook) -> Upkeep | None:
    """Count the coats of the finish's own sealer, and price one on every placement that has it.

    A placement with a finish of its own counts where its sealer is of the same kind.
    """
    kind = job.rate_book.finishes[finish.id].sealer
    if kind is Sealer.NONE:
        return None
    coated = tuple(p for p in job.placements if job.finish_of(p, finish.id)[1].sealer is kind)
    if not coated:
        return None
    priced = tuple(_coat(job, takeoff, finish, placement) for placement in coated)
    known = tuple(one for one in priced if one is not None)
    coat = total(known)
    lasts = sealing.reseal_years(
        sealing.Sealer(kind.value), rules, job.quote_date,
        at_pool=frozenset(placement.use in ROUND_A_POOL for placement in coated),
    )  # fmt: skip
    coats = sealing.coats_due(lasts, rules, job.quote_date)
    return Upkeep(
        years=sealing.upkeep_years(rules, job.quote_date),
        least_coats=coats.least,
        most_coats=coats.most,
        prices=CoatPrices(coat=coat, least=Money(coat * coats.least), most=Money(coat * coats.most))
        if len(known) == len(priced)
        else None,
    )


def _coat(
    job: JobSpec, takeoff: Takeoff, finish: PricedFinish, placement: PlacementSpec
) -> Money | None:
    """Price one new coat at the `reseal` rate of its finish, or as a line for sealing alone does.

    A price that pays for more than sealing tells nothing of what a later coat costs.
    """
    rate = job.finish_of(placement, finish.id)[1].reseal
    if rate is not None:
        area = takeoff.placement(placement.id).area(job.units)
        return to_cents(area * shown_rate(rate, job.units).amount)
    first = tuple(
        line.amount
        for line in finish.lines
        if line.placement == placement.id and line.scope == (SEALING,)
    )
    return total(first) if first else None
