"""The price: totals, finishes recomputed, extras, the adjustment, unit prices."""

from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import ClassVar

import pytest
import yaml

from quotegen.money import ZERO
from quotegen.pricing.quoted.adjustment import WORKED_CHANGES, with_area_changed
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.price import price
from quotegen.pricing.quoted.records import PricedQuote
from quotegen.quantity import Unit
from tests.pricing import shop
from tests.world import EXAMPLES

EVERY_EXAMPLE = pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)
TWO = {"plain": shop.PLAIN, "fancy": shop.FANCY}
TRIP = {"trip": shop.rate("$85 / visit", "travel")}


def _two_finishes(folder: Path, *placements: shop.Typed, **more) -> PricedQuote:
    rate_book = shop.book({**TRIP, **shop.RINSE_AND_FILM}, TWO)
    return shop.quote(folder, shop.job(*placements, **more), rate_book=rate_book)


@EVERY_EXAMPLE
def test_a_total_is_the_sum_of_its_lines(job_file: Path):
    """At every finish the total is its lines and nothing else."""
    for finish in shop.example_results(job_file).quote.finishes:
        assert finish.total == sum((line.amount for line in finish.lines), ZERO)


@EVERY_EXAMPLE
def test_the_chosen_finish_comes_first(job_file: Path):
    """The finish of the job comes first, those to compare after it in their order."""
    results = shop.example_results(job_file)
    ids = [finish.id for finish in results.quote.finishes]
    assert ids == [results.job.finish, *results.job.typed.compare]
    assert results.quote.chosen.id == results.job.finish


class TestAFinishIsRecomputed:
    """Another finish is another job: trips, wash and sealer change with it."""

    def test_visits_travel_wash_and_sealer(self, tmp_path):
        """The fancy finish takes one trip more, a wash and a film; the plain one none of them."""
        plain, fancy = _two_finishes(tmp_path, compare=["fancy"]).finishes
        assert shop.amounts(plain) == {"trip": "170.00", "plain.patio": "200.00"}
        assert shop.amounts(fancy) == {
            "trip": "255.00", "rinse.patio": "20.00", "film.patio": "40.00",
            "fancy.patio": "400.00"}  # fmt: skip
        assert (plain.visits, fancy.visits) == (2, 3)

    def test_the_other_way_round(self, tmp_path):
        """It makes no difference which of two finishes is chosen and which compared."""
        first = _two_finishes(tmp_path, compare=["fancy"]).finishes
        second = _two_finishes(tmp_path, finish="fancy", compare=["plain"]).finishes
        assert {f.id: f for f in second}["plain"].total == first[0].total
        assert {f.id: f for f in first}["fancy"].total == second[0].total

    def test_a_placement_with_its_own_finish_keeps_it(self, tmp_path):
        """A walk that was asked for in plain stays plain, whatever the patio gets."""
        walk = shop.placement("5 ft x 5 ft", "walk", at="30 ft", finish="plain")
        plain, fancy = _two_finishes(
            tmp_path, shop.placement("20 ft x 10 ft"), walk, compare=["fancy"]
        ).finishes
        assert shop.amounts(plain)["plain.walk"] == shop.amounts(fancy)["plain.walk"] == "25.00"
        assert "rinse.walk" not in shop.amounts(fancy)
        assert "rinse.patio" in shop.amounts(fancy)
        assert fancy.visits == 3  # the patio needs the wash all the same

    def test_a_fancy_walk_brings_its_own_trip(self, tmp_path):
        """One fancy walk on a plain job brings its wash, and the trip for it."""
        walk = shop.placement("5 ft x 5 ft", "walk", at="30 ft", finish="fancy")
        chosen = _two_finishes(tmp_path, shop.placement("20 ft x 10 ft"), walk).chosen
        assert shop.amounts(chosen) == {
            "trip": "255.00", "rinse.walk": "2.50", "film.walk": "5.00", "plain.patio": "200.00",
            "fancy.walk": "50.00"}  # fmt: skip

    def test_the_example_books_finishes(self):
        """Slate needs five visits and a film; broom four, no wash and the sealer that soaks in."""
        (deck,) = (path for path in shop.JOBS if "orchard" in path.name)
        slate, exposed, broom = shop.example_results(deck).quote.finishes
        assert [f.visits for f in (slate, exposed, broom)] == [5, 4, 4]
        assert shop.amounts(slate)["travel"] == "425.00"
        assert shop.amounts(broom)["travel"] == "340.00"
        assert {"wash.deck", "seal_film.deck"} <= set(shop.amounts(exposed))
        assert {"wash.deck", "seal_film.deck"} & set(shop.amounts(broom)) == set()
        assert "seal_penetrating.deck" in shop.amounts(broom)


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


class TestOneMoreSquareFoot:
    """What one unit of area more or less moves, placement by placement."""

    def test_the_sum_of_the_rates_by_area(self, tmp_path):
        """Edges, lumps and trips are no part of it."""
        rates = {"base": shop.rate("$1.75 / sq ft"),
                 "forms": shop.rate("$4.80 / ft", "forms", of="outer edge"),
                 "lump": shop.rate("$320 lump", "cleanup")}  # fmt: skip
        (found,) = shop.quote(tmp_path, shop.job(), rate_book=shop.book(rates)).chosen.area_price
        assert (found.placement, str(found.rate), found.unit) == ("patio", "2.75", Unit.SQ_FT)

    def test_a_typed_area_does_not_follow(self, tmp_path):
        """50 sq ft of old slab to break out stay 50, however large the new one becomes."""
        rates = {"old": shop.rate("$2.60 / sq ft", "demolition", applies="asked")}
        asked = shop.job(shop.placement("20 ft x 10 ft", include={"old": "50 sq ft"}))
        priced = shop.quote(tmp_path, asked, rate_book=shop.book(rates))
        assert [str(found.rate) for found in priced.chosen.area_price] == ["1.00"]
        (more,) = (row for row in priced.adjustment if row.change == Fraction(1, 10))
        assert str(more.difference) == "20.00"

    @EVERY_EXAMPLE
    def test_it_is_what_the_adjustment_does(self, job_file: Path):
        """Ten more square feet (or meters) move the price by ten times the rate, to the cent.

        Each of the lines by area is rounded by itself, so the sum may be off by half a cent a line.
        """
        results = shop.example_results(job_file)
        chosen = results.quote.chosen
        for found in chosen.area_price:
            measured = results.takeoff.placement(found.placement)
            metric = found.unit is Unit.M2
            area = measured.area_m2 if metric else measured.area_sqft
            lines = [
                ln for ln in chosen.lines if ln.placement == found.placement and ln.follows_area
            ]
            moved = sum(shop.half_up((area + 10) * ln.rate) - ln.amount for ln in lines)
            assert abs(moved - 10 * found.rate) <= Decimal("0.005") * 2 * len(lines)


def test_unit_prices_are_those_for_what_is_found(tmp_path):
    """The prices for what cannot be seen are told, in the units of the job, and not charged."""
    rates = {"soft": shop.rate("$96 / cu yd", applies="if found"), "sure": shop.rate("$1 lump")}
    for units, told in (("us", ("soft", "96", "cu yd")), ("metric", ("soft", "125.56", "m3"))):
        priced = shop.quote(tmp_path, shop.job(units=units), rate_book=shop.book(rates))
        assert [(u.id, str(u.rate), u.unit.value) for u in priced.unit_prices] == [told]
        assert "soft" not in shop.by_id(priced.chosen)


def test_placements_are_rounded_one_by_one(tmp_path):
    """The area of the job is the sum of the areas as priced, not the sum rounded again."""
    parts = (shop.placement("10.04 ft x 1 ft", "one"),
             shop.placement("10.04 ft x 1 ft", "two", at="30 ft"))  # fmt: skip
    results = shop.results(tmp_path, shop.job(*parts), rate_book=shop.book())
    assert str(results.takeoff.area(results.job.units)) == "20.0"  # 20.08 in one piece
