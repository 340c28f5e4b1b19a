"""What moved in a price since a revision of the quote was sent, line by line."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from quotegen.money import ZERO, Money
from quotegen.pricing.quoted.records import PricedQuote
from quotegen.reading.files.ledger_entry import FrozenFinish
from quotegen.reading.ledger.ledger import Issued


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedLine:
    """One line of the price that moved; None where it was not there, or is no longer.

    Attributes:
        placement: its id, None for a line of the whole job.
    """

    name: str
    placement: str | None
    before: Money | None
    after: Money | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SinceIssued:
    """What moved since a revision that was sent on a day.

    Attributes:
        finish_before: the finish that was quoted then, in words; empty where it is the same.
        before, after: the price then and now.
        lines: of the quoted finish that moved.
        others_moved: whether the price of another finish did, or one came or went.
    """

    revision: int
    on: date
    finish_before: str
    before: Money
    after: Money
    lines: tuple[MovedLine, ...]
    others_moved: bool

    @property
    def difference(self) -> Money:
        return Money(self.after - self.before)

    @property
    def is_same(self) -> bool:
        """Whether no figure moved."""
        return not (self.finish_before or self.difference or self.lines or self.others_moved)


def since_issued(issued: Issued, quote: PricedQuote) -> SinceIssued:
    """Hold a price against the one that was sent."""
    before, now = issued.figures.finishes[0], quote.chosen
    same_finish = before.id == now.id
    totals = {one.id: one.total for one in issued.figures.finishes}
    return SinceIssued(
        revision=issued.facts.revision,
        on=issued.facts.on,
        finish_before="" if same_finish else before.name,
        before=Money(before.total),
        after=now.total,
        lines=tuple(_moved(before, quote)) if same_finish else (),
        others_moved=totals != {one.id: one.total for one in quote.finishes},
    )


def _moved(before: FrozenFinish, quote: PricedQuote) -> Iterator[MovedLine]:
    then: Mapping[str, Money] = {line.id: Money(line.amount) for line in before.lines}
    now: Mapping[str, Money] = {line.id: line.amount for line in quote.chosen.lines}
    called = {line.id: (line.name, line.placement) for line in before.lines}
    called |= {line.id: (line.name, line.placement) for line in quote.chosen.lines}
    for line_id, (name, placement) in called.items():
        amounts = then.get(line_id), now.get(line_id)
        if (amounts[0] or ZERO) != (amounts[1] or ZERO):
            yield MovedLine(name=name, placement=placement, before=amounts[0], after=amounts[1])
