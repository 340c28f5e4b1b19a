"""The figures of a job in the terminal."""

from pathlib import Path

import pytest

from quotegen.publish.terminal.tables import print_figures
from tests.pricing import shop
from tests.world import EXAMPLES, PATIO


def test_what_was_typed_is_printed_letter_by_letter(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
):
    """Brackets and colons in a title or a finish are no command to the terminal."""
    title, name = "Patio [rear] :house: [/]", "Broom [light]"
    job = PATIO.replace("title: Patio", f"title: '{title}'")
    book = (EXAMPLES / "rate-book.yaml").read_text(encoding="utf-8")
    book = book.replace("name: Broom\n", f"name: '{name}'\n", 1)
    print_figures(shop.results(tmp_path, job, rate_book=book))
    printed = capsys.readouterr().out
    assert printed.startswith(f"\n{title}, quote T-1, revision 1\n")
    assert f"Lines, {name}" in printed
