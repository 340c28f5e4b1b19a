"""Every trade rule carries its unit, dates and source, and a faulty one is refused by name."""

from datetime import date
from importlib.resources.abc import Traversable

import pytest

from quotegen.trade.rules import RuleFileError, load_rules, read_rule_text, rule_files

GOOD = """
pour_depth:
  description: A made-up rule.
  unit: in
  values:
    - from: 2020-01-01
      value: 4
      reference: {title: A book, edition: "1", clause: p. 3}
  checked_on: 2026-11-24
  sure: published
"""


@pytest.mark.parametrize("entry", rule_files(), ids=lambda entry: entry.name)
def test_every_rule_file_is_whole(entry: Traversable) -> None:
    """Each rule file reads without a missing or unknown field, and holds a rule."""
    assert read_rule_text(entry.read_text(encoding="utf-8"), entry.name)


def test_no_rule_was_checked_before_it_started() -> None:
    """A rule is checked after its newest value starts, and its values have different dates."""
    for rule in load_rules().rules.values():
        assert rule.values[0].from_date <= rule.checked_on, rule.rule_id
        assert rule.values[-1].from_date >= date(2000, 1, 1), rule.rule_id


def test_unpublished_rules_do_not_name_a_link() -> None:
    """A rule of practice or from memory has no link, since none was read."""
    for rule in load_rules().rules.values():
        if rule.sure != "published":
            assert not any(value.reference.link for value in rule.values), rule.rule_id


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("  unit: in\n", "", "lacks unit"),
        ("  sure: published\n", "", "lacks sure"),
        ("  sure: published\n", "  sure: certain\n", "not one of published"),
        ("  checked_on: 2026-11-24\n", "  checked_on: lately\n", "not a date"),
        ("  sure: published\n", "  sure: published\n  color: red\n", "unknown color"),
        ("      value: 4\n", "", "lacks value"),
        ("title: A book, ", "", "lacks title"),
        ("clause: p. 3", "clause: ''", "clause is empty"),
        ("      value: 4\n", "      value: {deep: much}\n", "'much' is not a plain number"),
        ("      value: 4\n", "      value: [{at_least: 3}]\n", "lacks value"),
        ("  values:\n", "  values: 4\n  old:\n", "unknown old"),
    ],
)
def test_a_faulty_rule_is_refused_by_file_and_name(old: str, new: str, said: str) -> None:
    """A missing, unknown or wrong field is refused, and the message names file and rule."""
    assert read_rule_text(GOOD, "made-up.yaml")
    with pytest.raises(RuleFileError, match=r"made-up\.yaml: rule pour_depth") as caught:
        read_rule_text(GOOD.replace(old, new), "made-up.yaml")
    assert said in str(caught.value)


def test_two_values_may_not_start_together() -> None:
    """Two values of one rule from the same date are refused."""
    twice = GOOD.replace("    - from", "    - from: 2020-01-01\n      value: 5\n      reference: "
                         "{title: A, edition: B, clause: C}\n    - from")  # fmt: skip
    with pytest.raises(RuleFileError, match="same date"):
        read_rule_text(twice, "made-up.yaml")
