"""The company's own standards: a figure of its own where it promises more than a source asks."""

from collections.abc import Iterator, Mapping
from datetime import date
from decimal import Decimal
from types import MappingProxyType

from quotegen.problem import Problem
from quotegen.quantity import Length, decimal_of
from quotegen.reading.fields.typed_fields import LengthField, Model
from quotegen.reading.yaml.located import Places
from quotegen.trade.rules import RuleBook


class Standards(Model):
    """Tolerances that the company sets itself; each is named as the trade rule that it tightens.

    What is left out stays as its source says.
    """

    thickness_short_average: LengthField | None = None
    thickness_short_single: LengthField | None = None
    crack_width: LengthField | None = None
    crack_step: LengthField | None = None
    ponding_depth: LengthField | None = None
    surface_gap: LengthField | None = None
    joint_placement: LengthField | None = None
    riser_variation: LengthField | None = None

    def own_inches(self) -> Mapping[str, Decimal]:
        """Return the figures that were set, in inches, by rule."""
        return MappingProxyType({name: decimal_of(own.inches) for name, own in self._set()})

    def _set(self) -> Iterator[tuple[str, Length]]:
        for name in type(self).model_fields:
            own: Length | None = getattr(self, name)
            if own is not None:
                yield name, own


def looser_standards(
    standards: Standards, company: Places, rules: RuleBook, on: date
) -> tuple[Problem, ...]:
    """Return a warning for each figure of the company that allows more than its source does."""
    return tuple(
        _looser(name, company, rules, on)
        for name, own in standards.own_inches().items()
        if own > rules.number(name, on)
    )


def _looser(name: str, company: Places, rules: RuleBook, on: date) -> Problem:
    return company.warning(
        ("standards", name),
        "standard-looser",
        f"`{name}` allows more than the {rules.text(name, on)} of "
        f"{rules.rule(name).at(on).reference}",
        "promise that figure or a smaller one, or leave the line out",
    )
