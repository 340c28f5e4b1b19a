"""The stages of one job, in order. Stops before stage 6 if there is any error; writes nothing."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from types import MappingProxyType

from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.money import ZERO
from quotegen.pricing.checks import price_problems
from quotegen.pricing.contract.contract import contract_of
from quotegen.pricing.contract.records import Contract
from quotegen.pricing.contract.signed_checks import (
    change_faults,
    drift_warnings,
    paid_warnings,
    revision_problems,
    signed_problems,
    today_warning,
)
from quotegen.pricing.contract.since_issued import SinceIssued, since_issued
from quotegen.pricing.costs.crew_hours import crew_warnings
from quotegen.pricing.costs.floors import floor_problems
from quotegen.pricing.costs.outcome import (
    Outcome,
    hours_go_by_access,
    outcome_of,
    without_joint_plan,
)
from quotegen.pricing.costs.owner import OwnersFigures, owners_figures
from quotegen.pricing.quoted.access import AccessChoice, with_access
from quotegen.pricing.quoted.finish import accepted_of, price_at
from quotegen.pricing.quoted.price import price
from quotegen.pricing.quoted.records import PricedQuote
from quotegen.pricing.quoted.upkeep import upkeep_of
from quotegen.problem import Problem, Source, has_error, in_file_order
from quotegen.publish.printable import unprintable_logo
from quotegen.publish.terminal.stages import Announce, silent
from quotegen.publish.web.drawing_font import font_of
from quotegen.publish.web.own_theme import own_theme_faults
from quotegen.publish.web.themes import theme_of
from quotegen.reading.content.content import Content, read_content
from quotegen.reading.content.own_pages import with_own_pages
from quotegen.reading.files.after_signing import Accepted
from quotegen.reading.files.standards import looser_standards
from quotegen.reading.ledger.ledger import Ledger, is_as_sent
from quotegen.reading.read import read_job
from quotegen.reading.records import JobSpec, ReadJob
from quotegen.reading.yaml.typed_file import says_outcome
from quotegen.resources import content_folder
from quotegen.schedule.day_checks import day_warnings
from quotegen.schedule.day_plans import day_plans_of
from quotegen.schedule.moved import days_of
from quotegen.schedule.openings import openings_of, ready_on
from quotegen.schedule.visits import visits_of
from quotegen.takeoff.materials.order_list import order_list
from quotegen.takeoff.measure import measure
from quotegen.takeoff.on_site import on_site
from quotegen.takeoff.records import Material, Takeoff
from quotegen.takeoff.remeasure import remeasure
from quotegen.takeoff.site.size_checks import forms_warnings
from quotegen.trade.contract_law import ContractLaws, load_laws
from quotegen.trade.rules import RuleBook, load_rules


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """What every job shares: the trade's rules, and what we say."""

    rules: RuleBook
    laws: ContractLaws
    content: Content


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedJob:
    """One job after stages 1 to 4: its results, or the problems that stopped it.

    `owner` is what the owner alone may see; it and the ledger are there wherever the results are.
    """

    results: Results | None = None
    owner: OwnersFigures | None = None
    ledger: Ledger | None = None
    problems: tuple[Problem, ...]


def read_shared() -> Shared | tuple[Problem, ...]:
    """Read what every job shares."""
    content = read_content(content_folder())
    if isinstance(content, tuple):
        return content
    return Shared(rules=load_rules(), laws=load_laws(), content=content)


def figure(
    job_file: Path,
    shared: Shared,
    announce: Announce = silent,
    *,
    to_package: bool = False,
    accepting: Accepted | None = None,
    text: bytes | None = None,
) -> PricedJob:
    """Run stages 1 to 4: read, measure, price, visits.

    Args:
        job_file: the job; the company's files lie beside it or one folder up.
        shared: what every job shares.
        announce: is told which stage begins.
        to_package: a price under the owner's floors is then an error, unless the job says why.
        accepting: a yes that is about to be put down.
        text: what stands in the job file, where it comes from elsewhere than the disk.
    """
    announce(f"1 read {job_file}")
    scope = frozenset(shared.content.scope)
    read = read_job(job_file, scope, accepting=accepting, text=text)
    language = read.job.typed.language if isinstance(read, ReadJob) else None
    content, own_faults = with_own_pages(
        job_file, shared.content, shared.rules, shared.laws, language
    )
    if isinstance(read, tuple) or has_error(own_faults):
        return _stopped((*(read if isinstance(read, tuple) else read.problems), *own_faults))
    shared = replace(shared, content=content)
    announce(f"2 measure {read.job.quote}")
    rules, looser = _rules_of(read.job, shared)
    sizes, faults = measure(read.job, rules)
    look = (*unprintable_logo(read.job), *own_theme_faults(read.job))
    found = (*read.problems, *own_faults, *looser, *look, *faults)
    if sizes is None or has_error(found):
        return _stopped(found)
    takeoff, on_ground = on_site(read.job, sizes, rules)
    found = (*found, *on_ground)
    if has_error(found):
        return _stopped(found)
    announce(f"3 price {read.job.quote}")
    job, access, chosen = with_access(read.job, takeoff)
    quote, special_order = price(job, takeoff), read.owners.file.special_order or ZERO
    asked = price_problems(job, takeoff, quote, special_order, rules, shared.laws)
    found = (*found, *chosen, *asked)
    if has_error(found):
        return _stopped(found)
    owner = owners_figures(job, read.owners, takeoff, shared.rules, quote)
    floors = floor_problems(job, read.owners, owner.finishes, to_package=to_package)
    crews = crew_warnings(job, read.owners, takeoff, quote.finishes, rules)
    found = (*found, *floors, *crews)
    announce(f"4 visits {job.quote}")
    contract, in_forms, asked = _after_signing(job, takeoff, rules)
    found = (*found, *asked)
    if contract is None:
        return _stopped(found)
    to_order = _to_order(job, in_forms or takeoff, contract, rules)
    results = _results(job, takeoff, quote, access, contract, to_order, rules, shared)
    ready = ready_on(results.chosen_visits, results.openings)
    found = (*found, *day_warnings(job, results.visits, ready, rules))
    ledger = read.ledger
    if ledger is not None:
        results = replace(results, since=_since(ledger, job, quote))
        spent = revision_problems(job, quote, ledger, to_package=to_package)
        moved = drift_warnings(job, contract, ledger)
        found = (*found, *spent, *moved, *_today(job_file, shared, ledger, contract, job))
    return PricedJob(results=results, owner=owner, ledger=ledger, problems=in_file_order(found))


def _since(ledger: Ledger, job: JobSpec, quote: PricedQuote) -> SinceIssued | None:
    """Return what moved since the last revision that was sent before this one."""
    earlier = [one for one in ledger.revisions if one.facts.revision < job.revision]
    return since_issued(earlier[-1], quote) if earlier else None


def _today(
    job_file: Path, shared: Shared, ledger: Ledger, contract: Contract, accepted: JobSpec
) -> tuple[Problem, ...]:
    """Return a warning where today's files would give another price than the accepted one."""
    if ledger.basis is None or is_as_sent(job_file, ledger):
        return ()
    read = read_job(job_file, frozenset(shared.content.scope), as_sent=False)
    total = None
    if isinstance(read, ReadJob) and not has_error(read.problems):
        job, (rules, _) = read.job, _rules_of(read.job, shared)
        takeoff, problems = measure(job, rules)
        if takeoff is not None and not has_error(problems):
            takeoff, _ = on_site(job, takeoff, rules)
            job, _, _ = with_access(job, takeoff)
            total = price_at(job, takeoff, *accepted_of(job)).total
    return today_warning(accepted, contract.quoted_total, total)


def _after_signing(
    job: JobSpec, takeoff: Takeoff, rules: RuleBook
) -> tuple[Contract | None, Takeoff | None, tuple[Problem, ...]]:
    """Return the contract, None where measuring fails or a signed total does not come out.

    Beside it is the takeoff of the set forms, None until they are measured.
    """
    in_forms, again = (
        remeasure(job, job.typed.measured, rules) if job.typed.measured else (None, ())
    )
    if has_error(again):
        return None, None, again
    far = forms_warnings(job, takeoff, in_forms, rules) if in_forms else ()
    contract = contract_of(job, takeoff, in_forms)
    faults = (*change_faults(job, contract), *signed_problems(job, contract))
    if has_error(faults):
        return None, None, (*again, *far, *faults)
    return contract, in_forms, (*again, *far, *faults, *paid_warnings(job, contract, rules))


def _to_order(
    job: JobSpec, takeoff: Takeoff, contract: Contract, rules: RuleBook
) -> tuple[Material, ...]:
    """Return what the accepted finish takes on the slab that will be poured."""
    return order_list(replace(job, finish=contract.finish), takeoff, rules)


def _results(
    job: JobSpec,
    takeoff: Takeoff,
    quote: PricedQuote,
    access: AccessChoice | None,
    contract: Contract,
    to_order: tuple[Material, ...],
    rules: RuleBook,
    shared: Shared,
) -> Results:
    """Add to the price what follows from it: the days, the upkeep."""
    visits = {finish.id: visits_of(job, finish.id, rules) for finish in quote.finishes}
    return Results(
        job=job,
        takeoff=takeoff,
        quote=quote,
        access=access,
        contract=contract,
        to_order=to_order,
        visits=MappingProxyType(visits),
        days=days_of(job, contract.finish, rules),
        day_plans=day_plans_of(job, quote.combinations, rules),
        openings=openings_of(job, visits[job.finish], rules),
        upkeep=upkeep_of(job, takeoff, quote.finishes, rules),
        laws=shared.laws,
        rules=rules,
        content=shared.content,
        words=words_of(job, shared),
    )


def _rules_of(job: JobSpec, shared: Shared) -> tuple[RuleBook, tuple[Problem, ...]]:
    """Return the trade's rules with the company's own standards in them, and where it is looser."""
    standards, on = job.company.standards, job.quote_date
    looser = looser_standards(standards, job.company_places, shared.rules, on)
    return shared.rules.with_own(standards.own_inches(), on), looser


def words_of(job: JobSpec, shared: Shared) -> Words:
    """Return the words of the language, in the units of the job and the font of its theme."""
    return Words(
        labels=shared.content.labels,
        locale=shared.content.locale,
        units=job.units,
        font=font_of(theme_of(job)),
    )


def _stopped(problems: tuple[Problem, ...]) -> PricedJob:
    return PricedJob(problems=in_file_order(problems))


def page(
    job_file: Path, shared: Shared, announce: Announce = silent
) -> tuple[bytes | None, tuple[Problem, ...]]:
    """Return the web page of a quote alone, None where it has an error, and what is to be said."""
    from quotegen.publish.package import quote_page  # noqa: PLC0415

    priced = figure(job_file, shared, announce)
    announce("5 explain and 6 publish quote.html")
    made = None if priced.results is None else quote_page(priced.results)
    return made, priced.problems


def outcomes_in(folder: Path, shared: Shared) -> tuple[Outcome, ...]:
    """Return how each finished job of a folder came out, by their file names."""
    finished = (path for path in sorted(folder.glob("*.yaml")) if says_outcome(path))
    outcomes = (_outcome(path, shared) for path in finished)
    return tuple(outcome for outcome in outcomes if outcome is not None)


def _outcome(job_file: Path, shared: Shared) -> Outcome | None:
    """Return how a job came out, None where it has an error.

    Hours go by sizes and days: combinations, what-ifs and joints are not worked out for them.
    """
    read = read_job(job_file, frozenset(shared.content.scope))
    if isinstance(read, tuple) or has_error(read.problems):
        return None
    job, (rules, _) = without_joint_plan(read.job, read.owners), _rules_of(read.job, shared)
    takeoff, problems = measure(job, rules)
    if takeoff is None or has_error(problems):
        return None
    if hours_go_by_access(job, read.owners):
        takeoff, _ = on_site(job, takeoff, rules)
        job, _, _ = with_access(job, takeoff)
    return outcome_of(job, read.owners, takeoff)


def same_number(quotes: Iterable[tuple[str, Source]]) -> Iterator[Problem]:
    """Yield jobs that would be written to the same folder as one before them.

    Args:
        quotes: the number of each, and where it stands.
    """
    first: dict[str, Source] = {}
    for quote, place in quotes:
        if quote in first:
            yield Problem(
                code="same-quote-number", source=place, path="quote",
                message=f"the quote number `{quote}` is also that of {first[quote].file}",
                hint="give each job its own number",
            )  # fmt: skip
        first.setdefault(quote, place)
