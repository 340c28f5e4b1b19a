"""The price ladder of a first visit as text, for the screen and for the truck."""

from collections.abc import Iterator
from decimal import Decimal

from quotegen.explain.wording import Words
from quotegen.pricing.quoted.ballpark import Ladder
from quotegen.quantity import Unit, Units
from quotegen.reading.records import JobSpec
from quotegen.trade.rules import RuleBook


def ladder_text(job: JobSpec, ladder: Ladder, rules: RuleBook, words: Words) -> str:
    """Return the ladder with all that it assumes."""
    return "\n".join(_lines(job, ladder, rules, words)) + "\n"


def _lines(job: JobSpec, ladder: Ladder, rules: RuleBook, words: Words) -> Iterator[str]:
    unit = Unit.SQ_FT if job.units is Units.US else Unit.M2
    paced, least, most = (
        words.quantity(area, unit) for area in (ladder.paced, ladder.least, ladder.most)
    )
    on = job.quote_date
    spread, step = (rules.rule(rule) for rule in ("paced_side_spread", "rough_price_step"))
    dollars = words.money(rules.number(step.rule_id, on))
    placement = job.placements[0]
    yield f"Price ladder: {placement.use.value}, about {paced}"
    yield f"Each side as paced may be off by {rules.text(spread.rule_id, on)} ({spread.sure}): "
    yield f"  {least} to {most}."
    yield ""
    width = max(len(rung.name) for rung in ladder.rungs)
    for rung in ladder.rungs:
        asked = "  <- asked" if rung.finish == job.finish else ""
        yield (
            f"  {rung.name:<{width}}  {words.money(rung.low):>11} to "
            f"{words.money(rung.high):>11}{asked}"
        )
    yield ""
    yield "It assumes:"
    yield f"  a plain rectangle with {words.depth(placement.thickness)} of concrete on"
    yield f"  {words.depth(placement.base)} of base, as is usual for a {placement.use.value};"
    steel = job.rate_book.reinforcement[placement.reinforcement].name
    yield f"  {steel};"
    yield "  every edge formed, none along a house; access for the truck; firm ground;"
    yield f"  the rate book that holds from {job.rate_book.valid_from}; {_season(ladder)};"
    yield f"  low is rounded down and high up to whole {dollars} ({step.sure})."
    yield "In it:"
    yield from (f"  {name}" for name in ladder.covers)
    yield "Not in it; add what you see:"
    yield from (f"  {name}: {_price(words, rate.amount, rate.unit)}" for name, rate in ladder.adds)
    yield ""
    yield "A rough range and no offer. The price follows from the tape, in writing."


def _season(ladder: Ladder) -> str:
    if ladder.begins is None:
        return "no seasonal line, since no day was given"
    return f"seasonal lines of {ladder.begins}"


def _price(words: Words, amount: Decimal, unit: Unit) -> str:
    return words.money(amount) if unit is Unit.LUMP else words.rate(amount, unit)
