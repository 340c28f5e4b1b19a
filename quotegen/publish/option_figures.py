"""The options of a quote in figures.json: alternates, looks, combinations and subtotals."""

from collections.abc import Mapping

from quotegen.pricing.records import Combination, PricedQuote, Subtotal
from quotegen.pricing.tax import TAX


def option_figures(quote: PricedQuote) -> Mapping[str, object]:
    """Return what the homeowner may choose, each with its price, and the total in parts."""
    return {
        "tax": [{"id": line.rate_id, "name": line.name, "amount": str(line.amount)}
                for line in quote.chosen.lines if TAX in line.scope],
        "alternates": [{"placement": a.placement, "finish": a.finish, "visits": a.visits,
                        "amount": str(a.amount), "total": str(a.total)} for a in quote.alternates],
        "colours": [{"finish": look.finish, "placement": look.placement,
                     "colours": list(look.colours), "amount": str(look.amount),
                     "total": str(look.total)} for look in quote.looks],
        "combinations": [_combination(one) for one in quote.combinations],
        "subtotals": {"placements": [_subtotal(one) for one in quote.by_placement],
                      "scope": [_subtotal(one) for one in quote.by_scope]},
    }  # fmt: skip


def _combination(one: Combination) -> Mapping[str, object]:
    return {"finish": one.finish, "extras": list(one.extras), "alternates": dict(one.alternates),
            "colours": list(one.colours), "total": str(one.total),
            "payments": [str(amount) for amount in one.payments]}  # fmt: skip


def _subtotal(part: Subtotal) -> Mapping[str, object]:
    return {"of": part.of, "also": list(part.also), "amount": str(part.amount)}
