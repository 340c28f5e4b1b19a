"""Which past jobs may be shown beside a quote, and how much of each: consent decides."""

from collections.abc import Iterator
from pathlib import Path

from quotegen.problem import Problem
from quotegen.spec.files import Typed
from quotegen.spec.job import JobFile
from quotegen.spec.past_jobs import PastJob, PastJobs, Shown
from quotegen.spec.photos import shown_jpeg
from quotegen.spec.rate_book import RateBook
from quotegen.spec.records import Reference, ShownPhoto
from quotegen.spec.validate import near_miss, path_text

MOST_SHOWN = 3


def choose(
    job: Typed[JobFile], book: RateBook, past: Typed[PastJobs]
) -> tuple[tuple[Reference, ...], tuple[Problem, ...]]:
    """Pick the references of a job: those it names, else the nearest in finish and use."""
    problems: list[Problem] = []
    if job.value.references is None:
        names = _nearest(job.value, book, past.value)
    else:
        problems.extend(_named_faults(job, past.value))
        names = tuple(n for n in job.value.references if _may_show(past.value.past_jobs.get(n)))
    references = []
    for name in names:
        shown = _cut_down(name, past)
        problems.extend([shown] if isinstance(shown, Problem) else [])
        references.extend([shown] if isinstance(shown, Reference) else [])
    return tuple(references), tuple(problems)


def _may_show(job: PastJob | None) -> bool:
    return job is not None and job.consent is not None and job.consent.withdrawn is None


def _nearest(job: JobFile, book: RateBook, past: PastJobs) -> tuple[str, ...]:
    """The same kind of finish counts most, then the same use, then the older job: it shows wear."""
    kinds = {book.finishes[f].kind for f in (job.finish, *job.compare) if f in book.finishes}
    chosen = book.finishes[job.finish].kind if job.finish in book.finishes else None
    uses = {placement.use for placement in job.placements}
    ranked = sorted(
        (
            name
            for name, p in past.past_jobs.items()
            if _may_show(p) and (p.finish in kinds or p.use in uses)
        ),
        key=lambda name: (
            past.past_jobs[name].finish != chosen,
            past.past_jobs[name].use not in uses,
            past.past_jobs[name].finished,
        ),
    )
    return tuple(ranked[:MOST_SHOWN])


def _named_faults(job: Typed[JobFile], past: PastJobs) -> Iterator[Problem]:
    for index, name in enumerate(job.value.references or ()):
        path = ("references", index)
        known = past.past_jobs.get(name)
        if known is None:
            code, message = "unknown-reference", f"there is no past job `{name}`"
            hint = near_miss(name, (n for n, p in past.past_jobs.items() if _may_show(p)))
        elif known.consent is None:
            code, message = "no-consent", f"the past job `{name}` has no consent to be shown"
            hint = "ask its owner and note the date under `consent`, or take it out here"
        elif known.consent.withdrawn is not None:
            code = "consent-withdrawn"
            message = f"the consent for `{name}` was withdrawn on {known.consent.withdrawn}"
            hint = "take it out here"
        elif name in (job.value.references or ())[:index]:
            code, message = "reference-twice", f"the past job `{name}` is already shown"
            hint = "delete it here"
        else:
            continue
        yield Problem(
            code=code,
            source=job.document.value_source(path),
            path=path_text(path),
            message=message,
            hint=hint,
        )


def _cut_down(name: str, past: Typed[PastJobs]) -> Reference | Problem:
    job = past.value.past_jobs[name]
    agreed = job.consent.shows if job.consent else ()
    photo = None
    if job.photo and Shown.PHOTO in agreed:
        source = past.document.value_source(("past_jobs", name, "photo", "file"))
        jpeg = shown_jpeg(Path(past.document.file).parent, job.photo.file, source)
        if isinstance(jpeg, Problem):
            return jpeg
        photo = ShownPhoto(jpeg=jpeg, alt=job.photo.alt)
    return Reference(
        id=name, title=job.title, finished=job.finished, use=job.use, finish=job.finish,
        area_sqft=job.area_sqft, shows=job.shows,
        town=job.town if Shown.TOWN in agreed else None,
        photo=photo,
        contact=job.contact if Shown.CONTACT in agreed else None,
    )  # fmt: skip
