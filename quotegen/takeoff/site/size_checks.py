"""Warnings of a placement so small, large, narrow or long that feet may be typed for inches."""

from collections.abc import Iterator

from quotegen.problem import Problem
from quotegen.quantity import rounded
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.takeoff.plan_geometry import Ring
from quotegen.takeoff.records import PlacementTakeoff, Takeoff
from quotegen.takeoff.shapes.faults import tape_of
from quotegen.trade.book import RuleBook
from quotegen.trade.sense import is_usual, usual_area_sqft, usual_in_forms, usual_side_ft

_HINT = "check feet and inches, and the point, of its sides; if it is right, leave it"


def size_warnings(job: JobSpec, takeoff: Takeoff, rules: RuleBook) -> Iterator[Problem]:
    """Yield at most one warning for each placement: of its area, or else of a side."""
    for spec, measured in zip(job.placements, takeoff.placements, strict=True):
        usual = usual_area_sqft(spec.use.value, rules, job.quote_date)
        if is_usual(measured.area_sqft, usual):
            yield from _sides(job, spec, measured, rules)
            continue
        said = (
            f"`{spec.id}` measures {measured.area_sqft:,} sq ft; {usual.least:f} to"
            f" {usual.most:,f} sq ft is usual for a {spec.use.value}"
        )
        yield job.places.warning((*spec.path, "add"), "area-unusual", said, _HINT)


def _sides(
    job: JobSpec, spec: PlacementSpec, measured: PlacementTakeoff, rules: RuleBook
) -> Iterator[Problem]:
    usual = usual_side_ft(rules, job.quote_date)
    for ring in measured.outer_ft:
        width, length = sorted(_extent_ft(ring))
        for found, what in ((width, "wide"), (length, "long")):
            if not is_usual(rounded(found, 2), usual):
                said = (
                    f"`{spec.id}` is {tape_of(found)} {what}; {usual.least:f} to {usual.most:f} ft"
                    " is usual"
                )
                yield job.places.warning((*spec.path, "add"), "side-unusual", said, _HINT)
                return


def _extent_ft(ring: Ring) -> tuple[float, float]:
    """Return how far a ring reaches along and across the base line of the plan."""
    along, across = zip(*ring, strict=True)
    return max(along) - min(along), max(across) - min(across)


def forms_warnings(
    job: JobSpec, quoted: Takeoff, in_forms: Takeoff, rules: RuleBook
) -> Iterator[Problem]:
    """Yield a warning of each placement that in the forms is far from what was quoted."""
    for before, after in zip(quoted.placements, in_forms.placements, strict=True):
        if not is_usual(after.area_sqft, usual_in_forms(before.area_sqft, rules, job.quote_date)):
            said = (
                f"`{before.id}` measures {after.area_sqft:,} sq ft in the forms; quoted were"
                f" {before.area_sqft:,} sq ft"
            )
            path = ("measured", "placements", before.id)
            hint = "check feet and inches, and the point; if it is right, leave it"
            yield job.places.warning(path, "measured-far-off", said, hint)
