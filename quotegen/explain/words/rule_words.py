"""Rules of the trade in the reader's language: `10 ft`, `1/4 in`, `2 to 3 years`.

English stands beside each rule in trade/data, where its number and source are, so that the three
change together. Another language says the same in its rules.yaml.
"""

from decimal import Decimal

from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.trade.book import Range, Rule
from quotegen.trade.wording import COUNTED_UNITS, SILENT_UNITS, number_text, unit_key


def rule_text(results: Results, rule_id: str) -> str:
    """What a rule says on the date of the quote.

    Raises:
        TypeError: the rule is a table or steps, which no sentence can hold.
    """
    rule, words = results.rules.rule(rule_id), results.words
    value = rule.at(results.job.quote_date).value
    if isinstance(value, str):
        return words.labels.get(f"rule_{rule_id}_says", value)
    if isinstance(value, Decimal):
        return _with_unit(words, _number(words, value, rule.unit), rule.unit, value)
    if isinstance(value, Range):
        ends = words("rule_range", least=_number(words, value.least, rule.unit),
                     most=_number(words, value.most, rule.unit))  # fmt: skip
        return _with_unit(words, ends, rule.unit, value.most)
    message = f"trade rule {rule_id} cannot be said in a sentence"
    raise TypeError(message)


def rule_about(words: Words, rule: Rule) -> str:
    """What a rule is about, without a full stop."""
    return words.labels.get(f"rule_{rule.rule_id}", rule.description).removesuffix(".")


def _number(words: Words, value: Decimal, unit: str) -> str:
    """A number as a tape shows it, or with the separators of the language."""
    on_tape = number_text(value, unit)
    return on_tape if "/" in on_tape else words.plain_number(value)


def _with_unit(words: Words, number: str, unit: str, value: Decimal) -> str:
    if unit in SILENT_UNITS:
        return number
    key = f"rule_unit_{unit_key(unit)}"
    if unit in COUNTED_UNITS:
        return words.count(key, value, number=number)
    return words(key, number=number)
