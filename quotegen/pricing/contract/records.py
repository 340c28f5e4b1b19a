"""What the price becomes after signing: the adjustment, the changes, what is paid and owed."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

from quotegen.money import Money
from quotegen.quantity import Unit
from quotegen.reading.fields.text_fields import Rate


@dataclass(frozen=True, slots=True, kw_only=True)
class AdjustedLine:
    """One measured line before and after, at the quoted rate."""

    id: str
    name: str
    placement: str | None
    unit: Unit
    rate: Decimal
    estimated: Decimal
    measured: Decimal
    difference: Decimal
    before: Money
    change: Money
    after: Money


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredArea:
    """The area of one placement against its estimate.

    Attributes:
        share: the difference as a share of the estimate.
        outside: how much of the area lies outside the band of the promise, zero inside it.
    """

    placement: str
    unit: Unit
    estimated: Decimal
    measured: Decimal
    difference: Decimal
    share: Fraction
    outside: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class RevisedPayment:
    """One payment before and after; what is paid stays paid."""

    id: str
    when: str
    before: Money
    after: Money
    paid: Money | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeOrder:
    """One change order: its amount, and what it does to the total, the payments and the days.

    Attributes:
        quantity, rate: where a rate of the book prices it; the rate is None for a typed amount.
    """

    number: int
    on: date
    what: str
    asked_by: str
    quantity: Decimal
    rate: Rate | None
    previous_total: Money
    amount: Money
    revised_total: Money
    days: int
    payments: tuple[RevisedPayment, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Remeasure:
    """The final measurement in figures.

    Attributes:
        areas: each placement.
        lines: every line that follows the forms, moved or not.
        unmoved: the sum of all other lines.
        earlier: the changes that were signed before the forms were measured.
        changed_before: the sum of those.
        previous_total, change, revised_total: of the contract, with the earlier changes in all but
            the change.
        needs_signatures: whether both must sign before the pour.
        payments: revised; they add up to the revised total.
    """

    on: date
    areas: tuple[MeasuredArea, ...]
    lines: tuple[AdjustedLine, ...]
    unmoved: Money
    earlier: tuple[ChangeOrder, ...]
    changed_before: Money
    previous_total: Money
    change: Money
    revised_total: Money
    needs_signatures: bool
    payments: tuple[RevisedPayment, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Contract:
    """The running contract: from the accepted price to what is still owed.

    Attributes:
        accepted_on: None while nobody has signed.
        finish: the finish that was accepted, or is quoted.
        quoted_total: before measuring and changes.
        remeasure: None until the forms are measured.
        changes: in the order in which they were agreed.
        total: of the contract as it stands.
        paid, balance: paid so far, and still owed.
        extra_days: that the changes add.
    """

    accepted_on: date | None
    finish: str
    quoted_total: Money
    remeasure: Remeasure | None
    changes: tuple[ChangeOrder, ...]
    total: Money
    paid: Money
    balance: Money
    extra_days: int
