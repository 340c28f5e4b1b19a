"""`quotegen new`: asked, left, taken up again, answered with nonsense; what it writes is right."""

from datetime import date
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner, Result

from quotegen import cli, pipeline
from quotegen.resources import example_folder
from quotegen.starting.answers import FILE, filled_up
from quotegen.starting.files import TEMPLATES, in_the_way, quoted, start, started_files
from quotegen.starting.questions import load_questions, read_answer
from quotegen.trade.contract_law import load_laws
from quotegen.trade.rules import load_rules
from tests.pricing.shop import shared

ON = date(2026, 6, 3)
WHO = ("Arden & Sons: Concrete", "Kit Arden", "7 Quarry Road, Elm Reach, MI", "231-555-0143",
       "kit@arden.example")  # fmt: skip
STATES = (
    "AL", "AK", "AZ", "AR", "CA", "CO", "CT", "DE", "DC", "FL", "GA", "HI", "ID", "IL", "IN",
    "IA", "KS", "KY", "LA", "ME", "MD", "MA", "MI", "MN", "MS", "MO", "MT", "NE", "NV", "NH",
    "NJ", "NM", "NY", "NC", "ND", "OH", "OK", "OR", "PA", "RI", "SC", "SD", "TN", "TX", "UT",
    "VT", "VA", "WA", "WV", "WI", "WY",
)  # fmt: skip


def _new(folder: Path, *typed: str, words: tuple[str, ...] = ()) -> Result:
    """Run the command with lines typed into it; where they run out the person has left."""
    lines = "".join(f"{line}\n" for line in typed)
    return CliRunner().invoke(cli.commands, ["new", str(folder), *words], input=lines)


def _said(folder: Path, **given: str) -> list[str]:
    """What `check` says of the files that these answers make."""
    answers = filled_up(given, load_laws(), load_rules(), ON)
    assert start(folder, started_files(answers, ON)) == ()
    return [str(one) for one in pipeline.figure(folder / "jobs/first.yaml", shared()).problems]


def _read(folder: Path, name: str) -> dict[str, object]:
    read: dict[str, object] = yaml.load((folder / name).read_text("utf-8"), yaml.BaseLoader)
    return read


def test_enter_takes_what_is_offered(tmp_path):
    """Who it is must be typed, Enter takes the rest, and the files check without a word."""
    ran = _new(tmp_path, *WHO, *[""] * 12)
    assert ran.exit_code == 0, ran.output
    assert sorted(p.relative_to(tmp_path).as_posix() for p in tmp_path.rglob("*.*")) == sorted(
        TEMPLATES
    )
    company = _read(tmp_path, "company.yaml")
    assert (company["name"], company["town"], company["state"]) == (WHO[0], "Elm Reach", "MI")
    assert "stand-in" not in (tmp_path / "company.yaml").read_text("utf-8")
    figured = pipeline.figure(tmp_path / "jobs/first.yaml", shared())
    assert figured.problems == ()
    assert "quotegen preview" in ran.output


def test_who_it_is_cannot_be_skipped(tmp_path):
    """A name has no usual answer, so Enter asks again."""
    ran = _new(tmp_path, "", "Arden")
    assert ran.output.count("What is your company called?") == 2
    assert "type an answer" in ran.output


def test_left_and_taken_up_again(tmp_path):
    """What was answered is kept in the folder, nothing else is written, and it goes on there."""
    left = _new(tmp_path, *WHO[:3])
    assert left.exit_code == 1
    assert [path.name for path in tmp_path.iterdir()] == [FILE]
    ran = _new(tmp_path, *WHO[3:], *[""] * 12)
    assert ran.exit_code == 0, ran.output
    assert "What is your company called?" not in ran.output
    assert f"company: {WHO[0]}" in ran.output
    assert not (tmp_path / FILE).exists()


def test_ctrl_c_keeps_the_answers(tmp_path, monkeypatch):
    """An interrupt says how to go on, and leaves no traceback."""

    def interrupted(*_: object, **__: object) -> str:
        raise KeyboardInterrupt

    _new(tmp_path, WHO[0])
    monkeypatch.setattr("click.termui.visible_prompt_func", interrupted)
    ran = CliRunner().invoke(cli.commands, ["new", str(tmp_path)])
    assert ran.exit_code == 1
    assert "type the same to go on" in ran.output
    assert _read(tmp_path, FILE) == {"company": WHO[0]}


@pytest.mark.parametrize(
    ("before", "nonsense", "said"),
    [
        (2, "7 Quarry Road", "needs street, town and the two letters of the state"),
        (4, "kit at arden", "is no e-mail address"),
        (5, "barter", "type `all_in` or `itemized`"),
        (6, "cheap", "is not a sum of money"),
        (6, "0", "must be more than nothing"),
        (6, "-4", "is not a sum of money"),
        (12, "thick", "is not a length"),
        (12, "0", "must be more than zero"),
        (15, "some", "a share like 20 %, or a sum like $1,000"),
        (15, "150 %", "is more than the whole"),
        (15, "100 %", "leaves nothing for later"),
    ],
)
def test_nonsense_is_asked_again(tmp_path, before: int, nonsense: str, said: str):
    """Each answer that cannot be read is met with what can, and the question comes again."""
    good = [*WHO, *[""] * 11]
    ran = _new(tmp_path, *good[:before], nonsense, *good[before:], "")
    assert said in ran.output
    assert ran.exit_code == 0, ran.output


def test_back_goes_one_back(tmp_path):
    """A slip is typed anew."""
    ran = _new(tmp_path, "Ardne", "back", *WHO, *[""] * 12)
    assert ran.exit_code == 0
    assert _read(tmp_path, "company.yaml")["name"] == WHO[0]


def test_one_finish_needs_a_price(tmp_path):
    """With none for the first two, the third must have one."""
    typed = (*WHO, "", "none", "none", "none", "21.50", *[""] * 8)
    ran = _new(tmp_path, *typed)
    assert "one finish at least needs a price" in ran.output
    assert ran.exit_code == 0
    finishes = _read(tmp_path, "rate-book.yaml")["finishes"]
    assert isinstance(finishes, dict)
    assert list(finishes) == ["stamped"]


def test_nothing_is_written_over(tmp_path):
    """A folder that has a company's file is refused before anything is asked."""
    (tmp_path / "company.yaml").write_text("mine", encoding="utf-8")
    (problem,) = in_the_way(tmp_path)
    assert problem.code == "already-started"
    ran = _new(tmp_path, words=("--yes",))
    assert ran.exit_code == 1
    assert "already here: company.yaml;" in ran.output
    assert [path.name for path in tmp_path.iterdir()] == ["company.yaml"]


def test_yes_asks_nothing(tmp_path):
    """All is as offered, and the file says which lines are stand-ins."""
    ran = _new(tmp_path, words=("--yes",))
    assert ran.exit_code == 0
    text = (tmp_path / "company.yaml").read_text("utf-8")
    assert "before anything is sent: company, owner, address, phone, email" in text


@pytest.mark.parametrize("name", ["all_in", "itemized"])
def test_an_example_is_copied(tmp_path, name: str):
    """The made-up companies are there for whoever installed the program, byte for byte."""
    assert _new(tmp_path, words=("--example", name)).exit_code == 0
    for path in example_folder(name).rglob("*.yaml"):
        assert (tmp_path / path.relative_to(example_folder(name))).read_bytes() == path.read_bytes()


@pytest.mark.parametrize("state", STATES)
def test_a_first_job_is_silent_in_each_state(tmp_path, state: str):
    """Deposit, mix and what the law wants on a contract are right wherever the company is."""
    assert _said(tmp_path, address=f"1 Test Lane, Harrow Bend, {state}") == []


@pytest.mark.parametrize("pricing", ["all_in", "itemized"])
@pytest.mark.parametrize(
    ("broom", "exposed", "stamped"),
    [("none", "none", "$7"), ("$7", "none", "none"), ("none", "$7", "$7")],
)
@pytest.mark.parametrize("steel", ["mesh", "bars", "fiber"])
def test_every_way_of_answering_is_silent(tmp_path, pricing, broom, exposed, stamped, steel):
    """Whichever finishes and steel there are, with nothing charged beside, the files agree."""
    typed = {"pricing": pricing, "broom": broom, "exposed": exposed, "stamped": stamped,
             "steel": steel, "pool_edge": "none", "least": "none", "trip": "none"}  # fmt: skip
    assert _said(tmp_path, **typed) == []


@pytest.mark.parametrize(
    ("deposit", "pour"), [("20 %", "60 %"), ("60 %", "30 %"), ("$500", "75 %")]
)
def test_something_is_left_for_the_end(tmp_path, deposit: str, pour: str):
    """Three quarters of what a deposit leaves is due at the pour: of 80 % 60, of 40 % 30."""
    _said(tmp_path, deposit=deposit)
    payments = _read(tmp_path, "company.yaml")["payments"]
    assert isinstance(payments, list)
    assert payments[1]["share"] == pour


def test_california_is_offered_what_its_law_lets_be_taken(tmp_path):
    """Business and Professions Code 7159.5: a tenth; trade/data has the rule and its source."""
    _said(tmp_path, address="1 Test Lane, Harrow Bend, CA")
    payments = _read(tmp_path, "company.yaml")["payments"]
    assert isinstance(payments, list)
    assert payments[0]["share"] == "10 %"


@pytest.mark.parametrize(
    "name",
    ['Bo\'s "Best" Slabs', "A: B", "#1 Concrete", "- Dash", "[x]", "yes", "a, b", "100 % Flat?",
     "back\\slash", "{{ name }}", "Müller & Söhne"],
)  # fmt: skip
def test_a_name_stays_a_name(tmp_path, name: str):
    """Signs that mean something to YAML or to the templates come back as they were typed."""
    assert yaml.load(f"a: {quoted(name)}\nb: [{quoted(name)}]", yaml.BaseLoader) == {
        "a": name,
        "b": [name],
    }
    assert _said(tmp_path, company=name) == []
    assert _read(tmp_path, "company.yaml")["name"] == name


@pytest.mark.parametrize("typed", ["all in", "All-in", "all_in", "1"])
def test_a_choice_is_taken_as_it_is_said(typed: str):
    """A blank, a dash or a number in place of the word that is offered is no nonsense."""
    (pricing,) = (one for one in load_questions() if one.choices and "all_in" in one.choices)
    assert read_answer(pricing, typed, {}) == "all_in"


def test_what_the_law_wants_of_the_company_is_asked(tmp_path):
    """In Illinois the insurer with its amounts; Enter says that there is none."""
    who = (*WHO[:2], "7 Quarry Road, Elm Reach, IL", *WHO[3:])
    ran = _new(tmp_path / "a", *who, "Beacon Mutual", "555-0139", "312-555-0139",
               "general liability, $1,000,000", *[""] * 12)  # fmt: skip
    assert ran.exit_code == 0, ran.output
    assert "`555-0139` has no area code" in ran.output
    assert _read(tmp_path / "a", "company.yaml")["insurance"] == {
        "carrier": "Beacon Mutual", "phone": "312-555-0139",
        "covers": "general liability, $1,000,000"}  # fmt: skip
    ran = _new(tmp_path / "b", *who, *[""] * 13)
    assert ran.exit_code == 0, ran.output
    assert "insurance" not in _read(tmp_path / "b", "company.yaml")


@pytest.mark.parametrize(
    ("on", "state", "start"),
    [(date(2026, 6, 3), "MI", "2026-06-29"), (date(2026, 11, 28), "MI", "2027-03-01"),
     (date(2026, 10, 26), "MI", "2026-11-23"), (date(2026, 10, 28), "OH", "2026-11-23"),
     (date(2026, 11, 28), "TX", "2026-12-21")],
)  # fmt: skip
def test_a_first_job_is_not_poured_in_winter(on: date, state: str, start: str):
    """Four weeks on, on a Monday; where frost is counted on, with the next of spring."""
    given = {"address": f"1 Test Lane, Harrow Bend, {state}"}
    files = started_files(filled_up(given, load_laws(), load_rules(), on), on)
    assert f"start: {start}" in files["jobs/first.yaml"].decode()


def test_last_months_quote_can_be_figured_again():
    """The prices of a start hold from New Year, so that an older quote may be held against them."""
    on = date(2026, 11, 28)
    files = started_files(filled_up({}, load_laws(), load_rules(), on), on)
    assert "valid_from: 2026-01-01" in files["rate-book.yaml"].decode()
