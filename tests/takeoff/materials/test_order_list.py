"""The order list: each material follows from the takeoff, and its working works out again."""

from decimal import Decimal
from pathlib import Path

import pytest

from tests.takeoff.site_world import by_id, figured


def test_a_deck_of_928_sqft(tmp_path: Path):
    """44 x 30 ft less a pool of 28 x 14 ft: every material from 928 sq ft and its edges."""
    found = by_id(figured(tmp_path))
    bought = {name: (str(m.buy), m.buy_unit) for name, m in found.items()}
    assert bought["concrete"] == ("12.5", "cu yd")  # (928 x 4 + 928 x 1/8) / 324 x 1.05, up
    assert bought["truck_loads"] == ("2", "load")
    assert bought["short_load"] == ("2.5", "cu yd")
    assert found["base_tons"].needed == Decimal("22.68")  # 928 x 4 / 324 x 1.98
    assert found["base_loose"].needed == Decimal("13.40")  # x 1.17
    assert bought["wire"] == ("23", "sheet")  # 928 / (9-1/3 x 4-1/3)
    assert found["wire_weight"].needed == Decimal("483.00")  # 23 x 50 x 42 / 100
    assert found["pigment"].needed == Decimal("211.50")  # 3 % x 564 x 12.5
    assert found["release"].needed == Decimal("32.48")  # 3.5 on 100 sq ft
    assert bought["cover"] == ("928", "sq ft")  # a compound would lie under the film of sealer
    assert "curing" not in found
    assert found["sealer"].needed == Decimal("12.37")  # two coats at 150
    assert found["grit"].needed == Decimal("2.47")  # 0.2 lb in each of 12.37 gal, at a pool
    assert found["joint_filler"].needed == Decimal("128.00")  # 44 at the house, 84 at the pool
    assert found["bond_breaker"].needed == Decimal("84.00")


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
    assert bars["bar"].buy == 68  # 2 x 928 / 1.5 / (20 - 20/12), rounded up
    assert bars["bar_weight"].needed == Decimal("908.48")  # 68 x 20 x 0.668
