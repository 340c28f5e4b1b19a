"""The first block of the phone sheet: one other bid against ours, in sums to take in at a look."""

from collections.abc import Iterator

from quotegen.explain.private.cost_rows import floor_verdict
from quotegen.explain.private.owners_sheet import Sums, TableRow
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.money import Money
from quotegen.pricing.costs.bids import BidComparison


def bid_sums(results: Results, bid: BidComparison) -> Sums:
    """Return their price, ours, the gap, its parts, and whether to match it."""
    return Sums(
        title=results.words("phone_bid", bid=bid_name(bid)),
        rows=tuple(_rows(results, bid)),
        verdict=tuple(_verdict(results.words, bid)),
    )


def bid_name(bid: BidComparison) -> str:
    """Return what the owner calls a bid."""
    return bid.id.replace("_", " ")


def higher_or_lower(more: Money) -> str:
    """Return the key of the words for a difference of our price from theirs."""
    return "higher" if more > 0 else "lower" if more < 0 else "same"


def _rows(results: Results, bid: BidComparison) -> Iterator[TableRow]:
    """Yield a row for each sum; a part that is zero has none."""
    words, parts = results.words, bid.left_out or bid.not_stated
    other = bid.finish != results.job.finish
    finish = words("phone_sum_at_finish", finish=bid.finish_name) if other else ""
    yield _row(words, "theirs", bid.theirs)
    yield _row(words, "ours", bid.ours, note=finish)
    yield _row(words, higher_or_lower(bid.gap), bid.gap, strong=not parts)
    if bid.left_out:
        yield _row(words, "left_out", bid.left_out)
    if bid.not_stated:
        yield _row(words, "not_stated", bid.not_stated)
    if parts:
        yield _row(words, f"remains_{higher_or_lower(bid.remains)}", bid.remains, strong=True)


def _row(
    words: Words, key: str, amount: Money, *, note: str = "", strong: bool = False
) -> TableRow:
    name = words(f"phone_sum_{key}")
    return TableRow(name=name, cells=(words.money(abs(amount)),), note=note, strong=strong)


def _verdict(words: Words, bid: BidComparison) -> Iterator[str]:
    """Say where the owner walks away, and of a bid that lies below it that he leaves it alone."""
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
