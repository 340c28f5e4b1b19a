"""The discount: what is taken off the price on purpose, before tax, in a line of its own."""

from collections.abc import Iterator
from fractions import Fraction

from quotegen.money import ZERO, Money, to_cents, total
from quotegen.pricing.quoted.no_work import AFTER_THE_PRICE, DISCOUNT
from quotegen.pricing.quoted.records import Line, PricedQuote
from quotegen.problem import Problem
from quotegen.quantity import ONE, Unit, decimal_of
from quotegen.reading.files.job import Discount
from quotegen.reading.files.rate_book import Basis
from quotegen.reading.records import JobSpec
from quotegen.working import Operation, Rounding, Step, added, given


def discount_line(job: JobSpec, lines: tuple[Line, ...]) -> Iterator[Line]:
    """Take the discount of the job off: a sum, or a share of all lines before it.

    It comes after the small-job minimum, which is not filled up again, and before taxes. When the
    forms are measured a share follows the price and a sum stays.
    """
    discount = job.typed.discount
    if discount is None:
        return
    working = _share(job, discount, lines) if discount.share else _sum(job, discount)
    yield Line(
        id=DISCOUNT, rate_id=DISCOUNT, name=discount.name, scope=(DISCOUNT,), placement=None,
        basis=Basis.MEASURED if discount.share else Basis.FIXED,
        quantity=ONE, unit=Unit.LUMP, rate=working.value, amount=Money(working.value),
        follows_area=False, working=working,
    )  # fmt: skip


def _sum(job: JobSpec, discount: Discount) -> Step:
    amount = to_cents(-(discount.amount or ZERO))
    typed = given("taken off", amount, "$", job.source(DISCOUNT, "amount"))
    return added(discount.name, (typed,), amount)


def _share(job: JobSpec, discount: Discount, lines: tuple[Line, ...]) -> Step:
    before, share = price_before(lines), decimal_of(-(discount.share or Fraction(0)))
    return Step(
        name=discount.name,
        formula="lines x share, to the cent",
        operation=Operation.TIMES,
        rounding=Rounding.CENT,
        inputs=(
            added("lines before the discount", tuple(line.working for line in lines), before),
            given("share taken off", share, "", job.source(DISCOUNT, "share")),
        ),
        value=to_cents(before * share),
        unit="$",
        rules=("line_rounding",),
    )


def taken_off(lines: tuple[Line, ...]) -> Money:
    """Return how much a discount takes off a price, before tax; zero where there is none."""
    return Money(-total(tuple(line.amount for line in lines if DISCOUNT in line.scope)))


def price_before(lines: tuple[Line, ...]) -> Money:
    """Return the price of the work with its minimum, before discount, tax and rounding."""
    return total(tuple(one.amount for one in lines if one.scope[0] not in AFTER_THE_PRICE))


def discount_problems(job: JobSpec, quote: PricedQuote) -> Iterator[Problem]:
    """Yield an error where a discount leaves nothing of the price at some choice of options."""
    for one in quote.combinations:
        before, taken = price_before(one.lines), taken_off(one.lines)
        if taken and before <= taken:
            yield Problem(
                code="discount-over-price",
                source=job.source(DISCOUNT),
                path=DISCOUNT,
                message=f"the discount takes ${taken:,} off, and the price before it is"
                f" ${before:,} at the finish `{one.finish}`",
                hint="type a smaller discount; a price is more than nothing",
            )
            return
