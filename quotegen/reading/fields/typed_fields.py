"""The typed fields of the input files: how each is checked, and what an editor is told of it."""

import re
from collections.abc import Callable
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Annotated, Any, TypeVar

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    PlainValidator,
    StringConstraints,
    WithJsonSchema,
)
from pydantic_core import PydanticCustomError

from quotegen.money import ZERO
from quotegen.quantity import Length, decimal_from_text
from quotegen.reading.fields import road_fields as road
from quotegen.reading.fields import text_fields as text

T = TypeVar("T")
M = TypeVar("M", bound=BaseModel)


class Model(BaseModel):
    """A part of an input file: frozen, and without any key that it does not name."""

    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=True, defer_build=True)


def cut_to(model: type[M], whole: BaseModel, **inner: object) -> M:
    """Return an object of a model that holds the fields of that model and nothing more.

    Args:
        model: the public one.
        whole: of a model derived from it, which adds private keys.
        inner: the fields whose own parts add private keys, already cut.
    """
    own = {name: getattr(whole, name) for name in model.model_fields}
    return model.model_construct(**(own | inner))


def needed(lines: str, meaning: str) -> Any:
    """Return an obligatory field whose message, when it is missing, carries the lines to paste.

    Args:
        lines: a usual value as it is typed, on one line.
        meaning: what typing it promises, or does.
    """
    return Field(examples=[lines], description=meaning)


def _from_text(parser: Callable[[str], T]) -> PlainValidator:
    def validate(value: Any) -> T:
        if not isinstance(value, str):
            raise PydanticCustomError(
                "not-one-value", "a list or a mapping stands here; one value belongs here"
            )
        if not value.strip():
            raise PydanticCustomError("no-value", "there is no value after the colon")
        return parser(text.number_text(value))

    return PlainValidator(validate)


def _schema(description: str, *examples: str) -> WithJsonSchema:
    return WithJsonSchema(
        {"type": ["string", "number"], "description": description, "examples": list(examples)}
    )


def typed_as(
    parser: Callable[[str], T], description: str, *examples: str
) -> tuple[PlainValidator, WithJsonSchema]:
    """Return what makes a field of text: how it is read, and what an editor is told of it."""
    return _from_text(parser), _schema(description, *examples)


EMAIL = r"^[A-Za-z0-9_%+-]+(\.[A-Za-z0-9_%+-]+)*@[A-Za-z0-9-]+(\.[A-Za-z0-9-]+)+$"

Text = Annotated[
    str, StringConstraints(strip_whitespace=True, min_length=1), AfterValidator(text.shown_text)
]
Word = Annotated[Text, AfterValidator(lambda words: " ".join(words.split()))]
SLUG = r"^[a-z][a-z0-9_]*$"
Slug = Annotated[str, StringConstraints(pattern=SLUG)]
PickedId = Annotated[
    str,
    StringConstraints(strip_whitespace=True, min_length=1),
    AfterValidator(text.number_text),
    WithJsonSchema({"type": "string", "pattern": SLUG}),
]
"""The name of what stands elsewhere: one that is not there is answered with those that are."""


def one_or_more(item: Any) -> BeforeValidator:
    """Return what reads a single word as a list of one, and tells an editor so."""
    return BeforeValidator(
        lambda typed: (typed,) if isinstance(typed, str) else typed,
        json_schema_input_type=item | tuple[item, ...],
    )


CoversField = Annotated[tuple[Slug, ...], one_or_more(Slug)]
"""A list of scope items, or a single word."""
EmailField = Annotated[str, StringConstraints(pattern=EMAIL)]
ColorField = Annotated[str, StringConstraints(pattern=r"^#[0-9a-fA-F]{6}$")]
LANGUAGE, STATE = r"^[a-z]{2}$", r"^[A-Z]{2}$"
LanguageCode = Annotated[str, StringConstraints(pattern=LANGUAGE)]
StateCode = Annotated[str, StringConstraints(pattern=STATE)]
QuoteNumber = Annotated[
    str,
    StringConstraints(pattern=r"^[A-Za-z0-9][A-Za-z0-9_.-]{0,30}$"),
    AfterValidator(text.folder_name),
]

AnyLength = Annotated[
    Length,
    _from_text(text.parse_length),
    _schema("A length, perhaps negative", "24 ft 6 in", "7.5 m"),
]
LengthField = Annotated[
    Length,
    _from_text(text.parse_positive_length),
    _schema("A length as on a tape", "24 ft 6 in", "24' 6-1/2\"", "7.5 m"),
]
PointField = tuple[AnyLength, AnyLength]
SizeField = Annotated[
    text.Size, _from_text(text.parse_size), _schema("Two lengths", "24 ft x 16 ft")
]
RateField = Annotated[
    text.Rate, _from_text(text.parse_rate), _schema("A price for one", "$9.50 / sq ft", "$210 each")
]
AmountField = Annotated[Decimal, _from_text(text.parse_amount), _schema("A sum of money", "$2,400")]
CountField = Annotated[
    text.Count,
    _from_text(text.parse_count),
    _schema("yes (as the takeoff gives it) or a quantity", "yes", "2", "18 ft"),
]
ShareField = Annotated[Fraction, _from_text(text.parse_share), _schema("A share", "7%")]
AngleField = Annotated[Fraction, _from_text(text.parse_angle_deg), _schema("An angle", "90 deg")]
VolumeField = Annotated[Fraction, _from_text(text.parse_cuyd), _schema("A volume", "0.25 cu yd")]
SlopeField = Annotated[
    Length, _from_text(text.parse_slope), _schema("A fall", "1/4 in per ft", "2%")
]
DateField = Annotated[
    date,
    _from_text(text.parse_date),
    WithJsonSchema({"type": "string", "format": "date", "examples": ["2026-05-14"]}),
]
DistanceField = Annotated[
    road.Road, _from_text(road.parse_distance), _schema("A distance by road, one way", "14 miles")
]
DriveTimeField = Annotated[
    road.Road, _from_text(road.parse_drive_time), _schema("A time on the road, one way", "35 min")
]
RoadField = Annotated[
    road.Road, _from_text(road.parse_road), _schema("A distance or a time", "10 miles", "30 min")
]
DayOfYearField = Annotated[
    text.DayOfYear, _from_text(text.parse_day_of_year), _schema("Month and day", "11-15")
]
WholeField = Annotated[int, _from_text(text.parse_whole), _schema("A whole number", "3")]
DaysField = Annotated[int, _from_text(text.parse_days), _schema("A number of days", "28")]
YesNoField = Annotated[
    bool, _from_text(text.parse_yes_no), WithJsonSchema({"enum": ["yes", "no", True, False]})
]
AreaField = Annotated[
    Fraction,
    _from_text(text.parse_area_sqft),
    _schema("An area as worked out on site", "1,071.4 sq ft", "96.52 m2"),
]
SignedAmountField = Annotated[
    Decimal,
    _from_text(text.parse_signed_amount),
    _schema("A sum that is added or taken off", "$320", "-$150"),
]


def _dose(unit: str, example: str) -> tuple[PlainValidator, WithJsonSchema]:
    return typed_as(_parser(unit, example), f"A number of {unit}", example)


def _parser(unit: str, example: str) -> Callable[[str], Decimal]:
    words = r"\s*".join(re.escape(word) for word in unit.split())
    form = re.compile(rf"(?P<number>\d{{1,5}}(\.\d{{1,4}})?)\s*{words}")

    def parse(typed: str) -> Decimal:
        match = form.fullmatch(" ".join(typed.lower().split()))
        amount = decimal_from_text(match["number"]) if match else ZERO
        if amount <= 0:
            said = f"`{text.cut_short(typed)}` is not a dose; type it like {example}"
            raise PydanticCustomError("not-a-dose", said)
        return amount

    return parse


DosePerCuyd = Annotated[Decimal, *_dose("lb / cu yd", "1.5 lb / cu yd")]
DosePer100Sqft = Annotated[Decimal, *_dose("lb / 100 sq ft", "60 lb / 100 sq ft")]
Coverage = Annotated[Decimal, *_dose("sq ft / gal", "200 sq ft / gal")]
