"""The timeline: all that happens, in the order of the days."""

from quotegen.explain.pictures.timeline import timeline
from tests.explain.drawn import parsed, texts
from tests.explain.pictures.two_finishes import two_finishes


def test_the_timeline_has_all_that_happens():
    """Our visits, the homeowner's jobs and the openings stand on it, in the order of the days."""
    results = two_finishes()
    written = texts(parsed(timeline(results, results.day_plans[0], "days")))
    for visit in results.chosen_visits:
        assert visit.name in written
    for key in ("timeline_lines", "timeline_measure", "timeline_off", "opening_walk"):
        assert results.words(key) in written
    assert written.index("Pour") < written.index(results.words("opening_walk"))
