"""The days of a job as a calendar file (RFC 5545): one all-day event for each day that matters.

The file has no method: it is a file to open, and no message that asks for an answer (RFC 5546).
"""

from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from enum import StrEnum

from icalendar import Calendar, Event


class Status(StrEnum):
    """How sure an event is (RFC 5545, 3.8.1.11)."""

    TENTATIVE = "TENTATIVE"
    CONFIRMED = "CONFIRMED"
    CANCELLED = "CANCELLED"


@dataclass(frozen=True, slots=True, kw_only=True)
class CalendarEvent:
    """One event.

    Attributes:
        uid: stays the same from revision to revision, so that a calendar updates the event.
        location: where it is; empty where nobody has to go anywhere.
    """

    uid: str
    status: Status
    summary: str
    description: str
    location: str
    first_day: date
    last_day: date


def to_ics(events: tuple[CalendarEvent, ...], name: str, dated: date, sequence: int) -> bytes:
    """Write the calendar.

    Args:
        events: in the order in which they are written.
        name: of the calendar, also in the older way that more programs read.
        dated: the day of the quote or of what followed it last: the time stamp of each event.
        sequence: rises with each change, so that a later file wins over an earlier one.
    """
    calendar = Calendar()
    calendar.add("prodid", "-//quotegen//days//EN")
    calendar.add("version", "2.0")
    calendar.add("name", name)
    calendar.add("x-wr-calname", name)
    stamp = datetime(dated.year, dated.month, dated.day, tzinfo=UTC)
    for one in events:
        event = Event()
        event.add("uid", one.uid)
        event.add("dtstamp", stamp)
        event.add("sequence", sequence)
        event.add("status", one.status.value)
        event.add("dtstart", one.first_day)
        event.add("dtend", one.last_day + timedelta(days=1))  # the end is not part of the event
        event.add("summary", one.summary)
        event.add("description", one.description)
        if one.location:
            event.add("location", one.location)
        event.add("transp", "TRANSPARENT")
        calendar.add_component(event)
    return bytes(calendar.to_ical())
