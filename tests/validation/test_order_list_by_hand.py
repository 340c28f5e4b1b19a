"""The order lists of two jobs, worked by hand from the tape to what the truck brings.

Sources of what is counted with, and how sure we are of each:
- 324 sq ft an inch deep to the cubic yard: 27 cu ft of 12 in, an identity (NIST Handbook 44)
- allowance on concrete within 4 to 10 % of NRMCA Concrete in Practice 8: published, as restated
- chairs under mesh at most 3 ft apart: Florida Building Code 1909.3, as quoted by WRI: published
- 42 lb for 100 sq ft of 6x6 W2.9, ASTM A1064 as tabulated in Concrete Construction, October 1975;
  0.668 lb for a foot of #4, ASTM A615 Table 1: published
- lap of 8 in for a 6 in mesh, NZS 3101:2006 8.7.6(a), as cited by a building authority: published
- loose crushed stone at least 1.4 ton to the cubic yard: Pennsylvania dirt and gravel road quick
  rules (as copied), with 1.406 in a state construction manual: published
- 1.98 ton to a compacted yard, base 6 in past the forms, laps of 40 diameters, chairs under bars
  each 4 ft, 10 lb of wire to a ton of bars, boards of 16 ft, stakes each 3 ft and 2 ft on a curve,
  5 % for cuts and 15 % of sheets cut to a curve: common practice
- sealer by the label, and 10 % of the cover for laps, as the made-up rate book types them
"""

from decimal import Decimal
from pathlib import Path

import pytest

from quotegen.pipeline import PricedJob
from quotegen.pricing.costs.records import CostKind
from quotegen.takeoff.records import Material
from tests.takeoff.site_world import by_id, figured

PATIO = """\
quote: T-1
date: 2026-05-14
start: 2026-06-08
title: Patio
customer: {name: Wren Abernathy}
site: {address: 1 Test Lane, town: Harrow Bend}
finish: broom
placements:
  - id: patio
    use: patio
    add: [{rectangle: 24 ft x 15 ft, against_house: bottom}]
"""
ROUND = PATIO.replace(
    "[{rectangle: 24 ft x 15 ft, against_house: bottom}]", "[{circle: {radius: 10 ft}}]"
)
ROUND += "    reinforcement: bar_grid\n"

PATIO_BY_HAND = {
    "concrete": ("5", "cu yd"),  # 360 x 4-1/8 / 324 = 4.583, and 5 % 4.813, up to a quarter
    "truck_loads": ("1", "load"),
    "base_tons": ("10", "ton"),  # (360 + 54 / 2) x 4 / 324 x 1.98 = 9.46, and 5 % 9.93
    "base_loose": ("8", "cu yd"),  # 10 / 1.4 = 7.14
    "form_boards": ("4", "board"),  # 54 / 16 = 3.38
    "form_stakes": ("18", "each"),  # 54 / 3
    "wire": ("10", "sheet"),  # 360 / (9-1/3 x 4-1/3) = 8.90, and 5 % 9.35
    "wire_weight": ("210", "lb"),  # 10 x 50 x 42 / 100
    "wire_supports": ("40", "each"),  # 360 / 9
    "cover": ("396", "sq ft"),  # 360, and 10 % for laps; no compound under a sealer
    "sealer": ("4", "gal"),  # 360 / 125 = 2.88, and 5 % 3.02
    "joint_filler": ("26", "ft"),  # 24 and 5 % = 25.2
}
ROUND_BY_HAND = {
    "concrete": ("4.25", "cu yd"),  # pi 10^2 = 314.2; x 4-1/8 / 324 = 4.0002, and 5 % 4.2003
    "truck_loads": ("1", "load"),
    "base_tons": ("9", "ton"),  # (314.2 + 62.8 / 2) x 4 / 324 x 1.98 = 8.45, and 5 % 8.87
    "base_loose": ("7", "cu yd"),  # 9 / 1.4 = 6.43
    "form_bender": ("63", "ft"),  # 2 pi 10 = 62.8
    "form_stakes": ("32", "each"),  # 62.8 / 2 = 31.4
    "bar": ("24", "bar"),  # 2 x 314.2 / 1.5 / (20 - 20 / 12) = 22.85, and 5 % 23.99
    "bar_weight": ("321", "lb"),  # 24 x 20 x 0.668 = 320.64
    "bar_supports": ("20", "each"),  # 314.2 / 16 = 19.64
    "tie_wire": ("2", "lb"),  # 320.64 / 2000 x 10 = 1.60
    "cover": ("346", "sq ft"),  # 314.2, and 10 % 345.6
    "sealer": ("3", "gal"),  # 314.2 / 125 = 2.51, and 5 % 2.64
}


def _bought(materials: dict[str, Material]) -> dict[str, tuple[str, str]]:
    return {one: (f"{m.buy:f}", m.buy_unit) for one, m in materials.items() if m.buy_unit}


def _materials_cost(found: PricedJob) -> dict[str, Decimal]:
    assert found.owner is not None
    return {one.id: one.amount for one in found.owner.chosen.of_kind(CostKind.MATERIAL)}


@pytest.mark.parametrize(
    ("job", "by_hand"), [(PATIO, PATIO_BY_HAND), (ROUND, ROUND_BY_HAND)], ids=["patio", "round"]
)
def test_an_order_list(tmp_path: Path, job: str, by_hand: dict[str, tuple[str, str]]) -> None:
    """Every row of the list is what a pencil gives, and there is none beside."""
    assert _bought(by_id(figured(tmp_path, head=job, falls=""))) == by_hand


def test_what_is_costed_is_what_is_ordered(tmp_path: Path) -> None:
    """The patio at the prices of the book: 5 yards at 168, 10 tons at 27.50 and so on."""
    assert _materials_cost(figured(tmp_path, head=PATIO, falls="")) == {
        "concrete": Decimal("840.00"), "base_tons": Decimal("275.00"), "wire": Decimal("108.00"),
        "wire_supports": Decimal("18.00"), "cover": Decimal("23.76"),
        "sealer": Decimal("144.00"), "joint_filler": Decimal("14.30"),
    }  # fmt: skip


def test_each_price_is_paid_for_the_whole_order(tmp_path: Path) -> None:
    """24 bars at 9.80, 20 chairs at 0.45 and 2 lb of wire at 1.70 hold the round pad's steel."""
    costs = _materials_cost(figured(tmp_path, head=ROUND, falls=""))
    steel = {one: costs[one] for one in ("bar", "bar_supports", "tie_wire")}
    assert steel == {
        "bar": Decimal("235.20"), "bar_supports": Decimal("9.00"), "tie_wire": Decimal("3.40"),
    }  # fmt: skip


def test_the_forms_decide_what_is_ordered(tmp_path: Path) -> None:
    """330 sq ft in the forms: x 4-1/8 / 324 = 4.201, and 5 % 4.411, so 4.5 cu yd and not 4.25."""
    measured = "measured: {date: 2026-06-09, placements: {patio: {area: 330 sq ft}}}\n"
    found = figured(tmp_path, measured, head=ROUND, falls="")
    assert found.results is not None
    to_order = _bought({one.id: one for one in found.results.to_order})
    assert to_order["concrete"] == ("4.5", "cu yd")
    assert to_order["bar"] == ("26", "bar")  # 24.00, and 5 % 25.2
    assert _bought(by_id(found))["concrete"] == ("4.25", "cu yd")
