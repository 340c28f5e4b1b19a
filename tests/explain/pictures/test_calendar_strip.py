"""The calendar strip: every dated fact of the schedule and of the payments, in order."""

from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
from shapely import box

from quotegen.explain.pictures.calendar_rows import CalendarRow, Lane, calendar_rows, lanes_of
from quotegen.explain.pictures.calendar_strip import calendar_strip
from tests.explain.drawn import lettering, parsed, texts
from tests.pricing import shop

EXAMPLES = sorted((Path(__file__).parents[3] / "example_jobs").glob("*/jobs/*.yaml"))
every_example = pytest.mark.parametrize("job_file", EXAMPLES, ids=lambda path: path.stem)


def _results(job_file: Path):
    results = shop.example(job_file).results
    assert results
    return results


@every_example
@pytest.mark.parametrize("width", [328, 680])
def test_words_stand_apart_on_the_paper(job_file: Path, width: int):
    """No word over another or off the paper, none smaller than 12 px, on paper and on a phone."""
    results = _results(job_file)
    for plan in results.day_plans:
        svg = parsed(calendar_strip(results, plan, results.quote.payments, width, "days"))
        paper, placed = box(0, 0, width, float(svg.attrib["height"])), lettering(svg)
        assert all(float(one.attrib["font-size"]) >= 12 for one in svg if one.get("font-size"))
        for index, (words, at) in enumerate(placed):
            assert paper.covers(at), words
            assert not any(at.intersects(other) for _, other in placed[index + 1 :]), words


@every_example
def test_all_that_has_a_day_is_on_it(job_file: Path):
    """Every visit, every opening, every payment with its amount; the amounts add up."""
    results = _results(job_file)
    plan = results.day_plans[0]
    said = " ".join(texts(parsed(
        calendar_strip(results, plan, results.quote.payments, 680, "days"))))  # fmt: skip
    for payment in results.quote.payments:
        assert results.words.money(payment.amount) in said
    assert results.words.money(results.quote.chosen.total) in said
    rows = tuple(calendar_rows(results, plan, results.quote.payments))
    assert [text for row in rows for text in row.we] == [visit.name for visit in plan.visits]
    opened = {results.words(f"opening_{one.use.value}") for one in plan.openings}
    assert opened <= {text for row in rows for text in row.you}


@every_example
def test_rows_follow_one_another_without_a_day_lost(job_file: Path):
    """From the first visit on each day is in one row, or among the days that a break leaves out."""
    results = _results(job_file)
    rows = list(calendar_rows(results, results.day_plans[0], ()))[1:]
    for before, row, after in zip(rows, rows[1:], rows[2:], strict=False):
        if row.quiet:
            days = _days_between(before, after) - 1
            assert row.day == results.words.count("calendar_gap", days)
        elif not before.quiet:
            assert _days_between(before, row) == 1


def _days_between(before: CalendarRow, after: CalendarRow) -> int:
    assert before.last
    assert after.first
    return (after.first - before.last).days


def test_the_sealer_closes_the_slab():
    """12 Orchard Bend by hand: open on June 12, closed on July 15 for the sealer,
    walked on again the day after, furniture back on July 18."""
    results = _results(next(one for one in EXAMPLES if "orchard-bend" in one.stem))
    open_on = {row.day: row.open for row in calendar_rows(results, results.day_plans[0], ())}
    assert open_on["Fri, Jun 12"] == {Lane.WALK}
    assert open_on["Wed, Jun 17"] == {Lane.WALK, Lane.FURNISH}
    assert open_on["Wed, Jul 15"] == {Lane.WORK}
    assert open_on["Thu, Jul 16"] == {Lane.WALK}
    assert open_on["Sat, Jul 18"] == {Lane.WALK, Lane.FURNISH}


def test_only_a_slab_for_cars_has_a_lane_for_them():
    """The drive of the examples has one, the pool deck has none."""
    drive, deck = (
        _results(next(one for one in EXAMPLES if name in one.stem))
        for name in ("ferry-road", "kestrel")
    )
    assert Lane.DRIVE in lanes_of(tuple(calendar_rows(drive, drive.day_plans[0], ())))
    assert Lane.DRIVE not in lanes_of(tuple(calendar_rows(deck, deck.day_plans[0], ())))


def test_the_first_row_is_the_day_to_say_yes_by():
    """The earlier of the two: the days are kept till June 3, the price till June 13."""
    results = _results(next(one for one in EXAMPLES if "orchard-bend" in one.stem))
    first = next(calendar_rows(results, results.day_plans[0], results.quote.payments))
    assert (first.day, first.you) == ("By Wed, Jun 3", ("Say yes, to keep these days",))
    assert [number for number, _ in first.payments] == [1]
    assert first.first
    sooner = replace(results.job, holds_until=first.first - timedelta(days=1))
    moved = next(calendar_rows(replace(results, job=sooner), results.day_plans[0], ()))
    assert (moved.day, moved.you) == ("By Tue, Jun 2", ("Say yes, to keep this price",))
