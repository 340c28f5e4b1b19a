"""One price a square foot against figures worked with a pencil, and against its itemized twin.

The check values are common practice and have no source: 1,500 sq ft at $15.00 all-in, 100 ft of
pool edge at $40.00, stamped at about twice broom. They are no rates of the examples.
"""

from decimal import Decimal

import pytest

from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.sheets.views import CustomerView
from tests.pricing import shop

D = Decimal
EVERYTHING = ["base", "slab", "reinforcement", "joints", "curing"]
STAMPED = {
    **shop.PLAIN, "name": "Stamped", "kind": "stamped_texture", "rate": "$15.00 / sq ft",
    "covers": EVERYTHING,
}  # fmt: skip
BROOM = {**shop.PLAIN, "name": "Broom", "rate": "$7.50 / sq ft", "covers": EVERYTHING}
EDGE = {"edge": shop.rate("$40 / ft", "cast_edge", of="pool edge", applies="asked")}
POOL = {"rectangle": "30 ft x 20 ft", "at": ["15 ft", "10 ft"], "is": "pool"}
ALL_IN = shop.book(EDGE, {"plain": STAMPED, "broom": BROOM})
ITEMIZED = shop.book(
    {
        **EDGE,
        **{item: {**shop.rate("$2.50 / sq ft", item), "name": item} for item in EVERYTHING},
    },
    {
        "plain": {**STAMPED, "covers": [], "rate": "$2.50 / sq ft"},
        "broom": {**BROOM, "covers": [], "rate": "$0.01 / sq ft"},
    },
)
"""The twin of the stamped price: five items and the finish at $2.50 each are $15.00."""


def _deck(**more) -> str:
    """60 ft x 35 ft round a pool of 30 ft x 20 ft: 1,500 sq ft, and 100 ft of edge at the pool."""
    asked = shop.placement("60 ft x 35 ft", include={"edge": "yes"}, take_away=[POOL])
    return shop.job(asked, **more)


def test_1500_sq_ft_at_15_is_22500_and_26500_with_the_edge(tmp_path):
    """1,500 x 15.00 = 22,500.00; 100 x 40.00 = 4,000.00; and no line of nothing beside them."""
    priced = shop.quote(tmp_path, _deck(), rate_book=ALL_IN)
    assert {line.id: line.amount for line in priced.chosen.lines} == {
        "plain.patio": D("22500.00"), "edge.patio": D("4000.00"),
    }  # fmt: skip
    assert priced.chosen.total == D("26500.00")
    assert priced.chosen.by_area == D("17.67")  # 26,500 / 1,500 = 17.666...


def test_stamped_is_about_twice_broom(tmp_path):
    """At half the rate the slab is 11,250.00, and the edge costs what it costs."""
    stamped, broom = shop.quote(
        tmp_path, _deck(compare=["broom"]), rate_book=ALL_IN
    ).finishes  # fmt: skip
    assert (stamped.total, broom.total) == (D("26500.00"), D("15250.00"))


def test_a_job_through_measuring_change_and_payment(tmp_path):
    """20 ft x 10 ft quoted, 21 ft x 10 ft in the forms, one change, the deposit paid.

    200 x 15.00 = 3,000.00, of which 20 % is 600.00 and 60 % is 1,800.00. Measured 210 x 15.00 =
    3,150.00: 150.00 more, with no signature needed, since that is 5 % of the price. A change of
    265.00 makes it 3,415.00; with 600.00 paid, 2,815.00 are open.
    """
    job = shop.job(
        shop.placement("20 ft x 10 ft"),
        accepted={"date": "2026-05-20"},
        paid=[{"payment": "deposit", "date": "2026-05-21", "amount": "$600"}],
        measured={
            "date": "2026-06-08",
            "placements": {"patio": {"add": [{"rectangle": "21 ft x 10 ft"}]}},
        },
        changes=[
            {"number": "1", "date": "2026-06-09", "what": "a step at the door",
             "asked_by": "homeowner", "amount": "$265"}
        ],
    )  # fmt: skip
    contract = shop.results(
        tmp_path, job, rate_book=ALL_IN, company=COMPANY, past_jobs="past_jobs: {}\n"
    ).contract
    assert contract.quoted_total == D("3000.00")
    assert contract.remeasure is not None
    assert (contract.remeasure.change, contract.remeasure.needs_signatures) == (D("150.00"), False)
    assert (contract.total, contract.paid, contract.balance) == (
        D("3415.00"), D("600.00"), D("2815.00"),
    )  # fmt: skip


COMPANY = shop.as_yaml({
    "name": "Test Concrete", "owner": "Wren Abernathy", "address": "1 Test Lane",
    "town": "Harrow Bend",
    "phone": "740-555-0100", "email": "wren@test.example", "holds_days": "30",
    "working_days": ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday"],
    "payments": [
        {"id": "deposit", "when": "when you sign", "share": "20 %"},
        {"id": "pour", "when": "on the day after the pour", "share": "60 %"},
        {"id": "final", "when": "at the end"},
    ],
    "adjustment": {"no_pour_above": "10 %", "reopen_outside": "15 %"},
    "warranty": "two years",
})  # fmt: skip


def test_both_ways_of_pricing_say_the_same_of_the_slab(tmp_path):
    """What is included, how to check it and this job's numbers differ in nothing but money."""
    one, other = (_view(tmp_path, book) for book in (ALL_IN, ITEMIZED))
    assert [_said(item) for item in one.guide.items] == [_said(item) for item in other.guide.items]
    assert (one.price.total, one.price.covers) == (other.price.total, other.price.covers)
    assert one.days.rows == other.days.rows
    assert one.money.worked == other.money.worked
    assert one.price.can_change == other.price.can_change


def _view(folder, book: str) -> CustomerView:
    return customer_view(shop.results(folder, _deck(), rate_book=book))


def _said(item) -> tuple[object, ...]:
    return item.id, item.title, item.what_html, item.why_html, item.check_html, item.numbers


@pytest.mark.parametrize(
    ("sides", "total", "said"),
    [
        ("20 ft x 19.9 ft", "6766.00", True),  # 398.0 x 17.00
        ("20 ft x 20 ft", "5800.00", False),  # 400.0 x 14.50: the border counts as large
        ("20 ft x 20.1 ft", "5829.00", False),  # 402.0 x 14.50
    ],
)
def test_a_small_job_has_its_rate_and_says_why(tmp_path, sides: str, total: str, said: bool):
    """Under 400 sq ft a foot costs $17.00; a sentence tells why, and only there."""
    small = {**STAMPED, "rate": "$14.50 / sq ft",
             "small_job": {"under": "400 sq ft", "rate": "$17.00 / sq ft"}}  # fmt: skip
    made = shop.warned if said else shop.results  # a larger job would be cheaper in total
    results = made(tmp_path, shop.job(shop.placement(sides)),
                   rate_book=shop.book({}, {"plain": small}))  # fmt: skip
    assert results.quote.chosen.total == D(total)
    told = " ".join(customer_view(results).money.small_job)
    why = "It is a small job, so a foot costs more than from 400.0 sq ft up"
    assert (why in told) == said
