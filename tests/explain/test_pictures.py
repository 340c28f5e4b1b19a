"""Swatches, bars, chart and timeline: titled, described, in proportion, and the same each time."""

import re
import xml.etree.ElementTree as ET
from itertools import combinations

import pytest

from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.pictures.charts import adjustment_chart, price_bars
from quotegen.explain.pictures.swatches import finish_swatch, look_swatch
from quotegen.explain.pictures.timeline import timeline
from quotegen.explain.results import Results
from tests.explain.drawn import lettering
from tests.pricing import shop

SVG = "{http://www.w3.org/2000/svg}"
LEAST_TEXT_PX, PHONE_PX = 12, 328
RATES = {
    **shop.RINSE_AND_FILM,
    "sand": shop.rate("$1 / sq ft", "finish", applies="with color", color="integral",
                      shade="#d3bd94"),
    "nut": shop.rate("$1 / sq ft", "finish", applies="with color", color="release",
                     shade="#6b4a32"),
}  # fmt: skip
FINISHES = {"plain": shop.PLAIN, "fancy": {**shop.FANCY, "colors": ["sand", "nut"]}}


@pytest.fixture
def results(tmp_path) -> Results:
    """A job of two finishes and a look of two colors."""
    job = shop.job(compare=["fancy"], colors=[{"base": "sand", "second": "nut"}])
    return shop.results(tmp_path, job, rate_book=shop.book(RATES, FINISHES))


def _drawings(results: Results) -> dict[str, Drawing]:
    bars, chart = price_bars(results), adjustment_chart(results)
    assert bars is not None
    assert chart is not None
    return {
        "swatch": finish_swatch(results, "fancy"),
        "look": look_swatch(results, ("sand", "nut")),
        "bars": bars,
        "chart": chart,
        "days": timeline(results, results.day_plans[0], "days"),
    }


def test_each_has_a_title_a_description_and_fits_a_phone(results):
    """WCAG 2.2, 1.1.1: a drawing is named; no text is under 12 px, and none is cut on a phone."""
    for name, drawing in _drawings(results).items():
        root = ET.fromstring(str(drawing.svg))
        assert root.findtext(f"{SVG}title") == drawing.title
        assert root.findtext(f"{SVG}desc"), name
        assert float(root.attrib["width"]) <= PHONE_PX
        sizes = {float(text.attrib["font-size"]) for text in root.iter(f"{SVG}text")}
        assert all(size >= LEAST_TEXT_PX for size in sizes), name


def test_the_same_results_are_the_same_drawings(results):
    """Nothing in a drawing is left to chance."""
    assert _drawings(results) == _drawings(results)


def test_bars_are_as_long_as_their_prices(results):
    """Plain is 200, fancy 460: the bars begin at zero and are as 200 to 460."""
    bars = price_bars(results)
    assert bars is not None
    plain, fancy = (float(w) for w in re.findall(r'<rect[^>]* width="([\d.]+)"', str(bars.svg)))
    assert plain / fancy == pytest.approx(200 / 460, abs=0.001)


def test_a_long_name_of_a_finish_keeps_clear_of_its_price(tmp_path):
    """It goes on below, beside nothing, and its bar comes under all of it."""
    name = "Hand-cut border stone with a wide smooth band, two colors"
    finishes = {**FINISHES, "fancy": {**FINISHES["fancy"], "name": name}}
    job = shop.job(compare=["fancy"])
    bars = price_bars(shop.results(tmp_path, job, rate_book=shop.book(RATES, finishes)))
    assert bars is not None
    svg = ET.fromstring(str(bars.svg))
    boxes = [box for _, box in lettering(svg)]
    assert len(boxes) == 5
    assert not any(one.intersects(other) for one, other in combinations(boxes, 2))
    bottom = max(float(r.attrib["y"]) + float(r.attrib["height"]) for r in svg.iter(f"{SVG}rect"))
    assert max(box.bounds[3] for box in boxes) < bottom < float(svg.attrib["height"])


def test_no_text_of_the_chart_meets_another(results):
    """Prices, changes and areas of the five points stand apart."""
    chart = adjustment_chart(results)
    assert chart is not None
    boxes = [box for _, box in lettering(ET.fromstring(str(chart.svg)))]
    assert not [(a, b) for a, b in combinations(boxes, 2) if a.intersects(b)]


def test_one_finish_has_no_bars_and_a_minimum_no_chart(tmp_path):
    """Where there is nothing to compare, or the price does not move, nothing is drawn."""
    book = shop.book(RATES, FINISHES, minimum="$900")
    results = shop.results(tmp_path, shop.job(), rate_book=book)
    assert price_bars(results) is None
    assert adjustment_chart(results) is None


def test_the_chart_rises_with_the_area(results):
    """From -10 to +10 % both area and total rise, so each point is right of and over the last."""
    chart = adjustment_chart(results)
    assert chart is not None
    found = re.findall(r'<circle cx="([\d.]+)" cy="([\d.]+)"', str(chart.svg))
    points = [(float(x), float(y)) for x, y in found]
    assert len(points) == 5
    assert points == sorted(points)
    assert [y for _, y in points] == sorted((y for _, y in points), reverse=True)
    assert "−10%" in str(chart.svg)


def test_the_timeline_has_all_that_happens(results):
    """Our visits, the homeowner's jobs and the openings stand on it, in the order of the days."""
    texts = re.findall(r"<text[^>]*>([^<]*)</text>", str(_drawings(results)["days"].svg))
    for visit in results.chosen_visits:
        assert visit.name in texts
    for key in ("timeline_lines", "timeline_measure", "timeline_off", "opening_walk"):
        assert results.words(key) in texts
    assert texts.index("Pour") < texts.index(results.words("opening_walk"))


def test_a_swatch_is_in_the_colors_of_its_look(results):
    """The base color fills it and the second one draws its lines; without colors it is gray."""
    look = str(look_swatch(results, ("sand", "nut")).svg)
    assert 'fill="#d3bd94"' in look
    assert 'stroke="#6b4a32"' in look
    assert "#d3bd94" not in str(finish_swatch(results, "plain").svg)
