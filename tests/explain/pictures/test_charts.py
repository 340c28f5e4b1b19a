"""Bars and chart: in proportion, from zero, and no text over another."""

import re
import xml.etree.ElementTree as ET
from itertools import combinations

import pytest

from quotegen.explain.pictures.charts import adjustment_chart, price_bars
from tests.explain.drawn import SVG, lettering
from tests.explain.pictures.two_finishes import FINISHES, RATES, two_finishes
from tests.pricing import shop


def test_bars_are_as_long_as_their_prices():
    """Plain is 200, fancy 460: the bars begin at zero and are as 200 to 460."""
    bars = price_bars(two_finishes())
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


def test_no_text_of_the_chart_meets_another():
    """Prices, changes and areas of the five points stand apart."""
    chart = adjustment_chart(two_finishes())
    assert chart is not None
    boxes = [box for _, box in lettering(ET.fromstring(str(chart.svg)))]
    assert not [(a, b) for a, b in combinations(boxes, 2) if a.intersects(b)]


def test_one_finish_has_no_bars_and_a_minimum_no_chart(tmp_path):
    """Where there is nothing to compare, or the price does not move, nothing is drawn."""
    book = shop.book(RATES, FINISHES, minimum="$900")
    results = shop.results(tmp_path, shop.job(), rate_book=book)
    assert price_bars(results) is None
    assert adjustment_chart(results) is None


def test_the_chart_rises_with_the_area():
    """From -10 to +10 % both area and total rise, so each point is right of and over the last."""
    chart = adjustment_chart(two_finishes())
    assert chart is not None
    found = re.findall(r'<circle cx="([\d.]+)" cy="([\d.]+)"', str(chart.svg))
    points = [(float(x), float(y)) for x, y in found]
    assert len(points) == 5
    assert points == sorted(points)
    assert [y for _, y in points] == sorted((y for _, y in points), reverse=True)
    assert "−10%" in str(chart.svg)
