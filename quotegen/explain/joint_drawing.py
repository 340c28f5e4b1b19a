"""The joint drawing: where the slab is cut, the size of each panel, and where it is kept apart."""

from collections.abc import Iterator

from quotegen.explain import svg
from quotegen.explain.frame import Room, inside
from quotegen.explain.free_space import Box
from quotegen.explain.paper import MarkedEdge, Paper, marked_edges
from quotegen.explain.plan_symbols import scale_bar
from quotegen.explain.svg import Drawing
from quotegen.explain.wording import Words
from quotegen.spec.records import JobSpec
from quotegen.takeoff.joints.records import JointPlan, Panel
from quotegen.takeoff.records import Against, Takeoff

DASH = "10 3 2 3"
WIDTH = 1.1
SIZE = 11.0
LINE_PX = 13.0
APART_PX = 5.0


def draw_joints(job: JobSpec, takeoff: Takeoff, words: Words, room: Room, ident: str) -> Drawing:
    """Draw the joints of all placements into a room of paper."""
    paper = Paper.sized(job, takeoff, words, room, ident)
    return paper.drawing(_parts(paper), words("joints_title", title=job.title))


def _parts(paper: Paper) -> Iterator[str]:
    yield svg.element("defs", paper.wall())
    for measured in paper.takeoff.placements:
        yield paper.outline(measured)
    yield from scale_bar(paper)
    for marked in marked_edges(paper.takeoff):
        yield from paper.house(marked)
        yield from _kept_apart(marked, paper)
    for measured in paper.takeoff.placements:
        yield from joint_lines(measured.joints, paper)
    for measured in paper.takeoff.placements:
        yield from panel_sizes(measured.joints, paper)


def _kept_apart(marked: MarkedEdge, paper: Paper) -> Iterator[str]:
    """Draw an edge that a soft strip keeps apart from what it meets as a double line."""
    if marked.edge.against is Against.OPEN:
        return
    points = paper.frame.ring(marked.edge.points_ft)
    yield svg.polyline(points, width=APART_PX)
    yield svg.polyline(points, width=APART_PX - 2 * svg.THIN, ink=svg.PAPER)


def joint_lines(plan: JointPlan, paper: Paper) -> Iterator[str]:
    """Yield every joint, and mark its line as taken."""
    for joint in plan.joints:
        start, end = paper.frame.px(joint.start_ft), paper.frame.px(joint.end_ft)
        yield svg.line(start, end, width=WIDTH, dash=DASH)
        paper.space.take_line(start, end)


def panel_sizes(plan: JointPlan, paper: Paper) -> Iterator[str]:
    """Yield the size of each panel that has room for it, and the number of each at fault."""
    if len(plan.panels) < 2:
        return
    for panel in plan.panels:
        for lines in _written(panel, paper.words):
            placed = _placed(panel, lines, paper)
            if placed:
                yield placed
                break


def _written(panel: Panel, words: Words) -> Iterator[tuple[str, ...]]:
    """Yield what may stand in a panel, the fullest first."""
    across, up = words.panel_side(panel.long_ft), words.panel_side(panel.short_ft)
    number = (words("panel_number", number=str(panel.number)),) if panel.broken else ()
    yield (*number, words("panel_size", long=across, short=up))
    yield (*number, across, words("panel_by", short=up))
    if number:
        yield number


def _placed(panel: Panel, lines: tuple[str, ...], paper: Paper) -> str:
    wide = max(svg.text_width(line, SIZE) for line in lines) + 2
    near = paper.frame.px(panel.label_ft)

    def fits(box: Box) -> bool:
        return all(inside(paper.frame.ground(at), (panel.outline_ft,)) for at in box.probes())

    box = paper.space.find_near(near, wide, LINE_PX * len(lines), fits)
    if box is None:
        return ""
    middle = (box.left + box.right) / 2
    return "".join(
        svg.text((middle, box.top + LINE_PX * n - 3), line, size=SIZE)
        for n, line in enumerate(lines, 1)
    )
