"""The mix of the rate book against what frost and melt salt ask for: a warning."""

from quotegen.problem import Problem, Severity
from quotegen.spec.records import JobSpec
from quotegen.trade.mix import Weathering, strength_psi, weathering_of_state
from quotegen.trade.rules import RuleBook


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
