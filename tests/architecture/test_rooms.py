"""Each room keeps to its own work: who imports whom, and who touches the world outside."""

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.architecture.tree import PACKAGE, PURE_ROOMS, REPO, Offence, calls, imported, modules
from tests.architecture.tree import offences as found

OUTSIDE = {
    "asyncio", "ftplib", "getpass", "glob", "http", "io", "os", "pathlib", "random", "requests",
    "secrets", "shutil", "smtplib", "socket", "subprocess", "tempfile", "time", "urllib", "uuid",
}  # fmt: skip
CLOCK = {"now", "today", "utcnow", "localtime"}
WRITERS = {
    "write_text", "write_bytes", "mkdir", "makedirs", "unlink", "rmdir", "rename", "renames",
    "touch", "symlink_to", "hardlink_to", "symlink", "link", "fdopen", "truncate", "copyfile",
    "copy2", "copytree", "move", "rmtree", "mkstemp", "mkdtemp", "NamedTemporaryFile",
    "TemporaryDirectory", "TemporaryFile",
}  # fmt: skip


def test_a_room_imports_only_rooms_before_it():
    """Data goes one way, so every contract on import direction in pyproject.toml is kept."""
    lint_imports = Path(sys.executable).with_name("lint-imports")
    done = subprocess.run(
        [lint_imports, "--no-cache", "--no-logo"],
        cwd=REPO,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize(("library", "room"), [("shapely", "takeoff"), ("weasyprint", "publish")])
def test_a_heavy_library_has_one_room(library: str, room: str):
    """Only takeoff knows the geometry library and only publish the PDF library."""

    def rule(tree: ast.AST) -> Iterator[Offence]:
        for node, name in imported(tree):
            if name.split(".")[0] == library:
                yield node, f"imports {library}, which belongs to {room}/"

    elsewhere = [path for path in modules() if PACKAGE / room not in path.parents]
    assert found(elsewhere, rule) == []


def test_only_publish_write_writes():
    """One module writes to the disk, so output appears whole or not at all."""
    elsewhere = [path for path in modules() if path != PACKAGE / "publish" / "write.py"]
    assert found(elsewhere, _writing) == []


def test_the_pure_rooms_touch_nothing_outside():
    """Stages 2 to 5 use no disk, no network, no clock and no randomness."""
    assert found(modules(*PURE_ROOMS), _outside) == []


def test_every_room_stands():
    """The rooms that these tests guard exist, so that no rule passes on nothing."""
    rooms = (*PURE_ROOMS, "reading", "publish", "trade")
    assert [room for room in rooms if not modules(room)] == []


def _outside(tree: ast.AST) -> Iterator[Offence]:
    for node, name in imported(tree):
        if name.split(".")[0] in OUTSIDE and not name.startswith("urllib.parse."):
            yield node, f"imports {name}"
    for call, name in calls(tree):
        if name == "open" or name.split(".")[-1] in CLOCK:
            yield call, f"calls {name}"


def _writing(tree: ast.AST) -> Iterator[Offence]:
    for call, name in calls(tree):
        last = name.split(".")[-1]
        path_replace = last == "replace" and len(call.args) == 1 and not call.keywords
        to_a_file = last == "write_pdf" and (
            call.args or any(keyword.arg == "target" for keyword in call.keywords)
        )
        if (
            last in WRITERS
            or name == "os.replace"
            or path_replace
            or to_a_file
            or (last == "open" and not _reads(call, name))
        ):
            yield call, f"writes with {name}"


def _reads(call: ast.Call, name: str) -> bool:
    """Whether a call of open, or of a path's open, plainly only reads."""
    place = 0 if "." in name and name not in {"io.open", "Image.open"} else 1
    modes = [keyword.value for keyword in call.keywords if keyword.arg == "mode"]
    modes += call.args[place : place + 1]
    return all(
        isinstance(mode, ast.Constant) and not set(str(mode.value)) & set("wax+") for mode in modes
    )


def test_the_list_of_writers_knows_its_own_room():
    """The rule on writing does see the one module that writes."""
    assert found([PACKAGE / "publish" / "write.py"], _writing) != []
