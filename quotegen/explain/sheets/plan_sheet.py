"""Sheet 2, the plan: the drawings, and the tables that let a tape check them."""

from collections.abc import Iterator
from fractions import Fraction

from quotegen.explain.drawing.canvas import marked_edges
from quotegen.explain.drawing.scale import Viewport
from quotegen.explain.pictures.joint_drawing import draw_joints
from quotegen.explain.pictures.plan import draw_plan
from quotegen.explain.pictures.reach_drawing import draw_reach
from quotegen.explain.pictures.section import draw_section
from quotegen.explain.results import Results
from quotegen.explain.sheets.height_rows import corner_rows, drop_rows, ground, heights_from
from quotegen.explain.sheets.how_measured import measured_rows, step_rows, sure_lines
from quotegen.explain.sheets.joint_table import joint_rows
from quotegen.explain.sheets.plan_views import EdgeRow, PlanSheet, SectionPair, SizeRow
from quotegen.explain.sheets.price_sheet import total_area
from quotegen.explain.words.numbers import edge_length
from quotegen.explain.words.prose import sentence
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.slab.edges import runs_along

WIDE = Viewport(
    width_px=640, height_px=560, left_px=58, right_px=48, top_px=58, bottom_px=72, to_scale=True
)
FLAT = Viewport(
    width_px=640, height_px=470, left_px=24, right_px=24, top_px=24, bottom_px=48, to_scale=True
)
SMALL = Viewport(
    width_px=640, height_px=380, left_px=58, right_px=48, top_px=32, bottom_px=64, to_scale=True
)
DOOR = Viewport(
    width_px=640, height_px=240, left_px=58, right_px=48, top_px=32, bottom_px=70, to_scale=False
)
NARROW = Viewport(
    width_px=328, height_px=460, left_px=44, right_px=34, top_px=60, bottom_px=88, to_scale=False
)


def plan_sheet(results: Results) -> PlanSheet:
    """Build sheet 2."""
    job = results.job
    joints = draw_joints(results, FLAT, "joints")
    jointed = any(measured.joints.joints for measured in results.takeoff.placements)
    return PlanSheet(
        small=draw_plan(results, SMALL, "plan-small"),
        door=draw_plan(results, DOOR, "plan-door"),
        wide=draw_plan(results, WIDE, "plan"),
        narrow=draw_plan(results, NARROW, "plan-narrow"),
        joint_plan=joints.drawing if jointed else None,
        reach=draw_reach(results, FLAT, "reach"),
        reached=tuple(_reached(results)),
        edges=tuple(_edges(results)),
        sizes=tuple(_sizes(results)),
        joints=joint_rows(results, joints.numbered),
        sections=tuple(_sections(results)),
        access=job.access.note if job.access else "",
        water=tuple(_water(results)),
        corners=corner_rows(results),
        drops=drop_rows(results),
        heights_from=heights_from(results),
        ground=ground(results),
        measured=measured_rows(results),
        sure=sure_lines(results),
        steps=step_rows(results),
    )


def _reached(results: Results) -> Iterator[str]:
    words, reach = results.words, results.takeoff.reach
    for method in reach.methods if reach else ():
        key = "reach_all" if method.covers else "reach_part" if method.share else "reach_none"
        share = words.percent(Fraction(method.share) / 100)
        yield sentence(words(key, method=method.name, share=share))


def _edges(results: Results) -> Iterator[EdgeRow]:
    words = results.words
    names = {p.id: p.name for p in results.job.placements}
    for marked in marked_edges(results.takeoff):
        edge = marked.edge
        where = words(f"against_{edge.against.value}", placement=names[marked.placement])
        open_ended = edge.is_curved and edge.chord_ft > 0  # a whole oval has no chord to check
        yield EdgeRow(
            mark=marked.mark,
            where=where,
            kind=words("edge_curved" if edge.is_curved else "edge_straight"),
            along=words.feet(edge.length_ft),
            chord=words.feet(edge.chord_ft) if open_ended else "",
            rise=words.feet(edge.rise_ft) if open_ended else "",
        )


def _sizes(results: Results) -> Iterator[SizeRow]:
    words, takeoff = results.words, results.takeoff
    for placement in results.job.placements:
        measured = takeoff.placement(placement.id)
        has_inner = any(edge.inner for edge in measured.edges)
        yield SizeRow(
            name=placement.name,
            area=words.area(measured),
            outer=edge_length(results, placement.id, EdgeKind.OUTER),
            inner=edge_length(results, placement.id, EdgeKind.INNER) if has_inner else "",
            thickness=words.depth(placement.thickness),
            volume=words.volume(measured.volume_cuyd),
        )
    if len(takeoff.placements) > 1:
        yield SizeRow(
            name=words("all_placements"),
            area=total_area(results),
            outer="",
            inner="",
            thickness="",
            volume=words.volume(takeoff.volume_cuyd),
        )


def _sections(results: Results) -> Iterator[SectionPair]:
    """One section for each different build-up."""
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
            yield SectionPair(
                wide=draw_section(results, placement, 640, f"section-{index}"),
                narrow=draw_section(results, placement, 328, f"section-narrow-{index}"),
            )


def _water(results: Results) -> Iterator[str]:
    for placement in results.job.placements:
        if placement.typed.fall is not None and placement.typed.water_goes_to is not None:
            yield _water_of(results, placement)
        yield from _drains_of(results, placement)
        yield from _heights_of(results, placement)


def _water_of(results: Results, placement: PlacementSpec) -> str:
    words = results.words
    return words(
        "water",
        placement=placement.name,
        fall=words.slope(placement.typed.fall) if placement.typed.fall else "",
        place=placement.typed.water_goes_to or "",
    )


def _drains_of(results: Results, placement: PlacementSpec) -> Iterator[str]:
    """Who supplies the drains of a placement, said once."""
    words = results.words
    suppliers = dict.fromkeys(
        words("water_drain_by", who=drain.by) if drain.by else words("water_drain_ours")
        for drain in placement.typed.drains
    )
    if suppliers:
        who = words.listing(tuple(suppliers))
        yield words("water_drains", placement=placement.name, who=who)


def _heights_of(results: Results, placement: PlacementSpec) -> Iterator[str]:
    """How high the slab lies over the lawn and below the sill, where that is typed."""
    words, typed = results.words, placement.typed
    for key, height in (("over_lawn", typed.over_lawn), ("below_sill", typed.below_sill)):
        if height is not None:
            yield words(f"water_{key}", placement=placement.name, height=words.depth(height))


def has_edge(results: Results, edge: EdgeKind) -> bool:
    """Whether any edge of the job is of a kind."""
    return any(runs_along(p.edges, edge) for p in results.takeoff.placements)
