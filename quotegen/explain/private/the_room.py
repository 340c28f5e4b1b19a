"""The room of the phone sheet: how far the price can go, and what less work saves."""

from collections.abc import Iterator

from quotegen.explain.private.bid_words import bid_name
from quotegen.explain.private.floor_words import (
    floor_lines,
    floor_verdict,
    floors_hold,
    what_if_table,
)
from quotegen.explain.private.owners_sheet import Folded, Section, with_content
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.pricing.costs.bids import BidComparison
from quotegen.pricing.costs.owner import OwnersFigures
from quotegen.pricing.costs.records import CostKind, FinishCosts

_HOUR_PLACES = 1


def the_room(results: Results, owner: OwnersFigures) -> Folded:
    """Build what stays folded; without typed costs it has prices alone, and says why."""
    words, typed = results.words, owner.job.costs is not None
    savings = what_if_table(words, owner.savings, with_margin=typed)
    sections = (
        Section(id="walk-away", title=words("phone_walk_away"),
                points=tuple(_walk_away(results, owner))),
        Section(id="savings", title=words("phone_savings"), lines=(words("phone_savings_about"),),
                points=tuple(_phases(words, owner, typed=typed)), table=savings),
        Section(id="discounts", title=words("phone_discounts"),
                lines=(words("phone_discounts_about"),),
                table=what_if_table(words, owner.discounts, of="phone_discount")),
    )  # fmt: skip
    shown = sections if typed else tuple(one for one in sections if one.id == "savings")
    lines = () if typed else (words("phone_no_costs"),)
    return Folded(
        id="room", title=words("phone_room"), lines=lines, sections=with_content(shown)
    )  # fmt: skip


def _walk_away(results: Results, owner: OwnersFigures) -> Iterator[str]:
    words, costs = results.words, owner.chosen
    for bid in owner.bids:
        yield from _of_bid(words, bid)
    yield floor_verdict(words, costs)
    yield from floor_lines(words, costs)
    yield words(
        "phone_walk_away_cost",
        cost=words.money(costs.net_price - costs.margin),
        price=words.money(costs.net_price),
    )
    if costs.missing:
        yield words.count("phone_incomplete", len(costs.missing))


def _of_bid(words: Words, bid: BidComparison) -> Iterator[str]:
    """Not to match a bid that is under the floors; to look a price over that is the lower one."""
    costs, name = bid.costs, bid_name(bid)
    if costs is None:
        return
    if bid.under_floors:
        yield words(
            "phone_under_floors" if costs.floors else "phone_under_cost",
            bid=name,
            amount=words.money(bid.under_floors),
            price=words.money(costs.walk_away),
        )
    if bid.under_materials:
        yield words("phone_under_materials", bid=name)
    if bid.gap < 0 and costs.hours:
        yield _look_over(words, name, costs)


def _look_over(words: Words, bid: str, costs: FinishCosts) -> str:
    """What our price rests on, to see whether anything is off."""
    return words(
        "phone_look_over",
        bid=bid,
        hours=words.count("rule_unit_hour", costs.hours,
                          number=words.number(costs.hours, _HOUR_PLACES)),
        days=words.count("rule_unit_day", costs.crew_days),
        materials=words.money(costs.spent_on(CostKind.MATERIAL)),
        margin=words.signed_money(costs.margin),
        share=words.signed_percent(costs.margin_share),
    )  # fmt: skip


def _phases(words: Words, owner: OwnersFigures, *, typed: bool) -> Iterator[str]:
    """The job in two phases; nothing where a half of it is filled up to the small-job minimum."""
    first, both = owner.phases
    least = owner.job.book.minimum
    if least is not None and first.price <= least:
        return
    yield words(
        "phone_phases",
        first=words.money(first.price),
        both=words.money(both.price),
        change=words.signed_money(both.price_change),
    )
    if typed:
        yield words(
            "phone_phases_floor",
            margin=words.signed_money(both.margin),
            floors=floors_hold(words, both),
        )
