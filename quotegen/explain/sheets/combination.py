"""A combination of options, seen as a quote of its own: the same sheets are built from it."""

from dataclasses import replace
from types import MappingProxyType

from quotegen.explain.results import Results
from quotegen.explain.words.prose import in_a_sentence
from quotegen.pricing.quoted.adjustment import SHOWN_CHANGES, adjustment_of
from quotegen.pricing.quoted.options import with_alternates
from quotegen.pricing.quoted.payments import payments_of
from quotegen.pricing.quoted.price import by_placement, by_scope
from quotegen.pricing.quoted.records import Combination, PricedFinish
from quotegen.schedule.day_plans import DayPlan


def with_combination(results: Results, chosen: Combination) -> Results:
    """The results as if this combination had been quoted.

    What is worked out for the quote alone stays as it is: the range of the tape, and what single
    options move.
    """
    job = replace(
        with_alternates(results.job, chosen.alternates), finish=chosen.finish, color=chosen.colors
    )
    finish = PricedFinish(
        id=chosen.finish,
        name=combination_name(results, chosen),
        visits=chosen.visits,
        lines=chosen.lines,
        total=chosen.total,
        by_area=chosen.by_area,
        area_price=chosen.area_price,
    )
    quote = replace(
        results.quote,
        finishes=(finish,),
        payments=payments_of(job, chosen.total),
        by_placement=by_placement(chosen.lines),
        by_scope=by_scope(chosen.lines),
        adjustment=adjustment_of(job, results.takeoff, finish, chosen.extras, SHOWN_CHANGES),
    )
    days = day_plan(results, chosen)
    return replace(
        results,
        job=job,
        quote=quote,
        visits=MappingProxyType({chosen.finish: days.visits}),
        openings=days.openings,
        day_plans=(days,),
    )


def day_plan(results: Results, chosen: Combination) -> DayPlan:
    """The days of a combination."""
    finishes = (chosen.finish, chosen.alternates)
    return next(plan for plan in results.day_plans if finishes in plan.choices)


def combination_name(results: Results, chosen: Combination) -> str:
    """What is chosen, such as `Slate; Walk: Broom; clay with charcoal; with trench drain`."""
    words, book = results.words, results.job.rate_book
    names = tuple(in_a_sentence(book.rates[extra].name) for extra in chosen.extras)
    return "; ".join((
        surface_name(results, chosen),
        *((words("combination_extras", names=words.listing(names)),) if names else ()),
    ))  # fmt: skip


def surface_name(results: Results, chosen: Combination) -> str:
    """The finishes and colors that are chosen."""
    colors = (look_name(results, chosen.colors),) if chosen.colors else ()
    return "; ".join((*finish_names(results, chosen.finish, chosen.alternates), *colors))


def finish_names(
    results: Results, finish: str, alternates: tuple[tuple[str, str], ...] = ()
) -> tuple[str, ...]:
    """The finish of the job, and each part for which another is chosen.

    Where every part has its own, that of the job is nowhere and is not named.
    """
    job = with_alternates(results.job, alternates)
    own = tuple((p.id, p.finish) for p in job.placements if p.finish not in {None, finish})
    parts = part_names(results, own)
    if len(parts) == len(job.placements):
        return parts
    return (job.rate_book.finishes[finish].name, *parts)


def part_names(results: Results, finishes: tuple[tuple[str, str], ...]) -> tuple[str, ...]:
    """Each placement with its finish, such as `Walk: Broom`."""
    places = {p.id: p.name for p in results.job.placements}
    named = results.job.rate_book.finishes
    return tuple(
        results.words("alternate_on", placement=places[place], finish=named[finish].name)
        for place, finish in finishes
    )


def agreed_finish(results: Results) -> str:
    """What is quoted: the finish, and each part that has one of its own."""
    name, finish = results.quote.chosen.name, results.job.finish
    alone = name == results.job.rate_book.finishes[finish].name
    return "; ".join(finish_names(results, finish)) if alone else name


def look_name(results: Results, colors: tuple[str, ...]) -> str:
    """The colors of a look, the base first."""
    names = tuple(results.job.rate_book.rates[color].name for color in colors)
    if len(names) == 1:
        return names[0]
    return results.words("color_pair", base=names[0], second=names[1])
