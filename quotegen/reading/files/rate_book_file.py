"""The whole rate book as it is typed: each price with what it costs, which no customer sees."""

from collections.abc import Mapping

from quotegen.reading.fields.typed_fields import AmountField, RateField, Slug, cut_to
from quotegen.reading.files.costs import CostFor, Costs
from quotegen.reading.files.order_parts import ShortLoad
from quotegen.reading.files.rate_book import Band, BookRate, Finish, Order, RateBook, Step


class CostedStep(Step):
    """A price from one thickness up, and what one of it costs."""

    cost: RateField | None = None


class CostedBand(Band):
    """A price for quantities between two sizes, and what one of it costs."""

    cost: RateField | None = None


class CostedRate(BookRate):
    """One price of the book and its cost.

    Attributes:
        cost: what is bought for one of it beside crew hours and the order list.
        cost_for: what that buys.
    """

    by_thickness: tuple[CostedStep, ...] = ()
    by_size: tuple[CostedBand, ...] = ()
    by_slice: tuple[CostedBand, ...] = ()
    cost: RateField | None = None
    cost_for: CostFor = CostFor.SUPPLIES

    @property
    def bands(self) -> tuple[CostedBand, ...]:
        """The prices by size, whichever way they count."""
        return self.by_size or self.by_slice

    def public(self) -> BookRate:
        """Return the price without its costs."""
        return cut_to(
            BookRate,
            self,
            by_thickness=tuple(cut_to(Step, step) for step in self.by_thickness),
            by_size=tuple(cut_to(Band, band) for band in self.by_size),
            by_slice=tuple(cut_to(Band, band) for band in self.by_slice),
        )


class CostedFinish(Finish):
    """A finish, and what is bought for one square foot of it."""

    cost: RateField | None = None


class CostedShortLoad(ShortLoad):
    """A small load, and what the plant charges for it."""

    charge: AmountField | None = None


class CostedOrder(Order):
    """How concrete is ordered, and what a small load costs."""

    short_load: CostedShortLoad | None = None

    def public(self) -> Order:
        """Return the order without what the plant charges."""
        short = self.short_load
        return cut_to(Order, self, short_load=short and cut_to(ShortLoad, short))


class RateBookFile(RateBook):
    """A whole rate book file: a rate book, and what only its owner may see."""

    order: CostedOrder
    rates: Mapping[Slug, CostedRate]
    finishes: Mapping[Slug, CostedFinish]
    costs: Costs | None = None

    def public(self) -> RateBook:
        """Return the rate book without its costs."""
        return cut_to(
            RateBook,
            self,
            order=self.order.public(),
            rates={key: rate.public() for key, rate in self.rates.items()},
            finishes={key: cut_to(Finish, finish) for key, finish in self.finishes.items()},
        )
