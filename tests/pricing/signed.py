"""A small job after signing: 200 sq ft for $1,100, measured again, changed and paid."""

from pathlib import Path
from typing import Any

from quotegen.pricing.contract.records import Contract
from tests.pricing import shop

RATES = {
    "base": shop.rate("$2.00 / sq ft"),
    "edge": shop.rate("$5.00 / ft", "forms", of="formed edge"),
    "trip": shop.rate("$50 / visit", "travel"),
    "step": shop.rate("$200 each", "steps", applies="asked"),
    "lawn": shop.rate("$100 lump", "protection", basis="allowance"),
}
BOOK = shop.book(RATES)
# 200 sq ft: base 400 + finish 200; edge 60 ft 300; trips 2 x 50; lawn 100.
QUOTED = "1100.00"


def contract(folder: Path, **more: Any) -> Contract:
    """Return the contract of a patio of 20 ft x 10 ft."""
    return shop.results(folder, shop.job(**more), rate_book=BOOK).contract


def measured(area: str, **edges: str) -> dict[str, Any]:
    """Return a remeasure of the patio."""
    named = {name.replace("_", " "): length for name, length in edges.items()}
    placement = {"area": f"{area} sq ft", **({"edges": named} if named else {})}
    return {"date": "2026-06-09", "placements": {"patio": placement}}
