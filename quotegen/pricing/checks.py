"""What is asked once a job is priced: items without a slab for them, deposit, contract law, mix."""

from collections.abc import Iterator
from decimal import Decimal

from quotegen.money import Money
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.payments import payments_of
from quotegen.pricing.quoted.records import PricedFinish, PricedQuote
from quotegen.problem import Problem, Severity
from quotegen.reading.records import JobSpec
from quotegen.reading.yaml.located import DocumentPath, path_text
from quotegen.takeoff.records import Takeoff
from quotegen.trade.contract_law import ContractLaws, Element
from quotegen.trade.deposits import deposit_cap
from quotegen.trade.mix import Weathering, strength_psi, weathering_of_state
from quotegen.trade.rules import RuleBook


def asked_problems(job: JobSpec, takeoff: Takeoff) -> tuple[Problem, ...]:
    """Return an error for each rate that was asked for and came to nothing."""
    lines = price_at(job, takeoff, job.finish, tuple(job.extras)).lines
    priced = {(line.rate_id, line.placement) for line in lines}
    rates = {line.rate_id for line in lines}
    return tuple(
        Problem(
            code="nothing-to-price",
            source=job.source(*path),
            path=path_text(path),
            message=f"`{rate}` is asked for, and the takeoff finds none of it here",
            hint="delete the line, type how much there is, or check the shapes",
        )
        for rate, placement, path in _asked(job)
        if (rate not in rates if placement is None else (rate, placement) not in priced)
    )


def _asked(job: JobSpec) -> Iterator[tuple[str, str | None, DocumentPath]]:
    for key, asked in (("include", job.include), ("extras", job.extras)):
        for rate in asked:
            yield rate, None, (key, rate)
    for spec in job.placements:
        for rate in spec.include:
            yield rate, spec.id, (*spec.path, "include", rate)


def deposit_problems(
    job: JobSpec, quote: PricedQuote, special_order: Decimal, rules: RuleBook
) -> tuple[Problem, ...]:
    """Return a warning for each offered finish at which the first payment passes the cap.

    `special_order` is what materials cost that are ordered for this job alone.
    """
    return tuple(_over_cap(job, quote.finishes, special_order, rules))


def _over_cap(
    job: JobSpec, finishes: tuple[PricedFinish, ...], special_order: Decimal, rules: RuleBook
) -> Iterator[Problem]:
    for finish in finishes:
        cap = deposit_cap(job.site.state or "", finish.total, special_order, rules, job.quote_date)
        deposit = payments_of(job, finish.total)[0].amount
        if cap is not None and deposit > cap.most:
            yield Problem(
                code="deposit-cap",
                severity=Severity.WARNING,
                source=job.source("site", "state"),
                path="site.state",
                message=f"the first payment at the finish `{finish.id}` is ${deposit:,}; in "
                f"{job.site.state} at most ${cap.most:,} may be asked ({cap.reference})",
                hint="ask for less at signing in company.yaml; this is not legal advice",
            )


TYPE_IT = {
    Element.CONTRACTOR_ADDRESS: "type the street in `address:` of company.yaml",
    Element.LICENSE: "type `license:` in company.yaml",
    Element.INSURANCE: "type `insurance:` in company.yaml",
}


def law_problems(job: JobSpec, price: Money, laws: ContractLaws) -> tuple[Problem, ...]:
    """Return a warning for each element that a law of the job's state asks for and nobody typed."""
    return tuple(_not_in_contract(job, price, laws))


def not_typed(job: JobSpec) -> frozenset[Element]:
    """Return the elements that a company file may carry and this one does not."""
    company = job.company
    lacks = {
        Element.CONTRACTOR_ADDRESS: "po box" in company.address.lower().replace(".", ""),
        Element.LICENSE: company.license is None,
        Element.INSURANCE: company.insurance is None,
    }
    return frozenset(element for element, missing in lacks.items() if missing)


def _not_in_contract(job: JobSpec, price: Money, laws: ContractLaws) -> Iterator[Problem]:
    missing = not_typed(job)
    for law in laws.of(job.site.state, price):
        for demand in law.demands:
            if demand.element in missing:
                yield Problem(
                    code="law-missing",
                    severity=Severity.WARNING,
                    source=job.source("site", "state") if job.site.state else job.source("site"),
                    path="site.state",
                    message=f"a written contract here carries {laws.meaning(demand.element)} "
                    f"({law.law}, {demand.clause}, {demand.seen}); there is none",
                    hint=f"{TYPE_IT[demand.element]}; this is not legal advice",
                )


def mix_problems(job: JobSpec, rules: RuleBook) -> tuple[Problem, ...]:
    """Return a warning where the mix is weaker than the weather of the state asks.

    Where weathering is severe, melt salt is counted on: cars bring it. Nothing is said where the
    state is not typed or not known.
    """
    on = job.quote_date
    weathering = weathering_of_state(job.site.state or "", rules, on)
    if weathering is None:
        return ()
    salt = weathering is Weathering.SEVERE
    asked, mixed = strength_psi(weathering, deicers=salt, rules=rules, on=on), job.rate_book.mix
    if mixed.strength_psi >= asked:
        return ()
    rule = rules.rule("deicer_strength" if salt else "strength_by_weathering").at(on)
    return (
        Problem(
            code="mix-weak",
            severity=Severity.WARNING,
            source=job.book_source("mix", "strength_psi"),
            path="mix.strength_psi",
            message=f"the mix has {mixed.strength_psi:,} psi; weathering in {job.site.state} is "
            f"{weathering.value}, where {asked:,} psi is asked ({rule.reference})",
            hint="ask your plant for the stronger mix; the building office knows the local rule",
        ),
    )
