"""The visits as a calendar file (RFC 5545): one all-day event for each visit."""

from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta

from icalendar import Calendar, Event


@dataclass(frozen=True, slots=True, kw_only=True)
class CalendarVisit:
    """One event.

    Attributes:
        uid: stays the same from revision to revision, so that a calendar updates the event.
    """

    uid: str
    summary: str
    description: str
    location: str
    first_day: date
    last_day: date


def to_ics(visits: tuple[CalendarVisit, ...], name: str, dated: date, revision: int) -> bytes:
    """Write the calendar; its time stamp is the date of the quote or of the last change."""
    calendar = Calendar()
    calendar.add("prodid", "-//quotegen//visits//EN")
    calendar.add("version", "2.0")
    calendar.add("method", "PUBLISH")
    calendar.add("name", name)
    stamp = datetime(dated.year, dated.month, dated.day, tzinfo=UTC)
    for visit in visits:
        event = Event()
        event.add("uid", visit.uid)
        event.add("dtstamp", stamp)
        event.add("sequence", revision)
        event.add("dtstart", visit.first_day)
        event.add("dtend", visit.last_day + timedelta(days=1))  # the end is not part of the event
        event.add("summary", visit.summary)
        event.add("description", visit.description)
        event.add("location", visit.location)
        event.add("transp", "TRANSPARENT")
        calendar.add_component(event)
    return bytes(calendar.to_ical())
