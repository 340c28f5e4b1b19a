"""A paper laid out by the print engine, to be asked what stands where on its pages."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import date
from typing import Any, TypeAlias
from unittest.mock import patch

from weasyprint import HTML
from weasyprint.urls import URLFetcher

from quotegen.publish.pdf import to_pdf

HEADINGS = frozenset({"h1", "h2", "h3", "h4", "caption", "thead"})
SLACK_PX = 1.0
UNPRINTABLE_PX = 8.0
"""At the foot of a sheet, where a printer's rollers hold it; common practice is 2 to 6 mm."""

Pages: TypeAlias = dict[str, list[Any]]
"""The pages of each paper, by its HTML."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A line of text on a page: its words, its own box, and the boxes that it is in."""

    page: int
    words: str
    box: Any
    inside: tuple[Any, ...]

    @property
    def right_px(self) -> float:
        """Where it ends."""
        return float(self.box.position_x + self.box.width)

    @property
    def tags(self) -> frozenset[str]:
        """The elements that it is in."""
        return frozenset(box.element_tag for box in self.inside if box.element_tag)


@contextmanager
def keeping_pages() -> Iterator[Pages]:
    """Print packages as ever, and keep the pages as they are laid out for it."""
    pages: Pages = {}
    real = HTML.render

    def render(document: HTML, *given: Any, **more: Any) -> Any:
        done = real(document, *given, **more)
        laid.append(_boxes(done))
        return done

    def print_and_keep(html: str, dated: date) -> bytes:
        pdf = to_pdf(html, dated)
        pages[html] = laid.pop()
        return pdf

    laid: list[list[Any]] = []
    with (
        patch.object(HTML, "render", render),
        patch("quotegen.publish.package.to_pdf", print_and_keep),
    ):
        yield pages


def laid_out(html: str) -> list[Any]:
    """Return the pages of a paper that is not printed for its PDF."""
    fetcher = URLFetcher(allowed_protocols=["data"], fail_on_errors=True)
    return _boxes(HTML(string=html, url_fetcher=fetcher).render(pdf_variant="pdf/ua-1"))


def _boxes(document: Any) -> list[Any]:
    return [page._page_box for page in document.pages]


def lines(pages: list[Any]) -> Iterator[Placed]:
    """Yield every text on the pages but the title blocks, in the order of the document."""
    for number, page in enumerate(pages, start=1):
        yield from _texts(page, number, ())


def _texts(box: Any, page: int, above: tuple[Any, ...]) -> Iterator[Placed]:
    box = getattr(box, "_box", box)  # what stands by itself is wrapped
    kind = type(box).__name__
    if kind == "MarginBox":
        return
    if kind == "TextBox":
        if box.text.strip():
            yield Placed(page, box.text.strip(), box, above)
        return
    for child in getattr(box, "children", ()):
        yield from _texts(child, page, (*above, box))


def past_the_edge(pages: list[Any]) -> list[str]:
    """Return each text that runs out of the sheet's printed part or out of its table cell."""
    out = []
    for line in lines(pages):
        page = line.inside[0]
        limits = [page.content_box_x() + page.width]
        cells = [box for box in line.inside if type(box).__name__ == "TableCellBox"]
        limits += [cell.position_x + cell.margin_width() for cell in cells]
        if line.right_px > min(limits) + SLACK_PX:
            out.append(f"page {line.page}: {line.words}")
    return out


def words_on_others(pages: list[Any]) -> list[str]:
    """Return each two texts that lie on one another."""
    placed, found = sorted(lines(pages), key=lambda line: (line.page, line.box.position_y)), []
    for n, one in enumerate(placed):
        for other in placed[n + 1 :]:
            down = one.box.position_y + one.box.height - other.box.position_y
            if other.page != one.page or down < 0.4 * other.box.height:
                break
            starts = max(one.box.position_x, other.box.position_x)
            if min(one.right_px, other.right_px) > starts + SLACK_PX:
                found.append(f"page {one.page}: {one.words} | {other.words}")
    return found


def title_blocks_off_the_paper(pages: list[Any]) -> list[str]:
    """Return each text of a title block that is not whole on the printable part of its sheet."""
    out = []
    for number, page in enumerate(pages, start=1):
        right = page.content_box_x() + page.width + SLACK_PX
        foot = page.margin_height() - UNPRINTABLE_PX
        for block in page.children:
            if type(block).__name__ != "MarginBox":
                continue
            for child in block.children:
                out += [
                    f"page {number}: {line.words}"
                    for line in _texts(child, number, (page,))
                    if line.right_px > right
                    or line.inside[-1].position_y + line.inside[-1].height > foot
                ]
    return out


def headings_at_the_foot(pages: list[Any]) -> list[str]:
    """Return the last text of each page that is a heading and has its matter overleaf."""
    last = {line.page: line for line in lines(pages)}
    return [f"page {number}: {line.words}" for number, line in last.items()
            if line.tags & HEADINGS and number < len(pages)]  # fmt: skip


def rows_over_two_pages(pages: list[Any]) -> list[str]:
    """Return a text of each table row that begins on one page and ends on another."""
    first: dict[int, Placed] = {}
    split = []
    for line in lines(pages):
        for box in line.inside:
            if box.element_tag == "tr" and "thead" not in line.tags:
                began = first.setdefault(id(box.element), line)
                if began.page != line.page:
                    split.append(f"pages {began.page} and {line.page}: {began.words}")
    return split
