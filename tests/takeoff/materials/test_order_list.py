"""The order list: each material follows from the takeoff, and its working works out again."""

from decimal import Decimal
from pathlib import Path

import pytest

from tests.takeoff.site_world import HEAD, by_id, figured
from tests.world import EXAMPLES


def test_a_deck_of_928_sqft(tmp_path: Path):
    """44 x 30 ft less a pool of 28 x 14 ft: every material from 928 sq ft and its edges."""
    found = by_id(figured(tmp_path))
    bought = {name: (str(m.buy), m.buy_unit) for name, m in found.items()}
    assert bought["concrete"] == ("12.5", "cu yd")  # (928 x 4 + 928 x 1/8) / 324 x 1.05, up
    assert bought["truck_loads"] == ("2", "load")
    assert bought["short_load"] == ("2.5", "cu yd")
    assert found["base_tons"].needed == Decimal("23.96")  # (928 + 104 / 2) x 4 / 324 x 1.98
    assert bought["base_tons"] == ("26", "ton")  # and 5 %: 25.16
    assert bought["base_loose"] == ("19", "cu yd")  # 26 / 1.4 = 18.57
    assert found["wire"].needed == Decimal("22.95")  # 928 / (9-1/3 x 4-1/3)
    assert bought["wire"] == ("25", "sheet")  # and 5 % for cuts: 24.10
    assert found["wire_weight"].needed == Decimal("525.00")  # 25 x 50 x 42 / 100
    assert found["pigment"].needed == Decimal("211.50")  # 3 % x 564 x 12.5
    assert found["release"].needed == Decimal("32.48")  # 3.5 on 100 sq ft
    assert bought["cover"] == ("1021", "sq ft")  # and the 10 % of the book for laps: 1,020.8
    # a compound would lie under the film of sealer
    assert "curing" not in found
    assert found["sealer"].needed == Decimal("12.37")  # two coats at 150
    assert found["grit"].needed == Decimal("2.47")  # 0.2 lb in each of 12.37 gal, at a pool
    assert found["joint_filler"].needed == Decimal("128.00")  # 44 at the house, 84 at the pool
    assert "bond_breaker" not in found


def test_the_pool_edge_is_cast_or_ends_at_a_coping(tmp_path: Path):
    """A cast edge of 84 ft has sheet and mastic and no filler there; a coping only filler."""
    cast = by_id(figured(tmp_path, "    include: {cast_edge: yes}\n"))
    assert cast["joint_filler"].needed == Decimal("44.00")
    assert cast["bond_breaker"].needed == cast["mastic"].needed == Decimal("84.00")
    coping = by_id(figured(tmp_path))
    assert coping["joint_filler"].needed == Decimal("128.00")
    assert not {"bond_breaker", "mastic"} & set(coping)


@pytest.mark.parametrize(
    ("along", "strip"),
    [
        ("outer edge", 2 * (44 + 30) - 4),  # 1 ft wide, each corner once
        ("house edge", 44),
        ("pool edge", 2 * (28 + 14) + 4),  # outside the pool, so corners are added
        ("formed edge", 30 + 44 + 30 - 2),
    ],
)
def test_a_deep_edge_goes_into_volume_and_order(tmp_path: Path, along: str, strip: int):
    """A strip 1 ft wide and 8 in deeper than the slab adds area x 8 / 324 cu yd."""
    deep = f"    thickened_edge: {{along: {along}, width: 1 ft, depth: 12 in}}\n"
    plain, deeper = figured(tmp_path), figured(tmp_path, deep)
    assert plain.results is not None
    assert deeper.results is not None
    more = deeper.results.takeoff.volume_cuyd - plain.results.takeoff.volume_cuyd
    assert abs(more - Decimal(strip) * 8 / 324) < Decimal("1e-12")
    assert deeper.results.takeoff.order_cuyd > plain.results.takeoff.order_cuyd
    part = by_id(deeper)["thickened_edge"]
    assert part.buy == 0
    assert part.buy_unit == ""


def test_a_taper_counts_half(tmp_path: Path):
    """A taper of 1 ft is the average of the strip at 1 ft and at 2 ft."""
    deep = "    turned_down_edge: {along: house edge, width: 1 ft, depth: 12 in, taper: 1 ft}\n"
    part = by_id(figured(tmp_path, deep))["turned_down_edge"]
    assert part.working.inputs[0].value == Decimal("66.00")


def test_fiber_and_bar_follow_their_choice(tmp_path: Path):
    """Fiber is dose x order; bars are both ways over spacing, laps off."""
    fiber = by_id(figured(tmp_path, "    reinforcement: fiber\n"))
    assert fiber["fiber"].needed == Decimal("18.75")  # 1.5 x 12.5
    assert "wire" not in fiber
    bars = by_id(figured(tmp_path, "    reinforcement: bar_grid\n"))
    assert bars["bar"].needed == Decimal("67.49")  # 2 x 928 / 1.5 / (20 - 20/12)
    assert bars["bar"].buy == 71  # and 5 %: 70.86
    assert bars["bar_weight"].needed == Decimal("948.56")  # 71 x 20 x 0.668
    assert bars["bar_supports"].buy == 58  # 928 / 4 / 4
    assert bars["tie_wire"].buy == 5  # 10 lb to the ton: 4.74


def test_what_the_book_says_of_waste_holds(tmp_path: Path):
    """A typed waste takes the place of the usual one, also none at all; chairs have none."""
    book = (EXAMPLES / "rate-book.yaml").read_text(encoding="utf-8")
    typed = book.replace("$10.80 / sheet}", "$10.80 / sheet, waste: 20 %}")
    typed = typed.replace("$27.50 / ton}", "$27.50 / ton, waste: 0 %}")
    found = by_id(figured(tmp_path, rate_book=typed))
    assert found["wire"].buy == 28  # 22.95 x 1.2 = 27.54
    assert found["base_tons"].buy == 24  # 23.96
    assert (found["wire_supports"].waste, found["base_tons"].waste) == (None, None)


def test_a_curve_wastes_more_of_stiff_sheets(tmp_path: Path):
    """One curved edge, and the sheets of that slab have 15 % on top; stone and filler keep 5 %."""
    round_end = "    add: [{circle: {radius: 12 ft}}]\n"
    found = by_id(figured(tmp_path, head=HEAD.split("    add:")[0] + round_end, falls=""))
    wastes = [found[one].waste for one in ("wire", "base_tons")]
    assert [str(waste.value) for waste in wastes if waste] == ["15", "5"]
