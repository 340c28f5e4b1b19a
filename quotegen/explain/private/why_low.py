"""What to say to “why are you so low?”: one sentence, and what theirs has more."""

from collections.abc import Iterator

from quotegen.explain.private.bid_words import bid_name, listed, number_phrase, number_row
from quotegen.explain.private.owners_sheet import Section, TableRow, table
from quotegen.explain.results import Results
from quotegen.explain.words.prose import in_a_sentence
from quotegen.pricing.costs.bids import BidComparison


def why_low(results: Results, bid: BidComparison) -> tuple[Section, ...]:
    """The section on why we are low; none where our price is not the lower one."""
    if bid.gap >= 0:
        return ()
    words, head = results.words, ("phone_low_more", "phone_ask_price")
    return (
        Section(
            id=f"{bid.id}-why-low",
            title=words("phone_low", bid=bid_name(bid)),
            points=(_sentence(results, bid),),
            table=table(words, head, _beyond_ours(results, bid)),
        ),
    )


def _sentence(results: Results, bid: BidComparison) -> str:
    words, gap = results.words, results.words.money(abs(bid.gap))
    if bid.states_nothing:
        return words.count("phone_low_unstated", len(bid.items), gap=gap)
    if priced := tuple(_priced(results, bid)):
        key = "phone_low_over" if bid.beyond_ours > abs(bid.gap) else "phone_low_priced"
        amount = words.money(bid.beyond_ours)
        return words(key, names=listed(words, priced), amount=amount, gap=gap)
    if unpriced := tuple(_unpriced(results, bid)):
        return words("phone_low_unpriced", names=listed(words, unpriced), gap=gap)
    return words("phone_low_nothing", gap=gap)


def _priced(results: Results, bid: BidComparison) -> Iterator[str]:
    """What theirs has more, as far as our book has a price for it."""
    yield from (in_a_sentence(extra.name) for extra in bid.extras)
    yield from (number_phrase(results.words, one) for one in bid.more_numbers if one.worth)


def _unpriced(results: Results, bid: BidComparison) -> Iterator[str]:
    yield from (in_a_sentence(results.content.scope[one].front.title) for one in _not_extras(bid))
    yield from (number_phrase(results.words, one) for one in bid.more_numbers if not one.worth)


def _not_extras(bid: BidComparison) -> Iterator[str]:
    """What only theirs has and the quote does not offer."""
    offered = {one for extra in bid.extras for one in extra.scope}
    yield from (one for one in bid.only_theirs if one not in offered)


def _beyond_ours(results: Results, bid: BidComparison) -> Iterator[TableRow]:
    """What theirs has on top of ours or has greater, at our price where the book has one."""
    words = results.words
    for extra in bid.extras:
        yield TableRow(name=extra.name, cells=(words.money(extra.amount),))
    for one in _not_extras(bid):
        title = results.content.scope[one].front.title
        yield TableRow(name=title, cells=(words("phone_no_own_price"),))
    for number in bid.more_numbers:
        yield number_row(words, number, number.worth)
