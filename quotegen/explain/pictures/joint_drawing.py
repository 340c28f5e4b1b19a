"""The joint drawing: where the slab is cut, the size of each panel, and where it is kept apart."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.canvas import MarkedEdge, Paper, marked_edges
from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.drawing.free_space import Box
from quotegen.explain.drawing.scale import Room, inside
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.plan_symbols import scale_bar
from quotegen.explain.wording import Words
from quotegen.reading.records import JobSpec
from quotegen.takeoff.joints.records import JointPlan, Panel
from quotegen.takeoff.plan_geometry import Against
from quotegen.takeoff.records import Takeoff

DASH = "10 3 2 3"
WIDTH = 1.1
SIZE = 11.0
LINE_PX = 13.0
APART_PX = 5.0
CLEAR_PX = 3.0
"""Between the size of a panel and the lines beside it, both sides together."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelLabel:
    """What stands in a panel; `sized` says whether it is its size, or its number alone."""

    panel: Panel
    drawn: str
    sized: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class JointDrawing:
    """The drawing, and by placement the panels that stand in it by their number alone."""

    drawing: Drawing
    numbered: Mapping[str, tuple[Panel, ...]]


def draw_joints(
    job: JobSpec, takeoff: Takeoff, words: Words, room: Room, ident: str
) -> JointDrawing:
    """Draw the joints of all placements into a room of paper."""
    paper = Paper.sized(job, takeoff, words, room, ident)
    parts = [*_lines(paper)]
    numbered: dict[str, tuple[Panel, ...]] = {}
    for measured in takeoff.placements:
        labels = panel_labels(measured.joints, paper)
        parts += [label.drawn for label in labels]
        numbered[measured.id] = tuple(label.panel for label in labels if not label.sized)
    drawn = paper.drawing(parts, words("joints_title", title=job.title))
    return JointDrawing(drawing=drawn, numbered=numbered)


def _lines(paper: Paper) -> Iterator[str]:
    yield svg.element("defs", paper.wall())
    for measured in paper.takeoff.placements:
        yield paper.outline(measured)
    yield from scale_bar(paper)
    marked = marked_edges(paper.takeoff)
    for one in marked:
        yield paper.house(one)
    yield from _kept_apart(marked, paper)
    for one in marked:
        yield paper.house_name(one)
    for measured in paper.takeoff.placements:
        yield from joint_lines(measured.joints, paper)


def _kept_apart(marked: tuple[MarkedEdge, ...], paper: Paper) -> Iterator[str]:
    """Draw edges that a soft strip keeps apart from what they meet as double lines."""
    edges = [one.edge for one in marked if one.edge.against is not Against.OPEN]
    runs = [paper.frame.ring(edge.points_ft) for edge in edges]
    for width, ink in ((APART_PX, svg.INK), (APART_PX - 2 * svg.THIN, svg.PAPER)):
        for points in runs:
            yield svg.polyline(points, width=width, ink=ink)


def joint_lines(plan: JointPlan, paper: Paper) -> Iterator[str]:
    """Yield every joint, and mark its line as taken."""
    for joint in plan.joints:
        start, end = paper.frame.px(joint.start_ft), paper.frame.px(joint.end_ft)
        yield svg.line(start, end, width=WIDTH, dash=DASH)
        paper.space.take_line(start, end)


def panel_labels(plan: JointPlan, paper: Paper) -> tuple[PanelLabel, ...]:
    """Return what stands in each panel: its size, or its number where a size has no room."""
    if len(plan.panels) < 2:
        return ()
    found = (_label(panel, paper) for panel in plan.panels)
    return tuple(label for label in found if label)


def _label(panel: Panel, paper: Paper) -> PanelLabel | None:
    words = paper.words
    across, up = words.panel_side(panel.long_ft), words.panel_side(panel.short_ft)
    number = words("panel_number", number=str(panel.number))
    above = (number,) if panel.broken else ()
    for lines, sized in (
        ((*above, words("panel_size", long=across, short=up)), True),
        ((*above, across, words("panel_by", short=up)), True),
        ((number,), False),
    ):
        drawn = _placed(panel, lines, paper)
        if drawn:
            return PanelLabel(panel=panel, drawn=drawn, sized=sized)
    return None


def _placed(panel: Panel, lines: tuple[str, ...], paper: Paper) -> str:
    wide = max(paper.words.font.width(line, SIZE) for line in lines) + CLEAR_PX
    high = LINE_PX * len(lines)

    def fits(box: Box) -> bool:
        return all(inside(paper.frame.ground(at), (panel.outline_ft,)) for at in box.probes())

    space = paper.space
    box = space.find_at(_middle(panel, paper), wide, high, fits)
    box = box or space.find_near(paper.frame.px(panel.label_ft), wide, high, fits)
    if box is None:
        return ""
    return "".join(
        svg.text((box.middle[0], box.top + LINE_PX * n - 3), line, size=SIZE)
        for n, line in enumerate(lines, 1)
    )


def _middle(panel: Panel, paper: Paper) -> Pixel:
    """Return the middle of the upright rectangle that a panel fits in."""
    xs, ys = zip(*paper.frame.ring(panel.outline_ft), strict=True)
    return ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
