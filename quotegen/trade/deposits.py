"""How large a deposit a state lets a contractor take before work begins. Not legal advice."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

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

    def part(self, one_in: str) -> Fraction:
        """Return the part of the price that a rule such as `one in 3` allows."""
        return self.price / self.rules.exact(one_in, self.on)

    def is_over(self, limit: str) -> bool:
        return self.price > self.rules.exact(limit, self.on)


def deposit_cap(
    state: str, price: Money, special_order: Decimal, rules: RuleBook, on: date
) -> DepositCap | None:
    """Return the largest deposit on a home-improvement contract; None where no cap is known.

    CA: the lesser of $1,000 or 10 % (B&P 7159.5). ME over $3,000 and MD: one third (10 MRS 1487,
    Bus. Reg. 8-617). MA over $1,000: the greater of one third or the cost of special-order items
    (G.L. c.142A s.2). PA over $5,000: one third plus that cost (73 P.S. 517.9).
    OH from $25,000: 10 % plus 75 % of that cost (R.C. 4722.03, as reported).

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
    rule_id, cap = _CAPS[state]
    most = cap(sale)
    if most is None:
        return None
    reference = rules.rule(rule_id).at(on).reference
    return DepositCap(most=down_to_cents(decimal_of(most)), reference=reference)


def cap_reference(state: str, rules: RuleBook, on: date) -> Reference | None:
    """Return the source of a state's cap, whether this price reaches it or not; None if unknown."""
    return rules.rule(_CAPS[state][0]).at(on).reference if state in _CAPS else None


def _california(sale: _Sale) -> Fraction:
    share = sale.price * sale.rules.exact("deposit_share_ca", sale.on) * PER_CENT
    return min(share, sale.rules.exact("deposit_most_ca", sale.on))


def _maine(sale: _Sale) -> Fraction | None:
    return sale.part("deposit_one_in_me") if sale.is_over("deposit_from_me") else None


def _maryland(sale: _Sale) -> Fraction:
    return sale.part("deposit_one_in_md")


def _massachusetts(sale: _Sale) -> Fraction | None:
    if not sale.is_over("deposit_from_ma"):
        return None
    return max(sale.part("deposit_one_in_ma"), sale.special_order)


def _ohio(sale: _Sale) -> Fraction | None:
    if sale.price < sale.rules.exact("deposit_from_oh", sale.on):
        return None
    special = sale.special_order * sale.rules.exact("deposit_special_oh", sale.on)
    return (sale.price * sale.rules.exact("deposit_share_oh", sale.on) + special) * PER_CENT


def _pennsylvania(sale: _Sale) -> Fraction | None:
    if not sale.is_over("deposit_from_pa"):
        return None
    return sale.part("deposit_one_in_pa") + sale.special_order


_CAPS: Mapping[str, tuple[str, Callable[[_Sale], Fraction | None]]] = {
    "CA": ("deposit_share_ca", _california),
    "MA": ("deposit_one_in_ma", _massachusetts),
    "MD": ("deposit_one_in_md", _maryland),
    "ME": ("deposit_one_in_me", _maine),
    "OH": ("deposit_share_oh", _ohio),
    "PA": ("deposit_one_in_pa", _pennsylvania),
}
"""By state: the rule whose source is quoted, and how the cap is worked out."""
