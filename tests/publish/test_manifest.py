"""The list of what we wrote: true to the byte, the same each time, and trusted only so far."""

from pathlib import Path

import pytest

from quotegen.problem import Source
from quotegen.publish.manifest import MANIFEST, Whose, manifest_of, read_manifest
from quotegen.reading.ledger.entries import sha256

WHOSE = Whose(quote="T-1", customer="Zoë Castellan", place=Source(file="here/jobs/t.yaml"))


def test_sha256():
    """The hash of `abc` is that of the standard (FIPS 180-2, appendix B.1)."""
    assert sha256(b"abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"


def test_the_same_files_have_the_same_manifest():
    """The order of the files and the folder of the job leave no trace."""
    one = manifest_of(WHOSE, {"a": b"1", "b": b"2"}).to_json()
    elsewhere = Whose(quote="T-1", customer="Zoë Castellan", place=Source(file="there/t.yaml"))
    assert one == manifest_of(elsewhere, {"b": b"2", "a": b"1"}).to_json()
    assert b"here" not in one


def test_it_is_read_back(tmp_path: Path):
    """What was written is what is read, with the letters of a name."""
    manifest = manifest_of(WHOSE, {"customer/quote.html": b"abc"})
    (tmp_path / MANIFEST).write_bytes(manifest.to_json())
    assert read_manifest(tmp_path) == manifest


@pytest.mark.parametrize(
    ("quote", "customer", "another"),
    [("T-1", "Zoë Castellan", False), ("T-2", "Zoë Castellan", True), ("T-1", "Abel Roe", True)],
)
def test_of_another(quote: str, customer: str, another: bool):
    """A folder is another's where number or customer differ; the job file may be renamed."""
    whose = Whose(quote=quote, customer=customer, place=Source(file="renamed.yaml"))
    assert manifest_of(WHOSE, {}).of_another(whose) == another


@pytest.mark.parametrize(
    "text",
    [
        b"", b"\xff", b"[]", b"{}", b'{"quote": "T-1", "customer": "", "job": "", "files": [1]}',
        *(
            b'{"quote": "T-1", "customer": "", "job": "", "files": {"%s": []}}' % name
            for name in (b"../../mine.txt", b"customer/../../mine.txt", b"/etc/mine", b"", b".")
        ),
    ],
)  # fmt: skip
def test_what_is_not_understood_counts_for_nothing(tmp_path: Path, text: bytes):
    """A damaged list, or one that leads out of the folder, makes no file ours."""
    (tmp_path / MANIFEST).write_bytes(text)
    assert read_manifest(tmp_path) is None


def test_no_manifest(tmp_path: Path):
    """A folder without one has none, nor has one in which a folder bears the name."""
    assert read_manifest(tmp_path) is None
    (tmp_path / MANIFEST).mkdir()
    assert read_manifest(tmp_path) is None
