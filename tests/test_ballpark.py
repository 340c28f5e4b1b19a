"""The first visit: a ballpark from a paced size."""

from pathlib import Path

import pytest

from tests.messages.command import Command
from tests.world import EXAMPLES

ASK = ("ballpark", "--size", "24 ft x 16 ft", "--finish", "broom")


def test_the_ladder_is_printed_and_written(command: Command):
    """Each finish has a row; what is printed is what is written, with where it lies."""
    ran = command(*ASK)
    text = Path("out/ballpark/ballpark.txt").read_text(encoding="utf-8")
    assert (ran.code, ran.err) == (0, "")
    assert ran.out == text + "out/ballpark/\n  ballpark.txt\n"
    for said in ("about 384.0 sq ft", "5% (common practice)", "346.6 sq ft to 423.4 sq ft",
                 "$5,100.00 to   $6,100.00  <- asked", "Slate texture", "no offer",
                 "no seasonal line, since no day was given",
                 "Blankets and warm water for a cold pour: $0.65 / sq ft"):  # fmt: skip
        assert said in text


def test_a_winter_day_brings_its_lines(command: Command):
    """With a date the seasonal lines are in the range, and no longer among what may be added."""
    text = command(*ASK, "--date", "2026-12-01").out
    assert "\n  Blankets and warm water for a cold pour\n" in text
    assert "$5,400.00" in text


def test_a_share_may_be_added_and_a_rounding_covers_nothing(command: Command):
    """A card fee is named with its share; what makes the total round is nothing that is bought."""
    all_in = str(EXAMPLES.parent / "all_in")
    text = command(*ASK, "--company", all_in).out
    assert "\n  Paying by card: 3%\n" in text
    assert "Rounding" not in text


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("ballpark", "--size", "24 x 16", "--finish", "broom"), 2, "`24` has no unit"),
        (("ballpark", "--finish", "broom"), 2, "Missing option '--size'"),
        (("ballpark", "--size", "24 ft x 16 ft", "--finish", "brom"), 1, "did you mean `broom`?"),
        ((*ASK, "--distance", "14 yards"), 2, "--distance: `14 yards` is not a distance"),
        ((*ASK, "--company", "elsewhere"), 1, "there is no `rate-book.yaml`"),
        ((*ASK, "--date", "2026-01-01"), 1, "before the rate book begins to hold"),
        (("figure", "job.yaml", "--json", "--working"), 2, "choose --json or --working"),
    ],
)
def test_what_is_wrong_is_said(command: Command, words: tuple[str, ...], code: int, said: str):
    """Wrong usage leaves with 2, faults of the files with 1, and nothing is written."""
    ran = command(*words)
    assert (ran.code, said in ran.err) == (code, True), ran.err
    assert not Path("out").exists()


def test_the_working_is_printed(command: Command):
    """`figure --working` ends with the price, and names a place in the rate book."""
    ran = command("figure", "job.yaml", "--working")
    assert ran.code == 0
    assert ran.out.splitlines()[-1].startswith("The price: ")
    assert "[rate-book.yaml:" in ran.out
