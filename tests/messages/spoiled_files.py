"""Files that nobody would type: empty, binary, huge. Each test spoils a good job file."""

import struct
import zlib
from collections.abc import Callable
from pathlib import Path


def _empty(job: Path) -> None:
    job.write_bytes(b"")


def _blank(job: Path) -> None:
    job.write_bytes(b"\xef\xbb\xbf  \n\n")


def _of_50_mb(job: Path) -> None:
    with job.open("wb") as file:
        file.truncate(50_000_000)


def _binary(job: Path) -> None:
    job.write_bytes(b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR")


def _latin_1(job: Path) -> None:
    job.write_bytes("title: Patio\ntown: Düne, Änger\n".encode("latin-1"))


def _utf_16(job: Path) -> None:
    job.write_bytes("title: Patio\n".encode("utf-16"))


def _bell(job: Path) -> None:
    job.write_bytes(b"title: Patio\nnote: ring\x07 twice\n")


def _folder(job: Path) -> None:
    job.unlink()
    job.mkdir()


def _not_there(job: Path) -> None:
    job.unlink()


def _alias_bomb(job: Path) -> None:
    levels = [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 10)]
    job.write_text("\n".join(["a0: &a0 [x, x, x]", *levels]), encoding="utf-8")


def _deep(job: Path) -> None:
    job.write_text("note: " + "[" * 400_000, encoding="utf-8")


def _unknown_keys(job: Path) -> None:
    job.write_text("".join(f"key_{n}: 1\n" for n in range(1_000)), encoding="utf-8")


def _keys_without_end(job: Path) -> None:
    job.write_text("".join(f"key_{n}: 1\n" for n in range(70_000)), encoding="utf-8")


def _changes_without_end(job: Path) -> None:
    job.write_text(f"changes: [{'{}, ' * 200_000}]\n", encoding="utf-8")


def _blanks(job: Path) -> None:
    size = "24 ft x 16" + " " * 300_000 + "q"
    job.write_text(job.read_text(encoding="utf-8").replace("30 ft x 20 ft", size), encoding="utf-8")


def _thin(job: Path) -> None:
    thin = "use: patio\n    thickness: 0.001 in"
    job.write_text(job.read_text(encoding="utf-8").replace("use: patio", thin), encoding="utf-8")


def huge_png(width: int, height: int) -> bytes:
    """A PNG whose header claims that size, with hardly any pixels behind it."""

    def part(kind: bytes, data: bytes) -> bytes:
        return (
            struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        )

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    pixels = zlib.compress(bytes(64))
    return b"\x89PNG\r\n\x1a\n" + part(b"IHDR", head) + part(b"IDAT", pixels) + part(b"IEND", b"")


SPOILED: tuple[tuple[Callable[[Path], None], str, str, tuple[str, ...]], ...] = (
    (_empty, "empty-file", "job.yaml:1:1", ("the file is empty", "`quotegen new`")),
    (_blank, "empty-file", "job.yaml:1:1", ("the file is empty",)),
    (_of_50_mb, "file-too-large", "job.yaml:1:1", ("the file is 50.0 MB", "at most 1 MB")),
    (_binary, "not-text", "job.yaml:3:1", ("binary data", "not a picture")),
    (_latin_1, "not-utf-8", "job.yaml:2:8", ("the byte 0xFC", "save the file again as UTF-8")),
    (_utf_16, "not-utf-8", "job.yaml:1:1", ("saved as UTF-16", "save the file again as UTF-8")),
    (_bell, "control-character", "job.yaml:2:11", ("control character", "type the line again")),
    (_folder, "cannot-read", "job.yaml:1:1", ("cannot be opened: is a directory",)),
    (_not_there, "cannot-read", "job.yaml:1:1", ("no such file", "check the name")),
    (_alias_bomb, "alias", "job.yaml:1:5", ("anchors and aliases", "write the value out")),
    (_deep, "too-deep", "job.yaml:1:37", ("more than 30 levels", "is a bracket missing")),
    (_unknown_keys, "unknown-key", "job.yaml:1:1", ("`key_0` is not a key",)),
    (_unknown_keys, "more-faults", "job.yaml:1:1", (" more faults in this file",)),
    (_keys_without_end, "too-many-here", "job.yaml:1001:1", ("more than 1,000 items or keys",)),
    (_changes_without_end, "too-many-here", "job.yaml:1:4011", ("more than 1,000 items",)),
    (_blanks, "value-too-long", "job.yaml:13:21", ("is too long", "at most 100 letters")),
    (_thin, "slab-too-large", "job.yaml:12:16", ("is 0.001 in thick; at most 3,000 panels",)),
)
"""How the job file is spoiled, the code and place of its first problem, words of its message."""
