"""The command line: what it prints, and its exit codes."""

import errno
import json
import re
import sys
from pathlib import Path

import pytest

from quotegen import __version__, pipeline
from quotegen.publish.manifest import MANIFEST
from quotegen.publish.pdf import engine_problem
from tests.messages.command import Command, files_in
from tests.publish.built import STAGE
from tests.world import EXAMPLES, PATIO

pytestmark = pytest.mark.usefixtures("unprinted")


def _second_job(name: str, text: str) -> None:
    Path(name).write_text(text, encoding="utf-8")


def _one_sentence(printed: str) -> bool:
    return printed.count("\n") == 1 and printed.endswith("\n") and "Traceback" not in printed


def test_check_says_that_nothing_is_wrong(command: Command):
    """A job without a fault leaves with 0 and one line on the screen."""
    ran = command("check", "job.yaml")
    assert (ran.code, ran.out, ran.err) == (0, "job.yaml: no errors\n", "")


def test_check_says_as_much_as_is_asked(command: Command):
    """-q leaves only what is wrong; -v adds each stage with its seconds, and the files read."""
    assert command("check", "-q", "job.yaml").out == ""
    ran = command("check", "-v", "job.yaml")
    assert ran.out == "job.yaml: no errors\n"
    made_of, *stages = ran.err.splitlines()
    assert made_of.startswith("job.yaml is made of job.yaml, rate-book.yaml, company.yaml")
    assert [re.sub(r"[\d.]+ s$", "", line) for line in stages] == [
        "1 read job.yaml: ", "2 measure T-1: ", "3 price T-1: ", "4 visits T-1: "]  # fmt: skip
    _second_job("bad.yaml", PATIO.replace("finish: broom", "finish: brom"))
    assert "bad.yaml:7:9: the rate book has no finish" in command("check", "-q", "bad.yaml").err


def test_a_pipe_gets_a_line_for_each_stage(command: Command):
    """`package` and `issue` say each stage on the error stream, which here is no terminal."""
    stages = ["1 read job.yaml", "2 measure T-1", "3 price T-1", "4 visits T-1",
              "5 explain and 6 publish T-1"]  # fmt: skip
    assert command("package", "job.yaml").err.splitlines() == stages
    assert command("issue", "job.yaml", "--on", "2026-05-14").err.splitlines() == stages


def test_check_goes_on_after_a_faulty_job(command: Command):
    """Every job is checked, faults go to the error stream, and one of them is enough for 1."""
    bad = PATIO.replace("finish: broom", "finish: brom").replace("quote: T-1", "quote: T-2")
    _second_job("bad.yaml", bad)
    ran = command("check", "bad.yaml", "job.yaml")
    assert (ran.code, ran.out) == (1, "job.yaml: no errors\n")
    assert ran.err.startswith("bad.yaml:7:9: the rate book has no finish `brom`\n    did you mean")


def test_check_writes_nothing(command: Command):
    """Only `package` writes."""
    before = files_in(Path())
    command("check", "job.yaml")
    command("figure", "job.yaml")
    assert files_in(Path()) == before


def test_package_writes_one_folder_and_lists_it(command: Command):
    """The package lies under the quote number, and each of its files is named."""
    ran = command("package", "job.yaml", "--out", "sent", "--quiet")
    assert (ran.code, ran.out, ran.err) == (0, "", "")
    ran = command("package", "job.yaml", "--out", "sent", "--fresh")
    written = [p.relative_to("sent/T-1").as_posix() for p in Path("sent").rglob("*") if p.is_file()]
    written.remove(MANIFEST)
    assert (ran.code, [line for line in ran.err.splitlines() if not STAGE.match(line)]) == (0, [])
    assert ran.out.splitlines() == ["sent/T-1/", *(f"  {name}" for name in sorted(written))]
    assert "customer/quote.pdf" in written


def test_a_number_used_for_two_customers(command: Command):
    """A copied job with a forgotten number never takes the folder of the first customer."""
    command("package", "job.yaml", "--out", "sent")
    before = files_in(Path("sent"))
    _second_job("copy.yaml", PATIO.replace("Wren Abernathy", "Emil Castellan"))
    ran = command("package", "copy.yaml", "--out", "sent")
    assert (ran.code, ran.out) == (1, "")
    assert (
        "copy.yaml:1:8: `sent/T-1` holds quote `T-1` for Wren Abernathy (job.yaml), and this is "
        "quote `T-1` for Emil Castellan\n"
    ) in ran.err
    assert files_in(Path("sent")) == before


def test_a_changed_file_is_kept_and_said(command: Command):
    """A page that the owner wrote into is kept beside the new one, with a warning and 0."""
    command("package", "job.yaml", "--out", "sent")
    Path("sent/T-1/customer/quote.html").write_text("mine", encoding="utf-8")
    ran = command("package", "job.yaml", "--out", "sent", "-q")
    assert ran.code == 0
    assert ran.err.startswith("sent/T-1/customer/quote.html:1:1: warning: this is not as quotegen")
    assert Path("sent/T-1/customer/quote.kept-1.html").read_text(encoding="utf-8") == "mine"


def test_figure_prints_what_package_writes(command: Command):
    """`figure --json` and figures.json are the same to the byte."""
    command("package", "job.yaml")
    ran = command("figure", "job.yaml", "--json")
    assert ran.out == Path("out/T-1/private/figures.json").read_text(encoding="utf-8")
    assert ran.code == 0


def test_figures_of_several_jobs_are_a_list(command: Command):
    """With several jobs `figure --json` prints a list in the order that they were named."""
    _second_job("second.yaml", PATIO.replace("T-1", "T-2"))
    ran = command("figure", "second.yaml", "job.yaml", "--json")
    assert [one["quote"]["number"] for one in json.loads(ran.out)] == ["T-2", "T-1"]


def test_figures_in_the_terminal(command: Command):
    """Without `--json` a person reads the same total in tables."""
    total = json.loads(command("figure", "job.yaml", "--json").out)["total"]
    ran = command("figure", "job.yaml")
    assert (ran.code, ran.err) == (0, "")
    assert f"{float(total):,.2f}" in ran.out
    assert "Payments" in ran.out


def test_no_figures_of_a_faulty_job(command: Command):
    """With an error in one job, no job of the call gets numbers."""
    _second_job("bad.yaml", PATIO.replace("30 ft x 20 ft", "30 x 20"))
    ran = command("figure", "job.yaml", "bad.yaml", "--json")
    assert (ran.code, ran.out) == (1, "")


def test_several_jobs_at_once(command: Command):
    """Each job of a call gets its own folder."""
    _second_job("second.yaml", PATIO.replace("T-1", "T-2"))
    ran = command("package", "job.yaml", "second.yaml", "--cores", "1")
    assert ran.code == 0
    assert sorted(path.name for path in Path("out").iterdir()) == ["T-1", "T-2"]


@pytest.mark.parametrize("strict", [(), ("--strict",)])
def test_one_faulty_job_among_good_ones(command: Command, strict: tuple[str, ...]):
    """The good one is written and the code is 1 all the same; `--strict` writes neither."""
    _second_job("bad.yaml", PATIO.replace("T-1", "T-2").replace("finish: broom", "finish: brom"))
    ran = command("package", "bad.yaml", "job.yaml", "--cores", "1", *strict)
    assert (ran.code, ran.err.count("the rate book has no finish `brom`")) == (1, 1)
    assert [path.name for path in Path().glob("out/*")] == ([] if strict else ["T-1"])


def test_what_has_not_changed_is_left_alone(command: Command):
    """A second run says so in a line and touches no file; `--fresh` builds it again."""
    command("package", "job.yaml")
    page = Path("out/T-1/customer/quote.html")
    before = page.stat().st_ino
    ran = command("package", "job.yaml")
    assert (ran.code, ran.out) == (0, "out/T-1/ nothing has changed\n")
    assert page.stat().st_ino == before
    assert "  customer/quote.html" in command("package", "job.yaml", "--fresh").out
    assert page.stat().st_ino != before


def test_two_jobs_with_one_number_are_refused(command: Command):
    """Two jobs of one number would be written over each other."""
    _second_job("second.yaml", PATIO.replace("Patio", "Walk"))
    ran = command("package", "job.yaml", "second.yaml", "--cores", "1")
    assert (ran.code, ran.out) == (1, "")
    assert "second.yaml:" in ran.err
    assert "the quote number `T-1` is also that of job.yaml" in ran.err
    assert not Path("out").exists()


def test_a_warning_does_not_keep_a_package_back(command: Command):
    """A warning is printed, and the package is written."""
    _second_job("late.yaml", PATIO.replace("2026-06-08", "2026-05-08"))
    ran = command("package", "late.yaml")
    assert ran.code == 0
    assert "late.yaml:3:8: warning: the work starts" in ran.err
    assert Path("out/T-1/customer/quote.html").exists()


@pytest.mark.parametrize(
    "words",
    [(), ("pakage", "job.yaml"), ("package",), ("package", "job.yaml", "--outt", "x"),
     ("schema", "jobs")],
)  # fmt: skip
def test_wrong_usage_leaves_with_2(command: Command, words: tuple[str, ...]):
    """What is not understood is said with how to ask for help."""
    ran = command(*words)
    assert ran.code == 2
    assert "Usage: quotegen" in ran.err


@pytest.mark.parametrize("words", [("--help",), ("package", "-h"), ("--version",)])
def test_help_leaves_with_0(command: Command, words: tuple[str, ...]):
    """Help and version are no fault."""
    ran = command(*words)
    assert (ran.code, ran.err) == (0, "")
    assert __version__ in ran.out or "Usage: quotegen" in ran.out


@pytest.mark.parametrize("kind", ["job", "company", "rate-book", "past-jobs"])
def test_schema_prints_json(command: Command, kind: str):
    """An editor can read what `schema` prints."""
    ran = command("schema", kind)
    assert ran.code == 0
    assert json.loads(ran.out)["$schema"].endswith("2020-12/schema")


def test_schema_of_a_job_is_the_usual_one(command: Command):
    """Without a word after it, `schema` prints that of a job."""
    assert command("schema").out == command("schema", "job").out


def test_a_file_in_the_way_is_said_in_one_sentence(command: Command):
    """Where the folder cannot be made the machine is at fault, 3, and the file stays."""
    Path("taken").write_text("mine", encoding="utf-8")
    ran = command("package", "job.yaml", "--out", "taken/out")
    assert (ran.code, ran.out) == (3, "")
    assert _one_sentence(ran.err)
    assert "taken" in ran.err
    assert Path("taken").read_text(encoding="utf-8") == "mine"


def test_a_full_disk_leaves_the_older_package(command: Command, monkeypatch: pytest.MonkeyPatch):
    """A package that cannot be written whole is not written, and the older one stays as it was."""
    command("package", "job.yaml")
    before = files_in(Path("out"))

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    _second_job("job.yaml", PATIO.replace("30 ft", "31 ft"))
    ran = command("package", "-q", "job.yaml")
    assert ran.code == 3
    assert "No space left on device" in ran.err
    assert _one_sentence(ran.err)
    assert files_in(Path("out")) == before


def test_a_fault_of_our_own_is_said_in_one_sentence(
    command: Command, monkeypatch: pytest.MonkeyPatch
):
    """What we did not foresee is said plainly: no traceback, nothing written."""

    def broken(*_: object) -> None:
        message = "the seventh corner"
        raise IndexError(message)

    monkeypatch.setattr(pipeline, "price", broken)
    ran = command("package", "-q", "job.yaml")
    assert (ran.code, ran.out) == (3, "")
    assert _one_sentence(ran.err)
    assert "quotegen has a fault of its own (IndexError: the seventh corner)" in ran.err
    assert not Path("out").exists()


def test_a_missing_library_is_said_in_one_sentence(
    command: Command, monkeypatch: pytest.MonkeyPatch
):
    """Where the print engine cannot start we say what to install, and leave with 3."""

    class NoPango:
        def find_spec(self, name: str, *_: object) -> None:
            if name == "weasyprint":
                message = "cannot load library 'libpango-1.0-0'"
                raise OSError(message)

    monkeypatch.delitem(sys.modules, "weasyprint", raising=False)
    monkeypatch.setattr(sys, "meta_path", [NoPango(), *sys.meta_path])
    problem = engine_problem()
    assert problem is not None
    assert problem.code == "no-pango"
    ran = command("package", "-q", "job.yaml")
    assert ran.code == 3
    assert _one_sentence(ran.err)
    assert "apt-get install libpango" in ran.err


@pytest.mark.parametrize("name", sorted(path.name for path in (EXAMPLES / "jobs").iterdir()))
def test_examples_have_no_fault(command: Command, name: str):
    """The example jobs are checked without a word on the error stream."""
    ran = command("check", str(EXAMPLES / "jobs" / name))
    assert (ran.code, ran.err) == (0, "")


def test_check_says_in_full_what_an_all_in_price_pays_for(
    command: Command, monkeypatch: pytest.MonkeyPatch
):
    """`usual` is spelled out, and what a finish adds to it stands at its end."""
    monkeypatch.chdir(EXAMPLES.parent / "all_in")
    ran = command("check", "jobs/larch-row-patio.yaml")
    assert ran.code == 0
    lines = ran.out.splitlines()
    usual = "finish, dig_out, base, layout, forms, reinforcement, slab, placing, isolation, joints"
    assert lines[1] == f"  broom pays for: {usual}, curing, sealing, cleanup"
    assert lines[2] == f"  exposed pays for: {usual}, curing, sealing, cleanup, wash"
