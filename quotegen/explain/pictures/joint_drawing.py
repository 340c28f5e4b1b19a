"""The joint drawing: where the slab is cut, how large each panel is, where it is isolated."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.canvas import Canvas, MarkedEdge, marked_edges
from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.drawing.free_space import Box
from quotegen.explain.drawing.scale import Viewport, inside
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.plan_symbols import scale_bar
from quotegen.explain.results import Results
from quotegen.reading.files.shapes import EdgeKind
from quotegen.takeoff.joints.records import JointPlan, Panel
from quotegen.takeoff.slab.edges import runs_along

DASH = "10 3 2 3"
WIDTH = 1.1
SIZE = 11.0
LINE_PX = 13.0
ISOLATION_PX = 5.0
CLEAR_PX = 3.0
"""Between the size of a panel and the lines beside it, both sides together."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelLabel:
    """What stands in a panel: its size, or where that has no room (`sized` is false) its number."""

    panel: Panel
    drawn: str
    sized: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class JointDrawing:
    """The drawing, and for each placement the panels that it shows by number alone."""

    drawing: Drawing
    numbered: Mapping[str, tuple[Panel, ...]]


def draw_joints(
    results: Results, viewport: Viewport, ident: str, *, lettered: bool = True
) -> JointDrawing:
    """Draw the joints of all placements; a small drawing is not `lettered` with panel sizes."""
    canvas = Canvas.fitted(results, viewport, ident)
    parts = [*_lines(canvas)]
    numbered: dict[str, tuple[Panel, ...]] = {}
    for measured in results.takeoff.placements:
        labels = panel_labels(measured.joints, canvas) if lettered else ()
        parts += [label.drawn for label in labels]
        numbered[measured.id] = tuple(label.panel for label in labels if not label.sized)
    drawn = canvas.drawing(parts, results.words("joints_title", title=results.job.title))
    return JointDrawing(drawing=drawn, numbered=numbered)


def _lines(canvas: Canvas) -> Iterator[str]:
    yield svg.element("defs", canvas.wall_hatch())
    for measured in canvas.takeoff.placements:
        yield canvas.outline(measured)
    yield from scale_bar(canvas)
    marked = marked_edges(canvas.takeoff)
    for one in marked:
        yield canvas.house_wall(one)
    yield from _isolated(marked, canvas)
    for one in marked:
        yield canvas.house_label(one)
    for measured in canvas.takeoff.placements:
        yield from joint_lines(measured.joints, canvas)


def _isolated(marked: tuple[MarkedEdge, ...], canvas: Canvas) -> Iterator[str]:
    """Draw a double line along edges that a soft strip isolates from what they meet."""
    edges = runs_along(tuple(one.edge for one in marked), EdgeKind.ISOLATED)
    runs = [canvas.scale.ring(edge.points_ft) for edge in edges]
    for width, ink in ((ISOLATION_PX, svg.INK), (ISOLATION_PX - 2 * svg.THIN, svg.PAPER)):
        for points in runs:
            yield svg.polyline(points, width=width, ink=ink)


def joint_lines(plan: JointPlan, canvas: Canvas) -> Iterator[str]:
    """Draw every joint, and mark it as taken."""
    for joint in plan.joints:
        start, end = canvas.scale.px(joint.start_ft), canvas.scale.px(joint.end_ft)
        yield svg.line(start, end, width=WIDTH, dash=DASH)
        canvas.space.take_line(start, end)


def panel_labels(plan: JointPlan, canvas: Canvas) -> tuple[PanelLabel, ...]:
    """Label each panel that has room for it; a slab of one panel needs no label."""
    if len(plan.panels) < 2:
        return ()
    found = (_label(panel, canvas) for panel in plan.panels)
    return tuple(label for label in found if label)


def _label(panel: Panel, canvas: Canvas) -> PanelLabel | None:
    words = canvas.words
    across, up = words.panel_side(panel.long_ft), words.panel_side(panel.short_ft)
    number = words("panel_number", number=str(panel.number))
    above = (number,) if panel.broken else ()
    for lines, sized in (
        ((*above, words("panel_size", long=across, short=up)), True),
        ((*above, across, words("panel_by", short=up)), True),
        ((number,), False),
    ):
        drawn = _placed(panel, lines, canvas)
        if drawn:
            return PanelLabel(panel=panel, drawn=drawn, sized=sized)
    return None


def _placed(panel: Panel, lines: tuple[str, ...], canvas: Canvas) -> str:
    wide = max(canvas.words.font.width(line, SIZE) for line in lines) + CLEAR_PX
    high = LINE_PX * len(lines)

    def fits(box: Box) -> bool:
        return all(inside(canvas.scale.ground(at), (panel.outline_ft,)) for at in box.probes())

    space = canvas.space
    box = space.find_at(_middle(panel, canvas), wide, high, fits)
    box = box or space.find_near(canvas.scale.px(panel.label_ft), wide, high, fits)
    if box is None:
        return ""
    return "".join(
        svg.text((box.middle[0], box.top + LINE_PX * n - 3), line, size=SIZE)
        for n, line in enumerate(lines, 1)
    )


def _middle(panel: Panel, canvas: Canvas) -> Pixel:
    """The middle of the upright rectangle around a panel."""
    xs, ys = zip(*canvas.scale.ring(panel.outline_ft), strict=True)
    return ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
