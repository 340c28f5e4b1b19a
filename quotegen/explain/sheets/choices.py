"""What the homeowner may choose, with every text that each choice leads to."""

from collections.abc import Iterator, Mapping

from quotegen.explain.pictures.swatches import look_swatch
from quotegen.explain.results import Results
from quotegen.explain.sheets.agreement_sheet import dates_sentence, payment_rows
from quotegen.explain.sheets.combination import day_plan, look_name, with_combination
from quotegen.explain.sheets.finish_sheet import extras as extra_rows
from quotegen.explain.sheets.option_rows import color_rows
from quotegen.explain.sheets.price_sheet import area_rows, price_sheet
from quotegen.explain.sheets.subtotal_rows import placement_rows, scope_rows
from quotegen.explain.sheets.totals_table import columns_of, note_of, rows_of
from quotegen.explain.sheets.views import (
    ChoiceSheet,
    CombinationTexts,
    Option,
    OptionGroup,
    TextRows,
)
from quotegen.pricing.quoted.records import Combination
from quotegen.reading.records import JobSpec

TEXTS = ("total", "finish", "sentence", "work_dates", "day_plan")
"""The single texts that a choice changes; `day_plan` is the number of its plan of the days."""

ROWS = ("covers", "dates", "payments", "placements", "scopes", "areas")
"""The lists and tables that a choice changes."""


def choice_sheet(results: Results) -> ChoiceSheet:
    """Build the controls and all that they lead to; empty where there is no choice."""
    every = results.quote.combinations
    if len(every) == 1:
        return ChoiceSheet(
            groups=(), extras=(), text_names=(), row_names=(), combinations=(), columns=(),
            totals=(), totals_note="",
        )  # fmt: skip
    extras = tuple(results.job.extras)
    return ChoiceSheet(
        groups=tuple(_groups(results)),
        extras=tuple(_extras(results)),
        text_names=(*TEXTS, *(f"adds.{extra}" for extra in extras)),
        row_names=ROWS,
        combinations=tuple(_texts_of(results, one) for one in every),
        columns=columns_of(results),
        totals=rows_of(results),
        totals_note=note_of(results),
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
    sheet = price_sheet(as_quoted)
    texts = (
        sheet.total,
        sheet.finish,
        sheet.sentence,
        dates_sentence(as_quoted),
        str(results.day_plans.index(day_plan(results, one))),
        *(words.signed_money(amount) for amount in one.adds),
    )
    rows: tuple[TextRows, ...] = (
        tuple((row.name, row.text) for row in sheet.covers),
        tuple((row.name, row.text) for row in sheet.dates),
        tuple((row.mark, row.name, row.text, row.amount) for row in payment_rows(as_quoted)),
        tuple((row.name, row.amount) for row in placement_rows(as_quoted)),
        tuple((row.named, row.amount) for row in scope_rows(as_quoted)),
        tuple((row.name, row.text, row.amount) for row in area_rows(as_quoted)),
    )
    return CombinationTexts(key=key_of(results.job, one), texts=texts, rows=rows)


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
