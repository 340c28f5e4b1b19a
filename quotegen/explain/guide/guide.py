"""The guide to one job: the pages of content/ that fit it, with its own numbers."""

from quotegen.explain.guide.care_rows import care_rows
from quotegen.explain.guide.sources import glossary_rows, source_rows
from quotegen.explain.guide.views import Guide, GuideItem, SiteObservation
from quotegen.explain.pictures.normal_pictures import normal_pictures
from quotegen.explain.results import Results
from quotegen.explain.words.job_features import features_of, finish_kinds
from quotegen.explain.words.numbers import numbers_for
from quotegen.explain.words.prose import clause, filled, html, prose, sections
from quotegen.explain.words.rows import Prose
from quotegen.reading.content.content import CareFront, Page, QuestionFront, SafetyFront

EVERY_FINISH = "all"


def guide_of(results: Results) -> Guide:
    """Choose and fill the pages that fit this job."""
    safety, care = safety_pages(results), care_pages(results)
    printed = _printed(results)
    return Guide(
        items=tuple(_item(item, results) for item in results.scope_items()),
        finishes=tuple(_finish(results, finish.id) for finish in results.quote.finishes),
        site_observations=_site_observations(results),
        normal=clause("what_is_normal", results),
        pictures=normal_pictures(results),
        safety=tuple(prose(p.front.id, p.front.title, p.markdown, results) for p in safety),
        care=tuple(prose(p.front.id, p.front.title, p.markdown, results) for p in care),
        care_dates=care_rows(results, results.chosen_visits),
        questions=tuple(
            prose(p.front.id, p.front.question, p.markdown, results) for p in _questions(results)
        ),
        glossary=glossary_rows(results, printed),
        sources=source_rows(results, printed),
    )


def guide_title(results: Results) -> str:
    """What the guide is called as a paper of its own."""
    return results.words("guide_title", title=results.job.title, quote=results.job.quote)


def safety_pages(results: Results) -> tuple[Page[SafetyFront], ...]:
    """The cautions that fit the job."""
    features = features_of(results)
    pages = results.content.safety.values()
    return tuple(page for page in pages if features & set(page.front.applies))


def care_pages(results: Results) -> tuple[Page[CareFront], ...]:
    """The pages on care that fit the finishes of the job."""
    finishes = {EVERY_FINISH, *(kind.value for kind in finish_kinds(results))}
    pages = results.content.care.values()
    return tuple(page for page in pages if finishes & set(page.front.finishes))


def _questions(results: Results) -> tuple[Page[QuestionFront], ...]:
    """The questions that fit the job."""
    features = features_of(results)
    pages = results.content.questions.values()
    return tuple(page for page in pages if features & set(page.front.applies))


def _item(item: str, results: Results) -> GuideItem:
    page = results.content.scope[item]
    what, why, check, normal = (html(part, results) for part in sections(page.markdown))
    return GuideItem(
        id=item,
        title=page.front.title,
        what_html=what,
        why_html=why,
        check_html=check,
        normal_html=normal,
        numbers=numbers_for(item, results),
    )


def _finish(results: Results, finish: str) -> Prose:
    book = results.job.rate_book.finishes[finish]
    page = results.content.finishes[book.kind.value]
    return prose(f"finish-{finish}", book.name, page.markdown, results)


def _site_observations(results: Results) -> tuple[SiteObservation, ...]:
    """What will be seen on this job while we work."""
    features = features_of(results)
    return tuple(
        SiteObservation(
            seen=page.front.title,
            that_day=filled(page.markdown, results),
            later=page.front.later,
            speak_up=page.front.speak_up,
        )
        for page in results.content.site_observations.values()
        if features & set(page.front.applies)
    )


def _printed(results: Results) -> str:
    """All texts of content/ that this quote prints, its guide and its terms."""
    content = results.content
    return "\n".join((
        *(page.markdown for page in safety_pages(results)),
        *(page.markdown for page in care_pages(results)),
        *(content.scope[item].markdown for item in results.scope_items()),
        *(page.markdown for page in content.clauses.values()),
        *(page.markdown for page in _questions(results)),
    ))  # fmt: skip
