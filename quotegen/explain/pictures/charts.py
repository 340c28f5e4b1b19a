"""Charts: the price of each finish as a bar, and the price against the area as a line."""

from collections.abc import Iterator
from fractions import Fraction

from quotegen.explain.drawing import svg
from quotegen.explain.drawing.curves import Pixel
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.results import Results
from quotegen.pricing.quoted.records import AdjustmentRow

WIDTH_PX = 328.0
SIZE_PX, LINE_PX = 13.0, 16.0
BAR_PX, ROW_PX = 15.0, 46.0
PLOT_TOP_PX, PLOT_HEIGHT_PX = 30.0, 130.0
PLOT_LEFT_PX, PLOT_WIDTH_PX = 84.0, 218.0
LIGHT = "#c9c9c9"


def price_bars(results: Results) -> Drawing | None:
    """Draw the price of each finish as a bar from zero; nothing where there is one only."""
    words, finishes, font = results.words, results.quote.finishes, results.words.font
    if len(finishes) == 1:
        return None
    most = max(Fraction(finish.total) for finish in finishes)
    parts: list[str] = []
    prices, y = [], 0.0
    for number, finish in enumerate(finishes):
        price, face = words.money(finish.total), "plain" if number else "bold"
        share = Fraction(finish.total) / (most or 1)
        beside_price = WIDTH_PX - font.width(price, SIZE_PX, face=face) - 16
        name = font.wrapped(finish.name, beside_price, SIZE_PX, face=face)
        parts += [
            svg.text((1, y + 18 + LINE_PX * row), line, size=SIZE_PX, anchor="start", face=face)
            for row, line in enumerate(name)
        ]
        y += LINE_PX * (len(name) - 1)
        parts += [
            svg.text((WIDTH_PX - 1, y + 18), price, size=SIZE_PX, anchor="end", face=face),
            svg.element("rect", x=1, y=y + 25, width=_part(WIDTH_PX - 2, share),
                        height=BAR_PX, fill=LIGHT if number else svg.INK, stroke=svg.INK,
                        stroke_width=svg.THIN),
        ]  # fmt: skip
        y += ROW_PX
        prices.append(f"{finish.name} {price}")
    return svg.drawing(
        (WIDTH_PX, y),
        "".join(parts),
        title=words("bars_title"),
        about=words("bars_about", prices=words.listing(tuple(prices))),
        ident="price-bars",
        family=words.font.family,
    )


def adjustment_chart(results: Results) -> Drawing | None:
    """Draw the total against the area; nothing where the price does not move with it."""
    words, rows = results.words, results.quote.adjustment
    if len({row.total for row in rows}) == 1:
        return None
    points = tuple(zip(rows, _points(rows), strict=True))
    base = PLOT_TOP_PX + PLOT_HEIGHT_PX + 16
    ends = (PLOT_LEFT_PX - 14, base), (PLOT_LEFT_PX + PLOT_WIDTH_PX + 14, base)
    parts = [svg.line(*ends)]
    parts += [svg.line(at, (at[0], base), dash="2 3") for _, at in points]
    parts.append(svg.polyline([at for _, at in points], width=1.4))
    for row, (x, y) in points:
        quoted = row.change == 0
        face = "bold" if quoted else "plain"
        parts += [
            svg.element("circle", cx=x, cy=y, r=5 if quoted else 3.5,
                        fill=svg.INK if quoted else "#fff", stroke=svg.INK, stroke_width=1.4),
            svg.text((x - 7, y - 7), words.money(row.total), size=12, anchor="end", face=face,
                     halo=True),
            svg.text((x, base + 17), words.signed_percent(row.change), size=12, face=face),
            svg.text((x, base + 33), words.amount_of(row.area, results.quote.area_unit),
                     size=12, face=face),
        ]  # fmt: skip
    unit = words.unit(results.quote.area_unit)
    parts += [
        svg.text((1, base + 17), words("chart_change"), size=12, anchor="start"),
        svg.text((1, base + 33), words("chart_area", unit=unit), size=12, anchor="start"),
    ]
    return svg.drawing(
        (WIDTH_PX, base + 42),
        "".join(parts),
        title=words("chart_title"),
        about=words("chart_about", prices=words.listing(tuple(
            f"{words.signed_percent(row.change)} {words.money(row.total)}" for row in rows
        ))),
        ident="adjustment-chart",
        family=words.font.family,
    )  # fmt: skip


def _points(rows: tuple[AdjustmentRow, ...]) -> Iterator[Pixel]:
    """The point of each row: its area across, its total up, each from the least to the most."""
    areas = [Fraction(row.area) for row in rows]
    totals = [Fraction(row.total) for row in rows]
    for area, total in zip(areas, totals, strict=True):
        across = (area - min(areas)) / ((max(areas) - min(areas)) or 1)
        up = (total - min(totals)) / ((max(totals) - min(totals)) or 1)
        yield (
            PLOT_LEFT_PX + _part(PLOT_WIDTH_PX, across),
            PLOT_TOP_PX + PLOT_HEIGHT_PX - _part(PLOT_HEIGHT_PX, up),
        )


def _part(length_px: float, share: Fraction) -> float:
    return length_px * share.numerator / share.denominator
