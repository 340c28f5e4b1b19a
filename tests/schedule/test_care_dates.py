"""The dates of the care card."""

from datetime import date, timedelta
from pathlib import Path

from quotegen.schedule.care_dates import Care, CareDate, care_dates_of
from quotegen.trade import opening
from tests.pricing import shop

SEAL = {"visit": "seal", "days": "1", "wait_days": "28"}
SEALED = {**shop.PLAIN, "sealer": "film", "visits": [shop.FORM, shop.POUR, SEAL]}


def _dates(folder: Path, use: str = "patio", finish: shop.Typed = SEALED, **more: str):
    job = shop.job(shop.placement("20 ft x 10 ft", use=use), **more)
    results = shop.results(folder, job, rate_book=shop.book(finishes={"plain": finish}))
    found = care_dates_of(results.job, results.chosen_visits, results.rules)
    return {care.care: care for care in found}, results


def test_color_and_trucks_wait_as_their_rules_say(tmp_path: Path):
    """Both are counted from the last day of the pour; trucks concern a drive alone."""
    dates, results = _dates(tmp_path, "drive", finish=shop.PLAIN)
    poured, on = dates[Care.POUR].day, results.job.quote_date
    assert poured is not None
    color, truck = dates[Care.COLOR].day, dates[Care.TRUCK].day
    assert color == poured + timedelta(days=opening.color_days(results.rules, on))
    assert truck == poured + timedelta(days=opening.truck_days(results.rules, on))
    assert Care.TRUCK not in _dates(tmp_path)[0]


def test_color_under_a_film_waits_for_the_film(tmp_path: Path):
    """A film changes the color: it is judged once the film is dry, days after the sealing."""
    dates, results = _dates(tmp_path)
    sealed = next(visit.last_day for visit in results.chosen_visits if visit.id == "seal")
    dry = opening.sealer_load_days(results.rules, results.job.quote_date)
    assert dates[Care.COLOR].day == sealed + timedelta(days=dry)


def test_the_first_winter_begins_in_the_year_of_the_pour(tmp_path: Path):
    """A pour of June 2026 has the winter of 2026 to 2027, and its first yearly look in 2027."""
    dates, _ = _dates(tmp_path)
    assert dates[Care.WINTER].years == (2026, 2027)
    assert dates[Care.YEARLY].years == (2027, 2027)


def test_the_next_coat_counts_from_the_first(tmp_path: Path):
    """A film sealed in 2026 is renewed in 2028 or 2029; without a sealer nothing is due."""
    dates, results = _dates(tmp_path)
    years = results.rules.range("reseal_film", date(2026, 5, 14))
    assert dates[Care.RESEAL] == CareDate(
        care=Care.RESEAL, years=(2026 + int(years.least), 2026 + int(years.most)))  # fmt: skip
    assert Care.RESEAL not in _dates(tmp_path, finish=shop.PLAIN)[0]


def test_no_pour_no_card(tmp_path: Path):
    """Visits without a pour have no care dates."""
    dates, _ = _dates(tmp_path, finish={**shop.PLAIN, "visits": [shop.FORM]})
    assert dates == {}
