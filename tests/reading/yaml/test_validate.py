"""A document against its model: near misses, and the words of a fault."""

import pytest
from pydantic import BaseModel

from quotegen.reading.files.company import Company
from quotegen.reading.files.job import JobFile
from quotegen.reading.files.rate_book import Finish
from quotegen.reading.files.rate_book_file import RateBookFile
from quotegen.reading.yaml.located import Document, parse
from quotegen.reading.yaml.validate import validate
from tests.messages.case_files import GOOD
from tests.messages.problem_codes import codes


def _faults(text: str, model: type = JobFile) -> list[tuple[str, str, str]]:
    document = parse(text.encode(), "job.yaml")
    assert isinstance(document, Document), document
    problems = validate(document, model)
    assert isinstance(problems, tuple)
    return [(p.code, p.path, p.hint) for p in problems]


def _good(text: str = "") -> str:
    return (GOOD / "job.yaml").read_text(encoding="utf-8") + text


@pytest.mark.parametrize(
    ("before", "after", "path", "near"),
    [
        ("finish:", "finsh:", "finsh", "finish"),
        ("town:", "towm:", "site.towm", "town"),
        ("use:", "usee:", "placements[0].usee", "use"),
        ("rectangle:", "rectangel:", "placements[0].add[0].rectangel", "rectangle"),
        ("against_house:", "against_hose:", "placements[0].add[0].against_hose", "against_house"),
    ],
)
def test_an_unknown_key_is_met_with_those_of_its_place(
    before: str, after: str, path: str, near: str
):
    """The near miss comes from the keys that are allowed where the word stands."""
    found = _faults(_good().replace(before, after))
    assert ("unknown-key", path, f"did you mean `{near}`?") in found


@pytest.mark.parametrize(
    ("typed", "near"),
    [("- form: [0, 0]", "from"), ("- {from: [0, 0], radus: 1 ft}", "radius")],
)
def test_near_misses_inside_an_outline(typed: str, near: str):
    """Keys that are Python words, such as `from`, are known by the name that is typed."""
    placements = "placements:\n  - id: a\n    use: patio\n    add:\n      - outline:\n          "
    good = _good().split("placements:")[0]
    assert next(hint for _, _, hint in _faults(f"{good}{placements}{typed}\n")) == (
        f"did you mean `{near}`?"
    )


def test_near_miss_of_a_word_in_a_book():
    """Keys of a mapping by id are followed into, and words of a list of choices are offered."""
    book = (GOOD / "rate-book.yaml").read_text(encoding="utf-8")
    broken = book.replace("applies: asked", "aplies: asked", 1).replace("kind: fiber", "kind: fibr")
    found = _faults(broken, RateBookFile)
    assert ("unknown-key", "rates.step.aplies", "did you mean `applies`?") in found
    assert ("unknown-word", "reinforcement.fiber.kind", "did you mean `fiber`?") in found


@pytest.mark.parametrize(
    ("typed", "model", "now"),
    [
        ("colour: {base: clay}", JobFile, "color"),
        ("colours: [{base: clay}]", JobFile, "colors"),
        ("subcontractors: [{name: A, does: B, licence: C}]", JobFile, "license"),
        ("not_included: [{what: A, who: B, duty: ground}]", JobFile, "responsibility"),
        ("licence: C-8 1234", Company, "license"),
        ("reinforcement: {a: {name: A, kind: fibre}}", RateBookFile, "fiber"),
        ("reinforcement: {a: {name: A, fibre: 3 lb / cu yd}}", RateBookFile, "fiber"),
        ("finishes: {a: {colours: [clay]}}", RateBookFile, "colors"),
        ("rates: {a: {applies: with colour}}", RateBookFile, "with color"),
    ],
)
def test_a_former_name_is_told_what_it_is_now(typed: str, model: type, now: str):
    """Keys and words that were renamed are not read, and the message has the new name."""
    hints = [hint for code, _, hint in _faults(typed, model) if code.startswith("unknown-")]
    assert hints == [f"it is now called `{now}`"]


@pytest.mark.parametrize("name", ["name", "owner", "payments", "adjustment", "warranty"])
def test_every_missing_key_is_named(name: str):
    """An empty company file is told all that it lacks, not the first thing."""
    hints = {path: hint for _, path, hint in _faults("town: Ashwick\n", Company)}
    assert hints[name].startswith(f"add a line `{name}: ")


def _pasted(model: type[BaseModel], indent: str = "") -> str:
    """The line that each message on a missing key of a model tells to add."""
    lines = {
        key: field.examples[0]
        for key, field in model.model_fields.items()
        if field.is_required() and field.examples
    }
    return "".join(f"{indent}{key}: {line}\n" for key, line in lines.items())


@pytest.mark.parametrize(
    ("model", "own"),
    [
        (
            Company,
            "name: N\nowner: O\naddress: A\ntown: T\nphone: 740-555-0100\nemail: a@b.example\n",
        ),
        (
            RateBookFile,
            "finishes:\n  broom:\n    name: Broom\n    rate: $7.00 / sq ft\n"
            + _pasted(Finish, "    "),
        ),
    ],
)
def test_lines_to_paste_are_right_as_they_stand(model: type[BaseModel], own: str):
    """Whoever adds what the messages say has a file without fault."""
    document = parse((own + _pasted(model)).encode(), "file.yaml")
    assert isinstance(document, Document), document
    assert isinstance(validate(document, model), model)


@pytest.mark.parametrize("value", ["", "x", "1", "[]", "[x]", "[[x]]", "{}", "{x: y}", "{x: [y]}"])
@pytest.mark.parametrize("key", list(JobFile.model_fields))
def test_anything_anywhere_has_a_code_of_ours(key: str, value: str):
    """Whatever stands at a key, the fault is in our words and under a code of the table."""
    kept = [line for line in _good().split("placements:")[0].splitlines() if key not in line]
    document = parse("\n".join([*kept, f"{key}: {value}", ""]).encode(), "job.yaml")
    assert isinstance(document, Document)
    problems = validate(document, JobFile)
    assert isinstance(problems, tuple)
    assert {p.code for p in problems} <= set(codes())


def test_line_breaks_in_a_name_are_blanks():
    """A name goes into the head of an e-mail, where a second line would be another field."""
    document = parse(_good('title: "Patio\\r\\nBcc: all@post.example"\n').replace(
        "title: Patio\n", "").encode(), "job.yaml")  # fmt: skip
    assert isinstance(document, Document)
    job = validate(document, JobFile)
    assert isinstance(job, JobFile)
    assert job.title == "Patio Bcc: all@post.example"
