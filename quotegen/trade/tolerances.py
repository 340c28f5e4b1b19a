"""How near to the promised numbers is near enough."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from fractions import Fraction

from quotegen.trade.book import RuleBook


def thickness_accepted(
    samples_in: Sequence[Decimal], specified_in: Fraction, rules: RuleBook, on: date
) -> bool:
    """Say whether thickness samples meet the thickness that was promised.

    The average is at most 3/8 in short and no sample more than 3/4 in short (ACI 117-10 4.5.4).
    From memory, the standard wants at least four samples and counts a very thick one for less
    than it is; that is left to whoever takes the samples.

    Args:
        samples_in: measured thicknesses in inches, one or more.
        specified_in: the promised thickness in inches.
        rules: the rule book.
        on: the quote date.
    """
    exact = [Fraction(sample) for sample in samples_in]
    average_short = specified_in - sum(exact) / len(exact)
    single_short = specified_in - min(exact)
    return average_short <= rules.exact(
        "thickness_short_average", on
    ) and single_short <= rules.exact("thickness_short_single", on)


def crack_is_repaired(width_in: Decimal, step_in: Decimal, rules: RuleBook, on: date) -> bool:
    """Say whether a crack is over what is normal, so that it is repaired.

    Over 1/4 in wide, or over 1/4 in from one side to the other in height (NJAC 5:25-3.5, written
    for attached patios and garage slabs). Settling over fill placed by others is another matter.
    """
    wide = width_in > rules.number("crack_width", on)
    return wide or step_in > rules.number("crack_step", on)
