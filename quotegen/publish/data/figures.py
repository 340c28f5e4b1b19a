"""figures.json: the machine's contract. Amounts and quantities are decimal strings.

It grows, and what stands keeps its meaning.
"""

import json
from collections.abc import Mapping
from decimal import Decimal

from quotegen.explain.results import Results
from quotegen.money import Money
from quotegen.pricing.contract.records import Contract, Remeasure
from quotegen.pricing.costs.bids import BidComparison
from quotegen.pricing.costs.owner import OwnersFigures
from quotegen.pricing.costs.records import CostItem, FinishCosts, Floor
from quotegen.pricing.quoted.no_work import TAX
from quotegen.pricing.quoted.records import Combination, Line, PricedFinish, PricedQuote, Subtotal
from quotegen.pricing.quoted.upkeep import CoatPrices
from quotegen.quantity import rounded
from quotegen.reading.files.shapes import EdgeKind
from quotegen.schedule.moved import Days
from quotegen.schedule.visits import Visit
from quotegen.takeoff.joints.records import JointPlan
from quotegen.takeoff.records import Material, PlacementFalls, PlacementTakeoff

_SHARE_PLACES, _FLOOR_PLACES, _VOLUME_PLACES, _JOINT_PLACES = 4, 4, 3, 3
"""Decimals of a share, of a floor, of a volume in cu yd, of a joint in ft or in."""


def figures(results: Results, owner: OwnersFigures) -> Mapping[str, object]:
    """Return the figures of one job: what figures.json holds."""
    job, quote = results.job, results.quote
    return {
        "quote": {"number": job.quote, "revision": job.revision, "date": job.quote_date.isoformat(),
                  "holds_until": job.holds_until.isoformat(), "currency": "USD",
                  "units": job.units.value},
        "placements": [_placement(p) for p in results.takeoff.placements],
        "concrete": {"volume_cuyd": _volume(results.takeoff.volume_cuyd),
                     "order_cuyd": _volume(results.takeoff.order_cuyd)},
        "finishes": [_finish(finish, quote) for finish in quote.finishes],
        "materials": [_material(m) for m in results.takeoff.materials],
        "to_order": None if results.to_order == results.takeoff.materials
        else [_material(m) for m in results.to_order],
        "access": _access(results),
        "heights": [_heights(f) for f in results.takeoff.falls],
        "prepared_ground": None if results.takeoff.prepared is None
        else {"short_sqft": str(results.takeoff.prepared.short_sqft)},
        "extras": [{"id": e.id, "name": e.name, "amount": str(e.amount),
                    "lines": [_line(line) for line in e.lines]} for e in quote.extras],
        "unit_prices": [{"id": u.id, "name": u.name, "rate": str(u.rate), "unit": u.unit.value}
                        for u in quote.unit_prices],
        "minimum": None if job.rate_book.minimum is None else str(job.rate_book.minimum),
        **_options(quote),
        "chosen": quote.chosen.id,
        "total": str(quote.chosen.total),
        "round_total_to": None if job.company.round_total_to is None
        else str(job.company.round_total_to),
        "payments": [{"id": p.id, "when": p.when, "amount": str(p.amount)} for p in quote.payments],
        "adjustment": [{"change": f"{rounded(row.change, 2)}", "area": str(row.area),
                        "unit": quote.area_unit.value, "difference": str(row.difference),
                        "total": str(row.total), "needs_signatures": row.needs_signatures}
                       for row in quote.adjustment],
        "tape_range": [{"end": end, "area": str(row.area), "unit": quote.area_unit.value,
                        "difference": str(row.difference), "total": str(row.total)}
                       for end, row in zip(("low", "high"), quote.tape_range, strict=True)],
        "visits": _visits(results.chosen_visits),
        "openings": [{"use": o.use.value, "day": o.day.isoformat()} for o in results.openings],
        "upkeep": [{"finish": finish, "years": str(one.years), **_coats(one.prices)}
                   for finish, one in results.upkeep.items()],
        "contract": _contract(results.contract, results.days),
        "costs": {c.finish: _costs(c) for c in owner.finishes if c.is_known},
        "bids": [_bid(bid) for bid in owner.bids],
    }  # fmt: skip


def to_json(shown: Mapping[str, object] | list[Mapping[str, object]]) -> bytes:
    """Write the figures of one job, or of several, as indented JSON."""
    return (json.dumps(shown, indent=2, ensure_ascii=False) + "\n").encode()


def _placement(placement: PlacementTakeoff) -> Mapping[str, object]:
    edges = placement.edges_ft
    return {
        "id": placement.id,
        "area_sqft": str(placement.area_sqft),
        "area_m2": str(placement.area_m2),
        "area_sd_sqft": str(placement.area_range.sd_sqft),
        "area_low_sqft": str(placement.area_range.low_sqft),
        "area_high_sqft": str(placement.area_range.high_sqft),
        "outer_edge_ft": str(edges[EdgeKind.OUTER]),
        "inner_edge_ft": str(edges[EdgeKind.INNER]),
        "straight_edge_ft": str(edges[EdgeKind.STRAIGHT]),
        "curved_edge_ft": str(edges[EdgeKind.CURVED]),
        "volume_cuyd": _volume(placement.volume_cuyd),
        "order_cuyd": _volume(placement.order_cuyd),
        "joints": _joints(placement.joints),
    }


def _finish(finish: PricedFinish, quote: PricedQuote) -> Mapping[str, object]:
    return {
        "id": finish.id,
        "name": finish.name,
        "total": str(finish.total),
        "by_area": str(finish.by_area),
        "difference": str(quote.difference(finish)),
        "visits": finish.visits,
        "area_prices": [
            {"placement": a.placement, "rate": str(a.rate), "unit": a.unit.value}
            for a in finish.area_price
        ],
        "lines": [_line(line) for line in finish.lines],
    }


def _material(material: Material) -> Mapping[str, object]:
    return {"id": material.id, "placement": material.placement, "what": material.what,
            "needed": str(material.needed), "unit": material.unit, "buy": str(material.buy),
            "buy_unit": material.buy_unit}  # fmt: skip


def _access(results: Results) -> Mapping[str, object] | None:
    """How far each way of access reaches, and the one chosen; None where no stand is given."""
    reach, chosen = results.takeoff.reach, results.access
    if reach is None:
        return None
    return {"chosen": chosen.method if chosen else None,
            "amount": str(chosen.amount) if chosen else None,
            "route_ft": None if reach.route_ft is None else str(reach.route_ft),
            "methods": [{"id": m.id, "kind": m.kind.value, "reach_ft": str(m.reach_ft),
                         "share_percent": str(m.share)} for m in reach.methods]}  # fmt: skip


def _heights(falls: PlacementFalls) -> Mapping[str, object]:
    return {"placement": falls.placement,
            "corners": [{"marks": list(c.marks), "height_ft": str(c.height_ft)}
                        for c in falls.corners],
            "edges": [{"mark": e.mark, "highest_ft": str(e.highest_ft),
                       "lowest_ft": str(e.lowest_ft), "drop_ft": str(e.drop_ft)}
                      for e in falls.edges]}  # fmt: skip


def _joints(plan: JointPlan) -> Mapping[str, object]:
    return {
        "owners": plan.is_owners,
        "spacing_ft": f"{rounded(plan.spacing_ft, _JOINT_PLACES)}",
        "spacing_rules": list(plan.spacing_rules),
        "saw_depth_in": f"{rounded(plan.saw_depth_in, _JOINT_PLACES)}",
        "length_ft": str(plan.length_ft),
        "length_m": str(plan.length_m),
        "isolation_ft": str(plan.isolation_ft),
        "panels": [
            {"number": panel.number, "long_ft": str(panel.long_ft),
             "short_ft": str(panel.short_ft), "ratio": str(panel.ratio),
             "area_sqft": str(panel.area_sqft), "passes": not panel.broken,
             "broken": [{"rule": one.rule.value, "found": str(one.found),
                         "allowed": str(one.allowed)} for one in panel.broken]}
            for panel in plan.panels
        ],
    }  # fmt: skip


def _line(line: Line) -> Mapping[str, object]:
    return {
        "id": line.id,
        "scope": list(line.scope),
        "name": line.name,
        "placement": line.placement,
        "basis": line.basis.value,
        "quantity": str(line.quantity),
        "unit": line.unit.value,
        "rate": str(line.rate),
        "amount": str(line.amount),
    }


def _volume(cuyd: Decimal) -> str:
    return str(rounded(cuyd, _VOLUME_PLACES))


def _visits(visits: tuple[Visit, ...]) -> list[Mapping[str, object]]:
    return [
        {"id": v.id, "name": v.name, "part": v.part, "parts": v.parts,
         "first_day": v.first_day.isoformat(),
         "last_day": v.last_day.isoformat(), "crew": v.crew}
        for v in visits
    ]  # fmt: skip


def _contract(contract: Contract, days: Days) -> Mapping[str, object]:
    adjusted = contract.remeasure
    return {
        "accepted_on": contract.accepted_on.isoformat() if contract.accepted_on else None,
        "finish": contract.finish,
        "quoted_total": str(contract.quoted_total),
        "measured": _measured(adjusted) if adjusted else None,
        "changes": [
            {"number": c.number, "amount": str(c.amount), "total": str(c.revised_total)}
            for c in contract.changes
        ],
        "total": str(contract.total),
        "paid": str(contract.paid),
        "balance": str(contract.balance),
        "visits": _visits(days.visits),
    }


def _measured(adjusted: Remeasure) -> Mapping[str, object]:
    return {
        "date": adjusted.on.isoformat(),
        "lines": [
            {
                "id": line.id,
                "estimated": str(line.estimated),
                "measured": str(line.measured),
                "rate": str(line.rate),
                "before": str(line.before),
                "change": str(line.change),
                "after": str(line.after),
            }
            for line in adjusted.lines
        ],
        "change": str(adjusted.change),
        "total": str(adjusted.revised_total),
        "needs_signatures": adjusted.needs_signatures,
        "payments": [{"id": p.id, "amount": str(p.after)} for p in adjusted.payments],
    }


def _options(quote: PricedQuote) -> Mapping[str, object]:
    """Prices of all that the homeowner may choose, and the total in parts."""
    return {
        "tax": [{"id": line.rate_id, "name": line.name, "amount": str(line.amount)}
                for line in quote.chosen.lines if TAX in line.scope],
        "alternates": [{"placement": a.placement, "finish": a.finish, "visits": a.visits,
                        "amount": str(a.amount), "total": str(a.total)} for a in quote.alternates],
        "colors": [{"finish": look.finish, "placement": look.placement,
                     "colors": list(look.colors), "amount": str(look.amount),
                     "total": str(look.total)} for look in quote.color_choices],
        "combinations": [_combination(one) for one in quote.combinations],
        "subtotals": {"placements": [_subtotal(one) for one in quote.by_placement],
                      "scope": [_subtotal(one) for one in quote.by_scope]},
    }  # fmt: skip


def _combination(one: Combination) -> Mapping[str, object]:
    return {"finish": one.finish, "extras": list(one.extras), "alternates": dict(one.alternates),
            "colors": list(one.colors), "total": str(one.total),
            "by_area": str(one.by_area),
            "payments": [str(amount) for amount in one.payments]}  # fmt: skip


def _subtotal(part: Subtotal) -> Mapping[str, object]:
    return {"of": part.of, "also": list(part.also), "amount": str(part.amount)}


def _costs(costs: FinishCosts) -> Mapping[str, object]:
    """Price against cost at one finish; for the owner alone."""
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


def _coats(prices: CoatPrices | None) -> Mapping[str, str]:
    if prices is None:
        return {}
    return {"coat": str(prices.coat), "least": str(prices.least), "most": str(prices.most)}


def _bid(bid: BidComparison) -> Mapping[str, object]:
    """Another bid against our price: the gap and its parts, null where unknown."""
    return {
        "id": bid.id,
        "finish": bid.finish,
        "nearer_finish": bid.nearer.id if bid.nearer else None,
        "ours": str(bid.ours),
        "theirs": str(bid.theirs),
        "gap": str(bid.gap),
        "left_out": _known(bid.left_out, known=bid.left_out_known),
        "not_stated": _known(bid.not_stated, known=bid.not_stated_known),
        "at_their_numbers": str(bid.at_their_numbers),
        "for_their_extras": str(bid.for_their_extras),
        "discount": str(bid.discount),
        "remains": str(bid.remains),
        "same_work": bid.same_work,
        "items": [
            {"scope": [item.item], "says": item.says.value, "amount": _known(item.amount)}
            for item in bid.items
        ],
        "numbers": [
            {"key": number.key, "worth": _known(number.worth)}
            for number in bid.numbers
            if number.theirs is not None
        ],
    }


def _known(amount: Money | None, *, known: bool = True) -> str | None:
    """An amount; nothing where it is not known at all, never a zero in its place."""
    return str(amount) if amount or (known and amount is not None) else None
