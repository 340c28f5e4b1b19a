"""The phone sheet: what is asked on such a call, and every figure again with a pencil."""

import re
from decimal import ROUND_HALF_UP, Decimal

from quotegen.explain.private.cost_sheet import cost_sheet
from quotegen.explain.private.owners_sheet import OwnersSheet
from quotegen.explain.private.phone_sheet import phone_sheet
from tests.explain.examples import example_view
from tests.explain.private.pencil import D, Deck, Sum, cents, least, materials, priced, worked
from tests.explain.private.phone import DECK, deck, deck_sheet, section_of, words_of
from tests.pricing import shop

OURS = Deck(D("1052.2"))
FIRST, SECOND = D(17450), D(26400)


def test_a_breakdown_is_asked_for():
    """H12 and C10: every scope item has its price on the quote, and no cost is among them."""
    shown = example_view(DECK).change.by_scope
    assert len(shown) > 10
    assert all(row.amount.startswith("$") for row in shown)
    assert "every scope item and option has its price" in words_of(deck_sheet())


def test_a_discount_is_asked_for():
    """C6: scope is traded for price. Ways with less work stand before what a discount does."""
    results, owner = deck()
    sheet = phone_sheet(results, owner)
    order = [section.id for section in sheet.sections]
    assert order.index("savings") < order.index("discounts")
    savings = section_of(sheet, "savings").table
    assert savings is not None
    names = [row.name for row in savings.rows]
    assert "Without: Cast edge at the pool" in names
    assert "Digging out and base by others, to our depths" in names
    assert "Trade scope for price first" in section_of(sheet, "discounts").lines[0]


def test_the_way_to_the_site():
    """C11: distance is one line of the price, and there is a sentence for it."""
    results, owner = deck()
    answer = section_of(phone_sheet(results, owner), "answers").points[0]
    assert "Trips are one line, $425.00 for 5 visits" in answer


def test_a_book_without_costs_says_so_on_both_sheets(tmp_path):
    """No costs: both sheets are made, and say what they do not know."""
    made = shop.figured(tmp_path, shop.job(), rate_book=shop.book())
    assert made.results is not None
    assert made.owner is not None
    missing = section_of(cost_sheet(made.results, made.owner, ()), "missing").points
    assert "The rate book has no `costs`" in missing[0]
    walk = section_of(phone_sheet(made.results, made.owner), "walk-away").points
    assert walk[0].startswith("No floor is set")
    assert "does not know everything yet" in walk[-1]
    assert "No other bid is in the job file" in phone_sheet(made.results, made.owner).lead[0]


def _texts(sheet: OwnersSheet) -> str:
    parts = [*sheet.lead]
    for block in sheet.sums:
        parts += [block.title, *block.verdict]
        parts += [text for row in block.rows for text in (row.name, *row.cells)]
    for section in sheet.sections:
        parts += [*section.lines, *section.points]
        for row in section.table.rows if section.table else ():
            parts += [row.name, *row.cells]
    return "\n".join(parts)


def _share(one: Sum) -> str:
    return f"{cents(one.margin / one.price * 1000).quantize(D(1)) / 10:f}".removesuffix(".0")


def _half() -> Deck:
    def half(value: Decimal) -> Decimal:
        return (value / 2).quantize(D("0.1"), rounding=ROUND_HALF_UP)

    return Deck(half(OURS.area), half(OURS.formed), half(OURS.house), half(OURS.pool))


def _items() -> dict[str, Decimal]:
    area = OURS.area
    return {
        "base": cents(area * D("1.75")), "cast edge": 80 * D(38),
        "sealing": cents(area * D("1.05")), "reinforcement": cents(area * D("0.80")),
        "wash": cents(area * D("0.45")), "protection": D(180 + 260),
        "curing": cents(area * D("0.25")), "isolation": cents(D("45.3") * D("2.40")),
    }  # fmt: skip


def test_every_figure():
    """No amount and no share is on the sheet that the pencil does not find."""
    ours, item = worked(OURS), _items()
    left_out = item["cast edge"] + item["sealing"] + item["wash"]
    unsaid = sum((item[k] for k in ("base", "reinforcement", "protection", "curing", "isolation")),
                 D(0))  # fmt: skip
    ways = [
        worked(OURS._replace(finish="broom")), worked(OURS._replace(finish="exposed")),
        worked(OURS._replace(area=D("999.6"))), worked(OURS._replace(area=D("947.0"))),
        worked(OURS._replace(base=False)), worked(OURS._replace(cast_edge=False)),
        worked(OURS._replace(lawn=False)),
    ]  # fmt: skip
    off = [D(500), D(1000), cents(ours.price / 20), cents(ours.price / 10)]
    cut = [Sum(ours.price - less, ours.cost) for less in off]
    half = worked(_half())
    both = Sum(2 * half.price, 2 * half.cost)
    bar = cents(OURS.area * D("1.55")) - cents(OURS.area * D("0.80"))  # in place of wire
    more = 24 * D(46) + bar  # the drain that they include, and their steel
    both_cover = SECOND - ours.price + item["protection"]
    known = [
        ours.price, ours.cost, FIRST, SECOND, ours.price - FIRST, SECOND - ours.price, left_out,
        unsaid, ours.price - FIRST - left_out - unsaid, ours.price - FIRST - left_out,
        item["protection"], both_cover, *item.values(),
        D(425), half.price, both.price, both.price - ours.price, both.margin,
        *least(OURS), max(least(OURS)) - FIRST, ours.price - max(least(OURS)),
        cents(ours.margin / 6), D(100), cents(ours.margin / OURS.area), D("1.50"), *off,
        *(one.price for one in (*ways, *cut)), *(one.margin for one in (*ways, *cut)),
        *(ours.price - one.price for one in ways),
        cents(OURS.area * D("3.85")) - cents(OURS.area * D("4.20")),  # 3-1/2 in in place of 4 in
        cents(OURS.area * D("0.40")) - cents(OURS.area * D("0.80")),  # fiber in place of wire
        bar, 24 * D(46), more, both_cover - more, materials(OURS), ours.margin,
    ]  # fmt: skip
    text = _texts(deck_sheet())
    found = {D(amount.replace(",", "")) for amount in re.findall(r"\$([\d,]+\.\d\d)", text)}
    assert len(found) > 60
    assert found - {abs(amount) for amount in known} == set()
    shares = set(re.findall(r"[\d.]+(?=%)", text))
    assert shares - {_share(one) for one in (ours, *ways, *cut)} == {"12", "10", "5"}


def test_the_pencil_knows_the_price():
    """The pencil comes to the total of the quote, so that it is about the same deck."""
    assert str(priced(OURS)) == "23714.19"
