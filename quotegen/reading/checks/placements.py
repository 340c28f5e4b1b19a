"""Checks of each placement and the way to it: use, steel, deep edges, fall, access."""

from collections.abc import Iterator

from quotegen.problem import Problem
from quotegen.quantity import tape
from quotegen.reading.files.job import JobFile, Placement
from quotegen.reading.files.rate_book import RateBook
from quotegen.reading.files.shapes import Beside, CutOut
from quotegen.reading.files.site_parts import FallsFrom
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.near import near_miss
from quotegen.reading.yaml.typed_file import Typed


def placement_faults(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    """Yield what a placement names and the book does not have, and what no ground can be."""
    seen: set[str] = set()
    for index, placement in enumerate(job.value.placements):
        here: DocumentPath = ("placements", index)
        if placement.id in seen:
            said = f"there is already a placement `{placement.id}`"
            yield job.fault((*here, "id"), "placement-twice", said, "give each its own id")
        seen.add(placement.id)
        yield from _against_book(job, here, placement, book)
        yield from _deep_edges(job, here, placement, book)
        yield from _falls(job, here, placement)
    access = job.value.access
    if access is not None and access.method is not None and access.method not in book.access:
        said = f"the rate book has no way of access `{access.method}`"
        hint = near_miss(access.method, book.access) or "add it under `access` in the rate book"
        yield job.fault(("access", "method"), "unknown-access", said, hint)


def _against_book(
    job: Typed[JobFile], path: DocumentPath, placement: Placement, book: RateBook
) -> Iterator[Problem]:
    use, steel = placement.use, placement.reinforcement
    if use not in book.usual:
        said = f"the rate book does not say what is usual for a {use.value}"
        hint = f"add `{use.value}` under `usual` in the rate book"
        yield job.fault((*path, "use"), "no-usual", said, hint)
    if steel and steel not in book.reinforcement:
        said = f"the rate book has no reinforcement `{steel}`"
        hint = near_miss(steel, book.reinforcement)
        yield job.fault((*path, "reinforcement"), "unknown-reinforcement", said, hint)


def _deep_edges(
    job: Typed[JobFile], path: DocumentPath, placement: Placement, book: RateBook
) -> Iterator[Problem]:
    usual = book.usual.get(placement.use)
    thickness = placement.thickness or (usual and usual.thickness)
    for key, deep in (
        ("thickened_edge", placement.thickened_edge),
        ("turned_down_edge", placement.turned_down_edge),
    ):
        if deep and thickness and deep.depth <= thickness:
            said = (
                f"this edge is {tape(deep.depth.feet)} deep and the slab {tape(thickness.feet)}"
                " thick; the depth counts from the finished top"
            )
            hint = "type the whole depth, such as 8 in, or leave the edge out"
            yield job.fault((*path, key, "depth"), "edge-not-deeper", said, hint)


def _falls(job: Typed[JobFile], path: DocumentPath, placement: Placement) -> Iterator[Problem]:
    toward, away = placement.falls_toward, placement.falls_away_from
    if placement.fall is not None and not toward and not away:
        hint = "add `falls_toward: bottom`, top, left or right, as the plan is typed"
        said = "the fall has no direction"
        yield job.fault((*path, "fall"), "fall-without-direction", said, hint)
    if toward and away:
        said = (
            f"the slab falls toward the {toward[0].value} and away from the {away[0].value};"
            " only one of the two can be said"
        )
        hint = "keep one, or make two placements that each fall their own way"
        yield job.fault((*path, "falls_away_from"), "two-directions", said, hint)
    for key, ways in (("falls_toward", toward), ("falls_away_from", away)):
        if len(set(ways)) < len(ways):
            said = f"`{ways[0].value}` stands here twice"
            yield job.fault((*path, key), "fall-said-twice", said, "keep one of the two")
    has_pool = any(shape.is_ is CutOut.POOL for shape in placement.take_away)
    has_pool = has_pool or any(shape.border for shape in placement.add)
    if FallsFrom.POOL in away and not has_pool:
        yield _nothing_to_fall_from(job, path, "pool", "mark a shape under `take_away` `is: pool`")
    if FallsFrom.HOUSE in away and not _touches_house(placement):
        yield _nothing_to_fall_from(job, path, "house", "mark a side with `against_house`")


def _touches_house(placement: Placement) -> bool:
    """Whether an edge is at a building: the house, or the floor of its garage."""
    return any(
        shape.against_house
        or Beside.GARAGE in shape.against.values()
        or any(s.against_house or s.against is Beside.GARAGE for s in shape.outline or ())
        for shape in (*placement.add, *placement.take_away)
    )


def _nothing_to_fall_from(job: Typed[JobFile], path: DocumentPath, what: str, hint: str) -> Problem:
    said = f"the slab falls away from the {what}, and no {what} is on its plan"
    either = f"{hint}, or say `falls_toward`"
    return job.fault((*path, "falls_away_from"), "nothing-to-fall-from", said, either)
