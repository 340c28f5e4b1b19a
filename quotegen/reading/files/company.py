"""The company file: who quotes, on what terms, and how the paper looks."""

from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from typing import Annotated

from pydantic import AfterValidator, Field
from pydantic_core import PydanticCustomError

from quotegen.quantity import Units, decimal_of
from quotegen.reading.fields.typed_fields import (
    AmountField,
    ColorField,
    DateField,
    DaysField,
    EmailField,
    Model,
    ShareField,
    Slug,
    StateCode,
    Word,
    needed,
)
from quotegen.reading.files.job import Excluded
from quotegen.reading.files.standards import Standards


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

    The last may say its share too; then all of them must add up to 100 %. The first may be a sum,
    `amount`, instead, and where the price is smaller it is the price; shares are then of the rest.
    `at_visit` names the visit whose last day is the event, `days_after` how many days later the
    payment is due; without a visit it has no date.
    """

    id: Slug
    when: Word
    share: ShareField | None = None
    amount: AmountField | None = None
    at_visit: Slug | None = None
    days_after: DaysField = 0


def _payments_add_up(payments: tuple[Payment, ...]) -> tuple[Payment, ...]:
    *earlier, last = payments
    _first_may_be_a_sum(payments)
    if any(p.share is None and p.amount is None for p in earlier):
        raise PydanticCustomError(
            "payment-remainder",
            "every payment but the last needs a share; the last takes what remains",
        )
    ids = [payment.id for payment in payments]
    if len(set(ids)) < len(ids):
        raise PydanticCustomError(
            "payment-twice", "two payments have the same id; give each its own"
        )
    shares = sum((p.share or Fraction(0) for p in payments), Fraction(0))
    if last.share is not None and shares != 1:
        raise PydanticCustomError(
            "payment-sum",
            "the shares add up to {percent}%, not to 100%; the last may go without one",
            {"percent": f"{decimal_of(shares * 100):f}"},
        )
    if sum(p.share or 0 for p in earlier) >= 1:
        raise PydanticCustomError(
            "payment-shares", "the shares before the last payment reach 100% or more"
        )
    return payments


def _first_may_be_a_sum(payments: tuple[Payment, ...]) -> None:
    first, *others = payments
    if any(p.amount is not None for p in others) or (first.amount is not None and not others):
        raise PydanticCustomError(
            "payment-sum-later",
            "only the first of several payments may be an amount; type a share for a later one,"
            " and nothing for the last",
        )
    if first.amount is not None and first.share is not None:
        raise PydanticCustomError(
            "payment-sum-and-share", "a payment is an amount or a share; delete one of the two"
        )


class Adjustment(Model):
    """The promise on area: what happens when the forms measure more or less."""

    no_pour_above: ShareField
    reopen_outside: ShareField


class TaxRounding(StrEnum):
    """When a tax is rounded half-up to the cent, at the seller's choice where a state leaves it."""

    EACH_LINE = "each line"
    WHOLE_INVOICE = "whole invoice"


EVERYTHING = "everything"
"""The word that stands for every scope item."""

ROUND_SUM = 100
"""A sum that stays round whatever the step, since every step goes into it."""


def _is_round(step: Decimal) -> Decimal:
    if not step or step % 1 or ROUND_SUM % step:
        raise PydanticCustomError(
            "round-step",
            "a total is rounded to whole dollars that go into $100, such as $1, $5, $10 or $50",
        )
    return step


class Tax(Model):
    """A tax on the price.

    Attributes:
        covers: the scope items that are taxed, or `everything`. A line is taxed when it pays for
            any of them.
        round: when it is rounded.
        states: where it is due; empty for every site.
    """

    id: Slug
    name: Word
    rate: ShareField
    covers: tuple[Slug, ...] = Field(min_length=1)
    round: TaxRounding
    states: tuple[Word, ...] = ()


class Insurance(Model):
    """Who insures the company, and for how much."""

    carrier: Word
    phone: Word
    covers: Word


class PaperSize(StrEnum):
    """What the papers are printed on."""

    LETTER = "letter"
    A4 = "A4"


class Show(StrEnum):
    """How much of the price a homeowner is shown; what moves it by the area always is."""

    LINES = "lines"
    GROUPS = "groups"
    ONE_PRICE = "one price"


class Attached(StrEnum):
    """What goes with the letter of a quote."""

    QUOTE = "quote.pdf"
    PAGE = "quote.html"
    GUIDE = "guide.pdf"


class Company(Model):
    """A whole company file.

    Attributes:
        greeting: how its letters begin, in the owner's own words.
        attach: the files that go with the letter of a quote.
        taxpayer_id: the employer number that some states want on a contract, never a personal one.
        round_total_to: what every total with its taxes is rounded to, up from the half.
    """

    name: Word
    owner: Word
    address: Word
    town: Word
    state: StateCode | None = None
    phone: Word
    email: EmailField
    license: Word | None = None
    taxpayer_id: Word | None = None
    insurance: Insurance | None = None
    accent: ColorField = "#1f4e79"
    theme: Word = "shop"
    paper: PaperSize | None = None
    show: Show = Show.LINES
    logo: Word | None = None
    greeting: Word | None = None
    attach: tuple[Attached, ...] = tuple(Attached)
    holds_days: DaysField = needed("30", "an offer stands that many days")
    working_days: Annotated[tuple[Weekday, ...], Field(min_length=1)] = needed(
        "[Monday, Tuesday, Wednesday, Thursday, Friday]", "visits are put on these days"
    )
    closed: tuple[DateField, ...] = ()
    payments: Annotated[
        tuple[Payment, ...], Field(min_length=1), AfterValidator(_payments_add_up)
    ] = needed(
        "[{id: deposit, when: when you sign, share: 20 %}, {id: final, when: when it is done}]",
        "every contract promises them; the last takes what remains",
    )
    adjustment: Adjustment = needed(
        "{no_pour_above: 10 %, reopen_outside: 15 %}",
        "you promise not to pour after a higher rise until both have signed, and to talk about"
        " the part of the area outside that band",
    )
    round_total_to: Annotated[AmountField, AfterValidator(_is_round)] | None = None
    tax: tuple[Tax, ...] = ()
    warranty: Word = needed(
        "two years on our work, from the day of the pour", "a promise of the contract"
    )
    standards: Standards = Standards()
    not_included: tuple[Excluded, ...] = ()

    def paper_in(self, units: Units) -> PaperSize:
        """Return the company's paper; where it names none, Letter in feet and A4 in meters."""
        if self.paper is not None:
            return self.paper
        return PaperSize.LETTER if units is Units.US else PaperSize.A4
