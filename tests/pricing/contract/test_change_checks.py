"""Changes may take off a price all that it is, and no more."""

import pytest

from quotegen.pipeline import figure
from tests.pricing import shop
from tests.world import write_world

RATES = {"slab": shop.rate("$10 / sq ft", "slab")}


@pytest.mark.parametrize(("second", "places"), [("0.00", []), ("0.01", ["changes[1]"])])
def test_a_price_under_nothing(tmp_path, second: str, places: list[str]):
    """The first change takes off the whole price; a cent more is an error at that change."""
    slab = shop.placement("20 ft x 10 ft")
    priced = shop.quote(tmp_path, shop.job(slab), rate_book=shop.book(RATES)).chosen.total
    changes = [
        {"number": n, "date": "2026-06-01", "what": "less", "asked_by": "us", "amount": f"-${off}"}
        for n, off in ((1, priced), (2, second))
    ]
    typed = shop.job(slab, accepted={"date": "2026-05-20"}, changes=changes)
    job = write_world(tmp_path, typed, rate_book=shop.book(RATES))
    found = figure(job, shop.shared()).problems
    assert [one.path for one in found if one.code == "price-under-nothing"] == places
