"""Nothing private is within reach of what builds the customer's papers, however many dots away.

Two walks: over the types that the builders take, field by field, and over the objects that they
are really handed, since an object may be of a type derived from the one that a field names.
"""

import inspect
import re
from collections.abc import Iterator, Mapping
from importlib import import_module
from types import ModuleType
from typing import Any, NewType, TypeVar, get_args, get_type_hints

import pytest
from fontTools.ttLib import TTFont
from pydantic import BaseModel

from quotegen.explain.results import Results
from quotegen.pipeline import PricedJob, figure
from quotegen.pricing.costs.owner import OwnersFigures
from quotegen.reading.files.job import JobFile
from quotegen.reading.records import OwnersJob
from quotegen.reading.yaml.located import Document
from tests.architecture.tree import PACKAGE, REPO, modules
from tests.pricing import shop
from tests.world import EXAMPLES, PATIO, write_world

PRIVATE_WORDS = {
    "actual", "bid", "bids", "bill", "bills", "burden", "charge", "cost", "costed", "costs",
    "floor", "floors", "margin", "overhead", "private", "profit", "special", "wage",
}  # fmt: skip
PRIVATE_MODULES = (
    "quotegen.pricing.costs",
    "quotegen.reading.files.costs",
    "quotegen.reading.files.other_bids",
    "quotegen.reading.files.rate_book_file",
)
PRIVATE_TYPES = (Document, JobFile, OwnersJob)
LOADED_LATE = {"TTFont": TTFont}  # named in a signature, and imported where it is needed
MEANT_OTHERWISE = {("PreparedGround", "margin")}  # a strip of ground, in feet

MARK = "qzmarkxw"
PRIVATE_KEYS = f"""\
special_order: $777
private_notes: {MARK} notes
under_floor: {MARK} reason
private_costs: [{{what: {MARK} bill, kind: permit, amount: $1}}]
other_bids: [{{id: {MARK}, total: $1, scope: {{slab: included}}, note: {MARK} bid}}]
actual: {{done: 2026-06-20, note: {MARK} outcome}}
"""


def _customers_builders() -> Iterator[ModuleType]:
    """Yield the modules that build and render the customer's papers."""
    private = PACKAGE / "explain" / "private"
    for path in modules("explain", "publish/web"):
        if private not in path.parents:
            name = ".".join(path.relative_to(REPO).with_suffix("").parts)
            yield import_module(name.removesuffix(".__init__"))


def _taken(module: ModuleType) -> Iterator[tuple[str, Any]]:
    """Yield the type of each parameter of each function and method of a module."""
    mine = [
        one for one in vars(module).values() if getattr(one, "__module__", "") == module.__name__
    ]
    inside = [f for one in mine if isinstance(one, type) for f in vars(one).values()]
    for one in (*mine, *inside):
        if inspect.isfunction(one):
            for name, kind in get_type_hints(one, localns=LOADED_LATE).items():
                if name != "return":
                    yield f"{module.__name__}.{one.__qualname__}({name})", kind


def _attributes(kind: type) -> Iterator[tuple[str, Any]]:
    """Yield the name and the type of each field and property of one of our own types."""
    for name, annotation in get_type_hints(kind).items():
        if not name.startswith(("_", "model_")):
            yield name, annotation
    for name, value in inspect.getmembers(kind, lambda member: isinstance(member, property)):
        if kind.__module__.startswith("quotegen.") and not name.startswith(("_", "model_")):
            yield name, get_type_hints(value.fget).get("return")


def _inside(kind: Any) -> Iterator[tuple[str, Any]]:
    """Yield what a type is made of: its attributes, or the arguments of a generic one."""
    if isinstance(kind, NewType):
        yield "", kind.__supertype__
    elif isinstance(kind, TypeVar):
        yield "", kind.__bound__
    elif get_args(kind):
        yield from (("", argument) for argument in get_args(kind))
        yield "", getattr(kind, "__origin__", None)
    elif isinstance(kind, type) and kind.__module__.startswith("quotegen."):
        yield from _attributes(kind)


def _private_in(*starts: tuple[str, Any]) -> list[str]:
    """Walk types from some starts; return the way to each private type and attribute."""
    known, ahead, found = set[Any](), list(starts), list[str]()
    while ahead:
        way, kind = ahead.pop()
        if isinstance(kind, list) or kind in known:
            continue
        known.add(kind)
        if isinstance(kind, type) and _is_private_type(kind):
            found.append(f"{way}: {kind.__name__}")
        for name, part in _inside(kind):
            if _is_private(kind, name):
                found.append(f"{way}.{name}")
            ahead.append((f"{way}.{name}" if name else way, part))
    return found


def _is_private_type(kind: type) -> bool:
    return kind in PRIVATE_TYPES or kind.__module__.startswith(PRIVATE_MODULES)


def _is_private(kind: type, name: str) -> bool:
    return bool(PRIVATE_WORDS & set(name.split("_"))) and (
        (getattr(kind, "__name__", ""), name) not in MEANT_OTHERWISE
    )


def test_what_the_customers_builders_take_has_nothing_private():
    """No cost, margin, floor, other bid, bill or private note, and no raw text of a file."""
    taken = [start for module in _customers_builders() for start in _taken(module)]
    assert len(taken) > 300
    assert any(kind is Results for _, kind in taken)
    assert _private_in(*taken) == []


@pytest.mark.parametrize(
    ("kind", "found"),
    [
        (OwnersJob, {"costs", "cost", "other_bids", "private_notes", "private_costs", "under_floor",
                     "actual", "special_order", "floors", "margin", "wage", "burden", "charge"}),
        (OwnersFigures, {"costs", "cost", "margin", "floors", "bids", "under_floor"}),
        (dict[str, tuple[Document | None, ...]], {"Document"}),
    ],
)  # fmt: skip
def test_the_walk_finds_what_the_owner_has(kind: Any, found: set[str]):
    """From the owner's types the same walk comes upon each of these, so it is not blind."""
    reached = {re.split(r"[.: ]+", way)[-1] for way in _private_in(("start", kind))}
    assert found <= reached


@pytest.fixture(scope="module")
def marked(tmp_path_factory) -> PricedJob:
    """Return a job whose private texts are marked, with the costs of the example book."""
    job = write_world(tmp_path_factory.mktemp("marked"), PATIO + PRIVATE_KEYS)
    book = (EXAMPLES / "rate-book.yaml").read_text(encoding="utf-8")
    marked_book = book.replace("name: Skid steer", f"name: {MARK} machine")
    assert marked_book != book
    (job.parent / "rate-book.yaml").write_text(marked_book, encoding="utf-8")
    return figure(job, shop.shared())


def _objects(start: object) -> Iterator[object]:
    """Yield every object that can be reached from one through attributes and containers."""
    known, ahead = set[int](), [start]
    while ahead:
        one = ahead.pop()
        if id(one) in known:
            continue
        known.add(id(one))
        yield one
        if isinstance(one, BaseModel):
            ahead += [*vars(one).values(), *(one.__pydantic_extra__ or {}).values()]
        elif isinstance(one, Mapping):
            ahead += [*one.keys(), *one.values()]
        elif isinstance(one, (tuple, list, set, frozenset)):
            ahead += one
        elif type(one).__module__.startswith("quotegen."):
            slots = (s for kind in type(one).__mro__ for s in getattr(kind, "__slots__", ()))
            ahead += [getattr(one, slot, None) for slot in slots]
            ahead += getattr(one, "__dict__", {}).values()


def _private_objects(start: object) -> set[str]:
    """Return each private object within reach: by its type, or by the mark in its text."""
    return {
        one if isinstance(one, str) else type(one).__name__
        for one in _objects(start)
        if (isinstance(one, str) and MARK in one) or _is_private_type(type(one))
    }


def test_what_they_are_handed_has_nothing_private(marked: PricedJob):
    """Neither a private object nor a private text hangs on the results of a job."""
    assert marked.results is not None
    assert _private_objects(marked.results) == set()


def test_the_owner_is_handed_all_of_it(marked: PricedJob):
    """The same search finds every mark and every private kind of object on the owner's side."""
    assert marked.owner is not None
    found = _private_objects(marked.owner)
    assert {f"{MARK} notes", f"{MARK} reason", f"{MARK} bill", f"{MARK} bid", f"{MARK} outcome",
            f"{MARK} machine", MARK} <= found  # fmt: skip
    assert {"OwnersJob", "JobFile", "RateBookFile", "CostedRate", "CostedFinish", "Costs",
            "FinishCosts", "OtherBid", "BidComparison"} <= found  # fmt: skip
