"""Sheet 2, the slab cut open: what exactly is poured, and how to check it with a tape."""

from collections.abc import Callable, Iterator

from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.cutaway import AtTheEdge, cutaway
from quotegen.explain.pictures.joint_drawing import draw_joints
from quotegen.explain.pictures.steps_drawing import steps_drawing
from quotegen.explain.results import Results
from quotegen.explain.sheets.area_price import total_area
from quotegen.explain.sheets.sizes import JOINTS, NARROW_PX, STEPS_PX, WIDE_PX
from quotegen.explain.sheets.views import DrawingPair, SlabSheet, TapeCheck
from quotegen.explain.words.numbers import (
    depths,
    edge_length,
    edge_lengths,
    joint_spacing,
    saw_depth,
)
from quotegen.explain.words.rule_words import rule_text
from quotegen.reading.files.rate_book import SteelKind
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import PlacementSpec


def slab_sheet(results: Results) -> SlabSheet:
    """Build sheet 2."""
    jointed = any(measured.joints.joints for measured in results.takeoff.placements)
    return SlabSheet(
        cut_open=tuple(_cut_open(results)),
        panels=_panels(results) if jointed else "",
        joints=_joints(results) if jointed else None,
        joint_notes=tuple(_joint_notes(results)) if jointed else (),
        checks=tuple(tape_checks(results)),
        water=tuple(_water(results)),
        steps=tuple(_steps(results)),
        ground=_ground(results),
    )


def _cut_open(results: Results) -> Iterator[DrawingPair]:
    """One drawing for each different build-up."""
    seen: set[tuple[object, ...]] = set()
    for index, placement in enumerate(results.job.placements):
        built_up = (
            placement.thickness,
            placement.base,
            placement.reinforcement,
            placement.deep_edges,
        )
        if built_up not in seen:
            seen.add(built_up)
            yield DrawingPair(
                wide=cutaway(results, placement, WIDE_PX, f"cut-{index}", _beside(placement)),
                narrow=cutaway(
                    results, placement, NARROW_PX, f"cut-narrow-{index}", _beside(placement)
                ),
            )


def _beside(placement: PlacementSpec) -> AtTheEdge:
    """What the job says of the ground beside the slab and the door over it."""
    typed = placement.typed
    return AtTheEdge(above_lawn=typed.over_lawn, below_sill=typed.below_sill)


def _joints(results: Results) -> DrawingPair:
    return DrawingPair(
        wide=draw_joints(results, JOINTS, "joints", lettered=False).drawing,
        narrow=draw_joints(results, JOINTS, "joints-narrow", lettered=False).drawing,
    )


def _panels(results: Results) -> str:
    words = results.words
    panels = sum(len(one.joints.panels) for one in results.takeoff.placements)
    spacing = results.by_placement(
        {p.id: joint_spacing(results, p) for p in results.placements_with("joints")}
    )
    return words.count("panels_line", panels, spacing=spacing)


def _joint_notes(results: Results) -> Iterator[str]:
    """Where a soft strip parts the slab from what stands there, and how wide it is."""
    if "isolation" not in results.scope_items():
        return
    lengths = {
        p.id: edge_length(results, p.id, EdgeKind.ISOLATED)
        for p in results.placements_with("isolation")
        if results.takeoff.placement(p.id).edges_ft[EdgeKind.ISOLATED]
    }
    if lengths:
        width = rule_text(results, "isolation_joint_width")
        yield results.words("joint_note", width=width, length=results.by_placement(lengths))
    if any(placement.casts_pool_edge for placement in results.job.placements):
        yield results.words("joint_note_cast")


def tape_checks(results: Results) -> Iterator[TapeCheck]:
    """The checks that this job has a figure for, in the order of the work."""
    words, covered = results.words, results.scope_items()
    thicknesses = {words.depth(p.thickness) for p in results.placements_with("slab")}
    depth = min(thicknesses) if len(thicknesses) == 1 else words("check_depth_of_each")
    for item, figure in _FIGURES.items():
        said = figure(results) if item in covered else ""
        if said:
            how = words(f"check_{item}", depth=depth, area=total_area(results))
            yield TapeCheck(name=results.content.scope[item].front.title, figure=said, how=how)


def _steel(results: Results) -> str:
    choices = results.job.rate_book.reinforcement
    kinds = {choices[p.reinforcement].kind for p in results.placements_with("reinforcement")}
    laid = kinds & {SteelKind.WIRE, SteelKind.BAR}
    return rule_text(results, "reinforcement_position") if laid else ""


_FIGURES: dict[str, Callable[[Results], str]] = {
    "dig_out": lambda results: depths(results, "dig_out", lambda p: p.dig_depth),
    "base": lambda results: depths(results, "base", lambda p: p.base),
    "forms": lambda results: edge_lengths(results, "forms", EdgeKind.FORMED),
    "reinforcement": _steel,
    "joints": saw_depth,
    "slab": lambda results: results.words.volume(results.takeoff.volume_cuyd),
}
"""The scope items that a tape can check, in the order of the work, with the figure of the job."""


def _water(results: Results) -> Iterator[str]:
    for placement in results.job.placements:
        if placement.typed.fall is not None and placement.typed.water_goes_to is not None:
            yield _water_of(results, placement)


def _water_of(results: Results, placement: PlacementSpec) -> str:
    words = results.words
    return words(
        "water",
        placement=placement.name,
        fall=words.slope(placement.typed.fall) if placement.typed.fall else "",
        place=placement.typed.water_goes_to or "",
    )


def _steps(results: Results) -> Iterator[Drawing]:
    """The steps of each placement that has any, drawn."""
    for index, placement in enumerate(results.job.placements):
        drawn = steps_drawing(results, placement, STEPS_PX, f"steps-{index}")
        if drawn is not None:
            yield drawn


def _ground(results: Results) -> str:
    """Whether the ground that others made ready is large enough, in words."""
    prepared, typed, words = (
        results.takeoff.prepared,
        results.job.typed.prepared_ground,
        results.words,
    )
    if prepared is None or typed is None:
        return ""
    margin = words.depth(typed.margin)
    if not prepared.short_ft:
        return words("ground_enough", margin=margin)
    return words("ground_short", area=words.square_feet(prepared.short_sqft), margin=margin)
