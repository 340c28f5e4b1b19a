"""The ballpark of a first visit, on one page: for the owner alone, in the truck."""

from collections.abc import Iterator
from fractions import Fraction

from quotegen.explain.private.owners_sheet import OwnersSheet, Section, TableRow, table
from quotegen.explain.sheets.agreement_sheet import company_view
from quotegen.explain.sheets.views import PaperHead
from quotegen.explain.wording import Words
from quotegen.pricing.quoted.ballpark import Ballpark
from quotegen.quantity import Unit
from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.paced_job import Asked
from quotegen.reading.records import JobSpec
from quotegen.trade.rules import RuleBook


def ballpark_sheet(
    job: JobSpec, asked: Asked, ballpark: Ballpark, rules: RuleBook, words: Words
) -> OwnersSheet:
    """Build the sheet: low and high for each finish, and all that it assumes."""
    paced, least, most = (
        words.quantity(area, job.units.area_unit)
        for area in (ballpark.paced, ballpark.least, ballpark.most)
    )
    spread = rules.rule("paced_side_spread")
    title = words("ballpark_title", use=job.placements[0].use.value, area=paced)
    rows = (
        TableRow(name=row.name, cells=(words.money(row.low), words.money(row.high)),
                 strong=row.finish == asked.finish)
        for row in ballpark.rows
    )  # fmt: skip
    adds = (TableRow(name=name, cells=(_price(words, rate),)) for name, rate in ballpark.adds)
    return OwnersSheet(
        head=_head(job, words, title),
        lead=(
            words("ballpark_spread", spread=rules.text(spread.rule_id, job.quote_date),
                  sure=spread.sure, least=least, most=most),
            words("ballpark_no_offer"),
        ),
        facts=(),
        sections=(
            Section(id="prices", title=words("ballpark_prices"),
                    table=table(words, ("ballpark_finish", "ballpark_low", "ballpark_high"), rows)),
            Section(id="assumes", title=words("ballpark_assumes"),
                    points=tuple(_assumed(job, asked, ballpark, rules, words))),
            Section(id="in-it", title=words("ballpark_in_it"),
                    lines=("; ".join(ballpark.covers),)),
            Section(id="not-in-it", title=words("ballpark_not_in_it"),
                    table=table(words, ("ballpark_what", "ballpark_price"), adds)),
        ),
    )  # fmt: skip


def _head(job: JobSpec, words: Words, title: str) -> PaperHead:
    return PaperHead(
        language=words.locale.partition("_")[0],
        title=title,
        accent=job.company.accent,
        paper_size=job.paper.value,
        logo="",
        company=company_view(job.company, words),
        customer=words("ballpark_visit"),
        site="",
        quote=words("ballpark"),
        revision="1",
        draft="",
        date=words.day(job.quote_date),
        holds_until="",
    )


def _assumed(
    job: JobSpec, asked: Asked, ballpark: Ballpark, rules: RuleBook, words: Words
) -> Iterator[str]:
    placement = job.placements[0]
    if asked.edges:
        named = (words("ballpark_edge", edge=edge.value, length=words.feet(length.feet))
                 for edge, length in asked.edges.items())  # fmt: skip
        yield words("ballpark_edges", edges=words.listing(tuple(named)))
    yield words("ballpark_rectangle" if len(asked.sizes) == 1 else "ballpark_square")
    yield words(
        "ballpark_depth",
        thickness=words.depth(placement.thickness),
        base=words.depth(placement.base),
        use=placement.use.value,
        steel=job.rate_book.reinforcement[placement.reinforcement].name,
    )
    yield words("ballpark_site")
    season = (
        words("ballpark_season", day=words.day(ballpark.begins))
        if ballpark.begins
        else words("ballpark_no_season")
    )
    yield words("ballpark_book", day=words.day(job.rate_book.valid_from), season=season)
    step = rules.rule("rough_price_step")
    dollars = words.money(rules.number(step.rule_id, job.quote_date))
    yield words("ballpark_steps", step=dollars, sure=step.sure)


def _price(words: Words, price: Rate | Fraction) -> str:
    if isinstance(price, Fraction):
        return words.exact_percent(price)
    if price.unit is Unit.LUMP:
        return words.money(price.amount)
    return words.rate(price.amount, price.unit)
