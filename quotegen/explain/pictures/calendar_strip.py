"""The calendar strip: the days that matter down the page, with breaks over the quiet ones.

Beside each day: whether we work, what the slab may be used for, what we do, what you do, what you
pay. Only what is in the schedule and among the payments stands on it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.pens import Ink, Pen
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.calendar_rows import CalendarRow, Lane, calendar_rows, lanes_of
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.money import total
from quotegen.pricing.quoted.records import PricedPayment
from quotegen.schedule.day_plans import DayPlan

NARROW_PX = 480.0
SIZE_PX, LINE_PX, PAD_PX = 12.5, 16.0, 9.0
HEAD_PX, KEY_PX = 24.0, 20.0
BAR_PX, LANE_PX = 18.0, 46.0
NARROW_LANE_PX = 22.0
HATCH_PX = 5.0
BREAK_PX = 34.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Columns:
    """Where the columns begin, and how wide their words may be; on a phone all words are in one."""

    width: float
    narrow: bool
    lanes: dict[Lane, float]
    we: tuple[float, float]
    you: tuple[float, float]
    pay: tuple[float, float]


def calendar_strip(
    results: Results,
    plan: DayPlan,
    payments: tuple[PricedPayment, ...],
    width: float,
    ident: str,
) -> Drawing:
    """Draw the days of a plan.

    Args:
        results: the job and its words.
        plan: of the finishes that are shown.
        payments: those with a place among the days; none where the price may still be chosen.
        width: in pixels; a narrow one has its words one under the other.
        ident: unique on the page.
    """
    words = results.words
    rows = tuple(calendar_rows(results, plan, payments))
    columns = _columns(rows, width)
    heights = [_height(row, columns, words) for row in rows]
    ink, top = Ink(), 2.0 if columns.narrow else HEAD_PX
    tops = [top + sum(heights[:index]) for index in range(len(heights) + 1)]
    for head in tops[1:-1] if columns.narrow else tops[:-1]:
        ink.stroke(((0, head), (width, head)), Pen.FINE)
    for lane, x in columns.lanes.items():
        _lane(ink, lane, x, rows, tops)
    for row, y in zip(rows, tops, strict=False):
        _words(ink, row, y, columns, words)
    bottom = _sum(ink, payments, columns, tops[-1], words)
    if columns.narrow:
        bottom = _key(ink, columns, bottom + 6, words)
    else:
        _heads(ink, columns, words)
    return svg.drawing(
        (width, bottom + 4), ink.drawn(), title=words("calendar_title"), ident=ident,
        about=words("calendar_about"), family=words.font.family, css_class="drawing calendar",
    )  # fmt: skip


def _columns(rows: Sequence[CalendarRow], width: float) -> _Columns:
    lanes = lanes_of(rows)
    narrow = width < NARROW_PX
    first, step = (0.0, NARROW_LANE_PX) if narrow else (98.0, LANE_PX)
    places = {lane: first + step * index for index, lane in enumerate(lanes)}
    left = first + step * len(lanes) + 4
    if narrow:
        room = (left, width - left)
        return _Columns(width=width, narrow=True, lanes=places, we=room, you=room, pay=room)
    pay = 124.0
    share = (width - pay - left) / 2
    return _Columns(
        width=width, narrow=False, lanes=places, we=(left, share - 14),
        you=(left + share, share - 10), pay=(width - pay, pay),
    )  # fmt: skip


def _said(row: CalendarRow, columns: _Columns, words: Words) -> Iterator[tuple[float, str, str]]:
    """The lines of a row: where each begins, its words and its face; an empty one goes down."""
    font = words.font
    for (x, room), texts in ((columns.we, row.we), (columns.you, row.you)):
        for text in texts:
            said = text
            if columns.narrow and texts is row.you:
                said = words("calendar_you_do", what=text)
            for line in font.wrapped(said, room, SIZE_PX):
                yield x, line, "plain"


def _height(row: CalendarRow, columns: _Columns, words: Words) -> float:
    if row.quiet:
        return BREAK_PX
    lines = [x for x, _, _ in _said(row, columns, words)]
    if columns.narrow:
        return LINE_PX * (1 + len(lines) + len(row.payments)) + PAD_PX
    most = max((lines.count(x) for x in {*lines}), default=1)
    days = len(words.font.wrapped(row.day, 92, SIZE_PX, face="bold"))
    return LINE_PX * max(most, len(row.payments), days) + PAD_PX


def _words(ink: Ink, row: CalendarRow, top: float, columns: _Columns, words: Words) -> None:
    """Write the day and what belongs to it."""
    y, narrow = top + LINE_PX, columns.narrow
    day_x, room = (columns.we[0], columns.we[1]) if narrow else (0.0, 92.0)
    if row.quiet:
        ink.put(svg.text((day_x, top + BREAK_PX / 2 + 5), row.day, size=SIZE_PX, anchor="start"))
        return
    for index, line in enumerate(words.font.wrapped(row.day, room, SIZE_PX, face="bold")):
        at = (day_x, y + LINE_PX * index)
        ink.put(svg.text(at, line, size=SIZE_PX, anchor="start", face="bold"))
    next_y = {columns.we[0]: y, columns.you[0]: y} if not narrow else {columns.we[0]: y + LINE_PX}
    for x, line, face in _said(row, columns, words):
        ink.put(svg.text((x, next_y[x]), line, size=SIZE_PX, anchor="start", face=face))
        next_y[x] += LINE_PX
    y = next_y[columns.we[0]] if narrow else y
    for number, payment in row.payments:
        name = words("calendar_payment", number=str(number))
        ink.put(svg.text((columns.pay[0], y), name, size=SIZE_PX, anchor="start"))
        ink.put(svg.text((columns.width, y), words.money(payment.amount), size=SIZE_PX,
                         anchor="end", face="bold"))  # fmt: skip
        y += LINE_PX


def _lane(
    ink: Ink, lane: Lane, x: float, rows: Sequence[CalendarRow], tops: Sequence[float]
) -> None:
    """Draw one lane: a bar wherever it is open, broken over quiet days."""
    start: float | None = None
    for row, top, foot in zip(rows, tops, tops[1:], strict=False):
        is_open = lane in row.open
        if is_open and start is None:
            start = top + (3 if lane is Lane.WORK else 0)
        if start is not None and (not is_open or lane is Lane.WORK):
            _bar(ink, lane, x, start, foot - 3 if is_open else top)
            start = None
    if start is not None:
        _bar(ink, lane, x, start, tops[-1])
    for row, top in zip(rows, tops, strict=False):
        if row.quiet and lane in row.open:
            _break(ink, x, top + BREAK_PX / 2)


def _bar(ink: Ink, lane: Lane, x: float, top: float, foot: float) -> None:
    ring = [(x, top), (x + BAR_PX, top), (x + BAR_PX, foot), (x, foot)]
    if lane is Lane.WORK:
        ink.solid([ring])
        return
    ink.face(ring, Pen.MEDIUM)
    if lane is Lane.WALK:
        _hatch(ink, x, top, foot)
    elif lane is Lane.DRIVE:
        y = top + HATCH_PX
        while y < foot - 1:
            ink.stroke(((x, y), (x + BAR_PX, y)), Pen.FINE)
            y += HATCH_PX


def _hatch(ink: Ink, x: float, top: float, foot: float) -> None:
    """Slanted lines, each cut where it would leave its bar."""
    y = top + HATCH_PX
    while y < foot + BAR_PX:
        start = (x, y) if y <= foot else (x + y - foot, foot)
        end = (x + BAR_PX, y - BAR_PX) if y - BAR_PX >= top else (x + y - top, top)
        ink.stroke((start, end), Pen.FINE)
        y += HATCH_PX


def _break(ink: Ink, x: float, y: float) -> None:
    """Cut a bar with two zigzag lines: days are left out here."""

    def zigzag(down: float) -> list[tuple[float, float]]:
        return [(x - 4, down), (x + 5, down), (x + 8, down - 5), (x + 11, down + 5),
                (x + 14, down), (x + BAR_PX + 4, down)]  # fmt: skip

    upper, lower = zigzag(y - 3), zigzag(y + 4)
    ink.face([*upper, *reversed(lower)])
    ink.strokes((upper, lower), Pen.FINE)


def _heads(ink: Ink, columns: _Columns, words: Words) -> None:
    for lane, x in columns.lanes.items():
        ink.put(svg.text((x + BAR_PX / 2, 15), words(f"calendar_{lane.value}"), size=12))
    for x, key in ((columns.we[0], "we"), (columns.you[0], "you"), (columns.pay[0], "pay")):
        ink.put(svg.text((x, 15), words(f"calendar_{key}"), size=12, anchor="start"))


def _key(ink: Ink, columns: _Columns, top: float, words: Words) -> float:
    """Name the lanes at the foot of a phone's drawing, two in a row; return its foot."""
    for index, lane in enumerate(columns.lanes):
        x, y = columns.width / 2 * (index % 2), top + KEY_PX * (index // 2)
        _bar(ink, lane, x, y + 2, y + 15)
        name = words(f"calendar_{lane.value}")
        ink.put(svg.text((x + BAR_PX + 6, y + 13), name, size=SIZE_PX, anchor="start"))
    return top + KEY_PX * ((len(columns.lanes) + 1) // 2)


def _sum(
    ink: Ink, payments: tuple[PricedPayment, ...], columns: _Columns, top: float, words: Words
) -> float:
    """The payments together, under a heavy line."""
    ink.stroke(((0, top), (columns.width, top)), Pen.MEDIUM)
    if not payments:
        return top
    amount = words.money(total(tuple(payment.amount for payment in payments)))
    text = words.count("calendar_together", len(payments))
    ink.put(svg.text((0, top + 18), text, size=SIZE_PX, anchor="start", face="bold"))
    ink.put(svg.text((columns.width, top + 18), amount, size=SIZE_PX, anchor="end", face="bold"))
    return top + 26
