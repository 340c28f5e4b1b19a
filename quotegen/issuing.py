"""The ledger's three commands: freeze what is sent, put down the yes, prove that all is whole."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from quotegen.pipeline import PricedJob, Shared, figure, outcomes_in
from quotegen.pricing.costs.outcome import drift_of
from quotegen.problem import Problem, Source, has_error
from quotegen.publish.entries import entry_files, facts_of, later_files
from quotegen.publish.terminal.stages import Announce, silent
from quotegen.publish.write import Files, freeze
from quotegen.reading.files.after_signing import Accepted
from quotegen.reading.files.job import JobFile
from quotegen.reading.files.ledger_entry import Facts, Kind
from quotegen.reading.ledger.entries import (
    LEDGER,
    changed_files,
    name_of,
    read_entries,
)
from quotegen.reading.ledger.inputs import frozen_name, inputs_of
from quotegen.reading.ledger.ledger import Ledger, accepted_faults
from quotegen.reading.yaml.typed_file import load


@dataclass(frozen=True, slots=True, kw_only=True)
class Frozen:
    """What a command of the ledger left behind.

    Attributes:
        folder: the new entry, None where nothing was frozen.
        facts: what it says of itself.
    """

    folder: Path | None = None
    facts: Facts | None = None
    problems: tuple[Problem, ...]


def issue(job_file: Path, shared: Shared, on: date, announce: Announce = silent) -> Frozen:
    """Freeze what a job calls for: the revision of a quote, or what follows its acceptance.

    Args:
        job_file: the job.
        shared: what every job shares.
        on: the day of issuing.
        announce: is told which stage begins.
    """
    # Imported here, since printing is slow to load and the other commands do without.
    from quotegen.publish.package import package  # noqa: PLC0415

    made = figure(job_file, shared, announce, to_package=True)
    results, owner, ledger = made.results, made.owner, made.ledger
    if results is None or owner is None or ledger is None or has_error(made.problems):
        return Frozen(problems=made.problems)
    kind = Kind.AFTER if ledger.basis else Kind.REVISION
    if kind is Kind.REVISION and (sent := ledger.revision(results.job.revision)):
        return _refused(made, "already-issued", *_already(sent.facts))
    announce(f"5 explain and 6 publish {results.job.quote}")
    drift = drift_of(outcomes_in(job_file.parent, shared), owner.job.costs)
    files = package(replace(results, issued=True), owner, drift).files
    number = results.job.revision
    if kind is Kind.AFTER:
        files, number = later_files(files), len(ledger.after) + 1
        if _is_nothing_new(files, ledger):
            said = f"revision {results.job.revision} is accepted, and nothing new follows from it"
            hint = "add `measured`, a change to `changes`, or `completed`; what changes now is a"
            return _refused(made, "nothing-to-issue", said, f"{hint} change order")
    inputs = inputs_of(job_file)
    if kind is Kind.AFTER:  # the company's files that count are those of the revision
        inputs = {name: data for name, data in inputs.items() if name == frozen_name(job_file)}
    facts = facts_of(results, kind, on, ledger.seal)
    return _frozen(made, ledger, name_of(kind, number), facts, (files, inputs))


def accept(job_file: Path, shared: Shared, yes: Accepted) -> Frozen:
    """Put down that a customer accepted an issued revision; its price comes from its frozen files.

    Args:
        job_file: the job.
        shared: what every job shares.
        yes: the day, the revision, and the finish and extras that were chosen.
    """
    made = figure(job_file, shared, accepting=yes)
    results, ledger, job = made.results, made.ledger, load(job_file, JobFile)
    if results is None or ledger is None or isinstance(job, tuple) or has_error(made.problems):
        return Frozen(problems=made.problems)
    facts = facts_of(results, Kind.ACCEPTED, yes.date, ledger.seal)
    if otherwise := tuple(accepted_faults(job, facts)):
        return Frozen(problems=(*made.problems, *otherwise))
    return _frozen(made, ledger, name_of(Kind.ACCEPTED, 0), facts, ({}, {}))


def verify(folder: Path) -> tuple[Mapping[Path, tuple[str, ...]], tuple[Problem, ...]]:
    """Hold every file of a ledger against what was frozen.

    Args:
        folder: the company's, or the ledger itself.

    Returns:
        The names of the entries by quote, and what was changed, is missing or was added.
    """
    ledger = folder if folder.name == LEDGER else folder / LEDGER
    quotes, problems = dict[Path, tuple[str, ...]](), list[Problem]()
    for room in sorted(one for one in ledger.glob("*") if one.is_dir()):
        entries, faults = read_entries(room)
        problems += faults
        problems += (fault for one in entries for fault in changed_files(one, to_read=False))
        quotes[room] = tuple(one.path.name for one in entries)
    return quotes, tuple(problems)


def _frozen(
    made: PricedJob, ledger: Ledger, name: str, facts: Facts, parts: tuple[Files, Files]
) -> Frozen:
    """Freeze an entry, unless another run froze one meanwhile."""
    folder, files = ledger.room / name, entry_files(facts, *parts)
    if freeze(folder, files, lambda: _seal(ledger.room) == ledger.seal):
        return Frozen(folder=folder, facts=facts, problems=made.problems)
    said = f"another run froze something of this quote meanwhile, so `{name}` was not"
    return _refused(made, "issued-meanwhile", said, "look into the folder, and try again")


def _seal(room: Path) -> str | None:
    """Return the seal of the last entry, empty where there is none; None where they are broken."""
    entries, faults = read_entries(room)
    if faults:
        return None
    return entries[-1].seal if entries else ""


def _is_nothing_new(files: Files, ledger: Ledger) -> bool:
    """Whether no paper follows acceptance, or only those that were handed out last."""
    papers = {name: data for name, data in files.items() if name.startswith("customer/")}
    if set(papers) == {"customer/visits.ics"}:
        return True
    last = ledger.room / name_of(Kind.AFTER, len(ledger.after))
    return all((last / name).is_file() and (last / name).read_bytes() == data
               for name, data in papers.items())  # fmt: skip


def _already(facts: Facts) -> tuple[str, str]:
    said = f"revision {facts.revision} was issued on {facts.on}, and what was sent stays as it is"
    hint = f"for another one type `revision: {facts.revision + 1}`; once they said yes, `accept` it"
    return said, hint


def _refused(made: PricedJob, code: str, said: str, hint: str) -> Frozen:
    place = made.results.job.source("quote") if made.results else Source(file="")
    problem = Problem(code=code, source=place, path="quote", message=said, hint=hint)
    return Frozen(problems=(*made.problems, problem))
