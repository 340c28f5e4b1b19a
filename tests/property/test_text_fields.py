"""What is typed comes back as it was typed, and nothing that can be typed breaks the reader."""

import random
import tempfile
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic_core import PydanticCustomError

from quotegen.quantity import tape
from quotegen.reading.fields import text_fields
from quotegen.reading.read import read_job
from quotegen.reading.records import ReadJob
from tests.messages.problem_codes import codes
from tests.pricing.shop import shared
from tests.property.effort import one_in
from tests.property.hostile_files import slipped
from tests.world import COMPANY_FILES, EXAMPLES, write_world

PARSERS: tuple[Callable[[str], object], ...] = (
    text_fields.parse_length, text_fields.parse_positive_length, text_fields.parse_size,
    text_fields.parse_rate, text_fields.parse_amount, text_fields.parse_count,
    text_fields.parse_share, text_fields.parse_angle_deg, text_fields.parse_cuyd,
    text_fields.parse_slope, text_fields.parse_date, text_fields.parse_whole,
    text_fields.parse_days, text_fields.parse_yes_no,
)  # fmt: skip
BITS = st.sampled_from(
    ["0", "7", "24", "9" * 400, "٣", "½", "1/2", "-", "1/0", ".5", "$", ",", " ", "  ", "ft", "in",
     "'", '"', "m", "mm", "sq ft", "cu yd", "/", "per ft", "%", "deg", "x", "yes", "each",
     "{found}", "2026", "-05-14", "²", "\t", "\n", "e3", "nan", "∞"]
)  # fmt: skip
TYPED = st.text(max_size=30) | st.lists(BITS, max_size=8).map("".join)
JOBS = sorted((EXAMPLES / "jobs").iterdir())


class TestWhatIsPrintedCanBeTyped:
    """A length or a sum of money that quotegen prints can be typed again, unchanged."""

    @given(st.integers(-16 * 12 * 9_999, 16 * 12 * 9_999))
    def test_tape(self, sixteenths: int):
        """Every mark of a tape, to a sixteenth of an inch, parses back to itself."""
        feet = Fraction(sixteenths, 16 * 12)
        assert text_fields.parse_length(tape(feet)).feet == feet

    @given(st.decimals(0, 99_999_999, places=2))
    def test_money(self, amount):
        """A sum in cents with its thousands marked parses back to itself."""
        assert text_fields.parse_amount(f"${amount:,.2f}") == amount

    @given(st.integers(0, 99_999), st.integers(1, 99_999))
    def test_inches_as_fractions(self, top: int, bottom: int):
        """A fraction of an inch is kept exactly, however odd."""
        assert text_fields.parse_length(f"{top}/{bottom} in").inches == Fraction(top, bottom)


def _fault(parser: Callable[[str], object], typed: str) -> PydanticCustomError | None:
    try:
        parser(typed)
    except PydanticCustomError as fault:
        return fault
    return None


class TestAnyTextIsReadOrRefused:
    """A field takes a text or says why not; it never fails in any other way."""

    @given(TYPED)
    @pytest.mark.parametrize("parser", PARSERS, ids=lambda parser: parser.__name__)
    def test_parse(self, parser: Callable[[str], object], typed: str):
        """Whatever is typed, the only fault is one of ours, and it is short."""
        fault = _fault(parser, typed)
        if fault is not None:
            assert fault.type in codes()
            assert len(fault.message()) < 250


class TestAnyFileIsReadOrRefused:
    """A job file becomes a job or a list of problems with their places; nothing raises."""

    @one_in(2)
    @given(st.integers(0, 2**32), st.sampled_from(JOBS), st.sampled_from(("job", *COMPANY_FILES)))
    def test_slips_in_a_file(self, seed: int, job: Path, name: str):
        """A few random slips in an example job, or in one of the company's files."""
        chance = random.Random(seed)
        original = job if name == "job" else EXAMPLES / name
        spoilt = slipped(original.read_text(encoding="utf-8"), chance)
        with tempfile.TemporaryDirectory() as folder:
            path = write_world(Path(folder), job.read_text(encoding="utf-8"))
            (path if name == "job" else Path(folder) / name).write_text(spoilt, encoding="utf-8")
            read = read_job(path, frozenset(shared().content.scope))
        problems = read.problems if isinstance(read, ReadJob) else read
        assert isinstance(read, ReadJob) or problems
        assert {p.code for p in problems} <= set(codes())
        assert all(p.source.line > 0 and p.source.column > 0 and p.message for p in problems)
