"""The words that the sections on another bid share: names, numbers, money that may be unknown."""

from quotegen.explain.private.owners_sheet import TableRow
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.explain.words.prose import in_a_sentence
from quotegen.money import Money
from quotegen.pricing.costs.bid_items import BidItem
from quotegen.pricing.costs.bid_numbers import BidNumber
from quotegen.pricing.costs.bids import BidComparison
from quotegen.quantity import Length

NAMED = 3
"""How many things a sentence names, the first ones."""


def bid_name(bid: BidComparison) -> str:
    """What the owner calls a bid: its id in the job file."""
    return bid.id.replace("_", " ")


def title_of(results: Results, item: BidItem) -> str:
    """What the page of a scope item calls it."""
    return results.content.scope[item.item].front.title


def names_of(results: Results, items: tuple[BidItem, ...]) -> str:
    """The first of some items by name in a sentence, and how many others."""
    names = tuple(in_a_sentence(title_of(results, item)) for item in items)
    return listed(results.words, names)


def numbers_of(words: Words, numbers: tuple[BidNumber, ...]) -> str:
    """Numbers of theirs in a sentence, each beside ours."""
    return words.listing(tuple(number_phrase(words, number) for number in numbers))


def listed(words: Words, names: tuple[str, ...]) -> str:
    """The first of some names, and how many others."""
    others = len(names) - NAMED
    more = (words("phone_others", count=str(others)),) if others > 0 else ()
    return words.listing((*names[:NAMED], *more))


def number_phrase(words: Words, number: BidNumber) -> str:
    """A number of theirs beside ours, inside a sentence."""
    theirs = number_text(words, number.theirs or "")
    return words(f"phone_their_{number.key}", theirs=theirs, ours=number_text(words, number.ours))


def number_row(words: Words, number: BidNumber, amount: Money | None) -> TableRow:
    """A number of theirs beside ours, and what the difference is worth at our prices."""
    name = words(
        "phone_two_numbers",
        name=words(f"phone_number_{number.key}"),
        theirs=number_text(words, number.theirs or ""),
        ours=number_text(words, number.ours),
    )
    return TableRow(name=name, cells=(money_of(words, amount),))


def money_of(words: Words, amount: Money | None) -> str:
    """An amount, or that it has no price of its own."""
    if amount is None:
        return words("phone_no_own_price")
    return words.money(amount) if amount else words("phone_number_same")


def number_text(words: Words, value: Length | int | str) -> str:
    """A number of a bid: a depth, a count, or the name of a reinforcement."""
    if isinstance(value, Length):
        return words.depth(value)
    return words.number(value, 0) if isinstance(value, int) else value
