"""Rules in the reader's language: in English they read as the trade data has them."""

from dataclasses import replace
from datetime import date
from types import MappingProxyType

import pytest

from quotegen.explain.results import Results
from quotegen.explain.words.rule_words import rule_about, rule_text
from quotegen.trade.rules import load_rules
from tests.pricing import shop

ON = date(2026, 11, 24)


@pytest.fixture(scope="module")
def results(tmp_path_factory: pytest.TempPathFactory) -> Results:
    """Return the results of a small patio."""
    return shop.results(tmp_path_factory.mktemp("patio"))


def _sayable() -> list[str]:
    said = []
    for rule_id in load_rules().rules:
        try:
            load_rules().text(rule_id, ON)
        except (TypeError, LookupError):
            continue
        said.append(rule_id)
    return said


def test_english_is_that_of_the_trade_data(results: Results):
    """Every rule that a sentence can hold reads as the rule book itself words it."""
    on = results.job.quote_date
    held = results.rules.rules
    rules = [name for name in _sayable() if held[name].values[-1].from_date <= on]
    assert len(rules) > 50
    for rule_id in rules:
        said = rule_text(results, rule_id)
        assert said == results.rules.text(rule_id, on), rule_id


def test_a_table_cannot_be_said(results: Results):
    """A rule that is a table or steps has no sentence."""
    tables = set(load_rules().rules) - set(_sayable())
    assert tables
    with pytest.raises(TypeError):
        rule_text(results, "joint_spacing_by_thickness")


def test_another_language_says_its_own(results: Results):
    """What a rule is about and what it says come from the language, where it has them."""
    own = {"rule_reinforcement_position": "Lage des Stahls.",
           "rule_reinforcement_position_says": "in der oberen Hälfte"}  # fmt: skip
    words = replace(results.words, labels=MappingProxyType({**results.words.labels, **own}))
    rule = results.rules.rule("reinforcement_position")
    assert rule_about(words, rule) == "Lage des Stahls"
    assert rule_text(replace(results, words=words), rule.rule_id) == "in der oberen Hälfte"
