"""How each part was measured, by which rule, and how sure its area is."""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import zip_longest

from quotegen.explain.papers.measuring_views import MeasuredRow
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.explain.words.rows import Row
from quotegen.quantity import Length, decimal_of
from quotegen.reading.fields.text_fields import Size
from quotegen.reading.files.shapes import (
    AreaRule,
    Border,
    CutOut,
    EdgeLine,
    Offsets,
    Piece,
    Shape,
    Side,
    Ties,
)
from quotegen.reading.records import PlacementSpec


def readings_of(shape: Piece, words: Words) -> tuple[str, ...]:
    """The readings at each station or point; none where the sentence has every reading."""
    if shape.offsets is not None:
        return tuple(_stations(shape.offsets, words))
    if shape.ties is not None:
        return tuple(
            words("tie_pair", a=words.length(point.a), b=words.length(point.b))
            for point in shape.ties.points
        )
    if isinstance(shape, Shape) and shape.border is not None:
        return readings_of(shape.border.pool, words)
    return ()


def offsets_method(offsets: Offsets, words: Words) -> str:
    """What the readings of offsets are, and which rule gives the area, in a sentence."""
    rule = "rule_trapezoid"
    if offsets.rule is AreaRule.SIMPSON:
        rule = "rule_simpson_split" if len(offsets.far) % 2 == 0 else "rule_simpson"
    edges = "method_offsets" if offsets.near is None else "method_offsets_both"
    return words(edges, rule=words(rule))


def ties_method(ties: Ties, words: Words) -> str:
    """What the readings of ties are, and what line joins the points, in a sentence."""
    line = words("line_smooth" if ties.edge is EdgeLine.SMOOTH else "line_straight")
    return words("method_ties", apart=words.length(ties.apart), line=line)


def _stations(offsets: Offsets, words: Words) -> Iterator[str]:
    along = offsets.along or tuple(
        Length(number * offsets.every.feet) for number in range(len(offsets.far)) if offsets.every
    )
    for station, far, near in zip_longest(along, offsets.far, offsets.near or ()):
        readings = {"along": words.length(station), "far": words.length(far)}
        if near is None:
            yield words("station", **readings)
        else:
            yield words("station_both", near=words.length(near), **readings)


def measured_rows(results: Results) -> tuple[MeasuredRow, ...]:
    """Every shape as it was measured, with its area."""
    return tuple(row for placement in results.job.placements for row in _rows(results, placement))


def sure_lines(results: Results) -> tuple[str, ...]:
    """How sure each area is, and what that may move the price by."""
    words = results.words
    low, high = results.quote.tape_range
    lines = [_sure(results, placement) for placement in results.job.placements]
    price = words(
        "sure_price",
        low=words.signed_money(low.difference),
        high=words.signed_money(high.difference),
    )
    return (*lines, price)


def step_rows(results: Results) -> tuple[Row, ...]:
    """The steps, by number or by the foot of nosing, and where they are."""
    rows = []
    for line in results.lines_for("steps"):
        place = results.placement_name(line)
        name = f"{line.name}, {place}" if place else line.name
        rows.append(
            Row(name=name, text="", amount=results.words.quantity(line.quantity, line.unit))
        )
    return tuple(rows)


def method_of(shape: Piece, words: Words) -> str:
    """How a shape was measured and by which rule, in a sentence.

    The few readings of a plain shape stand in it; the many of offsets and ties are a list.
    """
    kind = shape.kind
    if shape.outline is not None:
        smooth = any(side.smooth_through for side in shape.outline)
        return words("method_outline_smooth" if smooth else "method_outline")
    if shape.offsets is not None:
        return offsets_method(shape.offsets, words)
    if shape.ties is not None:
        return ties_method(shape.ties, words)
    if isinstance(shape, Shape) and shape.border is not None:
        pool = method_of(shape.border.pool, words)
        return words("method_border", widths=_widths(shape.border, words), pool=pool)
    if shape.corner_radius is not None:
        radius = words.length(shape.corner_radius)
        return words("method_rounded", readings=_readings(shape, words), radius=radius)
    if shape.regular_polygon is not None:
        sides = str(shape.regular_polygon.sides)
        return words("method_regular_polygon", sides=sides, readings=_readings(shape, words))
    return words(f"method_{kind}", readings=_readings(shape, words))


def _rows(results: Results, placement: PlacementSpec) -> Iterator[MeasuredRow]:
    words = results.words
    steps = iter(results.takeoff.placement(placement.id).working[0].inputs)
    for group, shapes in (("added", placement.add), ("taken", placement.take_away)):
        for number, shape in enumerate(shapes, start=1):
            key = "pool" if shape.is_ is CutOut.POOL else group
            yield MeasuredRow(
                name=words(f"measured_{key}", placement=placement.name, number=str(number)),
                text=method_of(shape, words),
                readings=readings_of(shape, words),
                amount=words.quantity(next(steps).value, words.units.area_unit),
            )


def _sure(results: Results, placement: PlacementSpec) -> str:
    words, measured = results.words, results.takeoff.placement(placement.id)
    ends = measured.area_range.ends(words.units)
    low, high = (words.quantity(end, words.units.area_unit) for end in ends)
    area = words.area(measured)
    return words("sure_area", placement=placement.name, area=area, low=low, high=high)


def _widths(border: Border, words: Words) -> str:
    widths: Mapping[Side, Length | None] = {
        side: getattr(border, side.value) or border.width for side in Side
    }
    each = dict.fromkeys(words.length(width) for width in widths.values() if width)
    return words.listing(tuple(each))


def _readings(shape: Piece, words: Words) -> str:
    return words.joined(tuple(_typed(getattr(shape, shape.kind), words)))


def _typed(part: object, words: Words) -> Iterator[str]:
    """Every reading of a plain piece, in the order in which they are typed."""
    if isinstance(part, Size):
        length, width = words.length(part.length), words.length(part.width)
        yield words("reading_size", length=length, width=width)
        return
    for name in getattr(type(part), "model_fields", ()):
        value = getattr(part, name)
        if isinstance(value, Length):
            yield words(f"reading_{name}", length=words.length(value))
        elif isinstance(value, Fraction):
            places = 0 if value.denominator == 1 else 1
            yield words(f"reading_{name}", length=words.number(decimal_of(value), places))
