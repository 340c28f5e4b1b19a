"""The papers, read as a printer and a screen reader read them."""

import io
import re
import shutil
import subprocess
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import page as ua
import pikepdf
import pytest
import zxingcpp
from PIL import Image

from quotegen.explain.sheets.customer import customer_view
from quotegen.publish.pdf import to_pdf
from quotegen.publish.web.html import render
from quotegen.resources import themes_folder
from tests.browser.conftest import need
from tests.explain.examples import example_view
from tests.pricing.shop import JOBS, example_results, shared
from tests.publish.built import EVERY_BUILT, EVERY_PRINTED, build, built
from tests.publish.page_tree import page_tree, running_words, seen
from tests.publish.paper import (
    headings_at_the_foot,
    keeping_pages,
    laid_out,
    lines,
    past_the_edge,
    rows_over_two_pages,
    title_blocks_off_the_paper,
    words_on_others,
)
from tests.world import EXAMPLES

LETTER, A4 = (612, 792), (595.28, 841.89)
INCLUDED_AT_MOST = 12
SIX = ("price", "slab", "finishes", "money", "days", "agreement")
SHEETS, MOST_WORDS = len(SIX), 2000
# In px of 1/96 in, as the print engine counts.
NINE_POINTS, TEN_POINTS, THIRTY_MM = 12.0, 13.33, 113.3
FLOWING = ("quote", "guide", "compare-bids", "measuring-sheet", "past-jobs", "final-measurement",
           "changes", "care")  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Papers:
    """Every paper of one package by its name: as HTML, as PDF, and as pages laid out for it."""

    html: Mapping[str, str]
    pdfs: Mapping[str, bytes]
    pages: Mapping[str, list[Any]]


@pytest.fixture(scope="module", params=["shop", "notebook"])
def papers(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Papers:
    """A drive with every paper: in the usual theme on Letter, in the other one on A4."""
    home = tmp_path_factory.mktemp(request.param)
    shutil.copytree(EXAMPLES, home, dirs_exist_ok=True)
    if request.param == "notebook":
        with (home / "company.yaml").open("a", encoding="utf-8") as company:
            company.write("theme: notebook\npaper: A4\n")
    with keeping_pages() as pages:
        made = build((home / "jobs" / "cutters-row-drive.yaml",), shared())
    (package,) = made.packages.values()
    assert set(package.printed) == {
        "quote", "guide", "door-sheet", "compare-bids", "measuring-sheet", "past-jobs",
        "final-measurement", "changes", "care",
    }  # fmt: skip
    return Papers(
        html=package.printed,
        pdfs={name: package.files[f"customer/{name}.pdf"] for name in package.printed},
        pages={name: pages[html] for name, html in package.printed.items()},
    )


def test_every_paper_passes_a_checker_of_pdf_ua(papers: Papers):
    """ISO 14289-1 (PDF/UA-1): an independent checker finds no failed rule in any paper."""
    for name, data in papers.pdfs.items():
        report = ua.validate_pdf_bytes(data, profile="ua1")
        assert [f"{name}: {f.rule_id} {f.message}" for f in report.failures] == []
        assert report.is_compliant
        assert report.rules.total > 100


def test_the_checker_of_pdf_ua_sees_a_fault():
    """The checker is not blind: a PDF without tags fails."""
    bare = pikepdf.new()
    bare.add_blank_page()
    out = io.BytesIO()
    bare.save(out)
    assert not ua.validate_pdf_bytes(out.getvalue(), profile="ua1").is_compliant


def test_the_size_of_the_paper(papers: Papers):
    """Each page is Letter, or A4 where the company says so (ISO 216: 210 mm by 297 mm)."""
    sizes = set()
    for data in papers.pdfs.values():
        with pikepdf.open(io.BytesIO(data)) as pdf:
            sizes |= {tuple(float(side) for side in page.mediabox[2:]) for page in pdf.pages}
    assert len(sizes) == 1
    (size,) = sizes
    assert size == pytest.approx(LETTER) or size == pytest.approx(A4, abs=0.01)


def test_fonts_are_embedded_and_subset(papers: Papers):
    """Each font program is in the file, cut to the letters used (ISO 32000-1, 9.6.4 and 9.9)."""
    for name, data in papers.pdfs.items():
        with pikepdf.open(io.BytesIO(data)) as pdf:
            fonts = list(_fonts(pdf))
            assert fonts, name
            for font in fonts:
                assert re.match(r"^/[A-Z]{6}\+", str(font.BaseFont)), str(font.BaseFont)
                descriptor = font.DescendantFonts[0].FontDescriptor
                assert {"/FontFile2", "/FontFile3"} & set(descriptor.keys()), str(font.BaseFont)
                assert "/ToUnicode" in font


def _fonts(pdf: pikepdf.Pdf) -> Iterator[Any]:
    for item in pdf.objects:
        if isinstance(item, pikepdf.Dictionary) and item.get("/Subtype") == "/Type0":
            yield item


def test_no_heading_stands_alone_and_no_row_is_split(papers: Papers):
    """A heading has some of its matter on its page, and a row of a table is on one page."""
    for name in FLOWING:
        pages = papers.pages[name]
        assert headings_at_the_foot(pages) == [], name
        assert rows_over_two_pages(pages) == [], name


def test_nothing_runs_off_the_paper(papers: Papers):
    """Every text ends inside the printed part of the sheet and inside its cell."""
    for name in (*FLOWING, "door-sheet"):
        assert past_the_edge(papers.pages[name]) == [], name


def test_no_words_lie_on_others(papers: Papers):
    """No text of a paper covers another."""
    for name, pages in papers.pages.items():
        assert words_on_others(pages) == [], name


def test_a_title_block_is_whole(papers: Papers):
    """No word of it falls off the side or the foot of the sheet, on no page of any paper."""
    for name, pages in papers.pages.items():
        assert title_blocks_off_the_paper(pages) == [], name


def test_these_eyes_see_a_fault():
    """The reader of pages finds a text that is too wide, a lone heading and a split row."""
    style = (
        "@page { margin: 0; size: 300px 200px } td { width: 40px } p, h2, td { font-size: 16px }"
    )
    tall = "<p>" + "<br>".join("ab" for _ in range(7)) + "</p>"
    page = (
        f'<!DOCTYPE html><html lang="en"><head><title>T</title><style>{style}</style></head><body>'
        "<table><tr><td>Unbreakablewordthatislong</td></tr></table>BODY</body></html>"
    )
    wide = laid_out(
        page.replace("BODY", "<p style='white-space: nowrap'>" + "too wide " * 20 + "</p>")
    )
    assert past_the_edge(wide)
    over = "<p>under</p><p style='margin-top: -30px'>over</p>"
    assert words_on_others(laid_out(page.replace("BODY", over))) == ["page 1: under | over"]
    lone = laid_out(
        page.replace("BODY", f"{tall}<h2>Alone</h2><p style='break-before: page'>Overleaf</p>")
    )
    assert [at.partition(": ")[2] for at in headings_at_the_foot(lone)] == ["Alone"]
    foot = "@page { @bottom-left { content: 'foot'; height: 9px; white-space: nowrap } }"
    off = laid_out(page.replace("</style>", f"{foot}</style>").replace("margin: 0", "margin: 9px"))
    assert title_blocks_off_the_paper(off) == ["page 1: foot"]
    split = laid_out(
        page.replace("BODY", "<table><tr><td>" + "row<br>" * 12 + "</td></tr></table>")
    )
    assert rows_over_two_pages(split)


def test_each_sheet_is_a_bookmark(papers: Papers):
    """The outline of a paper has its h1 and h2 in their order, and no label of a block."""
    for name, data in papers.pdfs.items():
        with pikepdf.open(io.BytesIO(data)) as pdf, pdf.open_outline() as outline:
            titles = [item.title for item in outline.root]
        tree = page_tree(papers.html[name])
        heads = [
            seen(one) for one in tree.iter()
            if one.tag in {"h1", "h2"} and one.get("class") != "label"
        ]  # fmt: skip
        assert [" ".join(title.split()) for title in titles] == heads, name
        assert len(titles) >= (SHEETS if name == "quote" else 1)


def test_each_page_has_its_title_block(papers: Papers):
    """At the foot of each page: quote, revision, date, and the sheet or the page of so many.

    A sheet of the quote has its name and `3 of 6`; other papers count their pages.
    """
    words = shared().content.labels
    sheets = [
        words["sheet_of"].format(number=number, count=SHEETS) for number in range(1, SHEETS + 1)
    ]
    for name, data in papers.pdfs.items():
        with pikepdf.open(io.BytesIO(data)) as pdf:
            count = len(pdf.pages)
        for number in range(1, count + 1):
            text = " ".join(_text(data, number).split())
            assert "2026-029" in text, (name, number)
            assert re.search(r"[Rr]evision", text), (name, number)
            assert re.search(r"[A-Z][a-z]+ \d{1,2}, 20\d\d", text), (name, number)
            if name != "quote":
                assert re.search(rf"\b{number} ?/ ?{count}\b", text), (name, number)
            elif number <= SHEETS:
                assert sheets[number - 1] in text, number
            elif number == SHEETS + 1:
                assert text.endswith(words["terms"]), text[-60:]


def test_text_comes_out_in_reading_order(papers: Papers):
    """The questions of the six sheets come out of the PDF one after the other, as on the page."""
    words, text = shared().content.labels, " ".join(_text(papers.pdfs["quote"]).split())
    asked = [text.index(words[f"ask_{sheet}"]) for sheet in SIX]
    assert asked == sorted(asked)


@EVERY_PRINTED
def test_the_quote_is_six_sheets_and_its_terms(job_file: Path):
    """Each sheet is one page, then come the terms, and the notice twice once it is signed."""
    results = example_results(job_file)
    data = built(job_file)["customer/quote.pdf"]
    with pikepdf.open(io.BytesIO(data)) as pdf:
        pages = len(pdf.pages)
    signed = 2 if results.contract.accepted_on is not None else 0
    assert pages == SHEETS + 1 + signed
    for number, sheet in enumerate(SIX, 1):
        text = " ".join(_text(data, number).split())
        assert results.words(f"ask_{sheet}") in text, sheet
        assert results.words("sheet_of", number=str(number), count=str(SHEETS)) in text, sheet


@EVERY_BUILT
def test_the_six_sheets_are_read_in_a_quarter_of_an_hour(job_file: Path):
    """At most 2,000 running words stand on the six, which `running_words` counts."""
    view, words = example_view(job_file), example_results(job_file).words
    page = render("quote.html.j2", view, words, themes_folder() / "shop", on_paper=True)
    said = running_words(page, SIX, view.agreement.cancel, view.agreement.cancel_statement)
    assert 1000 < sum(len(text.split()) for text in said) <= MOST_WORDS


def test_the_right_to_cancel_stands_in_bold_by_the_signatures():
    """It is bold, 10 points or more, and the next that is read is what both sign.

    16 CFR 429.1(a), as posted by the eCFR and read in copies.
    """
    job = next(path for path in JOBS if path.stem == "larch-row-patio")
    view, words = example_view(job), example_results(job).words
    page = render("quote.html.j2", view, words, themes_folder() / "shop", on_paper=True)
    placed = list(lines(laid_out(page)))
    said = words("cancel_statement").split()
    at = next(n for n, line in enumerate(placed) if line.words.startswith(" ".join(said[:4])))
    statement: list[str] = []
    while len(statement) < len(said):
        style = placed[at].box.style
        assert (style["font_weight"], style["font_size"] >= TEN_POINTS) == (700, True)
        statement += placed[at].words.split()
        at += 1
    assert statement == said
    agreed = words("sign_sentence", quote=view.head.quote, revision=view.head.revision)
    assert agreed.startswith(placed[at].words)


def test_the_door_sheet_is_one_sheet(papers: Papers):
    """One page, and at most a dozen lines of what is included."""
    data = papers.pdfs["door-sheet"]
    with pikepdf.open(io.BytesIO(data)) as pdf:
        assert len(pdf.pages) == 1
    listed = re.search(r"<ul class=\"facts\">(.*?)</ul>", papers.html["door-sheet"], re.DOTALL)
    assert listed
    assert 1 <= listed[1].count("<li>") <= INCLUDED_AT_MOST


@EVERY_PRINTED
@pytest.mark.parametrize("name", ["compare-bids", "past-jobs", "door-sheet"])
def test_what_is_handed_over_alone_is_one_page(job_file: Path, name: str):
    """The sheets for comparing bids, of past jobs and for the door are one page each."""
    with pikepdf.open(io.BytesIO(built(job_file)[f"customer/{name}.pdf"])) as pdf:
        assert len(pdf.pages) == 1


def test_the_sheet_for_comparing_bids_has_room_to_write(papers: Papers):
    """30 mm for each other bid, and type of 9 points or more."""
    pages = papers.pages["compare-bids"]
    blanks, cells = set(), [
        (box, line) for line in lines(pages) for box in line.inside
        if type(box).__name__ == "TableCellBox"
    ]  # fmt: skip
    for box, line in cells:
        assert line.inside[-1].style["font_size"] >= NINE_POINTS, line.words
        if "blank" in (box.element.get("class") or ""):
            blanks.add(round(box.margin_width(), 1))
    assert blanks
    assert min(blanks) >= THIRTY_MM


def test_the_measured_statement_is_one_sheet(papers: Papers):
    """What both sign is on one page, and the headings of its tables have one size."""
    pages = papers.pages["final-measurement"]
    assert len(pages) == 1
    captions = {line.inside[-1].style["font_size"] for line in lines(pages)
                if "caption" in line.tags}  # fmt: skip
    assert len(captions) == 1


def test_a_phone_reads_the_code_on_the_door_sheet(papers: Papers, tmp_path: Path):
    """The printed code opens an e-mail to the company (RFC 6068), and the same is written out."""
    paper = tmp_path / "door.pdf"
    paper.write_bytes(papers.pdfs["door-sheet"])
    subprocess.run(
        [need("pdftoppm", "poppler-utils"), "-r", "300", "-gray", "-png", "-singlefile", paper,
         tmp_path / "door"], check=True,
    )  # fmt: skip
    with Image.open(tmp_path / "door.png") as image:
        (read,) = zxingcpp.read_barcodes(image)
    assert read.text == "mailto:office@pennywort.example?subject=Quote%202026-029"
    text = " ".join(_text(paper.read_bytes()).split())
    assert "office@pennywort.example, subject “Quote 2026-029”" in text
    with pikepdf.open(paper) as pdf:
        said = [str(item.Alt) for item in pdf.objects
                if isinstance(item, pikepdf.Dictionary) and "/Alt" in item]  # fmt: skip
    assert any("office@pennywort.example" in alt and "Quote 2026-029" in alt for alt in said)


def test_a_metric_job_prints_on_a4():
    """Where the company names no paper, a job in meters is A4."""
    results = example_results(EXAMPLES / "jobs" / "ferry-road-drive.yaml")
    theme = themes_folder() / "shop"
    view = customer_view(results)
    html = render("door-sheet.html.j2", view, results.words, theme, on_paper=True)
    with pikepdf.open(io.BytesIO(to_pdf(html, results.job.quote_date))) as pdf:
        size = tuple(float(side) for side in pdf.pages[0].mediabox[2:])
    assert size == pytest.approx(A4, abs=0.01)


def _text(data: bytes, page: int | None = None) -> str:
    span = ["-f", str(page), "-l", str(page)] if page else []
    done = subprocess.run(
        [need("pdftotext", "poppler-utils"), *span, "-", "-"],
        input=data, capture_output=True, check=True,
    )  # fmt: skip
    return done.stdout.decode()
