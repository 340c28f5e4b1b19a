"""Single costs: which cost of a rate belongs to a slab of some thickness."""

from decimal import Decimal
from fractions import Fraction

import pytest

from quotegen.pricing.costs.items import cost_at
from quotegen.quantity import Length
from quotegen.reading.files.rate_book_file import CostedRate

STEPS = CostedRate.model_validate({
    "name": "Concrete", "covers": ["slab"],
    "by_thickness": [
        {"thickness": "3-1/2 in", "rate": "$3.85 / sq ft", "cost": "$2.74 / sq ft"},
        {"thickness": "4 in", "rate": "$4.20 / sq ft", "cost": "$2.98 / sq ft"},
        {"thickness": "4-3/4 in", "rate": "$4.95 / sq ft"},
    ],
})  # fmt: skip


@pytest.mark.parametrize(
    ("inches", "cost"),
    [
        ("3", "2.74"),  # thinner than every step: the first
        ("3-7/16", "2.74"),
        ("3-1/2", "2.74"),
        ("3-9/16", "2.74"),
        ("3-15/16", "2.74"),
        ("4", "2.98"),
        ("4-1/16", "2.98"),
        ("4-11/16", "2.98"),
        ("4-3/4", None),
        ("4-13/16", None),
        ("12", None),  # thicker than every step: the last
    ],
)
def test_cost_by_thickness_at_and_either_side_of_each_step(inches: str, cost: str | None):
    """A slab has the cost of the step whose price it takes."""
    whole, _, part = inches.partition("-")
    found = cost_at(STEPS, Length.of_inches(Fraction(whole) + Fraction(part or "0")))
    assert (found and found.amount) == (cost and Decimal(cost))
