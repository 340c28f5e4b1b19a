"""The ledger as a job meets it: what was issued of it, and the frozen files that now count."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from quotegen.problem import Problem
from quotegen.reading.book_versions import book_on
from quotegen.reading.files.after_signing import Accepted
from quotegen.reading.files.job import Job, JobFile
from quotegen.reading.files.ledger_entry import Facts, FrozenFigures, Kind, figures_of
from quotegen.reading.ledger.entries import (
    FIGURES,
    INPUTS,
    LEDGER,
    Entry,
    changed_files,
    read_entries,
)
from quotegen.reading.ledger.inputs import JOB_FOLDER
from quotegen.reading.yaml.typed_file import Typed, beside, load

AFTER_QUOTE = frozenset(
    {"accepted", "paid", "measured", "changes", "completed", "forecast", "references"}
) | (JobFile.model_fields.keys() - Job.model_fields.keys())
"""The keys of a job that go on after it is accepted; all others are as they were sent."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Issued:
    """A revision of a quote as it was sent: its facts and its prices."""

    facts: Facts
    figures: FrozenFigures


@dataclass(frozen=True, slots=True, kw_only=True)
class Ledger:
    """What was frozen of one quote.

    Attributes:
        room: the folder of the quote in the ledger.
        revisions: as they were sent, in that order.
        accepted: the yes, where `accept` has put it down.
        after: what was handed out since, in that order.
        seal: of the last entry, empty where there is none.
        basis: the frozen job file that the accepted price starts from; None before.
    """

    room: Path
    revisions: tuple[Issued, ...] = ()
    accepted: Facts | None = None
    after: tuple[Facts, ...] = ()
    seal: str = ""
    basis: Path | None = None

    def revision(self, number: int) -> Issued | None:
        """Return a revision, None where it was not issued."""
        return next((one for one in self.revisions if one.facts.revision == number), None)


def read_ledger(
    path: Path, job: Typed[JobFile], accepting: Accepted | None = None
) -> Ledger | tuple[Problem, ...]:
    """Read what was issued of a job; what the program works from must be as it was frozen.

    Args:
        path: the job file.
        job: as it is today.
        accepting: a yes that is about to be put down.
    """
    company = beside(path, "company.yaml")
    room = (company.parent if company else path.parent) / LEDGER / job.value.quote
    whole, faults = read_entries(room)
    faults = faults or tuple(f for one in whole for f in changed_files(one, to_read=True))
    faults = faults or tuple(_of_another(path, job, room, whole))
    if faults:
        return faults
    kept: dict[Kind, tuple[Entry, ...]] = {
        kind: tuple(one for one in whole if one.facts.kind is kind) for kind in Kind
    }
    accepted = next((one.facts for one in kept[Kind.ACCEPTED]), None)
    numbers = tuple(one.facts.revision for one in kept[Kind.REVISION])
    yes = accepting or accepted_in(job.value, accepted)
    faults = (
        *_accepted_before(job, accepted, accepting),
        *_not_issued(job, yes, numbers),
        *accepted_faults(job, accepted),
    )
    if faults:
        return faults
    return Ledger(
        room=room,
        revisions=tuple(_issued(kept[Kind.REVISION])),
        accepted=accepted,
        after=tuple(one.facts for one in kept[Kind.AFTER]),
        seal=whole[-1].seal if whole else "",
        basis=_basis(job.value, yes, kept[Kind.REVISION]),
    )


def as_accepted(job: Typed[JobFile], ledger: Ledger) -> Typed[JobFile] | tuple[Problem, ...]:
    """Return the job as it was sent, with what has happened since as its file says today.

    Places are those of today's file, which is the one to edit.
    """
    typed = job.value.model_copy(update={"accepted": accepted_in(job.value, ledger.accepted)})
    if ledger.basis is None:
        return Typed(typed, job.places)
    sent = load(ledger.basis, JobFile)
    if isinstance(sent, tuple):
        return sent
    since = {key: getattr(typed, key) for key in AFTER_QUOTE}
    return Typed(sent.value.model_copy(update=since), job.places)


def accepted_in(job: JobFile, accepted: Facts | None) -> Accepted | None:
    """Return the acceptance of the ledger, or else what the job file says of one."""
    if accepted is None:
        return job.accepted
    return Accepted.model_construct(
        date=accepted.on,
        revision=accepted.revision,
        finish=accepted.finish,
        extras=accepted.extras,
        total=accepted.total,
    )


def is_as_sent(path: Path, ledger: Ledger) -> bool:
    """Whether a job and the company's files are still, to the byte, those of the accepted quote.

    Keys of a job that go on after acceptance may have moved.
    """
    today, sent = load(path, JobFile), load(ledger.basis or path, JobFile)
    if not isinstance(today, Typed) or not isinstance(sent, Typed):
        return False
    quoted = {*JobFile.model_fields} - AFTER_QUOTE
    if any(getattr(today.value, key) != getattr(sent.value, key) for key in quoted):
        return False
    return _company_files(path, today.value) == _company_files(ledger.basis or path, sent.value)


def _company_files(path: Path, job: JobFile) -> tuple[bytes, ...]:
    book, company = book_on(path, job.date), beside(path, "company.yaml")
    files = (company, Path(book.places.file) if isinstance(book, Typed) else None)
    return tuple(file.read_bytes() for file in files if file is not None)


def _basis(job: JobFile, yes: Accepted | None, revisions: tuple[Entry, ...]) -> Path | None:
    if yes is None:
        return None
    number = yes.revision or job.revision
    entry = next((one for one in revisions if one.facts.revision == number), None)
    return entry.path / INPUTS / JOB_FOLDER / entry.facts.job if entry else None


def _issued(entries: tuple[Entry, ...]) -> Iterator[Issued]:
    for entry in entries:
        figures = figures_of((entry.path / FIGURES).read_bytes())
        if figures is not None:
            yield Issued(facts=entry.facts, figures=figures)


def _of_another(
    path: Path, job: Typed[JobFile], room: Path, entries: tuple[Entry, ...]
) -> Iterator[Problem]:
    """Yield an error where the ledger holds another customer's quote of this number."""
    ours, quote = (path.name, job.value.customer.name), job.value.quote
    for entry in entries[-1:]:
        facts = entry.facts
        if facts.quote != quote or (facts.job != ours[0] and facts.customer != ours[1]):
            said = f"`{room}` holds quote `{facts.quote}` for {facts.customer} ({facts.job})"
            hint = "give this job a number of its own; what was issued stays as it is"
            yield job.fault(("quote",), "issued-to-another", said, hint)


def _not_issued(
    job: Typed[JobFile], yes: Accepted | None, issued: tuple[int, ...]
) -> Iterator[Problem]:
    """Yield an error where a revision is accepted that was never sent."""
    if yes is None or yes.revision is None or yes.revision in issued:
        return
    said = f"revision {yes.revision} is to be accepted and was not issued"
    known = ", ".join(map(str, issued))
    hint = (
        f"issued are: {known}" if known else "`issue` it first, or type `accepted: {date, total}`"
    )
    yield job.fault(("accepted", "revision"), "accepted-not-issued", said, hint)


def _accepted_before(
    job: Typed[JobFile], accepted: Facts | None, accepting: Accepted | None
) -> Iterator[Problem]:
    """Yield an error where a yes is about to be put down a second time."""
    if accepted is not None and accepting is not None:
        said = f"revision {accepted.revision} was accepted on {accepted.on} at "
        said += f"${accepted.total:,}"
        hint = "what the customer wants otherwise since then is a change order"
        yield job.fault(("accepted",), "already-accepted", said, hint)


def accepted_faults(job: Typed[JobFile], accepted: Facts | None) -> Iterator[Problem]:
    """Yield where the job file and the ledger do not say the same of the customer's yes."""
    typed = job.value.accepted
    if typed is None or accepted is None:
        return
    pairs = {
        "date": (typed.date, accepted.on),
        "revision": (typed.revision or accepted.revision, accepted.revision),
        "finish": (typed.finish or job.value.finish, accepted.finish),
        "extras": (", ".join(sorted(typed.extras)), ", ".join(sorted(accepted.extras))),
        "total": (accepted.total if typed.total is None else typed.total, accepted.total),
    }
    for key, (here, there) in pairs.items():
        if here != there:
            said = f"`{key}` is {here or 'none'} here, and the ledger has {there or 'none'}"
            hint = "correct or delete `accepted` here; the ledger keeps what was agreed"
            yield job.fault(("accepted", key), "accepted-otherwise", said, hint)
