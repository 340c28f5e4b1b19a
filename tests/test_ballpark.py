"""The first visit: a ballpark from a paced size."""

import re
import subprocess
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
                 "$5,100.00  $6,100.00  <-", "Slate texture", "no offer",
                 "no seasonal line, since no day was given"):  # fmt: skip
        assert said in text
    assert re.search(r"Blankets and warm water for a cold pour +\$0.65 / sq ft", text)


def test_an_area_with_its_pool_edge(command: Command):
    """640 sq ft with 96 ft at a pool, by hand from the book that prices all in.

    Low: 640 x 0.95^2 = 577.6 sq ft at $9.40 and 91.2 ft at $41, beside the trip; each between
    what is said from the least and the most area and edge.
    """
    ask = ("ballpark", "--use", "pool deck", "--company", str(EXAMPLES.parent / "all_in"))
    bare, edged = (
        command(*ask, "--area", "640 sq ft", *more).out for more in ((), ("--pool-edge", "96 ft"))
    )
    low, high = (
        [int(sum_.replace(",", "")) for sum_ in re.findall(r"\$([\d,]+)\.00", line)]
        for line in (_row(bare, "Broom"), _row(edged, "Broom"))
    )
    assert "577.6 sq ft to 705.6 sq ft" in bare
    assert high[0] - low[0] in range(3_600, 3_900)  # 91.2 ft x $41 = $3,739.20, to whole hundreds
    assert high[1] - low[1] in range(4_000, 4_300)  # 100.8 ft x $41 = $4,132.80
    assert "Cast edge at the pool" not in edged.partition("Not in it")[2]


def test_pieces_are_one_slab(command: Command):
    """Two rectangles count as their area together, and no finish need be named."""
    text = command("ballpark", "--size", "20 ft x 16 ft", "--size", "10 ft x 6 ft").out
    assert "about 380.0 sq ft" in text
    assert "square of that area" in text
    assert "<-" not in text


def test_the_page_is_one_page(command: Command):
    """It is printed where it was asked for, and a file that lies there is left alone."""
    ran = command(*ASK, "--page", "truck.pdf")
    assert (ran.code, ran.out.splitlines()[-1]) == (0, "truck.pdf")
    pages = subprocess.run(["pdfinfo", "truck.pdf"], capture_output=True, text=True, check=True)
    assert re.search(r"Pages: +1\n", pages.stdout)
    again = command(*ASK, "--page", "truck.pdf")
    assert (again.code, "is there already" in again.err) == (2, True)


def _row(text: str, name: str) -> str:
    return next(line for line in text.splitlines() if line.startswith(f"  {name} "))


def test_a_winter_day_brings_its_lines(command: Command):
    """With a date the seasonal lines are in the range, and no longer among what may be added."""
    text = command(*ASK, "--date", "2026-12-01").out
    assert "; Blankets and warm water for a cold pour; " in text
    assert "$5,400.00" in text


def test_a_share_may_be_added_and_a_rounding_covers_nothing(command: Command):
    """A card fee is named with its share; what makes the total round is nothing that is bought."""
    all_in = str(EXAMPLES.parent / "all_in")
    text = command(*ASK, "--company", all_in).out
    assert re.search(r"\n  Paying by card +3%\n", text)
    assert "Rounding" not in text


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("ballpark", "--size", "24 x 16", "--finish", "broom"), 2, "`24` has no unit"),
        (("ballpark", "--finish", "broom"), 2, "type either --size"),
        (("ballpark", "--size", "24 ft x 16 ft", "--finish", "brom"), 1, "did you mean `broom`?"),
        ((*ASK, "--distance", "14 yards"), 2, "--distance: `14 yards` is not a distance"),
        ((*ASK, "--company", "elsewhere"), 2, "'elsewhere' does not exist"),
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
