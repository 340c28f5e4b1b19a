"""The one writer: whole or not at all."""

import errno
import os
from collections.abc import Callable
from pathlib import Path

import pytest

from quotegen.publish.write import write

OLD = {"customer/quote.html": b"old quote", "private/figures.json": b"{}"}
NEW = {"customer/quote.html": b"new quote", "customer/quote.pdf": b"%PDF", "visits.ics": b""}


def _tree(folder: Path) -> dict[str, bytes]:
    """Return every file below a folder, hidden ones and all, and every empty folder."""
    found = {}
    for path in sorted(folder.rglob("*")):
        name = path.relative_to(folder).as_posix()
        if path.is_file():
            found[name] = path.read_bytes()
        elif not any(path.iterdir()):
            found[f"{name}/"] = b""
    return found


def _under(target: str, files: dict[str, bytes]) -> dict[str, bytes]:
    return {f"{target}/{name}": data for name, data in files.items()}


@pytest.fixture
def out(tmp_path: Path) -> Path:
    """Return an output folder that holds one old package."""
    write(tmp_path / "T-1", OLD)
    return tmp_path


def test_a_new_folder(tmp_path):
    """A package goes to its folder, and the folders above are made."""
    write(tmp_path / "out" / "T-1", NEW)
    assert _tree(tmp_path) == _under("out/T-1", NEW)


def test_swapped_in(out: Path):
    """A new package takes the place of the old one: no old file stays, no other folder is left."""
    write(out / "T-1", NEW)
    assert _tree(out) == _under("T-1", NEW)


def test_others_may_read_it(out: Path):
    """The folder can be opened by others, as any folder that a person makes."""
    write(out / "T-1", NEW)
    assert (out / "T-1").stat().st_mode & 0o755 == 0o755


def test_the_other_packages_stay(out: Path):
    """Writing one package touches no other."""
    write(out / "T-2", NEW)
    assert _tree(out) == _under("T-1", OLD) | _under("T-2", NEW)


class TestFailure:
    """Whatever goes wrong, what stood there stands there still, byte for byte."""

    @pytest.mark.parametrize("fails_at", range(len(NEW)))
    @pytest.mark.parametrize("error", [errno.ENOSPC, errno.EACCES, errno.EIO])
    def test_a_file_cannot_be_written(self, out: Path, monkeypatch, fails_at: int, error: int):
        """The disk is full, at the first file or the last: the old package is unchanged."""
        files = _failing(Path.write_bytes, fails_at, OSError(error, os.strerror(error)))
        monkeypatch.setattr(Path, "write_bytes", files)
        with pytest.raises(OSError) as caught:  # noqa: PT011 - the number says which
            write(out / "T-1", NEW)
        assert caught.value.errno == error
        assert _tree(out) == _under("T-1", OLD)

    def test_half_a_file_is_not_left(self, out: Path, monkeypatch):
        """A disk that fills up in the middle of a file leaves no piece of it."""

        def half(path: Path, data: bytes) -> int:
            with path.open("wb") as file:
                file.write(data[: len(data) // 2])
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

        monkeypatch.setattr(Path, "write_bytes", half)
        with pytest.raises(OSError, match="No space left"):
            write(out / "T-1", NEW)
        assert _tree(out) == _under("T-1", OLD)

    @pytest.mark.parametrize("fails_at", [0, 1])
    @pytest.mark.parametrize("error", [OSError(errno.EBUSY, "busy"), KeyboardInterrupt()])
    def test_the_swap_fails(self, out: Path, monkeypatch, fails_at: int, error: BaseException):
        """Moving the old one aside fails, or moving the new one in: the old one is back."""
        monkeypatch.setattr(Path, "replace", _failing(Path.replace, fails_at, error))
        with pytest.raises(type(error)):
            write(out / "T-1", NEW)
        assert _tree(out) == _under("T-1", OLD)

    def test_the_old_one_is_never_deleted_unreplaced(self, out: Path, monkeypatch):
        """Even if it can be neither replaced nor put back, the old package is still on the disk."""
        real = Path.replace
        calls = iter(range(9))

        def only_the_first(source: Path, target: Path) -> Path:
            if next(calls):
                raise OSError(errno.EIO, os.strerror(errno.EIO))
            return real(source, target)

        monkeypatch.setattr(Path, "replace", only_the_first)
        with pytest.raises(OSError, match="error"):
            write(out / "T-1", NEW)
        assert sorted(_tree(out).values()) == sorted(OLD.values())

    def test_a_first_package(self, tmp_path, monkeypatch):
        """Where there was no folder there is none after a failure."""
        full = OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        monkeypatch.setattr(Path, "write_bytes", _failing(Path.write_bytes, 1, full))
        with pytest.raises(OSError, match="No space left"):
            write(tmp_path / "T-1", NEW)
        assert _tree(tmp_path) == {}

    def test_interrupted(self, out: Path, monkeypatch):
        """Ctrl-C in the middle is a failure like any other."""
        monkeypatch.setattr(Path, "write_bytes", _failing(Path.write_bytes, 1, KeyboardInterrupt()))
        with pytest.raises(KeyboardInterrupt):
            write(out / "T-1", NEW)
        assert _tree(out) == _under("T-1", OLD)


def _failing(real: Callable[..., object], at: int, error: BaseException) -> Callable[..., object]:
    """Return the function so that its call of that number fails."""
    calls = iter(range(1000))

    def failing(*given: object) -> object:
        if next(calls) == at:
            raise error
        return real(*given)

    return failing
