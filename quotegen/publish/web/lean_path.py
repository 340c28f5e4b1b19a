"""Path data in fewer letters: steps from point to point, in exact tenths of a pixel."""

import re
from collections.abc import Iterator

Tenths = tuple[int, int]

_COMMAND = re.compile(r"([A-Za-z])([^A-Za-z]*)")
_NUMBER = re.compile(r"-?[\d.]+")
_OURS = re.compile(r"(?:[MLAQZlaqh\s]|-?\d+(?:\.\d)?(?![\d.]))+")
_NEEDLESS = re.compile(r" (?=-)|(?<=\.\d) (?=\.)")
_COUNT = {"m": 2, "l": 2, "a": 7, "q": 4, "h": 1}
"""How many numbers each command takes that a drawing uses (SVG 2, 9.3)."""


def path_in_steps(data: str) -> str:
    """Return path data of a drawing with the same points, each a step from the one before it.

    Path data with other commands, or finer than a tenth, is none of ours and stays.
    A step along an axis is `h` or `v`; a command stands once where the next is of its kind; the
    flags of an arc stand together (SVG 2, 9.3.4, 9.3.8 and 9.3.9).
    """
    if not _OURS.fullmatch(data):
        return data
    written: list[str] = []
    last = ""
    for kind, numbers in _steps(data):
        written.append((" " if kind == last and kind not in "mM" else kind) + numbers)
        last = kind if kind != "Z" else ""
    return _NEEDLESS.sub("", "".join(written))


def _steps(data: str) -> Iterator[tuple[str, str]]:
    """Yield each command as a step, and its numbers."""
    at = start = (0, 0)
    for command, typed in _COMMAND.findall(data):
        numbers, kind = _NUMBER.findall(typed), command.lower()
        if kind == "z":
            at = start
            yield "Z", ""
            continue
        count = _COUNT[kind]
        for first in range(0, len(numbers), count):
            one = numbers[first : first + count]
            step = _step(one, at, absolute=command.isupper())
            to = (at[0] + step[0], at[1] + step[1])
            if kind == "m":
                yield _begun(at, to, first=start == at == (0, 0))
                start = to
            else:
                yield _drawn(kind, one, step, at, absolute=command.isupper())
            at = to


def _step(numbers: list[str], at: Tenths, *, absolute: bool) -> Tenths:
    """Return how far a command goes."""
    x, y = (_tenths(one) for one in (numbers if len(numbers) > 1 else [*numbers, "0"])[-2:])
    return (x - at[0], y - at[1]) if absolute else (x, y)


def _begun(at: Tenths, to: Tenths, *, first: bool) -> tuple[str, str]:
    """Begin a run where it is, or by a step from where the last one ended: what is shorter."""
    there = f"{_in_pixels(to[0])} {_in_pixels(to[1])}"
    step = f"{_in_pixels(to[0] - at[0])} {_in_pixels(to[1] - at[1])}"
    shorter = len(step.replace(" -", "-")) < len(there.replace(" -", "-"))
    return ("m", step) if shorter and not first else ("M", there)


def _drawn(
    kind: str, numbers: list[str], step: Tenths, at: Tenths, *, absolute: bool
) -> tuple[str, str]:
    x, y = _in_pixels(step[0]), _in_pixels(step[1])
    if kind in "lh":
        return ("h", x) if y == "0" else ("v", y) if x == "0" else ("l", f"{x} {y}")
    if kind == "a":
        *radii, turn, large, clockwise = (_in_pixels(_tenths(one)) for one in numbers[:5])
        return "a", f"{' '.join(radii)} {turn} {large}{clockwise}{x} {y}"
    bend = _step(numbers[:2], at, absolute=absolute)
    return kind, f"{_in_pixels(bend[0])} {_in_pixels(bend[1])} {x} {y}"


def _tenths(number: str) -> int:
    whole, _, part = number.partition(".")
    sign = -1 if number.startswith("-") else 1
    return sign * (abs(int(whole.removeprefix("-") or 0)) * 10 + int(part[:1] or 0))


def _in_pixels(tenths: int) -> str:
    whole, part = divmod(abs(tenths), 10)
    sign = "-" if tenths < 0 else ""
    if not part:
        return f"{sign}{whole}"
    return f"{sign}{whole or ''}.{part}"
