"""The stages of one job, in order. Stops before stage 6 if there is any error; writes nothing."""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from importlib.resources.abc import Traversable
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING, TypeAlias

from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.money import ZERO
from quotegen.pricing.checks import asked_problems, deposit_problems, law_problems, mix_problems
from quotegen.pricing.contract.contract import contract_of
from quotegen.pricing.costs.floors import floor_problems
from quotegen.pricing.costs.outcome import Outcome, drift_of
from quotegen.pricing.costs.owner import OwnersFigures, owners_figures
from quotegen.pricing.quoted.access import with_access
from quotegen.pricing.quoted.ballpark import ballpark_of
from quotegen.pricing.quoted.price import price
from quotegen.pricing.quoted.upkeep import upkeep_of
from quotegen.problem import Problem, Severity, Source, has_error, in_file_order
from quotegen.publish.terminal.ballpark import ballpark_text
from quotegen.reading.content.content import Content, read_content
from quotegen.reading.content.languages import missing_texts
from quotegen.reading.files.standards import looser_standards
from quotegen.reading.paced_job import Asked, paced_job, with_sides
from quotegen.reading.read import read_job
from quotegen.reading.records import JobSpec
from quotegen.reading.yaml.typed_file import says_outcome
from quotegen.resources import content_folder
from quotegen.schedule.day_plans import day_plans_of
from quotegen.schedule.moved import days_of
from quotegen.schedule.openings import openings_of
from quotegen.schedule.visits import visits_of
from quotegen.takeoff.measure import measure
from quotegen.takeoff.on_site import on_site
from quotegen.takeoff.records import Takeoff
from quotegen.takeoff.remeasure import remeasure
from quotegen.trade.contract_law import ContractLaws, load_laws
from quotegen.trade.pacing import paced_factors, rough_step
from quotegen.trade.rules import RuleBook, load_rules

if TYPE_CHECKING:
    from quotegen.publish.package import Package

Announce: TypeAlias = Callable[[str], None]
"""Is told which stage begins, by its number."""


def silent(_stage: str) -> None:
    """Tell nobody."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """What every job shares: the trade's rules, and what we say in one language."""

    rules: RuleBook
    laws: ContractLaws
    content: Content


@dataclass(frozen=True, slots=True, kw_only=True)
class Figured:
    """One job after stages 1 to 4: its results, or the problems that kept it from them.

    `owner` holds what is for the owner alone; it is there wherever the results are.
    """

    results: Results | None
    owner: OwnersFigures | None
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Built:
    """One job after stage 6: its quote number and files, or the problems in the way."""

    quote: str
    source: Source
    package: "Package | None"
    problems: tuple[Problem, ...]


def read_shared(folder: Traversable | None = None) -> Shared | tuple[Problem, ...]:
    """Read what every job shares.

    Args:
        folder: the content of a language; English where none is given. Another language must
            say all that English says.
    """
    rules, english = load_rules(), read_content(content_folder())
    content = read_content(folder) if folder else english
    if isinstance(english, tuple):
        return english
    if isinstance(content, tuple):
        return content
    if folder and (lacking := missing_texts(content, english, rules)):
        return lacking
    return Shared(rules=rules, laws=load_laws(), content=content)


def figure(job_file: Path, shared: Shared, announce: Announce = silent) -> Figured:
    """Run stages 1 to 4: read, measure, price, visits."""
    announce(f"1 read {job_file}")
    read = read_job(job_file, frozenset(shared.content.scope))
    if isinstance(read, tuple):
        return Figured(results=None, owner=None, problems=in_file_order(read))
    job, owners = read.job, read.owners
    announce(f"2 measure {job.quote}")
    standards, on = job.company.standards, job.quote_date
    looser = looser_standards(standards, job.company_places, shared.rules, on)
    rules = shared.rules.with_own(standards.own_inches(), on)
    takeoff, measured = measure(job, rules)
    problems = in_file_order((*read.problems, *looser, *measured))
    if takeoff is None or has_error(problems):
        return Figured(results=None, owner=None, problems=problems)
    takeoff, said = on_site(job, takeoff, rules)
    problems = in_file_order((*problems, *said))
    if has_error(problems):
        return Figured(results=None, owner=None, problems=problems)
    announce(f"3 price {job.quote}")
    job, access, said = with_access(job, takeoff)
    problems = in_file_order((*problems, *said))
    quote = price(job, takeoff)
    said = (
        *asked_problems(job, takeoff),
        *deposit_problems(job, quote, owners.file.special_order or ZERO, rules),
        *law_problems(job, quote.chosen.total, shared.laws),
        *mix_problems(job, rules),
    )
    problems = in_file_order((*problems, *said))
    if has_error(problems):
        return Figured(results=None, owner=None, problems=problems)
    owner = owners_figures(job, owners, takeoff, shared.rules, quote)
    said = floor_problems(job, owners, owner.finishes, Severity.WARNING)
    problems = in_file_order((*problems, *said))
    announce(f"4 visits {job.quote}")
    visits = {finish.id: visits_of(job, finish.id) for finish in quote.finishes}
    in_forms, again = _in_the_forms(job, rules)
    problems = in_file_order((*problems, *again))
    if has_error(again):
        return Figured(results=None, owner=None, problems=problems)
    contract = contract_of(job, takeoff, in_forms)
    results = Results(
        job=job,
        takeoff=takeoff,
        quote=quote,
        visits=MappingProxyType(visits),
        access=access,
        laws=shared.laws,
        openings=openings_of(job, visits[job.finish], rules),
        contract=contract,
        days=days_of(job, contract.finish),
        day_plans=day_plans_of(job, quote.combinations, rules),
        upkeep=upkeep_of(job, takeoff, quote.finishes, rules),
        rules=rules,
        content=shared.content,
        words=Words(labels=shared.content.labels, locale=shared.content.locale, units=job.units),
    )
    return Figured(results=results, owner=owner, problems=problems)


def _in_the_forms(job: JobSpec, rules: RuleBook) -> tuple[Takeoff | None, tuple[Problem, ...]]:
    """Measure again what stands in the forms, where the job says so."""
    return remeasure(job, job.typed.measured, rules) if job.typed.measured else (None, ())


def ballpark(asked: Asked, shared: Shared) -> str | tuple[Problem, ...]:
    """Return the ballpark of a paced size as text, or what is wrong with the files."""
    read = paced_job(asked, frozenset(shared.content.scope))
    if isinstance(read, tuple):
        return read
    if has_error(read.problems):
        return read.problems
    paced, jobs, takeoffs = read.job, list[JobSpec](), list[Takeoff]()
    short, long = paced_factors(shared.rules, paced.quote_date)
    for factor in (short, Fraction(1), long):
        job = with_sides(paced, asked.size, factor)
        takeoff, problems = measure(job, shared.rules)
        if takeoff is None or has_error(problems):
            return problems
        jobs.append(job)
        takeoffs.append(takeoff)
    rough = ballpark_of(
        (jobs[0], jobs[1], jobs[2]),
        (takeoffs[0], takeoffs[1], takeoffs[2]),
        rough_step(shared.rules, paced.quote_date),
        asked.on,
    )
    words = Words(labels=shared.content.labels, locale=shared.content.locale, units=paced.units)
    return ballpark_text(paced, rough, shared.rules, words)


def build(job_file: Path, shared: Shared, announce: Announce = silent) -> Built:
    """Run all stages and gather the package."""
    # Imported here, since printing is slow to load and `check` does without.
    from quotegen.publish.package import package  # noqa: PLC0415

    figured = figure(job_file, shared, announce)
    if figured.results is None or figured.owner is None:
        nowhere = Source(file=str(job_file))
        return Built(quote="", source=nowhere, package=None, problems=figured.problems)
    job, owner = figured.results.job, figured.owner
    source = job.source("quote")
    if owner.job.file.under_floor is None:
        refused = floor_problems(job, owner.job, owner.finishes, Severity.ERROR)
        if refused:
            other = (p for p in figured.problems if p.code != refused[0].code)
            problems = in_file_order((*other, *refused))
            return Built(quote=job.quote, source=source, package=None, problems=problems)
    announce(f"5 explain and 6 publish {job.quote}")
    drift = drift_of(_completed(job_file, shared), owner.job.costs)
    return Built(
        quote=job.quote,
        source=source,
        package=package(figured.results, owner, drift),
        problems=figured.problems,
    )


def _completed(job_file: Path, shared: Shared) -> tuple[Outcome, ...]:
    """Return how every job came out that lies in the same folder and says so."""
    done = (path for path in sorted(job_file.parent.glob("*.yaml")) if says_outcome(path))
    figured = (figure(path, shared) for path in done)
    owners = (one.owner for one in figured if one.owner is not None)
    return tuple(owner.outcome for owner in owners if owner.outcome is not None)


def same_number(job_files: tuple[Path, ...], built: list[Built]) -> tuple[Problem, ...]:
    """Find jobs that would be written to the same folder."""
    first: dict[str, Path] = {}
    problems = []
    for job_file, one in zip(job_files, built, strict=True):
        if one.quote and one.quote in first:
            problems.append(Problem(
                code="same-quote-number", source=one.source, path="quote",
                message=f"the quote number `{one.quote}` is also that of {first[one.quote]}",
                hint="give each job its own number"))  # fmt: skip
        first.setdefault(one.quote, job_file)
    return tuple(problems)
