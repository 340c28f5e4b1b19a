"""What the phone sheet says of another bid: sums at a look, sentences, questions, why we are lower.

Only what the core knows is said, and nothing of how they work.
"""

from collections.abc import Iterator

from quotegen.explain.private.floor_words import floor_verdict
from quotegen.explain.private.owners_sheet import Section, Sums, Table, TableRow, table
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.explain.words.prose import in_a_sentence
from quotegen.money import Money
from quotegen.pricing.costs.bids import BidComparison, BidItem, BidNumber
from quotegen.pricing.costs.records import CostKind
from quotegen.quantity import Length
from quotegen.reading.files.other_bids import Says

_HOUR_PLACES = 1
NAMED = 3
"""How many scope items a sentence names, the dearest first."""

_ASKED_OF = {
    "thickness": "slab", "base": "base", "reinforcement": "reinforcement",
    "strength_psi": "slab", "sealer_coats": "sealing",
}  # fmt: skip
"""The scope item whose own question asks for a number."""


def bid_sums(results: Results, bid: BidComparison) -> Sums:
    """Their price, ours, the gap, its parts, and whether to match it: to take in at a look."""
    return Sums(
        title=results.words("phone_bid", bid=_bid_name(bid)),
        rows=tuple(_sum_rows(results, bid)),
        verdict=tuple(_verdict(results.words, bid)),
    )


def _bid_name(bid: BidComparison) -> str:
    """What the owner calls a bid: its id in the job file."""
    return bid.id.replace("_", " ")


def _higher_or_lower(more: Money) -> str:
    """The key of the words for a difference of our price from theirs."""
    return "higher" if more > 0 else "lower" if more < 0 else "same"


def _sum_rows(results: Results, bid: BidComparison) -> Iterator[TableRow]:
    """A row for each sum; a part that is zero has none."""
    words, parts = results.words, bid.left_out or bid.not_stated
    other = bid.finish != results.job.finish
    finish = words("phone_sum_at_finish", finish=bid.finish_name) if other else ""
    yield _sum(words, "theirs", bid.theirs)
    yield _sum(words, "ours", bid.ours, note=finish)
    yield _sum(words, _higher_or_lower(bid.gap), bid.gap, strong=not parts)
    if bid.left_out:
        yield _sum(words, "left_out", bid.left_out)
    if bid.not_stated:
        yield _sum(words, "not_stated", bid.not_stated)
    if parts:
        yield _sum(words, f"remains_{_higher_or_lower(bid.remains)}", bid.remains, strong=True)


def _sum(
    words: Words, key: str, amount: Money, *, note: str = "", strong: bool = False
) -> TableRow:
    name = words(f"phone_sum_{key}")
    return TableRow(name=name, cells=(words.money(abs(amount)),), note=note, strong=strong)


def _verdict(words: Words, bid: BidComparison) -> Iterator[str]:
    """Where the owner walks away; not to match a bid that is below that."""
    costs = bid.costs
    if costs is not None:
        values = {"amount": words.money(bid.under_floors), "price": words.money(costs.walk_away)}
        if bid.under_floors:
            yield words("phone_under_floors" if costs.floors else "phone_under_cost", **values)
        elif costs.floors:
            yield words("phone_walk_away_below", price=values["price"])
        else:
            yield floor_verdict(words, costs)
    if bid.under_materials:
        yield words("phone_under_materials")


def _ours_is(words: Words, more: Money) -> str:
    """By how much our price is the higher or the lower one."""
    return words(f"ours_{_higher_or_lower(more)}", amount=words.money(abs(more)))


def bid_sections(results: Results, bid: BidComparison) -> tuple[Section, ...]:
    """The sections on one bid, in the order in which a call needs them."""
    words, name = results.words, _bid_name(bid)
    numbers = tuple(_number_row(words, number) for number in bid.numbers)
    head = ("phone_number", "phone_ours", "phone_theirs", "phone_number_worth")
    return (
        Section(id=f"{bid.id}-say", title=words("phone_say", bid=name),
                lines=(bid.note,) if bid.note else (), points=tuple(_sentences(results, bid))),
        *_why_low(results, bid),
        Section(id=f"{bid.id}-ask", title=words("phone_ask", bid=name),
                lines=(words("phone_ask_about"),), table=_questions(results, bid)),
        Section(id=f"{bid.id}-numbers", title=words("phone_numbers", bid=name),
                table=table(words, head, numbers)),
    )  # fmt: skip


def _sentences(results: Results, bid: BidComparison) -> Iterator[str]:
    """Up to three sentences: thanks and our price, what they leave out, what is open or remains."""
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
    """The dearest of some items by name in a sentence, and how many others."""
    words = results.words
    names = [_title(results, item) for item in items[:NAMED]]
    others = len(items) - len(names)
    if others:
        names.append(words("phone_others", count=str(others)))
    return words.listing(tuple(map(in_a_sentence, names)))


def _title(results: Results, item: BidItem) -> str:
    scope = results.content.scope
    return results.words.listing(tuple(scope[one].front.title for one in item.scope))


def _questions(results: Results, bid: BidComparison) -> Table:
    """What to ask: of items that they leave out or do not state, dearest first, then the rest."""
    words = results.words
    head = ("phone_ask_what", "phone_ask_says", "phone_ask_price")
    ours = (*_ask_of_items(results, bid), *_ask_of_numbers(words, bid))
    return table(words, head, (*ours, *_ask_of_theirs(results, bid)))


def _ask_of_items(results: Results, bid: BidComparison) -> Iterator[TableRow]:
    words, scope = results.words, results.content.scope
    for item in bid.items:
        if item.says is not Says.INCLUDED:
            yield TableRow(
                name=" ".join(scope[one].front.ask for one in item.scope),
                cells=(words(f"says_{item.says.name.lower()}"), words.money(item.amount)),
            )


def _ask_of_numbers(words: Words, bid: BidComparison) -> Iterator[TableRow]:
    """What to ask of a number that they do not state, unless its scope item is asked about."""
    missing = {one for item in bid.items if item.says is not Says.INCLUDED for one in item.scope}
    for number in bid.numbers:
        if number.theirs is None and _ASKED_OF[number.key] not in missing:
            yield TableRow(
                name=words(f"phone_ask_{number.key}", ours=_number_text(words, number.ours)),
                cells=(words("says_not_stated"), ""),
            )


def _ask_of_theirs(results: Results, bid: BidComparison) -> Iterator[TableRow]:
    words, scope = results.words, results.content.scope
    for one in bid.only_theirs:
        title = scope[one].front.title
        yield TableRow(
            name=words("phone_ask_only_theirs", names=title),
            note=words("phone_ask_unpriced", names=title) if one in bid.unpriced else "",
            cells=(words("says_included"), words("phone_ask_not_ours")),
        )


def _number_row(words: Words, number: BidNumber) -> TableRow:
    return TableRow(
        name=words(f"phone_number_{number.key}"),
        cells=(
            _number_text(words, number.ours),
            words("says_not_stated")
            if number.theirs is None
            else _number_text(words, number.theirs),
            _worth_of(words, number),
        ),
    )


def _worth_of(words: Words, number: BidNumber) -> str:
    if number.worth is None:
        return ""
    return words.signed_money(number.worth) if number.worth else words("phone_number_same")


def _why_low(results: Results, bid: BidComparison) -> tuple[Section, ...]:
    """What to say to “why are you so low?”; nothing where our price is not the lower one."""
    if bid.gap >= 0:
        return ()
    words = results.words
    rows = tuple(_beyond_ours(results, bid))
    sums = tuple(_sums_of_beyond_ours(words, bid)) if bid.theirs_more else ()
    head = ("phone_low_more", "phone_low_at")
    return (
        Section(
            id=f"{bid.id}-why-low",
            title=words("phone_low", bid=_bid_name(bid)),
            lines=tuple(_for_you(words, bid)),
            points=tuple(_why_low_sentences(results, bid, rows)),
            table=table(words, head, (*rows, *sums)),
        ),
    )


def _for_you(words: Words, bid: BidComparison) -> Iterator[str]:
    """For the owner alone: what our price rests on, to see whether anything is off."""
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


def _why_low_sentences(
    results: Results, bid: BidComparison, rows: tuple[TableRow, ...]
) -> Iterator[str]:
    words = results.words
    yield words.count("phone_low_lines", len(results.quote.chosen.lines))
    if not rows:
        yield words("phone_low_nothing")
    elif bid.theirs_more > 0:
        yield words("phone_low_work", amount=words.money(bid.theirs_more))
    if bid.unexplained > 0:
        yield words("phone_low_rest", amount=words.money(bid.unexplained))


def _beyond_ours(results: Results, bid: BidComparison) -> Iterator[TableRow]:
    """What theirs has on top of ours or has different, at our price where the book has one."""
    words, scope = results.words, results.content.scope
    priced = {one for extra in bid.extras for one in extra.scope}
    for extra in bid.extras:
        yield TableRow(name=extra.name, cells=(words.signed_money(extra.amount),))
    for one in bid.only_theirs:
        if one not in priced:
            yield TableRow(name=scope[one].front.title, cells=(words("phone_low_no_price"),))
    for number in bid.numbers:
        if number.theirs is not None and number.theirs != number.ours:
            yield TableRow(name=_different(words, number), cells=(_worth_to_them(words, number),))


def _different(words: Words, number: BidNumber) -> str:
    return words(
        "phone_low_number",
        name=words(f"phone_number_{number.key}"),
        theirs=_number_text(words, number.theirs or ""),
        ours=_number_text(words, number.ours),
    )


def _worth_to_them(words: Words, number: BidNumber) -> str:
    if number.worth is None:
        return words("phone_low_no_price")
    return words.signed_money(number.worth)


def _sums_of_beyond_ours(words: Words, bid: BidComparison) -> Iterator[TableRow]:
    key = "phone_low_left" if bid.unexplained >= 0 else "phone_low_over"
    for name, amount in (("phone_low_all", bid.theirs_more), (key, abs(bid.unexplained))):
        yield TableRow(name=words(name), cells=(words.money(amount),), strong=True)


def _number_text(words: Words, value: Length | int | str) -> str:
    """A number of a bid: a depth, a count, or the name of a reinforcement."""
    if isinstance(value, Length):
        return words.depth(value)
    return words.number(value, 0) if isinstance(value, int) else value
