"""Laws of bands, taxes, options and subtotals that hold for every job and every rate book."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from hypothesis import assume, given
from hypothesis import strategies as st

from quotegen.money import ZERO
from quotegen.pricing.quoted.adjustment import with_area_changed
from quotegen.pricing.quoted.discount import price_before
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.no_work import DISCOUNT, ROUNDING
from quotegen.pricing.quoted.price import price
from quotegen.pricing.quoted.records import Line
from quotegen.quantity import decimal_of
from quotegen.reading.files.company import Tax, TaxRounding
from quotegen.reading.files.job import Discount
from quotegen.reading.files.price import Band
from quotegen.reading.files.rate_book import BookRate
from quotegen.reading.records import JobSpec
from tests.pricing import shop
from tests.property.effort import one_in
from tests.property.test_pricing import FINISHES, PRICES, _measured, jobs
from tests.world import retyped


@st.composite
def taxed_jobs(draw: st.DrawFn) -> JobSpec:
    """A job with slices, alternates, and all that follows from other lines."""
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
    job = replace(job, company=job.company.model_copy(update={"tax": taxes}))
    job = with_shares(draw, with_a_round_total(draw, job))
    rates = {**job.rate_book.rates, "joints": rates["joints"]}
    return replace(
        job,
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


def with_shares(draw: st.DrawFn, job: JobSpec) -> JobSpec:
    """Return a job with up to two shares in its book, one of them perhaps of everything."""
    rates = dict(job.rate_book.rates)
    for number in range(draw(st.integers(0, 2))):
        rates[f"share{number}"] = BookRate.model_validate({
            "name": "Share", "covers": ["surcharge"],
            "share": f"{draw(st.integers(1, 20_000)) / 1000:.3f} %",
            "share_of": draw(st.sampled_from([("everything",), ("base", "finish"), ("travel",)])),
        })  # fmt: skip
    return replace(job, rate_book=job.rate_book.model_copy(update={"rates": rates}))


def with_a_discount(draw: st.DrawFn, job: JobSpec) -> JobSpec:
    """Return a job with a discount of a share, of a small sum, or of nothing."""
    how = draw(st.sampled_from([None, "share", "amount"]))
    if how is None:
        return job
    typed = {"share": f"{draw(st.integers(1, 50_000)) / 1000:.3f} %",
             "amount": f"${draw(st.integers(1, 30_000)) / 100:.2f}"}[how]  # fmt: skip
    return retyped(job, discount=Discount.model_validate({"name": "Off", how: typed}))


def with_a_round_total(draw: st.DrawFn, job: JobSpec) -> JobSpec:
    """Return a job whose company may round its totals, with a discount or none."""
    step = draw(st.sampled_from([None, Decimal(1), Decimal(10), Decimal(50)]))
    company = job.company.model_copy(update={"round_total_to": step})
    return replace(with_a_discount(draw, job), company=company)


def _amount(lines: tuple[Line, ...], scope: str) -> Decimal:
    return sum((line.amount for line in lines if scope in line.scope), ZERO)


@st.composite
def shared_jobs(draw: st.DrawFn) -> JobSpec:
    """A job with shares and a discount, and no minimum."""
    job = draw(jobs())
    free = replace(job, rate_book=job.rate_book.model_copy(update={"minimum": None}))
    return with_a_discount(draw, with_shares(draw, free))


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
        price_at(job, with_area_changed(takeoff, change), job.finish)
        for change in sorted((one, other))
    )
    assume(price_before(less.lines) > -_amount(less.lines, DISCOUNT))
    assert less.total <= more.total


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


@one_in(4)
@given(taxed_jobs())
def test_each_line_that_follows_is_worked_out_once(job: JobSpec):
    """Shares from the work alone, the discount from both, tax from all three, the rounding last."""
    for one in price(job, _measured(job)).finishes:
        work = [ln for ln in one.lines if ln.pays_for_work and "surcharge" not in ln.scope]
        for rate_id, rate in job.rate_book.rates.items():
            for line in (ln for ln in one.lines if ln.rate_id == rate_id and rate.share):
                shared = sum((w.amount for w in work if _is_of(rate, w)), ZERO)
                assert line.amount == shop.half_up(shared * decimal_of(rate.share or Fraction(0)))
        discount, before = job.typed.discount, price_before(one.lines)
        if discount is not None:
            off = discount.amount or before * decimal_of(discount.share or Fraction(0))
            assert _amount(one.lines, DISCOUNT) == -shop.half_up(off)


def _is_of(rate: BookRate, line: Line) -> bool:
    return "everything" in rate.share_of or not set(rate.share_of).isdisjoint(line.scope)


@one_in(4)
@given(taxed_jobs())
def test_every_total_is_round(job: JobSpec):
    """Each total is the multiple nearest to its lines, unless it is under half a step."""
    priced, step = price(job, _measured(job)), job.company.round_total_to
    for lines in (one.lines for one in priced.combinations):
        rounding = _amount(lines, ROUNDING)
        exact = sum((line.amount for line in lines), ZERO) - rounding
        if step is None or exact < step / 2:
            assert rounding == 0
        else:
            assert (exact + rounding) % step == 0
            assert -step / 2 < rounding <= step / 2


@one_in(4)
@given(shared_jobs(), st.integers(1, 500))
def test_what_one_more_unit_of_area_moves(job: JobSpec, more: int):
    """So many units more move the price before tax and rounding by as many times the area price.

    Every line and every share of lines is rounded by itself, so half a cent may go with each.
    """
    takeoff = _measured(job)
    first, *others = takeoff.placements
    larger = replace(first, area_sqft=first.area_sqft + more, area_m2=first.area_m2 + more)
    before = price_at(job, takeoff, job.finish)
    after = price_at(job, replace(takeoff, placements=(larger, *others)), job.finish)
    moved = _before_tax(after.lines) - _before_tax(before.lines)
    assert abs(moved - more * before.area_price[0].rate) <= Decimal("0.01") * len(after.lines)


def _before_tax(lines: tuple[Line, ...]) -> Decimal:
    return price_before(lines) + _amount(lines, DISCOUNT)


def _by_choice(priced) -> dict[object, Decimal]:
    return {
        (one.finish, frozenset(one.extras), one.alternates, one.colors): one.total
        for one in priced.combinations
    }
