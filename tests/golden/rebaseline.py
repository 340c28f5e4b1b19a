"""Writes the golden files anew: `.venv/bin/python -m tests.golden.rebaseline`.

Run it after a change that is meant to alter what a quote says, then read the diff of
tests/golden/expected/ line by line: it is what a homeowner will read differently. A quote that
was issued is never made anew.
"""

from collections.abc import Mapping
from pathlib import Path

from tests.pricing.shop import JOBS
from tests.publish.built import built, page_text
from tests.publish.reading import decoded, read_mail

EXPECTED = Path(__file__).parent / "expected"


def golden(files: Mapping[str, bytes]) -> dict[str, str]:
    """Return what is kept of a package: its figures, and the words of its pages and its mail."""
    mail = read_mail(files["customer/email.eml"])
    return {
        "figures.json": files["private/figures.json"].decode(),
        "email.txt": f"{mail['Subject']}\n\n{decoded(mail, 'plain')}",
        **{
            Path(path).with_suffix(".txt").name: page_text(data.decode())
            for path, data in files.items()
            if path.startswith("customer/") and path.endswith(".html")
        },
    }


def main() -> None:
    """Write the golden files of every example."""
    for job_file in JOBS:
        folder = EXPECTED / job_file.stem
        folder.mkdir(parents=True, exist_ok=True)
        for old in folder.iterdir():
            old.unlink()
        for name, text in golden(built(job_file)).items():
            (folder / name).write_text(text, encoding="utf-8", newline="\n")
            print(folder / name)


if __name__ == "__main__":
    main()
