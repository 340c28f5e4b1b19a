"""What an installer reads: each dependency from its oldest version on, and every license."""

import tomllib
from pathlib import Path

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
