"""A world in which everything private is marked, so that a search can find where it went."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from itertools import count
from pathlib import Path
from typing import Any

import yaml
from PIL import Image
from PIL.PngImagePlugin import PngInfo
from PIL.TiffImagePlugin import IFDRational

from quotegen.explain.results import Results
from quotegen.pipeline import figure
from quotegen.pricing.costs.owner import OwnersFigures
from quotegen.publish.package import Package, package
from tests.pricing.shop import as_yaml, shared
from tests.world import EXAMPLES

SHOWN_TITLE, SHOWN_TOWN, SHOWN_ALT = (
    "Deck by the mill",
    "Tollgate Cross",
    "A slate deck, seen from the lawn",
)
FIRST_COST, APART = Decimal("4071.37"), Decimal("13.01")
BID, BILL = "$6903.37", "$2718.29"
LEAST = Decimal(1000)
"""What is searched for is larger, so that no coordinate can look like one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkedWorld:
    """A built package, and all that must not be found in what the customer gets.

    Attributes:
        texts: what each marker marks, by marker.
        amounts: every cost, and every margin that follows from one.
    """

    results: Results
    package: Package
    texts: Mapping[str, str]
    amounts: frozenset[Decimal]

    def customer(self) -> dict[str, bytes]:
        """Return the customer's files."""
        return {path: data for path, data in self.package.files.items()
                if path.startswith("customer/")}  # fmt: skip

    def private(self) -> dict[str, bytes]:
        """Return the owner's files."""
        return {path: data for path, data in self.package.files.items()
                if path.startswith("private/")}  # fmt: skip


class _Marks:
    """Hands out markers that occur nowhere else."""

    def __init__(self) -> None:
        self.known: dict[str, str] = {}

    def __call__(self, what: str) -> str:
        mark = f"qzmark{len(self.known):02d}xw"
        self.known[mark] = what
        return mark


def build(folder: Path, job_name: str) -> MarkedWorld:
    """Build one of the example jobs in a world of markers."""
    marks = _Marks()
    home = folder / marks("folder of the machine")
    (home / "jobs").mkdir(parents=True)
    remark = f"# {marks('comment in a file')}\n"
    for name, text in (
        ("company.yaml", (EXAMPLES / "company.yaml").read_text(encoding="utf-8")),
        ("rate-book.yaml", _costed(_book(), marks)),
        ("past-jobs.yaml", as_yaml({"past_jobs": _past_jobs(home, marks)})),
        (f"jobs/{marks('file name of the job')}.yaml", _job(job_name, marks)),
    ):
        (home / name).write_text(remark + text, encoding="utf-8")
    (job_file,) = (home / "jobs").iterdir()
    made = figure(job_file, shared())
    assert {problem.code for problem in made.problems} <= {"under-floor"}
    assert made.results is not None
    assert made.owner is not None
    return MarkedWorld(
        results=made.results,
        package=package(made.results, made.owner, ()),
        texts=marks.known,
        amounts=frozenset(_amounts(made.owner)) | set(_typed_costs()),
    )


def _book() -> str:
    return (EXAMPLES / "rate-book.yaml").read_text(encoding="utf-8")


def _job(name: str, marks: _Marks) -> str:
    text = (EXAMPLES / "jobs" / f"{name}.yaml").read_text(encoding="utf-8")
    job: dict[str, Any] = yaml.load(text, Loader=yaml.BaseLoader)
    job |= {
        "private_notes": f"Gate is narrow. {marks('private notes of the job')}",
        "under_floor": marks("reason to quote under a floor"),
        "private_costs": [{
            "what": f"Permit {marks('bill of the job')}", "kind": "permit", "amount": BILL}],
        "other_bids": [{
            "id": marks("name of another bid"), "total": BID,
            "scope": {"base": "not included", "slab": "included"},
            "numbers": {"reinforcement": marks("reinforcement of another bid")},
            "note": marks("note on another bid")}],
        "actual": {**job.get("actual", {}), "done": "2026-12-01",
                   "note": marks("note on how it came out")},
    }  # fmt: skip
    if "drive" in name:  # the nearest past jobs to a drive are other ones
        job["references"] = ["shown", "partly"]
    return as_yaml(job)


def _costed(text: str, marks: _Marks) -> str:
    """Give all that is private in the book an amount of its own that no price comes near."""
    costs = iter(_typed_costs())
    marked = _PRIVATE.sub(lambda found: f"{found[1]}${next(costs)}", text)
    assert next(costs, None) is None
    return marked.replace("name: Skid steer", f"name: {marks('machine of the book')}")


_PRIVATE = re.compile(
    r"((?:cost|wage|price|concrete_load|color_load|stone_load|day|mile|crew_day|sq_ft): )\$\d[\d.]*"
)


def _typed_costs() -> list[Decimal]:
    numbers = zip(_PRIVATE.findall(_book()), count(), strict=False)
    return [FIRST_COST + APART * number for _, number in numbers]


def _amounts(owner: OwnersFigures) -> list[Decimal]:
    """Return what the owner's sheets say: costs, margins, floors, discounts, other bids."""
    amounts: list[Decimal] = [Decimal(BID.strip("$")), Decimal(BILL.strip("$"))]
    for finish in owner.finishes:
        amounts += [finish.cost, finish.margin, finish.walk_away]
        amounts += [a for line in finish.lines for a in (line.cost, line.margin) if a]
        amounts += [item.amount for item in finish.items]
        amounts += [floor.price for floor in finish.floors]
    for one in (*owner.discounts, *owner.sensitivity, *owner.savings, *owner.phases, *owner.extras):
        amounts += [one.margin, one.cost_change]
    amounts += [one.price for one in owner.discounts]
    amounts += [a for bid in owner.bids for a in (bid.gap, bid.remains)]
    return [abs(amount) for amount in amounts if abs(amount) > LEAST]


def _past_jobs(home: Path, marks: _Marks) -> dict[str, dict[str, Any]]:
    """Past jobs of every kind of consent; only the first two may be seen, and only in part."""
    base = {"finished": "2022-06-17", "use": "pool deck", "finish": "stamped_texture",
            "area_sqft": "940", "shows": "four winters of wear"}  # fmt: skip

    def contact(whose: str) -> dict[str, str]:
        name, phone = marks(f"contact of {whose}"), marks(f"phone of {whose}")
        return {"name": f"Marta {name}", "phone": f"740-555-0131 {phone}"}

    def photo(whose: str, ending: str = "jpg") -> dict[str, str]:
        name = f"{marks(f'photo file of {whose}')}.{ending}"
        _photograph(home / name, whose, marks)
        return {"file": name, "alt": f"A deck. {marks(f'alt text of {whose}')}"}

    def hidden(whose: str, **more: Any) -> dict[str, Any]:
        return {
            **base,
            "title": f"Deck {marks(f'title of {whose}')}",
            "town": marks(f"town of {whose}"),
            "shows": marks(f"what {whose} shows"),
            "photo": photo(whose),
            "contact": contact(whose),
            "private_notes": marks(f"private notes of {whose}"),
            **more,
        }

    return {
        "shown": {
            **base, "title": SHOWN_TITLE, "town": SHOWN_TOWN, "contact": contact("a shown job"),
            "photo": {**photo("a shown job"), "alt": SHOWN_ALT},
            "private_notes": marks("private notes of a shown job"),
            "consent": {"given": "2024-09-03", "shows": ["town", "photo"]},
        },
        "partly": {
            **base, "title": "Deck by the weir", "town": marks("town not agreed to"),
            "contact": contact("a job shown in part"), "photo": photo("a job shown in part", "png"),
            "private_notes": marks("private notes of a job shown in part"),
            "consent": {"given": "2024-09-03"},
        },
        "never_asked": hidden("a job without consent"),
        "withdrawn": hidden("a withdrawn job", consent={
            "given": "2024-02-09", "shows": ["town", "photo", "contact"],
            "withdrawn": "2025-08-30"}),
    }  # fmt: skip


def _photograph(path: Path, whose: str, marks: _Marks) -> None:
    """Save a picture with all that a camera writes beside it."""
    picture = Image.effect_noise((64, 48), 60).convert("RGB")
    if path.suffix == ".png":
        info = PngInfo()
        info.add_text("Author", marks(f"PNG text of {whose}"))
        picture.save(path, pnginfo=info)
        return
    exif = Image.Exif()
    for tag, what in ((0x010E, "description"), (0x013B, "artist"), (0x8298, "copyright"),
                      (0x0110, "camera")):  # fmt: skip
        exif[tag] = marks(f"EXIF {what} of {whose}")
    place = exif.get_ifd(0x8825)
    place[1], place[2] = "N", (IFDRational(41), IFDRational(22), IFDRational(917, 100))
    place[3], place[4] = "W", (IFDRational(81), IFDRational(51), IFDRational(3331, 100))
    place[29] = marks(f"GPS stamp of {whose}")
    xmp = f"<x:xmpmeta xmlns:x='adobe:ns:meta/'>{marks(f'XMP of {whose}')}</x:xmpmeta>"
    picture.save(path, exif=exif, comment=marks(f"JPEG comment of {whose}"), xmp=xmp.encode())
