"""The running contract: numbered changes run the total on, each from the one before."""

from decimal import Decimal

from quotegen.money import total
from tests.pricing import shop
from tests.pricing.signed import BOOK, QUOTED, RATES, contract, measured


def change(number: int, **more: str) -> dict[str, str]:
    """Return one change order as typed."""
    base = {"number": str(number), "date": "2026-06-10", "what": "a change", "asked_by": "you"}
    return base | more


def test_running_total(tmp_path):
    """A rate of the book, a sum, and a sum taken off: 1,100 + 400 + 75.50 - 50."""
    made = contract(
        tmp_path,
        accepted={"date": "2026-05-20"},
        changes=[
            change(1, rate="step", quantity="2"),
            change(2, amount="$75.50", days="1"),
            change(3, amount="-$50"),
        ],
    )
    assert [str(c.amount) for c in made.changes] == ["400.00", "75.50", "-50.00"]
    assert [str(c.previous_total) for c in made.changes] == [QUOTED, "1500.00", "1575.50"]
    assert (str(made.total), made.extra_days) == ("1525.50", 1)
    for one in made.changes:
        assert total(tuple(p.after for p in one.payments)) == one.revised_total


def test_after_measuring(tmp_path):
    """Changes start from the measured total."""
    made = contract(
        tmp_path,
        accepted={"date": "2026-05-20"},
        measured=measured("210"),
        changes=[change(1, amount="$70")],
    )
    assert str(made.total) == "1200.00"


def test_a_change_that_was_signed_before_measuring(tmp_path):
    """It keeps the totals that were signed; the measuring goes on from them, later changes from it.

    By hand: 1,100 + 70 = 1,170; 10 sq ft more at $3, 1,200; a step taken out again, 1,000. The
    first payment stays a tenth of the quote; what is left open after each takes the rest.
    """
    made = contract(
        tmp_path,
        accepted={"date": "2026-05-20"},
        measured=measured("210"),
        changes=[
            change(1, date="2026-06-08", amount="$70"),
            change(2, date="2026-06-09", amount="-$200"),
        ],
    )
    assert made.remeasure is not None
    runs = [(str(c.previous_total), str(c.revised_total)) for c in made.changes]
    assert runs == [("1100.00", "1170.00"), ("1200.00", "1000.00")]
    adjusted = made.remeasure
    assert (str(adjusted.previous_total), str(adjusted.revised_total)) == ("1170.00", "1200.00")
    assert (str(adjusted.changed_before), str(adjusted.change)) == ("70.00", "30.00")
    assert adjusted.unmoved + total(tuple(line.before for line in adjusted.lines)) == 1100
    assert [p.before for p in adjusted.payments] == [p.after for p in made.changes[0].payments]
    assert total(tuple(p.after for p in adjusted.payments)) == adjusted.revised_total
    assert str(made.total) == "1000.00"


def test_accepted_with_another_finish_and_an_extra(tmp_path):
    """The contract is on what was accepted, not on what the quote put first."""
    book = shop.book(RATES | shop.RINSE_AND_FILM, {"plain": shop.PLAIN, "fancy": shop.FANCY})
    job = shop.job(
        compare=["fancy"],
        extras={"step": "1"},
        accepted={"date": "2026-05-20", "finish": "fancy", "extras": ["step"]},
    )
    results = shop.results(tmp_path, job, rate_book=book)
    fancy = results.quote.finishes[1]
    assert results.contract.quoted_total == fancy.total + Decimal(200)


def test_a_change_is_its_own_sum(tmp_path):
    """A change of $205 brings $1,100 to $1,305, though the company rounds its totals to $10."""
    change = {"number": 1, "date": "2026-06-10", "what": "A step", "asked_by": "Wren",
              "amount": "$205"}  # fmt: skip
    job = shop.job(accepted={"date": "2026-05-20"}, changes=[change])
    company = shop.company(round_total_to="$10")
    made = shop.results(tmp_path, job, rate_book=BOOK, company=company).contract
    assert (str(made.quoted_total), str(made.total)) == ("1100.00", "1305.00")
