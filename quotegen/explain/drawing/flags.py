"""Flags: what is drawn, named at the end of a thin line, in steps down from left to right.

Each line goes up no farther than its own words, and whoever stands farther right has words farther
down. So no line crosses a word, however long the words are.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.drawing.pens import Ink, Pen
from quotegen.explain.font import Font

SIZE_PX = 12.5
STEP_PX = 18.0
ARM_PX = 8.0
APART_PX = 16.0
RING_PX = 8.5
LIST_PX = 17.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Flag:
    """A place on the drawing and what it is."""

    at: Pixel
    words: str


def flags_height(count: int) -> float:
    """How much room some flags take above what they name."""
    return STEP_PX * count + 4


def draw_flags(ink: Ink, flags: Iterable[Flag], top: float) -> None:
    """Draw flags over a picture, the words of the leftmost one at the top."""
    ordered, before = sorted(flags, key=lambda flag: flag.at[0]), 0.0
    for index, flag in enumerate(ordered):
        x, y = max(flag.at[0], before + APART_PX), top + STEP_PX * (index + 0.5)
        before = x
        ink.stroke((flag.at, (x, flag.at[1]), (x, y), (x + ARM_PX, y)), Pen.FINE)
        ink.put(svg.element("circle", cx=flag.at[0], cy=flag.at[1], r=2.2, fill=svg.INK))
        ink.put(svg.text((x + ARM_PX + 4, y + 4.5), flag.words, size=SIZE_PX, anchor="start"))


def draw_numbers(ink: Ink, flags: Iterable[Flag], font: Font, top: float, wide: float) -> float:
    """Number some places in their order, name them in a list below; return its foot."""
    y = top
    for number, flag in enumerate(flags, start=1):
        _ring(ink, flag.at, number)
        _ring(ink, (RING_PX + 2, y + 8), number)
        for line in _lines(flag.words, font, wide):
            ink.put(svg.text((2 * RING_PX + 10, y + 12.5), line, size=SIZE_PX, anchor="start"))
            y += LIST_PX
        y += 4
    return y


def _lines(words: str, font: Font, wide: float) -> Iterator[str]:
    yield from font.wrapped(words, wide - 2 * RING_PX - 12, SIZE_PX)


def _ring(ink: Ink, at: Pixel, number: int) -> None:
    ink.put(svg.element("circle", cx=at[0], cy=at[1], r=RING_PX, fill=svg.PAPER, stroke=svg.INK,
                        stroke_width=Pen.MEDIUM.px))  # fmt: skip
    ink.put(svg.text((at[0], at[1] + 4.5), str(number), size=12))
