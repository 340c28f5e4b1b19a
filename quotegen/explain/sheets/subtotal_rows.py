"""The total in parts, by placement and by what is built, and how it is rounded."""

from quotegen.explain.results import Results
from quotegen.explain.words.line_notes import taxes_of
from quotegen.explain.words.prose import in_a_sentence
from quotegen.explain.words.rows import Row
from quotegen.money import Money, total
from quotegen.pricing.quoted.no_work import AFTER_THE_PRICE
from quotegen.pricing.quoted.records import Subtotal
from quotegen.reading.content.content import ScopeGroup
from quotegen.reading.files.company import Show, TaxRounding


def placement_rows(results: Results) -> tuple[Row, ...]:
    """The subtotal of each placement, and of what is for the whole job; none in one price."""
    words = results.words
    if results.job.company.show is Show.ONE_PRICE:
        return ()
    names = {p.id: p.name for p in results.job.placements}
    return tuple(
        Row(
            name=names[part.of] if part.of else words("subtotal_whole_job"),
            text="",
            amount=words.money(part.amount),
        )
        for part in results.quote.by_placement
    )


def scope_rows(results: Results) -> tuple[Row, ...]:
    """The subtotal of each scope item with what else the same lines pay for, or of each group."""
    show = results.job.company.show
    if show is Show.GROUPS:
        return _group_rows(results)
    return tuple(_scope_row(results, part) for part in results.quote.by_scope if show is Show.LINES)


def _group_rows(results: Results) -> tuple[Row, ...]:
    """The subtotal of each group of work, then what follows the price, such as a tax.

    Lines that pay for several groups stand under all their names.
    """
    words, every = results.words, results.quote.by_scope
    amounts: dict[tuple[ScopeGroup, ...], list[Money]] = {}
    for part in every:
        if part.of not in AFTER_THE_PRICE:
            amounts.setdefault(_groups(results, part), []).append(part.amount)
    order = tuple(ScopeGroup)
    groups = sorted(amounts, key=lambda some: tuple(map(order.index, some)))
    return (
        *(
            Row(
                name=_group_names(results, some),
                text="",
                amount=words.money(total(tuple(amounts[some]))),
            )
            for some in groups
        ),
        *(_scope_row(results, part) for part in every if part.of in AFTER_THE_PRICE),
    )


def _groups(results: Results, part: Subtotal) -> tuple[ScopeGroup, ...]:
    scope = results.content.scope
    covered = {scope[item].front.group for item in (part.of or "", *part.also)}
    return tuple(one for one in ScopeGroup if one in covered)


def _group_names(results: Results, groups: tuple[ScopeGroup, ...]) -> str:
    first, *others = (results.words(f"group_{one.value}") for one in groups)
    return results.words.listing((first, *map(in_a_sentence, others)))


def rounding_sentence(results: Results) -> str:
    """How the figures are rounded; taxes by the rule that the company chose."""
    words = results.words
    sentences = [words("rounding_lines", area=words.area_step())]
    rules = {tax.round for tax in taxes_of(results)}
    if TaxRounding.EACH_LINE in rules:
        sentences.append(words("rounding_tax_by_line"))
    if TaxRounding.WHOLE_INVOICE in rules:
        sentences.append(words("rounding_tax_once"))
    step = results.job.company.round_total_to
    if step is not None:
        sentences.append(words("rounding_total", step=words.money(step)))
    return " ".join((*sentences, words("rounding_payments")))


def _scope_row(results: Results, part: Subtotal) -> Row:
    words = results.words
    shown = results.scope_items()
    titles = (_title(results, item) for item in part.also if item in shown)
    also = tuple(map(in_a_sentence, titles))
    return Row(
        name=_title(results, part.of or ""),
        text=words("subtotal_also", names=words.listing(also)) if also else "",
        amount=words.money(part.amount),
    )


def _title(results: Results, item: str) -> str:
    if item in AFTER_THE_PRICE:
        return results.words(f"subtotal_{item}")
    return results.content.scope[item].front.title
