"""The phone sheet: what is asked on such a call, and every figure again with a pencil."""

import re
from decimal import ROUND_HALF_UP, Decimal

from quotegen.explain.private.phone_sheet import phone_sheet
from tests.explain.examples import example_view
from tests.explain.private.pencil import D, Deck, Sum, cents, least, materials, priced, worked
from tests.explain.private.phone import (
    ALL_IN,
    DECK,
    SMALL,
    all_in,
    deck,
    deck_sheet,
    figured,
    section_of,
    words_of,
)
from tests.pricing import shop

OURS = Deck(D("833.0"))
FIRST, SECOND = D(14800), D(22600)


def test_a_breakdown_is_asked_for():
    """H12 and C10: every line has its price on the quote, and no cost is among them."""
    shown = [line for group in example_view(DECK).money.groups for line in group.lines]
    assert len(shown) > 10
    assert all(row.amount.startswith("$") for row in shown)
    assert "every line and option has its price" in words_of(deck_sheet())


def test_the_way_to_the_site():
    """C11: distance is one line of the price, and there is a sentence for it."""
    results, owner = deck()
    answer = section_of(phone_sheet(results, owner), "answers").points[0]
    assert "Trips are one line, $425.00 for 5 visits" in answer


def test_it_opens_with_the_price_and_its_reason():
    """The first line is to be said: the price, and why it is that. How far it can go is folded."""
    sheet = deck_sheet()
    (first,) = sheet.lead
    assert first.startswith("“Our price is $20,126.13. This is what it costs to do it so that I ")
    assert first.endswith("never have to come back.”")
    order = [section.id for section in sheet.sections]
    assert order == ["first-ask", "first-ours", "second-ask", "second-ours", "second-why-low",
                     "references", "answers", "not-say"]  # fmt: skip
    assert sheet.folded is not None
    assert [one.id for one in sheet.folded.sections] == ["walk-away", "savings", "discounts"]
    above = "\n".join(text for one in sheet.sections for text in (*one.lines, *one.points))
    assert f"{max(least(OURS)):,}" not in above


def test_a_discount_of_ours_is_named_with_the_price():
    """$13,909.10 of work less $250, made round: whoever asks for a discount is told of that one."""
    sheet = phone_sheet(*all_in(ALL_IN))
    assert sheet.lead[0].startswith(
        "“Our price is $13,660.00, and it has a discount of $250.00 in it. This is what it costs "
    )  # fmt: skip


def test_without_another_bid_it_asks_for_one(tmp_path):
    """No bid is typed: the price comes first all the same, then what to ask."""
    sheet = phone_sheet(*figured(tmp_path, SMALL))
    assert sheet.lead[0].startswith("“Our price is $")
    assert "No other bid is in the job file" in sheet.lead[1]
    assert sheet.sums == ()


PAST = """\
past_jobs:
"""
ONE = """\
  past{n}:
    {{title: Past {n}, finished: 20{n}-06-01, town: Elm, use: {use}, finish: {finish},
     area_sqft: 300, shows: wear, contact: {{name: Owner {n}, phone: 740-555-01{n}}},
     consent: {{given: 2025-01-01, shows: [{shows}]}}}}
"""


def _past(*jobs: tuple[int, str, str, str]) -> str:
    return PAST + "".join(
        ONE.format(n=n, use=use, finish=finish, shows=shows) for n, use, finish, shows in jobs
    )


def test_references_to_call(tmp_path):
    """Up to eight who agreed to be called, the same finish first, then the use; what to ask them.

    Past 23 agreed to its town alone and is not named.
    """
    drives = [(n, "drive", "stamped_texture", "contact") for n in range(10, 20)]
    world = _past((23, "patio", "broom", "town"), (22, "walk", "broom", "contact"),
                  (21, "patio", "stamped_texture", "contact"), *drives)  # fmt: skip
    made = shop.figured(tmp_path, SMALL, past_jobs=world)
    assert made.results is not None
    assert made.owner is not None
    found = section_of(phone_sheet(made.results, made.owner), "references")
    named = [point.split(".")[0] for point in found.points]
    assert named[:3] == [
        "Owner 22, 740-555-0122",
        "Owner 21, 740-555-0121",
        "Owner 19, 740-555-0119",
    ]
    assert len(named) == 8
    assert found.lines[1].endswith(
        "“How does it look now?” “Did the price hold?” “Did they come on the days that they named?”"
    )


def test_no_reference_to_call(tmp_path):
    """Nobody agreed to be called: the sheet says so, and names nobody."""
    made = shop.figured(tmp_path, SMALL, past_jobs=_past((22, "patio", "broom", "town")))
    assert made.results is not None
    assert made.owner is not None
    found = section_of(phone_sheet(made.results, made.owner), "references")
    assert found.points == ()
    assert found.lines[0].startswith("No past customer has agreed to be called")


def _share(one: Sum) -> str:
    return f"{cents(one.margin / one.price * 1000).quantize(D(1)) / 10:f}".removesuffix(".0")


def _half() -> Deck:
    def half(value: Decimal) -> Decimal:
        return (value / 2).quantize(D("0.1"), rounding=ROUND_HALF_UP)

    return Deck(half(OURS.area), half(OURS.formed), half(OURS.house), half(OURS.pool))


def _items() -> dict[str, Decimal]:
    area = OURS.area
    return {
        "base": cents(area * D("1.75")), "cast edge": cents(D("65.7") * 38),
        "sealing": cents(area * D("1.05")), "reinforcement": cents(area * D("0.80")),
        "wash": cents(area * D("0.45")), "protection": D(180 + 260),
        "curing": cents(area * D("0.25")), "isolation": cents(D("38.8") * D("2.40")),
    }  # fmt: skip


def test_every_figure():
    """No amount and no share is on the sheet that the pencil does not find."""
    ours, item = worked(OURS), _items()
    left_out = item["cast edge"] + item["sealing"] + item["wash"]
    unsaid = sum((item[k] for k in ("base", "protection", "curing", "isolation")), D(0))
    ways = [
        worked(OURS._replace(finish="broom")), worked(OURS._replace(finish="exposed")),
        worked(OURS._replace(area=D("791.4"))), worked(OURS._replace(area=D("749.7"))),
        worked(OURS._replace(base=False)), worked(OURS._replace(cast_edge=False)),
        worked(OURS._replace(lawn=False)),
    ]  # fmt: skip
    off = [D(500), D(1000), cents(ours.price / 20), cents(ours.price / 10)]
    cut = [Sum(ours.price - less, ours.cost) for less in off]
    half = worked(_half())
    both = Sum(2 * half.price, 2 * half.cost)
    bar = cents(OURS.area * D("1.55")) - cents(OURS.area * D("0.80"))  # in place of wire
    more = 16 * D(46) + bar  # the drain that they include, and their steel
    lesser = cents(OURS.area * D("4.20")) - cents(OURS.area * D("3.85"))  # 3-1/2 in for 4 in
    lesser += cents(OURS.area * D("0.80")) - cents(OURS.area * D("0.40"))  # fiber for wire
    both_cover = SECOND - ours.price + item["protection"]
    known = [
        ours.price, ours.cost, FIRST, SECOND, ours.price - FIRST, SECOND - ours.price, left_out,
        unsaid, lesser, ours.price - FIRST - left_out - unsaid - lesser, *item.values(),
        worked(OURS._replace(finish="broom")).price,
        D(425), half.price, both.price, both.price - ours.price, both.margin,
        *least(OURS), max(least(OURS)) - FIRST, ours.price - max(least(OURS)),
        cents(ours.margin / 6), D(100), cents(ours.margin / OURS.area), D("1.50"), *off,
        *(one.price for one in (*ways, *cut)), *(one.margin for one in (*ways, *cut)),
        *(ours.price - one.price for one in ways),
        cents(OURS.area * D("3.85")) - cents(OURS.area * D("4.20")),  # 3-1/2 in in place of 4 in
        cents(OURS.area * D("0.40")) - cents(OURS.area * D("0.80")),  # fiber in place of wire
        bar, 16 * D(46), more, both_cover - more, materials(OURS), ours.margin,
    ]  # fmt: skip
    text = words_of(deck_sheet())
    found = {D(amount.replace(",", "")) for amount in re.findall(r"\$([\d,]+\.\d\d)", text)}
    assert len(found) > 60
    assert found - {abs(amount) for amount in known} == set()
    shares = set(re.findall(r"[\d.]+(?=%)", text))
    assert shares - {_share(one) for one in (ours, *ways, *cut)} == {"12", "10", "5"}


def test_the_pencil_knows_the_price():
    """The pencil comes to the total of the quote, so that it is about the same deck."""
    assert str(priced(OURS)) == "20126.13"
