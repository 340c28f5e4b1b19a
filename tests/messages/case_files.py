"""Writes the good files with one bad one among them.

A case is a tiny file in `cases/`. Its first line says what it stands in for:

    # job.yaml                        its lines, then those keys of good/job.yaml that it leaves out
    # job.yaml, alone                 its lines and nothing else
    # job.yaml, without title         as the first, and `title` is left out as well
    # job.yaml, no company.yaml       as the first, and another file is not there
    # past-jobs.yaml, job asks for X  as the first, and the job shows the past job X
    # job.yaml, book has access       as the first, and the rate book has a chute and barrows
    # company.yaml, job in no state   as the first, and the job does not say its state
    # past-jobs.yaml, another company as the first, and the company has another name
    # job.yaml, priced by X           as the first, and books/X.yaml has some keys of the rate book
    # rate-book-2027.yaml             its lines, then the other keys of good/rate-book.yaml

The lines of the case come first, so that a line number in the table is one of the case file.
"""

import re
from pathlib import Path

HERE = Path(__file__).parent
CASES = HERE / "cases"
GOOD = HERE / "good"
ACCESS = """\
access:
  chute: {kind: chute, name: chute, reach: 16 ft}
  barrows: {kind: barrow, name: wheelbarrows, reach: 60 ft, rate: barrows}
"""
BARROWS = "  barrows: {name: Barrows, covers: [placing], rate: $30 / cu yd, applies: asked}\n"
FILES = ("job.yaml", "company.yaml", "rate-book.yaml", "past-jobs.yaml")


def lay_out(case: Path | None, folder: Path) -> Path:
    """Write the good files and the case into a folder; the path of the job file."""
    texts = {name: (GOOD / name).read_text(encoding="utf-8") for name in FILES}
    if case is not None:
        text = case.read_text(encoding="utf-8")
        name, *rest = text.splitlines()[0].removeprefix("# ").split(", ")
        for word in rest:
            _change(texts, name, word)
        texts[name] = text + _left(texts.get(name, texts["rate-book.yaml"]), text)
    for name, text in texts.items():
        (folder / name).write_text(text, encoding="utf-8")
    return folder / "job.yaml"


def _change(texts: dict[str, str], name: str, word: str) -> None:
    if word == "alone":
        texts[name] = ""
    elif word.startswith("without "):
        texts[name] = _left(texts[name], f"{word.removeprefix('without ')}:\n")
    elif word.startswith("no "):
        del texts[word.removeprefix("no ")]
    elif word == "book has access":
        book = texts["rate-book.yaml"]
        texts["rate-book.yaml"] = ACCESS + book.replace("rates:\n", f"rates:\n{BARROWS}")
    elif word == "job in no state":
        texts["job.yaml"] = texts["job.yaml"].replace(", state: MD", "")
    elif word == "another company":
        company = texts["company.yaml"]
        texts["company.yaml"] = company.replace("Pennywort Flatwork", "Alderfield Concrete")
    elif word.startswith("job asks for "):
        asked = word.removeprefix("job asks for ")
        texts["job.yaml"] = texts["job.yaml"].replace("references: []", f"references: [{asked}]")
    elif word.startswith("priced by "):
        name = word.removeprefix("priced by ")
        text = (GOOD / "books" / f"{name}.yaml").read_text(encoding="utf-8")
        texts["rate-book.yaml"] = text + _left(texts["rate-book.yaml"], text)
    else:
        message = f"the first line of a case says {word!r}"
        raise ValueError(message)


def _left(good: str, case: str) -> str:
    """The top-level keys of a good file, with all below them, that the case does not give."""
    blocks = re.findall(r"(?m)^\w+:.*\n(?:[ -].*\n)*", good)
    given = set(re.findall(r"(?m)^(\w+):", case))
    return "".join(block for block in blocks if block.split(":")[0] not in given)
