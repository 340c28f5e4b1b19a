"""What an installer reads: each dependency from its oldest version on, and every license."""

import re
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

REPO = Path(__file__).resolve().parents[2]
PROJECT = tomllib.loads((REPO / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def test_each_dependency_names_its_oldest_version():
    """Each has a lower bound and no upper one, and the version that we test with is within it."""
    lines = (REPO / "constraints.txt").read_text(encoding="utf-8").split()
    pinned = {canonicalize_name(name): pin for name, pin in (line.split("==") for line in lines)}
    for line in (*PROJECT["dependencies"], *PROJECT["optional-dependencies"]["dev"]):
        needs = Requirement(line)
        assert [one.operator for one in needs.specifier] == [">="], line
        assert needs.specifier.contains(pinned[canonicalize_name(needs.name)]), line


def test_every_license_goes_with_the_package():
    """The program's own license and that of each font are named, and each is there."""
    named = {file for pattern in PROJECT["license-files"] for file in REPO.glob(pattern)}
    assert named == {REPO / "LICENSE", *(REPO / "themes").glob("*/fonts/OFL.txt")}
    assert "MIT License" in (REPO / "LICENSE").read_text(encoding="utf-8")


@pytest.mark.parametrize("pins", ["demo", "dev"])
def test_what_is_installed_is_pinned_by_its_bytes(pins: str):
    """Each package has the version of constraints.txt and the digest of each of its files.

    No line names an address, so that it is installed from wherever pip is told to look.
    """
    text = (REPO / "pins" / f"{pins}.txt").read_text(encoding="utf-8")
    lines = (REPO / "constraints.txt").read_text(encoding="utf-8").split()
    versions = {canonicalize_name(name): version for name, _, version in map(_parted, lines)}
    blocks = [line for line in text.replace("\\\n", " ").splitlines() if line]
    for block in blocks:
        name, _, version = _parted(block.split()[0])
        assert versions.get(canonicalize_name(name), version) == version, name
        assert re.search(r"--hash=sha256:[0-9a-f]{64}\b", block), name
    assert "://" not in text
    if pins == "dev":
        assert versions.keys() <= {canonicalize_name(_parted(block)[0]) for block in blocks}


def _parted(line: str) -> tuple[str, str, str]:
    return line.partition("==")
