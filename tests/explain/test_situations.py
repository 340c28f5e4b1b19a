"""What goes wrong with flatwork quotes: the built papers answer each situation in a sentence.

`situations.yaml` is the table. The situations were gathered from public threads and advice pages
and are told there in a few words of our own.
"""

import re
from collections.abc import Mapping
from functools import cache
from html import unescape
from pathlib import Path

import pytest
import yaml

from quotegen.explain.sheets.views import Paper
from quotegen.publish.web.html import render
from quotegen.resources import themes_folder
from tests.explain.examples import example_measuring_sheet, example_view
from tests.pricing import shop
from tests.world import EXAMPLES

TABLE = yaml.safe_load(Path(__file__).with_name("situations.yaml").read_text(encoding="utf-8"))
DECK = EXAMPLES / "jobs" / "orchard-bend-pool-deck.yaml"
KNOWN = 60
"""Situations: 36 of homeowners, 12 of contractors, and 12 that readers of the trade asked."""


def _papers() -> Mapping[str, Paper]:
    """The papers that go to the homeowner with the quote, by the name of their file."""
    view = example_view(DECK)
    return {"quote": view, "guide": view, "measuring-sheet": example_measuring_sheet(DECK)}


@cache
def _blocks(paper: str) -> dict[str, str]:
    """Return the text of each part of a paper and of each block in it, by id."""
    words, theme = shop.example_results(DECK).words, themes_folder() / "shop"
    page = render(f"{paper}.html.j2", _papers()[paper], words, theme, on_paper=True)
    marks = [(m.start(), m[1], m[2]) for m in re.finditer(r'<(\w+)[^>]*\bid="([\w-]+)"', page)]
    blocks: dict[str, str] = {}
    for place, tag, ident in marks:
        after = [start for start, other, _ in marks if start > place and other == tag]
        end = after[0] if after else len(page)
        if tag == "section":
            end = page.index("</section>", place)
        blocks.setdefault(ident, _text(page[place:end]))
    return blocks


def _text(markup: str) -> str:
    plain = re.sub(r"<(style|svg).*?</\1>", " ", markup, flags=re.DOTALL)
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", plain)).split())


@pytest.mark.parametrize("row", TABLE, ids=lambda row: row["id"])
def test_a_situation_is_answered(row: dict[str, str]):
    """The paper of the pool deck says the sentence, in the block that the table names."""
    assert row["says"] in _blocks(row["paper"])[row["page"]]


def test_no_situation_is_left_out():
    """Each situation of the collection stands in the table once."""
    assert len({row["id"] for row in TABLE}) == len(TABLE) == KNOWN
    assert all(row["asks"] for row in TABLE)
