"""The guide as a template gets it: only text."""

from dataclasses import dataclass

from markupsafe import Markup

from quotegen.explain.drawing.svg import Drawing
from quotegen.explain.words.rows import Prose, Row


@dataclass(frozen=True, slots=True, kw_only=True)
class GuideItem:
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
class SiteObservation:
    """Something seen while we work: that day, a week later, and when to speak up."""

    seen: str
    that_day: str
    later: str
    speak_up: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Guide:
    """Your slab, explained: all that explains and nothing that binds.

    Attributes:
        items: the scope items of the price.
        finishes: the finishes on offer, in words.
        site_observations: what is seen while we work.
        normal: what is no fault, in words and in pairs of pictures.
        safety, care, questions: pages that fit the job.
        care_dates: each date of care, in order.
        glossary: the words of the trade that these texts use.
        sources: where the numbers come from.
    """

    items: tuple[GuideItem, ...]
    finishes: tuple[Prose, ...]
    site_observations: tuple[SiteObservation, ...]
    normal: Prose
    pictures: tuple[Drawing, ...]
    safety: tuple[Prose, ...]
    care: tuple[Prose, ...]
    care_dates: tuple[Row, ...]
    questions: tuple[Prose, ...]
    glossary: tuple[Row, ...]
    sources: tuple[Row, ...]
