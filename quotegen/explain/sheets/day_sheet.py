"""Sheet 5, days on site: when we come, and from when the slab may be used."""

from quotegen.explain.pictures.timeline import timeline
from quotegen.explain.results import Results
from quotegen.explain.sheets.combination import part_names
from quotegen.explain.sheets.job_features import features_of
from quotegen.explain.sheets.views import DayPlanView, DaysSheet, SiteObservation
from quotegen.explain.words.prose import filled, html
from quotegen.explain.words.rows import Row
from quotegen.schedule.day_plans import DayPlan


def day_sheet(results: Results) -> DaysSheet:
    """Build sheet 5: each different plan of the days, that of the quote first."""
    return DaysSheet(
        plans=tuple(
            _plan(results, plan, f"days-{number}") for number, plan in enumerate(results.day_plans)
        ),
        weather_html=html(results.content.clauses["weather"].markdown, results),
        site_observations=_site_observations(results),
    )


def _plan(results: Results, plan: DayPlan, ident: str) -> DayPlanView:
    words = results.words
    return DayPlanView(
        name=words("days_with", finishes=words.either(tuple(_names(results, plan)))),
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
    """Name the finishes that lead to a plan: that of the job alone where it decides."""
    finishes = results.job.rate_book.finishes
    return tuple(dict.fromkeys(
        "; ".join(part_names(results, alternates)) or finishes[finish].name
        for finish, alternates in plan.choices
    ))  # fmt: skip


def _site_observations(results: Results) -> tuple[SiteObservation, ...]:
    """What will be seen on this job while we work."""
    features = features_of(results)
    return tuple(
        SiteObservation(
            seen=page.front.title,
            that_day=filled(page.markdown, results),
            later=page.front.later,
            speak_up=page.front.speak_up,
        )
        for page in results.content.site_observations.values()
        if features & set(page.front.applies)
    )
