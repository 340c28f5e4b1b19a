"""The law checklist: what a written contract must carry. For the owner alone; no legal advice."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from quotegen.explain.results import Results
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.views import PaperHead
from quotegen.explain.words.rows import Row
from quotegen.pricing.checks import not_typed
from quotegen.trade.contract_law import ContractLaws, Element, Law
from quotegen.trade.deposits import cap_reference

BY_HAND = frozenset({
    Element.SIGNED_COPY, Element.SUBCONTRACTORS, Element.LIEN_NOTICE, Element.DISPUTES,
    Element.REGULATOR, Element.BLANKS, Element.TYPE_SIZE, Element.AFFILIATIONS,
    Element.NO_EARLY_START,
})  # fmt: skip
"""What the quote does not carry: the owner adds it from the official text."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LawRow:
    """One element: what it is, the clause that asks for it, how sure, and where it stands."""

    what: str
    clause: str
    sure: str
    where: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LawPart:
    """The elements of one law, and where its official text is."""

    name: str
    link: str
    rows: tuple[LawRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LawSheet:
    """The law checklist; `answers` say what is known of deposits and of sales made at home."""

    head: PaperHead
    about: str
    answers: tuple[Row, ...]
    laws: tuple[LawPart, ...]


def law_sheet(results: Results, laws: ContractLaws) -> LawSheet:
    """Build the checklist: the laws of the state, or as advice all that any law asks for."""
    job, words = results.job, results.words
    state, price = job.site.state, results.quote.chosen.total
    found = laws.of(state, price)
    parts = [_part(results, laws, law) for law in found]
    for law in laws.reached(state, price, results.quote.adjustment[-1].total):
        name = words("law_near", law=law.law, over=words.money(law.over))
        parts.append(replace(_part(results, laws, law), name=name))
    if laws.contract_law(state) not in found:
        parts.insert(0, _advice(results, laws))
    title = words("law_title", title=job.title, quote=job.quote)
    return LawSheet(
        head=paper_head(results, title, job.quote_date),
        about=words("law_about", checked=words.day(laws.checked_on)),
        answers=(_deposit_answer(results, laws), _home_sale_answer(results, laws)),
        laws=tuple(parts),
    )


def _deposit_answer(results: Results, laws: ContractLaws) -> Row:
    """Whether the state caps a deposit: the source, that the law read has none, or not known."""
    job, words = results.job, results.words
    state, law = job.site.state, laws.contract_law(job.site.state)
    cap = cap_reference(state or "", results.rules, job.quote_date)
    checked = words.day(laws.checked_on)
    if cap is not None:
        text = words("law_deposit_known", reference=str(cap), checked=checked)
    elif law is not None:
        text = words("law_deposit_none", law=law.law, checked=checked)
    else:
        text = words("law_not_known")
    return Row(name=words("law_deposit"), text=text)


def _home_sale_answer(results: Results, laws: ContractLaws) -> Row:
    """Whether the state has a rule of its own on a sale made at home; the federal one holds."""
    words, found = results.words, laws.home_sale(results.job.site.state)
    checked = words.day(laws.checked_on)
    if found is None:
        text = words("law_at_home_federal", checked=checked)
    else:
        law, demand = found
        sure = words(f"law_sure_{demand.seen.name.lower()}")
        text = words(
            "law_at_home_known", law=law.law, clause=demand.clause, sure=sure, checked=checked
        )
    return Row(name=words("law_at_home"), text=text)


def _part(results: Results, laws: ContractLaws, law: Law) -> LawPart:
    return LawPart(
        name=f"{law.law} ({law.edition})",
        link=law.link,
        rows=tuple(
            LawRow(
                what=_what(results, laws, demand.element),
                clause=demand.clause,
                sure=results.words(f"law_sure_{demand.seen.name.lower()}"),
                where=_where(results, demand.element),
            )
            for demand in law.demands
        ),
    )


def _advice(results: Results, laws: ContractLaws) -> LawPart:
    return LawPart(name=results.words("law_advice"), link="", rows=tuple(_advised(results, laws)))


def _advised(results: Results, laws: ContractLaws) -> Iterator[LawRow]:
    for element in laws.superset():
        where = _where(results, element)
        yield LawRow(what=_what(results, laws, element), clause="", sure="", where=where)


def _what(results: Results, laws: ContractLaws, element: Element) -> str:
    return results.words.labels.get(f"element_{element.value}", laws.meaning(element))


def _where(results: Results, element: Element) -> str:
    if element in not_typed(results.job):
        return results.words("law_missing")
    named = element is Element.SUBCONTRACTORS and results.job.typed.subcontractors
    return results.words("law_by_hand" if element in BY_HAND and not named else "law_on_quote")
