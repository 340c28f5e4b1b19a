"""Three pens: the strokes of a drawing, those of one pen together in one path."""

from collections.abc import Iterable, Sequence
from enum import Enum

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.curves import Pixel, number

_PX_PER_MM = 96 / 25.4


class Pen(Enum):
    """A pen, by the width of its line in millimeters."""

    FINE = 0.18
    MEDIUM = 0.35
    HEAVY = 0.6

    @property
    def px(self) -> float:
        return self.value * _PX_PER_MM


class Ink:
    """What is drawn, from the bottom up; strokes gather until something is laid over them."""

    def __init__(self) -> None:
        self._parts: list[str] = []
        self._strokes: dict[tuple[Pen, str, str], list[str]] = {}

    def stroke(
        self,
        points: Sequence[Pixel],
        pen: Pen,
        *,
        closed: bool = False,
        dash: str = "",
        ink: str = svg.INK,
    ) -> None:
        """Draw a line through points."""
        self._strokes.setdefault((pen, dash, ink), []).append(_data(points, closed=closed))

    def strokes(self, runs: Iterable[Sequence[Pixel]], pen: Pen, *, closed: bool = False) -> None:
        """Draw several lines with one pen."""
        for run in runs:
            self.stroke(run, pen, closed=closed)

    def face(self, ring: Sequence[Pixel], pen: Pen | None = None) -> None:
        """Lay paper over what is there, with an outline if a pen is given."""
        self._flush()
        self._parts.append(svg.element("path", d=_data(ring, closed=True), fill=svg.PAPER))
        if pen:
            self.stroke(ring, pen, closed=True)

    def solid(self, rings: Iterable[Sequence[Pixel]], fill: str = svg.INK) -> None:
        """Fill rings."""
        self._flush()
        data = "".join(_data(ring, closed=True) for ring in rings)
        if data:
            self._parts.append(svg.element("path", d=data, fill=fill))

    def put(self, part: str) -> None:
        """Lay a finished part, such as a text, over what is there."""
        self._flush()
        self._parts.append(part)

    def drawn(self) -> str:
        """Everything, as SVG."""
        self._flush()
        return "".join(self._parts)

    def _flush(self) -> None:
        for (pen, dash, ink), runs in self._strokes.items():
            extra = {"stroke_dasharray": dash} if dash else {}
            path = svg.element(
                "path", d="".join(runs), fill="none", stroke=ink, stroke_width=pen.px,
                stroke_linejoin="round", stroke_linecap="round", **extra,
            )  # fmt: skip
            self._parts.append(path)
        self._strokes = {}


def _data(points: Sequence[Pixel], *, closed: bool) -> str:
    """Write points as path data, without a blank too many."""
    first, *others = (f"{number(x)} {number(y)}" for x, y in points)
    return f"M{first}" + "".join(f"L{at}" for at in others) + ("Z" if closed else "")
