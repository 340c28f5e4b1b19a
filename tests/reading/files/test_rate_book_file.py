"""The whole rate book, and what is left of it without its costs."""

import re

from quotegen.reading.files.price import Band, Step
from quotegen.reading.files.rate_book import BookRate, Finish, RateBook
from quotegen.reading.files.rate_book_file import RateBookFile
from quotegen.reading.yaml.typed_file import Typed, load
from tests.world import EXAMPLES


def _book() -> RateBookFile:
    book = load(EXAMPLES / "rate-book.yaml", RateBookFile)
    assert isinstance(book, Typed)
    return book.value


def test_the_public_book_has_every_price_and_no_cost():
    """Rates, steps, bands, finishes and the short load are there, each without what it costs."""
    whole, public = _book(), _book().public()
    assert type(public) is RateBook
    assert {type(rate) for rate in public.rates.values()} == {BookRate}
    assert {type(finish) for finish in public.finishes.values()} == {Finish}
    assert {type(s) for rate in public.rates.values() for s in rate.by_thickness} == {Step}
    assert {type(b) for rate in public.rates.values() for b in rate.bands} <= {Band}
    assert [r.rate for r in public.rates.values()] == [r.rate for r in whole.rates.values()]
    assert [f.rate for f in public.finishes.values()] == [f.rate for f in whole.finishes.values()]
    assert whole.costs is not None
    assert whole.order.short_load is not None
    assert whole.order.short_load.charge is not None
    assert public.order.short_load is not None
    assert public.order.short_load.under == whole.order.short_load.under
    named = set(re.findall(r"(\w+)=", repr(public)))
    assert {"rate", "under"} <= named
    assert named.isdisjoint({"cost", "costs", "cost_for", "charge"})
