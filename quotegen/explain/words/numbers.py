"""This job's own numbers for each scope item: what the prose leaves to the table under it."""

from collections.abc import Callable, Iterator, Mapping

from quotegen.explain.results import Results
from quotegen.explain.words.days import joints_made, sealed_when
from quotegen.explain.words.rows import Row
from quotegen.explain.words.rule_words import rule_text
from quotegen.quantity import Length, Unit, Units
from quotegen.reading.files.job import ROUND_A_POOL, Use
from quotegen.reading.files.rate_book import Finish, Sealer
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import PlacementSpec
from quotegen.takeoff.materials.surface import coats_of, cure_of, has_grit
from quotegen.trade import joints, opening
from quotegen.trade.sealing import Sealer as TradeSealer
from quotegen.trade.sealing import reseal_rule

Rows = Iterator[Row]


def numbers_for(scope_item: str, results: Results) -> tuple[Row, ...]:
    """The numbers of a scope item on this job; what it costs stands on sheet 4 alone."""
    return tuple(_TABLES[scope_item](results)) if scope_item in _TABLES else ()


def depths(results: Results, scope_item: str, depth: Callable[[PlacementSpec], Length]) -> str:
    """A depth of each placement that has the item, told once where all are the same."""
    return results.by_placement(
        {p.id: results.words.depth(depth(p)) for p in results.placements_with(scope_item)}
    )


def _row(results: Results, key: str, text: str) -> Row:
    return Row(name=results.words(f"number_{key}"), text=text)


def _dig_out(results: Results) -> Rows:
    yield _row(results, "dig_depth", depths(results, "dig_out", lambda p: p.dig_depth))


def _base(results: Results) -> Rows:
    yield _row(results, "base_depth", depths(results, "base", lambda p: p.base))
    yield _row(results, "base_material", results.job.rate_book.base_material)


def edge_lengths(results: Results, scope_item: str, edge: EdgeKind) -> str:
    """The length of an edge of each placement that has the item."""
    return results.by_placement(
        {p.id: edge_length(results, p.id, edge) for p in results.placements_with(scope_item)}
    )


def edge_length(results: Results, placement: str, edge: EdgeKind) -> str:
    """The length of an edge of a placement, by its id, as it is priced."""
    measured, words = results.takeoff.placement(placement), results.words
    if words.units is Units.US:
        return words.quantity(measured.edges_ft[edge], Unit.FT)
    return words.quantity(measured.edges_m[edge], Unit.M)


def _forms(results: Results) -> Rows:
    yield _row(results, "formed_edge", edge_lengths(results, "forms", EdgeKind.FORMED))


def _slab(results: Results) -> Rows:
    mix, words = results.job.rate_book.mix, results.words
    yield _row(results, "thickness", depths(results, "slab", lambda p: p.thickness))
    yield _row(
        results,
        "thickness_promise",
        words(
            "thickness_promise",
            average=rule_text(results, "thickness_short_average"),
            single=rule_text(results, "thickness_short_single"),
        ),
    )
    yield _row(results, "strength", words("strength", strength=words.number(mix.strength_psi, 0)))
    yield _row(results, "air", mix.air)
    yield _row(results, "mix", mix.description)
    yield _row(results, "volume", words.volume(results.takeoff.volume_cuyd))


def _reinforcement(results: Results) -> Rows:
    choices = results.job.rate_book.reinforcement
    yield _row(
        results,
        "reinforcement",
        results.by_placement(
            {p.id: choices[p.reinforcement].name for p in results.placements_with("reinforcement")}
        ),
    )
    yield _row(
        results,
        "steel_position",
        rule_text(results, "reinforcement_position"),
    )


def _isolation(results: Results) -> Rows:
    yield _row(results, "isolated_edge", edge_lengths(results, "isolation", EdgeKind.ISOLATED))
    yield _row(results, "joint_width", rule_text(results, "isolation_joint_width"))


def joint_spacing(results: Results, placement: PlacementSpec) -> str:
    """The widest joint spacing that a placement may have."""
    spacing_ft, _ = joints.governing_spacing(
        placement.thickness.inches, results.rules, results.job.quote_date
    )
    return results.words.feet(spacing_ft)


def joint_rule(results: Results, rule: str) -> str:
    """What a rule of joint spacing goes by, in words."""
    times = results.rules.number("joint_spacing_multiplier", results.job.quote_date)
    return results.words(f"joint_rule_{rule}", times=results.words.number(times, 0))


def _spacing_rules(results: Results, placement: PlacementSpec) -> str:
    """The rules that the spacing of a placement was laid out by."""
    _, rules = joints.governing_spacing(
        placement.thickness.inches, results.rules, results.job.quote_date
    )
    return results.words.listing(tuple(joint_rule(results, rule) for rule in rules))


def saw_depth(results: Results) -> str:
    """The least depth of a joint of each placement."""
    on = results.job.quote_date
    return results.by_placement({
        p.id: results.words.depth(
            Length.of_inches(joints.saw_depth_in(p.thickness.inches, results.rules, on))
        )
        for p in results.placements_with("joints")
    })  # fmt: skip


def _joints(results: Results) -> Rows:
    placements = results.placements_with("joints")
    yield _row(
        results,
        "joint_spacing",
        results.by_placement({p.id: joint_spacing(results, p) for p in placements}),
    )
    rules = {p.id: _spacing_rules(results, p) for p in placements}
    yield _row(results, "joint_rule", results.by_placement(rules))
    yield _row(results, "joint_depth", saw_depth(results))
    yield _row(results, "joints_made", joints_made(results, placements))


def _placing(results: Results) -> Rows:
    if results.job.access:
        yield _row(results, "access", results.job.access.note)


def _finish(results: Results) -> Rows:
    job = results.job
    chosen: Mapping[str, str] = {p.id: job.finish_of(p, job.finish)[1].name for p in job.placements}
    yield _row(results, "finish", results.by_placement(chosen))
    colors = {
        p.id: color for p in job.placements if (color := job.finish_of(p, job.finish)[1].color)
    }
    if colors:
        yield _row(results, "color", results.by_placement(colors))


def _cast_edge(results: Results) -> Rows:
    yield _row(results, "pool_edge", edge_lengths(results, "cast_edge", EdgeKind.POOL))


def _quantities(key: str, scope_item: str) -> Callable[[Results], Rows]:
    def rows(results: Results) -> Rows:
        for line in results.lines_named_for(scope_item):
            if line.unit is not Unit.LUMP:
                yield _row(results, key, results.words.quantity(line.quantity, line.unit))

    return rows


def _steps(results: Results) -> Rows:
    """Steps by number, or their nosing by the foot."""
    for line in results.lines_named_for("steps"):
        key = "steps" if line.unit is Unit.EACH else "step_nosing"
        if line.unit is not Unit.LUMP:
            yield _row(results, key, results.words.quantity(line.quantity, line.unit))


def _curing(results: Results) -> Rows:
    days = opening.cure_days(results.rules, results.job.quote_date)
    yield _row(results, "curing_way", curing_way(results))
    yield _row(results, "curing", results.words.count("days_about", days))


def curing_way(results: Results) -> str:
    """How each placement is kept from drying."""
    job, on = results.job, results.job.quote_date
    ways = {
        p.id: cure_of(job.finish_of(p, job.finish)[1], results.rules, on) for p in job.placements
    }
    return results.by_placement(
        {place: results.words(f"cure_{way.name.lower()}") for place, way in ways.items()}
    )


def _sealing(results: Results) -> Rows:
    placements, words = results.placements_with("sealing"), results.words
    finishes = {p.id: results.job.finish_of(p, results.job.finish)[1] for p in placements}
    kinds = {place: words(f"sealer_{one.sealer.value}") for place, one in finishes.items()}
    yield _row(results, "sealer", results.by_placement(kinds))
    coats = {place: sealer_coats(results, one) for place, one in finishes.items()}
    if any(coats.values()):
        yield _row(results, "coats", results.by_placement(coats))
    when = sealed_when(results)
    if when:
        yield _row(results, "sealed", when)
    if any(has_grit(p, finishes[p.id]) for p in placements):
        yield _row(results, "grit", words("grit_mixed_in"))
    lasts = {p.id: reseal(results, finishes[p.id].sealer, p.use) for p in placements}
    yield _row(results, "reseal", results.by_placement(lasts))


def sealer_coats(results: Results, finish: Finish) -> str:
    """How many coats of its sealer a finish has; empty where it has none."""
    if finish.sealer is Sealer.NONE:
        return ""
    return results.words.count(
        "rule_unit_coat", coats_of(finish, results.rules, results.job.quote_date)
    )


def reseal(results: Results, sealer: Sealer, *uses: Use) -> str:
    """How long a coat of a sealer lasts on slabs of some uses, or that there is none."""
    if sealer is Sealer.NONE:
        return results.words("no_sealer")
    at_pool = any(use in ROUND_A_POOL for use in uses)
    return rule_text(results, reseal_rule(TradeSealer(sealer.value), at_pool=at_pool))


def _travel(results: Results) -> Rows:
    yield _row(results, "visits", str(results.quote.chosen.visits))


def _minimum(results: Results) -> Rows:
    minimum = results.job.rate_book.minimum
    if minimum is not None:
        yield _row(results, "minimum", results.words.money(minimum))


_TABLES: Mapping[str, Callable[[Results], Rows]] = {
    "dig_out": _dig_out,
    "demolition": _quantities("demolition", "demolition"),
    "base": _base,
    "forms": _forms,
    "slab": _slab,
    "reinforcement": _reinforcement,
    "isolation": _isolation,
    "joints": _joints,
    "placing": _placing,
    "finish": _finish,
    "cast_edge": _cast_edge,
    "steps": _steps,
    "drain": _quantities("drain", "drain"),
    "curing": _curing,
    "sealing": _sealing,
    "travel": _travel,
    "minimum": _minimum,
}
