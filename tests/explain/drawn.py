"""Drawings taken apart for the tests."""

import cmath
import math
import re
import xml.etree.ElementTree as ET

from shapely import LineString, Point, Polygon, box
from shapely.affinity import rotate

from quotegen.explain.drawing.svg import INK, Drawing
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
            ends = [float(one.attrib[name]) for name in ("x1", "y1", "x2", "y2")]
            found.append(LineString([ends[:2], ends[2:]]))
        elif one.tag == f"{SVG}path":
            found += [LineString(run) for run in _runs(one.attrib["d"])]
    return found


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
