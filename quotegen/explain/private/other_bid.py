"""What the phone sheet says of another bid: sums at a look, questions, what is in ours alone.

Only what the core knows is said, and nothing of how they work.
"""

from collections.abc import Iterator

from quotegen.explain.private.bid_words import (
    bid_name,
    money_of,
    names_of,
    number_row,
    number_text,
    numbers_of,
    title_of,
)
from quotegen.explain.private.owners_sheet import Section, Sums, Table, TableRow, table
from quotegen.explain.private.why_low import why_low
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.money import Money
from quotegen.pricing.costs.bid_items import BidItem
from quotegen.pricing.costs.bids import BidComparison
from quotegen.reading.files.other_bids import Says
from quotegen.reading.files.rate_book import FINISH

MOST_ASKED = 7
"""How many scope items are asked about on the phone; the sheet to compare bids asks of all."""
_FIRST_ASKED = (FINISH, "base", "slab", "reinforcement", "joints", "sealing")
"""What a price for several items mostly goes into: asked by all of that price, in this order."""


def bid_sums(results: Results, bid: BidComparison) -> Sums:
    """Their price, ours, the gap and its parts; below them the finish, where it may be another."""
    words = results.words
    return Sums(
        title=words("phone_bid", bid=bid_name(bid)),
        rows=tuple(_sum_rows(results, bid)),
        verdict=tuple(_which_finish(words, bid)),
    )


def _which_finish(words: Words, bid: BidComparison) -> Iterator[str]:
    if bid.nearer:
        yield words(
            "phone_which_finish",
            finish=bid.finish_name,
            ours=words.money(bid.ours),
            nearer=bid.nearer.name,
            other=words.money(bid.nearer.total),
        )


def _sum_rows(results: Results, bid: BidComparison) -> Iterator[TableRow]:
    """A row for each sum; the parts are signed so that they add up to the gap above them."""
    words = results.words
    other = bid.finish != results.job.finish
    finish = words("phone_sum_at_finish", finish=bid.finish_name) if other else ""
    parts = tuple(_parts(bid))
    direction = "higher" if bid.gap > 0 else "lower" if bid.gap < 0 else "same"
    gap = f"same_work_{direction}" if bid.same_work else direction
    yield _sum(words, "theirs", bid.theirs, note=bid.note)
    yield _sum(words, "ours", bid.ours, note=finish)
    yield _sum(words, gap, Money(abs(bid.gap)), strong=not parts)
    for key, amount in parts:
        yield _sum(words, key, amount)
    if parts:
        rest = _toward(bid, bid.remains)
        yield _sum(words, "remains" if rest >= 0 else "beyond", rest, strong=True)


def _parts(bid: BidComparison) -> Iterator[tuple[str, Money]]:
    """The parts that have money, each with the key of its words; none of a mere total."""
    if bid.states_nothing:
        return
    numbers = "numbers_less" if bid.at_their_numbers > 0 else "numbers_more"
    parts = {
        "left_out" if bid.left_out_known else "left_out_some": bid.left_out,
        "not_stated" if bid.not_stated_known else "not_stated_some": bid.not_stated,
        numbers: bid.at_their_numbers,
        "extras": bid.for_their_extras,
        "discount": bid.discount,
    }
    for key, amount in parts.items():
        if amount:
            yield key, _toward(bid, amount)


def _toward(bid: BidComparison, part: Money) -> Money:
    """A part of the gap with the sign that makes the parts add up to its size."""
    return Money(-part) if bid.gap < 0 else part


def _sum(
    words: Words, key: str, amount: Money, *, note: str = "", strong: bool = False
) -> TableRow:
    shown = words.money(amount) if amount >= 0 else words.signed_money(amount)
    return TableRow(name=words(f"phone_sum_{key}"), cells=(shown,), note=note, strong=strong)


def bid_sections(results: Results, bid: BidComparison) -> tuple[Section, ...]:
    """The sections on one bid, in the order in which a call needs them."""
    words, name = results.words, bid_name(bid)
    questions = tuple(_questions(results, bid))
    return (
        Section(id=f"{bid.id}-ask", title=words("phone_ask", bid=name),
                lines=(words(_opening(bid)), *_more_questions(results, bid)) if questions else (),
                table=table(words, ("phone_ask_what", "phone_ask_price"), questions)),
        Section(id=f"{bid.id}-ours", title=words("phone_in_ours", bid=name),
                points=tuple(_spoken(results, bid)), table=_in_ours(results, bid)),
        *why_low(results, bid),
    )  # fmt: skip


def _opening(bid: BidComparison) -> str:
    if bid.states_nothing:
        return "phone_ask_all"
    return "phone_ask_lower" if bid.gap < 0 else "phone_ask_them"


def _questions(results: Results, bid: BidComparison) -> Iterator[TableRow]:
    """What to ask, one question a row: by money, then numbers, then what only they have."""
    words, scope = results.words, results.content.scope
    shared: set[Money] = set()
    for item in _open(results, bid)[:MOST_ASKED]:
        price = _in_our_price(words, item, named=item.at_most in shared)
        yield TableRow(name=scope[item.item].front.ask, cells=(price,))
        if item.amount is None:
            shared.add(item.at_most)
    included = {item.item for item in bid.that(Says.INCLUDED)}
    for number in bid.numbers:
        if number.theirs is None and number.item in included:
            ours = number_text(words, number.ours)
            yield TableRow(name=words(f"phone_ask_{number.key}", ours=ours), cells=("",))
    for one in bid.only_theirs:
        title = scope[one].front.title
        yield TableRow(
            name=words("phone_ask_only_theirs", names=title),
            note=words("phone_ask_unpriced", names=title) if one in bid.unpriced else "",
            cells=(words("phone_ask_not_ours"),),
        )


def _more_questions(results: Results, bid: BidComparison) -> Iterator[str]:
    more = len(_open(results, bid)) - MOST_ASKED
    if more > 0:
        yield results.words.count("phone_ask_more", more)


def _open(results: Results, bid: BidComparison) -> tuple[BidItem, ...]:
    """What they do not state; the finish only where it is not asked about before all else."""
    unstated = bid.that(Says.NOT_STATED)
    return _in_order(
        results, tuple(one for one in unstated if not (bid.nearer and one.item == FINISH))
    )


def _in_order(results: Results, items: tuple[BidItem, ...]) -> tuple[BidItem, ...]:
    """By money; of a shared price what it mostly goes into counts as all of it, the rest last."""
    pages = (*_FIRST_ASKED, *results.content.scope)

    def place(one: BidItem) -> tuple[Money, int]:
        weight = one.at_most if one.item in _FIRST_ASKED else one.at_least
        return Money(-weight), pages.index(one.item)

    return tuple(sorted(items, key=place))


def _in_our_price(words: Words, item: BidItem, *, named: bool) -> str:
    """What an item is in our price; a price for several is named once, and never split."""
    if item.amount is not None:
        return words.money(item.amount)
    if item.at_least:
        return words("phone_at_least", amount=words.money(item.at_least))
    return words("phone_part_of_same" if named else "phone_part_of",
                 amount=words.money(item.at_most))  # fmt: skip


def _in_ours(results: Results, bid: BidComparison) -> Table:
    """What is in ours and not in theirs, item by item, at our prices."""
    words = results.words
    left_out = (
        TableRow(name=title_of(results, item), cells=(money_of(words, item.amount),))
        for item in _in_order(results, bid.that(Says.NOT_INCLUDED))
    )
    numbers = (number_row(words, number, number.saves) for number in bid.less_numbers)
    return table(words, ("phone_in_ours_what", "phone_ask_price"), (*left_out, *numbers))


def _spoken(results: Results, bid: BidComparison) -> Iterator[str]:
    """What to say of it: what they leave out, and what they told us in numbers."""
    words = results.words
    if out := _in_order(results, bid.that(Says.NOT_INCLUDED)):
        known = tuple(item for item in out if item.amount)
        yield words(
            "phone_say_left_out" if bid.left_out_known
            else "phone_say_left_out_some" if known
            else "phone_say_left_out_only",
            names=names_of(results, out),
            known=names_of(results, known),
            amount=words.money(bid.left_out),
        )  # fmt: skip
    if less := bid.less_numbers:
        priced = tuple(number for number in less if number.saves)
        yield words(
            "phone_say_less" if len(priced) == len(less)
            else "phone_say_less_some" if priced
            else "phone_say_less_only",
            numbers=numbers_of(words, less),
            amount=words.money(bid.saved_at_less),
        )  # fmt: skip
