"""A small job whose costs a person can follow with a pencil: 200 sq ft, three days on site."""

from pathlib import Path
from typing import Any

from quotegen.pricing.costs.owner import OwnersFigures
from tests.pricing import shop

COSTS: dict[str, Any] = {
    "wage": "$20 / hour",
    "burden": "50 %",  # $30 for an hour
    "day": "8 hours",
    "crew": "2",
    "set_up": "0.5 hours",  # of each of the two, on each of three days: 3 hours
    "hours": {"base": {"work": "1.5 hours / 100 sq ft", "fixed": "1 hour"}},
    "materials": {"concrete": {"price": "$110 / cu yd"}},
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


def owner(
    folder: Path, job: str | None = None, costs: dict[str, Any] | None = None
) -> OwnersFigures:
    """Return what the owner alone sees of a job, at the costs above unless others are given."""
    book = shop.book(RATES, order=ORDER, costs=COSTS if costs is None else costs)
    made = shop.figured(folder, job or shop.job(), rate_book=book)
    assert made.owner is not None
    return made.owner
