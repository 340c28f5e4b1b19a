"""The files of an entry of the ledger: what was sent, what it was made of, and the list of both."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path

from quotegen import __version__
from quotegen.explain.results import Results
from quotegen.publish.write import Files
from quotegen.reading.files.ledger_entry import Facts, FrozenChange, Kind
from quotegen.reading.ledger.entries import FACTS, INPUTS, SUMS, sha256, sums_text
from quotegen.resources import content_folder
from quotegen.trade.rules import rule_files

_LATER = (
    "private/", "customer/final-measurement", "customer/changes", "customer/care",
    "customer/visits",
)  # fmt: skip
"""What follows acceptance, by the beginning of the names of its files."""


def facts_of(results: Results, kind: Kind, on: date, before: str) -> Facts:
    """Return what an entry says of itself.

    Args:
        results: of the job.
        kind: of the entry.
        on: the day of it.
        before: the seal of the entry before it.
    """
    job, contract = results.job, results.contract
    accepted = job.typed.accepted
    measured = contract.remeasure
    return Facts(
        kind=kind,
        quote=job.quote,
        revision=job.revision,
        customer=job.customer.name,
        job=Path(job.places.file).name,
        on=on,
        finish=contract.finish,
        extras=accepted.extras if accepted else (),
        total=contract.quoted_total,
        measured_total=measured.revised_total if measured else None,
        changes=tuple(FrozenChange(number=c.number, amount=c.amount) for c in contract.changes),
        program=__version__,
        rules=_digest({one.name: one.read_bytes() for one in rule_files()}),
        content=_digest(_content()),
        before=before,
    )


def entry_files(facts: Facts, made: Files, inputs: Files) -> Files:
    """Return every file of an entry.

    Args:
        facts: what it says of itself.
        made: what was sent, and what is the owner's alone.
        inputs: the files that it was made of; they hold costs, so they are private.
    """
    files = {**made, FACTS: facts.to_json()}
    files |= {f"{INPUTS}/{name}": data for name, data in inputs.items()}
    return {**files, SUMS: sums_text(files)}


def later_files(files: Files) -> Files:
    """Return of a package what follows acceptance; the quote itself was issued before."""
    return {name: data for name, data in files.items() if name.startswith(_LATER)}


def _content() -> Mapping[str, bytes]:
    pages = (one for one in content_folder().rglob("*") if one.is_file())
    return {one.relative_to(content_folder()).as_posix(): one.read_bytes() for one in pages}


def _digest(files: Mapping[str, bytes]) -> str:
    return sha256(sums_text(files))
