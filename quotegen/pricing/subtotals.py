"""Subtotals: the total in parts, by placement and by scope item. Prices, never costs."""

from quotegen.money import total
from quotegen.pricing.records import Line, Subtotal


def by_placement(lines: tuple[Line, ...]) -> tuple[Subtotal, ...]:
    """Add up the lines of each placement, and last those of the whole job.

    They add up to the total exactly, since every line is in just one of them.
    """
    places = dict.fromkeys(line.placement for line in lines if line.placement is not None)
    parts = [
        _part(place, (), tuple(line for line in lines if line.placement == place))
        for place in places
    ]
    whole_job = tuple(line for line in lines if line.placement is None)
    return (*parts, _part(None, (), whole_job)) if whole_job else tuple(parts)


def by_scope(lines: tuple[Line, ...]) -> tuple[Subtotal, ...]:
    """Add up the lines of each scope item, in the order of the lines.

    A line that pays for several scope items counts once, under the first of them as the rate
    book lists them; the others are named beside it. To split it would make up prices that
    nobody set. So the subtotals add up to the total exactly.
    """
    firsts = dict.fromkeys(line.scope[0] for line in lines)
    parts = []
    for item in firsts:
        its = tuple(line for line in lines if line.scope[0] == item)
        also = tuple(dict.fromkeys(other for line in its for other in line.scope[1:]))
        parts.append(_part(item, tuple(other for other in also if other != item), its))
    return tuple(parts)


def _part(of: str | None, also: tuple[str, ...], lines: tuple[Line, ...]) -> Subtotal:
    return Subtotal(of=of, also=also, amount=total(tuple(line.amount for line in lines)))
