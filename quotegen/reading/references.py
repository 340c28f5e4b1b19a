"""Which past jobs may be shown beside a quote or called, by consent; and photos of the site."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

from quotegen.problem import Problem
from quotegen.reading.files.job import JobFile
from quotegen.reading.files.past_jobs import PastJob, PastJobs, Shown
from quotegen.reading.files.rate_book import RateBook
from quotegen.reading.images.photos import shown_jpeg
from quotegen.reading.records import Reason, Reference, ShownPhoto
from quotegen.reading.yaml.near import near_miss
from quotegen.reading.yaml.typed_file import Typed

MOST_READ = 6
"""How many are read with their photos; when the slab is measured the nearest of them are shown."""

MOST_TO_CALL = 8
"""How many past customers the owner may name on the phone."""

WEAR_FROM_YEARS = 2
"""From this age on a slab shows how it wears."""


def choose(
    job: Typed[JobFile], book: RateBook, past: Typed[PastJobs]
) -> tuple[tuple[Reference, ...], tuple[Problem, ...]]:
    """Pick the references that a job may show: those it names, else the nearest few."""
    problems: list[Problem] = []
    if job.value.references is None:
        names = _nearest(job.value, book, past.value)
    else:
        problems.extend(_named_faults(job, past.value))
        names = tuple(
            n
            for n in job.value.references
            if _may_show(past.value.past_jobs.get(n), job.value.date)
        )
    references = []
    for name in names:
        shown = _cut_down(name, past, job.value, book)
        problems.extend([shown] if isinstance(shown, Problem) else [])
        references.extend([shown] if isinstance(shown, Reference) else [])
    return tuple(references), tuple(problems)


def _may_show(job: PastJob | None, on: date) -> bool:
    """Whether a past job was done, and its owner had agreed, by the date of a quote."""
    if job is None or job.consent is None or job.consent.withdrawn is not None:
        return False
    return job.consent.given <= on and job.finished <= on


def _nearest(job: JobFile, book: RateBook, past: PastJobs) -> tuple[str, ...]:
    """The same finish counts most, then the same use, the same town, then the older job."""
    fitting = {
        name: reasons
        for name, one in past.past_jobs.items()
        if _may_show(one, job.date) and (reasons := _reasons(one, job, book))[0] in _FITS
    }
    ranked = sorted(
        fitting,
        key=lambda name: (
            *(reason not in fitting[name] for reason in (Reason.FINISH, Reason.USE, Reason.TOWN)),
            past.past_jobs[name].finished,
        ),
    )
    return tuple(ranked[:MOST_READ])


def to_call(job: JobFile, book: RateBook, past: PastJobs) -> tuple[Reference, ...]:
    """Return the past jobs whose owners agreed to be called, the nearest in kind first.

    The same finish counts most, then the same use, then the later job. No photo is among it.
    """
    agreed = {
        name: _agreed(name, one, job, book)
        for name, one in past.past_jobs.items()
        if _may_show(one, job.date)
        and one.contact
        and one.consent
        and Shown.CONTACT in one.consent.shows
    }
    ranked = sorted(
        agreed.values(),
        key=lambda one: (
            *(reason not in one.reasons for reason in (Reason.FINISH, Reason.USE)),
            -one.finished.toordinal(),
        ),
    )
    return tuple(ranked[:MOST_TO_CALL])


def site_photos(
    job: Typed[JobFile],
) -> tuple[tuple[ShownPhoto, ...], tuple[Problem, ...]]:
    """Read the pictures of the site that a job names, each made small and without metadata.

    Returns:
        All of them in their order, or none and what is wrong with those that cannot be read.
    """
    folder = Path(job.places.file).parent
    read = [
        shown_jpeg(folder, one.file, job.places.of(("photos", index, "file")))
        for index, one in enumerate(job.value.photos)
    ]
    if problems := tuple(one for one in read if isinstance(one, Problem)):
        return (), problems
    pairs = zip(read, job.value.photos, strict=True)
    return tuple(
        ShownPhoto(jpeg=one, alt=typed.caption) for one, typed in pairs if isinstance(one, bytes)
    ), ()


_FITS = (Reason.FINISH, Reason.OFFERED, Reason.USE)


def _reasons(one: PastJob, job: JobFile, book: RateBook) -> tuple[Reason, ...]:
    """Return why a past job fits; its town counts only where it may be shown."""
    kinds = [book.finishes[f].kind for f in (job.finish, *job.compare) if f in book.finishes]
    agreed = one.consent.shows if one.consent else ()
    why = {
        Reason.FINISH: one.finish in kinds[:1],
        Reason.OFFERED: one.finish in kinds[1:] and one.finish not in kinds[:1],
        Reason.USE: one.use in {placement.use for placement in job.placements},
        Reason.TOWN: Shown.TOWN in agreed and one.town == job.site.town,
        Reason.WEAR: _years(one, job) >= WEAR_FROM_YEARS,
    }
    return tuple(reason for reason, holds in why.items() if holds) or (Reason.CHOSEN,)


def _years(one: PastJob, job: JobFile) -> int:
    """Return whole years from the end of a past job to the date of the quote."""
    then, now = one.finished, job.date
    return now.year - then.year - ((now.month, now.day) < (then.month, then.day))


def _named_faults(job: Typed[JobFile], past: PastJobs) -> Iterator[Problem]:
    on = job.value.date
    for index, name in enumerate(job.value.references or ()):
        path = ("references", index)
        known = past.past_jobs.get(name)
        if known is None:
            code, message = "unknown-reference", f"there is no past job `{name}`"
            hint = near_miss(name, (n for n, p in past.past_jobs.items() if _may_show(p, on)))
        elif known.consent is None:
            code, message = "no-consent", f"the past job `{name}` has no consent to be shown"
            hint = "ask its owner and note the date under `consent`, or take it out here"
        elif known.consent.withdrawn is not None:
            code = "consent-withdrawn"
            message = f"the consent for `{name}` was withdrawn on {known.consent.withdrawn}"
            hint = "take it out here"
        elif known.consent.given > on:
            code, given = "consent-later", known.consent.given
            message = f"the consent for `{name}` is of {given}, after the quote of {on}"
            hint = "check both dates, or take it out here"
        elif known.finished > on:
            code = "reference-later"
            message = f"`{name}` was finished on {known.finished}, after the quote of {on}"
            hint = "check both dates, or take it out here"
        elif name in (job.value.references or ())[:index]:
            code, message = "reference-twice", f"the past job `{name}` is already shown"
            hint = "delete it here"
        else:
            continue
        yield job.fault(path, code, message, hint)


def _cut_down(
    name: str, past: Typed[PastJobs], asked: JobFile, book: RateBook
) -> Reference | Problem:
    """Return what may be shown of a past job, with its photo."""
    job = past.value.past_jobs[name]
    shown = _agreed(name, job, asked, book)
    if asked.references is not None and Reason.CHOSEN not in shown.reasons:
        shown = replace(shown, reasons=(*shown.reasons, Reason.CHOSEN))
    if job.photo and job.consent and Shown.PHOTO in job.consent.shows:
        source = past.places.of(("past_jobs", name, "photo", "file"))
        jpeg = shown_jpeg(Path(past.places.file).parent, job.photo.file, source)
        if isinstance(jpeg, Problem):
            return jpeg
        return replace(shown, photo=ShownPhoto(jpeg=jpeg, alt=job.photo.alt))
    return shown


def _agreed(name: str, job: PastJob, asked: JobFile, book: RateBook) -> Reference:
    """Return what a past customer agreed to, beside a photo."""
    agreed = job.consent.shows if job.consent else ()
    return Reference(
        id=name,
        title=job.title,
        finished=job.finished,
        use=job.use,
        finish=job.finish,
        area_sqft=job.area_sqft,
        shows=job.shows,
        now=job.now,
        scope=job.scope,
        years=_years(job, asked),
        reasons=_reasons(job, asked, book),
        town=job.town if Shown.TOWN in agreed else None,
        photo=None,
        contact=job.contact if Shown.CONTACT in agreed else None,
    )
