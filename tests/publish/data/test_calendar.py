"""visits.ics: read back with two libraries for RFC 5545, and line by line as the RFC says."""

import re
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from typing import Any

import pytest
import vobject
from icalendar import Calendar, Event

from quotegen.publish.data.calendar import CalendarEvent, Status, to_ics

POUR = CalendarEvent(
    uid="T-1-pour@pennywort.example",
    status=Status.TENTATIVE,
    summary="Pennywort Flatwork: Pour and finish",
    description="Quote T-1. Questions: 740-555-0117",
    location="1 Test Lane, Harrow Bend",
    first_day=date(2026, 6, 10),
    last_day=date(2026, 6, 11),
)
DATED = date(2026, 5, 14)


def _read(*visits: CalendarEvent, revision: int = 1) -> tuple[Any, list[Any]]:
    calendar = Calendar.from_ical(to_ics(visits, "Patio, Pennywort", DATED, revision))
    assert isinstance(calendar, Calendar)
    assert calendar.errors == []
    events = [event for event in calendar.walk("VEVENT") if isinstance(event, Event)]
    assert all(event.errors == [] for event in events)
    return calendar, events


def test_what_was_written_is_read_back():
    """Every field of a visit arrives, and the calendar has its name."""
    calendar, (event,) = _read(POUR)
    assert (event["summary"], event["location"]) == (POUR.summary, POUR.location)
    assert (event["description"], event["uid"]) == (POUR.description, POUR.uid)
    assert (event["status"], calendar["version"]) == ("TENTATIVE", "2.0")
    assert calendar["name"] == calendar["x-wr-calname"] == "Patio, Pennywort"


@pytest.mark.parametrize("text", ["Pour, and finish; then cure", "é" * 120, "back\\slash\nline"])
def test_another_reader_finds_the_same(text: str):
    """vobject, a library of other authors, reads the same events from the file."""
    data = to_ics((POUR, replace(POUR, uid="T-1-seal@x.example", summary=text)), "n", DATED, 2)
    calendar = vobject.readOne(data.decode("utf-8"))
    calendar.validate(raiseException=True)
    first, second = calendar.vevent_list
    assert (first.summary.value, second.summary.value) == (POUR.summary, text)
    assert (first.dtstart.value, first.dtend.value) == (POUR.first_day, date(2026, 6, 12))
    assert (first.uid.value, first.status.value) == (POUR.uid, "TENTATIVE")
    assert second.location.value == POUR.location


def test_it_is_no_message():
    """A method asks for an organizer (RFC 5546, 3.2.1); a file that is opened has neither."""
    calendar, _ = _read(POUR)
    assert "method" not in calendar


@pytest.mark.parametrize("status", Status)
def test_an_event_says_how_sure_it_is(status: Status):
    """The three words of RFC 5545, 3.8.1.11 for an event, and where nobody goes no place."""
    data = to_ics((replace(POUR, status=status, location=""),), "n", DATED, 1)
    lines = _unfolded(data)
    assert lines.count(f"STATUS:{status}") == 1
    assert not any(line.startswith("LOCATION") for line in lines)


def _unfolded(data: bytes) -> list[str]:
    """Content lines by RFC 5545, 3.1: CRLF between them; one before a blank only folds."""
    return data.replace(b"\r\n ", b"").decode("utf-8").removesuffix("\r\n").split("\r\n")


def test_every_line_is_one_of_the_grammar():
    """A second reading, by RFC 5545, 3.1 and 3.6.1: name, value; what an event must have, once."""
    lines = _unfolded(to_ics((POUR, replace(POUR, uid="T-1-seal@x.example")), "n, o", DATED, 1))
    assert (lines[0], lines[-1]) == ("BEGIN:VCALENDAR", "END:VCALENDAR")
    names = [re.fullmatch(r"([A-Z0-9-]+)((?:;[A-Z0-9-]+=[^;:]+)*):(.*)", line) for line in lines]
    assert all(names), [line for line, name in zip(lines, names, strict=True) if not name]
    events = "\n".join(lines).split("BEGIN:VEVENT\n")[1:]
    assert len(events) == 2
    for event in events:
        for name in ("UID", "DTSTAMP", "DTSTART", "DTEND", "SUMMARY", "SEQUENCE", "STATUS"):
            assert len(re.findall(rf"(?m)^{name}[;:]", event)) == 1, name


@pytest.mark.parametrize("days", [1, 2, 5])
def test_the_end_is_not_part_of_the_event(days: int):
    """DTEND is exclusive: an all-day event ends on the day after its last one (RFC 5545, 3.6.1)."""
    last = POUR.first_day + timedelta(days=days - 1)
    _, (event,) = _read(replace(POUR, last_day=last))
    assert event.decoded("dtstart") == POUR.first_day
    assert event.decoded("dtend") == last + timedelta(days=1)
    assert event.decoded("dtend") - event.decoded("dtstart") == timedelta(days=days)
    assert type(event.decoded("dtstart")) is date  # a day, in every time zone


def test_the_time_stamp_is_the_date_of_the_quote():
    """No clock is read: the same quote is the same bytes on any day."""
    _, (event,) = _read(POUR)
    assert event.decoded("dtstamp") == datetime(2026, 5, 14, tzinfo=UTC)
    assert to_ics((POUR,), "n", DATED, 1) == to_ics((POUR,), "n", DATED, 1)


def test_a_revision_updates_the_same_event():
    """The next revision keeps the UID and raises the sequence, so calendars move the event."""
    _, (first,) = _read(POUR, revision=1)
    _, (second,) = _read(replace(POUR, first_day=date(2026, 6, 11)), revision=2)
    assert first["uid"] == second["uid"]
    assert first["sequence"] < second["sequence"]


@pytest.mark.parametrize(
    "text",
    ["a, b; c", "line\nbreak", "back\\slash", "x" * 200, "Ağaç Sokağı 3", "END:VEVENT",
     "a\r\nATTENDEE:mailto:x@post.example"],
)  # fmt: skip
def test_text_cannot_break_out(text: str):
    """Commas, line breaks and long lines are escaped and folded: still one event, same text."""
    _, events = _read(replace(POUR, summary=text, location=text))
    (event,) = events
    assert event["summary"].replace("\r\n", "\n") == text.replace("\r\n", "\n")
    assert "attendee" not in event


def test_lines_are_short():
    """No line is longer than 75 octets, and lines end as the standard asks."""
    data = to_ics((replace(POUR, summary="é" * 120),), "n", DATED, 1)
    assert data.endswith(b"\r\n")
    assert max(len(line) for line in data.split(b"\r\n")) <= 75
