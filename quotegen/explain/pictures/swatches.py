"""Swatches: a surface from above in its base and second color, at one tenth of its size.

They are drawings and say so.
"""

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.pens import Ink, Pen
from quotegen.explain.drawing.surfaces import surface_strokes
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.results import Results
from quotegen.pricing.quoted.options import takes
from quotegen.reading.files.rate_book import BASE_COLORS, Finish

SIZE_PX = (178.0, 140.0)
SMALL_PX = (88.0, 48.0)
RATIO = 10
PX_PER_IN = 96 / RATIO
"""Pixels for one inch of a surface, at 1 to `RATIO`."""

FINEST_PX = 2.4
"""How far apart lines stand, at least."""

CONCRETE, SHADOW = "#cfcfca", "#85857f"
"""Plain concrete gray and its shade, where the rate book names no color to draw in."""

Pixels = tuple[float, float]
"""Width and height, or across and down."""

Tones = tuple[str, str]
"""The base color and the second tone."""

Names = tuple[str, str]
"""A title, and what is unique on the page."""


def finish_swatch(results: Results, finish: str) -> Drawing:
    """Draw a finish in the colors of the quote if it takes them, else in its own."""
    book = results.job.rate_book.finishes[finish]
    tones = tones_of(results, finish)
    title = results.words(
        "swatch_title", finish=results.content.finishes[book.kind.value].front.title
    )
    return _swatch(results, book, tones, SIZE_PX, (title, f"swatch-{finish}"))


def tones_of(results: Results, finish: str) -> Tones:
    """The colors of the quote if a finish takes them, else its own."""
    job = results.job
    book = job.rate_book.finishes[finish]
    own = (book.shade or CONCRETE, book.second_shade or SHADOW)
    if job.color and takes(job, finish, job.color):
        return _tones(results, job.color, own)
    return own


def look_swatch(results: Results, colors: tuple[str, ...]) -> Drawing:
    """Draw the colors of a look on the finish that takes them, the quoted one if it does."""
    job = results.job
    taker = next((look.finish for look in results.quote.color_choices if look.colors == colors),
                 job.finish)  # fmt: skip
    book = job.rate_book.finishes[taker]
    tones = _tones(results, colors, (book.shade or CONCRETE, book.second_shade or SHADOW))
    names = results.words.listing(tuple(job.rate_book.rates[c].name for c in colors))
    title = results.words("look_title", colors=names)
    return _swatch(results, book, tones, SMALL_PX, (title, f"look-{'-'.join(colors)}"))


def _tones(results: Results, colors: tuple[str, ...], own: Tones) -> Tones:
    base, second = own
    for color in colors:
        rate = results.job.rate_book.rates[color]
        if rate.color in BASE_COLORS:
            base = rate.shade or base
        else:
            second = rate.shade or second
    return base, second


def _swatch(results: Results, book: Finish, tones: Tones, size: Pixels, names: Names) -> Drawing:
    """Fill a rectangle with the base color, and draw the surface over it in the second one."""
    width, height = size
    ink, rim = Ink(), [(0.5, 0.5), (width - 0.5, 0.5), (width - 0.5, height - 0.5),
                       (0.5, height - 0.5)]  # fmt: skip
    ink.solid([rim], tones[0])
    draw_surface(ink, book, (0, 0), size, tones[1], tones[1])
    ink.stroke(rim, Pen.MEDIUM, closed=True)
    title, ident = names
    return svg.drawing(
        size, ink.drawn(), title=title, ident=ident,
        about=results.words("swatch_about"), css_class="drawing swatch",
    )  # fmt: skip


def draw_surface(ink: Ink, finish: Finish, at: Pixels, size: Pixels, line: str, tone: str) -> None:
    """Draw a surface at the scale of samples: its lines in one ink, what is dark in another."""
    wide, high = (side / PX_PER_IN for side in size)
    strokes = surface_strokes(finish.kind, finish.pattern, wide, high, FINEST_PX / PX_PER_IN)
    runs = [[(at[0] + x * PX_PER_IN, at[1] + y * PX_PER_IN) for x, y in stroke.points]
            for stroke in strokes]  # fmt: skip
    ink.solid((run for stroke, run in zip(strokes, runs, strict=True) if stroke.filled), tone)
    for stroke, run in zip(strokes, runs, strict=True):
        ink.stroke(run, stroke.pen, closed=stroke.closed, ink=line)
