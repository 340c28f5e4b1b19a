"""The company file against the rate book."""

from pathlib import Path

import pytest

from tests.reading.changed import codes_after


@pytest.mark.parametrize(("visit", "codes"), [("form", []), ("forms", ["unknown-visit"])])
def test_a_payment_falls_due_at_a_visit_of_the_book(tmp_path: Path, visit: str, codes: list[str]):
    """The company's terms and the book name the same visits."""
    assert (
        codes_after(tmp_path, company=("share: 10 %", f"share: 10 %, at_visit: {visit}")) == codes
    )
