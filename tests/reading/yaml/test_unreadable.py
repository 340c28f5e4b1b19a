"""Slips that keep a file from being read, and what a phone types that is read all the same."""

import pytest

from quotegen.reading.yaml.located import Document, parse


def _said(text: str) -> tuple[int, int, str, str]:
    problems = parse(text.encode(), "job.yaml")
    assert isinstance(problems, tuple)
    (problem,) = problems
    return problem.source.line, problem.source.column, problem.message, problem.hint


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("title: Patio\nfinish:broom\ncompare: []\n", 2),
        ("a: 1\nplacements:\n  - id:patio\n    use: walk\n", 3),
        ("title: Patio\nfinish:broom\n", 2),
    ],
)
def test_the_line_without_a_blank_is_named(text: str, line: int):
    """The line that lacks the blank is named, not the one below it, with itself as it should be."""
    found = _said(text)
    typed = text.splitlines()[line - 1].strip()
    assert (found[0], found[2]) == (line, "there is no blank after this colon")
    assert found[3] == f"type it as `{typed.replace(':', ': ')}`"


def test_the_line_without_a_colon_is_named():
    """A line of one word above a good one is at fault, and not the good one."""
    assert _said("title: Patio\nfinish\ncompare: [broom]\n")[0] == 2


@pytest.mark.parametrize(
    "text", ["who: 'Dale O'Brien'\n", "a: {who: 'Dale O'Brien', b: c}\n", "a: ['Dale O'Brien']\n"]
)
def test_an_apostrophe_within_quotes(text: str):
    """It is named itself, and the whole text stands in the cure."""
    line, column, message, hint = _said(text)
    assert text.splitlines()[line - 1][column - 1 :].startswith("'Brien")
    assert message == "this apostrophe ends the quotes too soon"
    assert hint == 'put the text in double quotes: "Dale O\'Brien"'


@pytest.mark.parametrize("blank", ["\u00a0", "\u202f", "\u2009"])
def test_a_blank_that_does_not_break_is_a_blank(blank: str):
    """What a phone types for a blank is read as one, after a colon and in a value."""
    read = parse(f"finish:{blank}broom\nsize: 24{blank}ft\n".encode(), "job.yaml")
    assert isinstance(read, Document)
    assert read.content == {"finish": "broom", "size": "24 ft"}


@pytest.mark.parametrize("dash", ["\u2013", "\u2014"])
def test_a_long_dash_begins_an_item(dash: str):
    """A dash as a phone types it begins an item of a list; within a text it stays."""
    read = parse(f"items:\n  {dash} id: a\n  - id: b {dash} c\n".encode(), "job.yaml")
    assert isinstance(read, Document)
    assert read.content == {"items": [{"id": "a"}, {"id": f"b {dash} c"}]}
