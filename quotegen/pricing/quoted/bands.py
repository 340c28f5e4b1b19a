"""Prices by size: the whole quantity at the rate of its band, or each slice at its own."""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from quotegen.pricing.quoted.rates import rate_at, typed_quantity
from quotegen.quantity import Length, Unit, decimal_of
from quotegen.reading.fields.text_fields import Count, Rate
from quotegen.reading.files.rate_book import Band, BookRate
from quotegen.reading.yaml.located import DocumentPath

_NOUGHT = decimal_of(Fraction(0))


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A quantity at one price of a rate.

    Attributes:
        rate: as the book has it, not yet in the units of the job.
        path: where under the rate it stands in the book.
        band: which band, None for a rate without bands.
        is_last: whether one unit more would be one unit more of this.
    """

    quantity: Decimal
    rate: Rate
    path: DocumentPath
    band: int | None
    is_last: bool


def parts_of(
    rate: BookRate,
    quantity: Decimal,
    unit: Unit,
    thickness: Length | None,
    held: int | None = None,
) -> Iterator[Part]:
    """Split a quantity over the prices of a rate; a rate without bands has one part.

    With `by_size` the band that the quantity falls in prices all of it: it counts from its
    `from`, which is in it, to its `to`, which is not. With `by_slice` each band prices what lies
    between its ends, so that a larger quantity never costs less in total.

    Args:
        rate: of the rate book.
        quantity: to be priced.
        unit: of the quantity.
        thickness: of the slab, for a price by thickness.
        held: the band of a `by_size` rate that was quoted, which then prices any quantity.
    """
    if rate.by_slice:
        yield from _slices(rate.by_slice, quantity, unit)
    elif rate.by_size:
        reached = [i for i, band in enumerate(rate.by_size) if _start(band, unit) <= quantity]
        band = reached[-1] if held is None else held
        yield _part(rate.by_size, band, "by_size", quantity, is_last=True)
    else:
        yield Part(
            quantity=quantity,
            rate=rate_at(rate, thickness),
            path=_path(rate, thickness),
            band=None,
            is_last=True,
        )


def _slices(bands: tuple[Band, ...], quantity: Decimal, unit: Unit) -> Iterator[Part]:
    reached = [i for i, band in enumerate(bands) if not i or _start(band, unit) < quantity]
    for index in reached:
        start = _start(bands[index], unit)
        last = index == reached[-1]
        end = quantity if last else _start(bands[index + 1], unit)
        yield _part(bands, index, "by_slice", end - start, is_last=last)


def _part(
    bands: tuple[Band, ...], index: int, kind: str, quantity: Decimal, *, is_last: bool
) -> Part:
    return Part(
        quantity=quantity,
        rate=bands[index].rate,
        path=(kind, index, "rate"),
        band=index,
        is_last=is_last,
    )


def _start(band: Band, unit: Unit) -> Decimal:
    return size_in(band.from_, unit) if band.from_ else _NOUGHT


def size_in(count: Count, unit: Unit) -> Decimal:
    """Return the border of a band in the unit of the line."""
    return typed_quantity(count, unit)


def _path(rate: BookRate, thickness: Length | None) -> DocumentPath:
    if rate.rate is not None:
        return ("rate",)
    reached = [i for i, s in enumerate(rate.by_thickness) if thickness and s.thickness <= thickness]
    return ("by_thickness", reached[-1] if reached else 0, "rate")
