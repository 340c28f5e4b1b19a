"""The letters that go with the papers: short, with every date to answer by."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from quotegen.explain.results import Results
from quotegen.explain.sheets.area_price import total_area
from quotegen.explain.sheets.combination import agreed_finish
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.price_sheet import (
    date_rows,
    payments_line,
    say_by,
    tax_sentence,
    wish_answer,
)
from quotegen.explain.sheets.views import PaperHead
from quotegen.explain.words.prose import in_a_sentence
from quotegen.explain.words.rows import Row


@dataclass(frozen=True, slots=True, kw_only=True)
class Letter:
    """One letter.

    Attributes:
        name: what it is about, as in its file's name; empty for the quote itself.
        on: the day of what it is about.
        lines: its paragraphs.
        rows: what happens when; empty where it names no days.
        last: its last paragraphs, after the days.
        attached: the names of the files that go with it.
    """

    name: str
    on: date
    head: PaperHead
    subject: str
    greeting: str
    lines: tuple[str, ...]
    rows: tuple[Row, ...]
    last: tuple[str, ...]
    attached: tuple[str, ...]


def letters_of(results: Results) -> tuple[Letter, ...]:
    """The letters that the stage of the job calls for, that of the quote first."""
    typed, contract = results.job.typed, results.contract
    letters = [_quote(results)]
    if contract.accepted_on is None:
        letters.append(_reminder(results))
    if typed.measured is not None:
        letters.append(_short(results, "measured", typed.measured.date, "final-measurement.pdf"))
    if contract.changes:
        letters.append(_short(results, "changes", contract.changes[-1].on, "changes.pdf"))
    if typed.completed is not None:
        letters.append(_short(results, "care", typed.completed.date, "care.pdf"))
    return tuple(letters)


def _quote(results: Results) -> Letter:
    words, job = results.words, results.job
    return _letter(
        results,
        name="",
        lines=tuple(_about_the_quote(results)),
        rows=tuple(date_rows(results)),
        last=(
            say_by(results),
            words("letter_answer", phone=job.company.phone),
            words("letter_attached"),
        ),
        attached=job.company.attach,
    )


def _about_the_quote(results: Results) -> Iterator[str]:
    job, words = results.job, results.words
    if job.company.greeting:
        yield job.company.greeting
    yield words(
        "letter_quote",
        title=in_a_sentence(job.title),
        area=total_area(results),
        site=job.site.address,
    )
    yield words(
        "letter_total",
        finish=agreed_finish(results),
        total=words.money(results.quote.chosen.total),
        tax=tax_sentence(results),
    )
    if job.typed.wish is not None:
        yield wish_answer(results)
    yield payments_line(results)


def _reminder(results: Results) -> Letter:
    words = results.words
    return _letter(
        results,
        name="reminder",
        lines=(words("letter_reminder", title=in_a_sentence(results.job.title)),
               say_by(results),
               words("letter_answer", phone=results.job.company.phone)),
    )  # fmt: skip


def _short(results: Results, name: str, on: date, attached: str) -> Letter:
    said = results.words(f"letter_{name}", title=in_a_sentence(results.job.title))
    answer = results.words("letter_answer", phone=results.job.company.phone)
    return _letter(results, name=name, on=on, lines=(said, answer), attached=(attached,))


def _letter(
    results: Results,
    *,
    name: str,
    on: date | None = None,
    lines: tuple[str, ...],
    rows: tuple[Row, ...] = (),
    last: tuple[str, ...] = (),
    attached: tuple[str, ...] = (),
) -> Letter:
    job, words = results.job, results.words
    on = on or job.quote_date
    subject = words(
        f"letter_subject_{name or 'quote'}",
        quote=job.quote, title=in_a_sentence(job.title), site=job.site.address,
    )  # fmt: skip
    called = job.customer.first_names or job.customer.name
    return Letter(
        name=name,
        on=on,
        head=paper_head(results, subject, on),
        subject=subject,
        greeting=words("letter_greeting", customer=called),
        lines=lines,
        rows=rows,
        last=last,
        attached=attached,
    )
