"""Other bids for the same job, as far as the homeowner has told of them. Private."""

from enum import StrEnum

from pydantic import Field

from quotegen.reading.fields.typed_fields import (
    AmountField,
    DateField,
    LengthField,
    Model,
    Slug,
    Text,
    WholeField,
    Word,
)


class Says(StrEnum):
    """What another bid says of a scope item."""

    INCLUDED = "included"
    NOT_INCLUDED = "not included"
    NOT_STATED = "not stated"


class BidNumbers(Model):
    """The numbers of another bid, as far as they are known.

    Attributes:
        reinforcement: its id in our rate book where it is one that we have; else in words.
    """

    thickness: LengthField | None = None
    base: LengthField | None = None
    reinforcement: Word | None = None
    strength_psi: WholeField | None = None
    sealer_coats: WholeField | None = None


class OtherBid(Model):
    """One other bid.

    Attributes:
        id: a word of your own for it; it is on your sheets alone.
        total: what it asks.
        finish: the finish that it is for, where that is not the one of the quote.
        scope: what it says of scope items; one that is left out here is `not stated`.
    """

    id: Slug
    total: AmountField
    date: DateField | None = None
    finish: Slug | None = None
    scope: dict[Slug, Says] = Field(default_factory=dict)
    numbers: BidNumbers = Field(default_factory=BidNumbers)
    note: Text | None = None
