"""What the homeowner may choose, with every text that each choice leads to."""

from collections.abc import Iterator, Mapping

from quotegen.explain.pictures.swatches import look_swatch
from quotegen.explain.results import Results
from quotegen.explain.sheets.agreement_sheet import dates_sentence, reply
from quotegen.explain.sheets.calendar_rows import calendar_rows
from quotegen.explain.sheets.choice_views import (
    ChoiceSheet,
    CombinationTexts,
    Option,
    OptionGroup,
    TextRows,
)
from quotegen.explain.sheets.combination import look_name, with_combination
from quotegen.explain.sheets.covers import cover_rows
from quotegen.explain.sheets.day_sheet import care_lines, safety_lines
from quotegen.explain.sheets.finish_sheet import extra_rows
from quotegen.explain.sheets.money_sheet import line_groups, worked_rows
from quotegen.explain.sheets.option_rows import color_rows
from quotegen.explain.sheets.price_sheet import (
    area_sentence,
    date_rows,
    say_by,
    tax_sentence,
    wish_answer,
)
from quotegen.explain.sheets.slab_sheet import tape_checks
from quotegen.explain.sheets.views import LineGroup
from quotegen.pricing.quoted.records import Combination
from quotegen.reading.records import JobSpec

TEXTS = ("total", "finish", "tax", "say_by", "area", "wish", "work_dates", "ask_subject")
"""The single texts that a choice changes."""

ROWS = ("covers", "dates", "checks", "lines", "worked", "days", "safety", "care")
"""The lists and tables that a choice changes."""


def choice_sheet(results: Results) -> ChoiceSheet:
    """Build the controls and all that they lead to; empty where there is no choice."""
    every = results.quote.combinations
    if len(every) == 1:
        return ChoiceSheet()
    extras = tuple(results.job.extras)
    return ChoiceSheet(
        groups=tuple(_groups(results)),
        extras=tuple(_extras(results)),
        text_names=(*TEXTS, *(f"adds.{extra}" for extra in extras)),
        row_names=ROWS,
        combinations=tuple(_texts_of(results, one) for one in every),
    )


def key_of(job: JobSpec, one: Combination) -> str:
    """The key of a combination on the page, as in `slate,,clay+charcoal,trench_drain`."""
    alternates = dict(one.alternates)
    parts = (
        one.finish,
        *(alternates.get(p.id, "") for p in job.placements if p.alternates),
        *(("+".join(one.colors),) if job.colors else ()),
        "+".join(one.extras),
    )
    return ",".join(parts)


def _texts_of(results: Results, one: Combination) -> CombinationTexts:
    words, as_quoted = results.words, with_combination(results, one)
    texts = (
        words.money(one.total),
        as_quoted.quote.chosen.name,
        tax_sentence(as_quoted),
        say_by(as_quoted),
        area_sentence(as_quoted),
        wish_answer(as_quoted),
        dates_sentence(as_quoted),
        reply(as_quoted, "ask").subject,
        *(words.signed_money(amount) for amount in one.adds),
    )
    return CombinationTexts(key=key_of(results.job, one), texts=texts, rows=_rows_of(as_quoted))


def _rows_of(results: Results) -> tuple[TextRows, ...]:
    return (
        tuple((row.name, row.text) for row in cover_rows(results)),
        tuple((row.name, row.text) for row in date_rows(results)),
        tuple((row.name, row.figure, row.how) for row in tape_checks(results)),
        line_cells(line_groups(results)),
        tuple((row.change, row.area, row.difference, row.total) for row in worked_rows(results)),
        tuple(
            (row.day, *row.lanes, row.we, row.you, row.pay, row.amount)
            for row in calendar_rows(results)
        ),
        tuple((line,) for line in safety_lines(results)),
        tuple((line,) for line in care_lines(results)),
    )


def line_cells(groups: tuple[LineGroup, ...]) -> TextRows:
    """The cells of the table of lines: the group at its first line, its sum at its last."""
    return tuple(
        (
            group.name if number == 0 else "",
            line.name,
            line.pays_for,
            line.quantity,
            line.rate,
            line.amount,
            group.together if number == len(group.lines) - 1 else "",
        )
        for group in groups
        for number, line in enumerate(group.lines)
    )


def _groups(results: Results) -> Iterator[OptionGroup]:
    quoted = results.quote.combinations[0]
    yield OptionGroup(
        id="finish", name=results.words("choose_finish"), options=tuple(_finishes(results))
    )
    for placement in results.job.placements:
        if placement.alternates:
            yield OptionGroup(
                id=f"part.{placement.id}",
                name=results.words("choose_part", placement=placement.name),
                options=tuple(_alternates(results, placement.id, placement.alternates)),
            )
    if results.job.colors:
        looks = dict.fromkeys((quoted.colors, *results.job.colors))
        yield OptionGroup(
            id="color",
            name=results.words("choose_color"),
            options=tuple(_look(results, look) for look in looks),
        )


def _finishes(results: Results) -> Iterator[Option]:
    words, quoted = results.words, results.quote.chosen.id
    for finish in results.quote.finishes:
        yield Option(
            value=finish.id,
            name=finish.name,
            text=words("choose_visits", visits=str(finish.visits)),
            amount=words.money(finish.total),
            chosen=finish.id == quoted,
        )


def _alternates(results: Results, place: str, alternates: tuple[str, ...]) -> Iterator[Option]:
    words, quote, book = results.words, results.quote, results.job.rate_book
    placement = next(p for p in results.job.placements if p.id == place)
    own = placement.finish
    yield Option(
        value="",
        name=book.finishes[own].name if own else words("choose_as_the_job"),
        text="",
        amount=words.money(quote.chosen.total),
        chosen=True,
    )
    for other in quote.alternates:
        if other.placement == place and other.finish in alternates:
            yield Option(
                value=other.finish,
                name=other.name,
                text=words("choose_visits", visits=str(other.visits)),
                amount=words.money(other.total),
                chosen=False,
            )


def _look(results: Results, colors: tuple[str, ...]) -> Option:
    words, quoted = results.words, results.quote.combinations[0]
    totals = _looks_as_quoted(results)
    about = dict(zip((look.colors for look in results.quote.color_choices), color_rows(results),
                     strict=True))  # fmt: skip
    name = look_name(results, colors) if colors else words("choose_own_color")
    return Option(
        value="+".join(colors),
        name=name[:1].upper() + name[1:],
        text=about[colors].text if colors in about else "",
        amount=totals.get(colors, ""),
        chosen=colors == quoted.colors,
        swatch=look_swatch(results, colors) if colors else None,
    )


def _looks_as_quoted(results: Results) -> Mapping[tuple[str, ...], str]:
    """The total of each look that goes with the quoted finishes, without extras."""
    quoted, words = results.quote.combinations[0], results.words
    return {
        one.colors: words.money(one.total)
        for one in results.quote.combinations
        if (one.finish, one.alternates, one.extras) == (quoted.finish, (), ())
    }


def _extras(results: Results) -> Iterator[Option]:
    for extra, row in zip(results.job.extras, extra_rows(results), strict=True):
        yield Option(value=extra, name=row.name, text=row.text, amount=row.amount, chosen=False)
