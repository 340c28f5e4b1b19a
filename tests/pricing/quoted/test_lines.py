"""Lines: quantity times rate to the cent, and their working."""

from decimal import Decimal
from pathlib import Path

import pytest

from quotegen.explain.results import Results
from quotegen.money import ZERO, to_cents
from quotegen.pricing.quoted.records import Line
from quotegen.quantity import Unit
from quotegen.reading.files.rate_book import Basis
from tests.pricing import shop

EVERY_EXAMPLE = pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)


@EVERY_EXAMPLE
class TestEveryLineOfTheExamples:
    """What must hold for every line of every finish and every extra."""

    def test_quantity_times_rate_is_the_amount(self, job_file: Path):
        """A line is rounded half-up to the cent, once; so a reader can check it by hand."""
        lines = tuple(shop.all_lines(shop.example_results(job_file).quote))
        assert lines
        for line in lines:
            assert line.amount == shop.half_up(line.quantity * line.rate), line.id
            assert line.amount.as_tuple().exponent == -2
            assert line.quantity > 0

    def test_the_quantity_is_that_of_the_takeoff(self, job_file: Path):
        """A line by the area of its placement has the area that the plan prints."""
        results = shop.example_results(job_file)
        for line in shop.all_lines(results.quote):
            if line.follows_area:
                assert line.placement is not None
                measured = results.takeoff.placement(line.placement)
                metric = line.unit is Unit.M2
                assert line.quantity == (measured.area_m2 if metric else measured.area_sqft)

    def test_ids_are_unique(self, job_file: Path):
        """No two lines of a finish have the same id."""
        for finish in shop.example_results(job_file).quote.finishes:
            shop.by_id(finish)

    def test_the_working_ends_at_the_amount(self, job_file: Path):
        """The last step of the working is the amount, and its inputs multiply to it."""
        for line in filter(_has_a_rate, shop.all_lines(shop.example_results(job_file).quote)):
            assert (line.working.value, line.working.unit) == (line.amount, "$")
            quantity, rate = line.working.inputs
            assert (quantity.value, quantity.unit) == (line.quantity, line.unit.value)
            assert (rate.value, rate.unit) == (line.rate, f"$ / {line.unit.value}")
            assert to_cents(quantity.value * rate.value) == line.working.value
            assert line.name in line.working.name

    def test_the_working_says_where_it_was_typed(self, job_file: Path):
        """A quantity that rests on the job file names the file and a line in it."""
        results = shop.example_results(job_file)
        length = len(job_file.read_text(encoding="utf-8").splitlines())
        for line in shop.all_lines(results.quote):
            source = line.working.inputs[0].source
            if line.placement is not None or line.unit is Unit.VISIT:
                assert source is not None, line.id
            if source is not None:
                assert source.file == str(job_file)
                assert 1 <= source.line <= length

    def test_bases(self, job_file: Path):
        """Only what the forms settle is measured; trips and lumps are fixed or allowances."""
        for line in shop.all_lines(shop.example_results(job_file).quote):
            if not _has_a_rate(line):
                continue
            if line.unit in {Unit.VISIT, Unit.EACH, Unit.LUMP}:
                assert line.basis in {Basis.FIXED, Basis.ALLOWANCE}, line.id
            else:
                assert line.basis is Basis.MEASURED, line.id


@pytest.mark.parametrize(
    ("item", "text"),
    [
        ("drain", "  drain: 24 ft"),
        ("step.patio", "    step: '2'"),
        ("haul", "  haul: 6 cu yd"),
    ],
)
def test_a_typed_count_names_its_own_line(tmp_path, item: str, text: str):
    """The working of a typed quantity points at the very line where it was typed."""
    rates = {
        "drain": shop.rate("$46 / ft", "drain", applies="asked"),
        "step": shop.rate("$265 each", "steps", applies="asked"),
        "haul": shop.rate("$58 / cu yd", "demolition", applies="asked"),
    }
    asked = shop.job(shop.placement("20 ft x 10 ft", include={"step": "2"}),
                     include={"haul": "6 cu yd"}, extras={"drain": "24 ft"})  # fmt: skip
    priced = shop.quote(tmp_path, asked, rate_book=shop.book(rates))
    found = {line.id: line for line in shop.all_lines(priced)}[item].working.inputs[0].source
    assert found is not None
    assert Path(found.file).name == "job.yaml"
    assert asked.splitlines()[found.line - 1] == text


def test_a_whole_job_line_of_the_book_names_no_place(tmp_path):
    """A lump that the book charges on every job was not typed in the job file."""
    rates = {"cleanup": shop.rate("$320 lump", "cleanup"), "trip": shop.rate("$85 / visit")}
    lines = shop.by_id(shop.quote(tmp_path, shop.job(), rate_book=shop.book(rates)).chosen)
    assert lines["cleanup"].working.inputs[0].source is None
    trip = lines["trip"].working.inputs[0].source
    assert trip is not None  # the finish settles how many trips there are
    assert shop.job().splitlines()[trip.line - 1] == "finish: plain"


@pytest.mark.parametrize(
    ("side", "price", "amount"),
    [
        ("10.01 ft", "$0.05 / sq ft", "5.01"),  # 100.1 x 0.05 = 5.005, up
        ("10.03 ft", "$0.05 / sq ft", "5.02"),  # 5.015, up: half to even would agree
        ("10.00 ft", "$0.125 / sq ft", "12.50"),  # a rate may have parts of a cent
        ("10.02 ft", "$0.125 / sq ft", "12.53"),  # 100.2 x 0.125 = 12.525, up
        ("10.04 ft", "$0.001 / sq ft", "0.10"),  # 0.1004, down
    ],
)
def test_half_a_cent_goes_up(tmp_path, side: str, price: str, amount: str):
    """Rounding is half-up, and nothing is rounded before the amount."""
    one = shop.job(shop.placement(f"{side} x 10 ft"))
    lines = shop.by_id(
        shop.quote(tmp_path, one, rate_book=shop.book({"a": shop.rate(price)})).chosen
    )
    assert str(lines["a.patio"].amount) == amount


class TestMetricLines:
    """In a metric job every line is metric and multiplies out to the cent."""

    PLAN = shop.placement("4.8 m x 13.5 m")

    def test_quantity_times_metric_rate(self, tmp_path):
        """64.80 m2 at 9.50 a sq ft: the rate is 102.26 a m2, and the line 64.80 x 102.26."""
        priced = shop.quote(tmp_path, shop.job(self.PLAN, units="metric"),
                            rate_book=shop.book({"a": shop.rate("$9.50 / sq ft")}))  # fmt: skip
        line = shop.by_id(priced.chosen)["a.patio"]
        assert (str(line.quantity), str(line.rate), str(line.amount)) == (
            "64.80", "102.26", "6626.45")  # fmt: skip
        assert priced.area_unit is Unit.M2

    def test_no_line_is_in_feet(self):
        """No line of the metric example is by the foot or the yard, in any finish or extra."""
        (metric,) = (path for path in shop.JOBS if "ferry" in path.name)
        units = {line.unit for line in shop.all_lines(shop.example_results(metric).quote)}
        assert units & {Unit.SQ_FT, Unit.FT, Unit.CU_YD} == set()
        assert {Unit.M2, Unit.M, Unit.M3} <= units


def test_an_allowance_is_marked_as_one(tmp_path):
    """A lump on the basis of an allowance says so, and counts in the total."""
    rates = {"lawn": shop.rate("$260 lump", "protection", applies="asked", basis="allowance")}
    asked = shop.job(include={"lawn": "yes"})
    priced = shop.quote(tmp_path, asked, rate_book=shop.book(rates))
    assert shop.by_id(priced.chosen)["lawn"].basis is Basis.ALLOWANCE
    assert str(priced.chosen.total) == "460.00"


def _sum(lines: tuple[Line, ...]) -> Decimal:
    return sum((leaf.amount for leaf in lines), ZERO)


@EVERY_EXAMPLE
def test_no_line_is_lost_on_the_way(job_file: Path):
    """Line by line, the working holds what the total is made of."""
    results: Results = shop.example_results(job_file)
    for finish in results.quote.finishes:
        assert _sum(finish.lines) == finish.total
        for line in filter(_has_a_rate, finish.lines):
            assert [step.value for step in line.working.inputs] == [line.quantity, line.rate]


def _has_a_rate(line: Line) -> bool:
    """Whether a line is a quantity at a rate, and does not follow from other lines."""
    return line.pays_for_work and len(line.working.inputs) == 2 and line.rate_id != "card"
