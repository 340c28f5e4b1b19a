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
    film, soaked = (
        sealing.coats_due(sealing.reseal_years(one, RULES, ON), RULES, ON)
        for one in (Sealer.FILM, Sealer.PENETRATING)
    )
    assert sealing.upkeep_years(RULES, ON) == 10
    assert ((film.least, film.most), (soaked.least, soaked.most)) == ((3, 5), (2, 3))


def test_a_film_at_a_pool_is_renewed_sooner() -> None:
    """One to two years on a pool deck; with a patio beside it, from the one's least to the other's
    most."""
    pool = sealing.reseal_years(Sealer.FILM, RULES, ON, at_pool=frozenset({True}))
    both = sealing.reseal_years(Sealer.FILM, RULES, ON, at_pool=frozenset({True, False}))
    assert (pool.least, pool.most) == (Decimal(1), Decimal(2))
    assert (both.least, both.most) == (Decimal(1), Decimal(3))
    due = sealing.coats_due(pool, RULES, ON)
    assert (due.least, due.most) == (5, 10)
