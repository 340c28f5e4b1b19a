"""What every test shares: how hard hypothesis tries, and cleaning up after a run."""

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

from tests.messages.command import Command
from tests.once_per_run import clear
from tests.publish.built import unprinted
from tests.world import write_world

# Always on: small, and the same cases every time, so that a red run can be repeated.
settings.register_profile(
    "always", max_examples=60, deadline=None, derandomize=True, print_blob=True
)
# `./run fuzz`: many cases, new ones each time; what it finds becomes an ordinary test.
settings.register_profile(
    "fuzz",
    max_examples=20_000,
    deadline=timedelta(seconds=20),
    print_blob=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)
settings.load_profile("always")

TESTS = Path(__file__).parent


COMMANDS = "commands"
"""The tests of whole commands, which lie in no folder."""
SLOWEST_FIRST = ("browser", "publish", COMMANDS, "golden", "property", "validation", "explain",
                 "pricing")  # fmt: skip
"""Folders of tests in the order in which workers take them, so that all workers end together."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put the folders first whose files take longest; inside a folder nothing moves."""
    items.sort(key=_rank)


def _rank(item: pytest.Item) -> int:
    below = item.path.relative_to(TESTS).parts if TESTS in item.path.parents else ("", "")
    folder = below[0] if len(below) > 1 else COMMANDS
    return SLOWEST_FIRST.index(folder) if folder in SLOWEST_FIRST else len(SLOWEST_FIRST)


@pytest.fixture(name="unprinted")
def _unprinted() -> Iterator[None]:
    """Keep the print engine out of a test that reads no PDF."""
    with unprinted():
        yield


@pytest.fixture
def command(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> Command:
    """Stand in a folder with the example company and one job, `job.yaml`."""
    monkeypatch.chdir(tmp_path)
    write_world(tmp_path)
    return Command(monkeypatch, capsys)


def pytest_sessionfinish(session: pytest.Session) -> None:
    """Delete what the workers of this run shared, once all are done."""
    if not hasattr(session.config, "workerinput"):
        clear()
