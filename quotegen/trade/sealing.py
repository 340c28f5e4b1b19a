"""Sealers: how often, and how much."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from quotegen.trade.book import Range, RuleBook


class Sealer(StrEnum):
    """The two families of outdoor sealer."""

    FILM = "film"
    PENETRATING = "penetrating"


def reseal_years(sealer: Sealer, rules: RuleBook, on: date) -> Range:
    """Years between coats, least and most. Common practice; wear, sun and the label decide.

    More often is not better: too many coats of a film trap moisture and turn hazy.
    """
    rule_id = "reseal_film" if sealer is Sealer.FILM else "reseal_penetrating"
    return rules.range(rule_id, on)


@dataclass(frozen=True, slots=True, kw_only=True)
class Coats:
    """How often a new coat falls due in a span of years, least and most."""

    least: int
    most: int


def upkeep_years(rules: RuleBook, on: date) -> int:
    """Years after the job over which upkeep is counted."""
    return int(rules.number("upkeep_span", on))


def coats_due(sealer: Sealer, rules: RuleBook, on: date) -> Coats:
    """Coats that fall due in the span of upkeep: one whenever the coat before has lasted its years.

    A coat that falls due in the last year of the span is counted.
    """
    lasts, span = reseal_years(sealer, rules, on), upkeep_years(rules, on)
    return Coats(least=span // int(lasts.most), most=span // int(lasts.least))


def sealer_gal(area_sqft: Decimal, rules: RuleBook, on: date) -> tuple[Fraction, Fraction]:
    """Gallons of film-forming sealer for a new slab, least and most, all coats together.

    Two thin coats at 150 to 300 sq ft per gal each. Rough exposed aggregate takes the most.
    """
    coated_sqft = Fraction(area_sqft) * rules.exact("sealer_coats", on)
    coverage = rules.range("sealer_coverage", on)
    return coated_sqft / Fraction(coverage.most), coated_sqft / Fraction(coverage.least)


def curing_compound_gal(area_sqft: Decimal, rules: RuleBook, on: date) -> Fraction:
    """Gallons of curing compound for an area, at 200 sq ft per gal in all (UFGS 03311)."""
    return Fraction(area_sqft) / rules.exact("curing_compound_coverage", on)


def cure_and_seal_gal(area_sqft: Decimal, rules: RuleBook, on: date) -> Fraction:
    """Gallons of clear curing and sealing compound, at 300 sq ft per gal (ASTM C1315)."""
    return Fraction(area_sqft) / rules.exact("cure_and_seal_coverage", on)
