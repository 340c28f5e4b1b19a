"""What a job asks for, on both sides of each line that a check draws."""

from pathlib import Path

import pytest

from quotegen.problem import Severity
from quotegen.reading.checks.asked import FIRST_DAY
from quotegen.reading.read import read_job
from quotegen.reading.records import ReadJob
from quotegen.trade.rules import load_rules
from tests.messages.case_files import lay_out
from tests.reading.changed import SCOPE, codes_after


@pytest.mark.parametrize(
    ("typed", "codes"),
    [
        ("include: {drain: 18 ft}", []),
        ("include: {drain: 6 m}", []),
        ("include: {drain: yes}", ["count-missing"]),
        ("include: {drain: 18}", ["count-unit"]),
        ("include: {drain: 18 sq ft}", ["count-unit"]),
        ("include: {haul_off: 6 m3}", []),
        ("include: {haul_off: 6 ft}", ["count-unit"]),
        ("include: {step: yes}", []),
        ("include: {step: 2}", []),
        ("extras: {step: 2 ft}", ["count-unit"]),
        ("extras: {slab: yes}", ["rate-not-asked"]),
        ("extras: {ramp: yes}", ["unknown-rate"]),
        ("include: {step: 1}\nextras: {step: 1}", ["priced-twice"]),
        ("compare: [broom]", ["finish-twice"]),
        ("compare: [slate, slate]", ["unknown-finish", "unknown-finish", "finish-twice"]),
    ],
)
def test_what_a_job_asks_for(tmp_path: Path, typed: str, codes: list[str]):
    """A quantity has the unit of its price, in either system; what has no measure is given one."""
    assert codes_after(tmp_path, job=("placements:", f"{typed}\nplacements:")) == codes


@pytest.mark.parametrize(
    ("quoted", "codes"),
    [
        ("2026-02-01", []),
        ("2026-01-31", ["book-too-new"]),
        ("2026-06-08", []),
        ("2026-06-09", ["start-before-quote"]),
        ("2020-12-31", ["date-too-early"]),
        ("2021-01-01", ["book-too-new"]),
    ],
)
def test_days_at_each_edge(tmp_path: Path, quoted: str, codes: list[str]):
    """A book holds from its first day on, and work may start on the day of the quote."""
    assert codes_after(tmp_path, job=("date: 2026-05-14", f"date: {quoted}")) == codes


def test_a_start_before_the_quote_is_only_a_warning(tmp_path: Path):
    """Old jobs are entered too, so it is said and stops nothing."""
    job = lay_out(None, tmp_path)
    text = job.read_text(encoding="utf-8").replace("start: 2026-06-08", "start: 2026-05-13")
    job.write_text(text, encoding="utf-8")
    read = read_job(job, SCOPE)
    assert isinstance(read, ReadJob)
    assert [problem.severity for problem in read.problems] == [Severity.WARNING]


def test_every_rule_of_the_trade_holds_from_the_first_day():
    """A quote of the first day that is taken finds a value for every rule."""
    book = load_rules()
    late = []
    for rule_id, rule in book.rules.items():
        try:
            rule.at(FIRST_DAY)
        except LookupError:
            late.append(rule_id)
    assert late == []
    assert FIRST_DAY in {value.from_date for rule in book.rules.values() for value in rule.values}
