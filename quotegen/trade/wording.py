"""A rule's number and unit in words."""

from decimal import Decimal
from fractions import Fraction

from quotegen.quantity import mixed_number, nearest

# Units whose parts are said as on a tape: halves, quarters, eighths, sixteenths.
_FRACTION_UNITS = frozenset({"in", "in per ft", "cu yd", "of the thickness"})
# Units that are words, and so take an s.
COUNTED_UNITS = frozenset(
    {"minute", "hour", "day", "business day", "week", "month", "year", "coat"}
)
# Units that stay unsaid.
SILENT_UNITS = frozenset({"ratio", "pH", "text"})


def number_text(value: Decimal, unit: str) -> str:
    """Write a number: `1/4`, `7-3/4` in tape units, `4,500` or `0.45` in others."""
    exact = Fraction(value)
    is_on_tape = exact.denominator > 1 and nearest(exact) == exact
    if unit in _FRACTION_UNITS and is_on_tape:
        return mixed_number(exact)
    plain = f"{value:,f}"
    return plain.rstrip("0").rstrip(".") if "." in plain else plain


def with_unit(number: str, unit: str, *, one: bool) -> str:
    """Put the unit after a number: `4%`, `1 day`, `2 days`; a ratio stands alone."""
    if unit in SILENT_UNITS:
        return number
    if unit == "%":
        return f"{number}%"
    if unit in COUNTED_UNITS and not one:
        return f"{number} {unit}s"
    return f"{number} {unit}"


def unit_key(unit: str) -> str:
    """Return a unit as a key of content/, such as `in_per_ft` or `percent`."""
    named = unit.replace("%", "percent").replace("°F", "fahrenheit")
    return "_".join("".join(c if c.isalnum() else " " for c in named.lower()).split())
