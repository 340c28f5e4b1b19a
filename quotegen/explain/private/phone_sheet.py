"""The phone sheet: for the call about another price. For the owner alone."""

from collections.abc import Iterator

from quotegen.explain.private.floor_words import (
    floor_lines,
    floor_verdict,
    floors_hold,
    what_if_table,
)
from quotegen.explain.private.other_bid import bid_sections, bid_sums
from quotegen.explain.private.owners_sheet import OwnersSheet, Section, with_content
from quotegen.explain.results import Results
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.past_jobs import shown_references, why
from quotegen.pricing.costs.owner import OwnersFigures
from quotegen.pricing.costs.records import WhatIf

NEVER_SAID = tuple(f"not_say_{number}" for number in range(1, 7))


def phone_sheet(results: Results, owner: OwnersFigures) -> OwnersSheet:
    """Build the phone sheet; without another bid it has the savings and the walk-away price."""
    job, words, notes = results.job, results.words, owner.job.file.private_notes
    title = words("phone_title", title=job.title, quote=job.quote)
    return OwnersSheet(
        head=paper_head(results, title, job.quote_date),
        lead=() if owner.bids else (words("phone_no_bid"), floor_verdict(words, owner.chosen)),
        sums=tuple(bid_sums(results, bid) for bid in owner.bids),
        facts=((words("cost_notes"), notes),) if notes else (),
        sections=with_content((
            Section(id="walk-away", title=words("phone_walk_away"),
                    points=tuple(_walk_away(results, owner))),
            *(section for bid in owner.bids for section in bid_sections(results, bid)),
            Section(id="answers", title=words("phone_answers"), points=tuple(_answers(results))),
            Section(id="savings", title=words("phone_savings"),
                    lines=(words("phone_savings_about"),),
                    points=_phases(results, owner.phases),
                    table=what_if_table(words, owner.savings)),
            Section(id="discounts", title=words("phone_discounts"),
                    lines=(words("phone_discounts_about"),),
                    table=what_if_table(words, owner.discounts, of="phone_discount")),
            Section(id="references", title=words("phone_references"),
                    points=tuple(_references(results))),
            Section(id="not-say", title=words("phone_not_say"),
                    points=tuple(words(key) for key in NEVER_SAID)),
        )),
    )  # fmt: skip


def _answers(results: Results) -> Iterator[str]:
    """Answers to what else is asked on that call: trips, to match a price, a breakdown."""
    words = results.words
    for line in results.lines_for("travel"):
        yield words(
            "phone_travel",
            amount=words.money(line.amount),
            visits=words.count("visits_counted", results.quote.chosen.visits),
        )
    yield words("phone_match")
    yield words("phone_breakdown")


def _walk_away(results: Results, owner: OwnersFigures) -> Iterator[str]:
    words, costs = results.words, owner.chosen
    yield floor_verdict(words, costs)
    yield from floor_lines(words, costs)
    yield words(
        "phone_walk_away_cost",
        cost=words.money(costs.net_price - costs.margin),
        price=words.money(costs.net_price),
    )
    if costs.missing:
        yield words.count("phone_incomplete", len(costs.missing))


def _phases(results: Results, phases: tuple[WhatIf, WhatIf]) -> tuple[str, ...]:
    words, (first, both) = results.words, phases
    return (
        words(
            "phone_phases",
            first=words.money(first.price),
            both=words.money(both.price),
            change=words.signed_money(both.price_change),
        ),
        words(
            "phone_phases_floor",
            margin=words.signed_money(both.margin),
            floors=floors_hold(words, both),
        ),
    )


def _references(results: Results) -> Iterator[str]:
    words, references = results.words, shown_references(results)
    for reference in references:
        yield words("phone_reference", title=reference.title, why=why(results, reference))
    yield words("phone_reference_ask" if references else "phone_no_references")
