"""What a state lets a contractor take before work begins. Not legal advice."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction
from types import MappingProxyType

from quotegen.money import Money, down_to_cents
from quotegen.quantity import decimal_of
from quotegen.trade.book import PER_CENT, Reference, RuleBook


@dataclass(frozen=True, slots=True, kw_only=True)
class DepositCap:
    """The largest deposit, rounded down to the cent, and the statute that says so."""

    most: Money
    reference: Reference


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sale:
    price: Fraction
    special_order: Fraction
    rules: RuleBook
    on: date

    def third(self, state: str) -> Fraction:
        return self.price / self.rules.exact(f"deposit_one_in_{state}", self.on)

    def is_over(self, state: str) -> bool:
        return self.price > self.rules.exact(f"deposit_from_{state}", self.on)


def deposit_cap(
    state: str, price: Money, special_order: Decimal, rules: RuleBook, on: date
) -> DepositCap | None:
    """Return the largest deposit on a home-improvement price, None where no cap is known.

    CA: the lesser of $1,000 or 10 % (B&P 7159.5). ME over $3,000 and MD: one third (10 MRS 1487,
    Bus. Reg. 8-617). MA over $1,000: the greater of one third or the cost of special-order items
    (G.L. c.142A s.2). PA over $5,000: one third plus that cost (73 P.S. 517.9).

    Args:
        state: two letters.
        price: of the whole contract.
        special_order: cost of materials ordered for this job alone.
        rules: the rule book.
        on: the quote date.
    """
    if state not in _CAPS:
        return None
    sale = _Sale(price=Fraction(price), special_order=Fraction(special_order), rules=rules, on=on)
    most = _CAPS[state](sale)
    if most is None:
        return None
    named = f"deposit_share_{state.lower()}" if state == "CA" else f"deposit_one_in_{state.lower()}"
    return DepositCap(
        most=down_to_cents(decimal_of(most)), reference=rules.rule(named).at(on).reference
    )


def _california(sale: _Sale) -> Fraction:
    share = sale.price * sale.rules.exact("deposit_share_ca", sale.on) * PER_CENT
    return min(share, sale.rules.exact("deposit_most_ca", sale.on))


def _maine(sale: _Sale) -> Fraction | None:
    return sale.third("me") if sale.is_over("me") else None


def _maryland(sale: _Sale) -> Fraction:
    return sale.third("md")


def _massachusetts(sale: _Sale) -> Fraction | None:
    return max(sale.third("ma"), sale.special_order) if sale.is_over("ma") else None


def _pennsylvania(sale: _Sale) -> Fraction | None:
    return sale.third("pa") + sale.special_order if sale.is_over("pa") else None


_CAPS: MappingProxyType[str, Callable[[_Sale], Fraction | None]] = MappingProxyType(
    {
        "CA": _california,
        "MA": _massachusetts,
        "MD": _maryland,
        "ME": _maine,
        "PA": _pennsylvania,
    }
)
