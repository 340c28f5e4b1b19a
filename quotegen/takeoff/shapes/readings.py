"""The tape readings in a typed shape, their accuracy, and the shape with one of them changed."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction
from typing import Any, TypeVar

from quotegen.quantity import Length
from quotegen.reading.fields.text_fields import Size
from quotegen.reading.fields.typed_fields import Model
from quotegen.reading.files.shapes import Offsets, Shape
from quotegen.trade.measuring import angle_accuracy_deg, tape_accuracy_ft
from quotegen.trade.rules import RuleBook

S = TypeVar("S")
Path = tuple[str | int, ...]

_PLACING = frozenset({"at", "turn", "accuracy"})
_METHODS = frozenset({"outline", "offsets", "ties", "border"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One reading: the fields that hold it, its value and its standard deviation.

    A corner that is typed again to close an outline is one reading in two fields.
    """

    paths: tuple[Path, ...]
    value: Length | Fraction
    deviation: Fraction


def method_of(shape: Shape) -> str:
    """Return the method of measuring that decides the accuracy of a shape."""
    return shape.kind if shape.kind in _METHODS else "pieces"


def accuracy_of(shape: Shape, rules: RuleBook, on: date) -> Length:
    """Return the accuracy of one reading of a shape: as the job says, else by its method."""
    return shape.accuracy or Length(tape_accuracy_ft(rules, on)[method_of(shape)])


def readings_of(shape: Shape, rules: RuleBook, on: date) -> tuple[Reading, ...]:
    """Return every reading that the area rests on.

    A zero was not read: it is the start of a tape, or on the base line. An even spacing is marked
    along one tape, so the deviation is that of its far end and not of each strip.
    """
    tape, angle = accuracy_of(shape, rules, on).feet, angle_accuracy_deg(rules, on)
    closing = _closing(shape)
    readings: list[Reading] = []
    for path, value in _walk(shape, ()):
        if isinstance(value, Length):
            strips = _strips(shape, path)
            if value.feet and path not in closing.values():
                paths = (path, closing[path]) if path in closing else (path,)
                readings.append(Reading(paths=paths, value=value, deviation=tape / strips))
        else:
            readings.append(Reading(paths=(path,), value=value, deviation=angle))
    return tuple(readings)


def with_reading(shape: Shape, reading: Reading, change: Fraction) -> Shape | None:
    """Return the shape with one reading changed; None where a length would vanish."""
    value = reading.value
    if isinstance(value, Length):
        changed: Length | Fraction = Length(value.feet + change)
        if value.feet > 0 and value.feet + change <= 0:
            return None
    else:
        changed = value + change
    for path in reading.paths:
        shape = _with(shape, path, changed)
    return shape


def _walk(value: Any, path: Path) -> Iterator[tuple[Path, Length | Fraction]]:
    if isinstance(value, Length | Fraction):
        yield path, value
    elif isinstance(value, Size):
        yield (*path, "length"), value.length
        yield (*path, "width"), value.width
    elif isinstance(value, tuple):
        for index, item in enumerate(value):
            yield from _walk(item, (*path, index))
    elif isinstance(value, Model):
        for name in type(value).model_fields:
            if name not in _PLACING:
                yield from _walk(getattr(value, name), (*path, name))


def _with(value: S, path: Path, changed: Length | Fraction) -> S:
    """Return a value with what is at a path replaced, and nothing validated again."""
    old: Any = value
    if not path:
        return changed  # type: ignore[return-value] # what it replaces was of this type
    first, *rest = path
    if isinstance(old, tuple):
        place = int(first)
        return (*old[:place], _with(old[place], tuple(rest), changed), *old[place + 1 :])  # type: ignore[return-value]
    name = str(first)
    part = _with(getattr(old, name), tuple(rest), changed)
    if isinstance(old, Model):
        return old.model_copy(update={name: part})  # type: ignore[return-value]
    return replace(old, **{name: part})  # type: ignore[no-any-return]


def _closing(shape: Shape) -> Mapping[Path, Path]:
    """Return the fields of a first corner that is typed again at the end, each with its twin."""
    sides = shape.outline or ()
    if len(sides) < 2 or sides[0].from_ is None or sides[-1].to != sides[0].from_:
        return {}
    last = len(sides) - 1
    return {("outline", 0, "from_", axis): ("outline", last, "to", axis) for axis in (0, 1)}


def _strips(shape: Shape, path: Path) -> int:
    if path[-1] != "every":
        return 1
    offsets = shape.offsets or (shape.border.pool.offsets if shape.border else None)
    return len(offsets.far) - 1 if isinstance(offsets, Offsets) else 1
