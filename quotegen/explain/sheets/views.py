"""The customer view: the allow-list of all that may reach a homeowner. Only text, no results.

Nothing of cost, margin, other bids or private notes has a field here, so none can be shown.
A theme's templates see this and the fixed words, and nothing else.
"""

from dataclasses import dataclass
from typing import Protocol

from markupsafe import Markup

from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.sheets.plan_views import PlanSheet
from quotegen.explain.words.rows import Prose, Row


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One thing to choose.

    Attributes:
        value: its part of the key of a combination.
        name, text: what it is.
        amount: the total with it, or what an extra adds, all else as quoted; empty where all
            else as quoted does not go with it.
        chosen: whether the quote has it.
    """

    value: str
    name: str
    text: str
    amount: str
    chosen: bool
    swatch: Drawing | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionGroup:
    """Options of which one must be chosen; `id` is `finish`, `part.<placement>` or `color`."""

    id: str
    name: str
    options: tuple[Option, ...]


TextRows = tuple[tuple[str, ...], ...]
"""The rows of a list or a table, each the texts of its cells."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CombinationTexts:
    """One choice among all options, with every text that follows from it.

    Attributes:
        key: the chosen values, group by group, then the extras; it stands in the address.
        texts: one for each of the sheet's `text_names`.
        rows: one for each of the sheet's `row_names`.
    """

    key: str
    texts: tuple[str, ...]
    rows: tuple[TextRows, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TotalsRow:
    """The totals of one choice of finishes and colors, with each set of extras that is shown."""

    name: str
    visits: str
    totals: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceSheet:
    """What there is to choose; all of it is empty where there is one combination only.

    Attributes:
        groups: what one of must be chosen.
        extras: what may be added.
        text_names, row_names: the places on the page that a choice changes.
        combinations: the first is the quote.
        columns: what is added, over the columns of `totals`.
        totals: the combinations in a table.
        totals_note: what the table leaves out, if anything.
    """

    groups: tuple[OptionGroup, ...]
    extras: tuple[Option, ...]
    text_names: tuple[str, ...]
    row_names: tuple[str, ...]
    combinations: tuple[CombinationTexts, ...]
    columns: tuple[str, ...]
    totals: tuple[TotalsRow, ...]
    totals_note: str


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
    date: str
    holds_until: str


class Paper(Protocol):
    """Whatever is printed or shown as a page of its own: a paper of the quote, an owner's sheet."""

    @property
    def head(self) -> PaperHead: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceSheet:
    """Sheet 1: what, for how much, and how long the offer holds."""

    headline: str
    total: str
    finish: str
    sentence: str
    keep_dates: str
    others: tuple[Row, ...]
    covers: tuple[Row, ...]
    dates: tuple[Row, ...]
    could_move: tuple[Row, ...]
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class IncludedItem:
    """A scope item that the price covers: what, why, how to check it, and this job's numbers.

    `normal_html` says what is normal and what is not.
    """

    id: str
    title: str
    what_html: Markup
    why_html: Markup
    check_html: Markup
    normal_html: Markup
    numbers: tuple[Row, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishColumn:
    """One finish: priced for the whole job, and described with its drawbacks."""

    id: str
    name: str
    kind: str
    swatch: Drawing
    chosen: bool
    total: str
    difference: str
    color: str
    visits: str
    grip: str
    heat: str
    repair: str
    upkeep: str
    upkeep_sum: str
    suits: str
    judge: str
    wet_note: str
    html: Markup


@dataclass(frozen=True, slots=True, kw_only=True)
class DaysSheet:
    """Sheet 5: when we come, when the slab may be used, and what is seen meanwhile."""

    plans: tuple["DayPlanView", ...]
    weather_html: Markup
    site_observations: tuple["SiteObservation", ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SiteObservation:
    """Something seen while we work: that day, a week later, and when to speak up."""

    seen: str
    that_day: str
    later: str
    speak_up: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DayPlanView:
    """The days at some finishes, as a picture and in words; those of the quote come first."""

    name: str
    picture: Drawing
    visits: tuple[Row, ...]
    opening: tuple[Row, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PricedRow:
    """One line of the price, or the total."""

    name: str
    where: str
    quantity: str
    rate: str
    amount: str
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkedRow:
    """The price if the area comes out different."""

    change: str
    area: str
    difference: str
    total: str
    note: str
    is_quote: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeSheet:
    """Sheet 6: what can change the price, by how much, and what never can."""

    measured: tuple[PricedRow, ...]
    fixed: tuple[PricedRow, ...]
    allowances: tuple[PricedRow, ...]
    taxes: tuple[PricedRow, ...]
    round_total: tuple[PricedRow, ...]
    total: str
    rounding: str
    by_placement: tuple[Row, ...]
    by_scope: tuple[Row, ...]
    clause: Prose
    area_prices: tuple[Row, ...]
    worked: tuple[WorkedRow, ...]
    chart: Drawing | None
    quoted: str
    unit_prices: tuple[Row, ...]
    cannot: Prose
    changes: Prose
    hidden: Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class StandardsSheet:
    """Sheet 7: what is good work, what is normal, how to keep it.

    Attributes:
        promised, normal: the standards, and what is no fault.
        care_dates: the care card, each date with what it allows or asks.
        safety, care, questions: pages that fit the job.
        glossary: the words of the trade that this quote uses.
        sources: where the numbers come from.
    """

    promised: Prose
    normal: Prose
    care_dates: tuple[Row, ...]
    safety: tuple[Prose, ...]
    care: tuple[Prose, ...]
    questions: tuple[Prose, ...]
    glossary: tuple[Row, ...]
    sources: tuple[Row, ...]


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
class AgreementSheet:
    """Sheet 9: what is signed."""

    parties: tuple[Row, ...]
    payments: tuple[Row, ...]
    total: str
    warranty: Prose
    terms: tuple[Prose, ...]
    acceptance: Prose
    legal: Prose
    how: str
    reply_link: str
    reply_subject: str
    reply_letter: Markup


@dataclass(frozen=True, slots=True, kw_only=True)
class DoorSheet:
    """What the door sheet alone has: a code for a phone, and the same address to type."""

    code: Drawing
    email: str
    subject: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CustomerView:
    """Everything on the customer's paper."""

    head: PaperHead
    price: PriceSheet
    plan: PlanSheet
    included: tuple[IncludedItem, ...]
    not_included: tuple[Row, ...]
    finishes: tuple[FinishColumn, ...]
    bars: Drawing | None
    choice: ChoiceSheet
    extras: tuple[Row, ...]
    alternates: tuple[Row, ...]
    colors: tuple[Row, ...]
    days: DaysSheet
    change: ChangeSheet
    standards: StandardsSheet
    past_jobs: tuple[ReferenceView, ...]
    agreement: AgreementSheet
    door: DoorSheet


@dataclass(frozen=True, slots=True, kw_only=True)
class CompareRow:
    """A scope item on the sheet for comparing bids: ours, what to ask, how to check."""

    title: str
    ours: str
    ask: str
    check: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CompareView:
    """The sheet for comparing bids: our scope filled in, room for others."""

    head: PaperHead
    rows: tuple[CompareRow, ...]
    total: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PastJobPage:
    """The page of one past job."""

    head: PaperHead
    job: ReferenceView
