"""Sealer intervals and quantities."""

from datetime import date
from decimal import Decimal

from quotegen.trade import sealing
from quotegen.trade.rules import load_rules
from quotegen.trade.sealing import Sealer

RULES = load_rules()
ON = date(2026, 11, 24)


def test_a_film_is_renewed_sooner() -> None:
    """A film wears before a penetrating sealer does."""
    film = sealing.reseal_years(Sealer.FILM, RULES, ON)
    soaked = sealing.reseal_years(Sealer.PENETRATING, RULES, ON)
    assert (film.least, film.most) == (Decimal(2), Decimal(3))
    assert film.most <= soaked.least


def test_coats_that_fall_due_in_ten_years() -> None:
    """A film of 2 to 3 years falls due 3 to 5 times; one of 3 to 5 years 2 or 3 times."""
    film = sealing.coats_due(Sealer.FILM, RULES, ON)
    soaked = sealing.coats_due(Sealer.PENETRATING, RULES, ON)
    assert sealing.upkeep_years(RULES, ON) == 10
    assert ((film.least, film.most), (soaked.least, soaked.most)) == ((3, 5), (2, 3))
