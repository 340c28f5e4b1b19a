"""The timeline: our days, the waits, what the homeowner does, when the slab may be used."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.curves import Pixel, number
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.results import Results
from quotegen.explain.words.days import visit_said
from quotegen.reading.files.rate_book import POUR
from quotegen.schedule.day_plans import DayPlan

WIDTH_PX, AXIS_PX, TEXT_PX = 328.0, 9.0, 54.0
LINE_PX, GAP_PX, TOP_PX, KEY_PX = 16.0, 7.0, 2.0, 20.0
SIZE_PX = 13.0


class Mark(StrEnum):
    """What a label stands for, and how it is drawn."""

    WE = "we"
    WAIT = "wait"
    YOU = "you"
    OPEN = "open"


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """One label of the timeline, from its first to its last day."""

    mark: Mark
    first: date
    last: date
    day: str
    text: str


def timeline(results: Results, plan: DayPlan, ident: str) -> Drawing:
    """Draw the days of a plan down the page, a label for each; waits are not to scale."""
    words = results.words
    events = tuple(_events(results, plan))
    lines = [words.font.wrapped(event.text, WIDTH_PX - TEXT_PX, SIZE_PX) for event in events]
    tops = list(_tops(lines))
    end, *starts = tops[-1], *(y for y, e in zip(tops, events, strict=False) if e.mark is Mark.WE)
    parts = [svg.line((AXIS_PX, TOP_PX), (AXIS_PX, end - GAP_PX))]
    for mark in (Mark.WE, Mark.WAIT):
        blocks = [
            (top, top + 2 * LINE_PX if mark is Mark.WE else _next(starts, top, end) - GAP_PX)
            for event, top in zip(events, tops, strict=False)
            if event.mark is mark
        ]
        parts += _on_axis(mark, blocks)
    places = [(e.mark, (TEXT_PX - 13, y + 8)) for e, y in zip(events, tops, strict=False)]
    key = _key_places(end + KEY_PX - 4)
    parts += _symbols((*places, *((mark, (x, y - 4)) for mark, (x, y) in key)))
    for event, wrapped, top in zip(events, lines, tops, strict=False):
        parts += _texts(event, wrapped, top)
    return svg.drawing(
        (WIDTH_PX, end + 2 * KEY_PX),
        "".join((*parts, *_key_words(results, key))),
        title=words("timeline_title"),
        about=words(
            "timeline_about",
            start=words.day(events[0].first),
            end=words.day(max(event.last for event in events)),
        ),
        ident=ident,
        family=words.font.family,
    )


def _tops(lines: list[tuple[str, ...]]) -> Iterator[float]:
    """Where each label begins, and at last where the labels end."""
    y = TOP_PX
    for wrapped in lines:
        yield y
        y += (1 + len(wrapped)) * LINE_PX + GAP_PX
    yield y


def _events(results: Results, plan: DayPlan) -> Iterator[Event]:
    """What happens, in the order of the days; on one day our work comes first."""
    order = tuple(Mark)
    yield from sorted(
        _unsorted(results, plan), key=lambda event: (event.first, order.index(event.mark))
    )


def _unsorted(results: Results, plan: DayPlan) -> Iterator[Event]:
    words = results.words

    def event(mark: Mark, first: date, last: date, text: str) -> Event:
        return Event(mark=mark, first=first, last=last, day=words.days(first, last), text=text)

    for visit in plan.visits:
        yield event(Mark.WE, visit.first_day, visit.last_day, visit_said(words, visit))
        if visit.id == "form":
            yield event(Mark.YOU, visit.first_day, visit.first_day, words("timeline_lines"))
            yield event(Mark.YOU, visit.last_day, visit.last_day, words("timeline_measure"))
        elif visit.visit == POUR and visit.part == 1:
            yield event(Mark.YOU, visit.first_day, visit.first_day, words("timeline_off"))
    if plan.inspection is not None:
        yield event(Mark.YOU, plan.inspection, plan.inspection, words("timeline_bonding"))
    for wait in plan.waits:
        text = words.count("timeline_wait", wait.days)
        yield event(Mark.WAIT, wait.first_day, wait.last_day, text)
    for opened in plan.openings:
        yield event(Mark.OPEN, opened.day, opened.day, words(f"opening_{opened.use.value}"))


def _next(starts: list[float], top: float, end: float) -> float:
    """Where our next visit begins, or where the labels end."""
    return min((y for y in starts if y > top), default=end)


def _on_axis(mark: Mark, blocks: list[tuple[float, float]]) -> Iterator[str]:
    """Draw our days as filled blocks, and waits as open boxes down to our next visit."""
    left, right = AXIS_PX - 8, AXIS_PX + 8
    boxes = [[(left, a), (right, a), (right, b), (left, b)] for a, b in blocks]
    if not boxes:
        return
    if mark is Mark.WE:
        yield svg.element("path", d=svg.rings_path(boxes), fill=svg.INK)
    else:
        yield svg.element("path", d=svg.rings_path(boxes), fill=svg.PAPER, stroke=svg.INK,
                          stroke_width=svg.THIN, stroke_dasharray="3 3")  # fmt: skip


def _texts(event: Event, lines: tuple[str, ...], y: float) -> Iterator[str]:
    yield svg.text((TEXT_PX, y + 12), event.day, size=12, anchor="start", face="bold")
    for row, line in enumerate(lines, start=1):
        yield svg.text((TEXT_PX, y + 12 + row * LINE_PX), line, size=SIZE_PX, anchor="start")


def _symbols(places: Iterable[tuple[Mark, Pixel]]) -> Iterator[str]:
    """Draw the symbols at their places, those of a kind as one path."""
    places = tuple(places)
    for mark in Mark:
        drawn = "".join(_outline(mark, *at) for kind, at in places if kind is mark)
        dash = {"stroke_dasharray": "2 2"} if mark is Mark.WAIT else {}
        if drawn:
            yield svg.element("path", d=drawn, fill=svg.INK if mark is Mark.WE else "#fff",
                              stroke=svg.INK, stroke_width=1.2, **dash)  # fmt: skip


def _outline(mark: Mark, x: float, y: float) -> str:
    """A square for us and for a wait, a ring for you, a triangle for what you may do."""
    if mark is Mark.YOU:
        return f"M{number(x - 5)} {number(y)}a5 5 0 1 0 10 0a5 5 0 1 0 -10 0Z"
    if mark is Mark.OPEN:
        return svg.rings_path([[(x - 5, y - 6), (x + 6, y), (x - 5, y + 6)]])
    return svg.rings_path([[(x - 5, y - 5), (x + 5, y - 5), (x + 5, y + 5), (x - 5, y + 5)]])


def _key_places(y: float) -> tuple[tuple[Mark, Pixel], ...]:
    """Where the symbols of the key stand, two in a row."""
    return tuple(
        (mark, (AXIS_PX + (i % 2) * 168, y + KEY_PX * (i // 2))) for i, mark in enumerate(Mark)
    )


def _key_words(results: Results, places: tuple[tuple[Mark, Pixel], ...]) -> Iterator[str]:
    for mark, (x, y) in places:
        yield svg.text((x + 12, y), results.words(f"key_{mark.value}"), size=12, anchor="start")
