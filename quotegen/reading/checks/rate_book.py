"""Checks of a rate book beside its rates: finishes, what is usual, steel, pigment, access."""

from collections.abc import Iterator

from quotegen.problem import Problem
from quotegen.quantity import Unit, tape
from quotegen.reading.files.order_parts import Bar, Wire
from quotegen.reading.files.rate_book import SAW, Applies, Finish, Joints, Sealer
from quotegen.reading.files.rate_book_file import CostedFinish, RateBookFile
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.near import near_miss
from quotegen.reading.yaml.typed_file import Typed
from quotegen.trade.book import RuleBook
from quotegen.trade.curing import FILMS, Cure
from quotegen.trade.mix import pigment_allowed, pigment_limit
from quotegen.trade.rules import load_rules

RESERVED = {
    "minimum": "type the smallest job as `minimum: $2,500` at the top level",
    "discount": "type a discount in the job: `discount: {name: ..., amount: $300}`",
    "tax": "type a tax under `tax` of company.yaml",
    "rounding": "type `round_total_to: $10` in company.yaml",
}
"""The ids of lines that follow from others, and how each is asked for."""


def rate_book_faults(book: Typed[RateBookFile]) -> Iterator[Problem]:
    """Yield what the book names and does not have, and what no standard or limit allows."""
    rules = load_rules()
    for finish_id, finish in book.value.finishes.items():
        yield from _finish(book, finish_id, finish)
        yield from _pigment(book, ("finishes", finish_id), finish, rules)
    for use, usual in book.value.usual.items():
        if usual.reinforcement not in book.value.reinforcement:
            said = f"there is no reinforcement `{usual.reinforcement}` in this book"
            hint = near_miss(usual.reinforcement, book.value.reinforcement)
            path = ("usual", use.value, "reinforcement")
            yield book.fault(path, "unknown-reinforcement", said, hint)
    for name, choice in book.value.reinforcement.items():
        if choice.wire:
            yield from _wire(book, ("reinforcement", name, "wire"), choice.wire, rules)
        if choice.bar:
            yield from _bar(book, ("reinforcement", name, "bar"), choice.bar, rules)
    yield from _reserved(book)
    for name, method in book.value.access.items():
        if method.rate is not None and method.rate not in book.value.rates:
            paid = f"the way of access `{name}` is paid by the rate `{method.rate}`"
            said, hint = f"{paid}, which is missing", near_miss(method.rate, book.value.rates)
            yield book.fault(("access", name, "rate"), "unknown-access-rate", said, hint)


def _reserved(book: Typed[RateBookFile]) -> Iterator[Problem]:
    for rate_id, hint in RESERVED.items():
        if rate_id in book.value.rates:
            said = f"`{rate_id}` is a line that any quote may have, so no rate has that id"
            yield book.fault(("rates", rate_id), "reserved-id", said, hint)


def _finish(book: Typed[RateBookFile], finish_id: str, finish: CostedFinish) -> Iterator[Problem]:
    here, rates = ("finishes", finish_id), book.value.rates
    reseal = ((("reseal",), finish.reseal),) if finish.reseal else ()
    for key, rate in (*finish.rates, *reseal):
        if rate.unit is not Unit.SQ_FT:
            said = f"a finish is priced by the square foot, not per {rate.unit.value}"
            hint = "type it like $7.40 / sq ft; put a lump into `rates`"
            yield book.fault((*here, *key), "finish-unit", said, hint)
    yield from _brings(book, finish_id, finish)
    if finish_id in rates:
        said = f"`{finish_id}` is the id of a rate and of a finish"
        yield book.fault(here, "rate-and-finish", said, "give one of the two another id")
    for index, visit in enumerate(finish.visits):
        if visit.visit not in book.value.visits:
            said = f"there is no visit `{visit.visit}` in this book"
            hint = near_miss(visit.visit, book.value.visits)
            yield book.fault((*here, "visits", index, "visit"), "unknown-visit", said, hint)
    yield from _surface(book, finish_id, finish)
    colors = [rate_id for rate_id, rate in rates.items() if rate.applies is Applies.COLOR]
    for index, color in enumerate(finish.colors):
        if color not in colors:
            said, hint = f"the rate book has no color `{color}`", near_miss(color, colors)
            yield book.fault((*here, "colors", index), "unknown-color", said, hint)


def _surface(book: Typed[RateBookFile], finish_id: str, finish: Finish) -> Iterator[Problem]:
    """Yield a film of curing where a sealer needs the bare slab, and a saw where none cuts."""
    here: DocumentPath = ("finishes", finish_id)
    soaks, film = finish.sealer is Sealer.PENETRATING, finish.sealer is Sealer.FILM
    if (soaks and finish.cure in FILMS) or (film and finish.cure is Cure.COMPOUND):
        needs = "cannot soak in through it" if soaks else "may not stick to it"
        said = f"`{finish_id}` is cured with a film, and its {finish.sealer.value} sealer {needs}"
        hint = "type `cure: cover` or `cure: wet`; if the pail says that both go together, leave it"
        yield book.places.warning((*here, "cure"), "cure-under-sealer", said, hint)
    if finish.joints is Joints.TOOLED:
        sawn = (index for index, visit in enumerate(finish.visits) if visit.visit == SAW)
        for index in sawn:
            said = f"the joints of `{finish_id}` are tooled, and it has a visit `{SAW}`"
            hint = "leave the visit out; if forms are stripped then, give it another id and name"
            yield book.places.warning((*here, "visits", index), "tooled-and-sawn", said, hint)


def _brings(book: Typed[RateBookFile], finish_id: str, finish: Finish) -> Iterator[Problem]:
    rates = book.value.rates
    for index, brought in enumerate(finish.brings):
        here = ("finishes", finish_id, "brings", index)
        if brought not in rates:
            said = f"the finish `{finish_id}` needs the rate `{brought}`, which is missing"
            yield book.fault(here, "missing-rate", said, near_miss(brought, rates))
        elif rates[brought].applies is not Applies.WITH_FINISH:
            applies = rates[brought].applies.value
            said = f"the finish `{finish_id}` brings `{brought}`, which applies {applies}"
            hint = f"write `applies: with finish` at the rate `{brought}`, or take it out here"
            yield book.fault(here, "brings-not-with-finish", said, hint)


def _wire(
    book: Typed[RateBookFile], path: DocumentPath, wire: Wire, rules: RuleBook
) -> Iterator[Problem]:
    styles = rules.table("wire_weight", book.value.valid_from)
    if wire.style not in styles:
        said = f"the weight of the wire style `{wire.style}` is not known"
        hint = f"known styles: {', '.join(styles)}"
        yield book.fault((*path, "style"), "unknown-wire", said, hint)
    if (wire.sheet is None) == (wire.roll is None):
        said = "wire is bought in sheets or in rolls: one of the two belongs here"
        hint = "add a line like `sheet: 5 ft x 10 ft` or `roll: 5 ft x 150 ft`, and only one"
        yield book.fault(path, "sheet-or-roll", said, hint)
    size = wire.sheet or wire.roll
    if wire.lap and size and wire.lap >= min(size.length, size.width):
        wide = tape(min(size.length, size.width).feet)
        said = f"a lap of {tape(wire.lap.feet)} leaves nothing of a sheet {wide} wide"
        hint = "a lap is commonly one mesh and 2 in"
        yield book.fault((*path, "lap"), "lap-too-long", said, hint)


def _bar(
    book: Typed[RateBookFile], path: DocumentPath, bar: Bar, rules: RuleBook
) -> Iterator[Problem]:
    sizes = rules.table("bar_weight", book.value.valid_from)
    if bar.size not in sizes:
        said = f"the weight of the bar `{bar.size}` is not known"
        yield book.fault((*path, "size"), "unknown-bar", said, f"known sizes: {', '.join(sizes)}")
    if bar.lap and bar.lap >= bar.stock:
        lap, stock = tape(bar.lap.feet), tape(bar.stock.feet)
        said = f"a lap of {lap} leaves nothing of a bar {stock} long"
        hint = "a lap is commonly 40 times the thickness of the bar"
        yield book.fault((*path, "lap"), "lap-too-long", said, hint)


def _pigment(
    book: Typed[RateBookFile], path: DocumentPath, finish: Finish, rules: RuleBook
) -> Iterator[Problem]:
    if finish.pigment is None:
        return
    on, cement = book.value.valid_from, book.value.mix.cement
    if cement is None:
        said = "color goes by the mass of cement, and the mix does not say how much that is"
        hint = "add a line like `cement: 564 lb / cu yd` under `mix`"
        yield book.fault((*path, "pigment"), "no-cement", said, hint)
    if not pigment_allowed(finish.pigment, rules, on):
        most = "" if cement is None else f", {pigment_limit(cement, rules, on):g} lb / cu yd here"
        said = (
            f"{finish.pigment * 100}% of the cement is too much pigment; at most"
            f" {rules.text('pigment_limit', on)}{most}"
            f" ({rules.rule('pigment_limit').at(on).reference})"
        )
        hint = "a darker color comes from another pigment, not from more of it"
        yield book.fault((*path, "pigment"), "pigment-over-limit", said, hint)
