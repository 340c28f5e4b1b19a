"""The small-job minimum: the least price that pays for coming, before tax."""

from collections.abc import Iterator

from quotegen.money import Money, to_cents, total
from quotegen.pricing.quoted.no_work import MINIMUM
from quotegen.pricing.quoted.records import Line
from quotegen.quantity import ONE, Unit
from quotegen.reading.files.rate_book import Basis
from quotegen.reading.records import JobSpec
from quotegen.working import added, given, taken_away


def minimum_line(job: JobSpec, lines: tuple[Line, ...]) -> Iterator[Line]:
    """Top a job up to the smallest price that pays for coming, in a line of its own."""
    minimum = job.rate_book.minimum
    so_far = total(tuple(one.amount for one in lines))
    if minimum is None or so_far >= minimum:
        return
    missing = to_cents(minimum - so_far)
    smallest = given("smallest job in the rate book", minimum, "$", job.book_source("minimum"))
    others = added("all other lines", tuple(one.working for one in lines), so_far)
    name = "Small-job minimum"
    yield Line(
        id=MINIMUM, rate_id=MINIMUM, name=name, scope=(MINIMUM,), placement=None,
        basis=Basis.MEASURED, quantity=ONE, unit=Unit.LUMP, rate=missing, amount=missing,
        follows_area=False, working=taken_away(name, smallest, others, Money(missing)),
    )  # fmt: skip
