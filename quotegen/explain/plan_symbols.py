"""The symbols of a plan: north, scale bar, and where the truck stands."""

from collections.abc import Iterator
from math import cos, radians, sin

from quotegen.explain import svg
from quotegen.explain.frame import Frame
from quotegen.explain.free_space import Box, FreeSpace
from quotegen.explain.wording import Words
from quotegen.spec.records import JobSpec

TRUCK_PX = (18.0, 40.0)


def symbols(job: JobSpec, words: Words, frame: Frame, space: FreeSpace) -> Iterator[str]:
    """Yield the symbols that the job has, and mark their room as taken."""
    yield from _north(job, words, frame, space)
    yield from _scale_bar(words, frame, space)
    yield from _truck(job, words, frame, space)


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


def _truck(job: JobSpec, words: Words, frame: Frame, space: FreeSpace) -> Iterator[str]:
    if job.access is None or job.access.truck_stand is None:
        return
    along, out = (length.ft for length in job.access.truck_stand)
    x, y = frame.px((along, out))
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
