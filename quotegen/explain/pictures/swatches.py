"""Swatches: a surface from above in its base and second color, drawn from a fixed sequence.

They are drawings and say so. Each is a few paths: a stone is a round dot of a stroke.
"""

from collections.abc import Callable, Iterator, Mapping
from itertools import pairwise
from math import cos, pi, sin

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.results import Results
from quotegen.pricing.quoted.options import takes
from quotegen.reading.files.rate_book import BASE_COLORS, FinishKind

SIZE_PX = (150.0, 84.0)
SMALL_PX = (88.0, 48.0)
CONCRETE, SHADOW = "#cfcfca", "#85857f"
"""Plain concrete gray and its shade, where the rate book names no color to draw in."""

Pixels = tuple[float, float]
"""Width and height, or across and down."""

Tones = tuple[str, str]
"""The base color and the second tone."""


def finish_swatch(results: Results, finish: str) -> Drawing:
    """Draw a finish in the colors of the quote if it takes them, else in its own."""
    job = results.job
    book = job.rate_book.finishes[finish]
    tones = (book.shade or CONCRETE, book.second_shade or SHADOW)
    if job.color and takes(job, finish, job.color):
        tones = _tones(results, job.color, tones)
    title = results.words(
        "swatch_title", finish=results.content.finishes[book.kind.value].front.title
    )
    return _swatch(results, book.kind, tones, SIZE_PX, title, f"swatch-{finish}")


def look_swatch(results: Results, colors: tuple[str, ...]) -> Drawing:
    """Draw the colors of a look on the finish that takes them, the quoted one if it does."""
    job = results.job
    taker = next((look.finish for look in results.quote.color_choices if look.colors == colors),
                 job.finish)  # fmt: skip
    book = job.rate_book.finishes[taker]
    tones = _tones(results, colors, (book.shade or CONCRETE, book.second_shade or SHADOW))
    names = results.words.listing(tuple(job.rate_book.rates[c].name for c in colors))
    title = results.words("look_title", colors=names)
    return _swatch(results, book.kind, tones, SMALL_PX, title, f"look-{'-'.join(colors)}")


def _tones(results: Results, colors: tuple[str, ...], own: Tones) -> Tones:
    base, second = own
    for color in colors:
        rate = results.job.rate_book.rates[color]
        if rate.color in BASE_COLORS:
            base = rate.shade or base
        else:
            second = rate.shade or second
    return base, second


def _swatch(
    results: Results, kind: FinishKind, tones: Tones, size: Pixels, title: str, ident: str
) -> Drawing:
    width, height = size
    ground = svg.element("rect", x=0, y=0, width=width, height=height, fill=tones[0])
    frame = svg.element(
        "rect", x=0.5, y=0.5, width=width - 1, height=height - 1, fill="none",
        stroke=svg.INK, stroke_width=svg.THIN,
    )  # fmt: skip
    drawn = ground + "".join(_SURFACES[kind](tones[1], size)) + frame
    return svg.drawing(
        size, drawn, title=title, ident=ident,
        about=results.words("swatch_about"), css_class="drawing swatch",
    )  # fmt: skip


def _broom(tone: str, size: Pixels) -> Iterator[str]:
    """Fine lines, as a broom leaves them, every third one deeper."""
    width, height = size
    fine, deep = list[str](), list[str]()
    for index, shift in enumerate(_sequence(int(height / 3.2), 3)):
        y = 2 + 3.2 * index
        stroke = f"M0 {y:.1f}Q{width / 2 + 30 * (shift - 0.5):.0f} {y + 2 * shift - 1:.1f} "
        (fine if index % 3 else deep).append(f"{stroke}{width:.0f} {y:.1f}")
    yield _strokes(fine, tone, 0.4)
    yield _strokes(deep, tone, 0.9)


def _exposed(tone: str, size: Pixels) -> Iterator[str]:
    """Pebbles of three sizes, some of them light."""
    for number, (stones, thick, color) in enumerate(
        ((36, 2.6, tone), (32, 4.6, tone), (18, 3.8, "#fff"), (12, 2.6, "#3f3a34"))
    ):
        dots = [f"M{x:.0f} {y:.0f}h.1" for x, y in _spots(stones, size, 1 + 71 * number)]
        yield _strokes(dots, color, thick, cap="round")


def _texture(tone: str, size: Pixels) -> Iterator[str]:
    """The skin of a split stone: low ridges, dark where the second color stays."""
    thin, thick = list[str](), list[str]()
    for index, ((x, y), turn, length) in enumerate(
        zip(_spots(34, size, 5), _sequence(34, 3), _sequence(34, 7), strict=True)
    ):
        dx, dy = (7 + 12 * length) * cos(turn * pi), (7 + 12 * length) * sin(turn * pi) * 0.45
        curve = f"M{x - dx:.0f} {y - dy:.0f}q{dx * 0.8:.0f} {dy + 3:.0f} {dx * 2:.0f} {dy * 2:.0f}"
        (thick if index % 4 == 0 else thin).append(curve)
    yield _strokes(thin, tone, 0.7)
    yield _strokes(thick, tone, 1.8)


def _pattern(tone: str, size: Pixels) -> Iterator[str]:
    """Cut stones in a random course, a few of them darker, with lines in the second color."""
    width, height = size
    xs, ys = (0, 30, 54, 88, 118, 150), (0, 20, 48, 66, 84)
    lines = [f"M0 {y}H{width:.0f}" for y in ys[1:-1] if y < height]
    dark = []
    for row, (top, bottom) in enumerate(pairwise(ys)):
        shift = 11 * (row % 3)
        lines += [f"M{x + shift} {top}V{bottom}" for x in xs[1:-1] if x + shift < width]
        left, right = xs[row % 4] + shift, xs[row % 4 + 1] + shift
        dark.append(f"M{left} {top}H{right}V{bottom}H{left}Z")
    yield svg.element("path", d="".join(dark), fill=tone, fill_opacity="0.25")
    yield _strokes(lines, tone, 1.6)


_SURFACES: Mapping[FinishKind, Callable[[str, Pixels], Iterator[str]]] = {
    FinishKind.BROOM: _broom,
    FinishKind.EXPOSED_AGGREGATE: _exposed,
    FinishKind.STAMPED_TEXTURE: _texture,
    FinishKind.STAMPED_PATTERN: _pattern,
}


def _strokes(parts: list[str], color: str, thick: float, *, cap: str = "butt") -> str:
    return svg.element(
        "path", d="".join(parts), fill="none", stroke=color, stroke_width=thick, stroke_linecap=cap
    )


def _sequence(count: int, start: int) -> Iterator[float]:
    """Numbers from 0 to 1 that look scattered and are the same each time."""
    for index in range(count):
        yield (index + start) * 0.618033988749895 % 1


def _spots(count: int, size: Pixels, start: int) -> Iterator[Pixels]:
    """Points spread over a swatch, in no order that the eye sees."""
    for index in range(start, start + count):
        x, y = index * 0.7548776662466927 % 1, index * 0.5698402909980532 % 1
        yield 3 + x * (size[0] - 6), 3 + y * (size[1] - 6)
