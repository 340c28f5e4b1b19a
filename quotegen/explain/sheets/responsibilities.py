"""Work beside ours: what the price leaves out, and who does each."""

from collections.abc import Iterator

from quotegen.explain.results import Results
from quotegen.explain.words.job_features import features_of
from quotegen.explain.words.prose import filled, sentence
from quotegen.explain.words.rows import Row


def excluded_rows(results: Results) -> tuple[Row, ...]:
    """What is not in the price: by the pages of content/, then by the company and the job.

    What the company or the job says of a responsibility comes before what content/ says of it.
    """
    # What the job says of a responsibility replaces what the company says of it.
    excluded = {one.responsibility or one.what: one for one in results.job.not_included}
    rows = (
        Row(name=one.what, text=sentence(one.who), mark=one.responsibility or "")
        for one in excluded.values()
    )
    return (*_of_the_pages(results), *rows)


def _of_the_pages(results: Results) -> Iterator[Row]:
    features, covered = features_of(results), set(results.scope_items())
    typed = {one.responsibility for one in results.job.not_included}
    for page in results.content.responsibilities.values():
        ours = covered & set(page.front.ours)
        if page.front.id not in typed and not ours and features & set(page.front.applies):
            yield Row(
                name=page.front.title, text=filled(page.markdown, results), mark=page.front.id
            )
