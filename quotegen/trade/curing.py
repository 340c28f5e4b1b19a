"""How a new slab is kept from drying out, and what goes with it."""

from datetime import date
from enum import StrEnum

from quotegen.trade.book import RuleBook


class Cure(StrEnum):
    """The ways of curing."""

    COMPOUND = "compound"
    CURE_AND_SEAL = "cure and seal"
    COVER = "cover"
    WET = "wet"


FILMS = frozenset({Cure.COMPOUND, Cure.CURE_AND_SEAL})
"""What leaves a film: it keeps out what must soak in, and a later film may not stick to it."""


def usual_cure(rules: RuleBook, on: date, *, covered: bool) -> Cure:
    """Return how a slab is cured where the book does not say.

    Common practice: what is stamped, exposed or sealed later is covered, since a compound cannot
    be sprayed on powder and comes between slab and sealer; a bare slab is sprayed.

    Args:
        rules: the rule book.
        on: the quote date.
        covered: whether the slab is stamped, exposed or sealed later.
    """
    return Cure(rules.text("cure_before_sealer" if covered else "cure_bare", on))
