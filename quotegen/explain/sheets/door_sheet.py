"""The door sheet: a square code from which a phone makes an e-mail to the company."""

from itertools import groupby
from urllib.parse import quote as percent_encoded

import segno

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.curves import number
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.plan import FRAMED, draw_plan
from quotegen.explain.results import Results
from quotegen.explain.sheets.sizes import DOOR
from quotegen.explain.sheets.views import DoorSheet

MODULE_PX = 2.6
"""One module of the code: 0.7 mm, which a phone reads at arm's length."""


def door_sheet(results: Results) -> DoorSheet:
    """The code, and the same address to type."""
    email, words = results.job.company.email, results.words
    subject = words("door_subject", quote=results.job.quote)
    link = f"mailto:{email}?subject={percent_encoded(subject)}"
    title = words("door_code_title", email=email, subject=subject)
    plan = draw_plan(results, DOOR, "plan-door", look=FRAMED)
    return DoorSheet(plan=plan, code=code(link, title), email=email, subject=subject)


def code(text: str, title: str) -> Drawing:
    """Draw a text as a QR code (ISO/IEC 18004), with its quiet zone of four modules.

    Level M is asked for, so that a sheet that got wet at the door still reads.
    """
    made = segno.make(text, error="m", micro=False)
    rows = tuple(
        tuple(bool(module) for module in row)
        for row in made.matrix_iter(border=made.default_border_size)
    )
    side = len(rows) * MODULE_PX
    bars = " ".join(
        f"M{number(start * MODULE_PX)} {number(y * MODULE_PX)}"
        f"h{number(length * MODULE_PX)}v{number(MODULE_PX)}"
        f"h-{number(length * MODULE_PX)}z"
        for y, row in enumerate(rows)
        for start, length in _runs(row)
    )
    drawn = svg.element("path", d=bars, fill="#000", shape_rendering="crispEdges")
    return svg.drawing((side, side), drawn, title=title, ident="door-code", css_class="code")


def _runs(row: tuple[bool, ...]) -> list[tuple[int, int]]:
    """Where each run of dark modules starts, and its length."""
    runs, at = [], 0
    for dark, modules in groupby(row):
        length = len(tuple(modules))
        if dark:
            runs.append((at, length))
        at += length
    return runs
