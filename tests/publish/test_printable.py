"""A logo that the print engine does not take is found by `check`."""

from pathlib import Path

import pytest

from quotegen.pipeline import figure
from tests.pricing.shop import shared
from tests.world import EXAMPLES, write_world

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 10">'


def _codes(folder: Path, drawing: str) -> list[str]:
    (folder / "logo.svg").write_text(drawing, encoding="utf-8")
    company = (EXAMPLES / "company.yaml").read_text(encoding="utf-8")
    job = write_world(folder, company=f"{company}\nlogo: logo.svg\n")
    return [problem.code for problem in figure(job, shared()).problems]


@pytest.mark.parametrize(
    "drawing",
    [
        f'{HEAD}<path d="M0 0 A 1e999 1 0 0 0 3 3"/></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="a b c d"><rect/></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1"><rect/></svg>',
        f'{HEAD}<g transform="rotate(a)"><rect width="1" height="1"/></g></svg>',
        f'{HEAD}<rect opacity="x" width="1" height="1"/></svg>',
        f'{HEAD}<style>a{{b:c}}}} ::q{{ x </style><rect width="1" height="1"/></svg>',
    ],
)
def test_what_the_engine_does_not_take(tmp_path: Path, drawing: str):
    """Each stops the real engine, and is said of the company file's line, before any package."""
    assert _codes(tmp_path, drawing) == ["logo-not-printed"]


def test_a_plain_drawing_is_no_fault(tmp_path: Path):
    """A drawing that the engine takes is not spoken of."""
    assert _codes(tmp_path, f'{HEAD}<path d="M0 0h20v10z" fill="#123456"/></svg>') == []
