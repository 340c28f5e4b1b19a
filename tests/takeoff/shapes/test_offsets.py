"""Areas by Simpson's rule and the trapezoid rule, worked by hand."""

from typing import Any

import pytest

from quotegen.quantity import SQFT_PER_M2
from quotegen.reading.files.shapes import AreaRule, Offsets
from quotegen.takeoff.shapes.faults import Fault
from quotegen.takeoff.shapes.offsets import area_by_rule_sqft, offsets_loop, readings_fault
from quotegen.takeoff.shapes.path import signed_area_sqft

EVEN = {"every": "4 ft", "far": ["3 ft", "5 ft", "4 ft", "6 ft", "2 ft"]}


def _offsets(**typed: Any) -> Offsets:
    return Offsets.model_validate(typed)


def test_simpsons_rule_by_hand():
    """Simpson's one-third rule: 4/3 x (3 + 4 x 5 + 2 x 4 + 4 x 6 + 2) is 76 sq ft."""
    assert area_by_rule_sqft(_offsets(**EVEN), AreaRule.SIMPSON) == pytest.approx(76)


def test_simpsons_rule_as_published():
    """Seven offsets at 25 m: 25/3 x (7.6 + 2 x 13.8 + 4 x 16.5) is 843.33 m2.

    "Calculation of areas in surveying: Simpson's rule", geosurabsurveyandmapping.blogspot.com,
    December 2017: first and last once, even ordinates four times, other odd ones twice.
    """
    far = [f"{offset} m" for offset in ("3.6", "5.0", "6.5", "5.5", "7.3", "6.0", "4.0")]
    found = area_by_rule_sqft(_offsets(every="25 m", far=far), AreaRule.SIMPSON)
    assert found / float(SQFT_PER_M2) == pytest.approx(843.33, abs=0.005)


def test_simpsons_rule_is_exact_for_a_parabola():
    """Under x (4 - x) from 0 to 4, read at 0, 2 and 4, lie 32/3 sq ft (calculus)."""
    parabola = _offsets(every="2 ft", far=["0", "4 ft", "0"])
    assert area_by_rule_sqft(parabola, AreaRule.SIMPSON) == pytest.approx(32 / 3)


def test_the_trapezoid_rule_by_hand():
    """4 x (3/2 + 5 + 4 + 6 + 2/2) is 70 sq ft; the drawn straight edge has the same area."""
    offsets = _offsets(**EVEN)
    assert area_by_rule_sqft(offsets, AreaRule.TRAPEZOID) == pytest.approx(70)
    loop = offsets_loop(offsets)
    assert not isinstance(loop, Fault)
    assert abs(signed_area_sqft(loop)) == pytest.approx(70)


def test_a_last_odd_strip_is_a_trapezoid():
    """With a fifth strip down to zero it is 76 + 4 x (2 + 0) / 2, 80 sq ft."""
    six = _offsets(every="4 ft", far=[*EVEN["far"], "0"], rule="simpson", odd_strip="trapezoid")
    assert area_by_rule_sqft(six, AreaRule.SIMPSON) == pytest.approx(80)
    assert readings_fault(six) is None


def test_both_edges_are_read():
    """Near readings count off the far ones: the widths are 2, 4 and 3 ft, so 4/3 x 21 = 28."""
    both = _offsets(every="4 ft", far=["3 ft", "5 ft", "4 ft"], near=["1 ft"] * 3)
    assert area_by_rule_sqft(both, AreaRule.SIMPSON) == pytest.approx(28)
