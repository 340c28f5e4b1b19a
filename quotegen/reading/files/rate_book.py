"""The rate book without its costs: prices, finishes, and what is usual for each use."""

import re
from collections.abc import Collection, Mapping
from decimal import Decimal
from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from quotegen.quantity import decimal_from_text
from quotegen.reading.fields.typed_fields import (
    AmountField,
    AreaField,
    ColorField,
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
    needed,
)
from quotegen.reading.files.job import Use
from quotegen.reading.files.order_parts import AccessMethod, Bar, ShortLoad, Wire
from quotegen.reading.files.price import Price
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.yaml.located import DocumentPath
from quotegen.trade.curing import Cure


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


class Pattern(StrEnum):
    """What a stamped pattern shows, for its drawings."""

    CUT_STONE = "cut stone"
    BRICK = "brick"
    PLANKS = "planks"


class Sealer(StrEnum):
    """The kinds of sealer, for upkeep and care."""

    NONE = "none"
    PENETRATING = "penetrating"
    FILM = "film"


class Joints(StrEnum):
    """How the joints of a finish are made: with a saw, or with a tool while the slab is soft."""

    SAWN = "sawn"
    TOOLED = "tooled"


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
        pattern: what the stamps of a stamped pattern show; cut stone if left out.
        color: the color that its own price has in it.
        shade, second_shade: the color of the drawn swatch, and of its second tone.
        reseal: the price of one new coat of sealer, years later; if left out that of a rate for
            sealing alone, and unknown where there is none.
        crew: how many people come.
        area_an_hour: what they finish in an hour, for the weather day sheet.
        pigment: color in the concrete, as a share of the mass of cement.
        hardener: dry-shake color on the surface.
        release: powder that keeps stamps from sticking; the usual dose for stamps if left out.
        cure: how it is kept from drying; what is usual under its sealer if left out.
        joints: how they are made.
        grit: whether grit is mixed into a film; on a pool deck it is if left out.
        sealer_coats, sealer_coverage: as on the pail; the trade's usual if left out.
    """

    name: Word
    kind: FinishKind = needed("broom", "or exposed_aggregate, stamped_texture, stamped_pattern")
    pattern: Pattern = Pattern.CUT_STONE
    covers: CoversField = ()
    color: Word | None = None
    shade: ColorField | None = None
    second_shade: ColorField | None = None
    sealer: Sealer = needed("penetrating", "or film, or none; upkeep and care follow from it")
    cure: Cure | None = None
    joints: Joints = Joints.SAWN
    grit: YesNoField | None = None
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
    visits: Annotated[tuple[FinishVisit, ...], Field(min_length=1, max_length=20)] = needed(
        "[{visit: form, days: 1}, {visit: pour, days: 1}, {visit: saw, days: 1}]",
        "a quote promises these days on site, each after its `wait_days`",
    )


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

    @property
    def air_percents(self) -> tuple[Decimal, ...]:
        """Each number in the words of the air: both ends of `5 to 7 %`."""
        return tuple(map(decimal_from_text, re.findall(r"\d+(?:\.\d+)?", self.air)))


class Order(Model):
    """How concrete and what goes with it are ordered.

    Attributes:
        allowance: share added for spill and loss.
        round_up_to: the step that the plant sells by.
        uneven_base: depth added over the whole slab for a base that is not dead flat.
        truck_load: most that one truck brings; the usual full load if left out.
        short_load: a load so small that the plant charges for it.
        curing_coverage: of the curing compound; the usual one if left out.
        bond_breaker: width of the sheet laid over the pool beam; none if left out.
        curing_coverage: of the curing compound; none is ordered if left out.
        bond_breaker: width of the sheet laid over the beam where the edge of a pool is cast.
    """

    allowance: ShareField
    round_up_to: VolumeField
    uneven_base: LengthField | None = None
    truck_load: VolumeField | None = None
    short_load: ShortLoad | None = None
    curing_coverage: Coverage | None = None
    bond_breaker: LengthField | None = None


ORDER_IS_NEEDED = needed(
    "{allowance: 7 %, round_up_to: 0.25 cu yd}",
    "you order that much more than the slab holds, in the plant's steps",
)
FINISH = "finish"
"""The scope item that every finish pays for."""
FORM, POUR, SAW = "form", "pour", "saw"
"""The visits of every book on which the concrete comes, and on which joints are cut."""
CAST_EDGE = "cast_edge"
SEALING, SEAL = "sealing", "seal"
"""The scope item of the sealer, and the visit on which it is put on."""
ALWAYS_ASKED_ABOUT = ("base", "slab", "reinforcement", "joints")
"""The scope items of any slab, whatever its finish: some price covers each."""
USUAL = "usual"
"""The word that stands for the book's `usual_cover` among what a finish covers."""


class RateBook(Model):
    """A rate book without its costs: this is what goes on to every later stage.

    Attributes:
        usual_cover: the scope items that `covers: usual` at a finish stands for.
    """

    valid_from: DateField = needed("2026-01-12", "the first day of quotes at these prices")
    minimum: AmountField | None = None
    order: Order = ORDER_IS_NEEDED
    mix: Mix = needed(
        '{strength_psi: 4500, air: 6 %, description: "ready-mixed, with air for frost"}',
        "every quote promises that strength and that air",
    )
    base_material: Word = needed("crushed stone", "every quote promises it under the slab")
    usual: dict[Use, Usual] = needed(
        "{patio: {thickness: 4 in, base: 4 in, reinforcement: mesh}}",
        "what a quote promises for each use, unless the job says otherwise",
    )
    reinforcement: dict[Slug, Reinforcement] = needed(
        '{mesh: {kind: wire, name: "6 x 6 W2.9 wire sheets on chairs"}}',
        "what stands in the quote where a placement has it",
    )
    visits: dict[Slug, Word] = needed(
        "{form: Set the forms, pour: Pour and finish, saw: Cut the joints, seal: Seal}",
        "the trips that dates are made of, in their order",
    )
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

    def pays_for(self, item: str, asked: Collection[str]) -> bool:
        """Tell whether a rate that is always used, or one of those asked for, covers an item."""
        return any(
            item in rate.covers and (rate.applies is Applies.ALWAYS or rate_id in asked)
            for rate_id, rate in self.rates.items()
        )

    def path_of(self, line_rate: str) -> DocumentPath:
        """Return where a rate or finish stands in the book."""
        return ("rates" if line_rate in self.rates else "finishes", line_rate)
