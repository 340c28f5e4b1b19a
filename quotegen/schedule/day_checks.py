"""Warnings of dates: a start on a free day, a pour in winter, joints cut too late, a wish."""

from collections.abc import Iterator, Mapping
from datetime import date, timedelta

from quotegen.pricing.quoted.rates import in_season
from quotegen.problem import Problem
from quotegen.reading.files.rate_book import POUR, SAW
from quotegen.reading.records import JobSpec
from quotegen.schedule.visits import Visit, works_on
from quotegen.trade.joints import saw_latest_days
from quotegen.trade.rules import RuleBook
from quotegen.trade.weather import frost_counted_on, protection_days


def day_warnings(
    job: JobSpec, visits: Mapping[str, tuple[Visit, ...]], ready: date, rules: RuleBook
) -> Iterator[Problem]:
    """Yield what is said of the start, of winter, of joints cut too late, of a wish not kept.

    Args:
        job: with its start and its wish.
        visits: of each offered finish.
        ready: the day from which the quoted finish is ready for every use.
        rules: of the trade.
    """
    yield from _start(job, visits[job.finish][0])
    yield from (said for finish in visits for said in _saw(job, finish, visits[finish], rules))
    yield from _winter(job, visits[job.finish], rules)
    yield from _wish(job, ready)


def _start(job: JobSpec, first: Visit) -> Iterator[Problem]:
    start = job.typed.start
    if not works_on(start, job.company):
        begins = first.first_day - timedelta(days=first.wait_days)
        said = f"nobody works on {start}, a {start:%A}; the work starts on {begins}, a {begins:%A}"
        hint = "type that day as `start`, or add the weekday to `working_days` of the company"
        yield job.places.warning(("start",), "start-moved", said, hint)


def _winter(job: JobSpec, visits: tuple[Visit, ...], rules: RuleBook) -> Iterator[Problem]:
    """Yield a warning of a pour in winter, where no price of the book is for that season."""
    on, state = job.quote_date, job.site.state or ""
    poured = next((visit.last_day for visit in visits if visit.visit == POUR), None)
    priced = any(
        rate.season and in_season(rate.season, job.typed.start)
        for rate in job.rate_book.rates.values()
    )
    if poured is None or priced or not frost_counted_on(poured, state, rules, on):
        return
    days = protection_days(exposed=True, accelerated=False, rules=rules, on=on)
    cold = rules.text("cold_weather_air", on)
    said = (
        f"the pour is on {poured}; in {state} frost is counted on in {poured:%B}, and under {cold}"
        " a fresh slab needs cold weather care"
    )
    hint = (
        "start in spring; or price the care with a rate that has a `season`: no frozen ground under"
        f" it, concrete of {rules.text('cold_concrete_placed', on)} as placed, blankets for"
        f" {days} days"
    )
    yield job.places.warning(("start",), "pour-in-winter", said, hint)


def _wish(job: JobSpec, ready: date) -> Iterator[Problem]:
    wish = job.typed.wish
    if wish is not None and ready > wish.by:
        said = f"they asked for it by {wish.by}, and all is ready on {ready}; the quote says so"
        hint = "start earlier where you can, or tell them before they read it"
        yield job.places.warning(("wish", "by"), "wish-not-kept", said, hint)


def _saw(
    job: JobSpec, finish: str, visits: tuple[Visit, ...], rules: RuleBook
) -> Iterator[Problem]:
    poured = {visit.visit: visit.last_day for visit in visits}.get(POUR)
    saw = next((visit for visit in visits if visit.visit == SAW), None)
    most = saw_latest_days(rules, job.quote_date)
    if poured is None or saw is None or (saw.first_day - poured).days <= most:
        return
    said = (
        f"at the finish `{finish}` joints are cut on {saw.first_day}, a {saw.first_day:%A},"
        f" {(saw.first_day - poured).days} days after the pour; by then a slab has cracked"
    )
    hint = "let `saw` follow `pour` without a wait, or leave it out where you cut on the same day"
    yield job.book_places.warning(("finishes", finish, "visits"), "saw-late", said, hint)
