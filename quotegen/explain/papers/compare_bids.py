"""The sheet for comparing bids: what to ask every bidder. It names nobody but us."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from quotegen.explain.results import Results
from quotegen.explain.sheets.covers import in_a_dozen_words
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.past_jobs import shown_references
from quotegen.explain.sheets.price_sheet import payment_share
from quotegen.explain.sheets.responsibilities import excluded_rows
from quotegen.explain.sheets.views import PaperHead
from quotegen.explain.words.days import joints_made
from quotegen.explain.words.numbers import (
    curing_way,
    depths,
    edge_length,
    joint_spacing,
    reseal,
    sealer_coats,
)
from quotegen.explain.words.prose import sentence
from quotegen.explain.words.rule_words import rule_text
from quotegen.quantity import Length, Unit
from quotegen.reading.files.job import Responsibility
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import PlacementSpec
from quotegen.reading.references import WEAR_FROM_YEARS
from quotegen.trade import joints, opening


@dataclass(frozen=True, slots=True, kw_only=True)
class CompareRow:
    """A question on the sheet for comparing bids: what to ask, and our answer."""

    title: str
    ours: str
    ask: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CompareView:
    """The sheet for comparing bids: our scope filled in, room for others."""

    head: PaperHead
    rows: tuple[CompareRow, ...]
    total: str


def answer(results: Results, item: str) -> str:
    """Our quote's answer to the question about a scope item."""
    if item in _ANSWERS:
        return _ANSWERS[item](results)
    return in_a_dozen_words(item, results) or _page_short(results, item)


def _layout(results: Results) -> str:
    return results.words("answer_layout")


def _dig_out(results: Results) -> str:
    return results.words(
        "answer_dig_out",
        depth=depths(results, "dig_out", lambda p: p.dig_depth),
        names=_names(results, "dig_out"),
    )


def _forms(results: Results) -> str:
    return results.words("answer_forms", length=_edge(results, "forms", EdgeKind.FORMED))


def _isolation(results: Results) -> str:
    return results.words(
        "answer_isolation",
        width=rule_text(results, "isolation_joint_width"),
        length=_edge(results, "isolation", EdgeKind.ISOLATED),
    )


def _joints(results: Results) -> str:
    on, rules, placements = results.job.quote_date, results.rules, results.placements_with("joints")

    def depth(placement: PlacementSpec) -> str:
        inches = joints.saw_depth_in(placement.thickness.inches, rules, on)
        return results.words.depth(Length.of_inches(inches))

    return results.words(
        "answer_joints",
        spacing=results.by_placement({p.id: joint_spacing(results, p) for p in placements}),
        depth=results.by_placement({p.id: depth(p) for p in placements}),
        made=joints_made(results, placements),
    )


def _placing(results: Results) -> str:
    """The method of access if a line is for it alone, else what the job says of access."""
    method = in_a_dozen_words("placing", results)
    if not method and results.job.access:
        method = results.job.access.note
    return results.words("answer_in_price", what=method or _page_short(results, "placing"))


def _finish(results: Results) -> str:
    """Surface and color, and the age of the oldest past job that shows them."""
    job, words = results.job, results.words
    finishes = {p.id: job.finish_of(p, job.finish)[1] for p in job.placements}
    surface = results.by_placement(
        {
            place: words("answer_finish", finish=one.name, color=one.color or words("answer_plain"))
            for place, one in finishes.items()
        }
    )
    kinds = {one.kind for one in finishes.values()}
    ages = [one.years for one in shown_references(results) if one.finish in kinds]
    if ages and max(ages) >= WEAR_FROM_YEARS:
        surface = words.count("answer_seen", max(ages), surface=surface)
    return surface


def _cast_edge(results: Results) -> str:
    return results.words(
        "answer_cast_edge",
        length=_edge(results, "cast_edge", EdgeKind.POOL),
        names=_names(results, "cast_edge"),
    )


def _curing(results: Results) -> str:
    words = results.words
    days = words.count("days_about", opening.cure_days(results.rules, results.job.quote_date))
    return words("answer_curing", what=sentence(curing_way(results)).removesuffix("."), days=days)


def _sealing(results: Results) -> str:
    job, words = results.job, results.words
    coats = {}
    for placement in results.placements_with("sealing"):
        finish = job.finish_of(placement, job.finish)[1]
        coats[placement.id] = words(
            "answer_sealing",
            kind=words(f"sealer_{finish.sealer.value}"),
            coats=sealer_coats(results, finish),
            lasts=reseal(results, finish.sealer, placement.use),
        )
    return words("answer_in_price", what=results.by_placement(coats))


def _steps(results: Results) -> str:
    words = results.words
    steps = _counted(results, "steps")
    risers = [r for p in results.job.placements if p.typed.steps for r in p.typed.steps.risers]
    if risers:
        heights = tuple(dict.fromkeys(words.depth(riser) for riser in risers))
        steps = words("answer_steps", steps=steps, heights=words.listing(heights))
    return steps


def _travel(results: Results) -> str:
    return results.words.count("answer_travel", results.quote.chosen.visits)


def _we_do(item: str) -> Callable[[Results], str]:
    return lambda results: results.words("answer_we_do", what=_names(results, item))


def _in_price(item: str) -> Callable[[Results], str]:
    return lambda results: results.words("answer_in_price", what=_counted(results, item))


def _counted(results: Results, item: str) -> str:
    """The lines of an item with their quantities."""
    counted = results.words.joined(tuple(_with_quantity(results, item)))
    return counted or _page_short(results, item)


def _with_quantity(results: Results, item: str) -> Iterator[str]:
    for line in results.lines_named_for(item):
        if line.unit is Unit.LUMP:
            yield line.name
        else:
            quantity = results.words.quantity(line.quantity, line.unit)
            yield results.words("compare_number", name=line.name, text=quantity)


def _names(results: Results, item: str) -> str:
    """The names of an item's own lines; what its page says where another line pays for it."""
    lines = dict.fromkeys(line.name for line in results.lines_named_for(item))
    return results.words.joined(tuple(lines)) or _page_short(results, item)


def _page_short(results: Results, item: str) -> str:
    return results.content.scope[item].front.short


def _edge(results: Results, item: str, edge: EdgeKind) -> str:
    return results.by_placement(
        {p.id: edge_length(results, p.id, edge) for p in results.placements_with(item)}
    )


_ANSWERS: Mapping[str, Callable[[Results], str]] = {
    "layout": _layout,
    "dig_out": _dig_out,
    "forms": _forms,
    "isolation": _isolation,
    "joints": _joints,
    "placing": _placing,
    "finish": _finish,
    "cast_edge": _cast_edge,
    "curing": _curing,
    "sealing": _sealing,
    "steps": _steps,
    "travel": _travel,
    "protection": _we_do("protection"),
    "cleanup": _we_do("cleanup"),
    "permits": _we_do("permits"),
    "private_lines": _we_do("private_lines"),
    "demolition": _in_price("demolition"),
    "drain": _in_price("drain"),
    "wash": _in_price("wash"),
}


def compare_sheet(results: Results) -> CompareView:
    """Build the sheet from our own scope alone; it is given no other bid."""
    job, words = results.job, results.words
    title = words("compare_title", title=job.title, site=job.site.address)
    return CompareView(
        head=paper_head(results, title, job.quote_date),
        rows=(
            *(_row(results, item) for item in results.scope_items() if item != "minimum"),
            *_terms(results),
        ),
        total=words.money(results.quote.chosen.total),
    )


def _row(results: Results, item: str) -> CompareRow:
    page = results.content.scope[item].front
    return CompareRow(title=page.title, ours=answer(results, item), ask=page.ask)


def _terms(results: Results) -> Iterator[CompareRow]:
    """What is asked of every bid beside its work: payments, warranty, insurance, permit."""
    job, words = results.job, results.words
    insurance = job.company.insurance
    permit = (row.text for row in excluded_rows(results) if row.mark == Responsibility.PERMITS)
    answers = {
        "payments": words.listing(
            tuple(payment_share(results, one) for one in results.quote.payments)
        ),
        "warranty": sentence(job.company.warranty),
        "insurance": insurance.covers if insurance else "",
        "permit": next(permit, ""),
    }
    for name, ours in answers.items():
        if ours:
            title, ask = words(f"compare_{name}"), words(f"compare_{name}_ask")
            yield CompareRow(title=title, ours=ours, ask=ask)
