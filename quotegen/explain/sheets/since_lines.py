"""What moved since the revision that was sent before, in words and money."""

from collections.abc import Iterator

from quotegen.explain.results import Results
from quotegen.pricing.contract.since_issued import MovedLine, SinceIssued
from quotegen.reading.files.company import Show


def since_lines(results: Results) -> tuple[str, ...]:
    """Say the price then and now, and each line that moved; nothing on a first revision.

    A company that does not show its lines shows none here.
    """
    since = results.since
    if since is None:
        return ()
    return (*_price(results, since), *_lines(results, since))


def _price(results: Results, since: SinceIssued) -> Iterator[str]:
    words = results.words
    told = {"revision": str(since.revision), "day": words.day(since.on)}
    if not since.difference:
        yield words("since_same", total=words.money(since.after), **told)
    else:
        yield words(
            "since_moved",
            before=words.money(since.before),
            after=words.money(since.after),
            difference=words.signed_money(since.difference),
            **told,
        )
    if since.finish_before:
        now = results.quote.chosen.name
        yield words("since_finish", before=since.finish_before, after=now)
    if since.others_moved and len(results.quote.finishes) > 1:
        yield words("since_others")


def _lines(results: Results, since: SinceIssued) -> Iterator[str]:
    if results.job.company.show is Show.LINES:
        yield from (_line(results, line) for line in since.lines)


def _line(results: Results, line: MovedLine) -> str:
    words = results.words
    names = {p.id: p.name for p in results.job.placements}
    where = names.get(line.placement or "", line.placement)
    name = words("since_where", name=line.name, where=where) if where else line.name
    if line.before is None and line.after is not None:
        return words("since_new", name=name, after=words.money(line.after))
    if line.after is None and line.before is not None:
        return words("since_gone", name=name, before=words.money(line.before))
    before, after = (words.money(one) for one in (line.before, line.after) if one is not None)
    return words("since_line", name=name, before=before, after=after)
