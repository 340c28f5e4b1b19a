"""A theme in the owner's folder: file by file before ours, and checked before a page is made."""

from pathlib import Path

import pytest

from quotegen.pipeline import figure
from quotegen.publish.package import specimens
from quotegen.publish.web import themes
from quotegen.reading.content.content import digest_of
from quotegen.resources import themes_folder
from tests.pricing import shop
from tests.world import write_world

SHOP = themes_folder() / "shop"


def _with(folder: Path, theme: str, **files: str) -> Path:
    """A job whose company has a theme; `__` parts folders, the last `_` the ending."""
    folder.mkdir(exist_ok=True)
    job = write_world(folder, shop.job(), rate_book=shop.book(), company=shop.company(theme=theme))
    for name, text in files.items():
        path = job.parent / "themes" / theme / name.replace("__", "/").replace("_", ".")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return job


def test_single_files_stand_before_ours(tmp_path: Path):
    """A folder with the name of a theme of ours changes what lies in it, and nothing else."""
    job = _with(tmp_path, "shop", styles__tokens_css=":root { --accent: #000000; }\n")
    made = figure(job, shop.shared())
    assert made.results is not None, made.problems
    theme = themes.theme_of(made.results.job)
    assert themes.read(theme, "styles/tokens.css").startswith(":root { --accent")
    assert themes.find(theme, "quote.html.j2") == SHOP / "quote.html.j2"
    assert themes.settings(theme, "font") == themes.settings(SHOP, "font")


@pytest.mark.usefixtures("unprinted")
def test_a_theme_of_ones_own_is_in_the_specimen(tmp_path: Path):
    """It builds on one of ours, a company may choose it, and the specimen shows it beside ours."""
    job = _with(tmp_path, "barn", theme_yaml="name: barn\nbuilds_on: shop\n",
                styles__tokens_css="/* barn */")  # fmt: skip
    made = figure(job, shop.shared())
    assert made.results is not None, made.problems
    files = specimens(made.results)
    assert {"barn.html", "shop.html", "notebook.html"} <= files.keys()
    assert b"/* barn */" in files["barn.html"]
    assert b"/* barn */" not in files["shop.html"]


@pytest.mark.parametrize(
    ("files", "said"),
    [
        ({"x_css": ""}, "has no theme.yaml"),
        ({"theme_yaml": "name: [barn"}, "not what theme.yaml may say"),
        ({"theme_yaml": "font: big"}, "not what theme.yaml may say"),
        ({"theme_yaml": "builds_on: barn"}, "cannot build on `barn`"),
        ({"theme_yaml": "builds_on: ship"}, "cannot build on `ship`"),
        ({"theme_yaml": "builds_on: shop", "care.html_j2": "{{ view.prise }}"}, "`view.prise`"),
        ({"theme_yaml": "builds_on: shop", "care.html_j2": "{% if %}"}, "cannot be read"),
        ({"theme_yaml": "builds_on: shop\nstyles: {care.html.j2: {page: [no.css]}}"},
         "no file `styles/no.css`"),
    ],
)  # fmt: skip
def test_a_theme_that_cannot_work_is_refused(tmp_path: Path, files: dict[str, str], said: str):
    """The owner reads which file and why, and no page is begun."""
    found = shop.faults(_with(tmp_path, "barn", **files))
    assert {one.code for one in found} == {"own-theme"}
    assert said in found[0].message


def test_a_copy_says_when_ours_has_changed_since(tmp_path: Path):
    """A copy that names another version of our file is warned of, one of this version is not."""
    ours = SHOP / "styles" / "tokens.css"
    text, now = ours.read_text("utf-8"), digest_of(ours.read_bytes())
    old = _with(tmp_path / "old", "shop", styles__tokens_css=f"/* of: 00000000 */\n{text}")
    new = _with(tmp_path / "new", "shop", styles__tokens_css=f"/* of: {now} */\n{text}")
    (found,) = shop.faults(old)
    assert (found.code, found.severity) == ("own-page-behind", "warning")
    assert f"`of: {now}`" in found.hint
    assert shop.faults(new) == ()
