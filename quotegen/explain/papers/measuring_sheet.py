"""The measuring sheet: what a tape should read on form day, and how we measured."""

from collections.abc import Iterator

from quotegen.explain.drawing.canvas import marked_edges
from quotegen.explain.drawing.scale import Viewport
from quotegen.explain.papers.height_rows import corner_rows, drop_rows, heights_from
from quotegen.explain.papers.how_measured import measured_rows, step_rows, sure_lines
from quotegen.explain.papers.measuring_views import EdgeRow, MeasuringSheet, SizeRow
from quotegen.explain.pictures.plan import draw_plan
from quotegen.explain.results import Results
from quotegen.explain.sheets.area_price import total_area
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.words.numbers import edge_length
from quotegen.reading.files.shapes import EdgeKind

PLAN = Viewport(
    width_px=680, height_px=430, left_px=58, right_px=48, top_px=40, bottom_px=64, to_scale=True
)


def measuring_sheet(results: Results) -> MeasuringSheet:
    """Build the measuring sheet."""
    job, words = results.job, results.words
    title = words("measuring_title", title=job.title, site=job.site.address)
    return MeasuringSheet(
        head=paper_head(results, title, job.quote_date),
        plan=draw_plan(results, PLAN, "plan"),
        edges=tuple(_edges(results)),
        sizes=tuple(_sizes(results)),
        corners=corner_rows(results),
        drops=drop_rows(results),
        heights_from=heights_from(results),
        measured=measured_rows(results),
        sure=sure_lines(results),
        steps=step_rows(results),
    )


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
