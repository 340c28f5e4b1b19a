"""How often a sealer is renewed."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from quotegen.trade.book import Range, RuleBook


class Sealer(StrEnum):
    """The two families of outdoor sealer."""

    FILM = "film"
    PENETRATING = "penetrating"


def reseal_rule(sealer: Sealer, *, at_pool: bool) -> str:
    """Return the rule that says how many years lie between coats.

    Common practice; wear, sun, pool water and the label decide. More often is not better: too
    many coats of a film trap moisture and turn hazy.
    """
    if sealer is Sealer.PENETRATING:
        return "reseal_penetrating"
    return "reseal_film_pool" if at_pool else "reseal_film"


def reseal_years(
    sealer: Sealer, rules: RuleBook, on: date, *, at_pool: frozenset[bool] = frozenset({False})
) -> Range:
    """Return the years between coats, from the shortest to the longest of several slabs.

    Args:
        sealer: on all of them.
        rules: the rule book.
        on: the quote date.
        at_pool: whether they lie at a pool; both, where some do and some do not.
    """
    each = [rules.range(reseal_rule(sealer, at_pool=one), on) for one in at_pool]
    return Range(least=min(one.least for one in each), most=max(one.most for one in each))


@dataclass(frozen=True, slots=True, kw_only=True)
class Coats:
    """How many new coats fall due in a span of years, at least and at most."""

    least: int
    most: int


def upkeep_years(rules: RuleBook, on: date) -> int:
    """Return the years after the job over which upkeep is counted."""
    return int(rules.number("upkeep_span", on))


def coats_due(lasts: Range, rules: RuleBook, on: date) -> Coats:
    """Return how many coats fall due in the span of upkeep: one each time the last is worn out.

    A coat that falls due in the last year of the span counts.
    """
    span = upkeep_years(rules, on)
    return Coats(least=span // int(lasts.most), most=span // int(lasts.least))
