"""Parts of a rate book that say what is ordered: steel, fiber, short loads, ways of access."""

from enum import StrEnum

from quotegen.reading.fields.typed_fields import (
    LengthField,
    Model,
    SizeField,
    Slug,
    VolumeField,
    Word,
)


class Wire(Model):
    """Wire mesh as it is bought: in sheets or in rolls.

    Attributes:
        style: as ASTM A1064 names it, such as `6x6 W2.9`.
        sheet, roll: the size of one, whichever is bought.
        lap: how far neighbours overlap; one mesh and 2 in if left out.
    """

    style: Word
    sheet: SizeField | None = None
    roll: SizeField | None = None
    lap: LengthField | None = None


class Bar(Model):
    """Reinforcing bar as it is bought: its size, spacing each way, lap and stock length."""

    size: Word
    spacing: LengthField
    stock: LengthField
    lap: LengthField | None = None


class ShortLoad(Model):
    """A load under this size costs extra at the plant."""

    under: VolumeField


class AccessKind(StrEnum):
    """How concrete travels from the truck."""

    CHUTE = "chute"
    CONVEYOR = "conveyor"
    BARROW = "barrow"
    PUMP = "pump"


class AccessMethod(Model):
    """One way from the truck to the slab.

    Attributes:
        name: in words for paper.
        kind: a chute or a conveyor reaches straight; a barrow or a pump line goes round things.
        reach: how far from where the truck stands.
        rate: the rate of the book that pays for it, none where it costs nothing.
    """

    name: Word
    kind: AccessKind
    reach: LengthField
    rate: Slug | None = None
