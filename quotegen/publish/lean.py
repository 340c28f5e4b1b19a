"""A page made lighter for a browser: what it says over and over is said once.

The print engine gets the page as it was drawn, since it knows neither these classes nor a halo
that is painted under its own letters. Both show the same drawing.
"""

import re

from quotegen.publish.lean_drawing import DRAWING, lean_drawings

BLOCKS = (
    "address|article|caption|dd|details|div|dl|dt|fieldset|figcaption|figure|footer|h[1-6]|head|"
    "header|label|legend|li|link|main|meta|nav|ol|p|script|section|style|summary|table|tbody|td|"
    "tfoot|th|thead|title|tr|ul"
)
"""Elements before and after which a blank is nothing."""

_BETWEEN_TAGS = re.compile(r">\s*\n\s*<")
_BETWEEN_BLOCKS = re.compile(rf"(</?(?:{BLOCKS})\b[^>]*>)\n(?=</?(?:{BLOCKS})\b)")
_CLOSED_ANYWAY = re.compile(
    rf"</(?:p|li|dt|dd|td|th)>(?=</(?:div|dd|dl|fieldset|figcaption|footer|li|ol|section|td|tr|ul)>|"
    rf"<(?:dl|dt|dd|div|fieldset|figure|h[1-6]|li|ol|p|table|td|th|ul)\b)"
)
"""End tags that may be left out before what follows (HTML, 13.1.2.4, optional tags)."""


def lean(page: str) -> tuple[str, str]:
    """Return the page with less to load, and the style rules that its drawings then need."""
    page = _BETWEEN_BLOCKS.sub(r"\1", _BETWEEN_TAGS.sub(">\n<", page))
    return lean_drawings(_closed(page))


def _closed(page: str) -> str:
    """Leave out end tags that what follows implies; drawings have none to leave out."""
    parts = re.split(rf"({DRAWING.pattern})", page, flags=re.DOTALL)
    return "".join(
        part if part.startswith("<svg") else _CLOSED_ANYWAY.sub("", part) for part in parts
    )
