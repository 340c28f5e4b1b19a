"""The symbols of a plan: north, scale bar, trucks and their reach, obstacles, prepared ground."""

from collections.abc import Iterator
from math import cos, radians, sin

from quotegen.explain import svg
from quotegen.explain.frame import Frame
from quotegen.explain.free_space import Box, FreeSpace
from quotegen.explain.wording import Words
from quotegen.spec.records import JobSpec
from quotegen.takeoff.records import Point, Ring, Takeoff
from quotegen.takeoff.site_records import MethodReach

TRUCK_PX = (18.0, 40.0)


def site_extent(job: JobSpec, takeoff: Takeoff) -> Iterator[Point]:
    """Yield the points that the drawing must hold beside the slabs."""
    for along, out in job.access.stands if job.access else ():
        yield (along.ft, out.ft)
    for ring in takeoff.prepared.outline_ft if takeoff.prepared else ():
        yield from ring


def symbols(
    job: JobSpec, takeoff: Takeoff, words: Words, frame: Frame, space: FreeSpace
) -> Iterator[str]:
    """Yield the symbols that the job has, and mark their room as taken."""
    yield from _north(job, words, frame, space)
    yield from _scale_bar(words, frame, space)
    yield from _prepared(takeoff, words, frame, space)
    yield from _obstacles(takeoff, frame, space)
    yield from _reach(takeoff, words, frame, space)
    for along, out in job.access.stands if job.access else ():
        yield from _truck((along.ft, out.ft), words, frame, space)


def _north(job: JobSpec, words: Words, frame: Frame, space: FreeSpace) -> Iterator[str]:
    if job.north_deg is None:
        return
    turn = radians(job.north_deg.numerator / job.north_deg.denominator)
    x, y = frame.width_px - 26, 36.0
    tip, foot = (x - 16 * sin(turn), y - 16 * cos(turn)), (x + 14 * sin(turn), y + 14 * cos(turn))
    space.take(Box.around((x, y), 44, 60))
    yield svg.arrow(foot, tip)
    label = (tip[0] - 8 * sin(turn), tip[1] - 5 * cos(turn))
    yield svg.text(label, words("plan_north"), size=12, face="bold")


def _scale_bar(words: Words, frame: Frame, space: FreeSpace) -> Iterator[str]:
    step, count, labels = words.scale_bar(frame.px_per_ft)
    x, y = frame.width_px - 22 - step * count, frame.height_px - 12
    space.take(Box(x - 8, y - 18, frame.width_px, frame.height_px))
    for index in range(count):
        fill = svg.INK if index % 2 == 0 else "#fff"
        yield svg.element(
            "rect",
            x=x + index * step,
            y=y,
            width=step,
            height=4,
            fill=fill,
            stroke=svg.INK,
            stroke_width=svg.THIN,
        )
    for index, label in enumerate(labels):
        yield svg.text((x + index * step * count / 2, y - 5), label, size=12)


def _prepared(takeoff: Takeoff, words: Words, frame: Frame, space: FreeSpace) -> Iterator[str]:
    """The outline of ground that others made ready, and where it is too small."""
    if takeoff.prepared is None:
        return
    for ring in takeoff.prepared.outline_ft:
        yield _closed(frame.ring(ring), dash="8 3 2 3")
    for ring in takeoff.prepared.short_ft:
        yield _closed(frame.ring(ring), shade=0.35)
    if takeoff.prepared.short_ft:
        longest = max(takeoff.prepared.short_ft, key=len)
        missing = words("plan_ground_short", area=words.square_feet(takeoff.prepared.short_sqft))
        yield _label(frame.px(longest[0]), missing, space)


def _obstacles(takeoff: Takeoff, frame: Frame, space: FreeSpace) -> Iterator[str]:
    if takeoff.reach is None:
        return
    names = takeoff.reach.obstacle_names
    for ring, name in zip(takeoff.reach.obstacles_ft, names, strict=False):
        pixels = frame.ring(ring)
        yield _closed(pixels, dash="1.5 2")
        middle = (sum(x for x, _ in pixels) / len(pixels), sum(y for _, y in pixels) / len(pixels))
        yield _label(middle, name, space)


def _reach(takeoff: Takeoff, words: Words, frame: Frame, space: FreeSpace) -> Iterator[str]:
    """Where the reach of each straight way ends on the slab."""
    for method in takeoff.reach.methods if takeoff.reach else ():
        yield from _reach_of(method, words, frame, space)


def _reach_of(method: MethodReach, words: Words, frame: Frame, space: FreeSpace) -> Iterator[str]:
    longest: Ring = max(method.edge_ft, key=len, default=())
    for line in method.edge_ft:
        pixels = frame.ring(line)
        data = "M" + " L".join(f"{svg.number(x)} {svg.number(y)}" for x, y in pixels)
        yield svg.element(
            "path", d=data, fill="none", stroke=svg.INK, stroke_width=1.2, stroke_dasharray="6 4"
        )
    if longest:
        told = words("plan_reach", method=method.name, length=words.feet(method.reach_ft))
        yield _label(frame.px(longest[len(longest) // 2]), told, space)


def _closed(pixels: list[svg.Pixel], *, dash: str = "", shade: float = 0.0) -> str:
    look: dict[str, str | float] = {
        "d": svg.rings_path([pixels]),
        "fill": svg.INK if shade else "none",
        "fill_opacity": shade or 1,
        "stroke": svg.INK,
        "stroke_width": svg.THIN,
    }
    if dash:
        look["stroke_dasharray"] = dash
    return svg.element("path", "", **look)


def _label(near: svg.Pixel, told: str, space: FreeSpace) -> str:
    """Write a few words as near as there is room; none where there is no room at all."""
    box = space.find(near, svg.text_width(told, 11) + 4, 14, lambda _: True)
    if box is None:
        return ""
    return svg.text(((box.left + box.right) / 2, box.bottom - 3), told, size=11, halo=True)


def _truck(at: Point, words: Words, frame: Frame, space: FreeSpace) -> Iterator[str]:
    x, y = frame.px(at)
    wide, high = TRUCK_PX
    space.take(Box.around((x, y), wide + 4, high + 4))
    yield svg.element(
        "rect",
        x=x - wide / 2,
        y=y - high / 2,
        width=wide,
        height=high,
        fill="#fff",
        stroke=svg.INK,
        stroke_width=svg.THIN,
        stroke_dasharray="4 2",
    )
    label = words("plan_truck")
    space.take(Box.around((x, y + high / 2 + 10), svg.text_width(label, 12), 14))
    yield svg.text((x, y + high / 2 + 14), label, size=12)
