"""The past jobs of our example companies, which belong on nobody's quote but theirs."""

from collections.abc import Iterator

from quotegen.problem import Problem
from quotegen.reading.checks.sense import phone_sense
from quotegen.reading.files.company import Company
from quotegen.reading.files.past_jobs import PastJob, PastJobs
from quotegen.reading.yaml.typed_file import Typed

EXAMPLE_COMPANIES = frozenset({"Larkmead Concrete", "Pennywort Flatwork"})
EXAMPLE_TITLES = frozenset({
    ("Patio with a round end", "2023-06-09"),
    ("Deck round an oval pool", "2022-08-19"),
    ("Pool deck with a cast edge", "2022-06-17"),
    ("Patio in two levels", "2023-09-08"),
    ("Drive with a thicker apron", "2021-05-28"),
    ("Kidney pool deck", "2020-07-10"),
    ("Curved front walk", "2024-05-03"),
    ("Patio round a fire bowl", "2023-06-23"),
})  # fmt: skip
"""Title and day of each past job in example_jobs/; a test holds that they are all."""
EXAMPLE_CONTACTS = frozenset({"740-555-0131", "231-555-0154", "740-555-0166"})
"""The phone number of each contact there."""


def past_job_phones(past: Typed[PastJobs]) -> Iterator[Problem]:
    """Yield each contact's number without an area code."""
    yield from phone_sense(
        past,
        ((("past_jobs", name, "contact", "phone"), job.contact.phone)
         for name, job in past.value.past_jobs.items() if job.contact),
    )  # fmt: skip


def past_job_sense(past: Typed[PastJobs], company: Company) -> Iterator[Problem]:
    """Yield a warning that names the past jobs that were copied with an example company's files."""
    ours = [name for name, job in past.value.past_jobs.items() if _of_an_example(job)]
    if ours and company.name not in EXAMPLE_COMPANIES:
        said = (
            f"{', '.join(f'`{name}`' for name in ours)} came with our example company; a quote of"
            f" {company.name} would show them as work of its own"
        )
        hint = "delete them and type jobs of your own; a company without any needs no such file"
        path = ("past_jobs", ours[0])
        yield past.places.warning(path, "example-past-jobs", said, hint)


def _of_an_example(job: PastJob) -> bool:
    known = (job.title, job.finished.isoformat()) in EXAMPLE_TITLES
    return known or (job.contact is not None and job.contact.phone in EXAMPLE_CONTACTS)
