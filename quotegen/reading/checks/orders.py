"""Checks of what the rate book orders and of what a job says about the ground."""

from collections.abc import Iterator

from quotegen.problem import Problem
from quotegen.quantity import tape
from quotegen.reading.files.job import JobFile, Placement
from quotegen.reading.files.rate_book import Finish, RateBook, Reinforcement
from quotegen.reading.files.rate_book_file import RateBookFile
from quotegen.reading.files.shapes import CutOut
from quotegen.reading.files.site_parts import DeepEdge, FallsFrom
from quotegen.reading.yaml.located import DocumentPath
from quotegen.reading.yaml.typed_file import Typed
from quotegen.reading.yaml.validate import near_miss
from quotegen.trade.book import RuleBook
from quotegen.trade.mix import pigment_allowed, pigment_limit
from quotegen.trade.rules import load_rules


def book_orders(book: Typed[RateBookFile]) -> Iterator[Problem]:
    """Yield steel that no standard lists, color past its limit, access without a rate."""
    rules = load_rules()
    for name, choice in book.value.reinforcement.items():
        yield from _steel(book, ("reinforcement", name), choice, rules)
    for name, finish in book.value.finishes.items():
        yield from _color(book, ("finishes", name), finish, rules)
    for name, method in book.value.access.items():
        if method.rate is not None and method.rate not in book.value.rates:
            yield book.fault(
                ("access", name, "rate"),
                "unknown-access-rate",
                f"the way of access `{name}` is paid by the rate `{method.rate}`, which is missing",
                near_miss(method.rate, book.value.rates),
            )


def job_sites(job: Typed[JobFile], book: RateBook) -> Iterator[Problem]:
    """Yield what a job says of the ground and the way to it that cannot be."""
    for index, placement in enumerate(job.value.placements):
        yield from _placement(job, ("placements", index), placement, book)
    access = job.value.access
    if access is not None and access.method is not None and access.method not in book.access:
        yield job.fault(
            ("access", "method"),
            "unknown-access",
            f"the rate book has no way of access `{access.method}`",
            near_miss(access.method, book.access) or "add it under `access` in the rate book",
        )


def _steel(
    book: Typed[RateBookFile], path: DocumentPath, choice: Reinforcement, rules: RuleBook
) -> Iterator[Problem]:
    on = book.value.valid_from
    wire, bar = choice.wire, choice.bar
    if wire and wire.style not in rules.table("wire_weight", on):
        yield book.fault(
            (*path, "wire", "style"),
            "unknown-wire",
            f"the weight of the wire style `{wire.style}` is not known",
            f"known styles: {', '.join(rules.table('wire_weight', on))}",
        )
    if wire and (wire.sheet is None) == (wire.roll is None):
        yield book.fault(
            (*path, "wire"),
            "sheet-or-roll",
            "wire is bought in sheets or in rolls: one of the two belongs here",
            "add a line like `sheet: 5 ft x 10 ft` or `roll: 5 ft x 150 ft`, and only one",
        )
    size = wire and (wire.sheet or wire.roll)
    if wire and wire.lap and size and wire.lap >= min(size.length, size.width):
        yield book.fault(
            (*path, "wire", "lap"),
            "lap-too-long",
            f"a lap of {tape(wire.lap.feet)} leaves nothing of a sheet"
            f" {tape(min(size.length, size.width).feet)} wide",
            "a lap is commonly one mesh and 2 in",
        )
    if bar and bar.size not in rules.table("bar_weight", on):
        yield book.fault(
            (*path, "bar", "size"),
            "unknown-bar",
            f"the weight of the bar `{bar.size}` is not known",
            f"known sizes: {', '.join(rules.table('bar_weight', on))}",
        )
    if bar and bar.lap and bar.lap >= bar.stock:
        yield book.fault(
            (*path, "bar", "lap"),
            "lap-too-long",
            f"a lap of {tape(bar.lap.feet)} leaves nothing of a bar {tape(bar.stock.feet)} long",
            "a lap is commonly 40 times the thickness of the bar",
        )


def _color(
    book: Typed[RateBookFile], path: DocumentPath, finish: Finish, rules: RuleBook
) -> Iterator[Problem]:
    if finish.pigment is None:
        return
    on = book.value.valid_from
    if book.value.mix.cement is None:
        yield book.fault(
            (*path, "pigment"),
            "no-cement",
            "color goes by the mass of cement, and the mix does not say how much that is",
            "add a line like `cement: 564 lb / cu yd` under `mix`",
        )
    if not pigment_allowed(finish.pigment, rules, on):
        limit = rules.text("pigment_limit", on)
        cement = book.value.mix.cement
        most = "" if cement is None else f", {pigment_limit(cement, rules, on):g} lb / cu yd here"
        yield book.fault(
            (*path, "pigment"),
            "pigment-over-limit",
            f"{finish.pigment * 100}% of the cement is too much pigment; at most {limit}{most}"
            f" ({rules.rule('pigment_limit').at(on).reference})",
            "a darker color comes from another pigment, not from more of it",
        )


def _placement(
    job: Typed[JobFile], path: DocumentPath, placement: Placement, book: RateBook
) -> Iterator[Problem]:
    usual = book.usual.get(placement.use)
    thickness = placement.thickness or (usual and usual.thickness)
    for key in ("thickened_edge", "turned_down_edge"):
        deep: DeepEdge | None = getattr(placement, key)
        if deep and thickness and deep.depth <= thickness:
            yield job.fault(
                (*path, key, "depth"),
                "edge-not-deeper",
                f"this edge is {tape(deep.depth.feet)} deep and the slab {tape(thickness.feet)}"
                " thick; the depth counts from the finished top",
                "type the whole depth, such as 8 in, or leave the edge out",
            )
    if placement.falls_toward and placement.falls_away_from:
        yield job.fault(
            (*path, "falls_away_from"),
            "two-directions",
            f"the slab falls toward the {placement.falls_toward.value} and away from the"
            f" {placement.falls_away_from.value}; only one of the two can be said",
            "keep one, or make two placements that each fall their own way",
        )
    away = placement.falls_away_from
    has_pool = any(shape.is_ is CutOut.POOL for shape in placement.take_away)
    if away is FallsFrom.POOL and not has_pool:
        yield _nothing_to_fall_from(job, path, "pool", "mark a shape under `take_away` `is: pool`")
    if away is FallsFrom.HOUSE and not _touches_house(placement):
        hint = "mark a side with `against_house`"
        yield _nothing_to_fall_from(job, path, "house", hint)


def _touches_house(placement: Placement) -> bool:
    return any(
        shape.against_house or any(side.against_house for side in shape.outline or ())
        for shape in (*placement.add, *placement.take_away)
    )


def _nothing_to_fall_from(job: Typed[JobFile], path: DocumentPath, what: str, hint: str) -> Problem:
    return job.fault(
        (*path, "falls_away_from"),
        "nothing-to-fall-from",
        f"the slab falls away from the {what}, and no {what} is on its plan",
        f"{hint}, or say `falls_toward`",
    )
