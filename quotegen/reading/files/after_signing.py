"""What happens to a job after the quote is sent: accepted, paid, measured, changed, completed."""

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from quotegen.reading.fields.typed_fields import (
    AmountField,
    AreaField,
    CountField,
    DateField,
    DaysField,
    LengthField,
    Model,
    PickedId,
    SignedAmountField,
    Slug,
    Text,
    VolumeField,
    WholeField,
    Word,
)
from quotegen.reading.files.costs import HoursField
from quotegen.reading.files.shapes import EdgeKind, Shape


class Actual(Model):
    """What a job really took.

    Attributes:
        done: the last day on site.
        hours: crew hours by rate or finish, as the rate book names them; also `set_up`,
            `clean_up` and `drive`.
        concrete: all that was delivered.
        days: days on site.
    """

    done: DateField
    hours: dict[Slug, HoursField] = Field(default_factory=dict)
    concrete: VolumeField | None = None
    days: WholeField | None = None
    note: Text | None = None


class Accepted(Model):
    """What the customer signed: when, with which finish and extras, and for which total.

    Attributes:
        revision: that was accepted, where it was issued; then its frozen files price it.
        total: that both signed; the files must still come to it.
    """

    date: DateField
    revision: WholeField | None = None
    finish: PickedId | None = None
    extras: tuple[PickedId, ...] = ()
    total: AmountField | None = None


class Paid(Model):
    """One payment that has come in: for which payment of the company's list, how much, when."""

    payment: PickedId
    date: DateField
    amount: AmountField


class MeasuredPlacement(Model):
    """One placement as it stands in the forms: shapes measured again, or its area and edges.

    Where an area is typed, an edge that is not typed stays as it was quoted.
    """

    add: tuple[Shape, ...] = ()
    take_away: tuple[Shape, ...] = ()
    area: AreaField | None = None
    edges: dict[EdgeKind, LengthField] = Field(default_factory=dict)

    @model_validator(mode="after")
    def _one_way(self) -> "MeasuredPlacement":
        if bool(self.add) == (self.area is not None):
            raise PydanticCustomError(
                "measured-one-way", "type either the shapes (`add`) or the `area`, and not both"
            )
        if self.add and self.edges:
            raise PydanticCustomError(
                "measured-edges-twice", "the shapes give the edges; leave `edges` out"
            )
        return self


class Measured(Model):
    """The remeasure: the takeoff repeated on the set forms.

    Attributes:
        total: that both signed after measuring, where it is typed.
    """

    date: DateField
    placements: dict[PickedId, MeasuredPlacement] = Field(min_length=1)
    total: AmountField | None = None


class Change(Model):
    """A change that was asked for after acceptance: what, and a sum or a rate of the book.

    Attributes:
        total: of the contract after it, as both signed it, where it is typed.
    """

    number: WholeField
    date: DateField
    what: Word
    asked_by: Word
    amount: SignedAmountField | None = None
    rate: PickedId | None = None
    quantity: CountField | None = None
    days: DaysField = 0
    total: AmountField | None = None

    @model_validator(mode="after")
    def _one_price(self) -> "Change":
        if (self.amount is None) == (self.rate is None):
            raise PydanticCustomError(
                "change-price", "a change needs either an `amount` or a `rate`, and not both"
            )
        if (self.rate is None) != (self.quantity is None):
            raise PydanticCustomError(
                "change-quantity", "`rate` and `quantity` belong together in a change"
            )
        return self


class Completed(Model):
    """The slab is handed over: its care counts from the days of the pour and of the sealer.

    Attributes:
        date: of the walk round the finished work.
        sealed: None where no sealer went on.
        sealer: what it says on the can, so that the next coat is of the same kind.
    """

    date: DateField
    poured: DateField
    sealed: DateField | None = None
    sealer: Word | None = None
