"""What stage 1 hands on: what was typed, checked, and with its defaults filled in."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from fractions import Fraction

from quotegen.problem import Problem, Source
from quotegen.quantity import Length, Units
from quotegen.reading.fields.text_fields import Count
from quotegen.reading.files.company import Company, PaperSize
from quotegen.reading.files.costs import Costs
from quotegen.reading.files.job import (
    Access,
    Customer,
    Excluded,
    Job,
    JobFile,
    Placement,
    Site,
    Use,
)
from quotegen.reading.files.order_parts import MaterialId
from quotegen.reading.files.past_jobs import Contact
from quotegen.reading.files.rate_book import Finish, FinishKind, RateBook
from quotegen.reading.files.rate_book_file import RateBookFile
from quotegen.reading.files.shapes import Shape
from quotegen.reading.files.site_parts import (
    DeepEdge,
)
from quotegen.reading.images.logos import Logo
from quotegen.reading.ledger.ledger import Ledger
from quotegen.reading.yaml.located import DocumentPath, Places


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacementSpec:
    """One placement with nothing left open.

    Attributes:
        typed: as it stands in the job file; what is below was open there, or may be varied.
        path: where it stands in the job file, for the messages of later stages.
        add, take_away: its shapes, as quoted or as they are measured again in the forms.
        finish: its own finish, or None when it follows the finish of the job.
        casts_pool_edge: whether the slab is cast over the beam of its pool; else it ends at a
            coping that stands there. The price says which: a cast edge is paid for, or is not.
    """

    typed: Placement
    path: DocumentPath
    name: str
    add: tuple[Shape, ...]
    take_away: tuple[Shape, ...]
    thickness: Length
    base: Length
    reinforcement: str
    finish: str | None
    include: Mapping[str, Count]
    casts_pool_edge: bool = False

    @property
    def id(self) -> str:
        return self.typed.id

    @property
    def use(self) -> Use:
        return self.typed.use

    @property
    def alternates(self) -> tuple[str, ...]:
        """Finishes that the homeowner may choose for this placement alone."""
        return self.typed.alternates

    @property
    def deep_edges(self) -> tuple[DeepEdge, ...]:
        """The edges that are deeper than the slab."""
        both = (self.typed.thickened_edge, self.typed.turned_down_edge)
        return tuple(one for one in both if one)

    @property
    def dig_depth(self) -> Length:
        """How deep to dig for a slab that ends level with the ground."""
        return Length(self.thickness.feet + self.base.feet)


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownPhoto:
    """A photo as it may be shown: made small, without any metadata.

    Attributes:
        jpeg: the bytes.
        alt: what it shows, in words.
    """

    jpeg: bytes
    alt: str


class Reason(StrEnum):
    """Why a past job is shown for this one, the weightiest first."""

    FINISH = "finish"
    OFFERED = "offered"
    USE = "use"
    SIZE = "size"
    TOWN = "town"
    WEAR = "wear"
    CHOSEN = "chosen"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reference:
    """A past job with consent, cut down to what its owner agreed to; the rest is None.

    Attributes:
        years: whole years from its end to the date of the quote.
        reasons: why it is shown; at least one.
    """

    id: str
    title: str
    finished: date
    use: Use
    finish: FinishKind
    area_sqft: int
    shows: str
    now: str | None
    scope: tuple[str, ...]
    years: int
    reasons: tuple[Reason, ...]
    town: str | None
    photo: ShownPhoto | None
    contact: Contact | None


@dataclass(frozen=True, slots=True, kw_only=True)
class JobSpec:
    """One job, ready to be measured and priced.

    Attributes:
        typed: the job file without its private keys; what is below was open there, or may be
            varied to see what it would cost.
        finish: of each placement that has none of its own.
        include: what the price covers on request, for the whole job.
        color: the rates of the colors in the price, none where it has no color of its own.
        colors: looks that the homeowner may choose instead, each as the rates of its colors.
        not_included: by the company, then by the job.
        references: the past jobs that may be shown, best known first.
        photos: of the site, those that the customer may see.
        waste: what is ordered beyond the measure, where the rate book says so.
        places: of the job file, to say where a thing stands.
        book_places, company_places: the same of the company's files.
    """

    typed: Job
    holds_until: date
    finish: str
    placements: tuple[PlacementSpec, ...]
    include: Mapping[str, Count]
    color: tuple[str, ...]
    colors: tuple[tuple[str, ...], ...]
    not_included: tuple[Excluded, ...]
    references: tuple[Reference, ...]
    photos: tuple[ShownPhoto, ...] = ()
    company: Company
    rate_book: RateBook
    waste: Mapping[MaterialId, Fraction]
    paper: PaperSize
    logo: Logo | None
    places: Places
    book_places: Places
    company_places: Places

    @property
    def quote(self) -> str:
        return self.typed.quote

    @property
    def revision(self) -> int:
        return self.typed.revision

    @property
    def quote_date(self) -> date:
        return self.typed.date

    @property
    def units(self) -> Units:
        return self.typed.units

    @property
    def title(self) -> str:
        return self.typed.title

    @property
    def customer(self) -> Customer:
        return self.typed.customer

    @property
    def site(self) -> Site:
        return self.typed.site

    @property
    def extras(self) -> Mapping[str, Count]:
        """What the homeowner may add, with how much of it."""
        return self.typed.extras

    @property
    def access(self) -> Access | None:
        return self.typed.access

    def finish_of(self, placement: PlacementSpec, job_finish: str) -> tuple[str, Finish]:
        """Return the finish of a placement when the job has that finish."""
        finish_id = placement.finish or job_finish
        return finish_id, self.rate_book.finishes[finish_id]

    def source(self, *path: str | int) -> Source:
        """Return where a value stands in the job file."""
        return self.places.of(path)

    def book_source(self, *path: str | int) -> Source:
        """Return where a value stands in the rate book."""
        return self.book_places.of(path)

    def company_source(self, *path: str | int) -> Source:
        """Return where a value stands in the company file."""
        return self.company_places.of(path)


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnersJob:
    """The same job with all that its owner alone may see: nothing of it meets a customer.

    Attributes:
        file: the whole job file: other bids, bills, private notes, how it came out.
        book: the whole rate book, each price with its cost.
        to_call: past jobs whose owners agreed to be called, the nearest in kind first.
        photos: of the site, every one.
    """

    file: JobFile
    book: RateBookFile
    to_call: tuple[Reference, ...]
    photos: tuple[ShownPhoto, ...] = ()

    @property
    def costs(self) -> Costs | None:
        """What work costs, None where the rate book does not say."""
        return self.book.costs


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadJob:
    """A job as read: what every stage works on, and beside it what is the owner's alone.

    Attributes:
        problems: a job with an error among them may be measured, to find more faults, but not
            priced.
        ledger: what was issued of it; None for a job that is only made up, as for a ballpark.
    """

    job: JobSpec
    owners: OwnersJob
    problems: tuple[Problem, ...]
    ledger: Ledger | None = None
