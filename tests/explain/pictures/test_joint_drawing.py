"""The joint drawing: thin dash-dot lines, sizes that fit into their panels, edges kept apart."""

import re
from pathlib import Path

from quotegen.explain.drawing.scale import Viewport
from quotegen.explain.pictures.joint_drawing import DASH, draw_joints
from quotegen.explain.private.crew_sheet import FLAT, crew_sheet
from quotegen.quantity import Length
from quotegen.trade import joints as rules
from tests.explain.drawn import dashed, parsed, texts
from tests.explain.examples import EVERY_EXAMPLE, example_crew_sheet, example_joints
from tests.pricing import shop

SIZE = re.compile(r"(\S+(?: \d+/\d+\")?(?: m)?) x (\S.*)")
TINY = Viewport(
    width_px=120, height_px=90, left_px=5, right_px=5, top_px=5, bottom_px=5, to_scale=False
)


def _results(tmp_path: Path, **more: object):
    job = shop.job({**shop.placement("36 ft x 20 ft"), **more})
    return (shop.warned if "joints" in more else shop.results)(tmp_path, job, rate_book=shop.book())


def _drawn(results, viewport: Viewport = FLAT):
    joints = draw_joints(results, viewport, "joints")
    return parsed(joints.drawing)


@EVERY_EXAMPLE
def test_every_joint_is_drawn_dash_dot(job_file: Path):
    """Each joint is one thin line of its own kind, which reads in black and white."""
    results = shop.example_results(job_file)
    wanted = sum(len(p.joints.joints) for p in results.takeoff.placements)
    assert wanted > 0
    assert len(dashed(example_joints(job_file), DASH)) == wanted


@EVERY_EXAMPLE
def test_each_size_is_that_of_a_panel(job_file: Path):
    """What stands in the panels is the size of a panel, long side first."""
    results = shop.example_results(job_file)
    words = results.words
    panels = [panel for p in results.takeoff.placements for panel in p.joints.panels]
    sizes = {(words.panel_side(one.long_ft), words.panel_side(one.short_ft)) for one in panels}
    said = "\n".join(texts(example_joints(job_file))).replace("\nx ", " x ")
    found = {(match[1], match[2]) for match in map(SIZE.fullmatch, said.split("\n")) if match}
    assert found
    assert found <= sizes


def test_every_panel_with_room_says_its_size(tmp_path):
    """Eight panels of 10 by 9 ft have room for their size."""
    results = _results(tmp_path)
    (measured,) = results.takeoff.placements
    said = " ".join(texts(_drawn(results)))
    assert len(measured.joints.panels) == 8
    assert len(re.findall(r"10'-0\" x 9'-0\"", said)) == 8


def test_a_size_that_has_no_room_is_left_out(tmp_path):
    """On a small drawing no size is squeezed over a line."""
    assert not [text for text in texts(_drawn(_results(tmp_path), TINY)) if " x " in text]


@EVERY_EXAMPLE
def test_a_panel_too_small_for_its_size_is_in_the_list(job_file: Path):
    """It stands in the drawing by its number, and the size of that number follows the table."""
    results = shop.example_results(job_file)
    numbered = [text for text in texts(example_joints(job_file)) if text.startswith("no. ")]
    said = " ".join(row.numbered for row in example_crew_sheet(job_file).joints)
    assert {text.removeprefix("no. ") for text in numbered} <= {*re.findall(r"\d+", said)}
    panels = [panel for p in results.takeoff.placements for panel in p.joints.panels]
    assert len(numbered) < len(panels) / 2


def test_a_panel_at_fault_shows_its_number(tmp_path):
    """The number that a sentence names stands in its panel."""
    results = _results(tmp_path, joints=[{"from": ["18 ft", "0"], "to": ["18 ft", "20 ft"]}])
    said = texts(_drawn(results))
    assert [results.words("panel_number", number=n) in said for n in ("1", "2")] == [True, True]


def test_an_edge_kept_apart_is_a_double_line(tmp_path):
    """The side at the house is drawn as two lines, the open sides as one."""
    open_all_round = _drawn(_results(tmp_path))
    wall = {"add": [{"rectangle": "36 ft x 20 ft", "against_house": "bottom"}]}
    at_the_house = _drawn(_results(tmp_path, **wall))
    lines = [
        sum(one.get("stroke") == "#fff" for one in svg.iter() if one.tag.endswith("path"))
        for svg in (open_all_round, at_the_house)
    ]
    assert lines == [0, 1]


def test_a_slab_without_joints_has_no_such_drawing(tmp_path):
    """A small slab, and one whose owner wants none, has no joints to draw."""
    assert crew_sheet(_results(tmp_path)).joint_plan is not None
    assert crew_sheet(_results(tmp_path, joints=[])).joint_plan is None


def test_a_cut_is_as_deep_in_the_table_as_in_the_text():
    """A quarter of 150 mm is 37.5 mm, and at least that: 38 mm wherever the quote says it."""
    results = shop.example_results(next(j for j in shop.JOBS if j.stem == "ferry-road-drive"))
    thickness = next(p.thickness for p in results.job.placements if p.id == "drive")
    exact = rules.saw_depth_in(thickness.inches, results.rules, results.job.quote_date)
    assert results.words.depth(Length.of_inches(exact)) in {
        row.depth for row in crew_sheet(results).joints
    }
