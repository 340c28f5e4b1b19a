"""The entries of one quote in the ledger, and whether each file is as it was frozen.

An entry is a folder: `r1` is the first revision, `accepted` the yes, `after-1` what was handed out
next. Its `private/SHA256SUMS` lists every other file in the form that `sha256sum -c` reads (GNU
coreutils), so an entry can be proved without this program. The SHA-256 of that list is the
entry's seal, and each entry names the seal of the one before.
"""

import hashlib
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from quotegen.problem import Problem, Source
from quotegen.reading.files.ledger_entry import Facts, Kind, facts_of

LEDGER, SUMS, FACTS = "issued", "private/SHA256SUMS", "private/entry.json"
INPUTS, FIGURES = "private/inputs", "private/figures.json"
ACCEPTED = "accepted"
_NAME = re.compile(r"r[1-9]\d*|accepted|after-[1-9]\d*")
_LOOSE = (
    f"this does not follow from what was frozen before it: an entry is gone or added, or its "
    f"`{SUMS}` was changed"
)
_PUT_BACK = "put back a copy of the folder as it was"


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One frozen folder.

    Attributes:
        sums: the SHA-256 of each file, by path.
        seal: the SHA-256 of that list.
    """

    path: Path
    facts: Facts
    sums: Mapping[str, str]
    seal: str


def is_entry(name: str) -> bool:
    """Whether a folder of that name is an entry; what else lies there is the owner's."""
    return _NAME.fullmatch(name) is not None


def name_of(kind: Kind, number: int) -> str:
    """Return the folder of a revision of that number, of the acceptance, or of what follows."""
    if kind is Kind.ACCEPTED:
        return ACCEPTED
    return f"r{number}" if kind is Kind.REVISION else f"after-{number}"


def sums_text(files: Mapping[str, bytes]) -> bytes:
    """Return the list of files that makes an entry whole."""
    return _text({name: sha256(data) for name, data in files.items()})


def read_entries(room: Path) -> tuple[tuple[Entry, ...], tuple[Problem, ...]]:
    """Return what was frozen of a quote, the first entry first, and what is wrong with the chain.

    Args:
        room: the quote's folder in the ledger, which need not be there.
    """
    folders = sorted(one for one in room.glob("*") if is_entry(one.name))
    found = tuple(_entry(folder) for folder in folders)
    faults = tuple(one for one in found if isinstance(one, Problem))
    entries = tuple(one for one in found if isinstance(one, Entry))
    waiting = {one.facts.before: one for one in entries}
    chain, seal = list[Entry](), ""
    while seal in waiting:
        chain.append(waiting.pop(seal))
        seal = chain[-1].seal
    loose = tuple(one for one in entries if one not in chain)
    if loose and not faults:
        faults = (_problem("issued-chain", loose[0].path, _LOOSE, _PUT_BACK),)
    return (*chain, *loose), faults


def changed_files(entry: Entry, *, to_read: bool) -> Iterator[Problem]:
    """Yield each file of an entry that is not as it was frozen.

    Args:
        entry: of the ledger.
        to_read: look only at what the program works from, and not for files that were added.
    """
    for name, sha in entry.sums.items():
        path = entry.path / name
        if to_read and not name.startswith((INPUTS, FIGURES)):
            continue
        if path.is_symlink() or not path.is_file():
            yield _problem("issued-missing", path, "this file was issued and is gone", _PUT_BACK)
        elif sha256(path.read_bytes()) != sha:
            yield _problem("issued-changed", path, "this is not as it was issued", _PUT_BACK)
    if to_read:
        return
    known = {entry.path / name for name in (*entry.sums, SUMS)}
    known |= {room for path in known for room in path.parents}
    for path in sorted(entry.path.rglob("*")):
        if path not in known:
            said = "this was not issued and lies among what was"
            yield _problem("issued-added", path, said, "move it out of the folder")


def _entry(folder: Path) -> Entry | Problem:
    try:
        listed, told = (folder / SUMS).read_bytes(), (folder / FACTS).read_bytes()
    except OSError:
        said = f"the entry lacks `{SUMS}` or `{FACTS}`"
        return _problem("issued-missing", folder, said, _PUT_BACK)
    sums, facts = _sums(listed), facts_of(told)
    if sums is None:
        return _problem("issued-changed", folder / SUMS, "this is not as it was issued", _PUT_BACK)
    if facts is None or sums.get(FACTS) != sha256(told):
        return _problem("issued-changed", folder / FACTS, "this is not as it was issued", _PUT_BACK)
    return Entry(path=folder, facts=facts, sums=sums, seal=sha256(listed))


def _sums(data: bytes) -> Mapping[str, str] | None:
    """Read a list of files; None where it is not to the byte as we write one."""
    found = dict[str, str]()
    for line in data.decode("utf-8", "replace").splitlines():
        sha, _, name = line.partition("  ")
        found[name] = sha
    return found if _text(found) == data else None


def _text(sums: Mapping[str, str]) -> bytes:
    return "".join(f"{sums[name]}  {name}\n" for name in sorted(sums)).encode()


def sha256(data: bytes) -> str:
    """Return the SHA-256 of a file, as hex."""
    return hashlib.sha256(data).hexdigest()


def _problem(code: str, path: Path, message: str, hint: str) -> Problem:
    return Problem(code=code, source=Source(file=str(path)), message=message, hint=hint)
