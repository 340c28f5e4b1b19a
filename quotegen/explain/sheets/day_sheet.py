"""Sheet 5, the days: visits, use, the homeowner's own jobs and payments on one calendar."""

from quotegen.explain.guide.guide import care_pages, safety_pages
from quotegen.explain.results import Results
from quotegen.explain.sheets.calendar_rows import calendar_rows, lanes_of
from quotegen.explain.sheets.views import DaysSheet
from quotegen.explain.words.prose import short_clause


def day_sheet(results: Results) -> DaysSheet:
    """Build sheet 5."""
    words = results.words
    return DaysSheet(
        lanes=tuple(words(f"calendar_{lane.value}") for lane in lanes_of(results)),
        key=tuple(words(f"calendar_bar_{lane.value}") for lane in lanes_of(results)),
        rows=tuple(calendar_rows(results)),
        total=words.money(results.quote.chosen.total),
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
