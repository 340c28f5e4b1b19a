"""Sheet 5, days on site: when we come, and from when the slab may be used."""

from quotegen.explain.prose import html
from quotegen.explain.results import Results
from quotegen.explain.views import DaysSheet, Row


def day_sheet(results: Results) -> DaysSheet:
    """Build sheet 5."""
    words = results.words
    return DaysSheet(
        visits=tuple(
            Row(name=words.days(visit.first_day, visit.last_day), text=visit.name,
                mark=str(number))
            for number, visit in enumerate(results.chosen_visits, start=1)
        ),
        opening=tuple(
            Row(name=words.weekday(opened.day), text=words(f"opening_{opened.use.value}"))
            for opened in results.openings
        ),
        weather_html=html(results.content.clauses["weather"].markdown, results),
    )  # fmt: skip
