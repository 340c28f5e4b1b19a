"""Normal and not normal, side by side: four pairs of small drawings for the guide.

They show what content/ says in words: fine cracks, uneven shade, powder before the wash and faint
seams are normal; a wide or stepped crack, flakes, loose powder after the wash and ridges are not.
"""

from collections.abc import Callable, Iterator, Mapping
from enum import StrEnum
from math import cos, pi, sin

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.drawing.pens import Ink, Pen
from quotegen.explain.drawing.scatter import Stone, numbers, spots
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.results import Results

WIDE, HIGH, GAP_PX = 156.0, 92.0, 16.0
SIZE_PX, LINE_PX = 12.5, 16.0
SHADES = ("#d9d9d5", "#c4c4bf")
"""Two grays that a copier keeps apart."""


class Sign(StrEnum):
    """What is looked at."""

    CRACK = "crack"
    SHADE = "shade"
    POWDER = "powder"
    SEAM = "seam"


def normal_pictures(results: Results) -> tuple[Drawing, ...]:
    """Draw a pair for each sign, the normal one at the left."""
    return tuple(_pair(results, sign) for sign in Sign)


def _pair(results: Results, sign: Sign) -> Drawing:
    words, ink, foot = results.words, Ink(), 0.0
    width = 2 * WIDE + GAP_PX
    for index, kind in enumerate(("normal", "not")):
        left = index * (WIDE + GAP_PX)
        frame = [(left + 1, 1.0), (left + WIDE - 1, 1.0), (left + WIDE - 1, HIGH), (left + 1, HIGH)]
        _DRAWN[sign, kind](ink, left)
        ink.stroke(frame, Pen.MEDIUM if kind == "normal" else Pen.HEAVY, closed=True)
        y = HIGH + LINE_PX + 2
        ink.put(svg.text((left, y), words(f"sign_{kind}"), size=SIZE_PX, anchor="start",
                         face="bold"))  # fmt: skip
        for line in words.font.wrapped(words(f"sign_{sign.value}_{kind}"), WIDE, SIZE_PX):
            y += LINE_PX
            ink.put(svg.text((left, y), line, size=SIZE_PX, anchor="start"))
        foot = max(foot, y)
    return svg.drawing(
        (width, foot + 6), ink.drawn(), title=words(f"sign_{sign.value}"),
        about=words("swatch_about"), ident=f"sign-{sign.value}", family=words.font.family,
        css_class="drawing sign",
    )  # fmt: skip


def _walk(left: float, seed: int, from_y: float, to_y: float) -> list[Pixel]:
    """A crack as it wanders from one side of a picture to the other."""
    chance, steps = numbers(seed), 22
    return [
        (left + 4 + (WIDE - 8) * n / steps,
         from_y + (to_y - from_y) * n / steps + 7 * (next(chance) - 0.5))
        for n in range(steps + 1)
    ]  # fmt: skip


def _grit(ink: Ink, left: float, seed: int) -> None:
    for x, y in spots(46, WIDE - 12, HIGH - 12, seed):
        ink.stroke(((left + 6 + x, 6 + y), (left + 6.4 + x, 6 + y)), Pen.FINE)


def _fine_crack(ink: Ink, left: float) -> None:
    """A hairline, and a coin beside it."""
    _grit(ink, left, 2)
    ink.stroke(_walk(left, 5, 34, 56), Pen.FINE)
    _coin(ink, (left + 44, 68))


def _wide_crack(ink: Ink, left: float) -> None:
    """A gap with two rims, one of them higher, and the same coin."""
    _grit(ink, left, 3)
    upper = _walk(left, 5, 32, 52)
    lower = [(x, y + 5 + 2 * sin(x / 9)) for x, y in upper]
    ink.solid([[*upper, *reversed(lower)]])
    for x, y in lower[1:-1]:
        ink.stroke(((x, y + 1), (x, y + 7)), Pen.FINE)
    _coin(ink, (left + 44, 74))


def _coin(ink: Ink, at: Pixel) -> None:
    for radius in (11.0, 9.0):
        ring = [(at[0] + radius * cos(pi * n / 12), at[1] + radius * sin(pi * n / 12))
                for n in range(24)]  # fmt: skip
        if radius > 10:
            ink.face(ring, Pen.MEDIUM)
        else:
            ink.stroke(ring, Pen.FINE, closed=True)


def _blotches(ink: Ink, left: float) -> None:
    """Soft patches, lighter and darker, with no skin loose."""
    for index, (x, y) in enumerate(spots(9, WIDE - 56, HIGH - 44, 4)):
        patch = Stone((left + 28 + x, 22 + y), 17 + 5 * (index % 3))
        ink.solid([_inside(patch.outline(index, corners=11, flat=0.7), left)], SHADES[index % 2])
    _grit(ink, left, 6)


def _flakes(ink: Ink, left: float) -> None:
    """Skin that has come off, with stones bare below, and flakes beside."""
    _grit(ink, left, 6)
    for index, (x, y, radius) in enumerate(((48.0, 40.0, 27.0), (108.0, 56.0, 21.0))):
        rim = _inside(Stone((left + x, y), radius).outline(index + 3, corners=13, flat=0.8), left)
        ink.face(rim, Pen.MEDIUM)
        for u, v in spots(9, radius, radius * 0.8, index + 8):
            stone = Stone((left + x - radius / 2 + u, y - radius * 0.4 + v), 3.2)
            ink.stroke(stone.outline(int(u * 10), corners=6), Pen.FINE, closed=True)
    for index, (x, y) in enumerate(spots(7, WIDE - 40, HIGH - 30, 12)):
        flake = Stone((left + 20 + x, 16 + y), 4).outline(index + 40, corners=5, flat=0.6)
        ink.stroke(flake, Pen.FINE, closed=True)


def _inside(ring: list[Pixel], left: float) -> list[Pixel]:
    return [(min(left + WIDE - 2, max(left + 2, x)), min(HIGH - 1, max(2, y))) for x, y in ring]


def _powder_before(ink: Ink, left: float) -> None:
    """Powder all over a stamped top, thick as it falls."""
    _stamped(ink, left)
    for index, (x, y) in enumerate(spots(420, WIDE - 8, HIGH - 8, 5)):
        pen = Pen.MEDIUM if index % 4 == 0 else Pen.FINE
        ink.stroke(((left + 4 + x, 4 + y), (left + 4.4 + x, 4 + y)), pen)


def _powder_after(ink: Ink, left: float) -> None:
    """A finger's clean mark through powder that is still loose, and the powder on the finger."""
    _powder_before(ink, left)
    x, y = left + 44, 58
    mark = [(x, y - 7), (x + 72, y - 19), (x + 78, y - 12), (x + 76, y - 5), (x + 2, y + 7)]
    ink.face(mark, Pen.FINE)
    for u, v in spots(60, 16, 16, 9):
        ink.stroke(((x + 78 + u * 0.7, y - 21 + v), (x + 78.4 + u * 0.7, y - 21 + v)), Pen.MEDIUM)


def _stamped(ink: Ink, left: float) -> None:
    for x in (0.34, 0.7):
        ink.stroke(((left + WIDE * x, 2), (left + WIDE * x, HIGH / 2)), Pen.FINE)
        ink.stroke(((left + WIDE * (x - 0.17), HIGH / 2), (left + WIDE * (x - 0.17), HIGH - 1)),
                   Pen.FINE)  # fmt: skip
    ink.stroke(((left + 2, HIGH / 2), (left + WIDE - 2, HIGH / 2)), Pen.FINE)


def _faint_seam(ink: Ink, left: float) -> None:
    """Where two mats met, from the side: a line and no step."""
    for start, end in _profile(left, 0):
        ink.stroke((start, end), Pen.HEAVY)
    _cut(ink, left, 3)
    x = left + WIDE / 2
    ink.stroke(((x - 5, 46), (x, 48), (x + 5, 46)), Pen.FINE)


def _ridge(ink: Ink, left: float) -> None:
    """Where two mats met, from the side: a sharp ridge that a bare foot finds."""
    for start, end in _profile(left, 8):
        ink.stroke((start, end), Pen.HEAVY)
    x = left + WIDE / 2
    ink.stroke(((x - 8, 46), (x - 1, 27), (x + 2, 30), (x + 7, 46)), Pen.HEAVY)
    _cut(ink, left, 4)


def _profile(left: float, half: float) -> Iterator[tuple[Pixel, Pixel]]:
    x = left + WIDE / 2
    yield (left + 2, 46), (x - half, 46)
    yield (x + half, 46), (left + WIDE - 2, 46)


def _cut(ink: Ink, left: float, seed: int) -> None:
    for x, y in spots(70, WIDE - 12, HIGH - 56, seed):
        ink.stroke(((left + 6 + x, 51 + y), (left + 6.4 + x, 51 + y)), Pen.MEDIUM)


_DRAWN: Mapping[tuple[Sign, str], Callable[[Ink, float], None]] = {
    (Sign.CRACK, "normal"): _fine_crack,
    (Sign.CRACK, "not"): _wide_crack,
    (Sign.SHADE, "normal"): _blotches,
    (Sign.SHADE, "not"): _flakes,
    (Sign.POWDER, "normal"): _powder_before,
    (Sign.POWDER, "not"): _powder_after,
    (Sign.SEAM, "normal"): _faint_seam,
    (Sign.SEAM, "not"): _ridge,
}
