"""Each message once: a tiny bad file, and what quotegen prints about it.

`cases.yaml` is the table; read it to see how quotegen talks. It lists every problem of a case,
so a case that says too much fails too. `spoiled_files.py` makes the files that nobody would type.
"""

import time
import tracemalloc
from itertools import groupby
from pathlib import Path
from typing import Any, TypedDict

import pytest
import yaml

from quotegen import pipeline
from quotegen.reading.files.job import JobFile
from quotegen.reading.yaml.typed_file import load
from quotegen.reading.yaml.unreadable import LARGEST_FILE_BYTES
from tests.messages.case_files import CASES, HERE, lay_out
from tests.messages.command import Command, files_in
from tests.messages.problem_codes import codes
from tests.messages.spoiled_files import SPOILED, huge_png
from tests.pricing.shop import shared
from tests.publish.built import build

FAST_S = 5.0
WARNINGS = {
    "start-before-quote", "deposit-cap", "ground-too-small", "falls-to-house", "fall-at-house",
    "falls-to-pool", "fall-at-pool", "deck-stands-proud", "risers-differ", "riser-too-high",
    "access-chosen", "access-too-short", "nothing-reaches", "joint-panel", "joint-stops-short",
    "standard-looser", "law-missing", "law-near", "mix-weak", "covered-twice", "unexplained",
    "mix-air-low", "larger-is-cheaper", "price-of-nothing", "never-sealed", "price-unusual",
    "depth-unusual", "start-far-off", "book-old", "accepted-without-total",
    "accepted-late", "deposit-unusual", "area-unusual", "side-unusual", "paid-over",
    "paid-over-price", "crew-too-small", "number-beside", "example-past-jobs",
    "fall-missing", "low-line-not-drained", "drain-off-slab", "drain-not-low", "drain-not-priced",
    "fall-unusual", "paid-early", "measured-far-off", "thicker-than-book",
    "revision-spent", "revision-behind", "handed-out-otherwise", "today-differs",
    "start-moved", "steps-free", "wish-not-kept", "saw-late", "cure-under-sealer",
    "tooled-and-sawn", "steps-off-edge", "no-area-code", "pour-in-winter", "material-unusual",
}  # fmt: skip
AT_THE_PACKAGE = "under-floor"
"""The one fault that only a package has: a price under the owner's floor."""
ONE_OF_EACH_STAGE = (
    "alias", "unknown-key", "unknown-finish", "arc-radius", "prepared-ground-overlaps",
    AT_THE_PACKAGE, "signed-drifted",
)  # fmt: skip
"""A fault of the YAML, of one file, between files, of a shape, of the site, of the price, of the
contract."""
CONTENT, LANGUAGES, OWN_PAGES, LOGOS = (
    f"tests/reading/{name}.py"
    for name in (
        "content/test_content",
        "content/test_languages",
        "content/test_own_pages",
        "images/test_logos",
    )
)
ISSUING = "tests/test_issuing.py"

TESTED_ELSEWHERE = {
    "no-pango": "tests/test_cli.py::test_a_missing_library_is_said_in_one_sentence",
    "nothing-to-price": "tests/pricing/test_checks.py::test_nothing_to_price",
    "file-kept": "tests/publish/test_write.py::test_a_changed_file_is_kept",
    "folder-of-another": "tests/publish/test_write.py::test_the_folder_of_another",
    "same-quote-number": "tests/test_season.py::test_two_jobs_with_one_number",
    "already-issued": f"{ISSUING}::test_a_revision_is_issued_once",
    "issued-meanwhile": f"{ISSUING}::test_another_run_meanwhile",
    "revision-spent": f"{ISSUING}::test_other_figures_need_another_number",
    "revision-behind": f"{ISSUING}::test_other_figures_need_another_number",
    "issued-to-another": f"{ISSUING}::test_the_number_of_another_customer",
    "already-accepted": f"{ISSUING}::test_a_yes_is_priced_by_what_was_sent",
    "today-differs": f"{ISSUING}::test_a_yes_is_priced_by_what_was_sent",
    "accepted-otherwise": f"{ISSUING}::test_the_job_and_the_ledger_say_the_same",
    "nothing-to-issue": f"{ISSUING}::test_what_follows_is_handed_out_once",
    "handed-out-otherwise": f"{ISSUING}::test_what_follows_is_handed_out_once",
    "issued-missing": f"{ISSUING}::test_what_is_gone_or_new_is_named",
    "issued-added": f"{ISSUING}::test_what_is_gone_or_new_is_named",
    "issued-chain": f"{ISSUING}::test_what_is_gone_or_new_is_named",
    "issued-changed": f"{ISSUING}::test_spoiled_inputs_price_nothing",
    "no-finish-page": f"{CONTENT}::test_each_kind_of_finish_needs_its_page",
    "no-front-matter": f"{CONTENT}::test_a_page_begins_with_front_matter",
    "logo-not-printed": "tests/publish/test_printable.py::test_what_the_engine_does_not_take",
    "logo-acts": f"{LOGOS}::test_what_could_act_or_reach_out_is_refused",
    "logo-too-large": f"{LOGOS}::test_a_huge_file_is_refused",
    "language-lacks": f"{LANGUAGES}::test_what_is_missing_stays_english_and_is_said",
    "no-language": f"{LANGUAGES}::test_a_language_begins_with_its_locale",
    "no-locale": f"{LANGUAGES}::test_the_locale_must_be_known",
    "own-page-unknown": f"{OWN_PAGES}::test_a_page_that_we_do_not_have_is_refused",
    "own-page-behind": f"{OWN_PAGES}::test_a_page_says_when_ours_has_changed_since",
    "own-theme": "tests/publish/web/test_own_theme.py::test_a_theme_that_cannot_work_is_refused",
    "own-page-lacks": f"{OWN_PAGES}::test_a_page_keeps_what_ours_must_have",
    "own-page-mark": f"{OWN_PAGES}::test_a_page_is_text_with_whole_marks",
    "already-started": "tests/test_new.py::test_nothing_is_written_over",
    "not-a-job": "tests/test_checking.py::test_a_company_file_is_no_job",
    "nothing-here": "tests/test_checking.py::test_a_folder_without_any",
    "preview-fault": "tests/publish/test_preview.py::test_a_fault_of_ours_does_not_end_it",
    "bad-label": f"{CONTENT}::test_a_label_is_one_text_under_one_key",
}
"""Codes that one tiny file cannot bring about, each with the test that does."""


class Row(TypedDict):
    """One line of the table: one problem of one case."""

    case: str
    code: str
    at: str
    says: str
    help: str


TABLE: list[Row] = yaml.safe_load((HERE / "cases.yaml").read_text(encoding="utf-8"))
BY_CASE = {case: list(rows) for case, rows in groupby(TABLE, key=lambda row: row["case"])}


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Stand in a folder that holds nothing but the picture that one case names."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "huge.png").write_bytes(huge_png(9_000, 8_000))
    return Path()


@pytest.fixture
def command(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> Command:
    """Stand in a folder with an older package in `out/`."""
    monkeypatch.setattr(pipeline, "read_shared", shared)
    older = folder / "out" / "T-1" / "customer"
    older.mkdir(parents=True)
    (older / "quote.html").write_text("as sent in April", encoding="utf-8")
    return Command(monkeypatch, capsys)


def _printed(row: Row) -> str:
    kind = "warning: " if row["code"] in WARNINGS else ""
    hint = f"\n    {row['help']}" if row["help"] else ""
    return f"{row['at']}: {kind}{row['says']}{hint}"


def _printed_of(case: str) -> str:
    return "".join(f"{_printed(row)}\n" for row in BY_CASE[case])


@pytest.mark.parametrize("case", [case for case in BY_CASE if case != AT_THE_PACKAGE])
def test_each_case_says_what_the_table_says(folder: Path, case: str):
    """Code, place, words and help are those of the table, and only a warning lets a job through."""
    figured = pipeline.figure(lay_out(CASES / f"{case}.yaml", folder), shared())
    said = [(problem.code, str(problem)) for problem in figured.problems]
    assert said == [(row["code"], _printed(row)) for row in BY_CASE[case]]
    assert (figured.results is not None) == all(row["code"] in WARNINGS for row in BY_CASE[case])


def test_a_price_under_a_floor_refuses_the_package(folder: Path):
    """The job can be figured, with a warning; its package is refused with the table's message."""
    (row,) = BY_CASE[AT_THE_PACKAGE]
    job = lay_out(CASES / f"{AT_THE_PACKAGE}.yaml", folder)
    built = build((job,), shared())
    assert [(problem.code, str(problem)) for problem in built.problems] == [
        (row["code"], _printed(row))]  # fmt: skip
    assert not built.packages


@pytest.mark.parametrize("case", ONE_OF_EACH_STAGE)
def test_a_fault_is_printed_and_nothing_is_written(command: Command, case: str):
    """`package -q` prints what the table says and no more, leaves with 1, and touches no file."""
    lay_out(CASES / f"{case}.yaml", Path())
    before = files_in(Path())
    ran = command("package", "-q", "job.yaml")
    assert ran.err == _printed_of(case)
    assert (ran.code, ran.out) == (1, "")
    assert files_in(Path()) == before


@pytest.mark.parametrize("case", ["start-before-quote", "falls-to-pool", "deposit-cap"])
def test_a_warning_is_printed_and_stops_nothing(command: Command, case: str):
    """A warning of reading, measuring or pricing is printed, and `check` still leaves with 0."""
    lay_out(CASES / f"{case}.yaml", Path())
    ran = command("check", "job.yaml")
    assert ran.err == _printed_of(case)
    assert ran.code == 0
    assert ran.out.startswith("job.yaml: no errors\n")


@pytest.mark.parametrize(
    ("spoil", "code", "at", "words"), SPOILED, ids=[row[0].__name__.strip("_") for row in SPOILED]
)
def test_a_file_that_nobody_would_type_is_refused_fast(
    command: Command, monkeypatch: pytest.MonkeyPatch, spoil, code, at, words
):
    """Its first problem has the place and the words of the table; nothing is written."""
    figured: list[pipeline.PricedJob] = []

    def noted(*more: Any, **named: Any) -> pipeline.PricedJob:
        figured.append(figure(*more, **named))
        return figured[-1]

    figure = pipeline.figure
    monkeypatch.setattr(pipeline, "figure", noted)
    spoil(lay_out(None, Path()))
    before = files_in(Path() / "out")
    began = time.process_time()
    ran = command("package", "-q", "job.yaml")
    assert time.process_time() - began < FAST_S
    assert ran.code == 1
    assert ran.err.startswith(f"{at}: ")
    assert [word for word in words if word not in ran.err] == []
    assert "Traceback" not in ran.err
    assert files_in(Path() / "out") == before
    assert code in {problem.code for problem in figured[0].problems}


def test_a_large_file_is_not_read_to_its_end(tmp_path: Path):
    """A file of 50 MB is read only as far as shows that it is too large."""
    job = tmp_path / "job.yaml"
    with job.open("wb") as file:
        file.truncate(50_000_000)
    tracemalloc.start()
    try:
        assert isinstance(load(job, JobFile), tuple)
        assert tracemalloc.get_traced_memory()[1] < 3 * LARGEST_FILE_BYTES
    finally:
        tracemalloc.stop()


def test_the_good_files_say_nothing(folder: Path):
    """The files among which a case stands have no fault of their own."""
    assert pipeline.figure(lay_out(None, folder), shared()).problems == ()


def test_every_code_has_a_case():
    """A problem that quotegen can report is in the table, or has a test of its own."""
    tabled = {row["code"] for row in TABLE} | {code for _, code, _, _ in SPOILED}
    untested = {
        code: module
        for code, module in codes().items()
        if code not in tabled and code not in TESTED_ELSEWHERE
    }
    assert untested == {}


def test_every_code_in_the_table_is_still_reported():
    """A code that has left the source leaves the table too."""
    tabled = {row["code"] for row in TABLE} | {code for _, code, _, _ in SPOILED}
    assert (tabled | set(TESTED_ELSEWHERE)) - set(codes()) == set()


@pytest.mark.parametrize(("code", "test"), TESTED_ELSEWHERE.items())
def test_what_is_tested_elsewhere_is(code: str, test: str):
    """The test named for a code that no job file can bring about exists and names the code."""
    file, name = test.split("::")
    text = (HERE.parents[1] / file).read_text(encoding="utf-8")
    body = text.partition(f"def {name}(")[2].partition("\ndef ")[0]
    assert f'"{code}"' in body


def test_every_case_file_is_in_the_table():
    """Each file in `cases/` is in the table, and each case of the table has its file."""
    assert {path.stem for path in CASES.iterdir()} == set(BY_CASE)
