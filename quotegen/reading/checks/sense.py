"""Sense: warnings of prices, depths, materials and dates far outside the usual."""

from collections.abc import Iterable, Iterator
from datetime import date
from decimal import Decimal
from fractions import Fraction

from quotegen.problem import Problem
from quotegen.quantity import Length, decimal_of
from quotegen.reading.checks.asked import FIRST_DAY
from quotegen.reading.fields.text_fields import Rate, cut_short
from quotegen.reading.files.company import Company
from quotegen.reading.files.job import JobFile, holds_until
from quotegen.reading.files.past_jobs import PastJobs
from quotegen.reading.files.rate_book import FINISH, SEALING, RateBook
from quotegen.reading.files.rate_book_file import RateBookFile
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.typed_file import Typed
from quotegen.trade.book import PER_CENT, RuleBook
from quotegen.trade.rules import load_rules
from quotegen.trade.sense import (
    days_of_a_book,
    days_to_start,
    digits_with_area_code,
    in_words,
    is_usual,
    lacks_area_code,
    steepest_usual_in,
    usual_base_in,
    usual_material,
    usual_price,
    usual_thickness_in,
)

_SLAB = "slab"


def book_sense(book: Typed[RateBookFile]) -> Iterator[Problem]:
    """Yield each price, and each depth of `usual`, that is far outside the usual."""
    rules, on, value = load_rules(), max(book.value.valid_from, FIRST_DAY), book.value
    for finish_id, finish in value.finishes.items():
        covered = value.covered_by(finish)
        alone = not any(_SLAB in rate.covers for rate in value.rates.values())
        items = {*covered, _SLAB} if alone else set(covered)
        paid = (*(items - {FINISH}), finish.kind.value)
        here: DocumentPath = ("finishes", finish_id)
        yield from _price(book, here, finish.rates, paid, rules, on)
        if finish.reseal:
            again = ((("reseal",), finish.reseal),)
            yield from _price(book, here, again, (SEALING,), rules, on)
    for rate_id, rate in value.rates.items():
        yield from _price(book, ("rates", rate_id), rate.rates, rate.covers, rules, on)
    for use, usual in value.usual.items():
        yield from _depths(book, ("usual", use.value), usual.thickness, usual.base, rules, on)
    for path, rule, amount in _materials(value):
        yield from _material(book, path, rule, amount, rules, on)


def _materials(book: RateBookFile) -> Iterator[tuple[DocumentPath, str, Decimal]]:
    """Yield each amount of a material that is typed, with its place and its rule."""
    mix, order = book.mix, book.order
    typed: list[tuple[DocumentPath, str, Decimal | Fraction | int | None]] = [
        (("mix", "strength_psi"), "strength_usual", mix.strength_psi),
        *((("mix", "air"), "air_usual", percent) for percent in mix.air_percents),
        (("mix", "cement"), "cement_usual", mix.cement),
        (("order", "allowance"), "allowance_usual", order.allowance / PER_CENT),
        (("order", "truck_load"), "load_usual", order.truck_load),
        (("order", "curing_coverage"), "coverage_usual", order.curing_coverage),
    ]
    for name, steel in book.reinforcement.items():
        typed.append((("reinforcement", name, "fiber"), "fiber_usual", steel.fiber))
    for name, finish in book.finishes.items():
        here: DocumentPath = ("finishes", name)
        typed += [
            ((*here, "hardener"), "hardener_usual", finish.hardener),
            ((*here, "release"), "release_usual", finish.release),
            ((*here, "sealer_coats"), "coats_usual", finish.sealer_coats),
            ((*here, "sealer_coverage"), "coverage_usual", finish.sealer_coverage),
        ]
    for path, rule, amount in typed:
        if amount is not None:
            yield path, rule, decimal_of(Fraction(amount))


def _material(
    book: Typed[RateBookFile],
    path: DocumentPath,
    rule: str,
    amount: Decimal,
    rules: RuleBook,
    on: date,
) -> Iterator[Problem]:
    if not is_usual(amount, usual_material(rule, rules, on)):
        typed, usual = in_words(rule, amount, rules, on)
        said = f"`{path[-1]}` is {typed}; {usual} is usual"
        hint = "check the point and the unit; if it is right, leave it"
        yield book.places.warning(path, "material-unusual", said, hint)


def phone_sense(
    file: Typed[JobFile] | Typed[Company] | Typed[PastJobs],
    phones: Iterable[tuple[DocumentPath, str | None]],
) -> Iterator[Problem]:
    """Yield each telephone number without an area code."""
    rules = load_rules()
    for path, phone in phones:
        if phone and lacks_area_code(phone, rules, FIRST_DAY):
            digits = digits_with_area_code(rules, FIRST_DAY)
            said = f"`{cut_short(phone)}` has no area code; with it a number has {digits} digits"
            hint = "put the area code before it; a number of another country begins with +"
            yield file.places.warning(path, "no-area-code", said, hint)


def company_sense(company: Typed[Company]) -> Iterator[Problem]:
    """Yield what is odd in a company's file."""
    insurance = company.value.insurance
    yield from phone_sense(
        company,
        ((("phone",), company.value.phone),
         (("insurance", "phone"), insurance.phone if insurance else None)),
    )  # fmt: skip


def _price(
    book: Typed[RateBookFile],
    path: DocumentPath,
    rates: tuple[tuple[DocumentPath, Rate], ...],
    items: tuple[str, ...],
    rules: RuleBook,
    on: date,
) -> Iterator[Problem]:
    """Yield the first rate of a price that is unusual; a rate of nothing says so on purpose."""
    for key, rate in rates:
        usual = usual_price(rate.unit, items, rules, on)
        if usual is not None and rate.amount and not is_usual(rate.amount, usual):
            per = rate.unit.value
            said = (
                f"the price of `{path[-1]}` is ${rate.amount:,.2f} by the {per}; for what it pays"
                f" for, ${usual.least:,.2f} to ${usual.most:,.2f} is usual"
            )
            hint = "check the point and the unit; if it is right, leave it"
            yield book.places.warning((*path, *key), "price-unusual", said, hint)
            return


def job_sense(job: Typed[JobFile], company: Company, book: RateBook) -> Iterator[Problem]:
    """Yield each depth and date of a job that is far outside the usual."""
    rules, on = load_rules(), max(job.value.date, FIRST_DAY)
    for index, placement in enumerate(job.value.placements):
        here: DocumentPath = ("placements", index)
        yield from _depths(job, here, placement.thickness, placement.base, rules, on)
        yield from _steep(job, here, placement.fall, rules, on)
    if job.value.date >= max(book.valid_from, FIRST_DAY):  # else the date itself is at fault
        yield from _start(job, rules, on)
        yield from _old_book(job, book, rules, on)
    yield from phone_sense(job, [(("customer", "phone"), job.value.customer.phone)])
    yield from _accepted_late(job, company)
    yield from _paid_early(job)


def _steep(
    job: Typed[JobFile], path: DocumentPath, fall: Length | None, rules: RuleBook, on: date
) -> Iterator[Problem]:
    most = steepest_usual_in(rules, on)
    if fall is not None and fall.inches > most:
        said = (
            f"the slab falls {decimal_of(fall.inches):.4g} in per ft; at most {most:f} in per ft is"
            " usual"
        )
        hint = "check the unit, such as 1/4 in per ft or 2%; if it is right, leave it"
        yield job.places.warning((*path, "fall"), "fall-unusual", said, hint)


def _depths(
    file: Typed[JobFile] | Typed[RateBookFile],
    path: DocumentPath,
    thickness: Length | None,
    base: Length | None,
    rules: RuleBook,
    on: date,
) -> Iterator[Problem]:
    for key, thick, depth, usual in (
        ("thickness", "slab is {} in thick", thickness, usual_thickness_in(rules, on)),
        ("base", "base is {} in deep", base, usual_base_in(rules, on)),
    ):
        if depth is not None and not is_usual(depth.inches, usual):
            found = thick.format(f"{decimal_of(depth.inches):.4g}")
            said = f"the {found}; {usual.least:f} to {usual.most:f} in is usual"
            hint = "check feet and inches; if it is right, leave it"
            yield file.places.warning((*path, key), "depth-unusual", said, hint)


def _start(job: Typed[JobFile], rules: RuleBook, on: date) -> Iterator[Problem]:
    days, usual = (job.value.start - job.value.date).days, days_to_start(rules, on)
    if days > usual:
        said = (
            f"the work starts on {job.value.start}, {days:,} days after the quote of"
            f" {job.value.date}; at most {usual} is usual"
        )
        hint = "check the year of both; if it is right, leave it"
        yield job.places.warning(("start",), "start-far-off", said, hint)


def _old_book(job: Typed[JobFile], book: RateBook, rules: RuleBook, on: date) -> Iterator[Problem]:
    days, usual = (job.value.date - book.valid_from).days, days_of_a_book(rules, on)
    if days > usual:
        said = (
            f"the quote is dated {job.value.date}, {days:,} days after the rate book began to hold"
            f" ({book.valid_from}); at most {usual:,} is usual"
        )
        hint = "check the year, or the prices; if both are right, leave it"
        yield job.places.warning(("date",), "book-old", said, hint)


def _accepted_late(job: Typed[JobFile], company: Company) -> Iterator[Problem]:
    accepted, lapsed = job.value.accepted, holds_until(job.value, company.holds_days)
    if accepted is not None and accepted.date > lapsed:
        said = f"accepted on {accepted.date}; the offer held until {lapsed}"
        hint = "check the dates; if you still stand by the price, leave it"
        yield job.places.warning(("accepted", "date"), "accepted-late", said, hint)


def _paid_early(job: Typed[JobFile]) -> Iterator[Problem]:
    accepted = job.value.accepted
    for index, paid in enumerate(job.value.paid):
        if accepted is None or paid.date < accepted.date:
            when = f"was accepted on {accepted.date}" if accepted else "is not accepted"
            said = f"`{paid.payment}` is paid on {paid.date}, and the quote {when}"
            hint = "say when it was accepted, or check the dates; if they paid before, leave it"
            yield job.places.warning(("paid", index, "date"), "paid-early", said, hint)
            return
