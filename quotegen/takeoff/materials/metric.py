"""The order list of a metric job: what is sold by volume, weight or length, in metric units.

What is counted (sheets, rolls, bars, chairs, loads) stays as it is, in the sizes it is sold in.
"""

from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from math import ceil

from quotegen.quantity import (
    FEET_PER_METER,
    KG_PER_LB,
    LB_PER_TON,
    LITRES_PER_GAL,
    M3_PER_CUYD,
    SQFT_PER_M2,
    decimal_of,
    rounded,
)
from quotegen.takeoff.materials.job_slabs import NEEDED_PLACES, wasted
from quotegen.takeoff.records import Material

_METRIC: Mapping[str, tuple[str, Fraction]] = {
    "cu yd": ("m3", M3_PER_CUYD),
    "lb": ("kg", KG_PER_LB),
    "ton": ("t", LB_PER_TON * KG_PER_LB / 1000),
    "sq ft": ("m2", 1 / SQFT_PER_M2),
    "ft": ("m", 1 / FEET_PER_METER),
    "gal": ("L", LITRES_PER_GAL),
}
"""The metric unit for each of ours, and how many of it make one of ours."""

_BY_ITS_STEP = frozenset({"concrete", "short_load"})
"""What the plant sells by an increment of its own, not by the whole unit."""


def in_metric(material: Material) -> Material:
    """Return a material in metric units, its order rounded up; unchanged if it is counted."""
    if material.unit not in _METRIC:
        return material
    unit, times = _METRIC[material.unit]
    needed = Fraction(material.needed) * times
    return replace(
        material,
        needed=rounded(needed, NEEDED_PLACES),
        unit=unit,
        buy=_order(material, needed, times),
        buy_unit=unit if material.buy_unit else "",
    )


def _order(material: Material, needed: Fraction, times: Fraction) -> Decimal:
    if not material.buy_unit:
        return material.buy
    if material.id not in _BY_ITS_STEP:
        return decimal_of(Fraction(ceil(wasted(needed, material.waste))))
    parts = 10**NEEDED_PLACES
    return decimal_of(Fraction(ceil(Fraction(material.buy) * times * parts), parts))
