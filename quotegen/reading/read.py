"""Stage 1, read: a job file and the company's files become one checked job."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction
from pathlib import Path
from typing import TypeAlias, TypeVar

from pydantic import BaseModel

from quotegen.problem import Problem
from quotegen.reading.book_versions import book_on
from quotegen.reading.checks.after_signing import after_signing_faults
from quotegen.reading.checks.asked import FIRST_DAY, asked_faults
from quotegen.reading.checks.company import company_faults, payment_faults
from quotegen.reading.checks.covers import cover_faults
from quotegen.reading.checks.options import option_faults
from quotegen.reading.checks.past_jobs import past_job_phones, past_job_sense
from quotegen.reading.checks.placements import placement_faults
from quotegen.reading.checks.private import bid_faults, cost_faults, outcome_faults
from quotegen.reading.checks.rate_book import rate_book_faults
from quotegen.reading.checks.rates import rate_faults
from quotegen.reading.checks.same_number import same_number_beside
from quotegen.reading.checks.sense import book_sense, company_sense, job_sense
from quotegen.reading.files.after_signing import Accepted
from quotegen.reading.files.company import Company
from quotegen.reading.files.job import Job, JobFile, holds_until
from quotegen.reading.files.order_parts import MaterialId
from quotegen.reading.files.past_jobs import PastJobs
from quotegen.reading.files.rate_book import CAST_EDGE, RateBook
from quotegen.reading.files.rate_book_file import RateBookFile
from quotegen.reading.images.logos import Logo, shown_logo
from quotegen.reading.kinds import of_another_kind
from quotegen.reading.ledger.ledger import as_accepted, read_ledger
from quotegen.reading.records import (
    JobSpec,
    OwnersJob,
    PlacementSpec,
    ReadJob,
    Reference,
    ShownPhoto,
)
from quotegen.reading.references import choose, site_photos, to_call
from quotegen.reading.yaml.located import Places
from quotegen.reading.yaml.typed_file import CANNOT_READ, Typed, beside, load, missing_beside

M = TypeVar("M", bound=BaseModel)

AnyTyped: TypeAlias = Typed[Company] | Typed[RateBookFile] | Typed[PastJobs]

FILES = {Company: "company.yaml", PastJobs: "past-jobs.yaml"}


@dataclass(frozen=True, slots=True, kw_only=True)
class CompanyFiles:
    """The company's files beside a job, None where one cannot be read, and all their faults."""

    company: Typed[Company] | None
    book: Typed[RateBookFile] | None
    past: Typed[PastJobs] | None
    logo: Logo | None
    problems: tuple[Problem, ...]


def read_job(
    path: Path,
    scope_items: frozenset[str],
    *,
    as_sent: bool = True,
    accepting: Accepted | None = None,
    text: bytes | None = None,
) -> ReadJob | tuple[Problem, ...]:
    """Read one job with the company's files.

    What is accepted of an issued revision is read from the files that were frozen with it; only
    past jobs are always today's, since a consent may be withdrawn.

    Args:
        path: the job file.
        scope_items: the ids of the scope items that content/ explains.
        as_sent: whether frozen files count; without them the job is what it would be today.
        accepting: a yes that is about to be put down.
        text: what stands in the job file, where it comes from elsewhere than the disk.

    Returns:
        The job with its problems, or the problems alone where too little is known to measure it.
    """
    typed = load(path, JobFile, text)
    if isinstance(typed, tuple):
        if typed[0].code == CANNOT_READ:
            return typed
        if other := of_another_kind(path, text):
            return (other,)
        return (*typed, *read_company(path, None, scope_items).problems)
    ledger = read_ledger(path, typed, accepting)
    if isinstance(ledger, tuple):
        return ledger
    if accepting is not None:
        typed = Typed(typed.value.model_copy(update={"accepted": accepting}), typed.places)
    counts = ledger if as_sent else replace(ledger, basis=None)
    job = as_accepted(typed, counts)
    if isinstance(job, tuple):
        return job
    files = read_company(counts.basis or path, job.value.date, scope_items, past_of=path)
    read = with_company(job, files, scope_items)
    if isinstance(read, tuple):
        return read
    return replace(read, ledger=ledger, problems=(*read.problems, *same_number_beside(path, job)))


def read_company(
    path: Path,
    on: date | None,
    scope_items: frozenset[str],
    past_of: Path | None = None,
    given: AnyTyped | None = None,
) -> CompanyFiles:
    """Read the company's files and check them against one another.

    Args:
        path: where a job lies, or would lie.
        on: the day whose rate book counts; the newest book where none is given.
        scope_items: the ids of the scope items that content/ explains.
        past_of: the job beside which the past jobs lie, if it is another.
        given: one of the files, which stands in for what lies there.
    """
    problems: list[Problem] = []
    company = _given(given, Company) or _companion(path, Company, problems)
    book = _given(given, RateBookFile) or _kept(book_on(path, on), problems)
    past = _given(given, PastJobs) or _companion(past_of or path, PastJobs, problems)
    logo = None
    if book is not None:
        problems += cover_faults(book, scope_items)
        problems += rate_faults(book)
        problems += rate_book_faults(book)
        problems += cost_faults(book, scope_items)
        problems += book_sense(book)
    if company is not None:
        problems += company_faults(company, scope_items)
        problems += company_sense(company)
        logo = _logo(company, problems)
    if book is not None and company is not None:
        problems += payment_faults(company, book.value)
    if past is not None:
        problems += past_job_phones(past)
    if past is not None and company is not None:
        problems += past_job_sense(past, company.value)
    return CompanyFiles(company=company, book=book, past=past, logo=logo, problems=tuple(problems))


def with_company(
    job: Typed[JobFile], files: CompanyFiles, scope_items: frozenset[str]
) -> ReadJob | tuple[Problem, ...]:
    """Check a job against the company's files and fill in what it leaves open."""
    company, book, past = files.company, files.book, files.past
    if company is None or book is None or past is None:
        return files.problems
    references, unshown = choose(job, book.value, past)
    faults = _job_faults(job, company.value, book.value, scope_items)
    photos, unread = site_photos(job)
    problems = (*files.problems, *faults, *unshown, *unread)
    unknown_use = any(placement.use not in book.value.usual for placement in job.value.placements)
    if unknown_use or job.value.date < FIRST_DAY:
        return problems
    owner_keys = JobFile.model_fields.keys() - Job.model_fields.keys()
    owner_book_keys = RateBookFile.model_fields.keys() - RateBook.model_fields.keys()
    return ReadJob(
        job=_spec(
            Typed(job.value.public(), job.places.without(owner_keys)),
            company,
            Typed(book.value.public(), book.places.without(owner_book_keys)),
            book.value.waste,
            references,
            tuple(one for one, typed in zip(photos, job.value.photos, strict=False) if typed.shown),
            files.logo,
        ),
        owners=OwnersJob(
            file=job.value,
            book=book.value,
            to_call=to_call(job.value, book.value, past.value),
            photos=photos,
        ),
        problems=problems,
    )


def _job_faults(
    job: Typed[JobFile], company: Company, book: RateBook, scope_items: frozenset[str]
) -> Iterator[Problem]:
    yield from asked_faults(job, book)
    yield from placement_faults(job, book)
    yield from option_faults(job, book)
    yield from after_signing_faults(job, company, book)
    yield from bid_faults(job, book, scope_items)
    yield from outcome_faults(job, book)
    yield from job_sense(job, company, book)


def _kept(read: Typed[M] | tuple[Problem, ...], problems: list[Problem]) -> Typed[M] | None:
    if isinstance(read, Typed):
        return read
    problems.extend(read)
    return None


def _given(given: AnyTyped | None, model: type[M]) -> Typed[M] | None:
    if given is None or not isinstance(given.value, model):
        return None
    return Typed(given.value, given.places)


def _companion(job: Path, model: type[M], problems: list[Problem]) -> Typed[M] | None:
    name = FILES[model]
    path = beside(job, name)
    if path is None and model is PastJobs:  # a new company has none yet
        return Typed(model(), Places(name))
    if path is None:
        problems.append(missing_beside(job, name))
        return None
    return _kept(load(path, model), problems)


def _logo(company: Typed[Company], problems: list[Problem]) -> Logo | None:
    name = company.value.logo
    if name is None:
        return None
    logo = shown_logo(Path(company.places.file).parent, name, company.places.of(("logo",)))
    if isinstance(logo, Logo):
        return logo
    problems.append(logo)
    return None


def _spec(
    job: Typed[Job],
    company: Typed[Company],
    book: Typed[RateBook],
    waste: Mapping[MaterialId, Fraction],
    references: tuple[Reference, ...],
    photos: tuple[ShownPhoto, ...],
    logo: Logo | None,
) -> JobSpec:
    typed = job.value
    return JobSpec(
        typed=typed,
        holds_until=holds_until(typed, company.value.holds_days),
        finish=typed.finish,
        placements=tuple(_placement(i, typed, book.value) for i in range(len(typed.placements))),
        include=typed.include,
        color=typed.color.colors if typed.color else (),
        colors=tuple(look.colors for look in typed.colors),
        not_included=(*company.value.not_included, *typed.not_included),
        references=references,
        photos=photos,
        company=company.value,
        rate_book=book.value,
        waste=waste,
        paper=company.value.paper_in(typed.units),
        logo=logo,
        places=job.places,
        book_places=book.places,
        company_places=company.places,
    )


def _placement(index: int, job: Job, book: RateBook) -> PlacementSpec:
    typed = job.placements[index]
    usual = book.usual[typed.use]
    return PlacementSpec(
        typed=typed,
        path=("placements", index),
        name=typed.name or _as_name(typed.id),
        add=typed.add,
        take_away=typed.take_away,
        thickness=typed.thickness or usual.thickness,
        base=typed.base or usual.base,
        reinforcement=typed.reinforcement or usual.reinforcement,
        finish=typed.finish,
        include=typed.include,
        casts_pool_edge=book.pays_for(CAST_EDGE, {*job.include, *typed.include}),
    )


def _as_name(identifier: str) -> str:
    words = identifier.replace("_", " ")
    return words[0].upper() + words[1:]
