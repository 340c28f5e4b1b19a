"""Single costs: each kind by hand, and which cost of a rate belongs to a slab of some thickness."""

from decimal import Decimal
from fractions import Fraction

import pytest

from quotegen.money import ZERO
from quotegen.pricing.costs.records import CostKind, FinishCosts
from quotegen.quantity import Length
from quotegen.reading.files.rate_book_file import CostedRate
from tests.pricing import shop
from tests.pricing.costed import COSTS, ORDER, RATES, owner

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
    found = STEPS.cost_at(Length.of_inches(Fraction(whole) + Fraction(part or "0")), None)
    assert (found and found.amount) == (cost and Decimal(cost))


def _sum(costs: FinishCosts, kind: CostKind) -> str:
    return str(sum((item.amount for item in costs.of_kind(kind)), ZERO))


def test_each_kind_of_cost(tmp_path):
    """Every kind by hand; 2.469 cu yd are ordered as 2.5."""
    costs = owner(tmp_path).chosen
    assert {kind.value: _sum(costs, kind) for kind in CostKind if costs.of_kind(kind)} == {
        "labor": "210.00",  # (2 x 1.5 + 1) h x $30 and 3 days x 1 h x $30
        "material": "275.00",  # 2.5 cu yd x $110
        "delivery": "150.00",  # one truck $40, a short load $110
        "equipment": "50.00",  # two days of forming x $25
        "travel": "210.00",  # 3 days x 2 people x 1 h x $30, 3 x 20 miles x $0.50
        "warranty": "17.90",  # 2 % of 895
        "overhead": "239.50",  # 10 % of 895 and 3 days x $50
    }
    assert str(costs.cost) == "1152.40"
    assert (str(costs.price), str(costs.margin)) == ("6200.00", "5047.60")
    assert costs.margin_share == Fraction(504760, 620000)
    assert str(costs.margin_per(Fraction(costs.crew_days))) == "1682.53"


def test_a_metric_job_costs_the_same_hours(tmp_path):
    """18.58 m2 are 199.99 sq ft: 3.9999 hours are four."""
    costs = owner(tmp_path, shop.job(units="metric")).chosen
    (hours,) = (i for i in costs.of_kind(CostKind.LABOR) if i.id == "base")
    assert str(hours.quantity) == "4.00"


def test_the_fixed_hours_come_once(tmp_path):
    """Two slabs of 100 sq ft take 1.5 h each and one fixed hour together."""
    job = shop.job(shop.placement("10 ft x 10 ft", "a"),
                   shop.placement("10 ft x 10 ft", "b", at="40 ft"))  # fmt: skip
    hours = [str(i.quantity) for i in owner(tmp_path, job).chosen.of_kind(CostKind.LABOR)]
    assert hours == ["2.50", "1.50", "3.00"]


def test_bills_of_the_job(tmp_path):
    """A permit that the owner pays is in the cost and in no line."""
    bill = {"what": "Permit", "kind": "permit", "amount": "$120"}
    costs = owner(tmp_path, shop.job(private_costs=[bill])).chosen
    assert _sum(costs, CostKind.PERMIT) == "120.00"


@pytest.mark.parametrize(
    ("charge", "amount"), [("$110", "150.00"), ("$40 / cu yd", "100.00"), ("", "40.00")]
)
def test_a_short_load_is_charged_whole_or_by_what_it_lacks(tmp_path, charge: str, amount: str):
    """2.5 of 4 cu yd lack 1.5: at $40 each $60, beside $40 for the truck."""
    short = {"under": "4 cu yd", **({"charge": charge} if charge else {})}
    book = shop.book(RATES, order={**ORDER, "short_load": short}, costs=COSTS)
    made = shop.figured(tmp_path, shop.job(), rate_book=book)
    assert made.owner is not None
    assert _sum(made.owner.chosen, CostKind.DELIVERY) == amount


@pytest.mark.parametrize(("how", "amount"), [("integral", "215.00"), ("hardener", "150.00")])
def test_a_colored_load_has_its_drum_washed(tmp_path, how: str, amount: str):
    """$65 on top for the one truck whose concrete is colored; color on the top costs none."""
    color = {"name": "Sand", "covers": ["color"], "rate": "$1 / sq ft", "applies": "with color",
             "color": how}  # fmt: skip
    costs = {**COSTS, "deliveries": {"concrete_load": "$40", "color_load": "$65"}}
    plain = {**shop.PLAIN, "colors": ["sand"]}
    book = shop.book({**RATES, "sand": color}, {"plain": plain}, order=ORDER, costs=costs)
    made = shop.figured(tmp_path, shop.job(color={"base": "sand"}), rate_book=book)
    assert made.owner is not None
    assert _sum(made.owner.chosen, CostKind.DELIVERY) == amount
