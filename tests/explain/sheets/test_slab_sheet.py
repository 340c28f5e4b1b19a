"""Sheet 2: the slab cut open, and checks whose figures are this job's."""

from pathlib import Path

from quotegen.explain.results import Results
from quotegen.explain.sheets.area_price import total_area
from quotegen.explain.sheets.slab_sheet import slab_sheet, tape_checks
from tests.explain.examples import EVERY_EXAMPLE, example_view
from tests.pricing import shop

DECK = shop.placement("30 ft x 20 ft")
AT_THE_HOUSE = {"add": [{"rectangle": "30 ft x 20 ft", "against_house": "bottom"}]}


def _results(folder: Path, *placements: object, rates: shop.Typed | None = None) -> Results:
    job = shop.job(*(placements or (DECK,)))  # type: ignore[arg-type] # typed as in a file
    return shop.results(folder, job, rate_book=shop.book(rates))


@EVERY_EXAMPLE
def test_each_check_has_its_figure_and_says_how(job_file: Path):
    """Each is of something that the price covers."""
    results = shop.example_results(job_file)
    checks = example_view(job_file).slab.checks
    titles = {results.content.scope[item].front.title for item in results.scope_items()}
    assert checks
    assert {check.name for check in checks} <= titles
    assert all(check.figure and check.how for check in checks)


@EVERY_EXAMPLE
def test_the_yards_are_the_area_times_the_depth(job_file: Path):
    """The yards are the figure; area and depth that they are worked out from stand beside it."""
    results = shop.example_results(job_file)
    words = results.words
    (slab,) = [check for check in example_view(job_file).slab.checks if check.name == "Slab"]
    assert slab.figure == words.volume(results.takeoff.volume_cuyd)
    depths = {words.depth(placement.thickness) for placement in results.job.placements}
    said = depths.pop() if len(depths) == 1 else "the depth of its slab"
    assert slab.how.startswith(f"{total_area(results)} × {said}.")


def test_slabs_of_two_depths_are_each_held_to_their_own(tmp_path):
    """A sentence of one depth would be wrong for the other."""
    thick = shop.placement("10 ft x 10 ft", "thick", at="60 ft", thickness="6 in")
    rates = {"base": shop.rate("$1 / sq ft", "base"), "slab": shop.rate("$4 / sq ft", "slab")}
    base, slab = tape_checks(_results(tmp_path, DECK, thick, rates=rates))
    assert base.how == "Once packed, from the string only the depth of its slab down to the stone."
    assert slab.how.startswith("700.0 sq ft × the depth of its slab.")


@EVERY_EXAMPLE
def test_no_panel_is_longer_than_it_says(job_file: Path):
    """The line over the joint drawing counts the panels; none passes the spacing it names."""
    results, sheet = shop.example_results(job_file), example_view(job_file).slab
    panels = [panel for one in results.takeoff.placements for panel in one.joints.panels]
    assert sheet.joints is not None
    assert sheet.panels.startswith(f"{len(panels)} panels")
    for measured in results.takeoff.placements:
        spacing_ft = float(measured.joints.spacing_ft)
        assert results.words.feet(measured.joints.spacing_ft) in sheet.panels
        assert all(float(panel.long_ft) <= spacing_ft + 0.01 for panel in measured.joints.panels)


def test_a_slab_without_joints_draws_none(tmp_path):
    """A slab of 8 ft needs no joint: neither a drawing nor a line on panels."""
    sheet = slab_sheet(_results(tmp_path, shop.placement("8 ft x 6 ft")))
    assert (sheet.joints, sheet.panels, sheet.joint_notes) == (None, "", ())


def test_each_build_up_is_cut_open_once(tmp_path):
    """Two slabs alike share a drawing; a thicker one has its own."""
    second = shop.placement("10 ft x 10 ft", "second", at="40 ft")
    thick = shop.placement("10 ft x 10 ft", "thick", at="60 ft", thickness="6 in")
    alike = slab_sheet(_results(tmp_path, DECK, second))
    assert len(alike.cut_open) == 1
    assert len(slab_sheet(_results(tmp_path, DECK, second, thick)).cut_open) == 2


def test_the_strip_along_the_house_is_told_where_it_is(tmp_path):
    """30 ft of wall have a soft strip; a slab that stands free has none."""
    rates = {"strip": shop.rate("$2 / ft", "isolation", of="house edge"),
             "slab": shop.rate("$4 / sq ft", "slab")}  # fmt: skip
    (note,) = slab_sheet(_results(tmp_path, {**DECK, **AT_THE_HOUSE}, rates=rates)).joint_notes
    assert "30.0 ft" in note
    assert slab_sheet(_results(tmp_path, rates=rates)).joint_notes == ()


def test_steel_is_checked_where_it_has_a_place(tmp_path):
    """Bars are held against their distance from the top; fibers are everywhere."""
    rates = {"steel": shop.rate("$1 / sq ft", "reinforcement"),
             "slab": shop.rate("$4 / sq ft", "slab")}  # fmt: skip
    bars = {**DECK, "reinforcement": "bars"}
    named = [
        {check.name for check in tape_checks(_results(tmp_path, one, rates=rates))}
        for one in (DECK, bars)
    ]
    assert named[1] - named[0] == {"Reinforcement"}


def test_water_is_said_where_it_is_typed(tmp_path):
    """How much it falls, and where the water goes."""
    falls = {**DECK, **AT_THE_HOUSE, "fall": "1/4 in per ft", "falls_away_from": "house",
             "water_goes_to": "the lawn"}  # fmt: skip
    (said,) = slab_sheet(_results(tmp_path, falls)).water
    assert said == "Patio: falls 1/4 in per ft; water goes to the lawn."
    assert slab_sheet(_results(tmp_path)).water == ()
