"""What a drawing of the slabs has beside them: north, scale bar, ground that others made ready."""

from collections.abc import Iterator
from math import cos, radians, sin

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.canvas import Canvas
from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.drawing.free_space import Box
from quotegen.takeoff.records import PlacementTakeoff


def north(canvas: Canvas) -> Iterator[str]:
    """Draw the north arrow of a job that says where north is."""
    if canvas.job.typed.north is None:
        return
    turn = radians(canvas.job.typed.north.numerator / canvas.job.typed.north.denominator)
    x, y = canvas.scale.width_px - 26, 36.0
    tip, foot = (x - 16 * sin(turn), y - 16 * cos(turn)), (x + 14 * sin(turn), y + 14 * cos(turn))
    canvas.space.take(Box.around((x, y), 44, 60))
    yield svg.arrow(foot, tip)
    label = (tip[0] - 8 * sin(turn), tip[1] - 5 * cos(turn))
    yield svg.text(label, canvas.words("plan_north"), size=12, face="bold")


def scale_bar(canvas: Canvas) -> Iterator[str]:
    """Draw the scale bar at the foot of the paper, as far right as there is room."""
    step, count, labels = canvas.words.scale_bar(canvas.scale.px_per_ft)
    long = step * count
    y = canvas.scale.height_px - 12
    x = canvas.space.rightmost(Box(0, y - 15, long + 23, y + 8)) + 7
    yield _bar((x, y), long, tuple(x + index * step for index in range(0, count, 2)), step)
    for index, label in enumerate(labels):
        yield svg.text((x + index * long / 2, y - 5), label, size=12, halo=True)


def _bar(at: Pixel, long: float, dark: tuple[float, ...], step: float) -> str:
    """Draw a bar and its dark parts."""
    y = at[1]
    parts = [[(x, y), (x + step, y), (x + step, y + 4), (x, y + 4)] for x in dark]
    whole = [at, (at[0] + long, y), (at[0] + long, y + 4), (at[0], y + 4)]
    line = svg.element("path", d=svg.rings_path([whole]), fill="none", stroke=svg.INK,
                       stroke_width=svg.THIN)  # fmt: skip
    return svg.element("path", d=svg.rings_path(parts), fill=svg.INK) + line


def flight(measured: PlacementTakeoff, canvas: Canvas) -> Iterator[str]:
    """Draw the steps of a placement where the job says at which edge they are, and name them."""
    if measured.flight is None:
        return
    rings = [canvas.scale.ring(ring) for ring in measured.flight.treads_ft]
    for ring in rings:
        canvas.space.take_ring(ring)
    yield svg.element("path", d=svg.rings_path(rings), fill=svg.PAPER, stroke=svg.INK,
                      stroke_width=svg.LINE)  # fmt: skip
    at_house = measured.flight.at_house
    yield canvas.label_beside(
        [[*ring, ring[0]] for ring in rings],
        canvas.words("plan_flight"),
        lambda box: canvas.on(box, measured) if at_house else canvas.off_slab(box),
    )


def prepared_ground(canvas: Canvas) -> Iterator[str]:
    """Draw the outline of ground that others made ready, and where it is too small."""
    if canvas.takeoff.prepared is None:
        return
    for ring in canvas.takeoff.prepared.outline_ft:
        yield closed_line(canvas.scale.ring(ring), dash="8 3 2 3")
    for ring in canvas.takeoff.prepared.short_ft:
        yield closed_line(canvas.scale.ring(ring), shade=0.35)
    if canvas.takeoff.prepared.short_ft:
        longest = max(canvas.takeoff.prepared.short_ft, key=len)
        missing = canvas.words(
            "plan_ground_short", area=canvas.words.square_feet(canvas.takeoff.prepared.short_sqft)
        )
        yield canvas.label(canvas.scale.px(longest[0]), missing)


def closed_line(pixels: list[Pixel], *, dash: str = "", shade: float = 0.0) -> str:
    """Draw a closed line, dashed or filled with a shade."""
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
