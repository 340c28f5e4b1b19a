"""Metric amounts of the order list: exact factors, and an order that is never short.

NIST SP 811, Appendix B: 1 cu yd is 0.764554857984 m3, 1 lb is 0.45359237 kg, 1 ft is 0.3048 m,
1 gal is 3.785411784 L, and the short ton is 2,000 lb.
"""

from dataclasses import replace
from decimal import Decimal

import pytest

from quotegen.takeoff.materials.metric import in_metric
from quotegen.takeoff.records import Material
from tests.takeoff.site_world import by_id, figured


@pytest.fixture(scope="module")
def some(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Material]:
    """Materials of a deck of 928 sq ft."""
    return by_id(figured(tmp_path_factory.mktemp("deck")))


@pytest.mark.parametrize(
    ("unit", "metric", "needed", "order"),
    [
        ("cu yd", "m3", "76.46", "77"),
        ("lb", "kg", "45.36", "46"),
        ("ft", "m", "30.48", "31"),
        ("gal", "L", "378.54", "379"),
        ("ton", "t", "90.72", "91"),
        ("sq ft", "m2", "9.29", "10"),
    ],
)
def test_a_hundred_of_each_unit(some, unit: str, metric: str, needed: str, order: str):
    """A hundred are so many in metric, and the order is the next whole one."""
    hundred = replace(
        some["release"], needed=Decimal(100), unit=unit, buy=Decimal(100), buy_unit=unit
    )
    shown = in_metric(hundred)
    assert (shown.unit, shown.buy_unit) == (metric, metric)
    assert (str(shown.needed), str(shown.buy)) == (needed, order)


def test_concrete_keeps_the_step_of_the_plant(some):
    """12.5 cu yd are 9.5569 m3: 9.56, since less would be short. The short load goes with it."""
    assert str(in_metric(some["concrete"]).buy) == "9.56"
    assert str(in_metric(some["short_load"]).buy) == "1.92"  # 2.5 cu yd are 1.9114 m3


def test_what_is_counted_is_not_converted(some):
    """Sheets and loads are the same in any units."""
    for name in ("wire", "truck_loads", "wire_supports"):
        assert in_metric(some[name]) == some[name]
