"""Laws of the price that hold for every job and every rate book."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from quotegen.money import ZERO, Money
from quotegen.pricing.quoted.adjustment import with_area_changed
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.payments import payments_of
from quotegen.pricing.quoted.price import price
from quotegen.pricing.quoted.records import Line, PricedFinish, PricedQuote
from quotegen.quantity import Length, Unit, Units
from quotegen.reading.fields.text_fields import Count, Rate
from quotegen.reading.files.company import Payment
from quotegen.reading.files.rate_book import BookRate, Finish, RateBook
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.measure import measure
from quotegen.takeoff.records import Takeoff
from quotegen.trade.rules import load_rules
from tests.pricing import shop
from tests.property.effort import one_in
from tests.takeoff.plans import shapes
from tests.world import retyped

FINISHES = ("broom", "exposed", "slate", "ashlar")
EXTRAS = ("trench_drain", "step", "conveyor", "lawn_repair")
COUNTS = {
    "trench_drain": Count(Decimal("18.5"), Unit.FT),
    "step": Count(Decimal(3), Unit.EACH),
    "conveyor": Count(None, None),
    "lawn_repair": Count(None, None),
}
SIDES = st.integers(min_value=16 * 2, max_value=16 * 60)  # sixteenths of a foot
PRICES = st.integers(min_value=0, max_value=20_000).map(lambda n: Decimal(n) / 1000)
SHARES = st.lists(st.integers(min_value=0, max_value=3333), max_size=3)


@st.composite
def books(draw: st.DrawFn) -> RateBook:
    """The example's rate book with other prices, and with or without a minimum."""
    book = shop.example_results(shop.JOBS[0]).job.rate_book
    rates = {key: _repriced(rate, draw(PRICES)) for key, rate in book.rates.items()}
    finishes = {key: _refinished(finish, draw(PRICES)) for key, finish in book.finishes.items()}
    minimum = draw(st.sampled_from([None, Decimal(1), Decimal(3200), Decimal(50_000)]))
    return book.model_copy(update={"rates": rates, "finishes": finishes, "minimum": minimum})


def _repriced(rate: BookRate, price: Decimal) -> BookRate:
    if rate.rate is None:  # prices by thickness stay as they are
        return rate
    return rate.model_copy(update={"rate": Rate(price, rate.rate.unit)})


def _refinished(finish: Finish, price: Decimal) -> Finish:
    return finish.model_copy(update={"rate": Rate(price, Unit.SQ_FT)})


@st.composite
def jobs(draw: st.DrawFn) -> JobSpec:
    """A job of up to three rectangles, some with a finish of their own."""
    base = shop.example_results(shop.JOBS[0]).job
    count = draw(st.integers(min_value=1, max_value=3))
    finish, *compare = draw(st.permutations(FINISHES))
    typed = retyped(
        base,
        units=draw(st.sampled_from(Units)),
        compare=tuple(compare[: draw(st.integers(min_value=0, max_value=3))]),
        extras={extra: COUNTS[extra] for extra in draw(st.sets(st.sampled_from(EXTRAS)))},
    )
    return replace(
        typed,
        finish=finish,
        placements=tuple(_placement(draw, base.placements[0], number) for number in range(count)),
        include={"haul_off": Count(Decimal("4.25"), Unit.CU_YD)} if draw(st.booleans()) else {},
        rate_book=draw(books()),
    )


def _placement(draw: st.DrawFn, like: PlacementSpec, number: int) -> PlacementSpec:
    length, width = draw(SIDES), draw(SIDES)
    return replace(
        retyped(like, id=f"part{number}"),
        path=("placements", number),
        name=f"Part {number}",
        add=shapes((_rectangle(length, width, number),)),
        take_away=(),
        thickness=Length.of_inches(
            draw(st.sampled_from([Fraction(7, 2), Fraction(4), Fraction(6)]))
        ),
        finish=draw(st.sampled_from([None, None, *FINISHES])),
        include={},
    )


def _rectangle(length: int, width: int, number: int) -> dict[str, object]:
    return {
        "rectangle": f"{length}/16 ft x {width}/16 ft",
        "at": [f"{number * 100} ft", "0"],
        "against_house": "bottom",
    }


def _measured(job: JobSpec) -> Takeoff:
    takeoff, problems = measure(job, load_rules())
    assert problems == ()
    assert takeoff is not None
    return takeoff


def _priced(job: JobSpec) -> PricedQuote:
    return price(job, _measured(job))


def _totals(priced: PricedQuote) -> dict[str, Money]:
    return {finish.id: finish.total for finish in priced.finishes}


class TestMoneyAddsUp:
    """Totals are sums of lines, and payments add up to the total exactly."""

    @one_in(4)
    @given(jobs())
    def test_a_total_is_its_lines(self, job: JobSpec):
        """At every finish the total is the sum of lines, and each line its quantity and rate."""
        for finish in _priced(job).finishes:
            assert finish.total == sum((line.amount for line in finish.lines), ZERO)
            for line in finish.lines:
                assert line.amount == shop.half_up(line.quantity * line.rate)

    @given(SHARES, st.integers(min_value=0, max_value=10**8))
    def test_payments_are_the_total(self, hundredths: list[int], cents: int):
        """For any shares and any total; no payment but the last passes its share."""
        base = shop.example_results(shop.JOBS[0]).job
        payments = [Payment(id=f"p{n}", when="then", share=f"{share / 100:.2f} %")  # type: ignore[arg-type]
                    for n, share in enumerate(hundredths)]  # fmt: skip
        payments.append(Payment(id="last", when="at the end"))
        company = base.company.model_copy(update={"payments": tuple(payments)})
        whole = Money(Decimal(cents) / 100)
        paid = payments_of(replace(base, company=company), whole)
        assert sum((payment.amount for payment in paid), ZERO) == whole
        for payment in paid[:-1]:
            assert payment.share is not None
            share = Fraction(whole) * payment.share
            assert 0 <= share - Fraction(payment.amount) < Fraction(1, 100)

    @given(SHARES, st.integers(0, 10**6), st.integers(0, 10**6))
    def test_a_sum_at_signing(self, hundredths: list[int], deposit: int, cents: int):
        """For any sum and any total they add up, and none is more than those before it leave."""
        base = shop.example_results(shop.JOBS[0]).job
        first = Payment(id="first", when="then", amount=f"${deposit / 100:.2f}")  # type: ignore[arg-type]
        shares = [Payment(id=f"p{n}", when="then", share=f"{share / 100:.2f} %")  # type: ignore[arg-type]
                  for n, share in enumerate(hundredths)]  # fmt: skip
        payments = (first, *shares, Payment(id="last", when="at the end"))
        company = base.company.model_copy(update={"payments": payments})
        left = whole = Money(Decimal(cents) / 100)
        paid = payments_of(replace(base, company=company), whole)
        assert sum((payment.amount for payment in paid), ZERO) == whole
        assert paid[0].amount == min(Decimal(deposit) / 100, whole)
        for payment in paid:
            assert 0 <= payment.amount <= left
            left = Money(left - payment.amount)

    @one_in(4)
    @given(jobs())
    def test_nobody_pays_less_than_the_smallest_job(self, job: JobSpec):
        """No finish is under the minimum, and the top-up stands there only when it is needed."""
        minimum = job.rate_book.minimum
        for finish in _priced(job).finishes:
            topped_up = any("minimum" in line.scope for line in finish.lines)
            assert minimum is None or finish.total >= minimum
            assert not topped_up or finish.total == minimum


class TestMoreIsNotCheaper:
    """More area never costs less."""

    @one_in(4)
    @given(jobs(), SIDES, SIDES, SIDES)
    def test_a_longer_side(self, job: JobSpec, length: int, width: int, more: int):
        """One placement made longer, at any finish."""
        short, long = (
            replace(job, placements=(
                replace(job.placements[0], add=shapes((_rectangle(side, width, 0),))),
                *job.placements[1:]))
            for side in (length, min(length + more, 16 * 90))
        )  # fmt: skip
        before, after = _totals(_priced(short)), _totals(_priced(long))
        assert all(before[finish] <= after[finish] for finish in before)

    @one_in(4)
    @given(jobs(), st.fractions(Fraction(-1, 2), Fraction(1, 2)),
           st.fractions(Fraction(-1, 2), Fraction(1, 2)))  # fmt: skip
    def test_a_larger_measure(self, job: JobSpec, one: Fraction, other: Fraction):
        """A larger area found in the forms costs as much or more."""
        takeoff = _measured(job)
        less, more = (
            _totals(price(job, with_area_changed(takeoff, change)))
            for change in sorted((one, other))
        )
        assert all(less[finish] <= more[finish] for finish in less)


class TestTheAdjustment:
    """When the area turns out larger or smaller, the rate stays as quoted."""

    @one_in(4)
    @given(jobs())
    def test_at_zero_nothing_changes(self, job: JobSpec):
        """A measure that comes out as quoted is the quote, to the cent."""
        takeoff = _measured(job)
        assert price(job, with_area_changed(takeoff, Fraction(0))) == price(job, takeoff)
        (same,) = (row for row in price(job, takeoff).adjustment if row.change == 0)
        assert (same.difference, same.needs_signatures) == (ZERO, False)

    @one_in(4)
    @given(jobs())
    def test_fixed_lines_stay(self, job: JobSpec):
        """Only what is measured moves, and no rate does."""
        takeoff = _measured(job)
        before = shop.by_id(price(job, takeoff).chosen)
        after = shop.by_id(price(job, with_area_changed(takeoff, Fraction(1, 10))).chosen)
        for key in before.keys() & after.keys() - {"minimum"}:
            assert after[key].rate == before[key].rate
            if not before[key].follows_area:
                assert after[key] == before[key]

    @one_in(4)
    @given(jobs())
    def test_signatures_by_the_rise_of_the_price(self, job: JobSpec):
        """A row needs signatures just when the price rises by more than the promised share."""
        priced = _priced(job)
        promised = job.company.adjustment.no_pour_above
        for row in priced.adjustment:
            above = Fraction(row.total) > Fraction(priced.chosen.total) * (1 + promised)
            assert row.needs_signatures == above


class TestOrderDoesNotMatter:
    """A price is a sum, so it is the same in whatever order the job was typed."""

    @one_in(10)
    @given(jobs(), st.randoms(use_true_random=False))
    def test_placements_extras_and_compare(self, job: JobSpec, chance):
        """Shuffled, every finish has its total and every extra its amount."""
        before = _priced(job)
        placements, extras, compare = (
            list(job.placements),
            list(job.extras),
            list(job.typed.compare),
        )
        for typed in (placements, extras, compare):
            chance.shuffle(typed)
        shuffled = retyped(
            job, compare=tuple(compare), extras={extra: job.extras[extra] for extra in extras}
        )
        after = _priced(replace(shuffled, placements=tuple(placements)))
        assert _totals(after) == _totals(before)
        assert {e.id: e.amount for e in after.extras} == {e.id: e.amount for e in before.extras}

    @one_in(10)
    @given(jobs())
    def test_chosen_or_compared(self, job: JobSpec):
        """A finish costs the same whether it is chosen or compared with."""
        before = _priced(job)
        for finish in job.typed.compare:
            others = tuple(f for f in (job.finish, *job.typed.compare) if f != finish)
            other = replace(retyped(job, compare=others), finish=finish)
            assert _totals(_priced(other)) == _totals(before)


class TestExtras:
    """An extra is what the total rises by, and nothing stays behind when it goes."""

    @one_in(4)
    @given(jobs())
    def test_added_and_removed(self, job: JobSpec):
        """With it the total is more by its amount; without it the price is as it was."""
        takeoff = _measured(job)
        priced = price(job, takeoff)
        without = _totals(price(retyped(job, extras={}), takeoff))
        assert without == _totals(priced)
        for extra in priced.extras:
            with_it = price_at(job, takeoff, job.finish, (extra.id,))
            assert with_it.total - extra.amount == priced.chosen.total
            assert extra.amount >= 0

    @one_in(4)
    @given(jobs())
    def test_all_at_once(self, job: JobSpec):
        """Without a minimum in the way, all extras together cost their sum."""
        free = replace(job, rate_book=job.rate_book.model_copy(update={"minimum": None}))
        takeoff = _measured(free)
        priced = price(free, takeoff)
        together = price_at(free, takeoff, free.finish, tuple(free.extras))
        assert together.total - priced.chosen.total == sum((e.amount for e in priced.extras), ZERO)


class TestMetric:
    """A rate is converted and rounded to the cent once; from then on it is the promise."""

    @one_in(4)
    @given(jobs())
    def test_the_same_job_in_both_systems(self, job: JobSpec):
        """Totals in meters and in feet differ by no more than rounding explains, line by line."""
        us, metric = (_priced(retyped(job, units=units)) for units in (Units.US, Units.METRIC))
        for finish, other in zip(us.finishes, metric.finishes, strict=True):
            assert abs(finish.total - other.total) <= _explained(finish)


SIZES = {  # one unit in meters, and half a step of its quantity in either system
    Unit.SQ_FT: (Decimal("0.09290304"), Decimal("0.05"), Decimal("0.005")),
    Unit.FT: (Decimal("0.3048"), Decimal("0.05"), Decimal("0.005")),
    Unit.CU_YD: (Decimal("0.764554857984"), Decimal("0.005"), Decimal("0.005")),
}
HALF_A_CENT = Decimal("0.005")


def _explained(finish: PricedFinish) -> Decimal:
    """The most that rounding can move the price of a finish; the top-up follows the rest."""
    return sum((_explained_line(line) for line in finish.lines), Decimal(0))


def _explained_line(line: Line) -> Decimal:
    if line.unit not in SIZES:
        return Decimal(0)
    size, us_step, metric_step = SIZES[line.unit]
    of_the_rate = HALF_A_CENT * ((line.quantity + us_step) * size + metric_step)
    of_the_quantity = us_step * line.rate + metric_step * line.rate / size
    return of_the_rate + of_the_quantity + 2 * HALF_A_CENT
