"""The dates of care: the days in their order, then the years."""

from quotegen.explain.guide.care_rows import care_rows
from tests.pricing import shop


def test_care_goes_by_the_calendar(tmp_path):
    """From the pour on, days in their order, then the winter, the yearly look, the next coat."""
    seal = {"visit": "seal", "days": "1", "wait_days": "28"}
    fancy = {**shop.FANCY, "brings": [], "visits": [shop.FORM, shop.POUR, seal]}
    job = shop.job(shop.placement("40 ft x 30 ft"))
    results = shop.results(tmp_path, job, rate_book=shop.book(finishes={"plain": fancy}))
    rows = care_rows(results, results.chosen_visits)
    names = [row.name for row in rows]
    assert names[-3:] == ["Winter 2026 to 2027", "Each spring from 2027", "About 2028 to 2029"]
    texts = [row.text for row in rows]
    assert texts[0].startswith("Pour.")
    assert texts.index("Walk on it") < texts.index("Judge the color, if it has been warm and dry")
