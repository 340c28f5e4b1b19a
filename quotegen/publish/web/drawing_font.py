"""The font of a theme, measured: the drawings are lettered in it."""

from collections.abc import Mapping
from functools import cache
from io import BytesIO
from pathlib import Path

from fontTools.ttLib import TTFont

from quotegen.explain.font import Font
from quotegen.publish.web import themes


def font_of(theme: Path) -> Font:
    """Return the font that theme.yaml names for the drawings; type.css gives it to the pages."""
    named = themes.settings(theme, "font")
    plain, bold = (
        letter_widths(themes.find(theme, f"fonts/{named[face]}").read_bytes())
        for face in ("plain", "bold")
    )
    return Font(family=named["family"], plain=plain, bold=bold)


@cache
def letter_widths(font: bytes) -> Mapping[str, float]:
    """Return the advance width of each letter of a font file, in parts of its size.

    A figure is as wide as the wider of its two forms: pages set figures of one width (`tnum`),
    and drawings in print do not.
    """
    opened = TTFont(BytesIO(font), lazy=True)
    em, advances, even = opened["head"].unitsPerEm, opened["hmtx"].metrics, _even_figures(opened)
    return {
        chr(code): max(advances[glyph][0], advances[even.get(glyph, glyph)][0]) / em
        for code, glyph in opened.getBestCmap().items()
    }


def _even_figures(opened: TTFont) -> Mapping[str, str]:
    """Return the glyph of one width for each figure that has one."""
    table = opened["GSUB"].table
    lookups = {
        index
        for one in table.FeatureList.FeatureRecord
        if one.FeatureTag == "tnum"
        for index in one.Feature.LookupListIndex
    }
    return {
        figure: even
        for index in lookups
        for part in table.LookupList.Lookup[index].SubTable
        for figure, even in part.mapping.items()
    }
