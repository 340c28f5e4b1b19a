"""The working as text: every amount as a sum that can be typed into a pocket calculator.

A step that is worked out has a number, its given values with their places in the files, and a
line of figures: `659.1 x 1.35 = 889.79   (half-up to the cent; line_rounding)`. A figure that an
earlier step gave is named by the number of that step.
"""

from collections.abc import Iterator
from decimal import Decimal

from quotegen.explain.results import Results
from quotegen.pricing.quoted.working_order import TitledSteps, working_of
from quotegen.working import Operation, Step

Numbers = dict[tuple[object, ...], str]
"""The number of each step written so far, by its name, operation and inputs."""


def working_text(results: Results) -> str:
    """Write the working of a job, from the tape readings to the price."""
    job = results.job
    lines = [f"{job.title}, quote {job.quote}, revision {job.revision}: the working", ""]
    numbers: Numbers = {}
    for number, titled in enumerate(working_of(job, results.takeoff, results.quote), start=1):
        lines.extend(_titled(number, titled, numbers))
        lines.append("")
    lines.append(f"The price: {plain(results.quote.chosen.total)}")
    return "\n".join(lines) + "\n"


def plain(value: Decimal) -> str:
    """Write a figure as a calculator takes it: no thousands, no power of ten."""
    return f"{value:f}"


def _key(step: Step) -> tuple[object, ...]:
    return (step.name, step.operation, *((one.name, one.value) for one in step.inputs))


def _titled(number: int, titled: TitledSteps, numbers: Numbers) -> Iterator[str]:
    yield f"{number}  {titled.title}"
    count = len(numbers)
    for step in titled.steps:
        for one in _unwritten(step, numbers):
            numbers[_key(one)] = f"{number}.{len(numbers) - count + 1}"
            yield from _step(one, numbers)
    if titled.steps and len(numbers) == count:
        yield f"  as {', '.join(numbers[_key(step)] for step in titled.steps)}"


def _unwritten(step: Step, numbers: Numbers) -> Iterator[Step]:
    """Yield the steps that a step rests on, then the step itself, leaving out those written."""
    if step.operation is None or _key(step) in numbers:
        return
    for one in step.inputs:
        yield from _unwritten(one, numbers)
    yield step


def _step(step: Step, numbers: Numbers) -> Iterator[str]:
    yield f"  {numbers[_key(step)]}  {step.name}: {step.formula}"
    if step.operation is Operation.PLUS and all(_key(one) in numbers for one in step.inputs):
        yield f"       {' + '.join(numbers[_key(one)] for one in step.inputs)}"
    else:
        yield from (f"       {_named(one, numbers)}" for one in step.inputs)
    figures = f" {step.operation} ".join(plain(one.value) for one in step.inputs)
    rules = "".join(f"; {rule}" for rule in step.rules)
    yield f"       {figures} = {plain(step.value)}   ({step.rounding}{rules})"


def _named(step: Step, numbers: Numbers) -> str:
    place = f"  [{step.source}]" if step.source else ""
    above = f"  (see {numbers[_key(step)]})" if _key(step) in numbers else ""
    unit = f" {step.unit}" if step.unit else ""
    return f"{step.name}: {plain(step.value)}{unit}{above}{place}"
