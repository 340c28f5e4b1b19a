"""The talk of a start: one question after another, each answer kept at once."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

from quotegen.starting.answers import filled_up, keep, kept_answers, next_question, one_back
from quotegen.starting.questions import Answers, Question, offered, read_answer
from quotegen.trade.contract_law import load_laws
from quotegen.trade.rules import load_rules

BACK = "back"
"""What is typed to have the last question again."""


def all_answers(
    folder: Path,
    on: date,
    read: Callable[[str, str], str] | None,
    say: Callable[[str], None],
) -> Answers:
    """Return an answer to each question: as it was kept, as it is typed, or as it is offered.

    Args:
        folder: where each answer is kept as soon as it is given.
        on: the day of the start, for what the law lets be taken at signing.
        read: puts a question and the answer that is offered, and returns what is typed; it may
            raise to leave. Without it nobody is asked, and what is offered counts.
        say: says a line.
    """
    laws, rules = load_laws(), load_rules()
    answers = kept_answers(folder, laws)
    if read is None:
        return filled_up(answers, laws, rules, on)
    for name, answer in answers.items():
        say(f"  {name}: {answer}")
    say(f"Enter takes what stands in [ ]; `{BACK}` goes one back; Ctrl-C leaves.")
    while (question := next_question(answers, laws)) is not None:
        for word, meaning in question.choices.items():
            say(f"  {word}: {meaning}")
        typed = read(question.ask, offered(question, answers, rules, on)).strip()
        if typed.lower() == BACK:
            answers = one_back(answers)
        else:
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
