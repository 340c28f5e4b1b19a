"""Checks across files that a single message does not show: both sides of each line."""

from pathlib import Path

import pytest

from quotegen.problem import Severity
from quotegen.reading.checks.asked import FIRST_DAY
from quotegen.reading.read import read_job
from quotegen.reading.records import ReadJob
from quotegen.trade.rules import load_rules
from tests.messages.case_files import GOOD, lay_out

SCOPE = frozenset({"slab", "steps", "drain", "demolition"})


def _codes(folder: Path, **changed: tuple[str, str]) -> list[str]:
    """Return the codes found after a change of one text in a good file."""
    job = lay_out(None, folder)
    for name, (before, after) in changed.items():
        path = folder / f"{name.replace('_', '-')}.yaml"
        text = path.read_text(encoding="utf-8")
        assert before in text
        path.write_text(text.replace(before, after, 1), encoding="utf-8")
    read = read_job(job, SCOPE)
    problems = read.problems if isinstance(read, ReadJob) else read
    return [problem.code for problem in problems]


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
    assert _codes(tmp_path, job=("placements:", f"{typed}\nplacements:")) == codes


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
    assert _codes(tmp_path, job=("date: 2026-05-14", f"date: {quoted}")) == codes


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


@pytest.mark.parametrize(
    ("before", "after", "codes"),
    [
        ("rate: $4.20 / sq ft", "rate: $4.20 / sq ft, cost: $3 / sq ft", []),
        ("rate: $4.20 / sq ft", "rate: $4.20 / sq ft, cost: $3 / ft", ["cost-unit"]),
        ("rate: $1.90 / sq ft", "rate: $1.90 / sq ft, cost: $30 lump", ["cost-unit"]),
        ("rate: $4.20 / sq ft", "rate: $4.20 / ft", ["rate-of"]),
        ("rate: $4.20 / sq ft", "rate: $4.20 / ft, of: outer edge", []),
        ("rate: $4.20 / sq ft", "rate: $45 / m2", ["metric-rate"]),
        ("rate: $1.90 / sq ft", "rate: $1.90 / ft", ["finish-unit"]),
        ("sealer: none", "sealer: none, brings: [slab]", ["brings-not-with-finish"]),
        ("sealer: none", "sealer: none, brings: [wash]", ["missing-rate"]),
        ("covers: [slab]", "covers: [slab, moat]", ["unknown-scope-item"]),
        ("covers: [slab]", "covers: [slab], reinforcement: bar", ["unknown-reinforcement"]),
        ("visit: pour", "visit: seal", ["unknown-visit"]),
    ],
)
def test_a_book_agrees_with_itself(tmp_path: Path, before: str, after: str, codes: list[str]):
    """What a book names it has, and price and cost are for one of the same thing."""
    assert _codes(tmp_path, rate_book=(before, after)) == codes


@pytest.mark.parametrize(("visit", "codes"), [("form", []), ("forms", ["unknown-visit"])])
def test_a_payment_falls_due_at_a_visit_of_the_book(tmp_path: Path, visit: str, codes: list[str]):
    """The company's terms and the book name the same visits."""
    assert _codes(tmp_path, company=("share: 10 %", f"share: 10 %, at_visit: {visit}")) == codes


def test_a_job_with_an_error_is_still_handed_on(tmp_path: Path):
    """So that its shapes are looked at too: one evening, one list."""
    job = lay_out(None, tmp_path)
    job.write_text((GOOD / "job.yaml").read_text(encoding="utf-8").replace("broom", "brom"),
                   encoding="utf-8")  # fmt: skip
    read = read_job(job, SCOPE)
    assert isinstance(read, ReadJob)
    assert [problem.code for problem in read.problems] == ["unknown-finish"]
