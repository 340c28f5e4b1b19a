"""What stage 1 hands on: what was typed, checked, and with its defaults filled in."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from fractions import Fraction

from quotegen.problem import Problem, Source
from quotegen.quantity import Length, Units
from quotegen.reading.fields.text_fields import Count
from quotegen.reading.files.after_signing import Accepted, Change, Completed, Measured, Paid
from quotegen.reading.files.company import Company, PaperSize
from quotegen.reading.files.costs import Costs
from quotegen.reading.files.forecast import Forecast
from quotegen.reading.files.job import (
    Access,
    Customer,
    Excluded,
    JobFile,
    JointLine,
    Site,
    Subcontractor,
    Use,
)
from quotegen.reading.files.past_jobs import Contact
from quotegen.reading.files.rate_book import Finish, FinishKind, RateBook
from quotegen.reading.files.rate_book_file import RateBookFile
from quotegen.reading.files.shapes import Shape, Side
from quotegen.reading.files.site_parts import (
    DeepEdge,
    EdgePart,
    FallsFrom,
    Flight,
    GroundHeight,
    PreparedGround,
    StatedHeight,
)
from quotegen.reading.images.logos import Logo
from quotegen.reading.yaml.located import DocumentPath, Places


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacementSpec:
    """One placement with nothing left open.

    Attributes:
        path: where it stands in the job file, for the messages of later stages.
        finish: its own finish, or None when it follows the finish of the job.
        alternates: finishes that the homeowner may choose for this placement alone.
        fall: the drop in one foot, None when not stated.
        joints: the owner's own lines; None where joints are laid out for him.
        drained_edges: the edges along which a drain takes the water.
    """

    path: DocumentPath
    id: str
    name: str
    use: Use
    add: tuple[Shape, ...]
    take_away: tuple[Shape, ...]
    thickness: Length
    base: Length
    reinforcement: str
    finish: str | None
    alternates: tuple[str, ...]
    fall: Length | None
    falls_toward: Side | None
    water_goes_to: str | None
    include: Mapping[str, Count]
    joints: tuple[JointLine, ...] | None = None
    falls_away_from: FallsFrom | None = None
    drained_edges: tuple[EdgePart, ...] = ()
    stated_height: StatedHeight | None = None
    ground: tuple[GroundHeight, ...] = ()
    thickened_edge: DeepEdge | None = None
    turned_down_edge: DeepEdge | None = None
    steps: Flight | None = None

    @property
    def deep_edges(self) -> tuple[DeepEdge, ...]:
        """The edges that are deeper than the slab."""
        return tuple(one for one in (self.thickened_edge, self.turned_down_edge) if one)

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
        places: of the job file, to say where a thing stands.
        book_places, company_places: the same of the company's files.
        finishes: the chosen finish first, then those to compare.
        accepted, paid, measured, changes, completed: what happened since the quote was sent.
        color: the rates of the colors in the price, none where it has no color of its own.
        colors: looks that the homeowner may choose instead, each as the rates of its colors.
        tax_exempt: why no tax is charged, None where it is.
        references: the past jobs that may be shown, best known first.
        forecast: the weather of the pour, for the owner's day sheet.
    """

    places: Places
    quote: str
    revision: int
    quote_date: date
    holds_until: date
    start: date
    units: Units
    title: str
    customer: Customer
    site: Site
    finish: str
    compare: tuple[str, ...]
    placements: tuple[PlacementSpec, ...]
    include: Mapping[str, Count]
    extras: Mapping[str, Count]
    color: tuple[str, ...]
    colors: tuple[tuple[str, ...], ...]
    tax_exempt: str | None
    access: Access | None
    north_deg: Fraction | None
    not_included: tuple[Excluded, ...]
    subcontractors: tuple[Subcontractor, ...] = ()
    references: tuple[Reference, ...]
    forecast: Forecast | None = None
    note: str | None
    accepted: Accepted | None
    paid: tuple[Paid, ...]
    measured: Measured | None
    changes: tuple[Change, ...]
    completed: Completed | None = None
    company: Company
    rate_book: RateBook
    prepared_ground: PreparedGround | None = None
    paper: PaperSize
    logo: Logo | None = None
    book_places: Places
    company_places: Places

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
    """

    file: JobFile
    book: RateBookFile

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
    """

    job: JobSpec
    owners: OwnersJob
    problems: tuple[Problem, ...]
