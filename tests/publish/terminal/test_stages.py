"""How the stages of a job are said, by what is asked and by where it is read."""

import sys

import pytest

from quotegen.publish.terminal.stages import Stages


@pytest.mark.parametrize(
    ("quiet", "verbose", "terminal", "said"),
    [
        (False, False, True, Stages.MOVING),
        (False, False, False, Stages.LINES),
        (True, False, True, Stages.UNSAID),
        (True, True, False, Stages.UNSAID),
        (False, True, True, Stages.SECONDS),
        (False, True, False, Stages.SECONDS),
    ],
)
def test_a_terminal_moves_and_a_pipe_has_lines(
    monkeypatch: pytest.MonkeyPatch, quiet: bool, verbose: bool, terminal: bool, said: Stages
):
    """-q is stronger than -v, and both say the same wherever they are read."""
    monkeypatch.setattr(sys.stderr, "isatty", lambda: terminal)
    assert Stages.of_slow_work(quiet=quiet, verbose=verbose) is said


@pytest.mark.parametrize(
    ("stages", "lines"),
    [(Stages.UNSAID, ""), (Stages.LINES, "1 read\n2 measure\n"),
     (Stages.SECONDS, "1 read: 0.00 s\n2 measure: 0.00 s\n")],
)  # fmt: skip
def test_a_stage_is_one_line(capsys: pytest.CaptureFixture[str], stages: Stages, lines: str):
    """It stands on the error stream as it begins, or with its seconds as it ends."""
    with stages.said() as announce:
        announce("1 read")
        announce("2 measure")
    captured = capsys.readouterr()
    assert (captured.out, captured.err) == ("", lines)
