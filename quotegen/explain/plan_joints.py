"""The joints of a plan: thin dash-dot lines, and the size of each panel where it has room."""

from collections.abc import Iterator

from quotegen.explain import svg
from quotegen.explain.frame import Frame, inside
from quotegen.explain.free_space import Box, FreeSpace
from quotegen.explain.wording import Words
from quotegen.takeoff.joints.records import JointPlan, Panel

DASH = "10 3 2 3"
WIDTH = 1.1
SIZE = 11.0
LINE_PX = 13.0


def joint_lines(plan: JointPlan, frame: Frame, space: FreeSpace) -> Iterator[str]:
    """Yield every joint, and mark its line as taken."""
    for joint in plan.joints:
        start, end = frame.px(joint.start_ft), frame.px(joint.end_ft)
        yield svg.line(start, end, width=WIDTH, dash=DASH)
        space.take_joint(start, end)


def panel_sizes(plan: JointPlan, words: Words, frame: Frame, space: FreeSpace) -> Iterator[str]:
    """Yield the size of each panel that has room for it, and the number of each at fault."""
    if len(plan.panels) < 2:
        return
    for panel in plan.panels:
        for lines in _written(panel, words):
            placed = _placed(panel, lines, frame, space)
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


def _placed(panel: Panel, lines: tuple[str, ...], frame: Frame, space: FreeSpace) -> str:
    wide = max(svg.text_width(line, SIZE) for line in lines) + 2
    near = frame.px(panel.label_ft)

    def fits(box: Box) -> bool:
        return all(inside(frame.ground(at), (panel.outline_ft,)) for at in box.probes())

    box = space.find_near(near, wide, LINE_PX * len(lines), fits)
    if box is None:
        return ""
    middle = (box.left + box.right) / 2
    return "".join(
        svg.text((middle, box.top + LINE_PX * n - 3), line, size=SIZE, halo=True)
        for n, line in enumerate(lines, 1)
    )
