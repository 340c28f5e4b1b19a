"""The talk of a start: one question after another, each answer kept at once."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

from quotegen.starting.answers import keep, next_question, one_back
from quotegen.starting.questions import Answers, Question, offered, read_answer
from quotegen.trade.contract_law import ContractLaws
from quotegen.trade.rules import RuleBook

BACK = "back"
"""What is typed to have the last question again."""


def ask_all(
    folder: Path,
    answers: Answers,
    laws: ContractLaws,
    rules: RuleBook,
    on: date,
    read: Callable[[str, str], str],
    say: Callable[[str], None],
) -> Answers:
    """Ask what is still open, until all is answered; whoever reads may raise to leave.

    Args:
        folder: where each answer is kept as soon as it is given.
        answers: what was answered before.
        laws: of contracts, some of which want more on a contract.
        rules: of the trade, for what may be taken at signing.
        on: the day of the start.
        read: puts a question and the answer that is offered, and returns what is typed.
        say: says a line.
    """
    while (question := next_question(answers, laws)) is not None:
        for word, meaning in question.choices.items():
            say(f"  {word}: {meaning}")
        typed = read(question.ask, offered(question, answers, rules, on)).strip()
        if typed.lower() == BACK:
            answers = one_back(answers)
            continue
        answers = _with_answer(question, typed, answers, say)
        keep(folder, answers)
    return answers


def _with_answer(
    question: Question, typed: str, answers: Answers, say: Callable[[str], None]
) -> Answers:
    """Return the answers with a new one; those before where it is none, which is said."""
    try:
        return {**answers, question.id: read_answer(question, typed, answers)}
    except ValueError as error:
        say(f"  {error}")
        return answers
