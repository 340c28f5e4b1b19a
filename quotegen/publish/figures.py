"""figures.json: the machine's contract. Amounts and quantities are decimal strings.

It grows, and what stands keeps its meaning.
"""

import json
from collections.abc import Mapping
from decimal import Decimal

from quotegen.explain.results import Results
from quotegen.pricing.records import FinishCosts, Line, PricedFinish
from quotegen.publish.option_figures import option_figures
from quotegen.quantity import rounded
from quotegen.takeoff.records import EdgeOf, PlacementTakeoff

VOLUME_PLACES = 3


def figures(results: Results, costs: tuple[FinishCosts, ...]) -> Mapping[str, object]:
    """Return every figure of a job, as it is written to figures.json."""
    job, quote = results.job, results.quote
    return {
        "quote": {"number": job.quote, "revision": job.revision, "date": job.quote_date.isoformat(),
                  "holds_until": job.holds_until.isoformat(), "currency": "USD",
                  "units": job.units.value},
        "placements": [_placement(p) for p in results.takeoff.placements],
        "concrete": {"volume_cuyd": _volume(results.takeoff.volume_cuyd),
                     "order_cuyd": _volume(results.takeoff.order_cuyd)},
        "finishes": [_finish(finish) for finish in quote.finishes],
        "extras": [{"id": e.id, "name": e.name, "amount": str(e.amount),
                    "lines": [_line(line) for line in e.lines]} for e in quote.extras],
        **option_figures(quote),
        "chosen": quote.chosen.id,
        "total": str(quote.chosen.total),
        "payments": [{"id": p.id, "when": p.when, "amount": str(p.amount)} for p in quote.payments],
        "adjustment": [{"change": f"{rounded(row.change, 2)}", "area": str(row.area),
                        "unit": quote.area_unit.value, "difference": str(row.difference),
                        "total": str(row.total), "needs_signatures": row.needs_signatures}
                       for row in quote.adjustment],
        "visits": [{"id": v.id, "name": v.name, "first_day": v.first_day.isoformat(),
                    "last_day": v.last_day.isoformat(), "crew": v.crew}
                   for v in results.chosen_visits],
        "costs": {c.finish: _costs(c) for c in costs},
    }  # fmt: skip


def to_json(figures_of_job: Mapping[str, object]) -> bytes:
    """Write figures as JSON for people to read and machines to parse."""
    return (json.dumps(figures_of_job, indent=2, ensure_ascii=False) + "\n").encode()


def _placement(placement: PlacementTakeoff) -> Mapping[str, object]:
    edges = placement.edges_ft
    return {
        "id": placement.id,
        "area_sqft": str(placement.area_sqft),
        "area_m2": str(placement.area_m2),
        "outer_edge_ft": str(edges[EdgeOf.OUTER]),
        "inner_edge_ft": str(edges[EdgeOf.INNER]),
        "straight_edge_ft": str(edges[EdgeOf.STRAIGHT]),
        "curved_edge_ft": str(edges[EdgeOf.CURVED]),
        "volume_cuyd": _volume(placement.volume_cuyd),
        "order_cuyd": _volume(placement.order_cuyd),
    }


def _finish(finish: PricedFinish) -> Mapping[str, object]:
    return {"id": finish.id, "name": finish.name, "total": str(finish.total),
            "visits": finish.visits, "lines": [_line(line) for line in finish.lines]}  # fmt: skip


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


def _costs(costs: FinishCosts) -> Mapping[str, object]:
    return {"price": str(costs.price), "cost": str(costs.cost), "margin": str(costs.margin),
            "without_cost": list(costs.without_cost)}  # fmt: skip


def _volume(cuyd: Decimal) -> str:
    return str(rounded(cuyd, VOLUME_PLACES))
