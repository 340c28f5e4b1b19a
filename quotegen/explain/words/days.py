"""What the days of a job say in words: parts of a pour, when joints are cut and sealer goes on."""

from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.explain.words.rule_words import rule_text
from quotegen.reading.files.rate_book import POUR, SAW, SEAL, Joints
from quotegen.reading.records import PlacementSpec
from quotegen.schedule.visits import Visit


def visit_name(words: Words, visit: Visit) -> str:
    """The name of a visit as the book has it, with its part where the slab is poured in parts."""
    if visit.parts == 1:
        return visit.name
    return words("visit_part", name=visit.name, part=str(visit.part), parts=str(visit.parts))


def visit_said(words: Words, visit: Visit) -> str:
    """The name of a visit, and why it is later than it could be."""
    name = visit_name(words, visit)
    return words("visit_held", name=name) if visit.held_for_saw else name


def joints_made(results: Results, placements: tuple[PlacementSpec, ...]) -> str:
    """How and when the joints of placements are made, from the visits of the chosen finish."""
    job = results.job
    return results.by_placement(
        {
            p.id: results.words("joints_tooled")
            if job.finish_of(p, job.finish)[1].joints is Joints.TOOLED
            else _sawn(results)
            for p in placements
        }
    )


def _sawn(results: Results) -> str:
    words, days = results.words, _days_between(results, POUR, SAW)
    if days is None:
        return words("joints_sawn_same_day", window=rule_text(results, "saw_window"))
    return words.count("joints_sawn_days", days)


def sealed_when(results: Results) -> str:
    """How long after the pour the sealer goes on, and the day; empty where no visit is for it."""
    days = _days_between(results, POUR, SEAL)
    if days is None:
        return ""
    day = next(visit.first_day for visit in results.chosen_visits if visit.visit == SEAL)
    return results.words.count("sealed_days", days, day=results.words.weekday(day))


def _days_between(results: Results, before: str, after: str) -> int | None:
    """The days from the last day of one visit to the first of another that comes later."""
    visits = results.chosen_visits
    ended = next((v.last_day for v in reversed(visits) if v.visit == before), None)
    begun = next((v.first_day for v in visits if v.visit == after), None)
    return (begun - ended).days if ended and begun and begun > ended else None
