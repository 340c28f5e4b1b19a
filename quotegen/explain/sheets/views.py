"""The customer view: the allow-list of all that may reach a homeowner. Only text, no results.

Nothing of cost, margin, other bids or private notes has a field here, so none can be shown.
A theme's templates see this and the fixed words, and nothing else.
"""

from dataclasses import dataclass
from typing import Protocol

from markupsafe import Markup

from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.guide.views import Guide
from quotegen.explain.sheets.choice_views import ChoiceSheet
from quotegen.explain.words.rows import Prose, Row


@dataclass(frozen=True, slots=True, kw_only=True)
class CompanyView:
    """Who quotes."""

    name: str
    owner: str
    address: str
    phone: str
    phone_link: str
    email: str
    license: str
    insurance: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperHead:
    """What every paper of a job has in its head and in its title block.

    Attributes:
        language: a code such as `en`.
        accent: the company's color.
        paper_size: what it prints on, `letter` or `A4`.
        draft: the mark of what was not issued, empty on what was.
        holds_until: the last day of the offer, empty on a later paper and once it is accepted.
        logo: the address of the company's logo, its bytes within; empty where it has none.
    """

    language: str
    title: str
    accent: str
    paper_size: str
    logo: str
    company: CompanyView
    customer: str
    site: str
    quote: str
    revision: str
    draft: str
    date: str
    holds_until: str


class Paper(Protocol):
    """Whatever is printed or shown as a page of its own: a paper of the quote, an owner's sheet."""

    @property
    def head(self) -> PaperHead: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawingPair:
    """One picture, drawn for paper and large screens, and for a phone."""

    wide: Drawing
    narrow: Drawing


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceSheet:
    """Sheet 1: what, how much, when, and by when to say yes.

    Attributes:
        headline: the job and its area.
        tax: whether a tax is in the total.
        say_by: by when to say yes, for the days and for the price.
        covers: what is in the price, in a few words each.
        not_in: what is not, in a line.
        access: how the concrete gets there; empty where nothing is typed.
        dates: what happens when; the name is what, the text the day.
        wish: the answer to what the homeowner asked for; empty where nothing is typed.
        note: a word of the owner's own.
        since: what moved since the revision before, the price first.
        can_change: what can change the price, a sentence each.
        payments: when what share is due, in a line.
    """

    headline: str
    plan: DrawingPair
    total: str
    tax: str
    finish: str
    say_by: str
    covers: tuple[Row, ...]
    not_in: str
    access: str
    dates: tuple[Row, ...]
    wish: str
    note: str
    since: tuple[str, ...]
    can_change: tuple[str, ...]
    payments: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TapeCheck:
    """A check that anyone can do: what, the figure of this job, and how."""

    name: str
    figure: str
    how: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SlabSheet:
    """Sheet 2: the slab cut open, and how to check it.

    Attributes:
        cut_open: a drawing for each build-up.
        panels: how many panels, and how long at most; empty without joints.
        joints: the joints drawn; None without any.
        checks: six at most.
        water: where water goes.
        steps: the steps drawn, with their rises.
        ground: a sentence on the ground that others prepared, if there is any.
    """

    cut_open: tuple[DrawingPair, ...]
    panels: str
    joints: DrawingPair | None
    joint_notes: tuple[str, ...]
    checks: tuple[TapeCheck, ...]
    water: tuple[str, ...]
    steps: tuple[Drawing, ...]
    ground: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishColumn:
    """One finish: priced for the whole job, and described with its drawbacks."""

    id: str
    name: str
    swatch: Drawing
    chosen: bool
    total: str
    difference: str
    color: str
    work: str
    visits: str
    reseal: str
    upkeep: str
    grip: str
    heat: str
    repair: str
    judge: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishSheet:
    """Sheet 3: the finishes side by side, and what else may be chosen.

    Attributes:
        upkeep_name: for how many years the upkeep of the columns is told.
    """

    columns: tuple[FinishColumn, ...]
    upkeep_name: str
    extras: tuple[Row, ...]
    alternates: tuple[Row, ...]
    colors: tuple[Row, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedRow:
    """One line of the price, or a sum of several.

    Attributes:
        pays_for: what it pays for, in a few words.
        items: the scope items whose page of the guide explains it.
    """

    name: str
    pays_for: str
    quantity: str
    rate: str
    amount: str
    items: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class LineGroup:
    """Lines that belong together, with their sum; without groups, name and sum are empty."""

    name: str
    lines: tuple[PricedRow, ...]
    together: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkedRow:
    """The price if the area comes out different."""

    change: str
    area: str
    difference: str
    total: str
    is_quote: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class MoneySheet:
    """Sheet 4: what is paid for, and what can change it.

    Attributes:
        small_job: why a foot of a small job costs more, if it does.
        worked: the price at other areas.
        unit_prices: for what may be found; no part of the total.
        excluded: what is not in the price, and who does it.
    """

    groups: tuple[LineGroup, ...]
    total: str
    small_job: tuple[str, ...]
    worked: tuple[WorkedRow, ...]
    unit_prices: tuple[Row, ...]
    measuring: Prose
    excluded: tuple[Row, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DayRow:
    """One day of the calendar: what we do, what the homeowner does or may do, what is paid.

    Attributes:
        lanes: the name of each lane that has a bar on that day, else an empty text.
    """

    day: str
    lanes: tuple[str, ...]
    we: str
    you: str
    pay: str
    amount: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DaysSheet:
    """Sheet 5: when we come, what the homeowner does, what is paid, what to mind.

    Attributes:
        lanes: the name of each bar, as it stands over its column.
        key: what each of them means.
    """

    lanes: tuple[str, ...]
    key: tuple[str, ...]
    rows: tuple[DayRow, ...]
    total: str
    weather: Prose
    safety: tuple[str, ...]
    care: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ReferenceView:
    """A past job, cut down to what its owner agreed to.

    Attributes:
        now: how it looks now.
        why: why it is shown for this job.
        scope: what was done.
    """

    title: str
    facts: str
    shows: str
    now: str
    why: str
    scope: tuple[str, ...]
    contact: str
    photo: str
    alt: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Reply:
    """How to answer by e-mail: for the quote as it is, or to ask for another choice."""

    link: str
    subject: str
    letter: Markup


@dataclass(frozen=True, slots=True, kw_only=True)
class AgreementSheet:
    """Sheet 6: what is signed, whom to call, how to say yes and how to cancel.

    Attributes:
        cancel_statement: what must stand beside the signatures in bold type of at least ten
            points (16 CFR 429.1(a)); empty once the quote is accepted.
    """

    parties: tuple[Row, ...]
    warranty: Prose
    promised: Prose
    past_jobs: tuple[ReferenceView, ...]
    how: str
    cancel: str
    cancel_statement: str
    yes: Reply
    ask: Reply


@dataclass(frozen=True, slots=True, kw_only=True)
class DoorSheet:
    """What the door sheet alone has: its plan, a code for a phone, and the address to type."""

    plan: Drawing
    code: Drawing
    email: str
    subject: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CustomerView:
    """The quote: its six sheets, the terms, and the guide beside them."""

    head: PaperHead
    price: PriceSheet
    slab: SlabSheet
    finishes: FinishSheet
    choice: ChoiceSheet
    money: MoneySheet
    days: DaysSheet
    agreement: AgreementSheet
    terms: tuple[Prose, ...]
    photos: tuple["PhotoView", ...]
    notice: "Notice | None"
    guide: Guide
    door: DoorSheet


@dataclass(frozen=True, slots=True, kw_only=True)
class PhotoView:
    """A picture of the site: its address with its bytes in it, and what it shows."""

    source: str
    caption: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Notice:
    """The form of 16 CFR 429.1(b); both dates are blank lines until the quote is signed.

    Attributes:
        days: how many business days, written out; longer where a state gives this buyer more.
    """

    seller: str
    days: str
    signed: str
    last_day: str
