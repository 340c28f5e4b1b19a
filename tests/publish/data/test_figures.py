"""figures.json: the contract with machines, key by key."""

import json
import re
import subprocess
import sys
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from quotegen.pricing.quoted.no_work import AFTER_THE_PRICE
from quotegen.publish.data.figures import figures, to_json
from tests.pricing import shop
from tests.world import EXAMPLES

MONEY = re.compile(r"-?\d+\.\d\d")
NUMBER = re.compile(r"-?\d+(\.\d+)?")
ANYTHING = re.compile(r".*", re.DOTALL)
DATE = re.compile(r"\d{4}-\d\d-\d\d")
LINE = {
    "id": ANYTHING, "scope": list, "name": ANYTHING, "placement": (str, type(None)),
    "basis": re.compile("measured|fixed|allowance"), "quantity": NUMBER, "unit": ANYTHING,
    "rate": NUMBER, "amount": MONEY,
}  # fmt: skip
PLACEMENT = {
    "id": ANYTHING, "area_sqft": NUMBER, "outer_edge_ft": NUMBER, "inner_edge_ft": NUMBER,
    "straight_edge_ft": NUMBER, "curved_edge_ft": NUMBER, "volume_cuyd": NUMBER,
    "order_cuyd": NUMBER,
}  # fmt: skip
ROW = {"change": NUMBER, "area": NUMBER, "unit": ANYTHING, "difference": MONEY, "total": MONEY,
       "needs_signatures": bool}  # fmt: skip
VISIT = {"id": ANYTHING, "name": ANYTHING, "first_day": DATE, "last_day": DATE}
COUNTS = {"contract.changes.number", "placements.joints.panels.number", "visits.crew",
          "contract.visits.crew", "alternates.visits", "visits.part", "visits.parts",
          "contract.visits.part", "contract.visits.parts"}  # fmt: skip
COSTS = {"price": MONEY, "cost": MONEY, "margin": MONEY, "without_cost": list}

EVERY_EXAMPLE = pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)


def _figures(job_file: Path) -> Any:
    made = shop.example(job_file)
    assert made.results is not None
    assert made.owner is not None
    return json.loads(to_json(figures(made.results, made.owner)))


def _holds(found: dict[str, Any], wanted: dict[str, Any]) -> None:
    """Hold an object to the contract: it may have grown, and what is named is as named."""
    assert wanted.keys() <= found.keys()
    for key, kind in wanted.items():
        if isinstance(kind, re.Pattern):
            assert isinstance(found[key], str), key
            assert kind.fullmatch(found[key]), (key, found[key])
        else:
            assert isinstance(found[key], kind), key


@EVERY_EXAMPLE
class TestTheContract:
    """ "It grows, and what stands keeps its meaning" (design, commands)."""

    def test_keys_and_kinds(self, job_file: Path):
        """Every key of the design is there, amounts with two decimals, dates as ISO has them."""
        made = _figures(job_file)
        _holds(made["quote"], {"number": ANYTHING, "revision": int, "date": DATE,
                               "currency": re.compile("USD")})  # fmt: skip
        _holds(
            made,
            {
                "chosen": ANYTHING,
                "total": MONEY,
                "placements": list,
                "finishes": list,
                "payments": list,
                "adjustment": list,
                "visits": list,
                "costs": dict,
            },
        )
        for finish in made["finishes"]:
            _holds(finish, {"id": ANYTHING, "total": MONEY, "lines": list})
        lists = (
            (made["placements"], PLACEMENT), (made["adjustment"], ROW), (made["visits"], VISIT),
            (made["payments"], {"id": ANYTHING, "when": ANYTHING, "amount": MONEY}),
            ([line for f in made["finishes"] for line in f["lines"]], LINE),
        )  # fmt: skip
        for costs in made["costs"].values():
            _holds(costs, COSTS)
        for things, wanted in lists:
            assert things
            for thing in things:
                _holds(thing, wanted)

    def test_no_number_is_a_float(self, job_file: Path):
        """Money and quantities are decimal strings; only counts and numberings are bare numbers."""
        bare = {path for path, value in _leaves(_figures(job_file)) if _is_number(value)}
        assert bare - COUNTS == {"quote.revision", "finishes.visits"}

    def test_they_agree_with_each_other(self, job_file: Path):
        """A reader with no core finds that lines, totals, payments and costs add up."""
        made = _figures(job_file)
        totals = {finish["id"]: Decimal(finish["total"]) for finish in made["finishes"]}
        for finish in made["finishes"]:
            assert sum(Decimal(line["amount"]) for line in finish["lines"]) == totals[finish["id"]]
            for line in finish["lines"]:
                exact = Decimal(line["quantity"]) * Decimal(line["rate"])
                assert shop.half_up(exact) == Decimal(line["amount"])
        assert Decimal(made["total"]) == totals[made["chosen"]]
        assert (
            sum(Decimal(payment["amount"]) for payment in made["payments"])
            == totals[made["chosen"]]
        )
        for finish, costs in made["costs"].items():
            assert Decimal(costs["price"]) == totals[finish]
            assert Decimal(costs["margin"]) == Decimal(costs["price"]) - Decimal(costs["cost"])
        for row in made["adjustment"]:
            assert Decimal(row["total"]) - Decimal(row["difference"]) == Decimal(made["total"])

    def test_scope_items_join(self, job_file: Path):
        """The scope of a line names pages that content explains: it is the join key."""
        known = shop.shared().content.scope
        for finish in _figures(job_file)["finishes"]:
            for line in finish["lines"]:
                assert set(line["scope"]) <= known.keys() | AFTER_THE_PRICE

    def test_edges_add_up(self, job_file: Path):
        """Straight and curved edge are outer and inner edge, to the tenths they are rounded to."""
        for placement in _figures(job_file)["placements"]:
            outer, inner, straight, curved = (
                Decimal(placement[f"{kind}_edge_ft"])
                for kind in ("outer", "inner", "straight", "curved")
            )
            assert abs(outer + inner - straight - curved) <= Decimal("0.2")

    def test_it_is_written_for_people_as_well(self, job_file: Path):
        """Indented, in UTF-8 as it is, with a line end; the same job is the same bytes."""
        made = shop.example(job_file)
        assert made.results is not None
        assert made.owner is not None
        data = to_json(figures(made.results, made.owner))
        assert data == to_json(figures(made.results, made.owner))
        assert data.startswith(b'{\n  "quote"')
        assert data.endswith(b"}\n")
        assert b"\\u" not in data


def test_the_command_prints_the_same():
    """`quotegen figure --json` prints what figures.json holds."""
    (job_file, *_) = shop.JOBS
    done = subprocess.run(
        [sys.executable, "-m", "quotegen", "figure", "--json", str(job_file)],
        capture_output=True, check=True,
    )  # fmt: skip
    made = shop.example(job_file)
    assert made.results is not None
    assert made.owner is not None
    assert done.stdout == to_json(figures(made.results, made.owner))
    assert done.stderr == b""


def _leaves(value: object, path: str = "") -> Iterator[tuple[str, object]]:
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from _leaves(inner, f"{path}.{key}".lstrip("."))
    elif isinstance(value, list):
        for inner in value:
            yield from _leaves(inner, path)
    else:
        yield path, value


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def test_a_machine_finds_the_range():
    """figures.json carries the deviation, both ends of the area, and both ends of the price."""
    kidney = next(path for path in shop.JOBS if "kidney" in path.name)
    results, owner = shop.example_results(kidney), shop.example(kidney).owner
    assert owner is not None
    found = figures(results, owner)
    assert found["placements"][0]["area_low_sqft"] == str(  # type: ignore[index]
        results.takeoff.placements[0].area_range.low_sqft
    )
    assert [row["end"] for row in found["tape_range"]] == ["low", "high"]  # type: ignore[attr-defined]


def test_money_of_a_bid_that_is_not_known_is_null():
    """Of one price for many items each is null and no zero; the parts make the gap to the cent."""
    made = shop.example(EXAMPLES.parent / "all_in" / "jobs" / "kiln-hill-pool-deck.yaml")
    assert made.results is not None
    assert made.owner is not None
    (bid,) = json.loads(to_json(figures(made.results, made.owner)))["bids"]
    worth = {item["scope"][0]: item["amount"] for item in bid["items"]}
    assert (worth["cast_edge"], worth["base"], worth["sealing"]) == ("2546.10", None, None)
    assert {number["worth"] for number in bid["numbers"]} == {None}
    parts = ("left_out", "not_stated", "at_their_numbers", "for_their_extras", "discount",
             "remains")  # fmt: skip
    assert bid["discount"] == "-250.00"
    assert sum(Decimal(bid[part] or 0) for part in parts) == Decimal(bid["gap"])
    assert bid["same_work"] is False
