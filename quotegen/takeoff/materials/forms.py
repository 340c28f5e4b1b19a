"""Forms on the order list: boards and stakes to bring. They are used again, so no job buys them.

What they cost stands at the rate that pays for the forms.
"""

from collections.abc import Iterator
from fractions import Fraction

from quotegen.quantity import decimal_of, rounded
from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.materials.job_slabs import JobSlabs, material
from quotegen.takeoff.records import Material, PlacementTakeoff
from quotegen.takeoff.slab.edges import runs_along
from quotegen.working import given

_BOARD_RULE, _STAKE_RULE = "form_board_length", "form_stake_spacing"
_CURVED_RULE = "form_stake_spacing_curved"


def forms(slabs: JobSlabs) -> Iterator[Material]:
    """Yield boards for straight and for curved edges, and the stakes behind them."""
    for spec, measured in slabs.each():
        straight_ft, curved_ft = formed_ft(measured)
        depth = given("Depth", rounded(spec.thickness.inches, 4), "in")
        straight = given("Straight formed edge", decimal_of(straight_ft), "ft")
        curved = given("Curved formed edge", decimal_of(curved_ft), "ft")
        if straight_ft:
            yield material(
                "form_boards",
                spec,
                straight_ft / slabs.rules.exact(_BOARD_RULE, slabs.on),
                "board",
                formula="straight formed edge over the length of a board; as deep as the slab",
                inputs=(straight, slabs.rule(_BOARD_RULE, "Length of a board"), depth),
                rules=(_BOARD_RULE,),
            )
        if curved_ft:
            yield material(
                "form_bender",
                spec,
                curved_ft,
                "ft",
                formula="length of the curved formed edge; as deep as the slab",
                inputs=(curved, depth),
            )
        if straight_ft or curved_ft:
            apart, closer = (
                slabs.rules.exact(one, slabs.on) for one in (_STAKE_RULE, _CURVED_RULE)
            )
            yield material(
                "form_stakes",
                spec,
                straight_ft / apart + curved_ft / closer,
                "each",
                formula="each formed edge over the spacing of its stakes",
                inputs=(
                    *((straight, slabs.rule(_STAKE_RULE, "Spacing")) if straight_ft else ()),
                    *(
                        (curved, slabs.rule(_CURVED_RULE, "Spacing on a curve"))
                        if curved_ft
                        else ()
                    ),
                ),
                rules=(_STAKE_RULE, _CURVED_RULE),
            )


def formed_ft(measured: PlacementTakeoff) -> tuple[Fraction, Fraction]:
    """Return how much of the formed edge is straight, and how much is curved, in feet.

    Where the length was typed on site, what the plan has of curves is taken off it.
    """
    formed = Fraction(measured.edges_ft[EdgeKind.FORMED])
    runs = runs_along(measured.edges, EdgeKind.FORMED)
    drawn = sum((Fraction(run.length_ft) for run in runs if run.is_curved), Fraction(0))
    if all(run.is_curved for run in runs):
        return Fraction(0), formed
    curved = min(Fraction(rounded(drawn, 1)), formed)
    return formed - curved, curved
