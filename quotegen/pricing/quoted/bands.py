"""Prices by size: the whole quantity at the rate of its band, or each slice at its own."""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from quotegen.pricing.quoted.quantities import typed_quantity
from quotegen.pricing.quoted.rates import rate_at
from quotegen.quantity import NO_QUANTITY, Length, Unit
from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.files.price import Band, Price
from quotegen.reading.yaml.located import DocumentPath

_SMALL_OR_USUAL: tuple[DocumentPath, ...] = (("small_job", "rate"), ("rate",))


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceSlice:
    """A quantity, or a slice of one, at one rate of a price.

    Attributes:
        rate: as the book has it, not yet in the units of the job.
        path: where under the price it stands in the book.
        band: which band, None for a price without bands.
        is_last: whether one unit more would be one unit more of this.
    """

    quantity: Decimal
    rate: Rate
    path: DocumentPath
    band: int | None
    is_last: bool

    @property
    def slice_number(self) -> int | None:
        """Which slice this is, counted from one; None for a quantity at one price."""
        return self.band + 1 if self.band is not None and self.path[0] == "by_slice" else None


def price_slices(
    price: Price,
    quantity: Decimal,
    unit: Unit,
    thickness: Length | None,
    quoted_band: int | None = None,
) -> Iterator[PriceSlice]:
    """Split a quantity over the rates of a price; a price without bands has one slice.

    With `by_size`, and with a rate for small jobs, the band that the quantity falls in prices all
    of it; a band includes its `from` and not its `to`. With `by_slice` each band prices what lies
    between its ends, so that a larger quantity never costs less in total.

    Args:
        price: of a rate or a finish of the book.
        quantity: to be priced.
        unit: of the quantity.
        thickness: of the slab, for a price by thickness.
        quoted_band: the band that was quoted, where one prices all; it then prices any quantity.
    """
    bands = price.bands
    if price.by_slice:
        yield from _slices(bands, quantity, unit)
    elif bands:
        reached = [i for i, band in enumerate(bands) if _start(band, unit) <= quantity]
        band = reached[-1] if quoted_band is None else quoted_band
        path = ("by_size", band, "rate") if price.by_size else _SMALL_OR_USUAL[band]
        yield PriceSlice(
            quantity=quantity, rate=bands[band].rate, path=path, band=band, is_last=True
        )
    else:
        yield PriceSlice(
            quantity=quantity,
            rate=rate_at(price, thickness),
            path=_path(price, thickness),
            band=None,
            is_last=True,
        )


def _slices(bands: tuple[Band, ...], quantity: Decimal, unit: Unit) -> Iterator[PriceSlice]:
    reached = [i for i, band in enumerate(bands) if not i or _start(band, unit) < quantity]
    for index in reached:
        start = _start(bands[index], unit)
        last = index == reached[-1]
        end = quantity if last else _start(bands[index + 1], unit)
        yield PriceSlice(
            quantity=end - start,
            rate=bands[index].rate,
            path=("by_slice", index, "rate"),
            band=index,
            is_last=last,
        )


def _start(band: Band, unit: Unit) -> Decimal:
    return typed_quantity(band.from_, unit) if band.from_ else NO_QUANTITY


def _path(price: Price, thickness: Length | None) -> DocumentPath:
    if price.rate is not None:
        return ("rate",)
    reached = [
        i for i, s in enumerate(price.by_thickness) if thickness and s.thickness <= thickness
    ]
    return ("by_thickness", reached[-1] if reached else 0, "rate")
