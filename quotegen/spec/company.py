"""The company file: who quotes, on what terms, and how the paper looks."""

from enum import StrEnum
from typing import Annotated

from pydantic import AfterValidator, Field
from pydantic_core import PydanticCustomError

from quotegen.spec.fields import (
    ColourField,
    DateField,
    DaysField,
    EmailField,
    Model,
    ShareField,
    Slug,
    StateCode,
    Word,
)
from quotegen.spec.job import Excluded


class Weekday(StrEnum):
    """A day of the week, in the order that Python counts them."""

    MONDAY = "Monday"
    TUESDAY = "Tuesday"
    WEDNESDAY = "Wednesday"
    THURSDAY = "Thursday"
    FRIDAY = "Friday"
    SATURDAY = "Saturday"
    SUNDAY = "Sunday"


class Payment(Model):
    """One payment: the event it falls due at, and its share; the last takes what remains.

    `at_visit` names the visit whose first day is the event; without it the event has no date.
    """

    id: Slug
    when: Word
    share: ShareField | None = None
    at_visit: Slug | None = None


def _payments_add_up(payments: tuple[Payment, ...]) -> tuple[Payment, ...]:
    *earlier, last = payments
    if last.share is not None or any(p.share is None for p in earlier):
        raise PydanticCustomError(
            "payment-remainder",
            "every payment but the last needs a share; the last takes what remains",
        )
    ids = [payment.id for payment in payments]
    if len(set(ids)) < len(ids):
        raise PydanticCustomError(
            "payment-twice", "two payments have the same id; give each its own"
        )
    if sum(p.share or 0 for p in earlier) >= 1:
        raise PydanticCustomError(
            "payment-shares", "the shares before the last payment reach 100 % or more"
        )
    return payments


class Adjustment(Model):
    """The promise on area: what happens when the forms measure more or less."""

    no_pour_above: ShareField
    reopen_outside: ShareField


class Insurance(Model):
    """Who insures the company, and for how much."""

    carrier: Word
    phone: Word
    covers: Word


class Company(Model):
    """A whole company file."""

    name: Word
    owner: Word
    address: Word
    town: Word
    state: StateCode | None = None
    phone: Word
    email: EmailField
    licence: Word | None = None
    insurance: Insurance | None = None
    accent: ColourField = "#1f4e79"
    holds_days: DaysField
    working_days: tuple[Weekday, ...] = Field(min_length=1)
    closed: tuple[DateField, ...] = ()
    payments: Annotated[tuple[Payment, ...], Field(min_length=1), AfterValidator(_payments_add_up)]
    adjustment: Adjustment
    warranty: Word
    not_included: tuple[Excluded, ...] = ()
