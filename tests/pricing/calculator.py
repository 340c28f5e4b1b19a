"""A second reckoning of what `figure --working` prints, with Python's decimal and nothing of ours.

It reads the text as a person with a pocket calculator does: each line of figures is worked out
again from its own numbers, and each number must stand above, as a given value or as a result.
"""

import re
from dataclasses import dataclass
from decimal import ROUND_DOWN, ROUND_HALF_UP, Decimal

from quotegen.explain.results import Results
from quotegen.publish.terminal.working import working_text

FIGURES = re.compile(
    r"^ {7}(?P<sum>-?[\d.]+(?: [x/+-] -?[\d.]+)*) = (?P<result>-?[\d.]+)   \((?P<how>.+)\)$"
)
HEAD = re.compile(r"^  (?P<number>\d+\.\d+)  (?P<name>.+): [^:]+$")
GIVEN = re.compile(r"^ {7}[^=]+: (?P<value>-?[\d.]+)(?= |$)")
SEEN = re.compile(r"\(see (?P<number>\d+\.\d+)\)")
ROUNDING = {
    "half-up to the cent": (Decimal("0.01"), ROUND_HALF_UP),
    "down to the cent": (Decimal("0.01"), ROUND_DOWN),
    "half-up to 0.1": (Decimal("0.1"), ROUND_HALF_UP),
    "half-up to 0.01": (Decimal("0.01"), ROUND_HALF_UP),
    "half-up to a whole number": (Decimal(1), ROUND_HALF_UP),
}


@dataclass(frozen=True, slots=True)
class Reckoned:
    """What came out: results by number, the last figure of the text, and how many were checked."""

    results: dict[str, Decimal]
    names: dict[str, str]
    price: Decimal

    def named(self, name: str) -> list[Decimal]:
        """Return the results of every step of a name, in order."""
        return [self.results[number] for number, one in self.names.items() if one == name]


def reckon(text: str) -> Reckoned:
    """Work every line of figures out again; any that is wrong fails by its number."""
    results: dict[str, Decimal] = {}
    names: dict[str, str] = {}
    number = ""
    given: list[str] = []
    for line in text.splitlines():
        if head := HEAD.match(line):
            number, given = head["number"], []
            names[number] = head["name"]
        elif figures := FIGURES.match(line):
            operands = figures["sum"].split()[::2]
            assert operands == given, (number, operands, given)
            worked = rounded(value_of(figures["sum"]), figures["how"].split(";")[0])
            assert worked == Decimal(figures["result"]), (number, line)
            results[number] = worked
        elif re.fullmatch(r" {7}\d+\.\d+(?: \+ \d+\.\d+)*", line):
            given = [f"{results[one]:f}" for one in line.split()[::2]]
        elif value := GIVEN.match(line):
            given.append(value["value"])
            if seen := SEEN.search(line):
                assert Decimal(value["value"]) == results[seen["number"]], (number, line)
    assert results.keys() == names.keys()
    return Reckoned(results, names, Decimal(text.splitlines()[-1].removeprefix("The price: ")))


def value_of(figures: str) -> Decimal:
    """Key the figures in from left to right; no line mixes + and x."""
    first, *rest = figures.split()
    value = Decimal(first)
    for sign, operand in zip(rest[::2], rest[1::2], strict=True):
        match sign:
            case "x":
                value *= Decimal(operand)
            case "/":
                value /= Decimal(operand)
            case "+":
                value += Decimal(operand)
            case _:
                value -= Decimal(operand)
    return value


def rounded(value: Decimal, how: str) -> Decimal:
    """Round as the line says."""
    if how == "exact":
        return value
    step, mode = ROUNDING[how]
    return value.quantize(step, rounding=mode)


def agrees(results: Results) -> Reckoned:
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
