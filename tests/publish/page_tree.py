"""A page taken apart into a tree: what of it is seen, and what it is after a choice."""

import xml.etree.ElementTree as ET
from collections.abc import Iterable, Iterator, Mapping
from html.parser import HTMLParser

from quotegen.explain.sheets.choice_views import ChoiceSheet, CombinationTexts, TextRows
from tests.publish.built import BLOCKS

VOID = frozenset({"br", "hr", "img", "input", "link", "meta"})
UNSEEN = frozenset({"script", "style", "title", "desc"})
NO_RUNNING_TEXT = UNSEEN | {"svg", "thead", "caption"}
NOT_RUNNING = frozenset({"title-block", "label", "key", "hidden", "screen-only", "narrow"})
"""Classes of what is a label, or is not on paper."""


class _Builder(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.tree = ET.TreeBuilder()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tree.start(tag, {name: value or "" for name, value in attrs})
        if tag in VOID:
            self.tree.end(tag)

    def handle_endtag(self, tag: str) -> None:
        if tag not in VOID:
            self.tree.end(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tree.start(tag, {name: value or "" for name, value in attrs})
        self.tree.end(tag)

    def handle_data(self, data: str) -> None:
        self.tree.data(data)


def page_tree(page: str) -> ET.Element:
    """Return a page as a tree; our templates close every element that is not void."""
    builder = _Builder()
    builder.feed(page.partition(">")[2].strip())  # without the doctype
    builder.close()
    return builder.tree.close()


def seen(element: ET.Element, *, without: frozenset[str] = frozenset()) -> str:
    """Return the text of an element, what is hidden left out.

    Args:
        element: with all that is in it.
        without: classes and ids whose elements are left out too.
    """
    return " ".join(" ".join(_texts(element, without)).split())


def running_words(page: str, sheets: Iterable[str], *statutory: str) -> tuple[str, ...]:
    """Return the running text of sheets on paper, each paragraph, cell or name apart.

    Left out are title blocks, drawings, labels and heads of columns, and what a law words.

    Args:
        page: a paper's HTML.
        sheets: the ids of its sections.
        statutory: paragraphs about what a law words.
    """
    tree = page_tree(page)
    sections = {one.get("id"): one for one in tree.iter("section")}
    texts = (text for name in sheets for text in _running(sections[name]))
    legal = {" ".join(one.split()) for one in statutory}
    return tuple(text for text in texts if text not in legal)


def _running(element: ET.Element) -> Iterator[str]:
    named = {*element.get("class", "").split()}
    if element.tag in NO_RUNNING_TEXT or named & NOT_RUNNING:
        return
    if not any(inner.tag in BLOCKS for inner in element.iter() if inner is not element):
        if text := seen(element, without=NOT_RUNNING):
            yield text
        return
    if own := " ".join((element.text or "").split()):
        yield own
    for child in element:
        yield from _running(child)
        if after := " ".join((child.tail or "").split()):
            yield after


def _texts(element: ET.Element, without: frozenset[str]) -> Iterator[str]:
    named = {*element.get("class", "").split(), element.get("id", "")}
    if "hidden" in element.attrib or element.tag in UNSEEN or named & without:
        return
    yield element.text or ""
    for child in element:
        yield from _texts(child, without)
        yield child.tail or ""


def choose(page: ET.Element, choice: ChoiceSheet, one: CombinationTexts) -> None:
    """Show a combination on a page, in place, as the theme's script does.

    A list without its place on the page, and a row with other cells than the page has, is a fault.
    """
    texts = dict(zip(choice.text_names, one.texts, strict=True))
    lists = dict(zip(choice.row_names, one.rows, strict=True))
    other = one.key != choice.combinations[0].key
    for element in page.iter():
        _fill(element, texts, lists, other=other)
        if "data-quoted" in element.attrib:
            _hide(element, hidden=other)
        if "data-differs" in element.attrib:
            _hide(element, hidden=not other)


def _fill(
    element: ET.Element, texts: Mapping[str, str], lists: Mapping[str, TextRows], *, other: bool
) -> None:
    slot, rows = element.get("data-slot"), element.get("data-rows")
    if slot is not None:
        _write(element, texts[slot])
    if rows is not None and other:
        quoted = list(element)
        for row in quoted:
            element.remove(row)
        for number, cells in enumerate(lists[rows]):
            element.append(_row(quoted[min(number, len(quoted) - 1)], cells))


def _row(like: ET.Element, cells: tuple[str, ...]) -> ET.Element:
    row = ET.Element(like.tag)
    tags = [cell.tag for cell in like]
    assert len(tags) == len(cells), (tags, cells)
    for tag, text in zip(tags, cells, strict=True):
        ET.SubElement(row, tag).text = text
    return row


def _write(element: ET.Element, text: str) -> None:
    for child in list(element):
        element.remove(child)
    element.text = text


def _hide(element: ET.Element, *, hidden: bool) -> None:
    if hidden:
        element.set("hidden", "")
    else:
        element.attrib.pop("hidden", None)
