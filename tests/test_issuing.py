"""What was sent stays as it was sent, and what was accepted is priced by it, come what may."""

import json
import random
import re
import subprocess
from datetime import date
from pathlib import Path

import pytest

from quotegen.issuing import accept, issue, verify
from quotegen.pipeline import PricedJob, figure
from quotegen.problem import Problem, Severity
from quotegen.reading.files.after_signing import Accepted
from tests.messages.command import Command, files_in
from tests.pricing.shop import shared
from tests.publish.built import page_text
from tests.publish.reading import read_mail
from tests.world import PATIO, write_world

pytestmark = pytest.mark.usefixtures("unprinted")

JUNE_1, JUNE_2, JUNE_9 = date(2026, 6, 1), date(2026, 6, 2), date(2026, 6, 9)
MARK = "Draft, not yet an offer"
FLIPS = 100
MEASURED = 'measured: {date: 2026-06-08, placements: {patio: {area: "612 sq ft"}}}\n'
CHANGED = """\
changes:
  - {number: 1, date: 2026-06-09, what: one step, asked_by: you, rate: step, quantity: 1}
"""
COMPLETED = "completed: {date: 2026-07-01, poured: 2026-06-11}\n"


def _yes(revision: int = 1, finish: str | None = None, on: date = JUNE_2) -> Accepted:
    """Return a yes as the command line makes it."""
    return Accepted.model_construct(
        date=on, revision=revision, finish=finish, extras=(), total=None
    )


def _codes(problems: tuple[Problem, ...]) -> list[str]:
    return [one.code for one in problems]


def _issued(job: Path) -> Path:
    """Issue a job, which must be without fault."""
    done = issue(job, shared(), JUNE_1)
    assert (done.problems, done.folder is not None) == ((), True)
    assert done.folder is not None
    return done.folder


def _figured(job: Path) -> PricedJob:
    return figure(job, shared())


def _total(job: Path) -> str:
    """Return the price that a job starts from after acceptance."""
    made = _figured(job)
    assert made.results is not None, made.problems
    return str(made.results.contract.quoted_total)


def _dearer(folder: Path) -> None:
    """Make every price by the square foot in the rate book dearer by $10; costs stay."""
    book = folder / "rate-book.yaml"
    text = re.sub(r"rate: \$(\d+\.\d\d / sq ft)", r"rate: $1\1", book.read_text("utf-8"))
    assert text != book.read_text("utf-8")
    book.write_text(text, encoding="utf-8")


def _add(job: Path, text: str) -> None:
    job.write_text(job.read_text("utf-8") + text, encoding="utf-8")


def test_the_story(command: Command):
    """Quote, issue, rates, yes, forms, change, rates, hand-over: no byte and no figure moves."""
    job, ledger = Path("job.yaml"), Path("issued")
    quoted = _total(job)
    assert command("issue", "job.yaml", "--on", "2026-06-01").code == 0
    as_sent = files_in(ledger)
    _dearer(Path())
    assert command("check", "job.yaml").code == 0
    assert command("package", "job.yaml").code == 1
    assert command("accept", "job.yaml", "--revision", "1", "--on", "2026-06-02").code == 0
    assert _total(job) == quoted
    after = {}
    for number, text in enumerate((MEASURED, CHANGED, COMPLETED), start=1):
        _add(job, text)
        _dearer(Path())
        ran = command("issue", "job.yaml", "--on", "2026-07-02")
        assert (ran.code, _total(job)) == (0, quoted), ran.err
        after[number] = files_in(ledger / "T-1" / f"after-{number}")
    results = _figured(job).results
    assert results is not None
    changed = results.contract
    assert changed.remeasure is not None
    assert str(changed.remeasure.previous_total) == quoted
    assert as_sent.items() <= files_in(ledger).items()
    for number, files in after.items():
        assert files_in(ledger / "T-1" / f"after-{number}") == files
    assert (command("verify").code, command("package", "job.yaml").code) == (0, 0)


def test_what_is_issued_bears_no_mark(tmp_path: Path):
    """Pages, mail and calendar of an issued revision are the offer itself; a draft's are marked."""
    folder = _issued(write_world(tmp_path)) / "customer"
    for path in folder.iterdir():
        assert MARK.encode() not in path.read_bytes(), path.name
    mail = read_mail((folder / "email.eml").read_bytes())
    assert mail["Subject"] == "Quote T-1 for your patio at 1 Test Lane"


def test_private_things_lie_apart(tmp_path: Path):
    """Inputs and manifest hold costs: they lie under `private/`, closed to other logins."""
    folder = _issued(write_world(tmp_path))
    assert {path.name for path in folder.iterdir()} == {"customer", "private"}
    assert (folder / "private").stat().st_mode & 0o777 == 0o700
    inputs = files_in(folder / "private" / "inputs")
    assert {"company.yaml", "rate-book.yaml", "past-jobs.yaml"} <= {
        name.rpartition("/")[2] for name in inputs
    }
    facts = json.loads((folder / "private" / "entry.json").read_bytes())
    assert (facts["revision"], facts["on"], facts["before"]) == (1, "2026-06-01", "")


def test_a_revision_is_issued_once(tmp_path: Path):
    """The same number again is refused, and nothing is touched."""
    job = write_world(tmp_path)
    _issued(job)
    before = files_in(tmp_path)
    done = issue(job, shared(), JUNE_2)
    assert (_codes(done.problems), done.folder) == (["already-issued"], None)
    assert files_in(tmp_path) == before


def test_another_run_meanwhile(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """What was frozen between reading and writing is seen, and the chain does not fork."""
    job = write_world(tmp_path)
    monkeypatch.setattr("quotegen.issuing._seal", lambda _: "another")
    assert _codes(issue(job, shared(), JUNE_1).problems) == ["issued-meanwhile"]
    assert not list((tmp_path / "issued").rglob("*.html"))


def test_other_figures_need_another_number(tmp_path: Path):
    """A dearer book is warned of at a number that was sent; a second one says what moved."""
    job = write_world(tmp_path)
    _issued(job)
    _dearer(tmp_path)
    spent = [one for one in _figured(job).problems if one.code == "revision-spent"]
    assert [one.severity for one in spent] == [Severity.WARNING]
    assert "revision-spent" in _codes(issue(job, shared(), JUNE_2).problems)
    _add(job, "revision: 2\n")
    folder = issue(job, shared(), JUNE_2).folder
    assert folder is not None
    page = (folder / "customer" / "quote.html").read_text("utf-8")
    assert "Since revision 1 of June 1, 2026 the price went from $" in page_text(page)
    results = _figured(job).results
    assert results is not None
    assert results.since is not None
    assert results.since.difference == sum(
        (line.after or 0) - (line.before or 0) for line in results.since.lines
    )
    job.write_text(PATIO, encoding="utf-8")
    assert "revision-behind" in _codes(_figured(job).problems)


def test_the_number_of_another_customer(tmp_path: Path):
    """A copied job with a forgotten number never continues the first customer's quote."""
    job = write_world(tmp_path)
    _issued(job)
    other = tmp_path / "copy.yaml"
    other.write_text(PATIO.replace("Wren Abernathy", "Emil Castellan"), encoding="utf-8")
    assert _codes(_figured(other).problems) == ["issued-to-another"]


def test_a_yes_is_priced_by_what_was_sent(tmp_path: Path):
    """The chosen finish at the frozen rates; today's price beside it is said, and binds nobody."""
    job = write_world(tmp_path)
    quote = _figured(job).results
    assert quote is not None
    exposed = next(one.total for one in quote.quote.finishes if one.id == "exposed")
    _issued(job)
    _dearer(tmp_path)
    done = accept(job, shared(), _yes(finish="exposed"))
    assert done.facts is not None
    assert (done.facts.finish, done.facts.total) == ("exposed", exposed)
    (today,) = (one for one in _figured(job).problems if one.code == "today-differs")
    assert today.severity is Severity.WARNING
    assert f"${exposed:,}" in today.message
    assert _codes(accept(job, shared(), _yes()).problems) == ["already-accepted"]


@pytest.mark.parametrize(
    ("yes", "code"),
    [
        (_yes(2), "accepted-not-issued"),
        (_yes(finish="slat"), "accepted-not-offered"),
        (_yes(on=date(2026, 5, 1)), "accepted-before-quote"),
    ],
)
def test_a_yes_that_cannot_be(tmp_path: Path, yes: Accepted, code: str):
    """A revision not sent, a finish not offered, a day before the quote: nothing is frozen."""
    job = write_world(tmp_path)
    _issued(job)
    done = accept(job, shared(), yes)
    assert (done.folder, code in _codes(done.problems)) == (None, True)


def test_the_job_and_the_ledger_say_the_same(tmp_path: Path):
    """An acceptance by hand that contradicts the ledger is an error that names both."""
    job = write_world(tmp_path)
    _issued(job)
    assert accept(job, shared(), _yes()).problems == ()
    _add(job, "accepted: {date: 2026-06-03, revision: 1}\n")
    (said,) = _figured(job).problems
    assert said.code == "accepted-otherwise"
    assert "2026-06-03" in said.message
    assert "2026-06-02" in said.message


def test_a_yes_typed_by_hand(tmp_path: Path):
    """`accepted` with its revision is priced by the frozen files too, and needs no total."""
    job = write_world(tmp_path)
    quoted = _total(job)
    _issued(job)
    _dearer(tmp_path)
    _add(job, "accepted: {date: 2026-06-03, revision: 1}\n")
    assert _total(job) == quoted
    assert _codes(_figured(job).problems) == ["today-differs"]


def test_what_follows_is_handed_out_once(tmp_path: Path):
    """With nothing new after a yes there is nothing to issue; a sum that moved since is said."""
    job = write_world(tmp_path)
    _issued(job)
    accept(job, shared(), _yes())
    assert "nothing-to-issue" in _codes(issue(job, shared(), JUNE_9).problems)
    _add(job, CHANGED)
    done = issue(job, shared(), JUNE_9)
    assert done.folder is not None
    names = {path.name for path in (done.folder / "customer").iterdir()}
    assert names == {"changes.html", "changes.pdf", "visits.ics"}
    assert "nothing-to-issue" in _codes(issue(job, shared(), JUNE_9).problems)
    job.write_text(job.read_text("utf-8").replace("quantity: 1", "quantity: 2"), encoding="utf-8")
    assert "handed-out-otherwise" in _codes(_figured(job).problems)


def test_a_hundred_spoiled_bytes_are_all_found(tmp_path: Path):
    """One byte flipped, cut or added anywhere in the ledger: `verify` names that very file."""
    job = write_world(tmp_path)
    _issued(job)
    accept(job, shared(), _yes())
    quotes, problems = verify(tmp_path)
    assert (list(quotes.values()), problems) == ([("r1", "accepted")], ())
    chance = random.Random(20260601)
    paths = [one for one in sorted((tmp_path / "issued").rglob("*")) if one.is_file()]
    for _ in range(FLIPS):
        path = chance.choice(paths)
        path.chmod(0o600)
        whole = path.read_bytes()
        path.write_bytes(_spoiled(whole, chance))
        _, found = verify(tmp_path)
        path.write_bytes(whole)
        named = {Path(one.source.file) for one in found}
        assert path in named or (path.name == "SHA256SUMS" and named), path
    assert verify(tmp_path)[1] == ()


def _spoiled(data: bytes, chance: random.Random) -> bytes:
    place, kind = chance.randrange(len(data)), chance.randrange(3)
    if kind == 0:
        return data[:place] + bytes([data[place] ^ (1 << chance.randrange(8))]) + data[place + 1 :]
    return data[:place] + (data[place + 1 :] if kind == 1 else b"x" + data[place:])


def test_what_is_gone_or_new_is_named(tmp_path: Path):
    """A deleted file, an added one, and an entry taken out of the chain are each told apart."""
    job = write_world(tmp_path)
    folder = _issued(job)
    _add(job, "revision: 2\n")
    _issued(job)
    page = folder / "customer" / "quote.html"
    kept = page.read_bytes()
    page.unlink()
    assert [(one.code, one.source.file) for one in verify(tmp_path)[1]] == [
        ("issued-missing", str(page))
    ]
    page.write_bytes(kept)
    added = folder / "customer" / "quote-2.html"
    added.write_bytes(b"other")
    assert [(one.code, one.source.file) for one in verify(tmp_path)[1]] == [
        ("issued-added", str(added))
    ]
    added.unlink()
    folder.rename(tmp_path / "elsewhere")
    assert _codes(verify(tmp_path)[1]) == ["issued-chain"]


def test_spoiled_inputs_price_nothing(tmp_path: Path):
    """A frozen rate book that was edited is an error: the accepted price cannot move that way."""
    job = write_world(tmp_path)
    folder = _issued(job)
    accept(job, shared(), _yes())
    book = folder / "private" / "inputs" / "jobs" / "rate-book.yaml"
    book.chmod(0o600)
    book.write_bytes(book.read_bytes().replace(b"$1", b"$2", 1))
    made = _figured(job)
    assert (made.results, _codes(made.problems)) == (None, ["issued-changed"])


def test_an_old_revision_needs_no_program(tmp_path: Path):
    """The list of files is what `sha256sum -c` of GNU coreutils reads."""
    folder = _issued(write_world(tmp_path))
    done = subprocess.run(
        ["sha256sum", "--check", "--strict", "--quiet", "private/SHA256SUMS"],
        cwd=folder, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")
