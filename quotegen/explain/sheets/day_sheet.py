"""Sheet 5, the days: visits, use, the homeowner's own jobs and payments on one calendar."""

from quotegen.explain.guide.guide import care_pages, safety_pages
from quotegen.explain.pictures.timeline import timeline
from quotegen.explain.results import Results
from quotegen.explain.sheets.calendar_rows import calendar_rows
from quotegen.explain.sheets.combination import part_names
from quotegen.explain.sheets.views import DayPlanView, DaysSheet, DrawingPair
from quotegen.explain.words.prose import short_clause
from quotegen.schedule.day_plans import DayPlan


def day_sheet(results: Results) -> DaysSheet:
    """Build sheet 5; its pictures are those of each different plan of the days."""
    return DaysSheet(
        plans=tuple(
            _plan(results, plan, f"days-{number}") for number, plan in enumerate(results.day_plans)
        ),
        rows=tuple(calendar_rows(results)),
        total=results.words.money(results.quote.chosen.total),
        weather=short_clause("weather", results),
        safety=safety_lines(results),
        care=care_lines(results),
    )


def safety_lines(results: Results) -> tuple[str, ...]:
    """A line for each caution that fits the job; the guide says more."""
    return tuple(page.front.short for page in safety_pages(results))


def care_lines(results: Results) -> tuple[str, ...]:
    """A line for each time of care; the guide and the care card say more."""
    return tuple(page.front.short for page in care_pages(results))


def _plan(results: Results, plan: DayPlan, ident: str) -> DayPlanView:
    names = results.words.either(tuple(_names(results, plan)))
    return DayPlanView(
        name=results.words("days_with", finishes=names),
        picture=DrawingPair(
            wide=timeline(results, plan, ident), narrow=timeline(results, plan, f"{ident}-narrow")
        ),
    )


def _names(results: Results, plan: DayPlan) -> tuple[str, ...]:
    """Name the finishes that lead to a plan: that of the job alone where it decides."""
    finishes = results.job.rate_book.finishes
    return tuple(dict.fromkeys(
        "; ".join(part_names(results, alternates)) or finishes[finish].name
        for finish, alternates in plan.choices
    ))  # fmt: skip
