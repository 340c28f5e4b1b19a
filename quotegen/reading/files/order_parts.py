"""Parts of a rate book that say what is ordered: steel, fiber, short loads, ways of access."""

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType
from typing import NamedTuple

from quotegen.reading.fields.typed_fields import (
    LengthField,
    Model,
    SizeField,
    Slug,
    VolumeField,
    Word,
)


class MaterialId(StrEnum):
    """What is bought by the order list, and can be given a price."""

    CONCRETE = "concrete"
    STONE = "stone"
    WIRE = "wire"
    CHAIRS = "chairs"
    BAR = "bar"
    TIE_WIRE = "tie_wire"
    FIBER = "fiber"
    PIGMENT = "pigment"
    HARDENER = "hardener"
    RELEASE = "release"
    RETARDER = "retarder"
    CURING = "curing"
    COVER = "cover"
    SEALER_FILM = "sealer_film"
    SEALER_PENETRATING = "sealer_penetrating"
    GRIT = "grit"
    JOINT_FILLER = "joint_filler"
    BOND_BREAKER = "bond_breaker"
    MASTIC = "mastic"
    DOWELS = "dowels"


class Sold(NamedTuple):
    """How a material is sold, and what it is for.

    Attributes:
        units: in which the order list buys it.
        scope: the scope item whose lines pay for it.
    """

    units: tuple[str, ...]
    scope: str


SOLD: Mapping[MaterialId, Sold] = MappingProxyType({
    MaterialId.CONCRETE: Sold(("cu yd",), "slab"),
    MaterialId.STONE: Sold(("ton",), "base"),
    MaterialId.WIRE: Sold(("sheet", "roll"), "reinforcement"),
    MaterialId.CHAIRS: Sold(("each",), "reinforcement"),
    MaterialId.BAR: Sold(("bar",), "reinforcement"),
    MaterialId.TIE_WIRE: Sold(("lb",), "reinforcement"),
    MaterialId.FIBER: Sold(("lb",), "reinforcement"),
    MaterialId.PIGMENT: Sold(("lb",), "finish"),
    MaterialId.HARDENER: Sold(("lb",), "finish"),
    MaterialId.RELEASE: Sold(("lb",), "finish"),
    MaterialId.RETARDER: Sold(("gal",), "finish"),
    MaterialId.CURING: Sold(("gal",), "curing"),
    MaterialId.COVER: Sold(("sq ft",), "curing"),
    MaterialId.SEALER_FILM: Sold(("gal",), "sealing"),
    MaterialId.SEALER_PENETRATING: Sold(("gal",), "sealing"),
    MaterialId.GRIT: Sold(("lb",), "sealing"),
    MaterialId.JOINT_FILLER: Sold(("ft",), "isolation"),
    MaterialId.BOND_BREAKER: Sold(("ft",), "cast_edge"),
    MaterialId.MASTIC: Sold(("ft",), "cast_edge"),
    MaterialId.DOWELS: Sold(("each",), "forms"),
})  # fmt: skip
"""Everything that is bought by the order list. A row of the list names its material, and the cost
sheet counts what the row buys."""


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
