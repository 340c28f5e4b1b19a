"""The rounding: what makes a total round, in a line of its own after the taxes."""

from collections.abc import Iterator

from quotegen.money import Money, to_cents, total
from quotegen.pricing.quoted.no_work import ROUNDING
from quotegen.pricing.quoted.records import Line
from quotegen.quantity import NO_QUANTITY, ONE, Unit, rounded
from quotegen.reading.files.rate_book import Basis
from quotegen.reading.records import JobSpec
from quotegen.working import Operation, Rounding, Step, added, given, taken_away


def rounding_line(job: JobSpec, lines: tuple[Line, ...]) -> Iterator[Line]:
    """Bring the sum of all lines to the nearest step of the company, up from the half.

    What is paid is what is round, so it comes after the taxes and no tax is on it. It may be less
    than zero. A sum under half a step stays as it is, since a price of nothing is none.
    """
    step = job.company.round_total_to
    so_far = total(tuple(line.amount for line in lines))
    steps = rounded(so_far / step, 0) if step is not None else NO_QUANTITY
    if step is None or steps <= 0 or steps * step == so_far:
        return
    size = given("step", step, "$", job.company_source("round_total_to"))
    others = added("all other lines", tuple(line.working for line in lines), so_far)
    count = Step(
        name="steps", formula="lines / step, half-up to a whole number", operation=Operation.OVER,
        rounding=Rounding.WHOLE, inputs=(others, size), value=steps, unit="",
    )  # fmt: skip
    whole = Step(
        name="round total", formula="steps x step", operation=Operation.TIMES,
        inputs=(count, size), value=steps * step, unit="$",
    )  # fmt: skip
    amount = Money(to_cents(whole.value) - so_far)
    yield Line(
        id=ROUNDING, rate_id=ROUNDING, name="Rounding", scope=(ROUNDING,), placement=None,
        basis=Basis.MEASURED, quantity=ONE, unit=Unit.LUMP, rate=amount, amount=amount,
        follows_area=False, working=taken_away("Rounding", whole, others, amount),
    )  # fmt: skip
