"""The owner's part of figures.json: costs of each finish, and other bids on the same scope."""

from collections.abc import Mapping

from quotegen.pricing.bid_records import BidComparison
from quotegen.pricing.cost_records import CostItem, FinishCosts, Floor
from quotegen.quantity import rounded

_SHARE_PLACES, _FLOOR_PLACES = 4, 4


def cost_figures(costs: FinishCosts) -> Mapping[str, object]:
    """Return price against cost at one finish."""
    return {
        "price": str(costs.price),
        "cost": str(costs.cost),
        "margin": str(costs.margin),
        "margin_share": str(rounded(costs.margin_share, _SHARE_PLACES)),
        "crew_days": str(costs.crew_days),
        "crew_hours": str(costs.hours),
        "least_price_before_tax": str(costs.walk_away),
        "floors": [_floor(floor) for floor in costs.floors],
        "items": [_item(item) for item in costs.items],
        "lines": [
            {"id": line.line, "cost": None if line.cost is None else str(line.cost)}
            for line in costs.lines
        ],
        "without_cost": list(costs.without_cost),
        "missing": [{"kind": one.kind.value, "name": one.name} for one in costs.missing],
    }


def _floor(floor: Floor) -> Mapping[str, object]:
    return {
        "on": floor.kind.value,
        "wanted": str(rounded(floor.wanted, _FLOOR_PLACES)),
        "found": str(rounded(floor.found, _FLOOR_PLACES)),
        "holds": floor.holds,
        "least_price_before_tax": str(floor.price),
    }


def _item(item: CostItem) -> Mapping[str, object]:
    return {
        "kind": item.kind.value,
        "id": item.id,
        "placement": item.placement,
        "quantity": str(item.quantity),
        "unit": item.unit,
        "rate": str(item.rate),
        "amount": str(item.amount),
    }


def bid_figures(bid: BidComparison) -> Mapping[str, object]:
    """Return another bid against our price: the gap and the three parts that add up to it."""
    return {
        "id": bid.id,
        "finish": bid.finish,
        "ours": str(bid.ours),
        "theirs": str(bid.theirs),
        "gap": str(bid.gap),
        "left_out": str(bid.left_out),
        "not_stated": str(bid.not_stated),
        "remains": str(bid.remains),
        "items": [
            {"scope": list(item.scope), "says": item.says.value, "amount": str(item.amount)}
            for item in bid.items
        ],
    }
