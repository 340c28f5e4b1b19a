"""What content pages say about the trade comes from rules that exist."""

import re
from datetime import date
from pathlib import Path

import pytest
import yaml

from quotegen.trade.rules import load_rules

ON = date(2026, 11, 24)
CONTENT = Path(__file__).parents[2] / "content" / "en"
ROOMS = ("scope", "finishes", "care", "safety", "clauses", "questions")
PAGES = sorted(page for room in ROOMS for page in (CONTENT / room).glob("*.md"))
HEADINGS = [
    "What it is",
    "Why it matters",
    "How you can check it",
    "What is normal, and what is not",
]
PLACEHOLDER = re.compile(r"\{\{ rule\.(\w+) \}\}")


@pytest.mark.parametrize("page", PAGES, ids=lambda page: f"{page.parent.name}/{page.stem}")
def test_a_page_lists_the_rules_that_it_uses(page: Path) -> None:
    """The rules in the front matter are those in the prose, and each one can be worded."""
    _, front, body = page.read_text(encoding="utf-8").split("---\n", 2)
    listed = yaml.load(front, Loader=yaml.BaseLoader)["rules"]
    used = PLACEHOLDER.findall(body)
    assert set(listed) == set(used)
    assert len(listed) == len(set(listed))
    for rule_id in listed:
        assert load_rules().text(rule_id, ON)


@pytest.mark.parametrize("page", PAGES, ids=lambda page: f"{page.parent.name}/{page.stem}")
def test_a_page_holds_no_other_placeholder(page: Path) -> None:
    """A page has no template markup beyond rules, and contract terms in clauses."""
    text = PLACEHOLDER.sub("", page.read_text(encoding="utf-8"))
    if page.parent.name == "clauses":
        text = re.sub(r"\{\{ terms\.\w+ \}\}", "", text)
    assert not re.search(r"[{}]", text)


def test_every_scope_page_has_its_headings() -> None:
    """A scope page says what, why, how to check it, and what is normal, in that order."""
    for page in (CONTENT / "scope").glob("*.md"):
        headings = re.findall(r"^## (.*)$", page.read_text(encoding="utf-8"), flags=re.MULTILINE)
        assert headings == HEADINGS, page.name
