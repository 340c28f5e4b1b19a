"""The answers of a start that was left: kept as a small file, and taken up again."""

from datetime import date
from pathlib import Path
from types import MappingProxyType

import yaml

from quotegen.publish.write import put, remove
from quotegen.reading.yaml.located import Document, parse
from quotegen.starting.questions import (
    Answers,
    Question,
    is_asked,
    load_questions,
    offered,
    read_answer,
)
from quotegen.trade.contract_law import ContractLaws
from quotegen.trade.rules import RuleBook

FILE = "answers.txt"
"""The name of the file in the folder that is begun; it is gone once the files are written."""


def kept_answers(folder: Path, laws: ContractLaws) -> Answers:
    """Return what was answered in a folder before; an answer that cannot be read is asked anew."""
    try:
        document = parse((folder / FILE).read_bytes(), str(folder / FILE))
    except FileNotFoundError:
        return MappingProxyType({})
    typed = document.content if isinstance(document, Document) else {}
    answers: dict[str, str] = {}
    for question in load_questions():
        text = typed.get(question.id)
        if isinstance(text, str) and is_asked(question, answers, laws):
            try:
                answers[question.id] = read_answer(question, text, answers)
            except ValueError:
                continue
    return MappingProxyType(answers)


def keep(folder: Path, answers: Answers) -> None:
    """Keep the answers so far in the folder that is begun."""
    head = "# The answers so far: type `quotegen new` with this folder again to go on.\n"
    lines = yaml.safe_dump(dict(answers), sort_keys=False, allow_unicode=True)
    put(folder / FILE, (head + lines).encode())


def forget(folder: Path) -> None:
    """Delete the kept answers, whose place the written files have taken."""
    remove(folder / FILE)


def next_question(answers: Answers, laws: ContractLaws) -> Question | None:
    """Return the first question that is open, None where all are answered."""
    return next(
        (
            question
            for question in load_questions()
            if question.id not in answers and is_asked(question, answers, laws)
        ),
        None,
    )


def one_back(answers: Answers) -> Answers:
    """Return the answers without the last one, so that it is asked anew."""
    return MappingProxyType(dict(list(answers.items())[:-1]))


def filled_up(answers: Answers, laws: ContractLaws, rules: RuleBook, on: date) -> Answers:
    """Return the answers with each open one as it is offered, or with what stands in for it."""
    filled = dict(answers)
    while (question := next_question(filled, laws)) is not None:
        text = offered(question, filled, rules, on) or question.stand_in
        filled[question.id] = read_answer(question, text, filled)
    return MappingProxyType(filled)
