"""A figure before leaving the site: a paced slab runs through the stages of a job, three times."""

from fractions import Fraction

from quotegen.explain.private.ballpark_sheet import ballpark_sheet
from quotegen.pipeline import Shared, words_of
from quotegen.pricing.quoted.ballpark import ballpark_of
from quotegen.problem import Problem, has_error
from quotegen.publish.ballpark import BallparkPage
from quotegen.publish.web.themes import theme_of
from quotegen.reading.paced_job import Asked, paced_by, paced_job
from quotegen.reading.records import JobSpec
from quotegen.takeoff.measure import measure
from quotegen.takeoff.records import Takeoff
from quotegen.takeoff.remeasure import remeasure
from quotegen.trade.measuring import paced_factors, rough_step


def ballpark_page(asked: Asked, shared: Shared) -> BallparkPage | tuple[Problem, ...]:
    """Return the ballpark of a paced slab, or what is wrong with the files."""
    read = paced_job(asked, frozenset(shared.content.scope))
    if isinstance(read, tuple):
        return read
    if has_error(read.problems):
        return read.problems
    paced, jobs, takeoffs = read.job, list[JobSpec](), list[Takeoff]()
    short, long = paced_factors(shared.rules, paced.quote_date)
    for factor in (short, Fraction(1), long):
        job, counts = paced_by(paced, asked, factor)
        takeoff, problems = (
            remeasure(job, counts, shared.rules) if counts else measure(job, shared.rules)
        )
        if takeoff is None or has_error(problems):
            return problems
        jobs.append(job)
        takeoffs.append(takeoff)
    rough = ballpark_of(
        (jobs[0], jobs[1], jobs[2]),
        (takeoffs[0], takeoffs[1], takeoffs[2]),
        rough_step(shared.rules, paced.quote_date),
        asked.on,
    )
    words = words_of(paced, shared)
    sheet = ballpark_sheet(paced, asked, rough, shared.rules, words)
    return BallparkPage(sheet=sheet, words=words, theme=theme_of(paced), dated=paced.quote_date)
