"""Stage 1, read: a job file and the company's files become one checked job."""

from datetime import timedelta
from pathlib import Path
from typing import TypeVar

from pydantic import BaseModel

from quotegen.problem import Problem
from quotegen.reading.book_versions import book_on
from quotegen.reading.checks import across_files as cross_checks
from quotegen.reading.checks import costs as cost_checks
from quotegen.reading.checks import options as option_checks
from quotegen.reading.checks import orders as order_checks
from quotegen.reading.checks import rates as rate_checks
from quotegen.reading.checks.after_signing import after_signing_faults
from quotegen.reading.checks.appearance import logo_of, look_problems, paper_of
from quotegen.reading.files.company import Company
from quotegen.reading.files.job import Job, JobFile, Placement
from quotegen.reading.files.past_jobs import PastJobs
from quotegen.reading.files.rate_book import RateBook
from quotegen.reading.files.rate_book_file import RateBookFile
from quotegen.reading.images.logos import Logo
from quotegen.reading.records import JobSpec, OwnersJob, PlacementSpec, ReadJob
from quotegen.reading.references import choose
from quotegen.reading.yaml.located import Places
from quotegen.reading.yaml.typed_file import Typed, beside, load, missing_beside

M = TypeVar("M", bound=BaseModel)

FILES = {Company: "company.yaml", PastJobs: "past-jobs.yaml"}


def read_job(path: Path, scope_items: frozenset[str]) -> ReadJob | tuple[Problem, ...]:
    """Read one job with the company's files.

    Args:
        path: the job file.
        scope_items: the ids of the scope items that content/ explains.

    Returns:
        The job with its problems, or the problems alone where too little is known to measure it.
    """
    problems: list[Problem] = []
    job = _kept(load(path, JobFile), problems)
    return read_with_company(job, path, scope_items, problems)


def read_with_company(
    job: Typed[JobFile] | None, path: Path, scope_items: frozenset[str], problems: list[Problem]
) -> ReadJob | tuple[Problem, ...]:
    """Read the company's files beside a job and check all of them together.

    Args:
        job: the typed job, None where it has faults.
        path: where the job lies, or would lie.
        scope_items: the ids of the scope items that content/ explains.
        problems: what was found in the job.
    """
    company = _companion(path, Company, problems)
    book = _kept(book_on(path, job.value.date if job else None), problems)
    past = _companion(path, PastJobs, problems)
    if book is not None:
        problems.extend(cross_checks.book_against_itself(book, scope_items))
        problems.extend(order_checks.book_orders(book))
        problems.extend(rate_checks.rates_themselves(book))
        problems.extend(cost_checks.costs_against_book(book, scope_items))
    if company is not None:
        problems.extend(option_checks.taxes(company, scope_items))
        problems.extend(look_problems(company))
    logo = logo_of(company) if company is not None else None
    if isinstance(logo, Problem):
        problems.append(logo)
    if book is not None and company is not None:
        problems.extend(cross_checks.company_against_book(company, book))
    if job is None or company is None or book is None or past is None:
        return tuple(problems)
    problems.extend(cross_checks.job_against_book(job, book))
    problems.extend(after_signing_faults(job, company.value, book.value))
    problems.extend(order_checks.job_sites(job, book.value))
    problems.extend(option_checks.options_against_book(job, book.value))
    problems.extend(option_checks.road_to_site(job, book.value))
    problems.extend(cost_checks.bids_and_outcome(job, book.value, scope_items))
    references, faults = choose(job, book.value, past)
    problems.extend(faults)
    typed = job.value.public()
    unknown_use = any(placement.use not in book.value.usual for placement in typed.placements)
    if unknown_use or typed.date < cross_checks.FIRST_DAY:
        return tuple(problems)
    spec = JobSpec(
        typed=typed,
        holds_until=typed.date + timedelta(days=typed.holds_days or company.value.holds_days),
        finish=typed.finish,
        placements=tuple(_placement(i, p, book.value) for i, p in enumerate(typed.placements)),
        include=typed.include,
        color=typed.color.colors if typed.color else (),
        colors=tuple(look.colors for look in typed.colors),
        not_included=(*company.value.not_included, *typed.not_included),
        references=references,
        company=company.value,
        rate_book=book.value.public(),
        paper=paper_of(company.value, typed.units),
        logo=logo if isinstance(logo, Logo) else None,
        places=job.places.without(JobFile.model_fields.keys() - Job.model_fields.keys()),
        book_places=book.places.without(
            RateBookFile.model_fields.keys() - RateBook.model_fields.keys()
        ),
        company_places=company.places,
    )
    owners = OwnersJob(file=job.value, book=book.value)
    return ReadJob(job=spec, owners=owners, problems=tuple(problems))


def _kept(read: Typed[M] | tuple[Problem, ...], problems: list[Problem]) -> Typed[M] | None:
    if isinstance(read, Typed):
        return read
    problems.extend(read)
    return None


def _companion(job: Path, model: type[M], problems: list[Problem]) -> Typed[M] | None:
    name = FILES[model]
    path = beside(job, name)
    if path is None and model is PastJobs:  # a new company has none yet
        return Typed(model(), Places(name))
    if path is None:
        problems.append(missing_beside(job, name))
        return None
    return _kept(load(path, model), problems)


def _as_name(identifier: str) -> str:
    words = identifier.replace("_", " ")
    return words[0].upper() + words[1:]


def _placement(index: int, typed: Placement, book: RateBook) -> PlacementSpec:
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
    )
