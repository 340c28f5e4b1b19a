"""YAML text to text, lists and mappings that know where they stand."""

import pytest
import yaml

from quotegen.reading.yaml.located import Document, parse, path_text

TYPED = b"""\
quote: 2026-041
site:
  town: Harrow Bend
placements:
  - id: deck
    thickness: 4 in
  - {id: walk, at: [0, 7 ft]}
"""


def _document(data: bytes) -> Document:
    document = parse(data, "job.yaml")
    assert isinstance(document, Document), document
    return document


def _codes(data: bytes) -> list[str]:
    problems = parse(data, "job.yaml")
    assert isinstance(problems, tuple)
    return [problem.code for problem in problems]


@pytest.mark.parametrize(
    "typed",
    ["1e3", "yes", "no", "on", "0x10", "010", "1_000", "2026-05-14", "12:30", "~", "null", "true",
     ".inf", "9.50", "$9.50 / sq ft", "24' 6-1/2\"", "-3 ft", "7 %"],
)  # fmt: skip
def test_every_value_stays_text(typed: str):
    """YAML makes no number, date, truth or nothing of what was typed."""
    assert _document(f"value: {typed}\n".encode()).content == {"value": typed}


def test_every_key_stays_text():
    """A key that looks like a number or a truth is a word like any other."""
    assert _document(b"2026: a\nyes: b\n~: c\n").content == {"2026": "a", "yes": "b", "~": "c"}


@pytest.mark.parametrize(
    ("path", "key", "value"),
    [
        (("quote",), (1, 1), (1, 8)),
        (("site", "town"), (3, 3), (3, 9)),
        (("placements",), (4, 1), (5, 3)),
        (("placements", 0), (5, 5), (5, 5)),
        (("placements", 0, "thickness"), (6, 5), (6, 16)),
        (("placements", 1), (7, 5), (7, 5)),
        (("placements", 1, "at", 1), (7, 24), (7, 24)),
    ],
)
def test_lines_and_columns_count_from_one(path, key, value):
    """Each key and each value has its place, as an editor shows it."""
    document = _document(TYPED)
    places = (document.places.of_key(path), document.places.of(path))
    assert [(place.line, place.column) for place in places] == [key, value]


def test_a_place_that_is_not_there_is_the_nearest_above():
    """What is missing is looked for where it would stand."""
    document = _document(TYPED)
    assert document.places.of(("site", "address")).line == 3
    assert document.places.of(("placements", 0, "add", 2, "circle")).line == 5
    assert str(document.places.of_key(("title",))) == "job.yaml:1:1"


def test_a_byte_order_mark_is_no_text():
    """Some editors put a mark before the first letter; it neither counts nor shows."""
    document = _document(b"\xef\xbb\xbfquote: T-1\n")
    assert document.content == {"quote": "T-1"}
    assert document.places.of_key(("quote",)).column == 1


def test_lines_may_end_as_on_windows():
    """A carriage return before the line end is no part of a value."""
    document = _document(b"quote: T-1\r\nsite: {town: Ashwick}\r\n")
    assert document.content == {"quote": "T-1", "site": {"town": "Ashwick"}}
    assert document.places.of(("site", "town")).line == 2


@pytest.mark.parametrize(
    ("data", "text"),
    [(b"note: |\n  one\n  two\n", "one\ntwo\n"), (b"note: one\n  two\n", "one two"),
     (b'note: "a: b # c"\n', "a: b # c"), (b"note: 'it''s'\n", "it's"), (b"note: # none\n", "")],
)  # fmt: skip
def test_yaml_text_styles(data: bytes, text: str):
    """Blocks, folded lines and both quotes are text."""
    assert _document(data).content == {"note": text}


def test_a_duplicate_key_keeps_the_first():
    """A key that stands twice is a fault wherever it stands, also when it holds much."""
    assert _codes(b"a: 1\nb: {c: 1, c: {d: [1, 2]}}\na: [1, {e: 2}]\n") == ["duplicate-key"] * 2


def test_a_tag_makes_nothing_of_a_text():
    """A tag is refused, so nothing is built from a file but text."""
    assert _codes(b"note: !!python/object/apply:os.system [ls]\n") == ["tag"]
    assert _codes(b"note: ! call\n") == ["tag"]
    assert _codes(b"note: !urgent call\n") == ["tag"]


@pytest.mark.parametrize(
    "value", [b'"\\0"', b'"\\ud800"', b'"a\\x1bb"', b'"\\UFFFFFFFF"', b'"\\U00110000"', b'"\\x7f"']
)
def test_escapes_bring_in_nothing_that_text_cannot_hold(value: bytes):
    """A control character is refused, however it is typed."""
    assert _codes(b"note: " + value + b"\n") == ["control-character"]


def test_letters_of_every_language_are_text():
    """Names are kept as they are written."""
    assert _document("name: Zoë Ångström-Nguyễn 李 🏊\n".encode()).content == {
        "name": "Zoë Ångström-Nguyễn 李 🏊"
    }


def test_nesting_to_thirty_levels_is_read():
    """The limit on nesting stands well beyond what a job needs."""
    assert isinstance(parse(b"a: " + b"[" * 29 + b"]" * 29, "job.yaml"), Document)
    assert _codes(b"a: " + b"[" * 31 + b"]" * 31) == ["too-deep"]


@pytest.mark.parametrize(
    ("path", "text"),
    [
        ((), ""),
        (("site", "town"), "site.town"),
        (("placements", 0, "add", 1, "outline", 2), "placements[0].add[1].outline[2]"),
    ],
)
def test_paths_read_like_the_document(path: tuple[str | int, ...], text: str):
    """Items count from zero in a path, as in other tools."""
    assert path_text(path) == text


@pytest.mark.parametrize("text", [
    "a: {b: , c: 1}", "a: [b: ]", "a: {b: 1?, c: why?}", "a:\tb", "a: [!x, {b: 1]", "\ufeffa: b",
    "a: {b: one\ufefftwo}", "a: [b, {c: 'd'}]\nb:\n  - c: \"e\"\n    f: |\n      g\n",
])  # fmt: skip
def test_the_quick_loader_says_what_the_slow_one_says(text: str, monkeypatch: pytest.MonkeyPatch):
    """What libyaml would let pass, or place otherwise, PyYAML reads: places and words are its."""
    quick = parse(text.encode(), "x.yaml")
    monkeypatch.setattr("quotegen.reading.yaml.located._FAST", yaml.SafeLoader)
    slow = parse(text.encode(), "x.yaml")
    assert quick == slow
    if isinstance(quick, Document) and isinstance(slow, Document):
        assert (quick.places.keys, quick.places.values) == (slow.places.keys, slow.places.values)
