"""Drawings taken apart for the tests."""

import xml.etree.ElementTree as ET

from quotegen.explain.svg import Drawing

SVG = "{http://www.w3.org/2000/svg}"


def parsed(drawing: Drawing) -> ET.Element:
    """Return a drawing as a tree."""
    return ET.fromstring(str(drawing.svg))


def texts(svg: ET.Element) -> list[str]:
    """Return the texts of a drawing once each, without the halo that is drawn under some."""
    return [text.text or "" for text in svg.iter(f"{SVG}text") if text.get("aria-hidden") != "true"]


def dashed(svg: ET.Element, dash: str) -> list[ET.Element]:
    """Return the lines of one kind of dash."""
    return [one for one in svg.iter() if one.get("stroke-dasharray") == dash]
