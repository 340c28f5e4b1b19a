"""Totals that both signed, held against what the files come to today: none may move by itself."""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from quotegen.money import Money
from quotegen.pricing.contract.records import Contract
from quotegen.pricing.quoted.finish import accepted_of
from quotegen.problem import Problem
from quotegen.reading.files.after_signing import Accepted
from quotegen.reading.records import JobSpec
from quotegen.reading.yaml.located import DocumentPath

_PRICES_MOVED = (
    "if a price or a size was changed since, put it back as it was quoted (new prices go into a"
    " second rate book beside the first, `rate-book-YYYY-MM.yaml`, with its own `valid_from`)"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Signed:
    """One total of the job file.

    Attributes:
        path: of the total.
        typed: None where it is left out.
        what: it is the price of, in words.
        comes_to: what today's files give, in dollars.
        or_else: what else may be wrong, in words.
    """

    path: DocumentPath
    typed: Decimal | None
    what: str
    comes_to: Money
    or_else: str


def signed_problems(job: JobSpec, contract: Contract) -> tuple[Problem, ...]:
    """Return what is to be said of the totals that both signed.

    The first total that does not come out is an error; those after it start from it, so they
    are not said beside it. An acceptance without its total is a warning.
    """
    accepted = job.typed.accepted
    if accepted is None:
        return ()
    drifted = tuple(_drifted(job, one) for one in _signed(job, accepted, contract) if _moved(one))
    if drifted:
        return drifted[:1]
    held = accepted.total is not None or accepted.revision is not None
    return () if held else (_without_total(job, accepted, contract),)


def _signed(job: JobSpec, accepted: Accepted, contract: Contract) -> Iterator[_Signed]:
    """Yield each total in the order in which the contract runs."""
    finish, extras = accepted_of(job)
    chosen = " with ".join((f"`{finish}`", *(f"`{extra}`" for extra in extras)))
    yield _Signed(
        path=("accepted", "total"),
        typed=accepted.total,
        what=f"the quote at {chosen}",
        comes_to=contract.quoted_total,
        or_else="correct the total, the finish or the extras that were accepted",
    )
    measured, adjusted = job.typed.measured, contract.remeasure
    changes = tuple(_changed(job, contract))
    earlier = len(adjusted.earlier) if adjusted is not None else len(changes)
    yield from changes[:earlier]
    if measured is not None and adjusted is not None:
        yield _Signed(
            path=("measured", "total"),
            typed=measured.total,
            what="the contract after measuring",
            comes_to=adjusted.revised_total,
            or_else="correct the total, or what was measured",
        )
    yield from changes[earlier:]


def _changed(job: JobSpec, contract: Contract) -> Iterator[_Signed]:
    for index, (change, made) in enumerate(zip(job.typed.changes, contract.changes, strict=True)):
        yield _Signed(
            path=("changes", index, "total"),
            typed=change.total,
            what=f"the contract after change {change.number}",
            comes_to=made.revised_total,
            or_else="correct the total, or the amount of the change",
        )


def _moved(one: _Signed) -> bool:
    return one.typed is not None and one.typed != one.comes_to


def _drifted(job: JobSpec, one: _Signed) -> Problem:
    said = f"{one.what} was signed for ${one.typed:,.2f}; today's files come to ${one.comes_to:,}"
    return job.places.fault(
        one.path, "signed-drifted", said, f"{_PRICES_MOVED}; else {one.or_else}"
    )


def _without_total(job: JobSpec, accepted: Accepted, contract: Contract) -> Problem:
    keys = [f"date: {accepted.date}"]
    if accepted.finish is not None:
        keys.append(f"finish: {accepted.finish}")
    if accepted.extras:
        keys.append(f"extras: [{', '.join(accepted.extras)}]")
    # a comma would end the value inside { }
    line = f"accepted: {{{', '.join((*keys, f'total: ${contract.quoted_total}'))}}}"
    said = "the quote is accepted without its total, so a later change of prices would move it"
    hint = f"today it is ${contract.quoted_total:,}; if both signed that, type `{line}`"
    return job.places.warning(("accepted",), "accepted-without-total", said, hint)
