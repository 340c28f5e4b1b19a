"""The section: depths, what lies in the slab, and edges that are deeper, each to scale."""

import re

from quotegen.explain.pictures.section import PX_PER_INCH_DEEP, TOP_PX, draw_section
from tests.explain.drawn import parsed, texts
from tests.pricing import shop

THICK = {"along": "formed edge", "width": "8 in", "depth": "12 in", "taper": "4 in"}
TURNED = {"along": "house edge", "width": "6 in", "depth": "10 in"}
AT_THE_HOUSE = [{"rectangle": "30 ft x 20 ft", "against_house": "bottom"}]


def _drawn(tmp_path, **more: object):
    patio = {**shop.placement("30 ft x 20 ft"), "add": AT_THE_HOUSE, **more}
    results = shop.results(tmp_path, shop.job(patio), rate_book=shop.book())
    (placement,) = results.job.placements
    return parsed(draw_section(results, placement, 640, "cut"))


def _slab(svg) -> list[tuple[float, float]]:
    """Return the outline of the concrete, in inches across and down from its upper left."""
    path = next(one for one in svg.iter() if one.get("fill") == "url(#cut-concrete)")
    points = [(float(x), float(y)) for x, y in re.findall(r"([\d.]+) ([\d.]+)", path.get("d"))]
    left = min(x for x, _ in points)
    per_inch = PX_PER_INCH_DEEP
    return [(round((x - left) / per_inch, 1), round((y - TOP_PX) / per_inch, 1)) for x, y in points]


def test_depths_are_written_and_drawn(tmp_path):
    """4 in of concrete on 4 in of base, both said, and the slab drawn 4 in deep."""
    svg = _drawn(tmp_path)
    assert texts(svg).count("4 in") == 2
    assert {down for _, down in _slab(svg)} == {0, 4}


def test_a_thickened_edge_is_drawn_to_scale(tmp_path):
    """8 in wide at 12 in down, then back up over 4 in to the underside of the slab."""
    svg = _drawn(tmp_path, thickened_edge=THICK)
    assert {(0, 12), (8, 12), (12, 4)} <= {*_slab(svg)}
    assert "Edge 8 in wide and 12 in deep" in texts(svg)


def test_two_deep_edges_stand_at_either_end(tmp_path):
    """The thickened edge at the left, the turned-down one at the right, each with its size."""
    svg = _drawn(tmp_path, thickened_edge=THICK, turned_down_edge=TURNED)
    right = max(across for across, _ in _slab(svg))
    assert {(0, 12), (right, 10)} <= {*_slab(svg)}
    assert (round(right - 6, 1), 10) in {*_slab(svg)}
    assert "Edge 6 in wide and 10 in deep" in texts(svg)
