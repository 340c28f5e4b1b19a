"""What to say where our price is the lower one and they ask why: only what the core knows."""

from collections.abc import Iterator

from quotegen.explain.private.cost_rows import floor_verdict
from quotegen.explain.private.owners_sheet import Section, Table, TableRow
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.pricing.costs.bids import BidComparison, BidNumber
from quotegen.pricing.costs.records import CostKind
from quotegen.quantity import Length

_HOUR_PLACES = 1


def why_low(results: Results, bid: BidComparison) -> tuple[Section, ...]:
    """Return what to say to “why are you so low?”; nothing where our price is not the lower one."""
    if bid.gap >= 0:
        return ()
    words = results.words
    rows = tuple(_more(results, bid))
    sums = tuple(_sums(words, bid)) if bid.theirs_more else ()
    head = ("phone_low_more", "phone_low_at")
    return (
        Section(
            id=f"{bid.id}-why-low",
            title=words("phone_low", bid=bid.id.replace("_", " ")),
            lines=tuple(_for_you(words, bid)),
            points=tuple(_sentences(results, bid, rows)),
            table=Table(head=tuple(words(key) for key in head), rows=(*rows, *sums)),
        ),
    )


def _for_you(words: Words, bid: BidComparison) -> Iterator[str]:
    """Say to the owner alone what our price rests on, so that he sees whether anything is off."""
    costs = bid.costs
    if costs is None or not costs.hours:
        return
    yield words(
        "phone_low_for_you",
        hours=words.count("rule_unit_hour", costs.hours,
                          number=words.number(costs.hours, _HOUR_PLACES)),
        days=words.count("rule_unit_day", costs.crew_days),
        materials=words.money(costs.spent_on(CostKind.MATERIAL)),
        margin=words.signed_money(costs.margin),
        share=words.signed_percent(costs.margin_share),
    )  # fmt: skip
    yield floor_verdict(words, costs)


def _sentences(results: Results, bid: BidComparison, rows: tuple[TableRow, ...]) -> Iterator[str]:
    words = results.words
    yield words.count("phone_low_lines", len(results.quote.chosen.lines))
    if not rows:
        yield words("phone_low_nothing")
    elif bid.theirs_more > 0:
        yield words("phone_low_work", amount=words.money(bid.theirs_more))
    if bid.unexplained > 0:
        yield words("phone_low_rest", amount=words.money(bid.unexplained))


def _more(results: Results, bid: BidComparison) -> Iterator[TableRow]:
    """Yield what theirs has more or otherwise, at our price where the book has one."""
    words, scope = results.words, results.content.scope
    priced = {one for extra in bid.extras for one in extra.scope}
    for extra in bid.extras:
        yield TableRow(name=extra.name, cells=(words.signed_money(extra.amount),))
    for one in bid.only_theirs:
        if one not in priced:
            yield TableRow(name=scope[one].front.title, cells=(words("phone_low_no_price"),))
    for number in bid.numbers:
        if number.theirs is not None and number.theirs != number.ours:
            yield TableRow(name=_otherwise(words, number), cells=(_worth(words, number),))


def _otherwise(words: Words, number: BidNumber) -> str:
    return words(
        "phone_low_number",
        name=words(f"phone_number_{number.key}"),
        theirs=number_text(words, number.theirs or ""),
        ours=number_text(words, number.ours),
    )


def _worth(words: Words, number: BidNumber) -> str:
    if number.worth is None:
        return words("phone_low_no_price")
    return words.signed_money(number.worth)


def _sums(words: Words, bid: BidComparison) -> Iterator[TableRow]:
    key = "phone_low_left" if bid.unexplained >= 0 else "phone_low_over"
    for name, amount in (("phone_low_all", bid.theirs_more), (key, abs(bid.unexplained))):
        yield TableRow(name=words(name), cells=(words.money(amount),), strong=True)


def number_text(words: Words, value: Length | int | str) -> str:
    """Write a number of a bid: a depth, a count, or the name of a reinforcement."""
    if isinstance(value, Length):
        return words.depth(value)
    return words.number(value, 0) if isinstance(value, int) else value
