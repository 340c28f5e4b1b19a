"""Weather limits, working time and waits after the pour, against their sources.

Each test names its source; `as reported` was seen in a page that quotes the source, and `from
memory` has not been seen at all yet.
"""

from datetime import date
from decimal import Decimal

import pytest

from quotegen.trade import mix, opening, weather
from quotegen.trade.mix import Weathering
from quotegen.trade.rules import load_rules

RULES = load_rules()
ON = date(2026, 11, 25)


@pytest.mark.parametrize(
    ("air", "hours"), [("50", "4.25"), ("70", "2.75"), ("90", "1.75"), ("60", "3.5")]
)
def test_wait_to_float(air: str, hours: str) -> None:
    """ASCC Position Statement 15 (C27), contractors' survey; published. 60 °F lies between."""
    assert weather.float_wait_hours(Decimal(air), RULES, ON) == Decimal(hours)


def test_outside_the_survey() -> None:
    """The survey stops at 50 and 90 °F, and so does what we say of it."""
    assert weather.float_wait_hours(Decimal("49.9"), RULES, ON) is None
    assert weather.float_wait_hours(Decimal("90.1"), RULES, ON) is None
    assert weather.finishing_hours(Decimal(95), RULES, ON) is None


@pytest.mark.parametrize(
    ("air", "hours"), [("100", "1.67"), ("70", "6"), ("50", "10.67"), ("30", "19")]
)
def test_set_time(air: str, hours: str) -> None:
    """A trade table after PCA, about 6 h x (4/3) for each 10 °F colder.

    100 and 70 °F were read as restated; 50 and 30 °F were not: common practice.
    """
    found = weather.set_hours(Decimal(air), RULES, ON)
    assert found == Decimal(hours)


def test_finishing_window() -> None:
    """At 70 °F the surface is ready to float at 2.75 h and set at 6 h: 3.25 h between them."""
    assert weather.finishing_hours(Decimal(70), RULES, ON) == Decimal("3.25")


def test_cold_air() -> None:
    """ACI 306R-10: a low of 38 °F is cold whatever the day was, and 40 °F is not; published."""
    assert mix.is_cold(Decimal(38), RULES, ON)
    assert not mix.is_cold(Decimal(40), RULES, ON)


def test_concrete_in_the_cold() -> None:
    """ACI 306R as adapted in Masonry and Concrete (2004), figure 3-37: published.

    The days of protection (ACI 306R Table 5.1) are from memory.
    """
    assert [weather.least_mixed_f(Decimal(air), RULES, ON) for air in (-5, 0, 29, 30)] == [
        70, 65, 65, 60]  # fmt: skip
    assert weather.placed_too_cold(Decimal(54), RULES, ON)
    assert not weather.placed_too_cold(Decimal(55), RULES, ON)
    days = [
        weather.protection_days(exposed=exposed, accelerated=fast, rules=RULES, on=ON)
        for exposed in (False, True)
        for fast in (False, True)
    ]
    assert days == [2, 1, 3, 2]
    assert RULES.number("frost_strength", ON) == 500  # PCA, cold weather chapter; published


def test_hot_concrete() -> None:
    """ACI 305.1-14: 95 °F at discharge passes, and more does not; as reported."""
    assert not mix.is_too_hot(Decimal(95), RULES, ON)
    assert mix.is_too_hot(Decimal("95.5"), RULES, ON)


@pytest.mark.parametrize(
    ("index", "risk"), [(90, "lower"), (91, "moderate"), (103, "high"), (116, "extreme")]
)
def test_heat_risk(index: int, risk: str) -> None:
    """OSHA, Using the Heat Index: bands at 91, 103 and 115 °F; as reported."""
    assert weather.heat_risk(Decimal(index), RULES, ON) == risk


def test_weathering_of_states() -> None:
    """Michigan R 408.30516 and Lancaster, Ohio, 1301.11: severe, both read.

    Georgia as moderate and Florida as negligible are from memory of IRC Figure R301.2.
    """
    states = ("MI", "OH", "GA", "FL", "ZZ")
    found = [mix.weathering_of_state(state, RULES, ON) for state in states]
    severe, moderate, none = Weathering.SEVERE, Weathering.MODERATE, Weathering.NEGLIGIBLE
    assert found == [severe, severe, moderate, none, None]


def test_pigment_cap() -> None:
    """ASTM C979 1.4 (C30): 564 lb of cement per cu yd take 56.4 lb of pigment; published."""
    assert mix.pigment_limit(Decimal(564), RULES, ON) == Decimal("56.4")


def test_opening_times() -> None:
    """Common practice: on foot after 2 days, cars after 7, trucks after 28; cured 7 (UFGS 03300N).

    A federal guide spec waits 30 days for sealing liquids; crews wait 28, and the label decides.
    """
    assert opening.walk_days(RULES, ON) == 2
    assert opening.drive_days(RULES, ON) == 7
    assert opening.truck_days(RULES, ON) == 28
    assert opening.cure_days(RULES, ON) == 7
    assert RULES.number("seal_wait", ON) == 28
