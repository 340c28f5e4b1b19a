"""The sample board: each finish in ink on white, large and to one scale, over its own colors."""

from fractions import Fraction

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.pens import Ink, Pen
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.swatches import PX_PER_IN, RATIO, draw_surface, tones_of
from quotegen.explain.results import Results
from quotegen.quantity import FEET_PER_METER, Length, Units

GAP_PX, CHIP_PX, LINE_PX, SIZE_PX = 16.0, 12.0, 16.0, 12.5
TALL_IN = 20.0
"""How much of a surface stands in a sample, from top to foot."""

LEAST_PX = 140.0
"""A sample is no less wide than this; more finishes stand in rows."""

MOST_PX = 226.0
"""Nor is it wider than this."""

BAR_US, BAR_METRIC = Length(Fraction(1)), Length(Fraction(3, 10) * FEET_PER_METER)
"""How long the bar is that shows the scale."""

GRAY = "#8a8a86"


def sample_board(results: Results, width: float, ident: str) -> Drawing:
    """Draw a sample of each finish of the quote, the chosen one first and in a heavy frame."""
    words = results.words
    finishes = tuple(finish.id for finish in results.quote.finishes)
    across = max(1, min(len(finishes), int((width + GAP_PX) / (LEAST_PX + GAP_PX))))
    wide = min(MOST_PX, (width - GAP_PX * (across - 1)) / across)
    tall = TALL_IN * PX_PER_IN
    names = [_names(results, finish, wide) for finish in finishes]
    row_px = tall + CHIP_PX + 8 + LINE_PX * max(map(len, names)) + GAP_PX
    ink = Ink()
    for index, (finish, lines) in enumerate(zip(finishes, names, strict=True)):
        at = ((wide + GAP_PX) * (index % across), row_px * (index // across))
        _sample(ink, results, finish, at, (wide, tall))
        for row, (line, face) in enumerate(lines, start=1):
            y = at[1] + tall + CHIP_PX + 4 + LINE_PX * row
            ink.put(svg.text((at[0], y), line, size=SIZE_PX, anchor="start", face=face))
    foot = row_px * ((len(finishes) - 1) // across + 1)
    foot = _scale(ink, results, width, foot)
    return svg.drawing(
        (width, foot), ink.drawn(), title=words("board_title"), ident=ident,
        about=words("swatch_about"), family=words.font.family, scale=f"1 : {RATIO}",
        css_class="drawing board",
    )  # fmt: skip


def _names(results: Results, finish: str, wide: float) -> tuple[tuple[str, str], ...]:
    """The lines below a sample, each with its face."""
    words, book = results.words, results.job.rate_book.finishes[finish]
    name = words.font.wrapped(book.name, wide, SIZE_PX, face="bold")
    chosen = [(words("board_chosen"), "plain")] if finish == results.quote.chosen.id else []
    return (*((line, "bold") for line in name), *chosen)


def _sample(
    ink: Ink, results: Results, finish: str, at: tuple[float, float], size: tuple[float, float]
) -> None:
    """Draw one surface, and below it its base color and its second tone."""
    (x, y), (wide, tall) = at, size
    draw_surface(ink, results.job.rate_book.finishes[finish], at, size, svg.INK, GRAY)
    chosen = finish == results.quote.chosen.id
    frame = [(x + 1, y + 1), (x + wide - 1, y + 1), (x + wide - 1, y + tall), (x + 1, y + tall)]
    ink.stroke(frame, Pen.HEAVY if chosen else Pen.MEDIUM, closed=True)
    for index, tone in enumerate(tones_of(results, finish)):
        left, top = x + 1 + index * (wide - 2) / 2, y + tall + 3
        chip = [(left, top), (left + (wide - 2) / 2, top), (left + (wide - 2) / 2, top + CHIP_PX),
                (left, top + CHIP_PX)]  # fmt: skip
        ink.solid([chip], tone)
        ink.stroke(chip, Pen.FINE, closed=True)


def _scale(ink: Ink, results: Results, width: float, top: float) -> float:
    """A bar of a length that a ruler shows, and the scale in words; return the foot."""
    words = results.words
    bar = BAR_US if results.job.units is Units.US else BAR_METRIC
    long, y = bar.ft * 12 * PX_PER_IN, top + 10
    ink.stroke(((1, y - 4), (1, y + 4)), Pen.MEDIUM)
    ink.stroke(((1, y), (1 + long, y)), Pen.MEDIUM)
    ink.stroke(((1 + long, y - 4), (1 + long, y + 4)), Pen.MEDIUM)
    ink.put(svg.text((long + 10, y + 4), words.depth(bar), size=SIZE_PX, anchor="start"))
    y += 22
    for line in words.font.wrapped(words("board_scale", scale=f"1 : {RATIO}"), width, SIZE_PX):
        ink.put(svg.text((0, y), line, size=SIZE_PX, anchor="start"))
        y += LINE_PX
    return y
