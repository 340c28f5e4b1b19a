"""What the price covers, each scope item in a dozen words with this job's figures."""

from collections.abc import Callable, Iterator, Mapping

from quotegen.explain.results import Results
from quotegen.explain.words.numbers import depths, edge_length, joint_spacing, reseal, sealer_coats
from quotegen.explain.words.rows import Row
from quotegen.reading.files.shapes import EdgeKind

SHORT_LIST = ("base", "slab", "reinforcement", "finish", "cast_edge", "steps", "drain",
              "demolition", "sealing")  # fmt: skip
"""The scope items that sheet 1 names, most asked about first; sheet 4 has them all."""


def cover_rows(results: Results) -> Iterator[Row]:
    """What the chosen price covers, each scope item of which this job has something to say."""
    included = results.scope_items()
    for item in SHORT_LIST:
        text = in_a_dozen_words(item, results) if item in included else ""
        if text:
            yield Row(name=results.content.scope[item].front.title, text=text)


def in_a_dozen_words(item: str, results: Results) -> str:
    """What a scope item is on this job; empty where its own page says enough."""
    return _SHORT[item](results) if item in _SHORT else _names(item, results)


def _names(item: str, results: Results) -> str:
    """The lines that are for one item alone."""
    lines = results.lines_for(item)
    alone = dict.fromkeys(line.name for line in lines if line.scope == (item,))
    return results.words.joined(tuple(alone))


def _base(results: Results) -> str:
    return results.words(
        "cover_base",
        depth=depths(results, "base", lambda p: p.base),
        material=results.job.rate_book.base_material,
    )


def _slab(results: Results) -> str:
    mix, words = results.job.rate_book.mix, results.words
    return words(
        "cover_slab",
        depth=depths(results, "slab", lambda p: p.thickness),
        strength=words.number(mix.strength_psi, 0),
        air=mix.air,
    )


def _reinforcement(results: Results) -> str:
    choices = results.job.rate_book.reinforcement
    placements = results.placements_with("reinforcement")
    return results.by_placement({p.id: choices[p.reinforcement].name for p in placements})


def _joints(results: Results) -> str:
    placements = results.placements_with("joints")
    spacing = results.by_placement({p.id: joint_spacing(results, p) for p in placements})
    return results.words("cover_joints", spacing=spacing)


def _finish(results: Results) -> str:
    job = results.job
    return results.by_placement(
        {p.id: job.finish_of(p, job.finish)[1].name for p in job.placements}
    )


def _cast_edge(results: Results) -> str:
    placements = results.placements_with("cast_edge")
    length = results.by_placement(
        {p.id: edge_length(results, p.id, EdgeKind.POOL) for p in placements}
    )
    return results.words("cover_cast_edge", length=length)


def _sealing(results: Results) -> str:
    job, placements = results.job, results.placements_with("sealing")
    finishes = {p.id: job.finish_of(p, job.finish)[1] for p in placements}
    lasts = {p.id: reseal(results, finishes[p.id].sealer, p.use) for p in placements}
    coats = {place: sealer_coats(results, one) for place, one in finishes.items()}
    return results.words(
        "cover_sealing", coats=results.by_placement(coats), reseal=results.by_placement(lasts)
    )


_SHORT: Mapping[str, Callable[[Results], str]] = {
    "base": _base,
    "slab": _slab,
    "reinforcement": _reinforcement,
    "joints": _joints,
    "finish": _finish,
    "cast_edge": _cast_edge,
    "sealing": _sealing,
}
