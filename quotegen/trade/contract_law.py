"""What a written contract for work on a home must carry, by state. Not legal advice.

The data names clauses and says how sure we are of each. No legal wording is invented or copied.
"""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from functools import cache
from importlib.resources import files
from typing import Any

from quotegen.money import Money
from quotegen.quantity import decimal_from_text
from quotegen.trade.rules import plain_yaml

FEDERAL = "US"


class Element(StrEnum):
    """A part of a written contract that some law requires."""

    WRITTEN = "written"
    WHOLE_AGREEMENT = "whole_agreement"
    SIGNED_COPY = "signed_copy"
    CONTRACT_DATE = "contract_date"
    CONTRACTOR_ADDRESS = "contractor_address"
    PHONE = "phone"
    LICENSE = "license"
    SALESPERSON = "salesperson"
    OWNER_AND_SITE = "owner_and_site"
    START = "start"
    FINISH = "finish"
    DESCRIPTION = "description"
    DRAWING = "drawing"
    TOTAL = "total"
    PAYMENTS = "payments"
    DEPOSIT = "deposit"
    FINAL_PAYMENT = "final_payment"
    CHANGES = "changes"
    WARRANTY = "warranty"
    INSURANCE = "insurance"
    SUBCONTRACTORS = "subcontractors"
    CANCELLATION = "cancellation"
    LIEN_NOTICE = "lien_notice"
    DISPUTES = "disputes"
    REGULATOR = "regulator"
    BLANKS = "blanks"
    TYPE_SIZE = "type_size"
    PERMITS = "permits"
    TAXPAYER_ID = "taxpayer_id"
    LEFT_OUT = "left_out"
    CANCEL_EMAIL = "cancel_email"
    NO_EARLY_START = "no_early_start"
    AFFILIATIONS = "affiliations"


class Seen(StrEnum):
    """Where we saw a clause: in the law itself, in a page that reports it, or nowhere yet."""

    SEEN = "seen"
    REPORTED = "as reported"
    MEMORY = "from memory"


@dataclass(frozen=True, slots=True, kw_only=True)
class Demand:
    """One element that a law requires, with the clause that requires it."""

    element: Element
    clause: str
    seen: Seen


@dataclass(frozen=True, slots=True, kw_only=True)
class Law:
    """A law on contracts for work on a home.

    Attributes:
        state: two letters, `US` for the federal rule.
        over: price in dollars from which it applies.
        home_sale: it is on sales made at the buyer's home, and not on contracts as such.
        link: to the official text, or to the office in charge of it.
        demands: in the order of `Element`.
    """

    state: str
    law: str
    edition: str
    over: Money
    home_sale: bool
    link: str
    demands: tuple[Demand, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ContractLaws:
    """Every law that we know, what each element means, and when they were last checked."""

    laws: tuple[Law, ...]
    meanings: tuple[tuple[Element, str], ...]
    checked_on: date

    def of(self, state: str | None, price: Money) -> tuple[Law, ...]:
        """Return the laws that apply to a job: its state's, then the federal rule."""
        named = (state, FEDERAL)
        return tuple(
            law for name in named for law in self.laws if law.state == name and price >= law.over
        )

    def reached(self, state: str | None, price: Money, risen: Money) -> tuple[Law, ...]:
        """Return the laws of a state that a price does not reach, and a higher one does."""
        return tuple(
            law for law in self.laws if law.state == state and price < law.over <= risen
        )  # fmt: skip

    def contract_law(self, state: str | None) -> Law | None:
        """Return the law of a state on contracts for work on a home, None where none is known."""
        laws = (law for law in self.laws if law.state == state and not law.home_sale)
        return next(laws, None)

    def home_sale(self, state: str | None) -> tuple[Law, Demand] | None:
        """Return the law of a state on cancelling a sale made at home, None if not known."""
        laws = [law for law in self.laws if law.state == state]
        laws.sort(key=lambda law: not law.home_sale)
        both = ((law, demand) for law in laws for demand in law.demands)
        return next((one for one in both if one[1].element is Element.CANCELLATION), None)

    def meaning(self, element: Element) -> str:
        """Return the meaning of an element, in plain words."""
        return dict(self.meanings)[element]

    def superset(self) -> tuple[Element, ...]:
        """Return every element that any law requires: the advice where no law is known."""
        asked = {demand.element for law in self.laws for demand in law.demands}
        return tuple(element for element in Element if element in asked)


@cache
def load_laws() -> ContractLaws:
    """Read the laws that come with quotegen, once."""
    entry = files("quotegen.trade") / "law" / "contracts.yaml"
    data = plain_yaml(entry.read_text(encoding="utf-8"))
    return ContractLaws(
        laws=tuple(_law(state, fields) for state, fields in data["laws"].items()),
        meanings=tuple((Element(name), meaning) for name, meaning in data["elements"].items()),
        checked_on=date.fromisoformat(data["checked_on"]),
    )


def _law(state: str, fields: dict[str, Any]) -> Law:
    demands = [
        Demand(element=Element(name), clause=asked["clause"], seen=Seen(asked["sure"]))
        for name, asked in fields["elements"].items()
    ]
    return Law(
        state=fields.get("state", state),
        law=fields["law"],
        edition=fields["edition"],
        over=Money(decimal_from_text(fields["over"])),
        home_sale=fields.get("home_sale") == "yes",
        link=fields["link"],
        demands=tuple(demands),
    )
