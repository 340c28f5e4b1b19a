"""Past jobs: what may be shown of them, and only with consent."""

from enum import StrEnum

from pydantic import Field

from quotegen.reading.fields.typed_fields import DateField, Model, Slug, Text, WholeField, Word
from quotegen.reading.files.job import Use
from quotegen.reading.files.rate_book import FinishKind


class Shown(StrEnum):
    """What a past customer agreed to have shown, beside the kind and size of the work."""

    TOWN = "town"
    PHOTO = "photo"
    CONTACT = "contact"


class Consent(Model):
    """A past customer's agreement, with its date; once withdrawn nothing is shown."""

    given: DateField
    shows: tuple[Shown, ...] = ()
    withdrawn: DateField | None = None


class Photo(Model):
    """A picture beside the file, and what it shows, in words."""

    file: Word
    alt: Word


class Contact(Model):
    """Whom a homeowner may ring."""

    name: Word
    phone: Word


class PastJob(Model):
    """One job that was done.

    Attributes:
        shows: what it is shown for.
        now: how it looks now, in words.
        scope: the scope items that were done, for its page.
    """

    title: Word
    finished: DateField
    town: Word
    use: Use
    finish: FinishKind
    area_sqft: WholeField
    shows: Word
    now: Word | None = None
    scope: tuple[Slug, ...] = ()
    photo: Photo | None = None
    contact: Contact | None = None
    consent: Consent | None = None
    private_notes: Text | None = None


class PastJobs(Model):
    """A whole file of past jobs."""

    past_jobs: dict[Slug, PastJob] = Field(default_factory=dict)
