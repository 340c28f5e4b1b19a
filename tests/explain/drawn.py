"""Drawings taken apart for the tests."""

import cmath
import math
import re
import xml.etree.ElementTree as ET
from fractions import Fraction
from itertools import pairwise

import pytest
from shapely import LineString, Point, Polygon, box
from shapely.affinity import rotate

from quotegen.explain.drawing.svg import INK, THICK, THIN, Drawing
from quotegen.publish.web.drawing_font import font_of
from quotegen.resources import themes_folder

SVG = "{http://www.w3.org/2000/svg}"
FONT = font_of(themes_folder() / "shop")
CAPITALS = 0.7
"""How high figures and capitals stand, in parts of a size."""


def parsed(drawing: Drawing) -> ET.Element:
    """Return a drawing as a tree."""
    return ET.fromstring(str(drawing.svg))


def texts(svg: ET.Element) -> list[str]:
    """Return the texts of a drawing once each, without the halo that is drawn under some."""
    return [text.text or "" for text in svg.iter(f"{SVG}text") if text.get("aria-hidden") != "true"]


def dashed(svg: ET.Element, dash: str) -> list[ET.Element]:
    """Return the lines of one kind of dash."""
    return [one for one in svg.iter() if one.get("stroke-dasharray") == dash]


def lettering(svg: ET.Element) -> list[tuple[str, Polygon]]:
    """Return each text with the box that it takes on the paper."""
    return [
        (text.text or "", _box(text))
        for text in svg.iter(f"{SVG}text")
        if text.get("aria-hidden") != "true"
    ]


def rings(svg: ET.Element) -> list[Polygon]:
    """Return the rings of the callouts, and whatever else is drawn as a circle."""
    return [
        Point(float(one.attrib["cx"]), float(one.attrib["cy"])).buffer(float(one.attrib["r"]))
        for one in svg
        if one.tag == f"{SVG}circle"
    ]


def strokes(svg: ET.Element, dash: str | None = None) -> list[LineString]:
    """Return every line that is drawn in ink, hatches apart, or those of one kind of dash."""
    found = []
    for one in svg:
        if one.get("stroke") != INK or dash not in (None, one.get("stroke-dasharray")):
            continue
        if one.tag == f"{SVG}line":
            found.append(LineString(_ends(one)))
        elif one.tag == f"{SVG}path":
            found += [LineString(run) for run in _runs(one.attrib["d"])]
    return found


def pen_lines(svg: ET.Element, ink: str, width: float) -> list[LineString]:
    """Return the lines that are drawn with one pen in one ink."""
    same = [
        one for one in svg if (one.get("stroke"), one.get("stroke-width")) == (ink, f"{width:g}")
    ]
    return [LineString(run) for one in same if "d" in one.attrib for run in _runs(one.attrib["d"])]


def outlines(svg: ET.Element) -> list[Polygon]:
    """Return each ring that is drawn with the thick pen: the edges of the slabs."""
    thick = [one for one in svg if one.get("stroke-width") == str(int(THICK))]
    return [Polygon(run) for one in thick for run in _runs(one.attrib["d"])]


def arrows(svg: ET.Element) -> list[tuple[Point, Point]]:
    """Return where each arrow begins and where the tip of its head is."""
    return [
        (Point(_ends(one)[0]), Point(_runs(head.attrib["d"])[0][0]))
        for one, head in pairwise(svg)
        if one.tag == f"{SVG}line" and head.tag == f"{SVG}path" and head.get("fill") == INK
    ]


def filled(svg: ET.Element, fill: str) -> list[Polygon]:
    """Return the shapes with one fill."""
    shapes = [one for one in svg if one.get("fill") == fill]
    return [Polygon(run) for one in shapes for run in _runs(one.attrib["d"])]


def thin_lines(svg: ET.Element) -> list[LineString]:
    """Return the lines of the thin pen: dimension lines, projections and leaders."""
    thin = [one for one in svg if one.tag == f"{SVG}line" and one.get("stroke-width") == str(THIN)]
    return [LineString(_ends(one)) for one in thin]


def in_feet(length: str) -> float:
    """Read a length of a drawing: `24'-6 1/2"`, `9"` or `7.47 m`."""
    if length.endswith(" m"):
        return float(length.removesuffix(" m")) / 0.3048
    feet, _, inches = length.removesuffix('"').rpartition("'-")
    return float(feet or 0) + float(sum(map(Fraction, inches.split()))) / 12


def px_per_ft(scale: str) -> float:
    """Return pixels of 1/96 in for one foot at a scale such as `1/4 in = 1 ft` or `1 : 100`."""
    if ":" in scale:
        return 96 * 12 / float(scale.partition(":")[2])
    return 96 * float(Fraction(scale.partition(" in = 1 ft")[0]))


def bar_px_per_ft(svg: ET.Element) -> float:
    """Return pixels for one foot as the scale bar shows it: it is 10 ft long, or 4 m."""
    (bar,) = (
        run
        for one in svg
        if one.get("stroke-width") == str(THIN) and one.tag == f"{SVG}path"
        for run in map(LineString, _runs(one.attrib["d"]))
        if run.bounds[3] - run.bounds[1] == pytest.approx(4, abs=0.11)
    )
    long = 10 if any(text.endswith(" ft") for text in texts(svg)) else 4 / 0.3048
    return (bar.bounds[2] - bar.bounds[0]) / long


def _ends(line: ET.Element) -> list[tuple[float, float]]:
    x1, y1, x2, y2 = (float(line.attrib[name]) for name in ("x1", "y1", "x2", "y2"))
    return [(x1, y1), (x2, y2)]


def _box(text: ET.Element) -> Polygon:
    x, y, size = (float(text.attrib[name]) for name in ("x", "y", "font-size"))
    face = "bold" if text.get("font-weight") == "700" else "plain"
    wide = FONT.width(text.text or "", size, face=face)
    left = x - wide * {"middle": 0.5, "end": 1}.get(text.get("text-anchor", ""), 0)
    upright = box(left, y - CAPITALS * size, left + wide, y)
    turn = re.fullmatch(r"rotate\((\S+) .*", text.get("transform", ""))
    return rotate(upright, float(turn[1]), origin=(x, y)) if turn else upright


def _runs(data: str) -> list[list[tuple[float, float]]]:
    """Return the runs of absolute path data as points, arcs as steps along them."""
    runs: list[list[tuple[float, float]]] = []
    for command, numbers in re.findall(r"([MLAZ])([^MLAZ]*)", data):
        typed = [float(number) for number in numbers.split()]
        if command == "M":
            runs.append([(typed[0], typed[1])])
        elif command == "Z":
            runs[-1].append(runs[-1][0])
        elif command == "L":
            runs[-1].append((typed[0], typed[1]))
        else:
            runs[-1] += _arc(runs[-1][-1], typed)
    return runs


def _arc(start: tuple[float, float], typed: list[float]) -> list[tuple[float, float]]:
    """Return points along the smaller arc of a circle (SVG 2, B.2.4)."""
    radius, clockwise, end = typed[0], typed[4], complex(typed[5], typed[6])
    begin = complex(*start)
    half = (end - begin) / 2
    side = 1j if clockwise else -1j
    center = begin + half + side * half / abs(half) * math.sqrt(max(0, radius**2 - abs(half) ** 2))
    sweep = cmath.phase((end - center) / (begin - center))
    steps = (center + (begin - center) * cmath.exp(1j * sweep * n / 12) for n in range(1, 13))
    return [(at.real, at.imag) for at in steps]
