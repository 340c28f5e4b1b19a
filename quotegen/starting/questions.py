"""The questions of a start, read from their data, and what may be answered to each."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

import yaml
from pydantic_core import PydanticCustomError

from quotegen.money import parse_money, to_cents
from quotegen.quantity import decimal_from_text
from quotegen.reading.checks.asked import FIRST_DAY
from quotegen.reading.fields.text_fields import (
    cut_short,
    number_text,
    parse_amount,
    parse_positive_length,
    parse_share,
)
from quotegen.reading.fields.typed_fields import EMAIL
from quotegen.trade.contract_law import ContractLaws, Element
from quotegen.trade.deposits import deposit_cap
from quotegen.trade.rules import RuleBook, load_rules
from quotegen.trade.sense import lacks_area_code

NONE = "none"
"""What is answered where there is no price, or no number."""
FINISHES = ("broom", "exposed", "stamped")
"""The questions of which one at least needs a price."""


ABOUT_INSURANCE = ("insurer_phone", "insured")
"""What is asked of an insurer, where there is one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One question.

    Attributes:
        kind: how its answer is read, a key of `READ`.
        usual: the answer that is offered; empty where none is.
        stand_in: fills the place where nobody is asked and there is no usual answer.
        law: what a law of the state must want on a contract for the question to be asked.
        only: an earlier question and its answer, without which this one is not asked.
        usual_where: another usual answer for each answer to an earlier question.
        choices: by the word that is kept, what it means.
    """

    id: str
    kind: str
    ask: str
    usual: str = ""
    stand_in: str = ""
    law: Element | None = None
    only: tuple[str, str] | None = None
    usual_where: Mapping[tuple[str, str], str]
    choices: Mapping[str, str]


Answers = Mapping[str, str]
"""By the id of a question, its answer as it is written into a file."""


@cache
def load_questions() -> tuple[Question, ...]:
    """Read the questions that come with quotegen, once."""
    text = files("quotegen.starting").joinpath("data/questions.yaml").read_text("utf-8")
    return tuple(_question(fields) for fields in yaml.load(text, yaml.BaseLoader))  # noqa: S506


def _question(fields: dict[str, Any]) -> Question:
    where = {
        (earlier, answer): usual
        for earlier, answers in fields.get("in", {}).items()
        for answer, usual in answers.items()
    }
    only = next(iter(fields.get("only", {}).items()), None)
    return Question(
        id=fields["id"],
        kind=fields["kind"],
        ask=fields["ask"],
        usual=fields.get("usual", ""),
        stand_in=fields.get("stand_in", ""),
        law=Element(fields["law"]) if "law" in fields else None,
        only=only,
        usual_where=MappingProxyType(where),
        choices=MappingProxyType(fields.get("choices", {})),
    )


def is_asked(question: Question, answers: Answers, laws: ContractLaws) -> bool:
    """Whether a question is put, after the answers before it."""
    if question.only is not None:
        earlier, wanted = question.only
        return answers.get(earlier) == wanted
    if question.law is None:
        return True
    if question.id in ABOUT_INSURANCE and answers.get("insurer") == NONE:
        return False
    state = state_of(answers)
    return any(
        demand.element is question.law
        for law in laws.laws
        if law.state == state
        for demand in law.demands
    )


def offered(question: Question, answers: Answers, rules: RuleBook, on: date) -> str:
    """Return the answer that is offered, empty where only the owner can know it.

    A deposit is not offered above the share that the law of the state lets be taken.
    """
    if question.kind == "deposit":
        return _lawful_share(question.usual, state_of(answers), rules, on)
    for (earlier, answer), usual in question.usual_where.items():
        if answers.get(earlier) == answer:
            return usual
    return question.usual


def _lawful_share(usual: str, state: str, rules: RuleBook, on: date) -> str:
    price = to_cents(decimal_from_text("1000"))  # small enough to reach no sum of a law
    cap = deposit_cap(state, price, decimal_from_text("0"), rules, on)
    if cap is None or Fraction(cap.most) / Fraction(price) >= parse_share(usual):
        return usual
    return f"{int(100 * Fraction(cap.most) / Fraction(price))} %"


def state_of(answers: Answers) -> str:
    """Return the two letters of the state in the address, empty before it is known."""
    return answers.get("address", "").rpartition(", ")[2]


def read_answer(question: Question, typed: str, answers: Answers) -> str:
    """Return an answer in the form in which it is kept.

    Raises:
        ValueError: it is none; the message says what is.
    """
    text = " ".join(typed.split())
    if not text and question.kind == "text_or_none":
        return NONE
    if not text:
        message = "type an answer"
        raise ValueError(message)
    try:
        answer = READ[question.kind](number_text(text), question)
    except PydanticCustomError as error:  # what the parsers of a file raise
        raise ValueError(error.message_template) from None
    others = [answers.get(finish) for finish in FINISHES[:-1]]
    if question.id == FINISHES[-1] and {answer, *others} == {NONE}:
        message = "one finish at least needs a price; type one here, or back for another"
        raise ValueError(message)
    return answer


def _text(text: str, _: Question) -> str:
    return text


def _address(text: str, _: Question) -> str:
    parts = [part.strip() for part in text.split(",")]
    state = parts[-1].partition(" ")[0].upper()
    if len(parts) < 3 or not all(parts) or not re.fullmatch("[A-Z]{2}", state):
        said = "needs street, town and the two letters of the state, parted by commas"
        raise ValueError(f"`{cut_short(text)}` {said}")
    return ", ".join((*parts[:-1], state))


def _phone(text: str, _: Question) -> str:
    if lacks_area_code(text, load_rules(), FIRST_DAY):
        raise ValueError(f"`{cut_short(text)}` has no area code; type it like 231-555-0100")
    return text


def _email(text: str, _: Question) -> str:
    if not re.fullmatch(EMAIL, text):
        raise ValueError(f"`{cut_short(text)}` is no e-mail address like name@place.example")
    return text


def _price(text: str, _: Question) -> str:
    """Read `9.40`, `$9.40` or `$9.40 / sq ft` as `$9.40`; the unit is in the question."""
    money = text.partition("/")[0].strip()
    if not parse_amount(money):
        raise ValueError(f"`{cut_short(text)}` must be more than nothing")
    return f"${money.removeprefix('$').replace(',', '')}"  # a comma would end it inside { }


def _choice(text: str, question: Question) -> str:
    typed = "_".join(text.lower().replace("-", " ").split())
    words = [word for word in question.choices if word.startswith(typed)]
    numbered = dict(enumerate(question.choices, start=1))
    if len(words) != 1:
        words = [word for number, word in numbered.items() if text == str(number)]
    if not words:
        raise ValueError(f"`{cut_short(text)}` is none of them; type {_or(question.choices)}")
    return words[0]


def _or(words: Mapping[str, str]) -> str:
    return " or ".join(f"`{word}`" for word in words)


def _length(text: str, _: Question) -> str:
    inches = f"{text} in" if parse_money(text) is not None else text
    parse_positive_length(inches)
    return inches


def _deposit(text: str, question: Question) -> str:
    """Read `20 %`, or a sum such as `$1,000`."""
    if text.endswith("%"):
        if not 0 < parse_share(text) < 1:
            raise ValueError(f"`{cut_short(text)}` leaves nothing for later, or is nothing")
        return text
    if not text.startswith("$"):
        raise ValueError(f"`{cut_short(text)}` is a share like 20 %, or a sum like $1,000")
    return _price(text, question)


def _or_none(read: Callable[[str, Question], str]) -> Callable[[str, Question], str]:
    return lambda text, question: (
        NONE if text.lower() in {NONE, "no", "-"} else read(text, question)
    )


READ: Mapping[str, Callable[[str, Question], str]] = MappingProxyType({
    "text": _text,
    "text_or_none": _or_none(_text),
    "address": _address,
    "phone": _phone,
    "email": _email,
    "price": _price,
    "price_or_none": _or_none(_price),
    "choice": _choice,
    "length": _length,
    "deposit": _deposit,
})  # fmt: skip
"""How each kind of answer is read: text to the form that is kept, or a ValueError that says why."""
