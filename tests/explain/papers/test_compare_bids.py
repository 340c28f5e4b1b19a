"""Our column on the sheet for comparing bids answers what each row asks, without a price."""

import pytest

from quotegen.explain.papers.compare_bids import compare_sheet
from quotegen.explain.results import Results
from tests.explain.papers.unkind import UNKIND
from tests.explain.private.phone import SMALL, THREE, figured
from tests.pricing import shop


def _deck() -> Results:
    return shop.example_results(next(p for p in shop.JOBS if p.stem == "orchard-bend-pool-deck"))


def _ours(stem: str) -> dict[str, str]:
    path = next(path for path in shop.JOBS if path.stem == stem)
    return {row.title: row.ours for row in compare_sheet(shop.example_results(path)).rows}


def test_each_part_of_a_question_has_its_answer():
    """Depth of the joints, kind and coats of the sealer, color: as the core knows them."""
    ours = _ours("orchard-bend-pool-deck")
    assert "no panel longer than 10'-0\"" in ours["Joints"]
    assert "At least 1 in deep" in ours["Joints"]
    assert "cut with a saw on the day after the pour" in ours["Joints"]
    assert "a film that lies on the surface, 2 coats; a coat lasts 1 to 2 years" in ours["Sealing"]
    assert "Cut-stone pattern, stamped, pewter, with a charcoal second tone" in ours["Finish"]
    assert "past job" not in ours["Finish"]  # the owner of the one in cut stone agreed to nothing
    assert "A past job of it, 2 years old, is in our quote" in _ours("larch-row-patio")["Finish"]
    assert ours["Curing"] == "Covered with sheets. Kept from drying about 7 days."
    assert ours["Dig out"].startswith("8 in below the finished top. In the price: Dig out and haul")
    assert ours["Travel"].startswith("5 visits. The way is in the price")
    assert "1/2 in wide" in ours["Isolation joints"]


def test_parts_with_other_finishes_are_told_apart():
    """A patio of stones with a broom walk: each has its own surface and its own sealer."""
    ours = _ours("tanager-lane-patio")
    assert "Walk to the drive: Broom, concrete gray, no color added" in ours["Finish"]
    assert "Walk to the drive: a liquid that soaks in, 1 coat" in ours["Sealing"]
    assert ours["Steps"] == "Step, formed and poured: 2; risers of 6-1/2 in"


@pytest.mark.parametrize("path", shop.JOBS, ids=lambda path: path.stem)
def test_other_bidders_learn_no_price_of_an_item(path):
    """The homeowner hands the sheet to others: beside the total no sum is on it, nor two stops."""
    view = compare_sheet(shop.example_results(path))
    for row in view.rows:
        assert row.ours
        assert "$" not in row.ours or row.title == "Insurance", row.title
        assert ".." not in row.ours, row.title


class TestTheCustomersSheet:
    """The customer's sheet: neutral, ours filled in, a question and a check for each row."""

    def test_each_item_of_ours_has_a_question(self):
        """Every scope item in the price is a row, but the minimum; the terms of a bid follow."""
        results = _deck()
        rows = compare_sheet(results).rows
        titles = [results.content.scope[item].front.title for item in results.scope_items()]
        assert [row.title for row in rows] == [
            *titles,
            "Payments",
            "Warranty",
            "Insurance",
            "Permit",
        ]
        for row in rows:
            assert row.ask.endswith("?"), row.title
            assert row.ours

    def test_it_does_not_know_the_other_bids(self, tmp_path):
        """The same job without other bids gives the same sheet."""
        results, _ = figured(tmp_path, SMALL + THREE)
        without, _ = figured(tmp_path, SMALL)
        assert compare_sheet(results) == compare_sheet(without)

    @pytest.mark.parametrize("page", shop.shared().content.scope.values(), ids=lambda p: p.front.id)
    def test_a_question_runs_nobody_down(self, page):
        """Neither the question nor the check holds an unkind word."""
        said = f"{page.front.ask} {page.front.check}".lower()
        assert [word for word in UNKIND if word in said] == []
