"""How a rule's number and unit are worded for people."""

from decimal import Decimal
from fractions import Fraction

# Units that a tape shows in halves, quarters and so on.
FRACTION_UNITS = frozenset({"in", "in per ft", "cu yd", "of the thickness"})
FINEST_TAPE_MARK = 2 * 2 * 2 * 2  # sixteenths
# Units that are words of their own, and so take an s.
COUNTED_UNITS = frozenset(
    {"minute", "hour", "day", "business day", "week", "month", "year", "coat"}
)
# Units that are not said.
SILENT_UNITS = frozenset({"ratio", "pH", "text"})


def number_text(value: Decimal, unit: str) -> str:
    """Write a number: `1/4`, `7-3/4` in tape units, `4,500` or `0.45` in others."""
    exact = Fraction(value)
    if unit in FRACTION_UNITS and FINEST_TAPE_MARK % exact.denominator == 0:
        whole, part = divmod(exact, 1)
        if not part:
            return f"{whole:,}"
        return f"{whole}-{part}" if whole else f"{part}"
    plain = f"{value:,f}"
    return plain.rstrip("0").rstrip(".") if "." in plain else plain


def with_unit(number: str, unit: str, *, one: bool) -> str:
    """Put the unit behind a number: `4%`, `1 day`, `2 days`; a ratio stands alone."""
    if unit in SILENT_UNITS:
        return number
    if unit == "%":
        return f"{number}%"
    if unit in COUNTED_UNITS and not one:
        return f"{number} {unit}s"
    return f"{number} {unit}"


def unit_key(unit: str) -> str:
    """Return the name of a unit as a key of content/, such as `in_per_ft` or `percent`."""
    named = unit.replace("%", "percent").replace("°F", "fahrenheit")
    return "_".join("".join(c if c.isalnum() else " " for c in named.lower()).split())
