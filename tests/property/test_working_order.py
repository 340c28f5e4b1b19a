"""The printed working of jobs that chance has made, worked out a second time."""

import random
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from quotegen.explain.results import Results
from quotegen.pricing.quoted.adjustment import with_area_changed
from quotegen.pricing.quoted.lines import lines_of
from quotegen.pricing.quoted.price import price
from quotegen.quantity import Unit, Units
from quotegen.reading.fields.road_fields import Road
from quotegen.reading.fields.text_fields import Rate
from quotegen.reading.files.company import Tax, TaxRounding
from quotegen.reading.files.job import Site
from quotegen.reading.files.price import Band
from quotegen.reading.files.rate_book import RateBook, Travel
from tests.pricing import shop
from tests.pricing.calculator import agrees
from tests.property.effort import one_in_as_found

ORCHARD, TANAGER = (
    next(path for path in shop.JOBS if name in path.name) for name in ("orchard", "tanager")
)


@one_in_as_found(4)
@given(seed=st.integers(min_value=0, max_value=2**32))
def test_made_up_jobs_come_out_the_same(seed: int):
    """Jobs with prices, bands, taxes, minimums and options that chance has made."""
    made = _made_up(random.Random(seed))
    agrees(replace(made, quote=price(made.job, made.takeoff)))


def test_the_made_up_jobs_are_of_every_kind():
    """Chance makes metric jobs, minimums that bite, slices, taxes of both roundings, and travel."""
    chance = random.Random(0)
    made = [_made_up(chance) for _ in range(60)]
    ids = {line.id for one in made for line in lines_of(one.job, one.takeoff, one.job.finish)}
    assert {"minimum", "travel", "tax.tax0", "tax.tax1", "joints.deck.2"} <= ids
    assert {one.job.units for one in made} == set(Units)
    assert any(one.job.color for one in made)


def _made_up(chance: random.Random) -> Results:
    """An example with another book, company, site and size; it is not yet priced again."""
    base = shop.example_results(chance.choice((ORCHARD, TANAGER)))
    units, compare = chance.choice(tuple(Units)), base.job.typed.compare[: chance.randrange(2)]
    job = replace(
        base.job,
        rate_book=_book(chance, base.job.rate_book),
        company=base.job.company.model_copy(update={"tax": tuple(_taxes(chance))}),
        typed=base.job.typed.model_copy(
            update={"units": units, "compare": compare, "site": _site(chance, base.job.site)}
        ),
        color=chance.choice(((), ("clay",))),
    )
    takeoff = with_area_changed(base.takeoff, Fraction(chance.randrange(-900, 2000), 1000))
    return replace(base, job=job, takeoff=takeoff)


def _site(chance: random.Random, site: Site) -> Site:
    miles = Road(miles=Fraction(chance.randrange(1, 400), 10))
    hours = Road(hours=Fraction(chance.randrange(1, 120), 60))
    return site.model_copy(update={"distance": miles, "drive_time": hours})


def _book(chance: random.Random, book: RateBook) -> RateBook:
    rates = {
        key: rate.model_copy(update={"rate": Rate(_price(chance), rate.rate.unit)})
        if rate.rate
        else rate
        for key, rate in book.rates.items()
    }
    start = f"{chance.randrange(1, 900)} sq ft"
    bands = (
        Band.model_validate({"to": start, "rate": f"${_price(chance)} / sq ft"}),
        Band.model_validate({"from": start, "rate": f"${_price(chance)} / sq ft"}),
    )
    kind = chance.choice(("by_size", "by_slice"))
    rates["joints"] = rates["joints"].model_copy(update={"rate": None, kind: bands})
    cutting = Fraction(chance.randrange(0, 40), 200)
    rates["base"] = rates["base"].model_copy(update={"cutting": cutting})
    unit = chance.choice((Unit.MILE, Unit.HOUR))
    free = "10 miles" if unit is Unit.MILE else "20 min"
    road = Travel.model_validate({"free": free, "both_ways": chance.choice(("yes", "no"))})
    rates["travel"] = rates["travel"].model_copy(
        update={"rate": Rate(_price(chance), unit), "travel": road}
    )
    minimum = chance.choice((None, Decimal(3200), Decimal("50000.00")))
    return book.model_copy(update={"rates": rates, "minimum": minimum})


def _taxes(chance: random.Random) -> Iterator[Tax]:
    for index in range(chance.randrange(3)):
        yield Tax.model_validate({
            "id": f"tax{index}",
            "name": f"Tax {index}",
            "rate": f"{chance.randrange(1, 12_000) / 1000:.3f} %",
            "covers": chance.choice((("everything",), ("base", "slab"), ("finish", "minimum"))),
            "round": chance.choice(tuple(TaxRounding)).value,
        })  # fmt: skip


def _price(chance: random.Random) -> Decimal:
    return Decimal(chance.randrange(1, 12_000)) / 1000
