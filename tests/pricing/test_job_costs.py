"""What a whole job costs, worked out with a pencil: 200 sq ft, three days on site."""

from decimal import Decimal
from fractions import Fraction
from typing import Any, ClassVar

import pytest

from quotegen.money import ZERO
from quotegen.pipeline import build, figure
from quotegen.pricing.costs.owner import OwnersFigures
from quotegen.pricing.costs.records import CostKind, FinishCosts, FloorKind, What
from tests.pricing import shop
from tests.world import PATIO, write_world

COSTS: dict[str, Any] = {
    "wage": "$20 / hour",
    "burden": "50 %",  # $30 for an hour
    "day": "8 hours",
    "crew": "2",
    "set_up": "1 hour",
    "hours": {"base": {"work": "1.5 hours / 100 sq ft", "fixed": "1 hour"}},
    "materials": {"concrete": {"price": "$100 / cu yd", "waste": "10 %"}},
    "deliveries": {"concrete_load": "$40"},
    "equipment": {"plate": {"name": "Plate", "day": "$25", "visit": "form", "covers": "base"}},
    "travel": {"vehicles": "1", "mile": "$0.50 / mile", "distance": "10 miles",
               "drive_time": "30 min"},
    "warranty": "2 %",
    "overhead": {"share": "10 %", "crew_day": "$50"},
}  # fmt: skip
ORDER = {
    "allowance": "0 %", "round_up_to": "0.25 cu yd",
    "short_load": {"under": "4 cu yd", "charge": "$110"},
}  # fmt: skip
RATES = {"base": shop.rate("$10 / sq ft", "base"), "slab": shop.rate("$20 / sq ft", "slab")}


def _owner(folder, job: str | None = None, costs: dict[str, Any] | None = None) -> OwnersFigures:
    book = shop.book(RATES, order=ORDER, costs=COSTS if costs is None else costs)
    made = shop.figured(folder, job or shop.job(), rate_book=book)
    assert made.owner is not None
    return made.owner


def _sum(costs: FinishCosts, kind: CostKind) -> str:
    return str(sum((item.amount for item in costs.of_kind(kind)), ZERO))


def test_each_kind_of_cost(tmp_path):
    """Every kind by hand; 2.469 cu yd are ordered as 2.5, and a tenth more is bought."""
    costs = _owner(tmp_path).chosen
    assert {kind.value: _sum(costs, kind) for kind in CostKind if costs.of_kind(kind)} == {
        "labour": "210.00",  # (2 x 1.5 + 1) h x $30 and 3 days x 1 h x $30
        "material": "275.00",  # 2.75 cu yd x $100
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


def test_a_line_bears_what_is_for_it_alone(tmp_path):
    """Base: 4 h and two days of the plate; slab: concrete, truck and short load."""
    costs = {line.line: line.cost for line in _owner(tmp_path).chosen.lines}
    assert costs == {
        "base.patio": Decimal("170.00"), "slab.patio": Decimal("425.00"), "plain.patio": None,
    }  # fmt: skip


def test_what_is_not_known_is_said(tmp_path):
    """The finish has no cost, and stone no price; a book without costs says that first."""
    missing = [(m.kind.value, m.name) for m in _owner(tmp_path).chosen.missing]
    assert missing == [("line", "Plain, Patio"), ("material", "base_tons")]


def test_a_book_without_costs_still_prices(tmp_path):
    """No costs at all: the price stands, and the sheet says that nothing is known."""
    made = shop.figured(tmp_path, shop.job(), rate_book=shop.book(RATES, order=ORDER))
    assert made.owner is not None
    costs = made.owner.chosen
    assert (str(costs.price), str(costs.cost)) == ("6200.00", "0.00")
    assert [m.kind.value for m in costs.missing] == ["costs", "line", "line", "line"]
    assert costs.floors == ()


def test_a_metric_job_costs_the_same_hours(tmp_path):
    """18.58 m2 are 199.99 sq ft: 3.9999 hours are four."""
    costs = _owner(tmp_path, shop.job(units="metric")).chosen
    (hours,) = (i for i in costs.of_kind(CostKind.LABOUR) if i.id == "base")
    assert str(hours.quantity) == "4.00"


def test_the_fixed_hours_come_once(tmp_path):
    """Two slabs of 100 sq ft take 1.5 h each and one fixed hour together."""
    job = shop.job(shop.placement("10 ft x 10 ft", "a"),
                   shop.placement("10 ft x 10 ft", "b", at="40 ft"))  # fmt: skip
    hours = [str(i.quantity) for i in _owner(tmp_path, job).chosen.of_kind(CostKind.LABOUR)]
    assert hours == ["2.50", "1.50", "3.00"]


def test_concrete_is_shared_by_the_prices_of_its_lines(tmp_path):
    """One order for two slabs: each line bears its part, and the parts add up."""
    job = shop.job(shop.placement("30 ft x 10 ft", "a"),
                   shop.placement("10 ft x 10 ft", "b", at="40 ft"))  # fmt: skip
    costs = {line.line: line.cost for line in _owner(tmp_path, job).chosen.lines}
    whole = sum((item.amount for item in _owner(tmp_path, job).chosen.items
                 if "slab.a" in item.lines), ZERO)  # fmt: skip
    a, b = costs["slab.a"], costs["slab.b"]
    assert a is not None
    assert b is not None
    assert a + b == whole
    assert abs(a - 3 * b) <= Decimal("0.05")


def test_bills_of_the_job(tmp_path):
    """A permit that the owner pays is in the cost and in no line."""
    bill = {"what": "Permit", "kind": "permit", "amount": "$120"}
    costs = _owner(tmp_path, shop.job(private_costs=[bill])).chosen
    assert _sum(costs, CostKind.PERMIT) == "120.00"


class TestFloors:
    """The owner's floors, and the price that reaches all of them."""

    FLOORS: ClassVar = {**COSTS, "floors": {"margin": "20 %", "crew_day": "$100", "sq_ft": "$2"}}

    def test_the_least_price(self, tmp_path):
        """1152.40 / 0.8, 1152.40 + 3 x 100, 1152.40 + 200 x 2: the largest is the line."""
        costs = _owner(tmp_path, costs=self.FLOORS).chosen
        assert {f.kind: str(f.price) for f in costs.floors} == {
            FloorKind.MARGIN: "1440.50", FloorKind.CREW_DAY: "1452.40", FloorKind.SQ_FT: "1552.40",
        }  # fmt: skip
        assert str(costs.walk_away) == "1552.40"
        assert costs.holds

    def test_without_floors_the_line_is_the_cost(self, tmp_path):
        """Below it the job loses money."""
        assert str(_owner(tmp_path).chosen.walk_away) == "1152.40"

    @pytest.mark.usefixtures("unprinted")
    @pytest.mark.parametrize("why", [None, "it fills a gap in a quiet week"])
    def test_a_price_under_a_floor(self, tmp_path, why):
        """`check` warns either way; `package` refuses unless the job says why."""
        said = f"under_floor: {why}\n" if why else ""
        book = (write_world(tmp_path).parent / "rate-book.yaml").read_text(encoding="utf-8")
        high = book.replace("floors: {margin: 12 %", "floors: {margin: 60 %")
        path = write_world(tmp_path, PATIO + said, rate_book=high)
        checked = figure(path, shop.shared())
        assert {(p.code, p.severity.value) for p in checked.problems} == {
            ("under-floor", "warning")
        }
        assert all((why or "floor") in p.message for p in checked.problems)
        built = build(path, shop.shared())
        assert (built.package is not None) == (why is not None)
        assert {p.severity.value for p in built.problems} == {"warning" if why else "error"}


class TestWhatIf:
    """One thing changed at a time."""

    def test_a_discount_comes_off_the_margin(self, tmp_path):
        """$500, $1,000, 5 % and 10 % of 6,200: the margin falls by just that."""
        owner = _owner(tmp_path)
        assert [str(-one.price_change) for one in owner.discounts] == [
            "500.00", "1000.00", "310.00", "620.00"]  # fmt: skip
        for one in owner.discounts:
            assert one.margin - owner.chosen.margin == one.price_change
            assert one.price == owner.chosen.net_price + one.price_change

    def test_one_more_truck_and_a_day_of_rain(self, tmp_path):
        """A yard, its truck and a short load: 250. A lost day: 2 x 8 x 30, the road 70, 50."""
        found = {one.what: str(one.cost_change) for one in _owner(tmp_path).sensitivity}
        assert (found[What.MORE_TRUCK], found[What.RAIN_DAY]) == ("250.00", "600.00")

    def test_a_tenth_more_area_orders_more_concrete(self, tmp_path):
        """220 sq ft take 2.72 cu yd, ordered as 2.75 and bought as 3.03: 27.50 more and hours."""
        (more,) = (o for o in _owner(tmp_path).sensitivity if o.change == Fraction(1, 10))
        assert str(more.price_change) == "620.00"
        assert str(more.cost_change) == "41.44"  # (0.28 cu yd and 0.3 h: 28 + 9) x 1.12

    def test_base_by_others(self, tmp_path):
        """Neither the line, nor its hours, nor the plate: 170 direct, with shares 190.40."""
        (way,) = (o for o in _owner(tmp_path).ways if o.what is What.BASE_BY_OWNER)
        assert (str(way.price_change), str(way.cost_change)) == ("-2000.00", "-190.40")

    def test_no_way_down_raises_the_price(self, tmp_path):
        """A way down is less money, the largest step first."""
        changes = [one.price_change for one in _owner(tmp_path).ways]
        assert changes
        assert all(change < 0 for change in changes)
        assert changes == sorted(changes)

    def test_two_phases(self, tmp_path):
        """Two slabs, one each time: the price is the same here, the days and the cost double."""
        job = shop.job(shop.placement("10 ft x 10 ft", "a"),
                       shop.placement("10 ft x 10 ft", "b", at="40 ft"))  # fmt: skip
        first, both = _owner(tmp_path, job).phases
        assert (str(first.price), str(both.price)) == ("3100.00", "6200.00")
        assert both.cost_change > 0
