"""The whole rate book as it is typed: each price with what it costs, which no customer sees."""

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from types import MappingProxyType
from typing import TypeVar

from pydantic import Field

from quotegen.money import to_cents
from quotegen.quantity import Length, decimal_of
from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.fields.typed_fields import RateField, ShareField, Slug, cut_to
from quotegen.reading.files.costs import ChargeField, CostFor, Costs
from quotegen.reading.files.order_parts import MaterialId, ShortLoad
from quotegen.reading.files.price import Band, Price, Step
from quotegen.reading.files.rate_book import ORDER_IS_NEEDED, BookRate, Finish, Order, RateBook

P = TypeVar("P", bound=Price)


class CostedStep(Step):
    """A price from one thickness up, and what one of it costs."""

    cost: RateField | None = None


class CostedBand(Band):
    """A price for quantities between two sizes, and what one of it costs."""

    cost: RateField | None = None


class CostedPrice(Price):
    """A price and its cost.

    Attributes:
        cost: what is bought for one of it beside crew hours and the order list.
    """

    by_thickness: tuple[CostedStep, ...] = ()
    by_size: tuple[CostedBand, ...] = ()
    by_slice: tuple[CostedBand, ...] = ()
    cost: RateField | None = None

    def public_as(self, model: type[P]) -> P:
        """Return the price without its costs."""
        return cut_to(
            model,
            self,
            by_thickness=tuple(cut_to(Step, step) for step in self.by_thickness),
            by_size=tuple(cut_to(Band, band) for band in self.by_size),
            by_slice=tuple(cut_to(Band, band) for band in self.by_slice),
        )

    def cost_at(self, thickness: Length | None, band: int | None) -> Rate | None:
        """Return the cost of one at a slab thickness and in a band, as its price is found."""
        if self.rate is not None:
            return self.cost
        if self.by_thickness:
            steps = [s for s in self.by_thickness if thickness and s.thickness <= thickness]
            return (steps[-1] if steps else self.by_thickness[0]).cost
        bands = self.by_size or self.by_slice
        return bands[band or 0].cost if bands else None


class CostedRate(CostedPrice, BookRate):
    """One price of the book and its cost.

    Attributes:
        cost_for: what the cost of one buys.
        cost_share: for a price that is a share of lines, the share of them that it costs.
    """

    cost_for: CostFor = CostFor.SUPPLIES
    cost_share: ShareField | None = None


class CostedFinish(CostedPrice, Finish):
    """A finish, and what is bought for one unit of it."""


class CostedShortLoad(ShortLoad):
    """A small load, and what the plant charges for it: in all, or for each yard that it lacks."""

    charge: ChargeField | None = None

    def charge_for(self, load_cuyd: Fraction) -> Decimal | None:
        """Return what the plant charges for one load, None where that is not typed."""
        if self.charge is None:
            return None
        if not self.charge.unit:
            return self.charge.amount
        lacking = decimal_of(max(self.under - load_cuyd, Fraction(0)))
        return to_cents(self.charge.amount * lacking)


class CostedOrder(Order):
    """How concrete is ordered, and what a small load costs."""

    short_load: CostedShortLoad | None = None

    def public(self) -> Order:
        """Return the order without what the plant charges."""
        short = self.short_load
        return cut_to(Order, self, short_load=short and cut_to(ShortLoad, short))


class RateBookFile(RateBook):
    """A whole rate book file: a rate book, and what only its owner may see."""

    order: CostedOrder = ORDER_IS_NEEDED
    rates: Mapping[Slug, CostedRate] = Field(default_factory=dict)
    finishes: Mapping[Slug, CostedFinish]
    costs: Costs | None = None

    @property
    def waste(self) -> Mapping[MaterialId, Fraction]:
        """What is ordered beyond the measure, as a share, where it is typed."""
        prices = self.costs.materials if self.costs else {}
        return MappingProxyType(
            {one: price.waste for one, price in prices.items() if price.waste is not None}
        )

    def public(self) -> RateBook:
        """Return the rate book without its costs."""
        return cut_to(
            RateBook,
            self,
            order=self.order.public(),
            rates={key: rate.public_as(BookRate) for key, rate in self.rates.items()},
            finishes={key: one.public_as(Finish) for key, one in self.finishes.items()},
        )
