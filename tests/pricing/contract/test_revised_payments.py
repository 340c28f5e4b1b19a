"""Revised payments: what is already paid stays paid, and a deposit is not raised."""

from tests.pricing.signed import contract, measured


def test_paid_stays_paid(tmp_path):
    """A payment that came in keeps its sum, even where it is not what was asked."""
    made = contract(
        tmp_path,
        paid=[{"payment": "deposit", "date": "2026-05-20", "amount": "$95.00"}],
        measured=measured("300"),
    )
    assert made.remeasure is not None
    first = made.remeasure.payments[0]
    assert (str(first.after), str(first.paid)) == ("95.00", "95.00")
    assert (str(made.paid), str(made.balance)) == ("95.00", "1305.00")


def test_a_deposit_is_not_raised(tmp_path):
    """The total rises by $300; the unpaid deposit stays at its $110.00."""
    adjusted = contract(tmp_path, measured=measured("300")).remeasure
    assert adjusted is not None
    assert str(adjusted.payments[0].after) == "110.00"


def test_a_deposit_may_fall(tmp_path):
    """A smaller job asks for a smaller deposit."""
    adjusted = contract(tmp_path, measured=measured("100")).remeasure
    assert adjusted is not None
    assert str(adjusted.payments[0].after) == "80.00"
