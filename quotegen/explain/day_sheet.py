"""Sheet 5, days on site: when we come, and from when the slab may be used."""

from quotegen.explain.prose import html
from quotegen.explain.results import Results
from quotegen.explain.timeline import timeline
from quotegen.explain.views import DayPlanView, DaysSheet, Row
from quotegen.schedule.day_plans import DayPlan


def day_sheet(results: Results) -> DaysSheet:
    """Build sheet 5: each different plan of the days, that of the quote first."""
    return DaysSheet(
        plans=tuple(
            _plan(results, plan, f"days-{number}") for number, plan in enumerate(results.day_plans)
        ),
        weather_html=html(results.content.clauses["weather"].markdown, results),
    )


def _plan(results: Results, plan: DayPlan, ident: str) -> DayPlanView:
    words = results.words
    return DayPlanView(
        name=words("days_with", ways=words.either(tuple(_names(results, plan)))),
        picture=timeline(results, plan, ident),
        visits=tuple(
            Row(name=words.days(visit.first_day, visit.last_day), text=visit.name,
                mark=str(number))
            for number, visit in enumerate(plan.visits, start=1)
        ),
        opening=tuple(
            Row(name=words.weekday(opened.day), text=words(f"opening_{opened.use.value}"))
            for opened in plan.openings
        ),
    )  # fmt: skip


def _names(results: Results, plan: DayPlan) -> tuple[str, ...]:
    """Name the ways that lead to a plan: by the finish alone where that decides it."""
    finishes, places = results.job.rate_book.finishes, results.job.placements
    names = {place.id: place.name for place in places}
    return tuple(dict.fromkeys(
        finishes[finish].name if not alternates else "; ".join((
            finishes[finish].name,
            *(results.words("alternate_on", placement=names[place], finish=finishes[other].name)
              for place, other in alternates),
        ))
        for finish, alternates in plan.ways
    ))  # fmt: skip
