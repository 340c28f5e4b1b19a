"""What the phone sheet says of one other bid: sentences, questions, what is missing, numbers."""

from collections.abc import Iterator

from quotegen.explain.private.bid_sums import bid_name, higher_or_lower
from quotegen.explain.private.bid_why_low import number_text, why_low
from quotegen.explain.private.owners_sheet import Section, Table, TableRow
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.money import Money
from quotegen.pricing.costs.bids import BidComparison, BidItem, BidNumber
from quotegen.reading.files.other_bids import Says

NAMED = 3
"""How many scope items a sentence names, the dearest first."""


_OF = {
    "thickness": "slab", "base": "base", "reinforcement": "reinforcement",
    "strength_psi": "slab", "sealer_coats": "sealing",
}  # fmt: skip
"""The scope item whose question asks for a number already."""


def _ours_is(words: Words, more: Money) -> str:
    """Say by how much our price is the higher or the lower one."""
    return words(f"ours_{higher_or_lower(more)}", amount=words.money(abs(more)))


def bid_sections(results: Results, bid: BidComparison) -> tuple[Section, ...]:
    """Return the sections of one bid, in the order in which a call needs them."""
    words, name = results.words, bid_name(bid)
    numbers = tuple(_number(words, number) for number in bid.numbers)
    head = ("phone_number", "phone_ours", "phone_theirs", "phone_number_worth")
    return (
        Section(id=f"{bid.id}-say", title=words("phone_say", bid=name),
                lines=(bid.note,) if bid.note else (), points=tuple(_sentences(results, bid))),
        *why_low(results, bid),
        Section(id=f"{bid.id}-ask", title=words("phone_ask", bid=name),
                lines=(words("phone_ask_about"),), table=_questions(results, bid)),
        Section(id=f"{bid.id}-numbers", title=words("phone_numbers", bid=name),
                table=Table(head=tuple(words(key) for key in head), rows=numbers)),
    )  # fmt: skip


def _sentences(results: Results, bid: BidComparison) -> Iterator[str]:
    """Yield three sentences: thanks and ours, what they leave out, what hangs and what remains."""
    words = results.words
    yield words("phone_say_first", ours=words.money(bid.ours))
    if bid.gap < 0:
        yield words("phone_say_lower")
    left_out, unstated = bid.that(Says.NOT_INCLUDED), bid.that(Says.NOT_STATED)
    if len(unstated) == len(bid.items):
        yield words("phone_say_all_unstated")
        return
    if left_out:
        yield words(
            "phone_say_left_out",
            names=_names(results, left_out),
            left_out=words.money(bid.left_out),
        )
    else:
        yield words("phone_say_nothing_left_out")
    if bid.gap < 0:
        return
    certain = _ours_is(words, bid.remains)
    if unstated:
        yield words(
            "phone_say_unstated",
            names=_names(results, unstated),
            not_stated=words.money(bid.not_stated),
            all_in=_ours_is(words, bid.if_all_in),
            certain=certain,
        )
    else:
        yield words("phone_say_stated", certain=certain)


def _names(results: Results, items: tuple[BidItem, ...]) -> str:
    """Name the dearest of some items in a sentence, and count the others."""
    words = results.words
    names = [_title(results, item) for item in items[:NAMED]]
    others = len(items) - len(names)
    if others:
        names.append(words("phone_others", count=str(others)))
    return words.listing(tuple(name[:1].lower() + name[1:] for name in names))


def _title(results: Results, item: BidItem) -> str:
    scope = results.content.scope
    return results.words.listing(tuple(scope[one].front.title for one in item.scope))


def _questions(results: Results, bid: BidComparison) -> Table:
    """Return what to ask of each item missing or unsaid, most money first, then the rest."""
    words = results.words
    head = ("phone_ask_what", "phone_ask_says", "phone_ask_price")
    rows = (*_of_items(results, bid), *_of_numbers(words, bid), *_of_theirs(results, bid))
    return Table(head=tuple(words(key) for key in head), rows=rows)


def _of_items(results: Results, bid: BidComparison) -> Iterator[TableRow]:
    words, scope = results.words, results.content.scope
    for item in bid.items:
        if item.says is not Says.INCLUDED:
            yield TableRow(
                name=" ".join(scope[one].front.ask for one in item.scope),
                cells=(words(f"says_{item.says.name.lower()}"), words.money(item.amount)),
            )


def _of_numbers(words: Words, bid: BidComparison) -> Iterator[TableRow]:
    """Yield what to ask of a number that they do not say, unless its item is asked for already."""
    missing = {one for item in bid.items if item.says is not Says.INCLUDED for one in item.scope}
    for number in bid.numbers:
        if number.theirs is None and _OF[number.key] not in missing:
            yield TableRow(
                name=words(f"phone_ask_{number.key}", ours=number_text(words, number.ours)),
                cells=(words("says_not_stated"), ""),
            )


def _of_theirs(results: Results, bid: BidComparison) -> Iterator[TableRow]:
    words, scope = results.words, results.content.scope
    for one in bid.only_theirs:
        title = scope[one].front.title
        yield TableRow(
            name=words("phone_ask_only_theirs", names=title),
            note=words("phone_ask_unpriced", names=title) if one in bid.unpriced else "",
            cells=(words("says_included"), words("phone_ask_not_ours")),
        )


def _number(words: Words, number: BidNumber) -> TableRow:
    return TableRow(
        name=words(f"phone_number_{number.key}"),
        cells=(
            number_text(words, number.ours),
            words("says_not_stated")
            if number.theirs is None
            else number_text(words, number.theirs),
            _worth(words, number),
        ),
    )


def _worth(words: Words, number: BidNumber) -> str:
    if number.worth is None:
        return ""
    return words.signed_money(number.worth) if number.worth else words("phone_number_same")
