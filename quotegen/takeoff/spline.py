"""The slopes of a cubic spline: curvature runs on from span to span (natural or periodic).

Source: the textbook equations of the cubic spline, in any book on numerical analysis; one
equation of three terms for each point, solved by elimination.
"""

from collections.abc import Sequence


def slopes_at(values: Sequence[float], lengths: Sequence[float], *, closed: bool) -> list[float]:
    """Return the slope at each value.

    Args:
        values: one at each point; a closed spline repeats the first as the last.
        lengths: of the spans between them, above nought.
        closed: whether the end goes on as the start; else the ends are free of bending.
    """
    rises = [(b - a) / h for a, b, h in zip(values, values[1:], lengths, strict=False)]
    if not closed:
        return _natural(rises, lengths)
    slopes = _periodic(rises, lengths)
    return [*slopes, slopes[0]]


def _natural(rises: Sequence[float], lengths: Sequence[float]) -> list[float]:
    count = len(lengths)
    below = [*lengths[1:], 1.0]
    above = [1.0, *lengths[:-1]]
    middle = [2.0, *(2 * (lengths[n - 1] + lengths[n]) for n in range(1, count)), 2.0]
    right = [3 * rises[0], *(_bend(rises, lengths, n) for n in range(1, count)), 3 * rises[-1]]
    return _tridiagonal([0.0, *below], middle, [*above, 0.0], right)


def _periodic(rises: Sequence[float], lengths: Sequence[float]) -> list[float]:
    """Solve the ring of equations as a chain, corrected for the link that closes it.

    Sherman and Morrison's formula for a matrix that differs by one product of two vectors.
    """
    count = len(lengths)
    below = [lengths[n] for n in range(count)]
    above = [lengths[n - 1] for n in range(count)]
    middle = [2 * (lengths[n - 1] + lengths[n]) for n in range(count)]
    right = [_bend(rises, lengths, n) for n in range(count)]
    gamma = -middle[0]
    chain = [middle[0] - gamma, *middle[1:-1], middle[-1] - above[-1] * below[0] / gamma]
    plain = _tridiagonal([0.0, *below[1:]], chain, [*above[:-1], 0.0], right)
    link = [gamma, *([0.0] * (count - 2)), above[-1]]
    turned = _tridiagonal([0.0, *below[1:]], chain, [*above[:-1], 0.0], link)
    share = (plain[0] + plain[-1] * below[0] / gamma) / (
        1 + turned[0] + turned[-1] * below[0] / gamma
    )
    return [value - share * other for value, other in zip(plain, turned, strict=True)]


def _bend(rises: Sequence[float], lengths: Sequence[float], n: int) -> float:
    return 3 * (lengths[n] * rises[n - 1] + lengths[n - 1] * rises[n])


def _tridiagonal(
    below: Sequence[float], middle: Sequence[float], above: Sequence[float], right: Sequence[float]
) -> list[float]:
    pivots, sums = [middle[0]], [right[0]]
    for n in range(1, len(middle)):
        factor = below[n] / pivots[-1]
        pivots.append(middle[n] - factor * above[n - 1])
        sums.append(right[n] - factor * sums[-1])
    solved = [sums[-1] / pivots[-1]]
    for n in range(len(middle) - 2, -1, -1):
        solved.append((sums[n] - above[n] * solved[-1]) / pivots[n])
    return solved[::-1]
