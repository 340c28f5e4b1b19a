"""Prices against jobs that were posted with their money, and against the trade's round figures.

Each case names where it was published: title and site, as posted; or it says that it is common
practice, for which there is no source. Expected values are left as arithmetic where they have any.
"""

import math
from decimal import Decimal
from fractions import Fraction

import pytest

from quotegen.money import to_cents, total
from quotegen.pricing.quoted.price import price
from quotegen.trade.concrete import net_volume_cuyd
from tests.pricing import shop
from tests.takeoff.plans import Typed, edges, slab

M2_PER_SQFT = 0.3048**2
M_PER_FT = 0.3048
STAMPED_ONLY = {**shop.PLAIN, "name": "Stamped", "kind": "stamped_texture"}
R1 = {"stamped": {**STAMPED_ONLY, "rate": "$7.50 / sq ft"}}


def _yard(side: str) -> str:
    """A yard of so many feet by 40, stamped at one price for all the work."""
    return shop.job(shop.placement(f"{side} x 40 ft"), finish="stamped")


class TestCafePatio:
    """S18. "The owners of a restaurant", answer 953848, wyzant.com: $4,234.15.

    In meters: rectangle 6 x 4, right triangles 3 x 4 and 5 x 4, half circle of radius 3; stone at
    $52.95 / m2 and edging at $15.50 / m, 10 % for cutting on both, 13 % tax. The core has neither
    a cutting allowance nor a tax, so those two are worked out here with the core's money alone.
    """

    PATIO: tuple[Typed, ...] = (
        {"rectangle": "6 m x 4 m"},
        {"right_triangle": "4 m x 3 m", "turn": "90 deg"},
        {"right_triangle": "5 m x 4 m", "at": ("6 m", "0 m")},
        {"half_circle": {"radius": "3 m"}, "at": ("3 m", "0 m"), "turn": "180 deg"},
    )

    def test_the_area_and_edge_lines(self, tmp_path):
        """Our lines before allowance and tax: 54.14 m2 x 52.95 and 34.83 m x 15.50.

        The book is in feet: 52.95 x 0.09290304 = 4.919216 a sq ft, and 15.50 x 0.3048 = 4.7244 a
        foot, which convert back to the published metric rates to the cent. The published
        quantities are 54.1372 and 34.8279; ours are rounded once, to 0.01, before they are priced.
        """
        rates = {"edging": shop.rate("$4.7244 / ft", "forms", of="outer edge")}
        stone = {"plain": {**shop.PLAIN, "rate": "$4.919216 / sq ft"}}
        patio = {"id": "cafe", "use": "patio", "add": [dict(shape) for shape in self.PATIO]}
        priced = shop.quote(tmp_path, shop.job(patio, units="metric"),
                            rate_book=shop.book(rates, stone))  # fmt: skip
        found = {
            line.rate_id: (str(line.quantity), str(line.rate), line.amount)
            for line in priced.chosen.lines
        }
        assert found == {
            "edging": ("34.83", "15.50", Decimal("539.87")),  # 539.865, half a cent up
            "plain": ("54.14", "52.95", Decimal("2866.71")),  # 2,866.713
        }
        assert priced.chosen.total == Decimal("2866.71") + Decimal("539.87")

    def test_quantities_before_rounding(self):
        """The exact area and edge are those published: 54.1372 m2 and 34.8279 m."""
        measured = slab(*self.PATIO)
        assert measured.area_sqft * M2_PER_SQFT == pytest.approx(40 + 4.5 * math.pi, abs=1e-6)
        (outer_m,) = (
            feet * M_PER_FT for edge, feet in edges(measured).items() if edge == "outer edge"
        )
        assert outer_m == pytest.approx(6 + 3 + 5 + 5 + math.sqrt(41) + 3 * math.pi, abs=1e-6)

    @pytest.mark.parametrize(
        ("area_m2", "edge_m", "before_tax", "area_price", "edge_price"),
        [
            ("54.1372", "34.8279", False, "3563.14", "671.01"),  # rounded once, at the end
            ("54.137", "34.828", True, "3563.13", "671.02"),  # published: also before the tax
            ("54.14", "34.83", False, "3563.32", "671.05"),  # our quantities, to 0.01
        ],
    )
    def test_the_cents_follow_the_order_of_rounding(
        self, area_m2: str, edge_m: str, before_tax: bool, area_price: str, edge_price: str
    ):
        """The source's $3,563.13 and $671.02 come from cents taken before the tax as well.

        Rounded once they are $3,563.14 and $671.01; the sum, $4,234.15, is the same by luck. So
        the order must be fixed: ours is the quantity to its step, then the line to the cent, once.
        """
        allowance, tax = Decimal("1.10"), Decimal("1.13")
        prices = []
        for quantity, rate in ((area_m2, "52.95"), (edge_m, "15.50")):
            line = Decimal(quantity) * allowance * Decimal(rate)
            prices.append(to_cents((to_cents(line) if before_tax else line) * tax))
        assert [str(amount) for amount in prices] == [area_price, edge_price]
        assert (total(tuple(prices)) == Decimal("4234.15")) == (area_m2 != "54.14")


class TestConcreteInBackyard:
    """R1. "Concrete in backyard: how do we measure its size", advice thread 255972, zillow.com.

    A stamped yard at $7.50 / sq ft. The owner's drawing says 1,607 sq ft; the contractor reckons
    23 cu yd x 81 = 1,863 sq ft from the concrete that was delivered.
    """

    @pytest.mark.parametrize(
        ("side", "area", "amount"),
        [("40.175 ft", "1607.0", "12052.50"), ("46.575 ft", "1863.0", "13972.50")],
    )
    def test_both_prices(self, tmp_path, side: str, area: str, amount: str):
        """1,607 x 7.50 and 1,863 x 7.50, from the job file to the total."""
        results = shop.results(tmp_path, _yard(side), rate_book=shop.book(finishes=R1))
        (line,) = results.quote.chosen.lines
        assert (str(line.quantity), str(line.amount)) == (area, amount)
        assert (
            results.quote.chosen.total == line.amount == to_cents(Decimal(area) * Decimal("7.50"))
        )

    def test_the_difference(self, tmp_path):
        """256 sq ft are $1,920.00, and 15.93 % of 1,607."""
        drawn, reckoned = (
            shop.results(tmp_path, _yard(side), rate_book=shop.book(finishes=R1))
            for side in ("40.175 ft", "46.575 ft")
        )
        gap = reckoned.takeoff.area(drawn.job.units) - drawn.takeoff.area(drawn.job.units)
        assert gap == 1863 - 1607 == 256
        assert reckoned.quote.chosen.total - drawn.quote.chosen.total == Decimal("1920.00")
        assert round(gap / 1607 * 100, 2) == Decimal("15.93")
        # The same job, priced on the other measure, gives the same difference.
        assert price(drawn.job, reckoned.takeoff).chosen.total == Decimal("13972.50")

    def test_past_the_band(self, tmp_path):
        """115 % of 1,607 is 1,848.05: the reckoned area is outside the band by 14.95 sq ft."""
        job = shop.results(tmp_path, _yard("40.175 ft"), rate_book=shop.book(finishes=R1)).job
        band = 1 + job.company.adjustment.reopen_outside
        assert 1607 * band == Fraction("1848.05")
        assert 1863 - 1607 * band == Fraction("14.95")

    def test_yards_are_a_note(self, tmp_path):
        """At 4 in. flat 1,607 sq ft take 19.84 cu yd; 23 mean 4.64 in. on average."""
        results = shop.results(tmp_path, _yard("40.175 ft"), rate_book=shop.book(finishes=R1))
        net = net_volume_cuyd(Decimal(1607), Fraction(4), results.rules, results.job.quote_date)
        assert float(net) == pytest.approx(19.84, abs=0.005)
        assert pytest.approx(4.64, abs=0.005) == 23 * 27 / 1607 * 12
        assert {line.unit.value for line in results.quote.chosen.lines} == {"sq ft"}


class TestRoundFigures:
    """Figures that the trade says aloud. Common practice, no source."""

    def test_a_deck_by_the_foot(self, tmp_path):
        """Common practice: 1,500 sq ft at $15 is $22,500."""
        finishes = {"plain": {**shop.PLAIN, "rate": "$15 / sq ft"}}
        deck = shop.job(shop.placement("50 ft x 30 ft"))
        assert shop.quote(tmp_path, deck, rate_book=shop.book(finishes=finishes)).chosen.total == (
            1500 * 15
        )

    @pytest.mark.parametrize("price", ["$40 / ft", "$40 / lineal foot", "$40 / lin ft"])
    def test_an_edge_by_the_lineal_foot(self, tmp_path, price: str):
        """Common practice: 100 lineal ft at $40 is $4,000."""
        rates = {"coping": shop.rate(price, "cast_edge", of="pool edge")}
        pool = {"rectangle": "30 ft x 20 ft", "at": ["5 ft", "5 ft"], "is": "pool"}
        deck = {**shop.placement("40 ft x 30 ft"), "take_away": [pool]}
        lines = shop.by_id(shop.quote(tmp_path, shop.job(deck), rate_book=shop.book(rates)).chosen)
        coping = lines["coping.patio"]
        assert coping.quantity == 2 * (30 + 20)
        assert coping.amount == 100 * 40

    def test_stamped_is_about_twice_broom(self, tmp_path):
        """Common practice: stamped commonly costs about twice broom, all work counted.

        With everything under the surface at $5.00, broom is $3.00 more and stamped, with its
        wash and sealer, $11.00 more: $8 against $16 a foot, and one trip more on a small lump.
        """
        rates = {"under": shop.rate("$5.00 / sq ft"), "trip": shop.rate("$85 / visit", "travel"),
                 "rinse": shop.rate("$0.60 / sq ft", "wash", applies="with finish"),
                 "film": shop.rate("$1.40 / sq ft", "sealing", applies="with finish")}  # fmt: skip
        finishes = {
            "broom": {**shop.PLAIN, "rate": "$3.00 / sq ft"},
            "stamped": {**shop.FANCY, "rate": "$9.00 / sq ft"},
        }
        patio = shop.job(shop.placement("30 ft x 20 ft"), finish="broom", compare=["stamped"])
        broom, stamped = shop.quote(tmp_path, patio, rate_book=shop.book(rates, finishes)).finishes
        assert broom.total == 600 * 8 + 2 * 85
        assert stamped.total == 600 * 16 + 3 * 85
        assert Decimal("1.9") < stamped.total / broom.total < Decimal("2.1")
