"""The phone sheet: for the call about another price. For the owner alone."""

from collections.abc import Iterator

from quotegen.explain.private.other_bid import bid_sections, bid_sums
from quotegen.explain.private.owners_sheet import OwnersSheet, Section, with_content
from quotegen.explain.private.the_room import the_room
from quotegen.explain.results import Results
from quotegen.explain.sheets.paper_head import paper_head
from quotegen.explain.sheets.past_jobs import why
from quotegen.pricing.costs.owner import OwnersFigures
from quotegen.pricing.quoted.discount import taken_off
from quotegen.reading.records import Reference

NEVER_SAID = tuple(f"not_say_{number}" for number in range(1, 7))
ASKED_OF_A_REFERENCE = tuple(f"phone_reference_ask_{number}" for number in range(1, 4))


def phone_sheet(results: Results, owner: OwnersFigures) -> OwnersSheet:
    """Build the phone sheet: the price and its reason first, how far it can go last and folded."""
    job, words, notes = results.job, results.words, owner.job.file.private_notes
    title = words("phone_title", title=job.title, quote=job.quote)
    price = _price(results)
    return OwnersSheet(
        head=paper_head(results, title, job.quote_date),
        lead=(price,) if owner.bids else (price, words("phone_no_bid")),
        sums=tuple(bid_sums(results, bid) for bid in owner.bids),
        facts=((words("cost_notes"), notes),) if notes else (),
        sections=with_content((
            *(section for bid in owner.bids for section in bid_sections(results, bid)),
            Section(id="references", title=words("phone_references"),
                    points=tuple(_references(results, owner.job.to_call)),
                    lines=tuple(_of_references(results, owner.job.to_call))),
            Section(id="answers", title=words("phone_answers"), points=tuple(_answers(results))),
            Section(id="not-say", title=words("phone_not_say"),
                    points=tuple(words(key) for key in NEVER_SAID)),
        )),
        folded=the_room(results, owner),
    )  # fmt: skip


def _price(results: Results) -> str:
    """What to say first: the price, and a discount that it has in it."""
    words, chosen = results.words, results.quote.chosen
    discount = taken_off(chosen.lines)
    return words(
        "phone_price_discounted" if discount else "phone_price",
        price=words.money(chosen.total),
        discount=words.money(discount),
    )


def _answers(results: Results) -> Iterator[str]:
    """Answers to what else is asked on that call: trips, to match a price, a breakdown."""
    words = results.words
    for line in results.lines_for("travel"):
        yield words(
            "phone_travel",
            amount=words.money(line.amount),
            visits=words.count("visits_counted", results.quote.chosen.visits),
        )
    yield words("phone_match")
    yield words("phone_breakdown")


def _of_references(results: Results, to_call: tuple[Reference, ...]) -> Iterator[str]:
    """What to do before a number is given, and what the homeowner may ask there."""
    words = results.words
    if not to_call:
        yield words("phone_no_references")
        return
    yield words("phone_reference_first")
    yield words(
        "phone_reference_ask", questions=" ".join(words(key) for key in ASKED_OF_A_REFERENCE)
    )  # fmt: skip


def _references(results: Results, to_call: tuple[Reference, ...]) -> Iterator[str]:
    words = results.words
    for reference in to_call:
        if contact := reference.contact:
            yield words(
                "phone_reference",
                name=contact.name,
                phone=contact.phone,
                title=reference.title,
                why=why(results, reference),
            )
