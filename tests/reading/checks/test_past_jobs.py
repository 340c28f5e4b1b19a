"""The past jobs of the example companies are known wherever they turn up."""

from pathlib import Path

import pytest
import yaml

from quotegen.reading.checks.past_jobs import EXAMPLE_COMPANIES, EXAMPLE_CONTACTS, EXAMPLE_TITLES
from tests.pricing.shop import faults
from tests.world import EXAMPLES, write_world

FOLDERS = sorted(path for path in EXAMPLES.parent.iterdir() if path.is_dir())


def _typed(folder: Path, name: str):
    return yaml.load((folder / name).read_text(encoding="utf-8"), Loader=yaml.BaseLoader)


def test_the_list_is_that_of_the_example_files():
    """Each company, past job and contact of example_jobs/ is in the list, and nothing else."""
    past = [job for one in FOLDERS for job in _typed(one, "past-jobs.yaml")["past_jobs"].values()]
    assert {_typed(one, "company.yaml")["name"] for one in FOLDERS} == EXAMPLE_COMPANIES
    assert {(job["title"], job["finished"]) for job in past} == EXAMPLE_TITLES
    phones = {job["contact"]["phone"] for job in past if "contact" in job}
    assert phones == EXAMPLE_CONTACTS


@pytest.mark.parametrize("retitled", [False, True])
def test_another_company_is_told_once(tmp_path: Path, retitled: bool):
    """All of them in one warning; a new title over our contact's phone number is still ours."""
    company = (EXAMPLES / "company.yaml").read_text(encoding="utf-8")
    past = (EXAMPLES / "past-jobs.yaml").read_text(encoding="utf-8")
    job = write_world(
        tmp_path,
        company=company.replace("Pennywort Flatwork", "Alderfield Concrete"),
        past_jobs=past.replace("Drive with a thicker apron", "My drive") if retitled else past,
    )
    (problem,) = faults(job)
    assert problem.code == "example-past-jobs"
    assert "`heron_court_deck`, `quarry_row_patio`, `tannery_hill_drive`" in problem.message
