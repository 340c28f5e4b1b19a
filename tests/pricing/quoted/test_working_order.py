"""The printed working, worked out a second time: over the examples and over made-up jobs."""

import random
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from quotegen.explain.results import Results
from quotegen.pricing.quoted.adjustment import with_area_changed
from quotegen.pricing.quoted.price import price
from quotegen.publish.terminal.working import working_text
from quotegen.quantity import Unit, Units
from quotegen.reading.fields.text_fields import Rate, Road
from quotegen.reading.files.company import Tax, TaxRounding
from quotegen.reading.files.job import Site
from quotegen.reading.files.rate_book import Band, RateBook, Travel
from quotegen.trade.rules import load_rules
from tests.pricing import shop
from tests.pricing.calculator import Reckoned, reckon

MADE_UP = 1_000
BATCHES = 4
ORCHARD, TANAGER = (
    next(path for path in shop.JOBS if name in path.name) for name in ("orchard", "tanager")
)


def _agrees(results: Results) -> Reckoned:
    """Reckon the working of a job again, and hold every amount of the core against it."""
    again = reckon(working_text(results))
    quote = results.quote
    assert again.price == quote.chosen.total
    worked = set(again.results.values())
    for finish in quote.finishes:
        assert finish.total in worked
        assert {line.amount for line in finish.lines} <= worked
    amounts = {one.amount for one in quote.extras} | {one.amount for one in quote.alternates}
    amounts |= {one.amount for one in quote.color_choices}
    assert amounts <= worked
    payments = [v for n, v in again.results.items() if again.names[n].startswith("Payment: ")]
    assert payments == [payment.amount for payment in quote.payments]
    for row in quote.adjustment:
        assert row.total in worked
    return again


@pytest.mark.parametrize("job_file", shop.JOBS, ids=lambda path: path.stem)
def test_every_example_comes_out_the_same(job_file: Path):
    """Each figure of each example is right by its own printed numbers, to the cent."""
    assert len(_agrees(shop.example_results(job_file)).results) > 40


@pytest.mark.parametrize("batch", range(BATCHES))
def test_made_up_jobs_come_out_the_same(batch: int):
    """A thousand jobs with prices, bands, taxes, minimums and options that chance has made."""
    chance = random.Random(batch)
    for _ in range(MADE_UP // BATCHES):
        _agrees(_made_up(chance))


def test_each_figure_names_its_place():
    """A rate is printed with its line in the rate book, a quantity with its line in the job."""
    text = working_text(shop.example_results(ORCHARD))
    book = (ORCHARD.parent.parent / "rate-book.yaml").read_text(encoding="utf-8").splitlines()
    line = next(one for one in text.splitlines() if "rate `curing`" in one)
    place = int(line.rpartition("rate-book.yaml:")[2].split(":")[0])
    assert book[place - 1].strip() == "rate: $0.25 / sq ft"


def test_each_rule_that_is_named_is_a_rule():
    """The rules beside the figures are rules of the trade's book."""
    text = working_text(shop.example_results(ORCHARD))
    named = {word for line in text.splitlines() if " = " in line
             for word in line.rpartition("(")[2].rstrip(")").split("; ")[1:]}  # fmt: skip
    assert named == {"line_rounding", "payment_rounding"}
    assert named <= load_rules().rules.keys()


def _made_up(chance: random.Random) -> Results:
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
    return replace(base, job=job, takeoff=takeoff, quote=price(job, takeoff))


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


def test_the_made_up_jobs_are_of_every_kind():
    """Chance makes metric jobs, minimums that bite, slices, taxes of both roundings, and travel."""
    chance = random.Random(0)
    made = [_made_up(chance) for _ in range(60)]
    ids = {line.id for one in made for line in one.quote.chosen.lines}
    assert {"minimum", "travel", "tax.tax0", "tax.tax1", "joints.deck.2"} <= ids
    assert {one.job.units for one in made} == set(Units)
    assert any(one.job.color for one in made)
