"""The light page: shorter, and the same to a reader."""

import re

import pytest

from quotegen.explain.drawing import svg
from quotegen.publish.web.lean import lean
from quotegen.publish.web.lean_drawing import lean_drawings
from quotegen.publish.web.lean_path import path_in_steps


def _page(*drawn: str) -> str:
    return "".join(str(svg.drawing((90, 90), one, title="A", ident=f"d{i}").svg) for i, one in
                   enumerate(drawn))  # fmt: skip


def test_looks_that_repeat_become_a_class():
    """SVG 2, 6.6: a rule of a style sheet says what the attributes said."""
    page, rules = lean_drawings(_page(svg.line((0, 0), (9, 9)), svg.line((1, 1), (5, 5))))
    assert "stroke=" not in page
    (name,) = set(re.findall(r'<path class="(\w+)"', page))
    assert f".{name}{{fill:none;stroke:#1a1a1a;stroke-width:0.8}}" in rules


def test_a_halo_is_painted_under_its_own_letters():
    """A text that was written twice is there once, and is used before itself for its halo."""
    page, rules = lean_drawings(_page(svg.text((5, 5), "16 ft", halo=True)))
    assert page.count("16 ft") == 1
    assert '<use href="#h0"/><text id="h0"' in page
    assert rules.startswith("use{stroke:#fff")
    assert "text{fill:#1a1a1a}" in rules


def test_a_drawing_is_named_by_its_title():
    """SVG-AAM, 5.2: the title in it names it, so that nothing has to point there."""
    page, _ = lean_drawings(_page(svg.line((0, 0), (9, 9))))
    assert "<title>A</title>" in page
    assert "aria-labelledby" not in page


@pytest.mark.parametrize(
    ("ring", "short"),
    [
        ([(0.0, 0.0), (10.0, 0.0), (10.0, 5.5)], "M0 0h10v5.5Z"),
        ([(-1.0, 2.0), (-3.5, 2.1)], "M-1 2l-2.5.1Z"),
    ],
)
def test_a_path_is_written_in_exact_steps(ring, short: str):
    """SVG 2, 9.3.4: steps from point to point add up to the points, to a tenth of a pixel."""
    path = svg.element("path", d=svg.rings_path([ring]), fill="url(#x)")
    page, _ = lean_drawings(_page(path))
    assert f'd="{short}"' in page


@pytest.mark.parametrize(
    ("data", "short"),
    [
        ("M5 5 L5 9 M7 5 L7 9", "M5 5v4M7 5v4"),
        ("M123 45.5 L125 45.5 M126 46 L126 50", "M123 45.5h2m1 .5v4"),
        ("M0 0 A60 60 0 0 1 0.5 60 L9 60", "M0 0a60 60 0 01.5 60h8.5"),
        ("M2.5 1 l3 -5 l3 5 Z", "M2.5 1l3-5 3 5Z"),
        ("M0 5.2Q74 5.1 150 5.2M0 18.0Q88 18.9 150 18.0", "M0 5.2q74-.1 150 0M0 18q88 .9 150 0"),
        ("M1.25 2 L3 4", "M1.25 2 L3 4"),
        ("M1 2 C3 4 5 6 7 8", "M1 2 C3 4 5 6 7 8"),
    ],
)
def test_path_data_is_as_short_as_it_can_be(data: str, short: str):
    """SVG 2, 9.3: steps along an axis, commands once, flags together; what is not ours stays."""
    assert path_in_steps(data) == short


def test_equal_patterns_are_there_once():
    """Two drawings with the same hatch share the first one's."""
    hatch = '<defs><pattern id="{0}" width="8" height="8"><circle r="2"/></pattern></defs>'
    field = '<rect width="9" height="9" fill="url(#{0})"/>'
    page, _ = lean_drawings(_page(*((hatch + field).format(name) for name in ("p1", "p2"))))
    assert page.count("<pattern") == 1
    assert page.count("url(#p1)") == 2


def test_the_page_says_the_same_in_fewer_letters():
    """End tags, quotes and long names go; the words stay (HTML, 13.1.2.4, optional tags)."""
    cell = '<td class="num" data-label="Price, with tax">{}</td>'
    page, css = lean(
        f'<table>\n  <tr class="quoted">{cell.format("$5")}\n  {cell.format("$6")}'
        f'{cell.format("9&#39;-0&#34;")}</tr>\n</table>\n<p class="small unruled">Ends</p>',
        ":root{--ink:#000;--unread:1px}.num{text-align:right}.gone{color:red}"
        "tr.quoted>td{color:var(--ink)}.small{margin:0}td::before{content:var(--label)}",
    )
    assert page == (
        "<table><tr class=b><td class=a data-l=a>$5<td class=a data-l=a>$6"
        "<td class=a data-l=a>9'-0\"</tr></table><p class=c>Ends</p>"
    )
    assert css == (
        ":root{--ink:#000;}.a{text-align:right}tr.b>td{color:var(--ink)}.c{margin:0}"
        "td::before{content:var(--label)}"
        '[data-l=a]{--label:"Price, with tax"}'
    )


def test_a_name_of_a_few_cells_stays_in_them():
    """A rule of the style sheet would be longer than the name that two cells carry."""
    page, css = lean('<table><tr><td data-label="Rise">5</td></tr></table>', "")
    assert page == "<table><tr><td data-l=Rise>5</tr></table>"
    assert css == ""


def test_scripts_are_left_alone():
    """Nothing in a script is taken for markup."""
    script = '<script>const a = "<p class=\\"x\\">";\n</script>'
    page, _ = lean(f'<p class="x">A</p>\n{script}', "")
    assert script in page


def test_a_rule_for_all_but_a_class_holds_where_nothing_has_it():
    """`:not(.brief)` is every table where none is brief; a list in brackets stays whole."""
    css = ":where(table:not(.brief)) :is(td,th){margin:0}.brief td,b :is(i,u){color:red}"
    _, without = lean("<table><tr><td>5</td></tr></table>", css)
    assert without == ":where(table) :is(td,th){margin:0}b :is(i,u){color:red}"
    _, with_one = lean('<table class="brief"><tr><td>5</td></tr></table>', css)
    assert with_one == ":where(table:not(.a)) :is(td,th){margin:0}.a td,b :is(i,u){color:red}"
