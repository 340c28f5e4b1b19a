"""Laws of bands, taxes, options and subtotals that hold for every job and every rate book."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from quotegen.money import ZERO
from quotegen.pricing.quoted.adjustment import with_area_changed
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.price import price
from quotegen.reading.files.company import Tax, TaxRounding
from quotegen.reading.files.rate_book import Band
from quotegen.reading.records import JobSpec
from tests.property.effort import one_in
from tests.property.test_pricing import FINISHES, PRICES, _measured, jobs
from tests.world import retyped


@st.composite
def taxed_jobs(draw: st.DrawFn) -> JobSpec:
    """A job with slices, taxes and alternates."""
    job = draw(jobs())
    job = retyped(job, extras=dict(list(job.extras.items())[:2]), compare=job.typed.compare[:1])
    border = f"{draw(st.integers(1, 3000))} sq ft"
    bands = (
        Band.model_validate({"to": border, "rate": f"${draw(PRICES)} / sq ft"}),
        Band.model_validate({"from": border, "rate": f"${draw(PRICES)} / sq ft"}),
    )
    rates = dict(job.rate_book.rates)
    rates["joints"] = rates["joints"].model_copy(update={"rate": None, "by_slice": bands})
    taxes = tuple(draw(_taxes(number)) for number in range(draw(st.integers(0, 2))))
    first = job.placements[0]
    other = draw(st.sampled_from([f for f in FINISHES if f != (first.finish or job.finish)]))
    return replace(
        job,
        company=job.company.model_copy(update={"tax": taxes}),
        rate_book=job.rate_book.model_copy(update={"rates": rates}),
        placements=(retyped(first, alternates=(other,)), *job.placements[1:]),
    )


@st.composite
def _taxes(draw: st.DrawFn, number: int) -> Tax:
    return Tax.model_validate({
        "id": f"tax{number}", "name": "Tax",
        "rate": f"{draw(st.integers(0, 12_000)) / 1000:.3f} %",
        "covers": draw(st.sampled_from([("everything",), ("base", "finish"), ("joints",)])),
        "round": draw(st.sampled_from(TaxRounding)).value,
    })  # fmt: skip


CHANGES = st.fractions(Fraction(-1, 2), Fraction(1, 2), max_denominator=1000)


@one_in(4)
@given(taxed_jobs())
def test_totals_are_lines_and_payments_add_up(job: JobSpec):
    """With taxes and slices a total is its lines; payments and subtotals add up to it exactly."""
    priced = price(job, _measured(job))
    for finish in priced.finishes:
        assert finish.total == sum((line.amount for line in finish.lines), ZERO)
    for parts in (priced.payments, priced.by_placement, priced.by_scope):
        assert sum((part.amount for part in parts), ZERO) == priced.chosen.total
    for one in priced.combinations:
        assert sum(one.payments, ZERO) == one.total


@one_in(4)
@given(taxed_jobs(), CHANGES, CHANGES)
def test_more_area_never_costs_less(job: JobSpec, one: Fraction, other: Fraction):
    """Slices and taxes included, a larger area costs as much or more."""
    takeoff = _measured(job)
    less, more = (
        price_at(job, with_area_changed(takeoff, change), job.finish).total
        for change in sorted((one, other))
    )
    assert less <= more


@one_in(4)
@given(taxed_jobs(), st.randoms(use_true_random=False))
def test_the_order_of_options_never_matters(job: JobSpec, chance):
    """Shuffled, each combination has its price."""
    takeoff = _measured(job)
    extras, compare = list(job.extras), list(job.typed.compare)
    chance.shuffle(extras)
    chance.shuffle(compare)
    other = retyped(
        job, extras={extra: job.extras[extra] for extra in extras}, compare=tuple(compare)
    )
    assert _by_choice(price(other, takeoff)) == _by_choice(price(job, takeoff))


@one_in(4)
@given(taxed_jobs())
def test_a_combination_is_a_job_of_its_own(job: JobSpec):
    """A choice costs what a job costs that was typed that way from the start."""
    takeoff = _measured(job)
    for one in price(job, takeoff).combinations:
        finishes = dict(one.alternates)
        chosen = replace(job, placements=tuple(
            replace(p, finish=finishes.get(p.id, p.finish)) for p in job.placements))  # fmt: skip
        assert price_at(chosen, takeoff, one.finish, one.extras).total == one.total


def _by_choice(priced) -> dict[object, Decimal]:
    return {
        (one.finish, frozenset(one.extras), one.alternates, one.colors): one.total
        for one in priced.combinations
    }
