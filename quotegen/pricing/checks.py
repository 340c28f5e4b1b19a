"""What a priced job is asked: requests that came to nothing, deposit, contract law, mix."""

from collections.abc import Iterator
from decimal import Decimal

from quotegen.money import Money, to_cents
from quotegen.pricing.quoted.discount import discount_problems
from quotegen.pricing.quoted.finish import price_at
from quotegen.pricing.quoted.payments import payments_of
from quotegen.pricing.quoted.quantities import typed_quantity
from quotegen.pricing.quoted.rates import AS_TAKEN_OFF, shown_rate
from quotegen.pricing.quoted.records import Line, PricedFinish, PricedQuote
from quotegen.problem import Problem, Severity
from quotegen.quantity import decimal_of
from quotegen.reading.files.rate_book import ALWAYS_ASKED_ABOUT, SteelKind
from quotegen.reading.records import JobSpec
from quotegen.reading.yaml.located import DocumentPath, path_text
from quotegen.takeoff.records import Takeoff
from quotegen.trade.contract_law import ContractLaws, Element
from quotegen.trade.deposits import deposit_cap
from quotegen.trade.mix import Weathering, least_air, strength_psi, weathering_of_state
from quotegen.trade.rules import RuleBook
from quotegen.trade.sense import share_at_signing


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
    refused = tuple(discount_problems(job, quote))
    if refused:  # a price of nothing is asked nothing else
        return refused
    return (
        *_unpriced_requests(job, takeoff),
        *_unexplained(job, quote),
        *_free_steps(job, quote),
        *_larger_is_cheaper(job, quote),
        *_over_deposit_cap(job, quote.finishes, special_order, rules),
        *_large_deposit(job, quote.chosen.total, special_order, rules),
        *_not_in_contract(job, quote.chosen.total, laws),
        *_law_near(job, quote, laws),
        *_weak_mix(job, rules),
        *_little_air(job, rules),
        *_thicker_than_the_book(job, quote),
    )


def _thicker_than_the_book(job: JobSpec, quote: PricedQuote) -> Iterator[Problem]:
    """Yield a warning for each placement that is thicker than a price of the book goes.

    The last step holds to where another one would have come; a single step for its own thickness.
    """
    for line in quote.chosen.lines:
        price = job.rate_book.price_of(line.rate_id)
        steps = price.by_thickness if price else ()
        spec = next((one for one in job.placements if one.id == line.placement), None)
        if spec is None or not steps:
            continue
        *before, last = (step.thickness.inches for step in steps)
        if spec.thickness.inches > last + (last - before[-1] if before else 0):
            thick, ends = (f"{decimal_of(inches):.4g}" for inches in (spec.thickness.inches, last))
            rate = line.rate_id
            said = f"`{spec.id}` is {thick} in thick; the prices of `{rate}` end at {ends} in"
            hint = "add one for this thickness to the rate book; if the last is right, leave it"
            at = "thickness" if spec.typed.thickness else "id"
            yield job.places.warning((*spec.path, at), "thicker-than-book", said, hint)


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


def _unexplained(job: JobSpec, quote: PricedQuote) -> Iterator[Problem]:
    """Yield a warning that names what no line pays for though the slab has it.

    The quote explains what its lines pay for, so it would be silent on these. A slab without
    reinforcement or with no joints lacks nothing where the job says so.
    """
    paid = {item for line in quote.chosen.lines for item in line.scope}
    steel = {job.rate_book.reinforcement[p.reinforcement].kind for p in job.placements}
    without = {
        "reinforcement": steel == {SteelKind.NONE},
        "joints": all(p.typed.joints == () for p in job.placements),
    }
    missing = [
        item for item in ALWAYS_ASKED_ABOUT if item not in paid and not without.get(item, False)
    ]
    if missing:
        names = ", ".join(missing)
        said = f"no price of this job pays for {names}, so the quote says nothing of it"
        hint = f"if the finish does, add `covers: [{names}]` to it; else a rate that covers them"
        yield job.book_places.warning(("finishes", job.finish), "unexplained", said, hint)


def _free_steps(job: JobSpec, quote: PricedQuote) -> Iterator[Problem]:
    """Yield a warning for each placement whose steps are drawn and ordered, and cost nothing."""
    paid = {line.placement for line in quote.chosen.lines if "steps" in line.scope}
    for spec in job.placements:
        if spec.typed.steps is not None and paid.isdisjoint({None, spec.id}):
            said = f"no price of this job pays for the steps of `{spec.id}`, so they come free"
            hint = (
                "ask for a rate of your rate book that covers `steps`, such as `include: {step: 2}`"
                " for two of them; if there is none, add one"
            )
            yield job.places.warning((*spec.path, "steps"), "steps-free", said, hint)


def _larger_is_cheaper(job: JobSpec, quote: PricedQuote) -> Iterator[Problem]:
    """Yield a warning for each line whose placement would cost less in total if it were larger.

    A higher rate for small jobs is how the trade prices; the owner may offer the larger slab.
    """
    for line in quote.chosen.lines:
        larger = next(_cheaper_sizes(job, line), None)
        if larger is not None:
            size, amount = larger
            path, unit = job.rate_book.path_of(line.rate_id), line.unit.value
            said = (
                f"{line.quantity} {unit} of `{line.rate_id}` cost ${line.amount:,};"
                f" {size} {unit} would cost ${amount:,}, which is less in total"
            )
            hint = "offer the larger slab; or use `by_slice`, which can never do this"
            yield job.book_places.warning(path, "larger-is-cheaper", said, hint)


def _cheaper_sizes(job: JobSpec, line: Line) -> Iterator[tuple[Decimal, Money]]:
    """Yield each size at which a higher band begins that costs less than the line, and its cost."""
    price = job.rate_book.price_of(line.rate_id)
    if price is None or line.band is None or price.by_slice:
        return
    for band in price.bands[line.band + 1 :]:
        size = typed_quantity(band.from_ or AS_TAKEN_OFF, line.unit)
        amount = to_cents(size * shown_rate(band.rate, job.units).amount)
        if amount < line.amount:
            yield size, amount


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


def _large_deposit(
    job: JobSpec, price: Money, special_order: Decimal, rules: RuleBook
) -> Iterator[Problem]:
    """Yield a warning of a large share at signing, where no law is known that caps it."""
    first, most = job.company.payments[0], share_at_signing(rules, job.quote_date)
    cap = deposit_cap(job.site.state or "", price, special_order, rules, job.quote_date)
    if cap is None and first.at_visit is None and first.share and first.share > most:
        asked, usual = (f"{decimal_of(share * 100):.4g}%" for share in (first.share, most))
        said = f"the first payment asks {asked} of the price before any visit; at most {usual}"
        hint = "check the share, and what your state allows; if it is right, leave it"
        path = ("payments", 0, "share")
        yield job.company_places.warning(path, "deposit-unusual", f"{said} is usual", hint)


TYPE_IT = {
    Element.CONTRACTOR_ADDRESS: "type the street in `address:` of company.yaml",
    Element.LICENSE: "type `license:` in company.yaml",
    Element.INSURANCE: "type `insurance:` in company.yaml",
    Element.TAXPAYER_ID: "type `taxpayer_id:` in company.yaml",
}


def not_typed(job: JobSpec) -> frozenset[Element]:
    """Return the elements that a company file may carry and this one does not."""
    company = job.company
    lacks = {
        Element.CONTRACTOR_ADDRESS: "po box" in company.address.lower().replace(".", ""),
        Element.LICENSE: company.license is None,
        Element.INSURANCE: company.insurance is None,
        Element.TAXPAYER_ID: company.taxpayer_id is None,
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


def _law_near(job: JobSpec, quote: PricedQuote, laws: ContractLaws) -> Iterator[Problem]:
    """Yield a warning where a little more area brings a law that asks for what nobody typed."""
    risen, missing = quote.adjustment[-1].total, not_typed(job)
    for law in laws.reached(job.site.state, quote.chosen.total, risen):
        for demand in law.demands:
            if demand.element in missing:
                said = (
                    f"ten percent more area would cost ${risen:,}; from ${law.over:,.0f} a written"
                    f" contract here carries {laws.meaning(demand.element)} ({law.law},"
                    f" {demand.clause}, {demand.seen}); there is none"
                )
                hint = f"{TYPE_IT[demand.element]}; this is not legal advice"
                yield job.places.warning(("site", "state"), "law-near", said, hint)


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


def _little_air(job: JobSpec, rules: RuleBook) -> Iterator[Problem]:
    """Yield a warning where the mix has less air than frost in the state asks.

    Of a range such as `5 to 7 %` the larger number counts; air in words alone is asked nothing.
    """
    on, air, state = job.quote_date, job.rate_book.mix.air, job.site.state or ""
    weathering = weathering_of_state(state, rules, on)
    typed = job.rate_book.mix.air_percents
    if weathering is None or not typed:
        return
    asked = least_air(weathering, rules, on)
    if asked is not None and max(typed) < asked:
        rule = rules.rule("exposed_air").at(on)
        said = (
            f"the mix has {air} air; weathering in {state} is {weathering.value}, where at least"
            f" {asked} % is asked ({rule.reference})"
        )
        hint = "ask your plant for a mix with air for frost; large stone needs less, as they know"
        yield job.book_places.warning(("mix", "air"), "mix-air-low", said, hint)
