"""The one writer: whole or not at all, and never over what is not ours."""

import errno
import json
import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from quotegen.problem import Problem, Severity, Source
from quotegen.publish.manifest import MANIFEST, Whose
from quotegen.publish.write import NEW as BESIDE
from quotegen.publish.write import Folder, _locked, freeze, write
from tests.architecture.tree import REPO
from tests.publish.killed_runs import KILLS

OLD = {"customer/quote.html": b"old quote", "private/figures.json": b"{}"}
NEW = {"customer/quote.html": b"new quote", "customer/quote.pdf": b"%PDF", "visits.ics": b""}
LAID = len(NEW) + 2
"""How many files are laid beside their places: the new ones, and the manifest twice."""


def _write(target: Path, files: dict[str, bytes], customer: str = "Abel Roe"):
    return write((_folder(target, files, customer),))


def _folder(target: Path, files: dict[str, bytes], customer: str = "Abel Roe") -> Folder:
    whose = Whose(quote="T-1", customer=customer, place=Source(file=f"{customer}.yaml"))
    return Folder(path=target, whose=whose, files=files)


def _tree(folder: Path, *, manifests: bool = False) -> dict[str, bytes]:
    """Return every file below a folder, hidden ones and all, and every empty folder."""
    found = {}
    for path in sorted(folder.rglob("*")):
        name = path.relative_to(folder).as_posix()
        if path.is_file() and (manifests or path.name != MANIFEST):
            found[name] = path.read_bytes()
        elif path.is_dir() and not any(path.iterdir()):
            found[f"{name}/"] = b""
    return found


def _under(target: str, files: dict[str, bytes]) -> dict[str, bytes]:
    return {f"{target}/{name}": data for name, data in files.items()}


def _codes(problems: tuple[Problem, ...]) -> list[str]:
    return [problem.code for problem in problems]


@pytest.fixture
def out(tmp_path: Path) -> Path:
    """Return an output folder that holds one old package."""
    assert _write(tmp_path / "T-1", OLD) == ()
    return tmp_path


def test_a_new_folder(tmp_path):
    """A package goes to its folder, and the folders above are made."""
    assert _write(tmp_path / "out" / "T-1", NEW) == ()
    assert _tree(tmp_path) == _under("out/T-1", NEW)


def test_a_new_package_replaces_the_old_one(out: Path):
    """A new package takes the place of the old one: no old file stays, nor a folder left empty."""
    assert _write(out / "T-1", NEW) == ()
    assert _tree(out) == _under("T-1", NEW)


def test_the_same_again_leaves_the_same_bytes(out: Path):
    """Written twice, a package is the same with its manifest."""
    before = _tree(out, manifests=True)
    assert _write(out / "T-1", OLD) == ()
    assert _tree(out, manifests=True) == before


def test_private_is_for_its_owner_alone(out: Path):
    """Nobody else on the machine can open `private/`, even where it stood open before."""
    assert (out / "T-1" / "private").stat().st_mode & 0o777 == 0o700
    (out / "T-1" / "private").chmod(0o755)
    _write(out / "T-1", OLD)
    assert (out / "T-1" / "private").stat().st_mode & 0o777 == 0o700


def test_others_may_read_the_rest(out: Path):
    """The folder and `customer/` can be opened as any folder that a person makes."""
    (out / "plain").mkdir()
    usual = (out / "plain").stat().st_mode
    assert (out / "T-1").stat().st_mode == (out / "T-1" / "customer").stat().st_mode == usual


def test_the_other_packages_stay(out: Path):
    """Writing one package touches no other."""
    _write(out / "T-2", NEW)
    assert _tree(out) == _under("T-1", OLD) | _under("T-2", NEW)


def test_each_folder_is_told(tmp_path: Path):
    """Of several folders each is told when its files are in place."""
    folders = tuple(_folder(tmp_path / name, OLD) for name in ("a", "b"))
    told: list[tuple[str, bool]] = []
    write(folders, lambda one: told.append((one.path.name, (one.path / "private").exists())))
    assert told == [("a", True), ("b", True)]


class TestNotOurs:
    """No file that we did not write is moved, changed or deleted."""

    def test_what_else_lies_there_stays(self, out: Path):
        """A signed scan, photos, notes: they stay at their place, the very same files."""
        strange = {
            "signed.pdf": b"scan", "customer/note.txt": b"n", "private/mine.txt": b"m",
            "photos/a.jpg": b"a", ".hidden": b"h",
        }  # fmt: skip
        for name, data in strange.items():
            (out / "T-1" / name).parent.mkdir(exist_ok=True)
            (out / "T-1" / name).write_bytes(data)
        (out / "T-1" / "to-do").mkdir()
        inodes = [(out / "T-1" / name).stat().st_ino for name in strange]
        assert _write(out / "T-1", NEW) == ()
        assert _tree(out) == _under("T-1", {**NEW, **strange, "to-do/": b""})
        assert [(out / "T-1" / name).stat().st_ino for name in strange] == inodes

    @pytest.mark.parametrize("files", [OLD, {"private/figures.json": b"{}"}])
    def test_a_changed_file_is_kept(self, out: Path, files: dict[str, bytes]):
        """One of ours that somebody wrote into is renamed, whether it is made again or not."""
        (out / "T-1" / "customer" / "quote.html").write_bytes(b"mine")
        (said,) = _write(out / "T-1", files)
        assert (said.code, said.severity) == ("file-kept", Severity.WARNING)
        assert said.source.file.endswith("T-1/customer/quote.html")
        assert "`quote.kept-1.html`" in said.message
        assert _tree(out) == _under("T-1", {**files, "customer/quote.kept-1.html": b"mine"})

    def test_each_kept_file_has_its_own_name(self, out: Path):
        """What is kept a second time does not take the place of the first; both stay after."""
        for text in (b"first", b"second"):
            (out / "T-1" / "customer" / "quote.html").write_bytes(text)
            _write(out / "T-1", OLD)
        assert _write(out / "T-1", OLD) == ()
        kept = {"customer/quote.kept-1.html": b"first", "customer/quote.kept-2.html": b"second"}
        assert _tree(out) == _under("T-1", {**OLD, **kept})

    def test_a_deleted_file_comes_back(self, out: Path):
        """One of ours that somebody deleted is written again, without a word."""
        (out / "T-1" / "customer" / "quote.html").unlink()
        assert _write(out / "T-1", OLD) == ()
        assert _tree(out) == _under("T-1", OLD)

    @pytest.mark.parametrize("damaged", [None, b"", b"{}", b"notes of mine"])
    def test_without_a_manifest_nothing_is_ours(self, out: Path, damaged: bytes | None):
        """Where the list is gone or damaged, a file in the way is kept, and one alike is taken."""
        (out / "T-1" / MANIFEST).unlink()
        if damaged is not None:
            (out / "T-1" / MANIFEST).write_bytes(damaged)
        said = _write(out / "T-1", {**NEW, "private/figures.json": b"{}"})
        kept = {"customer/quote.kept-1.html": b"old quote"}
        if damaged is not None:
            kept[".written.kept-1.json"] = damaged
        assert len(said) == len(kept)
        assert _tree(out) == _under("T-1", {**NEW, "private/figures.json": b"{}", **kept})

    def test_a_link_in_the_way_is_kept(self, out: Path):
        """A link that stands for one of our files is renamed, and what it leads to is untouched."""
        (out / "mine.html").write_bytes(b"old quote")
        (out / "T-1" / "customer" / "quote.html").unlink()
        (out / "T-1" / "customer" / "quote.html").symlink_to(out / "mine.html")
        assert _codes(_write(out / "T-1", OLD)) == ["file-kept"]
        assert (out / "T-1" / "customer" / "quote.kept-1.html").is_symlink()
        assert (out / "mine.html").read_bytes() == b"old quote"

    def test_a_folder_in_the_way_is_kept(self, out: Path):
        """So is a folder, with all that is in it."""
        (out / "T-1" / "visits.ics").mkdir()
        (out / "T-1" / "visits.ics" / "mine.txt").write_bytes(b"mine")
        assert _codes(_write(out / "T-1", NEW)) == ["file-kept"]
        assert _tree(out) == _under("T-1", {**NEW, "visits.kept-1.ics/mine.txt": b"mine"})

    def test_a_file_in_the_way_of_customer(self, out: Path):
        """A file that stands where `customer/` must go is said, and nothing is changed."""
        _write(out / "T-1", {"visits.ics": b"old"})
        (out / "T-1" / "customer").write_bytes(b"mine")
        before = _tree(out, manifests=True)
        with pytest.raises(FileExistsError):
            _write(out / "T-1", NEW)
        assert _tree(out, manifests=True) == before

    def test_a_linked_folder_is_written_through(self, tmp_path: Path):
        """Where the quote's folder is a link, the link stays and its folder is written."""
        (tmp_path / "elsewhere").mkdir()
        (tmp_path / "T-1").symlink_to(tmp_path / "elsewhere")
        _write(tmp_path / "T-1", NEW)
        assert (tmp_path / "T-1").is_symlink()
        assert _tree(tmp_path / "elsewhere") == NEW


def test_the_folder_of_another(out: Path):
    """A folder of another customer is refused with both names, and so are all that go with it."""
    before = _tree(out, manifests=True)
    folders = (_folder(out / "T-2", NEW), _folder(out / "T-1", NEW, "Zoë Castellan"))
    (said,) = write(folders)
    assert (said.code, said.severity) == ("folder-of-another", Severity.ERROR)
    assert said.source.file == "Zoë Castellan.yaml"
    assert "holds quote `T-1` for Abel Roe (Abel Roe.yaml), and this is" in said.message
    assert "this is quote `T-1` for Zoë Castellan" in said.message
    assert _tree(out, manifests=True) == before


def test_the_folder_of_a_command(tmp_path: Path):
    """A quote that is numbered like the folder of a command does not take it, nor is taken."""
    _write(tmp_path / "specimen", NEW, customer="")
    (said,) = _write(tmp_path / "specimen", OLD)
    assert "holds what `quotegen T-1` writes" in said.message
    assert _tree(tmp_path) == _under("specimen", NEW)


def test_two_runs_at_once(out: Path):
    """While a run writes to a folder another one is told so and changes nothing."""
    before = _tree(out, manifests=True)
    with _locked(out / "T-1"), pytest.raises(BlockingIOError, match="another run is writing"):
        _write(out / "T-1", NEW)
    assert _tree(out, manifests=True) == before
    assert _write(out / "T-1", NEW) == ()


def test_a_disk_without_locks(out: Path, monkeypatch):
    """Where the disk knows no locks, a run writes without."""
    monkeypatch.setattr("fcntl.flock", _failing(lambda *_: None, 0, OSError(errno.ENOLCK, "no")))
    assert _write(out / "T-1", NEW) == ()
    assert _tree(out) == _under("T-1", NEW)


def test_killed_runs(tmp_path: Path):
    """Killed at any moment, a run leaves whole files, old or new; the next one leaves no trace."""
    done = subprocess.run(
        [sys.executable, "-m", "tests.publish.killed_runs", str(tmp_path / "T-1")],
        cwd=REPO, env={**os.environ, "PYTHONPATH": str(REPO)},
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    found = json.loads(done.stdout)
    assert found["wrong"] == []
    assert "while laying" in found["remains"]


class TestFailure:
    """Whatever goes wrong, no file is lost, and before the renames nothing has changed."""

    @pytest.mark.parametrize("fails_at", range(LAID))
    @pytest.mark.parametrize(
        "error", [OSError(errno.ENOSPC, "full"), OSError(errno.EIO, "bad"), KeyboardInterrupt()]
    )
    def test_a_file_cannot_be_laid(
        self, out: Path, monkeypatch, fails_at: int, error: BaseException
    ):
        """The disk is full, at the first file or the last: the old package is unchanged."""
        before = _tree(out, manifests=True)
        monkeypatch.setattr(os, "fsync", _failing(os.fsync, fails_at, error))
        with pytest.raises(type(error)):
            _write(out / "T-1", NEW)
        assert _tree(out, manifests=True) == before

    def test_several_land_together(self, out: Path, monkeypatch):
        """Where the disk has room for the first job alone, neither is changed."""
        full = OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        monkeypatch.setattr(os, "fsync", _failing(os.fsync, LAID, full))
        with pytest.raises(OSError, match="No space left"):
            write((_folder(out / "T-1", NEW), _folder(out / "T-2", NEW)))
        assert _tree(out) == _under("T-1", OLD)

    @pytest.mark.parametrize("fails_at", range(LAID))
    @pytest.mark.parametrize("error", [OSError(errno.EBUSY, "busy"), KeyboardInterrupt()])
    def test_a_file_cannot_be_moved(
        self, out: Path, monkeypatch, fails_at: int, error: BaseException
    ):
        """Each file is the old one or the new one, and the next run knows both as ours."""
        with monkeypatch.context() as patch:
            patch.setattr(Path, "replace", _failing(Path.replace, fails_at, error))
            with pytest.raises(type(error)):
                _write(out / "T-1", NEW)
        left = _tree(out / "T-1")
        assert all(data in (OLD.get(name), NEW.get(name)) for name, data in left.items())
        assert not [name for name in left if BESIDE in name]
        assert _write(out / "T-1", {**OLD, "visits.ics": b"third"}) == ()
        assert _tree(out) == _under("T-1", {**OLD, "visits.ics": b"third"})

    def test_a_first_package(self, tmp_path, monkeypatch):
        """Where there was no folder there is none after a failure, nor one above it."""
        full = OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        monkeypatch.setattr(os, "fsync", _failing(os.fsync, 1, full))
        with pytest.raises(OSError, match="No space left"):
            _write(tmp_path / "out" / "T-1", NEW)
        assert _tree(tmp_path) == {}

    def test_a_file_where_the_folder_must_go(self, tmp_path: Path):
        """A file with the name of the folder stays, and the machine is said to be at fault."""
        (tmp_path / "T-1").write_bytes(b"mine")
        with pytest.raises(NotADirectoryError, match="a file stands"):
            _write(tmp_path / "T-1", NEW)
        assert _tree(tmp_path) == {"T-1": b"mine"}


def _failing(real: Callable[..., object], at: int, error: BaseException) -> Callable[..., object]:
    """Return the function so that its call of that number fails."""
    calls = iter(range(1000))

    def failing(*given: object) -> object:
        if next(calls) == at:
            raise error
        return real(*given)

    return failing


class TestFreeze:
    """A frozen folder appears whole or not at all, and nothing is written into it again."""

    def test_a_new_folder(self, tmp_path: Path):
        """All files are there, only to be read, and `private/` is its owner's alone."""
        assert freeze(tmp_path / "T-1" / "r1", NEW, lambda: True)
        assert _tree(tmp_path) == _under("T-1/r1", NEW)
        files = [path for path in tmp_path.rglob("*") if path.is_file()]
        assert {path.stat().st_mode & 0o777 for path in files} == {0o444}

    def test_never_twice(self, tmp_path: Path):
        """A folder that is there, even an empty one, is left as it is."""
        (tmp_path / "r1").mkdir()
        assert not freeze(tmp_path / "r1", NEW, lambda: True)
        assert freeze(tmp_path / "r2", OLD, lambda: True)
        assert not freeze(tmp_path / "r2", NEW, lambda: True)
        assert _tree(tmp_path) == {"r1/": b"", **_under("r2", OLD)}

    def test_not_when_it_is_no_longer_right(self, tmp_path: Path):
        """What the caller asks at the last moment may still stop it."""
        assert not freeze(tmp_path / "r1", NEW, lambda: False)
        assert _tree(tmp_path) == {}

    def test_two_runs_at_once(self, tmp_path: Path):
        """A run that comes while another one writes is told to try again."""
        with _locked(tmp_path), pytest.raises(BlockingIOError):
            freeze(tmp_path / "r1", NEW, lambda: True)
        assert _tree(tmp_path) == {}

    def test_a_full_disk(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
        """A disk that is full at any file leaves nothing of the folder."""

        def full(_: int) -> None:
            raise OSError(errno.ENOSPC, "No space left on device")

        monkeypatch.setattr("quotegen.publish.write.os.fsync", full)
        with pytest.raises(OSError, match="No space"):
            freeze(tmp_path / "r1", NEW, lambda: True)
        assert _tree(tmp_path) == {}

    def test_killed_runs(self, tmp_path: Path):
        """Runs that are killed leave a folder whole or none, and the next run tidies up."""
        large = dict.fromkeys((f"customer/{number}.pdf" for number in range(12)), b"x" * 40_000)
        took_s, wholes = list[float](), 0
        for number in range(3):  # one alone may fall into a quiet moment of a busy machine
            begun = time.monotonic()
            freeze(tmp_path / f"whole-{number}", large, lambda: True)
            took_s.append(time.monotonic() - begun)
        longest_s = 3 * max(took_s)
        for number in range(KILLS):
            room = tmp_path / f"T-{number}"
            child = os.fork()
            if not child:
                freeze(room / "r1", large, lambda: True)
                os._exit(0)
            time.sleep(number / KILLS * longest_s)
            os.kill(child, signal.SIGKILL)
            os.waitpid(child, 0)
            whole = (room / "r1").exists()
            wholes += whole
            if whole:
                assert _tree(room / "r1") == large
            assert freeze(room / "r1", large, lambda: True) is not whole
            assert _tree(room) == _under("r1", large)
        assert 0 < wholes < KILLS
