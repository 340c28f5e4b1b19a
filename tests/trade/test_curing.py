"""How a slab is cured where the book does not say."""

from datetime import date

from quotegen.trade.curing import Cure, usual_cure
from quotegen.trade.rules import load_rules

ON = date(2026, 11, 24)


def test_only_a_bare_slab_is_sprayed() -> None:
    """What is stamped, exposed or sealed later is covered; a compound would lie in between."""
    assert usual_cure(load_rules(), ON, covered=False) is Cure.COMPOUND
    assert usual_cure(load_rules(), ON, covered=True) is Cure.COVER
