"""The whole job at one finish: recomputed, with what one unit of area more or less moves."""

from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from quotegen.money import ZERO
from quotegen.pricing.quoted.records import PricedQuote
from quotegen.quantity import Unit
from tests.pricing import shop

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


class TestOneMoreSquareFoot:
    """What one unit of area more or less moves, placement by placement."""

    def test_the_sum_of_the_rates_by_area(self, tmp_path):
        """Edges, lumps and trips are no part of it."""
        rates = {"base": shop.rate("$1.75 / sq ft"),
                 "forms": shop.rate("$4.80 / ft", "forms", of="outer edge"),
                 "lump": shop.rate("$320 lump", "cleanup")}  # fmt: skip
        (found,) = shop.quote(tmp_path, shop.job(), rate_book=shop.book(rates)).chosen.area_price
        assert (found.placement, str(found.rate), found.unit) == ("patio", "2.75", Unit.SQ_FT)

    def test_a_share_and_a_discount_by_share_follow(self, tmp_path):
        """2.15 with 4.5 % fuel, 4.35 and 1.00, less 3 %: 7.3688475; 20 of it are 147.38."""
        rates = {"base": shop.rate("$2.15 / sq ft"), "slab": shop.rate("$4.35 / sq ft", "slab"),
                 "fuel": shop.share("4.5 %", "base")}  # fmt: skip
        job = shop.job(discount={"name": "Neighbors", "share": "3 %"})
        priced = shop.quote(tmp_path, job, rate_book=shop.book(rates))
        assert [str(found.rate) for found in priced.chosen.area_price] == ["7.3688475"]
        assert str(priced.adjustment[-1].difference) == "147.38"

    def test_a_discount_as_a_sum_does_not(self, tmp_path):
        """$50 off leave the price of one more square foot at a dollar."""
        job = shop.job(discount={"name": "Neighbors", "amount": "$50"})
        priced = shop.quote(tmp_path, job, rate_book=shop.book())
        assert [str(found.rate) for found in priced.chosen.area_price] == ["1.00"]

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
