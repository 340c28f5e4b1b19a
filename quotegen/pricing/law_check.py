"""What the law of the state asks a contract to carry and the company's file lacks. No advice."""

from collections.abc import Iterator

from quotegen.money import Money
from quotegen.problem import Problem, Severity
from quotegen.spec.records import JobSpec
from quotegen.trade.contract_law import ContractLaws, Element

TYPE_IT = {
    Element.CONTRACTOR_ADDRESS: "type the street in `address:` of company.yaml",
    Element.LICENCE: "type `licence:` in company.yaml",
    Element.INSURANCE: "type `insurance:` in company.yaml",
}


def law_problems(job: JobSpec, price: Money, laws: ContractLaws) -> tuple[Problem, ...]:
    """Return a warning for each element that a law of the job's state asks for and nobody typed."""
    return tuple(_problems(job, price, laws))


def not_typed(job: JobSpec) -> frozenset[Element]:
    """Return the elements that a company file may carry and this one does not."""
    company = job.company
    lacks = {
        Element.CONTRACTOR_ADDRESS: "po box" in company.address.lower().replace(".", ""),
        Element.LICENCE: company.licence is None,
        Element.INSURANCE: company.insurance is None,
    }
    return frozenset(element for element, missing in lacks.items() if missing)


def _problems(job: JobSpec, price: Money, laws: ContractLaws) -> Iterator[Problem]:
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
