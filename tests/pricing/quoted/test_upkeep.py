"""Upkeep: new coats of sealer over ten years, at the company's price of today."""

from decimal import Decimal

from quotegen.money import Money
from quotegen.pricing.quoted.upkeep import CoatPrices, Upkeep
from tests.pricing import shop

SOAKED = {**shop.PLAIN, "sealer": "penetrating", "reseal": "$0.30 / sq ft"}


def _coats(coat: str, least: str, most: str) -> CoatPrices:
    return CoatPrices(
        coat=Money(Decimal(coat)), least=Money(Decimal(least)), most=Money(Decimal(most))
    )


def _upkeep(folder, finish: shop.Typed, **more) -> Upkeep | None:
    book = shop.book(shop.RINSE_AND_FILM, {"plain": finish, "fancy": shop.FANCY})
    return shop.results(folder, shop.job(**more), rate_book=book).upkeep.get("plain")


def test_a_coat_costs_the_reseal_rate(tmp_path):
    """200 sq ft at $0.30 is $60 a coat; a coat of 3 to 5 years falls due two or three times.

    Common practice, as in trade/data/sealing.yaml: at years 5 and 10, or at 3, 6 and 9.
    """
    upkeep = _upkeep(tmp_path, SOAKED)
    assert upkeep is not None
    assert (upkeep.years, upkeep.least_coats, upkeep.most_coats) == (10, 2, 3)
    assert upkeep.prices == _coats("60", "120", "180")


def test_without_that_rate_it_costs_what_the_first_sealing_does(tmp_path):
    """A film at $0.20 a foot is $40 a coat, three to five times, and no line of another scope."""
    upkeep = _upkeep(tmp_path, shop.FANCY)
    assert upkeep is not None
    assert upkeep.prices == _coats("40", "120", "200")


def test_a_price_that_pays_for_more_than_sealing_tells_no_coat(tmp_path):
    """All-in at $14.50 a foot, 3 to 5 coats fall due, and what one costs is not known."""
    all_in = {**shop.FANCY, "rate": "$14.50 / sq ft", "covers": ["slab", "sealing"], "brings": []}
    upkeep = _upkeep(tmp_path, all_in)
    assert upkeep is not None
    assert (upkeep.least_coats, upkeep.most_coats, upkeep.prices) == (3, 5, None)


def test_without_a_sealer_there_is_none(tmp_path):
    """A finish that is never sealed has no upkeep to count."""
    assert _upkeep(tmp_path, shop.PLAIN) is None
