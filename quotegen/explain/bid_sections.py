"""What the call sheet says of one other bid: sentences, questions, what is missing, numbers."""

from collections.abc import Iterator

from quotegen.explain.results import Results
from quotegen.explain.tables import Section, Table, TableRow
from quotegen.explain.wording import Words
from quotegen.money import Money
from quotegen.pricing.bid_records import BidComparison, BidItem, BidNumber
from quotegen.quantity import Length
from quotegen.spec.other_bids import Says

NAMED = 3
"""How many scope items a sentence names, the dearest first."""


_OF = {
    "thickness": "slab", "base": "base", "reinforcement": "reinforcement",
    "strength_psi": "slab", "sealer_coats": "sealing",
}  # fmt: skip
"""The scope item whose question asks for a number already."""


def gap_line(words: Words, bid: BidComparison) -> str:
    """Say the gap and its three parts in one line."""
    key = "higher" if bid.gap > 0 else "lower" if bid.gap < 0 else "same"
    amounts = {
        "ours": words.money(bid.ours),
        "theirs": words.money(bid.theirs),
        "gap": words.money(abs(bid.gap)),
        "left_out": words.money(bid.left_out),
        "not_stated": words.money(bid.not_stated),
        "certain": _ours_is(words, bid.remains),
    }
    return words(f"call_gap_{key}", bid=_name(bid), **amounts)


def _ours_is(words: Words, more: Money) -> str:
    """Say by how much our price is the higher or the lower one."""
    key = "ours_higher" if more > 0 else "ours_lower" if more < 0 else "ours_same"
    return words(key, amount=words.money(abs(more)))


def bid_sections(results: Results, bid: BidComparison) -> tuple[Section, ...]:
    """Return the sections of one bid, in the order in which a call needs them."""
    words, name = results.words, _name(bid)
    numbers = tuple(_number(words, number) for number in bid.numbers)
    head = ("call_number", "call_ours", "call_theirs", "call_number_worth")
    return (
        Section(id=f"{bid.id}-say", title=words("call_say", bid=name),
                lines=tuple(_before(results, bid)), points=tuple(_sentences(results, bid))),
        Section(id=f"{bid.id}-ask", title=words("call_ask", bid=name),
                points=tuple(_questions(results, bid))),
        Section(id=f"{bid.id}-worth", title=words("call_worth", bid=name),
                lines=(words("call_worth_about"),), table=_worth(results, bid)),
        Section(id=f"{bid.id}-numbers", title=words("call_numbers", bid=name),
                table=Table(head=tuple(words(key) for key in head), rows=numbers)),
    )  # fmt: skip


def _name(bid: BidComparison) -> str:
    return bid.id.replace("_", " ")


def _before(results: Results, bid: BidComparison) -> Iterator[str]:
    """Say what the owner should know before he speaks."""
    words = results.words
    if bid.finish != results.job.finish:
        yield words("call_at_finish", finish=bid.finish_name)
    if bid.under_materials:
        yield words("call_under_materials")
    if bid.under_floors:
        yield words("call_under_floors", amount=words.money(bid.under_floors))
    if bid.note:
        yield bid.note


def _sentences(results: Results, bid: BidComparison) -> Iterator[str]:
    """Yield three sentences: thanks and ours, what they leave out, what hangs and what remains."""
    words = results.words
    yield words("call_say_first", ours=words.money(bid.ours))
    if bid.gap < 0:
        yield words("call_say_lower")
    left_out, unstated = bid.that(Says.NOT_INCLUDED), bid.that(Says.NOT_STATED)
    if len(unstated) == len(bid.items):
        yield words("call_say_all_unstated")
        return
    if left_out:
        yield words(
            "call_say_left_out",
            names=_names(results, left_out),
            left_out=words.money(bid.left_out),
        )
    else:
        yield words("call_say_nothing_left_out")
    if bid.gap < 0:
        return
    certain = _ours_is(words, bid.remains)
    if unstated:
        yield words(
            "call_say_unstated",
            names=_names(results, unstated),
            not_stated=words.money(bid.not_stated),
            all_in=_ours_is(words, bid.if_all_in),
            certain=certain,
        )
    else:
        yield words("call_say_stated", certain=certain)


def _names(results: Results, items: tuple[BidItem, ...]) -> str:
    """Name the dearest of some items in a sentence, and count the others."""
    words = results.words
    names = [_title(results, item) for item in items[:NAMED]]
    others = len(items) - len(names)
    if others:
        names.append(words("call_others", count=str(others)))
    return words.listing(tuple(name[:1].lower() + name[1:] for name in names))


def _title(results: Results, item: BidItem) -> str:
    scope = results.content.scope
    return results.words.listing(tuple(scope[one].front.title for one in item.scope))


def _questions(results: Results, bid: BidComparison) -> Iterator[str]:
    """Yield what to ask of each item that is missing or unsaid, then of numbers, then of more."""
    words, scope = results.words, results.content.scope
    for item in bid.items:
        if item.says is not Says.INCLUDED:
            ask = " ".join(scope[one].front.ask for one in item.scope)
            yield words("call_ask_item", ask=ask, amount=words.money(item.amount))
    missing = {one for item in bid.items if item.says is not Says.INCLUDED for one in item.scope}
    for number in bid.numbers:
        if number.theirs is None and _OF[number.key] not in missing:
            yield words(f"call_ask_{number.key}", ours=_value(words, number.ours))
    for one in bid.only_theirs:
        yield words("call_ask_only_theirs", names=scope[one].front.title)
    for one in bid.unpriced:
        yield words("call_ask_unpriced", names=scope[one].front.title)


def _worth(results: Results, bid: BidComparison) -> Table:
    words = results.words
    head = ("call_worth_item", "call_worth_says", "call_worth_price")
    return Table(
        head=tuple(words(key) for key in head),
        rows=tuple(
            TableRow(
                name=_title(results, item),
                cells=(words(f"says_{item.says.name.lower()}"), words.money(item.amount)),
            )
            for item in bid.items
            if item.says is not Says.INCLUDED
        ),
    )


def _number(words: Words, number: BidNumber) -> TableRow:
    return TableRow(
        name=words(f"call_number_{number.key}"),
        cells=(
            _value(words, number.ours),
            words("says_not_stated") if number.theirs is None else _value(words, number.theirs),
            "" if number.worth is None else words.signed_money(Money(number.worth)),
        ),
    )


def _value(words: Words, value: Length | int | str) -> str:
    if isinstance(value, Length):
        return words.depth(value)
    return words.number(value, 0) if isinstance(value, int) else value
