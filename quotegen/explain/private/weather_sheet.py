"""The weather sheet: what the forecast means for this pour and crew. For the owner alone."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from quotegen.explain.results import Results
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.views import PaperHead
from quotegen.explain.wording import Words
from quotegen.explain.words.job_features import STAMPED, finish_kinds
from quotegen.explain.words.rows import Row
from quotegen.explain.words.rule_words import rule_text
from quotegen.quantity import NO_QUANTITY, decimal_of, kg_per_m2, rounded
from quotegen.reading.files.forecast import Forecast
from quotegen.trade import evaporation, mix, weather
from quotegen.trade.evaporation import Air


@dataclass(frozen=True, slots=True, kw_only=True)
class WeatherSheet:
    """The weather sheet of the day of the pour.

    Attributes:
        numbers: the forecast and what follows from it.
        cautions: what to do about it.
        tell: what to tell the homeowner.
    """

    head: PaperHead
    numbers: tuple[Row, ...]
    cautions: tuple[str, ...]
    tell: tuple[str, ...]


def weather_sheet(results: Results, forecast: Forecast) -> WeatherSheet:
    """Build the sheet from a typed forecast."""
    job, words = results.job, results.words
    parts = _parts(results, forecast)
    title = words("weather_title", title=job.title, quote=job.quote)
    head = paper_head(results, title, forecast.date)
    return WeatherSheet(
        head=replace(head, date=words.weekday(forecast.date)),
        numbers=(*_forecast(results, forecast), *_evaporation(results, forecast),
                 *_window(results, forecast)),
        cautions=tuple(words(f"weather_{key}", **_values(results, forecast))
                       for key in _cautions(results, forecast)),
        tell=tuple(words(f"tell_{key}") for key in _tell(results, forecast, parts)),
    )  # fmt: skip


def _air(forecast: Forecast) -> Air:
    return Air(
        concrete_f=forecast.concrete,
        air_f=forecast.air,
        humidity_percent=decimal_of(forecast.humidity * 100),
        wind_mph=forecast.wind,
    )


def _forecast(results: Results, forecast: Forecast) -> Iterator[Row]:
    words = results.words
    for key, value in (
        ("air", f"{words.number(forecast.air, 0)} °F"),
        ("humidity", words.percent(forecast.humidity)),
        ("wind", f"{words.number(forecast.wind, 0)} mph"),
        ("concrete", f"{words.number(forecast.concrete, 0)} °F"),
    ):
        yield Row(name=words(f"forecast_{key}"), text=value)


def _evaporation(results: Results, forecast: Forecast) -> Iterator[Row]:
    words, rules, on = results.words, results.rules, results.job.quote_date
    for key, worked in (
        ("uno", evaporation.evaporation_lb(_air(forecast), rules, on)),
        ("menzel", evaporation.evaporation_menzel_lb(_air(forecast), rules, on)),
    ):
        text = words(
            "evaporation_said",
            us=words.number(worked, 2),
            si=words.number(kg_per_m2(worked), 1),
        )
        yield Row(name=words(f"evaporation_{key}"), text=text)
    limit = "evaporation_care_low_bleed" if forecast.low_bleed else "evaporation_care"
    yield Row(name=words("evaporation_limit"), text=rule_text(results, limit))
    yield Row(name=words("evaporation_spread"), text=rule_text(results, "evaporation_scatter"))


def _window(results: Results, forecast: Forecast) -> Iterator[Row]:
    words, rules, on = results.words, results.rules, results.job.quote_date
    ready = weather.float_wait_hours(forecast.air, rules, on)
    hours = weather.finishing_hours(forecast.air, rules, on)
    if ready is None or hours is None:
        yield Row(name=words("window_ready"), text=words("window_unknown"))
        return
    yield Row(name=words("window_ready"), text=_hours(words, ready))
    yield Row(name=words("window_open"), text=_hours(words, hours))
    pace = results.job.rate_book.finishes[results.job.finish].area_an_hour
    if pace is None:
        return
    finished = rounded(weather.finished_sqft(pace, hours), 0)
    yield Row(name=words("window_area"), text=words.square_feet(finished))
    yield Row(name=words("window_parts"), text=str(_parts(results, forecast)))
    yield Row(name=words("window_pours"), text=str(results.job.typed.pours))


def _parts(results: Results, forecast: Forecast) -> int | None:
    """In how many parts to place the slab; None where the book has no pace for the finish."""
    hours = weather.finishing_hours(forecast.air, results.rules, results.job.quote_date)
    pace = results.job.rate_book.finishes[results.job.finish].area_an_hour
    if hours is None or pace is None:
        return None
    return weather.parts_needed(_whole_sqft(results), pace, hours)


def _hours(words: Words, hours: Decimal) -> str:
    shown = rounded(hours, 1)
    return words.count("rule_unit_hour", shown, number=words.number(shown, 1))


def _whole_sqft(results: Results) -> Decimal:
    return sum((p.area_sqft for p in results.takeoff.placements), NO_QUANTITY)


def _cautions(results: Results, forecast: Forecast) -> Iterator[str]:
    rules, on = results.rules, results.job.quote_date
    rate = evaporation.evaporation_lb(_air(forecast), rules, on)
    if evaporation.needs_care(rate, low_bleed=forecast.low_bleed, rules=rules, on=on):
        yield "drying"
    elif evaporation.may_need_care(rate, low_bleed=forecast.low_bleed, rules=rules, on=on):
        yield "near"
    if (_parts(results, forecast) or 1) > results.job.typed.pours:
        yield "more_parts"
    if mix.is_too_hot(forecast.concrete, rules, on):
        yield "hot_truck"
    lowest = min(forecast.air, forecast.low if forecast.low is not None else forecast.air)
    if mix.is_cold(lowest, rules, on):
        yield "cold"
        if weather.placed_too_cold(forecast.concrete, rules, on):
            yield "cold_truck"
    if weather.heat_risk(forecast.air, rules, on) != "lower":
        yield "heat"
    if forecast.rain:
        yield "rain"
    yield "always"


def _values(results: Results, forecast: Forecast) -> dict[str, str]:
    words, rules, on = results.words, results.rules, results.job.quote_date
    days = weather.protection_days(exposed=True, accelerated=False, rules=rules, on=on)
    mixed = weather.least_mixed_f(min(forecast.air, forecast.low or forecast.air), rules, on)
    return {
        "hottest": rule_text(results, "hot_concrete_max"),
        "placed": rule_text(results, "cold_concrete_placed"),
        "mixed": f"{words.number(decimal_of(mixed), 0)} °F",
        "frost": rule_text(results, "frost_strength"),
        "days": words.count("rule_unit_day", days),
        "wind_height": rule_text(results, "wind_height"),
        "water": rule_text(results, "heat_water"),
    }


def _tell(results: Results, forecast: Forecast, parts: int | None) -> Iterator[str]:
    cautions = frozenset(_cautions(results, forecast))
    if "drying" in cautions:
        yield "dawn"
    if "cold" in cautions:
        yield "cold"
    if "rain" in cautions:
        yield "rain"
    pours = results.job.typed.pours
    if parts is not None and parts > pours and finish_kinds(results) & STAMPED:
        yield "parts"
    if not cautions & {"drying", "cold", "rain", "hot_truck", "more_parts"}:
        yield "as_planned"
