"""Laws of the takeoff that hold for every slab."""

import math
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quotegen.quantity import Length
from quotegen.reading.files.shapes import EdgeKind, Shape
from quotegen.takeoff.shapes.overlay import polygons
from quotegen.takeoff.shapes.path import signed_area_sqft
from quotegen.takeoff.slab.slab import Slab
from quotegen.trade.concrete import net_volume_cuyd, order_cuyd
from quotegen.trade.rules import load_rules
from tests.property import strategies as made
from tests.property.effort import one_in
from tests.takeoff.plans import DAY, Typed, edges, feet, placement, slab, takeoff

NOISE = 1e-4  # sq ft or ft: corners typed to nine places, and the overlay grid of 1e-6 ft
STRAY_FT = 2e-4  # how far the polygon of the checks strays from an arc at most
SHAPES = made.corners()


def _same(first: Slab, second: Slab) -> None:
    assert first.area_sqft == pytest.approx(second.area_sqft, abs=NOISE)
    assert edges(first) == pytest.approx(edges(second), abs=NOISE)


class TestASlabIsWhereverItLies:
    """Turning, shifting or another order of corners changes no area."""

    @given(SHAPES, made.TURNS_DEG, made.SHIFTS_FT)
    def test_turn_and_shift(self, corners: made.Corners, turn: int, at: tuple[float, float]):
        """A slab that is turned and moved keeps its area and every length of edge."""
        typed = made.as_outline(corners)
        _same(slab(typed), slab({**typed, "turn": f"{turn} deg", "at": feet(at)}))

    @given(SHAPES)
    def test_direction(self, corners: made.Corners):
        """It does not matter which way round the corners were walked."""
        _same(slab(made.as_outline(corners)), slab(made.as_outline(made.reversed_order(corners))))

    @given(SHAPES, st.integers(min_value=0, max_value=7))
    def test_first_corner(self, corners: made.Corners, first: int):
        """It does not matter at which corner the tape began."""
        _same(slab(made.as_outline(corners)), slab(made.as_outline(made.begun_at(corners, first))))

    @given(SHAPES)
    def test_mirror(self, corners: made.Corners):
        """In a mirror what bows out still bows out."""
        _same(slab(made.as_outline(corners)), slab(made.as_outline(made.mirrored(corners))))

    @given(SHAPES)
    def test_bows(self, corners: made.Corners):
        """With every arc bowed the other way, the mean of both areas is that of straight sides."""
        flat = tuple(made.Corner(c.at, 0.0, "out") for c in corners)
        one, other = (slab(made.as_outline(c)) for c in (corners, made.other_bows(corners)))
        mean = (one.area_sqft + other.area_sqft) / 2
        assert mean == pytest.approx(slab(made.as_outline(flat)).area_sqft, abs=NOISE)
        assert edges(one) == pytest.approx(edges(other), abs=NOISE)


class TestTheBoundaryEnclosesTheArea:
    """The exact boundary encloses what was added less what was taken away."""

    @one_in(3)
    @given(SHAPES, made.TURNS_DEG, st.booleans())
    def test_with_a_pool(self, corners: made.Corners, turn: int, oval: bool):
        """Outer rings less inner rings is the area, and the library nearly agrees."""
        pool = {"ellipse": "5 ft x 3 ft"} if oval else {"circle": {"radius": "2 ft"}}
        measured = slab(
            made.as_outline(corners), take_away=({**pool, "turn": f"{turn} deg", "is": "pool"},)
        )
        rings = (*measured.boundary.outer, *measured.boundary.inner)
        enclosed = math.fsum(signed_area_sqft(ring) for ring in rings)
        assert enclosed == pytest.approx(measured.area_sqft, abs=NOISE)
        library = sum(part.area for part in polygons(measured.region))
        found = edges(measured)
        both = found[EdgeKind.OUTER] + found[EdgeKind.INNER]
        assert library == pytest.approx(measured.area_sqft, abs=STRAY_FT * both)
        assert found[EdgeKind.STRAIGHT] + found[EdgeKind.CURVED] == pytest.approx(both)


class TestASplitSlabIsTheSameSlab:
    """Splitting a slab keeps its area and volume."""

    @given(made.SIDES_FT, made.SIDES_FT, st.fractions(Fraction(1, 10), Fraction(9, 10)),
           made.TURNS_DEG)  # fmt: skip
    def test_two_pieces(self, length_ft: float, width_ft: float, share: Fraction, turn: int):
        """A rectangle in two pieces keeps its area and outer edge; the cut is no edge."""
        whole = {"rectangle": f"{length_ft} ft x {width_ft} ft", "turn": f"{turn} deg"}
        cut_ft = length_ft * share.numerator / share.denominator
        _same(slab(whole), slab(*_halves(length_ft, width_ft, cut_ft, turn)))

    @one_in(3)
    @given(made.SIDES_FT, made.SIDES_FT, st.fractions(Fraction(1, 10), Fraction(9, 10)))
    def test_two_placements(self, length_ft: float, width_ft: float, share: Fraction):
        """A placement in two, cut at 0.1 sq ft so that nothing is rounded, keeps its volume."""
        tenths = math.floor(length_ft * width_ft * 10)
        first = max(1, math.floor(tenths * share))
        strips = [_strip(0, first), _strip(first / 40, tenths - first)]
        whole = takeoff(placement(_strip(0, tenths)))
        parts = takeoff(
            *(placement(strip, name=f"part{n}", number=n) for n, strip in enumerate(strips))
        )
        assert sum(part.area_sqft for part in parts.placements) == whole.placements[0].area_sqft
        assert parts.volume_cuyd == whole.volume_cuyd
        assert parts.order_cuyd == whole.order_cuyd

    @given(st.lists(st.tuples(made.SIDES_FT, made.SIDES_FT), min_size=2, max_size=5),
           st.integers(min_value=0, max_value=3_600))  # fmt: skip
    def test_pieces_typed_to_a_sixteenth(self, sizes: list[tuple[float, float]], tenths: int):
        """A turned row of pieces has no edge where they meet, though a tape's marks miss a hair."""
        angle = math.radians(tenths / 10)
        pieces: list[Typed] = []
        along_ft = 0.0
        for length_ft, width_ft in sizes:
            place = [_to_a_sixteenth(along_ft * part(angle)) for part in (math.cos, math.sin)]
            turn = f"{tenths / 10} deg"
            size = f"{length_ft} ft x {width_ft} ft"
            pieces.append({"rectangle": size, "at": place, "turn": turn})
            along_ft += length_ft
        widths = [0.0, *(width_ft for _, width_ft in sizes), 0.0]
        round_it = 2 * along_ft + sum(abs(a - b) for a, b in pairwise(widths))
        assert edges(slab(*pieces))[EdgeKind.OUTER] == pytest.approx(round_it, abs=0.05)


def _to_a_sixteenth(length_ft: float) -> str:
    sixteenths = round(length_ft * 12 * 16)
    whole, part = divmod(abs(sixteenths), 16)
    return f"{'-' if sixteenths < 0 else ''}{whole} {part}/16 in"


def _strip(from_ft: float, tenths: int) -> Typed:
    return {"rectangle": f"{tenths / 40:.3f} ft x 4 ft", "at": (f"{from_ft:.3f} ft", "0")}


def _halves(length_ft: float, width_ft: float, cut_ft: float, turn: int) -> tuple[Typed, ...]:
    angle = math.radians(turn)
    place = feet((cut_ft * math.cos(angle), cut_ft * math.sin(angle)))
    turned = {"turn": f"{turn} deg"}
    return (
        {"rectangle": f"{cut_ft:.9f} ft x {width_ft} ft", **turned},
        {"rectangle": f"{length_ft - cut_ft:.9f} ft x {width_ft} ft", "at": place, **turned},
    )


NET = st.fractions(min_value=Fraction(1, 100), max_value=200, max_denominator=10_000)
ALLOWANCES = st.fractions(min_value=0, max_value=Fraction(1, 4), max_denominator=200)
STEPS = st.sampled_from([Fraction(1, 4), Fraction(1, 2), Fraction(1), Fraction(1, 10)])


class TestTheOrderCoversTheSlab:
    """Concrete is rounded up once, after the allowance."""

    @given(NET, ALLOWANCES, STEPS)
    def test_enough_and_not_a_step_too_much(
        self, net: Fraction, allowance: Fraction, step: Fraction
    ):
        """An order is never under what is needed, and less than one step above it."""
        ordered = order_cuyd(net, allowance, step)
        needed = net * (1 + allowance)
        assert net <= needed <= ordered < needed + step
        assert ordered % step == 0

    @given(st.integers(min_value=1, max_value=400), STEPS)
    def test_a_quantity_on_a_step_stays(self, steps: int, step: Fraction):
        """What is already on a quarter must not jump to the next one."""
        assert order_cuyd(steps * step, Fraction(0), step) == steps * step

    @one_in(3)
    @given(st.integers(min_value=1, max_value=100))
    def test_a_slab_on_a_quarter_stays(self, quarters: int):
        """A slab that takes whole quarters of a yard is ordered as exactly those."""
        strip = {"rectangle": f"{quarters * 4.5} ft x 4.5 ft"}
        found = takeoff(placement(strip), allowance="0 %")
        area = found.placements[0].area_sqft
        net = net_volume_cuyd(area, Fraction(4), load_rules(), DAY)
        assert 0 <= found.order_cuyd - found.volume_cuyd < Fraction(1, 4)
        assert (net * 4 == quarters) == (found.order_cuyd * 4 == quarters == net * 4)


class TestATypedLengthIsKept:
    """A number is read from its text, so that nothing is lost in a float."""

    @given(st.integers(min_value=1, max_value=16 * 12 * 60))
    def test_sixteenths(self, sixteenths: int):
        """A side typed to a sixteenth of an inch is that long on the plan."""
        feet_exact = Fraction(sixteenths, 16 * 12)
        inches, part = divmod(sixteenths, 16)
        typed = Shape.model_validate({"rectangle": f"{inches} {part}/16 in x 40 ft"})
        assert typed.rectangle is not None
        assert typed.rectangle.length == Length(feet_exact)
