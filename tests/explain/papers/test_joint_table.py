"""The joint plan in numbers: as the takeoff laid it out."""

import re
from pathlib import Path

from quotegen.explain.papers.joint_table import joint_rows
from tests.explain.examples import EVERY_EXAMPLE, example_crew_sheet
from tests.pricing import shop


@EVERY_EXAMPLE
def test_panels_spacing_and_rule_are_those_of_the_plan(job_file: Path):
    """A row for each placement with joints: how many panels, how far apart, by which rule."""
    results = shop.example_results(job_file)
    places = {p.name: results.takeoff.placement(p.id).joints for p in results.job.placements}
    rows = example_crew_sheet(job_file).joints
    assert rows
    for row in rows:
        plan = places[row.name]
        assert row.panels == str(len(plan.panels))
        assert row.spacing == results.words.feet(plan.spacing_ft)
        assert row.rule
        assert len(row.exceptions) == sum(len(panel.broken) for panel in plan.exceptions)


def test_a_panel_that_breaks_a_rule_is_named_with_rule_and_size(tmp_path):
    """Half of 36 ft is too long for 4 in of concrete: number and both sizes are said."""
    cut = [{"from": ["18 ft", "0"], "to": ["18 ft", "20 ft"]}]
    job = shop.job({**shop.placement("36 ft x 20 ft"), "joints": cut})
    results = shop.warned(tmp_path, job, rate_book=shop.book())
    (row,) = joint_rows(results, {})
    assert any(
        re.match(r"Panel \d is 20'-0\" long; the rule is at most \d+'-\d+\".", said)
        for said in row.exceptions
    )
    assert row.notes == row.exceptions
