"""Day plans: the days of each choice, each different plan once."""

from tests.pricing import shop

SEAL = {"visit": "seal", "days": "1", "wait_days": "28"}
FINISHES = {
    "plain": shop.PLAIN,
    "swept": {**shop.PLAIN, "name": "Swept"},
    "fancy": {**shop.FANCY, "visits": [*shop.FANCY["visits"], SEAL]},
}


def test_choices_with_the_same_days_share_a_plan(tmp_path):
    """Plain and swept come on the same days, fancy washes and seals after them."""
    job = shop.job(compare=["swept", "fancy"])
    book = shop.book(shop.RINSE_AND_FILM, FINISHES)
    first, second = shop.results(tmp_path, job, rate_book=book).day_plans
    assert first.choices == (("plain", ()), ("swept", ()))
    assert second.choices == (("fancy", ()),)
    assert [visit.id for visit in second.visits] == ["form", "pour", "wash", "seal"]


def test_an_alternate_has_the_days_of_its_finish(tmp_path):
    """With a fancy patio the job takes the visits of both finishes, joined."""
    job = shop.job(shop.placement("20 ft x 10 ft", alternates=["fancy"]))
    book = shop.book(shop.RINSE_AND_FILM, FINISHES)
    quoted, other = shop.results(tmp_path, job, rate_book=book).day_plans
    assert (len(quoted.visits), len(other.visits)) == (2, 4)
    assert other.choices == (("plain", (("patio", "fancy"),)),)


def test_waits_lie_between_the_visits(tmp_path):
    """Pour on Wednesday, June 10; four days of waiting, then the wash on Monday the 15th."""
    job = shop.job(finish="fancy")
    book = shop.book(shop.RINSE_AND_FILM, FINISHES)
    (plan,) = shop.results(tmp_path, job, rate_book=book).day_plans
    wash, seal = plan.waits
    assert (wash.first_day.isoformat(), wash.last_day.isoformat()) == ("2026-06-11", "2026-06-14")
    assert (wash.days, seal.days) == (4, 28)
