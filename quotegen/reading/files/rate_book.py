"""The rate book without its costs: prices, finishes, and what is usual for each use."""

from collections.abc import Mapping
from enum import StrEnum
from typing import Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.fields.typed_fields import (
    AmountField,
    AreaField,
    ColorField,
    CountField,
    Coverage,
    CoversField,
    DateField,
    DayOfYearField,
    DaysField,
    DosePer100Sqft,
    DosePerCuyd,
    LengthField,
    Model,
    RateField,
    RoadField,
    ShareField,
    Slug,
    VolumeField,
    WholeField,
    Word,
    YesNoField,
)
from quotegen.reading.files.job import Use
from quotegen.reading.files.order_parts import AccessMethod, Bar, ShortLoad, Wire
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.yaml.located import DocumentPath


class Basis(StrEnum):
    """What moves a line."""

    MEASURED = "measured"
    FIXED = "fixed"
    ALLOWANCE = "allowance"


class Applies(StrEnum):
    """When a rate is part of a job."""

    ALWAYS = "always"
    ASKED = "asked"
    WITH_FINISH = "with finish"
    IF_FOUND = "if found"
    COLOR = "with color"


class ColorHow(StrEnum):
    """How a color gets into or onto the slab."""

    INTEGRAL = "integral"
    HARDENER = "hardener"
    RELEASE = "release"
    ANTIQUING = "antiquing"


BASE_COLORS = (ColorHow.INTEGRAL, ColorHow.HARDENER)
SECOND_COLORS = (ColorHow.RELEASE, ColorHow.ANTIQUING)


class ExceededRule(StrEnum):
    """What happens when an allowance does not suffice."""

    AT_COST = "at cost"
    COST_PLUS = "cost plus"
    CAPPED = "capped"


class FinishKind(StrEnum):
    """The kinds of surface that content/ explains."""

    BROOM = "broom"
    EXPOSED_AGGREGATE = "exposed_aggregate"
    STAMPED_TEXTURE = "stamped_texture"
    STAMPED_PATTERN = "stamped_pattern"


class Sealer(StrEnum):
    """The kinds of sealer, for upkeep and care."""

    NONE = "none"
    PENETRATING = "penetrating"
    FILM = "film"


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


class Travel(Model):
    """What is charged of the way to a site on each visit, and how much of one way is free."""

    free: RoadField | None = None
    both_ways: YesNoField


class Season(Model):
    """The days of the year, both included, on which a rate applies; it may pass New Year."""

    first: DayOfYearField
    last: DayOfYearField


class Exceeded(Model):
    """The promise for an allowance that does not suffice."""

    rule: ExceededRule
    plus: ShareField | None = None


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


class BookRate(Price):
    """One price of the book.

    Attributes:
        name: what the line is called on paper.
        covers: the scope items that it pays for.
        share, share_of: instead of a price for one, a share of the lines that pay for any of these
            scope items, or of `everything`: all lines of work. No share is part of another.
        cutting: what is bought beyond the measure, for cutting, as a share of it.
        travel: for a price by the mile, or by the hour of the way to the site.
        of: for a price by the foot, the edge it follows.
        applies: when it is part of a job.
        uses, reinforcement: where it applies only to some placements.
        season: the days of the year when it applies, looked up by the day the work begins.
        color: how a color gets into or onto the slab, for a rate that applies with color.
        shade: the color that it is drawn in.
        exceeded: for an allowance, what happens when it does not suffice; else `at cost`.
        basis: what moves the line; by area, length and volume `measured`, else `fixed`.
    """

    name: Word
    covers: tuple[Slug, ...] = Field(min_length=1)
    share: ShareField | None = None
    share_of: tuple[Slug, ...] = ()
    cutting: ShareField | None = None
    travel: Travel | None = None
    of: EdgeKind | None = None
    applies: Applies = Applies.ALWAYS
    uses: tuple[Use, ...] = ()
    reinforcement: Slug | None = None
    season: Season | None = None
    color: ColorHow | None = None
    shade: ColorField | None = None
    exceeded: Exceeded | None = None
    basis: Basis | None = None

    @model_validator(mode="after")
    def _share_of_what(self) -> Self:
        if bool(self.share) != bool(self.share_of):
            said = "a share goes with `share_of`; type them like `share: 2 %`, `share_of: [travel]`"
            raise PydanticCustomError("share-of", said)
        return self

    def _forms(self) -> Mapping[str, object]:
        return {**super()._forms(), "share": self.share}


class SteelKind(StrEnum):
    """What kind of reinforcement it is, for the drawing of the section."""

    WIRE = "wire"
    BAR = "bar"
    FIBER = "fiber"
    NONE = "none"


class Reinforcement(Model):
    """A choice of steel or fiber, in words for the homeowner, and as it is ordered."""

    name: Word
    kind: SteelKind
    wire: Wire | None = None
    bar: Bar | None = None
    fiber: DosePerCuyd | None = None


class FinishVisit(Model):
    """One visit that a finish needs: how many working days, after how many days of waiting."""

    visit: Slug
    days: DaysField
    wait_days: DaysField = 0


class Finish(Price):
    """A surface, its price, the colors it takes, the crew and the visits it needs.

    Attributes:
        covers: the scope items that its price pays for beside the finish itself; the word `usual`
            stands for the `usual_cover` of the book.
        color: the color that its own price has in it.
        shade, second_shade: the color of the drawn swatch, and of its second tone.
        reseal: the price of one new coat of sealer, years later; if left out that of a rate for
            sealing alone, and unknown where there is none.
        crew: how many people come.
        area_an_hour: what they finish in an hour, for the weather day sheet.
        pigment: color in the concrete, as a share of the mass of cement.
        hardener: dry-shake color on the surface.
        release: powder that keeps stamps from sticking; the usual dose for stamps if left out.
        sealer_coats, sealer_coverage: as on the pail; the trade's usual if left out.
    """

    name: Word
    kind: FinishKind
    covers: CoversField = ()
    color: Word | None = None
    shade: ColorField | None = None
    second_shade: ColorField | None = None
    sealer: Sealer
    reseal: RateField | None = None
    pigment: ShareField | None = None
    hardener: DosePer100Sqft | None = None
    release: DosePer100Sqft | None = None
    sealer_coats: WholeField | None = None
    sealer_coverage: Coverage | None = None
    colors: tuple[Slug, ...] = ()
    crew: WholeField | None = None
    area_an_hour: AreaField | None = None
    brings: tuple[Slug, ...] = ()
    visits: tuple[FinishVisit, ...] = Field(min_length=1, max_length=20)


class Usual(Model):
    """What a placement of one use has unless the job says otherwise."""

    thickness: LengthField
    base: LengthField
    reinforcement: Slug


class Mix(Model):
    """The concrete that is ordered."""

    strength_psi: WholeField
    air: Word
    description: Word
    cement: DosePerCuyd | None = None


class Order(Model):
    """How concrete and what goes with it are ordered.

    Attributes:
        allowance: share added for spill and loss.
        round_up_to: the step that the plant sells by.
        uneven_base: depth added over the whole slab for a base that is not dead flat.
        truck_load: most that one truck brings; the usual full load if left out.
        short_load: a load so small that the plant charges for it.
        curing_coverage: of the curing compound; none is ordered if left out.
        bond_breaker: width of the sheet laid over the pool beam; none if left out.
    """

    allowance: ShareField
    round_up_to: VolumeField
    uneven_base: LengthField | None = None
    truck_load: VolumeField | None = None
    short_load: ShortLoad | None = None
    curing_coverage: Coverage | None = None
    bond_breaker: LengthField | None = None


FINISH = "finish"
"""The scope item that every finish pays for."""
ALWAYS_ASKED_ABOUT = ("base", "slab", "reinforcement", "joints")
"""The scope items of any slab, whatever its finish: some price covers each."""
USUAL = "usual"
"""The word that stands for the book's `usual_cover` among what a finish covers."""


class RateBook(Model):
    """A rate book without its costs: this is what goes on to every later stage.

    Attributes:
        usual_cover: the scope items that `covers: usual` at a finish stands for.
    """

    valid_from: DateField
    minimum: AmountField | None = None
    order: Order
    mix: Mix
    base_material: Word
    usual: dict[Use, Usual]
    reinforcement: dict[Slug, Reinforcement]
    visits: dict[Slug, Word]
    usual_cover: tuple[Slug, ...] = ()
    rates: Mapping[Slug, BookRate] = Field(default_factory=dict)
    finishes: Mapping[Slug, Finish]
    access: dict[Slug, AccessMethod] = Field(default_factory=dict)

    def price_of(self, line_rate: str) -> Price | None:
        """Return the price of a rate or finish by its id; None for a line that pays for no work."""
        return self.rates.get(line_rate) or self.finishes.get(line_rate)

    def covered_by(self, finish: Finish) -> tuple[str, ...]:
        """Return the scope items that the price of a finish pays for, the finish itself first."""
        items = (self.usual_cover if one == USUAL else (one,) for one in finish.covers)
        return tuple(dict.fromkeys((FINISH, *(item for some in items for item in some))))

    def path_of(self, line_rate: str) -> DocumentPath:
        """Return where a rate or finish stands in the book."""
        return ("rates" if line_rate in self.rates else "finishes", line_rate)
