"""Sheet 5, days on site: when we come, and from when the slab may be used."""

from quotegen.explain.change_sheet import clause
from quotegen.explain.present import present
from quotegen.explain.prose import filled, html
from quotegen.explain.results import Results
from quotegen.explain.views import DaysSheet, Prose, Row, SightRow
from quotegen.spec.content import When


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
        crew=_crew(results),
        sights=_sights(results),
    )  # fmt: skip


def _crew(results: Results) -> tuple[Prose, ...]:
    """Return why the work goes as it does, where a stamped finish asks for it."""
    return (clause("in_parts", results),) if When.STAMPED in present(results) else ()


def _sights(results: Results) -> tuple[SightRow, ...]:
    """Return what will be seen on this job while we work."""
    there = present(results)
    return tuple(
        SightRow(
            seen=page.front.title,
            that_day=filled(page.markdown, results),
            later=page.front.later,
            speak_up=page.front.speak_up,
        )
        for page in results.content.sights.values()
        if there & set(page.front.applies)
    )
