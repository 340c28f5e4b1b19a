"""What the tests of the phone sheet share: the deck, a small job with bids, parts of a sheet."""

import re
import shutil
from functools import cache
from pathlib import Path

from quotegen.explain.private.owners_sheet import OwnersSheet, Section, Table
from quotegen.explain.private.phone_sheet import phone_sheet
from quotegen.explain.results import Results
from quotegen.pipeline import figure
from quotegen.pricing.costs.owner import OwnersFigures
from tests.pricing import shop
from tests.world import EXAMPLES, PATIO

ALL_IN = EXAMPLES.parent / "all_in" / "jobs" / "kiln-hill-pool-deck.yaml"
DECK = next(path for path in shop.JOBS if path.stem == "orchard-bend-pool-deck")
SMALL = PATIO.replace("30 ft x 20 ft", "25 ft x 16 ft")
THREE = """\
other_bids:
  - {id: low, total: "$3,200"}
  - {id: middle, total: "$5,400", scope: {slab: included, base: included, sealing: not included}}
  - {id: high, total: "$7,200", scope: {slab: included}, numbers: {thickness: 6 in}}
"""


def figured(folder: Path, job: str) -> tuple[Results, OwnersFigures]:
    """Stages 1 to 4 of a job without fault: its results, and what is the owner's."""
    made = shop.figured(folder, job)
    assert made.results is not None
    assert made.owner is not None
    return made.results, made.owner


def deck() -> tuple[Results, OwnersFigures]:
    """The same of the pool deck."""
    owner = shop.example(DECK).owner
    assert owner is not None
    return shop.example_results(DECK), owner


def all_in(job_file: Path) -> tuple[Results, OwnersFigures]:
    """The same of a job whose company prices all-in."""
    owner = shop.example(job_file).owner
    assert owner is not None
    return shop.example_results(job_file), owner


def with_bids(folder: Path, job_file: Path, bids: str) -> OwnersSheet:
    """The phone sheet of an example with other bids in place of its own."""
    copied = shutil.copytree(job_file.parent.parent, folder / "company")
    text = re.sub(r"(?ms)^other_bids:.*?(?=^\S|\Z)", "", job_file.read_text(encoding="utf-8"))
    job = copied / "jobs" / job_file.name
    job.write_text(text + "other_bids:\n" + bids, encoding="utf-8")
    made = figure(job, shop.shared())
    assert made.problems == ()
    assert made.results is not None
    assert made.owner is not None
    return phone_sheet(made.results, made.owner)


@cache
def deck_sheet() -> OwnersSheet:
    """The phone sheet of the pool deck."""
    return phone_sheet(*deck())


def all_sections(sheet: OwnersSheet) -> tuple[Section, ...]:
    """The sections of a sheet, and those that stay folded."""
    return (*sheet.sections, *(sheet.folded.sections if sheet.folded else ()))


def section_of(sheet: OwnersSheet, section_id: str) -> Section:
    """The section of that id; there is one."""
    (found,) = (section for section in all_sections(sheet) if section.id == section_id)
    return found


def table_of(sheet: OwnersSheet, section_id: str) -> Table:
    """The table of a section that has one."""
    table = section_of(sheet, section_id).table
    assert table is not None
    return table


def words_of(sheet: OwnersSheet) -> str:
    """Every text of a sheet, one on a line."""
    folded = sheet.folded.lines if sheet.folded else ()
    parts = [sheet.head.title, *sheet.lead, *folded]
    for block in sheet.sums:
        parts += [block.title, *block.verdict]
        parts += [text for row in block.rows for text in (row.name, *row.cells)]
    for section in all_sections(sheet):
        rows = section.table.rows if section.table else ()
        parts += [section.title, *section.lines, *section.points]
        parts += [text for row in rows for text in (row.name, row.note, *row.cells)]
    return "\n".join(parts)
