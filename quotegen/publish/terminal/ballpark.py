"""The ballpark of a first visit as text, for the screen and to keep in the truck."""

from collections.abc import Iterator
from fractions import Fraction

from quotegen.explain.wording import Words
from quotegen.pricing.quoted.ballpark import Ballpark
from quotegen.quantity import Unit
from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.records import JobSpec
from quotegen.trade.rules import RuleBook


def ballpark_text(job: JobSpec, ballpark: Ballpark, rules: RuleBook, words: Words) -> str:
    """Write the ballpark: low and high for each finish, and all that it assumes."""
    return "\n".join(_lines(job, ballpark, rules, words)) + "\n"


def _lines(job: JobSpec, ballpark: Ballpark, rules: RuleBook, words: Words) -> Iterator[str]:
    paced, least, most = (
        words.quantity(area, job.units.area_unit)
        for area in (ballpark.paced, ballpark.least, ballpark.most)
    )
    on = job.quote_date
    spread, step = (rules.rule(rule) for rule in ("paced_side_spread", "rough_price_step"))
    dollars = words.money(rules.number(step.rule_id, on))
    placement = job.placements[0]
    yield f"Ballpark: {placement.use.value}, about {paced}"
    yield f"Each side as paced may be off by {rules.text(spread.rule_id, on)} ({spread.sure}): "
    yield f"  {least} to {most}."
    yield ""
    width = max(len(row.name) for row in ballpark.rows)
    for row in ballpark.rows:
        asked = "  <- asked" if row.finish == job.finish else ""
        yield (
            f"  {row.name:<{width}}  {words.money(row.low):>11} to "
            f"{words.money(row.high):>11}{asked}"
        )
    yield ""
    yield "It assumes:"
    yield f"  a plain rectangle with {words.depth(placement.thickness)} of concrete on"
    yield f"  {words.depth(placement.base)} of base, as is usual for a {placement.use.value};"
    steel = job.rate_book.reinforcement[placement.reinforcement].name
    yield f"  {steel};"
    yield "  every edge formed, none along a house; access for the truck; firm ground;"
    yield f"  the rate book that holds from {job.rate_book.valid_from}; {_season(ballpark)};"
    yield f"  low is rounded down and high up to whole {dollars} ({step.sure})."
    yield "In it:"
    yield from (f"  {name}" for name in ballpark.covers)
    yield "Not in it; add what you see:"
    yield from (f"  {name}: {_price(words, rate)}" for name, rate in ballpark.adds)
    yield ""
    yield "A rough range and no offer. The price follows from the tape, in writing."


def _season(ballpark: Ballpark) -> str:
    if ballpark.begins is None:
        return "no seasonal line, since no day was given"
    return f"seasonal lines of {ballpark.begins}"


def _price(words: Words, price: Rate | Fraction) -> str:
    if isinstance(price, Fraction):
        return words.exact_percent(price)
    if price.unit is Unit.LUMP:
        return words.money(price.amount)
    return words.rate(price.amount, price.unit)
