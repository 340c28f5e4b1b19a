"""The crew sheet: joints with sizes, heights, reach, loads, and what to look at before the pour."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from quotegen.explain.drawing.scale import Viewport
from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.papers.height_rows import corner_rows, heights_from
from quotegen.explain.papers.joint_table import joint_rows
from quotegen.explain.papers.measuring_views import HeightRow, JointRow
from quotegen.explain.pictures.joint_drawing import draw_joints
from quotegen.explain.pictures.reach_drawing import draw_reach
from quotegen.explain.results import Results
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.past_jobs import photo_views
from quotegen.explain.sheets.views import PaperHead, PhotoView
from quotegen.explain.words.numbers import edge_length
from quotegen.explain.words.prose import sentence
from quotegen.quantity import Units
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import ShownPhoto

FLAT = Viewport(
    width_px=680, height_px=440, left_px=24, right_px=24, top_px=24, bottom_px=48, to_scale=True
)
CHECKLIST = ("lines", "base", "forms", "steel", "inspected", "measured", "route", "washout",
             "weather", "people")  # fmt: skip
"""What is looked at before the truck comes: the words stand under `crew_check_`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CrewSheet:
    """What the crew has in hand on form and pour day. It has no price."""

    head: PaperHead
    joint_plan: Drawing | None
    joints: tuple[JointRow, ...]
    reach: Drawing | None
    reached: tuple[str, ...]
    loads: tuple[str, ...]
    before: tuple[str, ...]
    corners: tuple[HeightRow, ...]
    heights_from: str
    photos: tuple[PhotoView, ...]


def crew_sheet(results: Results, photos: tuple[ShownPhoto, ...] = ()) -> CrewSheet:
    """Build the crew sheet, with every photo of the site."""
    job, words = results.job, results.words
    drawn = draw_joints(results, FLAT, "joints")
    jointed = any(measured.joints.joints for measured in results.takeoff.placements)
    return CrewSheet(
        head=paper_head(
            results, words("crew_title", title=job.title, quote=job.quote), job.quote_date
        ),
        joint_plan=drawn.drawing if jointed else None,
        joints=joint_rows(results, drawn.numbered),
        reach=draw_reach(results, FLAT, "reach"),
        reached=tuple(_reached(results)),
        loads=tuple(_loads(results)),
        before=tuple(words(f"crew_check_{one}") for one in CHECKLIST),
        corners=corner_rows(results),
        heights_from=heights_from(results),
        photos=photo_views(photos),
    )


def _reached(results: Results) -> Iterator[str]:
    words, reach = results.words, results.takeoff.reach
    for method in reach.methods if reach else ():
        key = "reach_all" if method.covers else "reach_part" if method.share else "reach_none"
        share = words.percent(Fraction(method.share) / 100)
        yield sentence(words(key, method=method.name, share=share))


def _loads(results: Results) -> Iterator[str]:
    """The concrete by placement, what to order together, and the mix."""
    words, job, takeoff = results.words, results.job, results.takeoff
    for placement in job.placements:
        measured = takeoff.placement(placement.id)
        yield words(
            "crew_placement",
            placement=placement.name,
            area=words.area(measured),
            depth=words.depth(placement.thickness),
            volume=words.volume(measured.volume_cuyd),
            edge=words.feet(measured.edges_ft[EdgeKind.FORMED])
            if words.units is Units.US
            else edge_length(results, placement.id, EdgeKind.FORMED),
        )
    yield words("crew_order", order=words.volume(takeoff.order_cuyd))
    mix = job.rate_book.mix
    yield words(
        "crew_mix", strength=words.number(mix.strength_psi, 0), air=mix.air, mix=mix.description
    )
    if job.access:
        yield job.access.note
