"""The owner's weather day sheet: what a forecast means for the finish and the crew."""

from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest
from pydantic_core import PydanticCustomError

from quotegen.explain.private.weather_sheet import WeatherSheet, weather_sheet
from quotegen.publish.web.html import render
from quotegen.reading.files.forecast import parse_temperature, parse_wind
from quotegen.resources import themes_folder
from quotegen.trade import weather
from tests.pricing import shop
from tests.publish.built import page_text

MILD = {"date": "2026-06-10", "air": "70 F", "humidity": "60 %", "wind": "3 mph",
        "concrete": "70 F"}  # fmt: skip
FANCY = {"plain": {**shop.FANCY, "brings": [], "area_an_hour": "40 sq ft"}}


def _sheet(folder: Path, pours: str = "1", **more: str) -> WeatherSheet:
    job = shop.job(shop.placement("20 ft x 10 ft"), forecast={**MILD, **more}, pours=pours)
    results = shop.results(folder, job, rate_book=shop.book(finishes=FANCY))
    assert results.job.typed.forecast is not None
    return weather_sheet(results, results.job.typed.forecast)


def _rows(sheet: WeatherSheet) -> dict[str, str]:
    return {row.name: row.text for row in sheet.numbers}


def test_a_mild_day(tmp_path: Path):
    """The crew has 3.25 hours, and 200 sq ft take two parts, where the quote has one pour."""
    sheet = _sheet(tmp_path)
    rows = _rows(sheet)
    assert rows["Ready to float after"] == "2.8 hours"
    assert rows["Then it takes a finish for about"] == "3.3 hours"
    assert rows["The crew finishes in that time"] == "130.0 sq ft"
    assert rows["Parts to place the slab in, or trucks to space by that time"] == "2"
    assert rows["Pours that the quote counts on"] == "1"
    assert "cannot finish all of a pour" in sheet.cautions[0]
    assert any("in parts" in line for line in sheet.tell)
    assert "The day stands as planned." not in sheet.tell


def test_a_mild_day_with_as_many_pours_as_it_takes(tmp_path: Path):
    """Quoted in two pours, the same slab has nothing to do but to read the wind."""
    sheet = _sheet(tmp_path, pours="2")
    assert len(sheet.cautions) == 1
    assert sheet.tell == ("The day stands as planned.",)


@pytest.mark.parametrize(
    ("more", "caution", "told"),
    [
        ({"air": "90 F", "concrete": "90 F", "humidity": "20 %", "wind": "15 mph"},
         "dries too fast", "start at dawn"),
        ({"air": "78 F", "concrete": "80 F", "humidity": "40 %", "wind": "9 mph"},
         "may dry too fast", "as planned"),
        ({"concrete": "97 F"}, "above 95 °F is sent back", ""),
        ({"low": "35 F"}, "cold weather", "covers stay on longer"),
        ({"air": "92 F"}, "shade, rest", ""),
        ({"rain": "yes"}, "never work rain into the top", "Rain may move the day"),
    ],
)  # fmt: skip
def test_a_caution_comes_with_its_weather(
    tmp_path: Path, more: dict[str, str], caution: str, told: str
):
    """Each kind of weather has what to do, and where it matters what to tell the homeowner."""
    sheet = _sheet(tmp_path, pours="3", **more)
    assert any(caution in line for line in sheet.cautions)
    assert any(told in line for line in sheet.tell) or not told
    assert not any(caution in line for line in _sheet(tmp_path).cautions)


def test_outside_the_survey_it_says_so(tmp_path: Path):
    """At 45 °F no survey says how long it can be worked, and none is made up."""
    rows = _rows(_sheet(tmp_path, air="45 F"))
    assert rows["Ready to float after"].startswith("no survey")
    assert "Then it takes a finish for about" not in rows


def test_it_can_be_printed(tmp_path: Path):
    """The template takes the sheet and shows each row."""
    job = shop.job(forecast=MILD)
    results = shop.results(tmp_path, job, rate_book=shop.book())
    assert results.job.typed.forecast is not None
    sheet = weather_sheet(results, results.job.typed.forecast)
    page = render("weather.html.j2", sheet, results.words, themes_folder() / "shop")
    assert all(row.text in page_text(page) for row in sheet.numbers)


def test_parts():
    """1,052 sq ft at 300 sq ft an hour for 1.75 hours: 525 sq ft at a time, so three parts."""
    assert weather.finished_sqft(Fraction(300), Decimal("1.75")) == 525
    assert weather.parts_needed(Decimal(1052), Fraction(300), Decimal("1.75")) == 3
    assert weather.parts_needed(Decimal(1050), Fraction(300), Decimal("1.75")) == 2


@pytest.mark.parametrize(
    ("text", "fahrenheit"), [("84 F", "84"), ("29 C", "84.2"), ("-5 c", "23"), ("70.5°F", "70.5")]
)
def test_temperatures(text: str, fahrenheit: str):
    """Degrees of either kind become °F exactly."""
    assert parse_temperature(text) == Decimal(fahrenheit)


@pytest.mark.parametrize("text", ["84", "hot", "-1 F", "151 F", ""])
def test_no_temperature(text: str):
    """A number without its unit, or one that no pour knows, is refused."""
    with pytest.raises(PydanticCustomError):
        parse_temperature(text)


def test_winds():
    """18 km/h is about 11.18 mph."""
    assert parse_wind("11 mph") == 11
    assert abs(parse_wind("18 km/h") - Decimal("11.1847")) < Decimal("0.0001")
    with pytest.raises(PydanticCustomError):
        parse_wind("breezy")


def test_it_bears_the_day_of_the_pour(tmp_path: Path):
    """The sheet is dated by the forecast and not by the quote."""
    assert _sheet(tmp_path).head.date == "Wed, Jun 10"
