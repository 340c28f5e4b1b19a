"""What a quote is made of is found again among the frozen files, pictures and all."""

import shutil
from pathlib import Path

import yaml
from PIL import Image

from quotegen.pipeline import figure
from quotegen.reading.ledger.inputs import inputs_of
from tests.pricing.shop import amounts, as_yaml, shared
from tests.world import EXAMPLES, PATIO

LOGO = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9v9z"/></svg>'


def _world(folder: Path) -> Path:
    """A job in `jobs/` below the company's files, with a logo and the photo of a past job."""
    shutil.copytree(EXAMPLES, folder, ignore=shutil.ignore_patterns("jobs", "issued"))
    with (folder / "company.yaml").open("a", encoding="utf-8") as company:
        company.write("logo: pictures/mark.svg\n")
    (folder / "pictures").mkdir()
    (folder / "pictures" / "mark.svg").write_text(LOGO, encoding="utf-8")
    Image.new("RGB", (40, 30), "gray").save(folder / "pictures" / "slab.png")
    past = yaml.load((folder / "past-jobs.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)
    for one in past["past_jobs"].values():
        if one.get("consent"):
            one["photo"] = {"file": "pictures/slab.png", "alt": "a slab"}
            agreed = one["consent"].get("shows", [])
            one["consent"]["shows"] = list(dict.fromkeys([*agreed, "photo"]))
    (folder / "past-jobs.yaml").write_text(as_yaml(past), encoding="utf-8")
    (folder / "rate-book-2027.yaml").write_text(
        (folder / "rate-book.yaml")
        .read_text("utf-8")
        .replace("valid_from: 2026", "valid_from: 2027"),
        encoding="utf-8",
    )
    (folder / "jobs").mkdir()
    job = folder / "jobs" / "patio.yaml"
    job.write_text(PATIO, encoding="utf-8")
    return job


def test_the_frozen_files_figure_the_same(tmp_path: Path):
    """Each file is there once, of the books the one that counts; they give the same job."""
    job = _world(tmp_path / "mine")
    inputs = inputs_of(job)
    assert sorted(inputs) == [
        "company.yaml", "jobs/patio.yaml", "past-jobs.yaml", "pictures/mark.svg",
        "pictures/slab.png", "rate-book.yaml",
    ]  # fmt: skip
    for name, data in inputs.items():
        path = tmp_path / "frozen" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    now, frozen = (
        figure(one, shared()) for one in (job, tmp_path / "frozen" / "jobs" / "patio.yaml")
    )
    assert now.results is not None, now.problems
    assert frozen.results is not None
    finishes = (now.results.quote.finishes, frozen.results.quote.finishes)
    first, second = ([amounts(one) for one in each] for each in finishes)
    assert first == second
    assert now.results.job.logo == frozen.results.job.logo
    assert now.results.job.references == frozen.results.job.references
    assert any(one.photo for one in now.results.job.references)


def test_what_cannot_be_read_is_left_out(tmp_path: Path):
    """A job alone is its only input; that the company is missing is said elsewhere."""
    job = tmp_path / "job.yaml"
    job.write_text(PATIO, encoding="utf-8")
    assert inputs_of(job) == {"jobs/job.yaml": PATIO.encode()}
