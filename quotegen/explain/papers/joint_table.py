"""The joint plan in numbers: panels, the largest, the spacing and its rule, the depth."""

from collections.abc import Iterator, Mapping
from decimal import Decimal

from quotegen.explain.papers.measuring_views import JointRow
from quotegen.explain.results import Results
from quotegen.explain.wording import Words
from quotegen.explain.words.numbers import joint_rule
from quotegen.quantity import Length, Unit, Units
from quotegen.takeoff.joints.records import BrokenRule, JointPlan, Panel, PanelRule


def joint_rows(results: Results, numbered: Mapping[str, tuple[Panel, ...]]) -> tuple[JointRow, ...]:
    """A row for each placement with joints in the price, or drawn by the job.

    Args:
        results: of the job.
        numbered: by placement, the panels that the drawing shows by their number alone.
    """
    priced = {placement.id for placement in results.placements_with("joints")}
    covered = "joints" in results.scope_items()
    return tuple(
        _row(
            results,
            placement.name,
            results.takeoff.placement(placement.id).joints,
            numbered.get(placement.id, ()),
        )
        for placement in results.job.placements
        if (covered and placement.id in priced) or placement.typed.joints
    )


def _row(results: Results, name: str, plan: JointPlan, numbered: tuple[Panel, ...]) -> JointRow:
    words = results.words
    largest = max(plan.panels, key=lambda panel: panel.area_sqft)
    metric = words.units is Units.METRIC
    return JointRow(
        name=name,
        panels=str(len(plan.panels)),
        largest=_size(largest, words),
        length=words.quantity(plan.length_m, Unit.M)
        if metric
        else words.quantity(plan.length_ft, Unit.FT),
        spacing=words.feet(plan.spacing_ft),
        rule=words.listing(tuple(joint_rule(results, rule) for rule in plan.spacing_rules)),
        depth=words.depth(Length.of_inches(plan.saw_depth_in)),
        numbered=_numbered(numbered, name, words),
        exceptions=tuple(_exceptions(results, plan)),
    )


def _size(panel: Panel, words: Words) -> str:
    long, short = words.panel_side(panel.long_ft), words.panel_side(panel.short_ft)
    return words("panel_size", long=long, short=short)


def _numbered(panels: tuple[Panel, ...], name: str, words: Words) -> str:
    """The sizes of panels by number, those of one size together."""
    by_size: dict[str, list[str]] = {}
    for panel in panels:
        by_size.setdefault(_size(panel, words), []).append(str(panel.number))
    sizes = tuple(
        words("panels_of_size", numbers=words.listing(tuple(numbers)), size=size)
        for size, numbers in by_size.items()
    )
    return words("panels_numbered", placement=name, sizes=words.joined(sizes)) if sizes else ""


def _exceptions(results: Results, plan: JointPlan) -> Iterator[str]:
    for panel in plan.exceptions:
        for broken in panel.broken:
            yield _said(results, panel, broken)


def _said(results: Results, panel: Panel, broken: BrokenRule) -> str:
    words = results.words
    in_feet = broken.rule in {PanelRule.SPACING, PanelRule.SLIVER}

    def number(value: Decimal) -> str:
        return words.feet(value) if in_feet else f"{value.normalize():f}"

    return words(
        f"broken_{broken.rule.value.replace(' ', '_')}",
        number=str(panel.number),
        found=number(broken.found),
        allowed=number(broken.allowed),
    )
