"""The price: the chosen finish first, extras, subtotals, unit prices."""

from decimal import Decimal
from pathlib import Path
from typing import ClassVar

import pytest

from quotegen.money import ZERO
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.records import PricedQuote
from tests.pricing import offers, shop

EVERY_EXAMPLE = pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)
TRIP = {"trip": shop.rate("$85 / visit", "travel")}


@EVERY_EXAMPLE
def test_the_chosen_finish_comes_first(job_file: Path):
    """The finish of the job comes first, those to compare after it in their order."""
    results = shop.example_results(job_file)
    ids = [finish.id for finish in results.quote.finishes]
    assert ids == [results.job.finish, *results.job.typed.compare]
    assert results.quote.chosen.id == results.job.finish


class TestExtras:
    """An extra costs what the total rises by when it is added."""

    RATES: ClassVar = {
        **TRIP,
        "drain": shop.rate("$46 / ft", "drain", applies="asked"),
        "step": shop.rate("$265 each", "steps", applies="asked"),
    }

    def _extras(self, folder: Path, minimum: str = "$0", **extras: str) -> PricedQuote:
        asked = shop.job(extras=extras)
        return shop.quote(folder, asked, rate_book=shop.book(self.RATES, minimum=minimum))

    def test_priced_by_repricing(self, tmp_path):
        """Each extra stands by itself, and is not in the total."""
        priced = self._extras(tmp_path, drain="24 ft", step="2")
        assert {e.id: str(e.amount) for e in priced.extras} == {
            "drain": "1104.00",
            "step": "530.00",
        }
        assert str(priced.chosen.total) == "370.00"
        assert {line.id for extra in priced.extras for line in extra.lines} == {"drain", "step"}

    def test_both_together_cost_their_sum(self, tmp_path):
        """Without a minimum, two extras together cost what they cost one by one."""
        results = shop.results(tmp_path, shop.job(extras={"drain": "24 ft", "step": "2"}),
                               rate_book=shop.book(self.RATES))  # fmt: skip
        both = price_at(results.job, results.takeoff, "plain", ("drain", "step"))
        single = sum((e.amount for e in results.quote.extras), ZERO)
        assert both.total - results.quote.chosen.total == single

    @pytest.mark.parametrize(
        ("minimum", "adds"),
        [("$370", "1104.00"), ("$500", "974.00"), ("$1,474", "0.00"), ("$2,000", "0.00")],
    )
    def test_under_the_minimum_it_fills_the_top_up_first(self, tmp_path, minimum: str, adds: str):
        """On the smallest job an extra adds only what goes past the minimum."""
        (drain,) = self._extras(tmp_path, minimum, drain="24 ft").extras
        assert str(drain.amount) == adds
        assert [str(line.amount) for line in drain.lines] == ["1104.00"]


def test_unit_prices_are_those_for_what_is_found(tmp_path):
    """The prices for what cannot be seen are told, in the units of the job, and not charged."""
    rates = {"soft": shop.rate("$96 / cu yd", applies="if found"), "sure": shop.rate("$1 lump")}
    for units, told in (("us", ("soft", "96", "cu yd")), ("metric", ("soft", "125.56", "m3"))):
        priced = shop.quote(tmp_path, shop.job(units=units), rate_book=shop.book(rates))
        assert [(u.id, str(u.rate), u.unit.value) for u in priced.unit_prices] == [told]
        assert "soft" not in shop.by_id(priced.chosen)


def test_subtotals_add_up(tmp_path):
    """By placement and by scope; a line of two scope items counts once, under the first."""
    priced = shop.quote(tmp_path, offers.two_placements(), rate_book=offers.BOOK)
    for parts in (priced.by_placement, priced.by_scope):
        assert sum((part.amount for part in parts), ZERO) == priced.chosen.total
    assert [part.of for part in priced.by_placement] == ["deck", "walk", None]
    slab = next(part for part in priced.by_scope if part.of == "slab")
    assert (slab.also, slab.amount) == (("placing",), Decimal(480))
