"""Views to HTML: safe, closed, the same each time, and with no word or sum of a template's own."""

import base64
import hashlib
import html
import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
import yaml
from jinja2 import Environment, nodes
from jinja2.exceptions import UndefinedError
from markupsafe import Markup

from quotegen.explain.papers.letters import Letter, letters_of
from quotegen.explain.private.cost_sheet import cost_sheet
from quotegen.explain.private.phone_sheet import phone_sheet
from quotegen.explain.results import Results
from quotegen.explain.sheets.customer import customer_view
from quotegen.explain.sheets.views import CustomerView
from quotegen.explain.wording import Words
from quotegen.explain.words.no_break import NO_BREAK
from quotegen.pipeline import PricedJob, figure, read_shared
from quotegen.publish.web.contrast import accent_ink
from quotegen.publish.web.html import BetweenTags, policy, render, styles_of, tied_with
from quotegen.resources import content_folder, themes_folder
from tests.world import PATIO, write_world

THEME = themes_folder() / "shop"
TEMPLATES = sorted(THEME.parent.rglob("*.j2"))  # of every theme
LETTERS = ("email.html.j2", "email.txt.j2")
WEB_PAGES = ("quote.html.j2", "door-sheet.html.j2")
SHARP_NAME = '<b>Wren & "Co"'


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> PricedJob:
    """Return stages 1 to 4 of a small patio whose owner has a name full of markup."""
    job = PATIO.replace("Wren Abernathy", f"'{SHARP_NAME}'")
    house = read_shared()
    assert not isinstance(house, tuple), house
    figured = figure(write_world(tmp_path_factory.mktemp("patio"), job), house)
    assert figured.results is not None, figured.problems
    return figured


@pytest.fixture(scope="module")
def results(made: PricedJob) -> Results:
    """Return its results."""
    assert made.results is not None
    return made.results


@pytest.fixture(scope="module")
def view(results: Results) -> CustomerView:
    """Return what the customer may see of it."""
    return customer_view(results)


@pytest.fixture(scope="module")
def letter(results: Results) -> Letter:
    """Return the letter that goes with the quote."""
    return letters_of(results)[0]


@pytest.fixture(scope="module")
def words(results: Results) -> Words:
    """Return the fixed words in English."""
    return results.words


def theme_of(folder: Path, template: str) -> Path:
    """Make a theme of one template."""
    (folder / "fonts").mkdir()
    (folder / "theme.yaml").write_text("styles: {}\n", encoding="utf-8")
    (folder / "page.html.j2").write_text(template, encoding="utf-8")
    return folder


def source(path: Path) -> str:
    """Return a template's text without its comments."""
    return re.sub(r"\{#.*?#\}", "", path.read_text(encoding="utf-8"), flags=re.DOTALL)


def words_asked(path: Path) -> Iterator[nodes.Call]:
    """Yield each call of `t` in a template."""
    for call in Environment().parse(source(path)).find_all(nodes.Call):
        if isinstance(call.node, nodes.Name) and call.node.name == "t":
            yield call


def needs(text: str) -> set[str]:
    """Return the names of the values that a fixed text takes."""
    return set(re.findall(r"\{(\w+)\}", text))


def labels() -> dict[str, str]:
    """Return every fixed word."""
    return {
        key: text
        for file in ("labels.yaml", "sentences.yaml")
        for key, text in yaml.safe_load((content_folder() / file).read_text("utf-8")).items()
    }


def scripted(page: str) -> str:
    """Return the text of the one script of a page, nothing where it has none."""
    found = re.findall(r"<script>(.*?)</script>", page, flags=re.DOTALL)
    assert len(found) <= 1
    return "".join(found)


def styled(page: str) -> str:
    """Return the text of the one style element of a page."""
    found = re.findall(r"<style>(.*?)</style>", page, flags=re.DOTALL)
    assert len(found) == 1
    return str(found[0])


class TestRender:
    """What `render` promises of every page."""

    @pytest.mark.parametrize("wrong", ["{{ view.cost }}", "{{ margin }}", "{{ view.price.floor }}"])
    def test_a_name_that_is_not_there_is_an_error(self, wrong, view, words, tmp_path):
        """A template that asks for a field that the view lacks fails, and prints nothing."""
        with pytest.raises(UndefinedError):
            render("page.html.j2", view, words, theme_of(tmp_path, wrong))

    def test_a_missing_word_is_an_error(self, view, words, tmp_path):
        """A template that asks for a fixed word that content/ lacks fails."""
        with pytest.raises(LookupError, match="no_such_word"):
            render("page.html.j2", view, words, theme_of(tmp_path, '{{ t("no_such_word") }}'))

    @pytest.mark.parametrize("template", WEB_PAGES)
    def test_typed_text_cannot_be_markup(self, template, view, words):
        """A name with angle brackets, an ampersand and quotes is shown as it was typed."""
        page = render(template, view, words, THEME)
        assert "<b>Wren" not in page
        assert SHARP_NAME in html.unescape(page)

    def test_plain_mail_is_not_escaped(self, letter, words):
        """In the plain e-mail the same name stands as it was typed."""
        assert SHARP_NAME in render("email.txt.j2", letter, words, THEME)

    @pytest.mark.parametrize("template", [*WEB_PAGES, *LETTERS])
    def test_same_view_same_page(self, template, view, letter, words):
        """Two renders of a view are the same text."""
        shown = letter if template in LETTERS else view
        assert render(template, shown, words, THEME) == render(template, shown, words, THEME)

    @pytest.mark.parametrize("template", WEB_PAGES)
    def test_the_policy_names_the_one_style_element(self, template, view, words):
        """The policy lets in exactly the style element and the script that are on the page."""
        page = render(template, view, words, THEME)
        digest = base64.b64encode(hashlib.sha256(styled(page).encode()).digest()).decode()
        found = re.search(r'http-equiv="Content-Security-Policy" content="([^"]*)"', page)
        assert found is not None
        said = html.unescape(found[1])
        assert f"style-src 'sha256-{digest}'" in said
        assert said == policy(styled(page), scripted(page))
        assert ("script-src 'none'" in said) == (template != "quote.html.j2")
        for rule in ("default-src 'none'", "base-uri 'none'",
                     "form-action 'none'", "img-src data:", "font-src data:"):  # fmt: skip
            assert rule in said

    @pytest.mark.parametrize("template", WEB_PAGES)
    def test_a_page_reaches_out_to_nothing(self, template, view, words):
        """A page holds its fonts and its one script, and names no address to be fetched."""
        page = render(template, view, words, THEME)
        assert page.count("<script") == (2 if template == "quote.html.j2" else 0)
        assert "src=" not in re.sub(r"<img[^>]*>", "", page)
        assert re.search(r"\son\w+=", page) is None
        assert re.search(r"\sstyle=", page) is None
        assert set(re.findall(r"url\((\w+):", page)) == {"data"}
        assert "@import" not in page
        assert {a.partition(":")[0] for a in re.findall(r'(?:src|href)="([^"#]+)', page)} <= {
            "data", "mailto", "tel",
        }  # fmt: skip

    @pytest.mark.parametrize("template", WEB_PAGES)
    def test_a_browser_never_reads_the_paper_styles(self, template, view, words):
        """The print engine's style sheet is a link on the paper alone, and off even there."""
        printed = render(template, view, words, THEME, on_paper=True)
        links = re.findall(r'<link rel="stylesheet"[^>]*>', printed)
        assert len(links) == 1
        assert " disabled " in links[0]
        assert "<link" not in render(template, view, words, THEME)

    @pytest.mark.parametrize("name", ["cost-sheet", "phone-sheet"])
    def test_the_owners_sheets_render_from_their_own_view(self, name, made, results, words):
        """The owner's sheets are guarded by the same policy as the customer's pages."""
        sheets = {
            "cost-sheet": cost_sheet(results, made.owner, ()),
            "phone-sheet": phone_sheet(results, made.owner),
        }
        page = render(f"{name}.html.j2", sheets[name], words, THEME)
        assert html.escape(policy(styled(page))) in page.replace("&#39;", "&#x27;")

    def test_a_page_wears_the_darkened_accent(self, view, words):
        """The page's style element has the accent in ink, and not the one that was too light."""
        yellow = replace(view, head=replace(view.head, accent="#ffd400"))
        page = render("quote.html.j2", yellow, words, THEME)
        assert f"--accent: {accent_ink('#ffd400')}" in styled(page)
        assert "#ffd400" not in page


def _blanks(page: str) -> str:
    """Return a page with plain blanks where it keeps a number with its unit."""
    return page.replace(NO_BREAK, " ")


SHEETS = ("price", "slab", "finishes", "money", "days", "agreement")


class TestSheets:
    """The quote is a set of six numbered sheets, and the terms behind them."""

    def test_each_sheet_is_a_section_with_a_name(self, view, words):
        """Each sheet has an id, a heading that names it and a place in the index."""
        page = render("quote.html.j2", view, words, THEME)
        sheets = re.findall(r'<section class="sheet[^"]*" id="(\w+)" aria-labelledby="(\S+)"', page)
        assert [name for name, _ in sheets] == [*SHEETS, "terms"]
        for number, (name, heading) in enumerate(sheets, start=1):
            level = "h1" if number == 1 else "h2"
            assert page.count(f'<{level} id="{heading}">') == 1
            assert (f'<li><a href="#{name}">' in page) == (name in SHEETS)

    def test_the_sheets_are_counted(self, view, words):
        """On paper each of the six says its number and how many there are."""
        page = _blanks(render("quote.html.j2", view, words, THEME, on_paper=True))
        for number in range(1, len(SHEETS) + 1):
            said = words("sheet_of", number=str(number), count=str(len(SHEETS)))
            assert page.count(said) == 1

    def test_without_past_jobs_it_says_so(self, view, words):
        """No job of ours to see is said, and not passed over."""
        bare = replace(view, agreement=replace(view.agreement, past_jobs=()))
        page = render("quote.html.j2", bare, words, THEME, on_paper=True)
        assert words.labels["no_past_jobs"] in _blanks(html.unescape(page))

    @pytest.mark.parametrize("on_paper", [False, True])
    def test_no_id_stands_twice(self, view, words, on_paper: bool):
        """Drawings, clauses and sheets share a page, and each id is on it once."""
        page = render("quote.html.j2", view, words, THEME, on_paper=on_paper)
        ids = re.findall(r'\sid="([^"]+)"', page)
        assert len(ids) == len(set(ids))

    def test_both_mails_say_the_same_amounts(self, view, letter, words):
        """The plain e-mail and the HTML e-mail agree on every amount, in the same order."""
        amount = re.compile(r"[+−]?\$[\d,.]*\d")
        shown = re.sub(r"<[^>]*>", "", render("email.html.j2", letter, words, THEME))
        plain = render("email.txt.j2", letter, words, THEME)
        assert amount.findall(html.unescape(shown)) == amount.findall(plain)
        assert view.price.total in plain

    def test_every_line_of_the_price_is_on_the_page(self, view, words):
        """Sheet 4 shows each line with its quantity, rate and amount, and the total."""
        page = _blanks(html.unescape(render("quote.html.j2", view, words, THEME, on_paper=True)))
        sheet = page[page.index('id="money"') :]
        for row in (line for group in view.money.groups for line in group.lines):
            shown = re.search(rf">{re.escape(row.name)}.*?</tr>", sheet, flags=re.DOTALL)
            assert shown is not None, row.name
            for cell in (row.quantity, row.rate, row.amount):
                assert cell in shown[0]
        assert view.money.total in sheet


class TestTemplates:
    """What a template may hold."""

    def test_nothing_is_marked_safe(self):
        """Escaping is never switched off in a template; drawings and prose arrive as markup."""
        broken = [path.name for path in TEMPLATES
                  if re.search(r"\|\s*safe\b|autoescape|\bMarkup\b", source(path))]  # fmt: skip
        assert broken == []

    def test_no_style_attribute(self):
        """Looks stand in the style sheets, where the policy covers them."""
        assert [path.name for path in TEMPLATES if re.search(r"\sstyle=", source(path))] == []

    def test_each_word_asked_for_is_there(self):
        """Each key that a template asks for is a fixed word, and is given the values it needs."""
        known, broken = labels(), []
        for path in TEMPLATES:
            for call in words_asked(path):
                key = call.args[0]
                if not isinstance(key, nodes.Const) or key.value not in known:
                    broken.append(f"{path.name}:{call.lineno}: {key}")
                elif set(re.findall(r"\{(\w+)\}", known[key.value])) != {
                    k.key for k in call.kwargs
                }:
                    broken.append(f"{path.name}:{call.lineno}: values of {key.value}")
        assert broken == []

    def test_a_template_has_no_words_of_its_own(self):
        """Between the tags of a template stands nothing that a reader would read."""
        broken = []
        for path in TEMPLATES:
            bare = re.sub(r"\{\{.*?\}\}|\{%.*?%\}", "", source(path), flags=re.DOTALL)
            bare = re.sub(r"<[^>]*>", "", bare)
            broken += [f"{path.name}: {word}" for word in re.findall(r"[^\W\d_]{2,}", bare)]
        assert broken == []

    def test_the_theme_lists_the_fields_that_it_uses(self):
        """theme.yaml names every field of a view that a template reads, and says what it is."""
        fields = yaml.safe_load((THEME / "theme.yaml").read_text("utf-8"))["fields"]
        used = {name for path in TEMPLATES for name in re.findall(r"\bview\.(\w+)", source(path))}
        assert used - set(fields) == set()
        assert all(isinstance(said, str) and said for said in fields.values())

    def test_each_listed_style_sheet_is_there(self):
        """theme.yaml lists style sheets that exist, for templates that exist."""
        listed = yaml.safe_load((THEME / "theme.yaml").read_text("utf-8"))["styles"]
        for template in listed:
            assert (THEME / template).is_file()
            styles = styles_of(template, THEME, "letter")
            for name in (*styles.page, *styles.paper):
                assert (THEME / "styles" / name).is_file()

    def test_labels_do_not_shout(self):
        """No fixed word has an exclamation mark."""
        assert [key for key, text in labels().items() if "!" in text] == []


@pytest.mark.parametrize("marker", ["=styles=", "=policy=", "{{ css }}", "--accent: #000000"])
def test_what_looks_like_a_marker_is_text(view: CustomerView, words: Words, marker: str):
    """A text that reads like a place for the styles or the policy is printed as it was typed."""
    plain = render("quote.html.j2", view, words, THEME)
    typed = replace(view, head=replace(view.head, title=marker))
    marked = render("quote.html.j2", typed, words, THEME)
    assert marker in re.sub(r"<style>.*?</style>", "", marked, flags=re.DOTALL)
    assert abs(len(marked) - len(plain)) < 500


def _shown(template: str, **values: object) -> str:
    environment = Environment(autoescape=True, extensions=[BetweenTags])
    environment.filters["tied"] = tied_with(lambda text: text.replace(" ", "_"))
    return environment.from_string(template).render(**values)


@pytest.mark.parametrize(
    ("template", "page"),
    [
        ("<p>{{ x }}</p>", "<p>7_days</p>"),
        ("<p>{{ x if x else y }}, {{ 'A ' ~ x }}</p>", "<p>7_days, A_7_days</p>"),
        ('<p title="{{ x }}">', '<p title="7 days">'),
        ('<p{% if x %} title="{{ x }}"{% endif %} class="{{ x }}">{{ x }}',
         '<p title="7 days" class="7 days">7_days'),
        ("{% macro m(y) %}<b>{{ y }}</b>{% endmacro %}{{ m(x) }}", "<b>7_days</b>"),
        ("<title>{{ x | e }}</title>", "<title>7 days</title>"),
    ],
)  # fmt: skip
def test_a_value_is_tied_where_it_is_read(template: str, page: str):
    """Between two tags a value is tied, also through a macro; in a link or a label it is not."""
    assert _shown(template, x="7 days") == page


def test_markup_and_numbers_pass_as_they_are():
    """A drawing that arrives as markup is neither escaped nor tied."""
    assert _shown("{{ x }}{{ y }}", x=Markup("<b>7 m</b>"), y=7) == "<b>7 m</b>7"


def test_a_typed_tag_is_text():
    """What a customer typed cannot become markup on the way."""
    assert _shown("<p>{{ x }}</p>", x="<b>4-3/4 in") == (
        '<p>&lt;b&gt;<span class="tie">4-3/4</span>_in</p>'
    )
