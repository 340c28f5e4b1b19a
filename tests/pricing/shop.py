"""A small shop for the tests of pricing: its rate book, its jobs, and both priced in one call."""

from collections.abc import Iterator, Mapping
from decimal import ROUND_HALF_UP, Decimal
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from quotegen.explain.results import Results
from quotegen.pipeline import PricedJob, Shared, figure, read_shared
from quotegen.pricing.quoted.records import Line, PricedFinish, PricedQuote
from quotegen.problem import Problem
from quotegen.reading.files.rate_book import ALWAYS_ASKED_ABOUT
from tests.once_per_run import once_per_run
from tests.world import EXAMPLES, PATIO, write_world

Typed = Mapping[str, Any]

JOBS = tuple(sorted(EXAMPLES.parent.glob("*/jobs/*.yaml"), key=lambda path: path.stem))
ALL_IN = EXAMPLES.parent / "all_in" / "jobs"
CENT = Decimal("0.01")
OF_A_SHORT_BOOK = frozenset(
    {
        "unexplained", "price-of-nothing", "never-sealed", "price-unusual", "side-unusual",
        "deposit-unusual", "accepted-without-total", "measured-far-off", "paid-early",
        "start-moved", "steps-free",
        "fall-missing",
    }
)  # fmt: skip
"""What prices, slabs and payments so simple that a pencil can follow them are warned of."""

FORM, POUR = {"visit": "form", "days": "2"}, {"visit": "pour", "days": "1"}
WASH = {"visit": "wash", "days": "1", "wait_days": "4"}
PLAIN: dict[str, Any] = {
    "name": "Plain",
    "kind": "broom",
    "rate": "$1.00 / sq ft",
    "sealer": "none",
    "visits": [FORM, POUR],
}
FANCY: dict[str, Any] = {
    "name": "Fancy",
    "kind": "stamped_texture",
    "rate": "$2.00 / sq ft",
    "sealer": "film",
    "brings": ["rinse", "film"],
    "visits": [FORM, POUR, WASH],
}


@cache
def shared() -> Shared:
    """Return the rules, the content and the theme, read once."""
    opened = read_shared()
    assert isinstance(opened, Shared), opened
    return opened


def figured(folder: Path, job: str = PATIO, **files: str) -> PricedJob:
    """Run stages 1 to 4 on a job that must be without fault."""
    made = figure(write_world(folder, job, **files), shared())
    assert _faults(made) == ()
    return made


def faults(job: Path) -> tuple[Problem, ...]:
    """Return what is wrong with a job file, beside what any short book is warned of."""
    return _faults(figure(job, shared()))


def _faults(made: PricedJob) -> tuple[Problem, ...]:
    return tuple(one for one in made.problems if one.code not in OF_A_SHORT_BOOK)


def results(folder: Path, job: str = PATIO, **files: str) -> Results:
    """Return the results of a job that must be without fault."""
    made = figured(folder, job, **files).results
    assert made is not None
    return made


def warned(folder: Path, job: str = PATIO, **files: str) -> Results:
    """Return the results of a job that has warnings."""
    made = figure(write_world(folder, job, **files), shared())
    assert made.problems
    assert made.results is not None
    return made.results


def quote(folder: Path, job: str = PATIO, **files: str) -> PricedQuote:
    """Return the prices of a job that must be without fault."""
    return results(folder, job, **files).quote


@cache
def example(job_file: Path) -> PricedJob:
    """An example after stages 1 to 4; figured once for a whole run of the tests."""
    made = once_per_run(f"figures of {job_file.stem}", lambda: figure(job_file, shared()))
    assert made.problems == ()
    return made


def example_results(job_file: Path) -> Results:
    """Return the results of an example."""
    made = example(job_file).results
    assert made is not None
    return made


def book(rates: Typed | None = None, finishes: Typed | None = None, **more: Any) -> str:
    """Return a rate book of so few prices that a person can follow a test with a pencil."""
    made = finishes or {"plain": PLAIN}
    usual = {"thickness": "4 in", "base": "4 in", "reinforcement": "fiber"}
    return as_yaml({
        "valid_from": "2026-01-01",
        "order": {"allowance": "0 %", "round_up_to": "0.25 cu yd"},
        "mix": {"strength_psi": "4500", "air": "6 %", "description": "ready-mixed"},
        "base_material": "crushed stone",
        "usual": dict.fromkeys(("patio", "walk", "drive", "pool deck"), usual),
        "reinforcement": {
            "fiber": {"kind": "fiber", "name": "fibers"},
            "bars": {"kind": "bar", "name": "bars"},
        },
        "visits": {"form": "Form", "pour": "Pour", "saw": "Saw", "wash": "Wash", "seal": "Seal"},
        "rates": dict(rates or {}),
        "finishes": {key: _covering(one, rates or {}) for key, one in made.items()},
        **more,
    })  # fmt: skip


def _covering(finish: Typed, rates: Typed) -> Typed:
    """Return a finish that pays for the slab where no rate of the book does."""
    by_rates = {item for one in rates.values() for item in one["covers"]}
    alone = by_rates.isdisjoint(ALWAYS_ASKED_ABOUT)
    return {"covers": ["slab"], **finish} if alone else finish


def rate(price: str, covers: str = "base", **more: Any) -> dict[str, Any]:
    """Return one entry of a rate book."""
    return {"name": f"Item at {price}", "covers": [covers], "rate": price, **more}


RINSE_AND_FILM: dict[str, Any] = {
    "rinse": rate("$0.10 / sq ft", "wash", applies="with finish"),
    "film": rate("$0.20 / sq ft", "sealing", applies="with finish"),
}


def company(**more: Any) -> str:
    """Return the example's company file with other keys, and open on every working day."""
    typed = yaml.safe_load((EXAMPLES / "company.yaml").read_text(encoding="utf-8"))
    return as_yaml({**typed, "closed": [], **more})


def share(part: str, *of: str, covers: str = "surcharge", **more: Any) -> dict[str, Any]:
    """Return a rate that is a share of the lines for some scope items."""
    return {"name": "Fuel", "covers": [covers], "share": part, "share_of": list(of), **more}


def tax(rate: str, *covers: str, rounded: str = "whole invoice") -> dict[str, Any]:
    """Return a tax on some scope items."""
    return {"id": "s", "name": "Tax", "rate": rate, "covers": list(covers), "round": rounded}


def job(*placements: Typed, **more: Any) -> str:
    """Return a job file; without placements it has one patio of 20 ft x 10 ft."""
    return as_yaml({
        "quote": "T-1",
        "date": "2026-05-14",
        "start": "2026-06-08",
        "title": "Patio",
        "customer": {"name": "Wren Abernathy", "email": "wren@post.example"},
        "site": {"address": "1 Test Lane", "town": "Harrow Bend"},
        "finish": "plain",
        "placements": list(placements) or [placement("20 ft x 10 ft")],
        **more,
    })  # fmt: skip


def placement(
    rectangle: str, name: str = "patio", *, at: str = "0 ft", **more: Any
) -> dict[str, Any]:
    """Return one rectangular placement, moved along the base line so that none overlap."""
    shape = {"rectangle": rectangle, "at": [at, "0"]}
    return {"id": name, "use": "patio", "add": [shape], **more}


def as_yaml(data: Typed) -> str:
    """Write typed text as YAML, without anchors, which quotegen refuses."""

    class NoAnchors(yaml.SafeDumper):
        def ignore_aliases(self, data: Any) -> bool:  # noqa: ARG002 - not for any data
            return True

    return yaml.dump(data, Dumper=NoAnchors, sort_keys=False, allow_unicode=True)


def by_id(finish: PricedFinish) -> dict[str, Line]:
    """Return the lines of a finish by id; ids must be unique."""
    found = {line.id: line for line in finish.lines}
    assert len(found) == len(finish.lines)
    return found


def amounts(finish: PricedFinish) -> dict[str, str]:
    """Return the amount of each line by id, as text."""
    return {line.id: str(line.amount) for line in finish.lines}


def half_up(value: Decimal) -> Decimal:
    """Round to the cent as a person does with a pencil; the tests' own, not the program's."""
    return value.quantize(CENT, rounding=ROUND_HALF_UP)


def all_lines(priced: PricedQuote) -> Iterator[Line]:
    """Yield the lines of every finish and every extra."""
    for finish in priced.finishes:
        yield from finish.lines
    for extra in priced.extras:
        yield from extra.lines
