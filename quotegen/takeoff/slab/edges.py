"""The edges of a slab by the foot: each run with its letter, and the totals that are priced."""

import math
from collections.abc import Iterator, Mapping
from string import ascii_uppercase
from types import MappingProxyType

from quotegen.quantity import rounded
from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.plan_geometry import Against, EdgeRun
from quotegen.takeoff.shapes.curve import Curve
from quotegen.takeoff.shapes.oval import Oval
from quotegen.takeoff.shapes.path import Segment, chord_ft, drawn_run, rise_ft
from quotegen.takeoff.shapes.segments import Arc, Line
from quotegen.takeoff.slab.trace import Boundary

_NOT_FORMED = frozenset(Against) - {
    Against.OPEN, Against.OPENING, Against.BESIDE, Against.DOWELED,
}  # fmt: skip
_AT: Mapping[EdgeKind, frozenset[Against]] = MappingProxyType({
    EdgeKind.HOUSE: frozenset({Against.HOUSE}),
    EdgeKind.GARAGE: frozenset({Against.GARAGE}),
    EdgeKind.POOL: frozenset({Against.POOL, Against.CAST}),
    EdgeKind.ISOLATED: frozenset({
        Against.HOUSE, Against.GARAGE, Against.POOL, Against.SLAB, Against.CURB, Against.WALL,
        Against.BESIDE,
    }),
})  # fmt: skip
"""What the edges of a kind are against. A soft strip stands along an isolated one."""

_RUN_PLACES = 2  # 0.01 ft is about 1/8 in, what a tape is read to


def edge_runs(boundary: Boundary) -> tuple[EdgeRun, ...]:
    """Return every run of edge with its letter on the plan, the outer rings first."""
    outer = [(segment, False) for ring in boundary.outer for segment in ring]
    inner = [(segment, True) for ring in boundary.inner for segment in ring]
    runs = enumerate((*outer, *inner))
    return tuple(_run(mark_of(n), segment, inner=inner) for n, (segment, inner) in runs)


def edge_lengths_ft(boundary: Boundary) -> Mapping[EdgeKind, float]:
    """Return the unrounded length of each kind of edge.

    The formed edge is the outer edge without what meets something that stands there.
    """
    parts: dict[EdgeKind, list[float]] = {edge: [] for edge in EdgeKind}
    for ring in boundary.outer:
        for segment in ring:
            for edge in (EdgeKind.OUTER, *_kinds(segment), *_formed(segment)):
                parts[edge].append(segment.length_ft)
    for ring in boundary.inner:
        for segment in ring:
            for edge in (EdgeKind.INNER, *_kinds(segment)):
                parts[edge].append(segment.length_ft)
    return MappingProxyType({edge: math.fsum(lengths) for edge, lengths in parts.items()})


def runs_along(runs: tuple[EdgeRun, ...], edge: EdgeKind) -> tuple[EdgeRun, ...]:
    """Return the runs that add up to one kind of edge."""
    return tuple(run for run in runs if _counts(run, edge))


def mark_of(number: int) -> str:
    """Return the letter of a run by its number: A to Z, then AA, AB and so on."""
    mark = ascii_uppercase[number % len(ascii_uppercase)]
    rest = number // len(ascii_uppercase)
    return mark_of(rest - 1) + mark if rest else mark


def _counts(run: EdgeRun, edge: EdgeKind) -> bool:
    if edge in _AT:
        return run.against in _AT[edge]
    return {
        EdgeKind.OUTER: not run.inner,
        EdgeKind.INNER: run.inner,
        EdgeKind.FORMED: not run.inner and run.against not in _NOT_FORMED,
        EdgeKind.STRAIGHT: not run.is_curved,
        EdgeKind.CURVED: run.is_curved,
        EdgeKind.JOINT: False,
    }[edge]


def _kinds(segment: Segment) -> Iterator[EdgeKind]:
    yield EdgeKind.STRAIGHT if isinstance(segment, Line) else EdgeKind.CURVED
    yield from (edge for edge, met in _AT.items() if segment.against in met)


def _formed(segment: Segment) -> Iterator[EdgeKind]:
    if segment.against not in _NOT_FORMED:
        yield EdgeKind.FORMED


def _run(mark: str, segment: Segment, *, inner: bool) -> EdgeRun:
    return EdgeRun(
        mark=mark,
        against=segment.against,
        inner=inner,
        points_ft=drawn_run(segment),
        length_ft=rounded(segment.length_ft, _RUN_PLACES),
        chord_ft=rounded(chord_ft(segment), _RUN_PLACES),
        rise_ft=rounded(rise_ft(segment), _RUN_PLACES),
        radius_ft=rounded(segment.radius_ft, _RUN_PLACES) if isinstance(segment, Arc) else None,
        is_oval=isinstance(segment, Oval),
        is_smooth=isinstance(segment, Curve),
    )
