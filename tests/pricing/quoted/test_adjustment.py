"""The adjustment: worked figures for a changed area, signatures, and both ends of the tape."""

from fractions import Fraction
from pathlib import Path
from typing import ClassVar

import pytest
import yaml

from quotegen.money import ZERO
from quotegen.pricing.quoted.adjustment import WORKED_CHANGES, ends_of_range, with_area_changed
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.price import price
from tests.pricing import shop
from tests.world import EXAMPLES

EVERY_EXAMPLE = pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)


class TestAdjustment:
    """The rows that show what happens if the forms measure more or less."""

    RATES: ClassVar = {"lump": shop.rate("$800 lump", "cleanup")}

    def _rows(self, folder: Path, **company) -> dict[Fraction, tuple[str, str, str, bool]]:
        text = yaml.safe_load((EXAMPLES / "company.yaml").read_text(encoding="utf-8"))
        text["adjustment"] |= company
        text["closed"] = [str(day) for day in text["closed"]]
        priced = shop.quote(folder, shop.job(), rate_book=shop.book(self.RATES),
                            company=shop.as_yaml(text))  # fmt: skip
        return {
            row.change: (str(row.area), str(row.difference), str(row.total), row.needs_signatures)
            for row in priced.adjustment
        }

    def test_difference_and_total(self, tmp_path):
        """200 sq ft at a dollar beside $800 of fixed work: only the dollar a foot moves."""
        assert self._rows(tmp_path) == {
            Fraction(-10, 100): ("180.0", "-20.00", "980.00", False),
            Fraction(-5, 100): ("190.0", "-10.00", "990.00", False),
            Fraction(0): ("200.0", "0.00", "1000.00", False),
            Fraction(5, 100): ("210.0", "10.00", "1010.00", False),
            Fraction(10, 100): ("220.0", "20.00", "1020.00", False),
        }

    @pytest.mark.parametrize(
        ("promised", "rows"),
        [("0 %", [5, 10]), ("0.9 %", [5, 10]), ("1 %", [10]), ("1.9 %", [10]), ("2 %", []),
         ("5 %", []), ("100 %", [])],
    )  # fmt: skip
    def test_signatures_follow_the_price_and_not_the_area(
        self, tmp_path, promised: str, rows: list[int]
    ):
        """The clause speaks of the price: 10 % more area is 2 % more price here.

        A rise of just the promised share is not more than it.
        """
        found = self._rows(tmp_path, no_pour_above=promised)
        assert [change * 100 for change, row in found.items() if row[3]] == rows

    @EVERY_EXAMPLE
    def test_rows_of_the_examples(self, job_file: Path):
        """Every row is the job priced again; at zero nothing changes, and each is in order."""
        results = shop.example_results(job_file)
        rows = results.quote.adjustment
        assert tuple(row.change for row in rows) == WORKED_CHANGES
        for row in rows:
            assert row.total == results.quote.chosen.total + row.difference
            changed = with_area_changed(results.takeoff, row.change)
            assert row.area == changed.area(results.job.units)
            assert row.total == price(results.job, changed).chosen.total
        assert [row.total for row in rows] == sorted(row.total for row in rows)
        assert [row.difference for row in rows if row.change == 0] == [ZERO]

    def test_a_job_at_the_minimum_does_not_move(self, tmp_path):
        """A tenth more area of the smallest job still costs the minimum."""
        priced = shop.quote(tmp_path, shop.job(), rate_book=shop.book(minimum="$500"))
        assert {str(row.total) for row in priced.adjustment} == {"500.00"}
        assert {str(row.difference) for row in priced.adjustment} == {"0.00"}


@EVERY_EXAMPLE
def test_the_range_is_priced_again_by_the_core(job_file: Path):
    """Both ends are the whole job priced at the areas there, low first."""
    results = shop.example_results(job_file)
    low, high = results.quote.tape_range
    for end, measured in zip((low, high), ends_of_range(results.takeoff), strict=True):
        assert end.total == price_at(results.job, measured, results.job.finish).total
        assert end.difference == end.total - results.quote.chosen.total
    assert low.total <= results.quote.chosen.total <= high.total
