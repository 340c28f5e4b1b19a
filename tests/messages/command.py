"""Runs the command line in this process, as a person would type it."""

from dataclasses import dataclass
from pathlib import Path

import pytest

from quotegen import cli


@dataclass(frozen=True, slots=True, kw_only=True)
class Ran:
    """What a command left behind."""

    code: int
    out: str
    err: str


class Command:
    """Runs a command in the current folder and keeps what it printed."""

    def __init__(self, patch: pytest.MonkeyPatch, captured: pytest.CaptureFixture[str]) -> None:
        self._patch, self._captured = patch, captured

    def __call__(self, *words: str) -> Ran:
        self._captured.readouterr()
        self._patch.setattr("sys.argv", ["quotegen", *words])
        with pytest.raises(SystemExit) as left:
            cli.main()
        printed = self._captured.readouterr()
        assert isinstance(left.value.code, int)
        return Ran(code=left.value.code, out=printed.out, err=printed.err)


def files_in(folder: Path) -> dict[str, bytes]:
    """Every file below a folder, hidden ones too; a folder counts as an empty file."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() if path.is_file() else b""
        for path in folder.rglob("*")
    }
