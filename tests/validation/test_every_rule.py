"""Every rule of the trade against a second list, which names the source of each one.

The list is `every_rule.txt`. What a rule is used for is tested in the other files of this folder;
this one sees that no number moves, and no rule comes, without its source being looked at again.
"""

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from quotegen.trade.book import Range, Value
from quotegen.trade.rules import load_rules

ON = date(2026, 11, 25)
LIST = Path(__file__).with_name("every_rule.txt")
ROWS = [
    line.split(" | ")
    for line in LIST.read_text(encoding="utf-8").splitlines()
    if line and not line.startswith("#")
]


def _written(value: Value) -> str:
    if isinstance(value, Decimal | str):
        return str(value)
    if isinstance(value, Range):
        return f"{value.least} to {value.most}"
    if isinstance(value, tuple):
        return ", ".join(f"{step.at_least}: {step.value}" for step in value)
    return ", ".join(f"{name}: {number}" for name, number in value.items())


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row[0])
def test_a_rule_says_what_its_source_says(row: list[str]) -> None:
    """Value, title, clause and how sure are those of the list."""
    rule_id, value, title, clause, sure = row
    rule = load_rules().rule(rule_id)
    found = rule.at(ON)
    assert _written(found.value) == value
    assert found.reference.title.startswith(title)
    assert found.reference.clause == clause
    assert rule.sure == sure


def test_no_rule_is_missing_from_the_list() -> None:
    """A new rule is entered here as well, once."""
    listed = [row[0] for row in ROWS]
    assert sorted(listed) == sorted(load_rules().rules)
