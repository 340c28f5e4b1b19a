"""Writes the golden files again: `.venv/bin/python -m tests.golden.rebaseline`.

Run it after a change that is meant to alter what a paper says, then read the diff of
tests/golden/expected/ line by line: it is what a homeowner or the owner will read differently.
"""

from collections.abc import Mapping
from pathlib import Path

from tests.once_per_run import clear
from tests.pricing.shop import JOBS
from tests.publish.built import built, page_text
from tests.publish.reading import decoded, pdf_text, read_mail

EXPECTED = Path(__file__).parent / "expected"
FIGURES = "private/figures.json"
PAPERS: Mapping[str, tuple[str, ...]] = {
    "cutters-row-drive": (
        "customer/care.html", "customer/changes.html", "customer/email-care.eml",
        "customer/email-changes.eml", "customer/email-measured.eml",
        "customer/final-measurement.html", "customer/visits.ics", "private/crew-sheet.pdf",
    ),
    "ferry-road-drive": (
        "customer/compare-bids.html", "customer/measuring-sheet.pdf",
        "private/law-checklist.html", "private/order-list.html",
    ),
    "kestrel-court-kidney-deck": ("customer/door-sheet.pdf", "private/cancellation.pdf"),
    "kiln-hill-pool-deck": (),
    "larch-row-patio": ("customer/quote.html",),
    "mill-lane-walk": (),
    "orchard-bend-pool-deck": (
        "customer/email.eml", "customer/email-reminder.eml", "customer/guide.html",
        "customer/past-jobs.html", "private/phone-sheet.html", "private/weather.html",
    ),
    "tanager-lane-patio": ("private/cost-sheet.html",),
}  # fmt: skip
"""The papers whose words are kept, by example: each kind of paper once, where it says most."""


def golden(example: str, package: Mapping[str, bytes]) -> dict[str, str]:
    """What is kept of an example, by file name: its figures, and the words of its papers."""
    papers = {Path(path).with_suffix(".txt").name: path for path in PAPERS[example]}
    return {
        "figures.json": package[FIGURES].decode(),
        **{name: _words(path, package[path]) for name, path in papers.items()},
    }


def _words(path: str, data: bytes) -> str:
    kind = Path(path).suffix
    if kind == ".eml":
        mail = read_mail(data)
        return f"{mail['Subject']}\n\n{decoded(mail, 'plain')}"
    if kind == ".pdf":
        lines = (" ".join(line.split()) for line in pdf_text(data).splitlines())
        return "\n".join(line for line in lines if line) + "\n"
    text = data.decode().replace("\r\n", "\n")
    return page_text(text) if kind == ".html" else text


def main() -> None:
    """Write the golden files of every example."""
    for job_file in JOBS:
        folder = EXPECTED / job_file.stem
        folder.mkdir(parents=True, exist_ok=True)
        for old in folder.iterdir():
            old.unlink()
        for name, text in golden(job_file.stem, built(job_file)).items():
            (folder / name).write_text(text, encoding="utf-8", newline="\n")
            print(folder / name)
    clear()


if __name__ == "__main__":
    main()
