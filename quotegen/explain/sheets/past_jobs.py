"""Past jobs that may be shown: what they are, and why each is shown for this job."""

from fractions import Fraction

from quotegen.explain.results import Results
from quotegen.explain.sheets.views import PhotoView, ReferenceView
from quotegen.explain.words.prose import sentence
from quotegen.reading.images.photos import data_address
from quotegen.reading.records import Reason, Reference, ShownPhoto

MOST_SHOWN = 5
LEAST_SIZE, MOST_SIZE = Fraction(2, 3), Fraction(3, 2)
"""A past job from this to that many times the size is about as large."""

_WEIGHT = (Reason.FINISH, Reason.USE, Reason.SIZE, Reason.TOWN)


def shown_references(results: Results) -> tuple[Reference, ...]:
    """The past jobs to show: those that the job names, else those most like it."""
    may = results.job.references
    if any(Reason.CHOSEN in reference.reasons for reference in may):
        return may
    ranked = sorted(
        may,
        key=lambda one: (
            *(reason not in _reasons(results, one) for reason in _WEIGHT), one.finished
        ),
    )  # fmt: skip
    return tuple(ranked[:MOST_SHOWN])


def _reasons(results: Results, reference: Reference) -> tuple[Reason, ...]:
    """Why a past job is like this one; its size counts against the measured slab."""
    area = sum(Fraction(p.area_sqft) for p in results.takeoff.placements)
    alike = area * LEAST_SIZE <= reference.area_sqft <= area * MOST_SIZE
    known = (*reference.reasons, *((Reason.SIZE,) if alike else ()))
    reasons = [reason for reason in Reason if reason in known and reason is not Reason.CHOSEN]
    return tuple(reasons) or (Reason.CHOSEN,)


def why(results: Results, reference: Reference) -> str:
    """Why a past job is shown, in words that its owner agreed to."""
    words = results.words
    return words.listing(
        tuple(
            words(f"reason_{reason.value}", years=str(reference.years), town=reference.town or "")
            for reason in _reasons(results, reference)
        )
    )


def photo_views(photos: tuple[ShownPhoto, ...]) -> tuple[PhotoView, ...]:
    """Build what is seen of pictures of the site."""
    return tuple(
        PhotoView(source=data_address("image/jpeg", photo.jpeg), caption=photo.alt)
        for photo in photos
    )


def reference_view(results: Results, reference: Reference) -> ReferenceView:
    """Build what a homeowner sees of a past job."""
    words = results.words
    facts = (
        results.content.finishes[reference.finish.value].front.title,
        words("about_sqft", area=words.number(reference.area_sqft, 0)),
        words("finished_in", month=words.month(reference.finished)),
        reference.town or "",
    )
    contact, photo = reference.contact, reference.photo
    scope = results.content.scope
    return ReferenceView(
        title=reference.title,
        facts=words.joined(tuple(fact for fact in facts if fact)),
        shows=sentence(reference.shows).removesuffix("."),
        now=reference.now or "",
        why=why(results, reference),
        scope=tuple(scope[item].front.title for item in reference.scope),
        contact=words("reference_contact", name=contact.name, phone=contact.phone)
        if contact
        else "",
        photo=data_address("image/jpeg", photo.jpeg) if photo else "",
        alt=photo.alt if photo else "",
    )
