"""How often a sealer is renewed."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from quotegen.trade.book import Range, RuleBook


class Sealer(StrEnum):
    """The two families of outdoor sealer."""

    FILM = "film"
    PENETRATING = "penetrating"


def reseal_years(sealer: Sealer, rules: RuleBook, on: date) -> Range:
    """Return the years between coats. Common practice; wear, sun and the label decide.

    More often is not better: too many coats of a film trap moisture and turn hazy.
    """
    rule_id = "reseal_film" if sealer is Sealer.FILM else "reseal_penetrating"
    return rules.range(rule_id, on)


@dataclass(frozen=True, slots=True, kw_only=True)
class Coats:
    """How many new coats fall due in a span of years, at least and at most."""

    least: int
    most: int


def upkeep_years(rules: RuleBook, on: date) -> int:
    """Return the years after the job over which upkeep is counted."""
    return int(rules.number("upkeep_span", on))


def coats_due(sealer: Sealer, rules: RuleBook, on: date) -> Coats:
    """Return how many coats fall due in the span of upkeep: one each time the last is worn out.

    A coat that falls due in the last year of the span counts.
    """
    lasts, span = reseal_years(sealer, rules, on), upkeep_years(rules, on)
    return Coats(least=span // int(lasts.most), most=span // int(lasts.least))
