"""The crew sheet: what is built and ordered, what to look at first, and no price."""

from pathlib import Path

from quotegen.explain.private.crew_sheet import CHECKLIST, crew_sheet
from quotegen.publish.web.html import render
from quotegen.resources import themes_folder
from tests.explain.examples import EVERY_EXAMPLE, example_crew_sheet
from tests.pricing import shop


@EVERY_EXAMPLE
def test_the_crew_reads_no_price(job_file: Path):
    """The sheet lies open on the site: no sum of money is on it."""
    results, sheet = shop.example_results(job_file), example_crew_sheet(job_file)
    theme = themes_folder() / "shop"
    page = render("crew-sheet.html.j2", sheet, results.words, theme, on_paper=True)
    assert "$" not in page.partition("<body>")[2]


@EVERY_EXAMPLE
def test_concrete_is_told_by_placement_and_in_all(job_file: Path):
    """Area, depth and volume of each placement, what to order, and the mix."""
    results, loads = shop.example_results(job_file), example_crew_sheet(job_file).loads
    words, takeoff = results.words, results.takeoff
    for line, spec in zip(loads, results.job.placements, strict=False):
        measured = takeoff.placement(spec.id)
        for said in (spec.name, words.area(measured), words.depth(spec.thickness),
                     words.volume(measured.volume_cuyd)):  # fmt: skip
            assert said in line
    after = loads[len(results.job.placements) :]
    assert words.volume(takeoff.order_cuyd) in after[0]
    assert words.number(results.job.rate_book.mix.strength_psi, 0) in after[1]


@EVERY_EXAMPLE
def test_the_joints_are_drawn_and_listed(job_file: Path):
    """Every example has joints: a drawing, and a row for each placement that has them."""
    sheet = example_crew_sheet(job_file)
    assert sheet.joint_plan is not None
    assert sheet.joints


def test_what_is_looked_at_before_the_truck(tmp_path):
    """Each point of the list has its words, and none is there twice."""
    sheet = crew_sheet(shop.results(tmp_path, shop.job(), rate_book=shop.book()))
    assert len(set(sheet.before)) == len(sheet.before) == len(CHECKLIST)
