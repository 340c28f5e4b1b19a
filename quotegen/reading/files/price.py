"""A price of the rate book: at one rate, by slab thickness, by how much there is, or as a share."""

from collections.abc import Mapping
from typing import Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.fields.typed_fields import (
    CountField,
    LengthField,
    Model,
    RateField,
    Slug,
)
from quotegen.reading.yaml.located import DocumentPath


class Step(Model):
    """A price from one thickness up."""

    thickness: LengthField
    rate: RateField


class Band(Model):
    """A price for quantities from a size on and up to another.

    The first band has no `from`, the last no `to`; each other bound stands in both neighbours.
    """

    from_: CountField | None = Field(default=None, alias="from")
    to: CountField | None = None
    rate: RateField


class SmallJob(Model):
    """The rate for all of a placement that is smaller than a size."""

    under: CountField
    rate: RateField


class Price(Model):
    """What one of something costs: at one rate, by slab thickness, or by how much there is.

    Attributes:
        rate: the price, unless it goes by thickness or by size.
        small_job: beside `rate`, the price of each unit on a placement that is small.
        by_thickness: prices by slab thickness, the thickest that is not thicker than the slab.
        by_size: prices by how much there is on a placement, each for the whole quantity.
        by_slice: prices by how much there is, each for its own slice of the quantity alone.
        of_which: what a scope item that it pays for is worth by the unit when it is left out.
    """

    rate: RateField | None = None
    small_job: SmallJob | None = None
    by_thickness: tuple[Step, ...] = ()
    by_size: tuple[Band, ...] = ()
    by_slice: tuple[Band, ...] = ()
    of_which: Mapping[Slug, RateField] = Field(default_factory=dict)

    @model_validator(mode="after")
    def _one_price(self) -> Self:
        forms = self._forms()
        if sum(map(bool, forms.values())) != 1:
            *others, last = (f"`{key}`" for key in forms)
            said = f"a price needs just one of {', '.join(others)} and {last}"
            raise PydanticCustomError("rate-or-steps", said)
        if self.small_job and not self.rate:
            raise PydanticCustomError(
                "small-job-rate", "`small_job` goes with `rate`; in a list, add a first band to it"
            )
        return self

    def _forms(self) -> Mapping[str, object]:
        """Return each way to say a price by its key, with what is typed there."""
        return {
            "rate": self.rate, "by_thickness": self.by_thickness,
            "by_size": self.by_size, "by_slice": self.by_slice,
        }  # fmt: skip

    @property
    def bands(self) -> tuple[Band, ...]:
        """The prices by size, whichever way they count."""
        return self.by_size or self.by_slice or self._small_and_usual

    @property
    def _small_and_usual(self) -> tuple[Band, ...]:
        if self.small_job is None or self.rate is None:
            return ()
        border = self.small_job.under
        return (
            Band.model_construct(to=border, rate=self.small_job.rate),
            Band.model_construct(from_=border, rate=self.rate),
        )

    @property
    def rates(self) -> tuple[tuple[DocumentPath, Rate], ...]:
        """Every rate in it, with where it stands under the price."""
        plain = ((("rate",), self.rate),) if self.rate else ()
        small = ((("small_job", "rate"), self.small_job.rate),) if self.small_job else ()
        steps = ((("by_thickness", i, "rate"), s.rate) for i, s in enumerate(self.by_thickness))
        sizes = ((("by_size", i, "rate"), band.rate) for i, band in enumerate(self.by_size))
        slices = ((("by_slice", i, "rate"), band.rate) for i, band in enumerate(self.by_slice))
        return (*plain, *small, *steps, *sizes, *slices)
