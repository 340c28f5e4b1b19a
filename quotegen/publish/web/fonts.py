"""Fonts cut down to the letters of one page; the OFL allows it, and no name is reserved."""

from functools import lru_cache
from io import BytesIO

FEATURES = ("tnum", "ccmp", "locl", "mark", "mkmk")
"""The layout features that the styles use, and those that place accents; kerning costs 4 KB."""

UNUSED_TABLES = ("STAT", "gasp", "GDEF")
"""What a browser does without for a font of one weight and few letters."""


@lru_cache(maxsize=32)
def subset(font: bytes, letters: str) -> bytes:
    """Return a WOFF2 font with the glyphs of some letters, always the same bytes for the same.

    Args:
        font: a whole WOFF2 font.
        letters: each letter once, in order.
    """
    # Imported here, since it is slow to load and `check` does not need it.
    from fontTools.subset import Options, Subsetter  # noqa: PLC0415
    from fontTools.ttLib import TTFont  # noqa: PLC0415

    options = Options(
        layout_features=list(FEATURES), hinting=False, notdef_outline=False, glyph_names=False,
        name_IDs=[1, 2],
    )  # fmt: skip
    options.drop_tables += UNUSED_TABLES
    opened = TTFont(BytesIO(font), recalcTimestamp=False)
    subsetter = Subsetter(options)
    subsetter.populate(text=letters)
    subsetter.subset(opened)
    opened.flavor = "woff2"
    written = BytesIO()
    opened.save(written)
    return written.getvalue()
