"""What a priced job is asked: requests that came to nothing, deposit, contract law, mix."""

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


def price_problems(
    job: JobSpec,
    takeoff: Takeoff,
    quote: PricedQuote,
    special_order: Decimal,
    rules: RuleBook,
    laws: ContractLaws,
) -> tuple[Problem, ...]:
    """Return all that a priced job is asked.

    Args:
        job: with its access line asked for.
        takeoff: what was measured.
        quote: every price of it.
        special_order: what materials cost that are ordered for this job alone.
        rules: of the trade.
        laws: on written contracts.
    """
    return (
        *_unpriced_requests(job, takeoff),
        *_over_deposit_cap(job, quote.finishes, special_order, rules),
        *_not_in_contract(job, quote.chosen.total, laws),
        *_weak_mix(job, rules),
    )


def _unpriced_requests(job: JobSpec, takeoff: Takeoff) -> Iterator[Problem]:
    """Yield an error for each rate that was asked for and came to nothing."""
    lines = price_at(job, takeoff, job.finish, tuple(job.extras)).lines
    priced = {(line.rate_id, line.placement) for line in lines}
    rates = {line.rate_id for line in lines}
    for rate, placement, path in _requests(job):
        if rate not in rates if placement is None else (rate, placement) not in priced:
            yield Problem(
                code="nothing-to-price",
                source=job.source(*path),
                path=path_text(path),
                message=f"`{rate}` is asked for, and the takeoff finds none of it here",
                hint="delete the line, type how much there is, or check the shapes",
            )


def _requests(job: JobSpec) -> Iterator[tuple[str, str | None, DocumentPath]]:
    for key, asked in (("include", job.include), ("extras", job.extras)):
        for rate in asked:
            yield rate, None, (key, rate)
    for spec in job.placements:
        for rate in spec.include:
            yield rate, spec.id, (*spec.path, "include", rate)


def _over_deposit_cap(
    job: JobSpec, finishes: tuple[PricedFinish, ...], special_order: Decimal, rules: RuleBook
) -> Iterator[Problem]:
    """Yield a warning for each offered finish at which the first payment passes the cap."""
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
    """Yield a warning for each element that a law of the state asks for and nobody typed."""
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


def _weak_mix(job: JobSpec, rules: RuleBook) -> Iterator[Problem]:
    """Yield a warning where the mix is weaker than the weather of the state asks.

    Where weathering is severe, melt salt is counted on, since cars bring it. A state that is not
    typed or not known is asked nothing.
    """
    on = job.quote_date
    weathering = weathering_of_state(job.site.state or "", rules, on)
    if weathering is None:
        return
    salt = weathering is Weathering.SEVERE
    asked, mixed = strength_psi(weathering, deicers=salt, rules=rules, on=on), job.rate_book.mix
    if mixed.strength_psi < asked:
        rule = rules.rule("deicer_strength" if salt else "strength_by_weathering").at(on)
        yield Problem(
            code="mix-weak",
            severity=Severity.WARNING,
            source=job.book_source("mix", "strength_psi"),
            path="mix.strength_psi",
            message=f"the mix has {mixed.strength_psi:,} psi; weathering in {job.site.state} is "
            f"{weathering.value}, where {asked:,} psi is asked ({rule.reference})",
            hint="ask your plant for the stronger mix; the building office knows the local rule",
        )
