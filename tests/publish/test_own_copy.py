"""`quotegen copy`: a page or a file of a theme, told which version of ours it was made of."""

from pathlib import Path

from click.testing import CliRunner

from quotegen.cli import commands
from quotegen.pipeline import figure
from quotegen.publish.own_copy import own_copies
from quotegen.reading.content.content import ROOMS
from tests.pricing import shop
from tests.world import write_world

NAMES = ("clauses/warranty", "scope/base", "shop/styles/tokens.css", "shop/title-block.html.j2")


def test_a_copy_changes_nothing(tmp_path: Path):
    """Copied and left as it is, all reads and looks as before, and nothing is behind."""
    job = write_world(tmp_path, shop.job(), rate_book=shop.book())
    done = CliRunner().invoke(commands, ["copy", *NAMES, "--company", str(job.parent)])
    assert done.exit_code == 0, done.output
    made, before = figure(job, shop.shared()), shop.shared().content
    assert made.results is not None
    assert [one for one in made.problems if one.code not in shop.OF_A_SHORT_BOOK] == []
    content = made.results.content
    assert content.clauses["warranty"].markdown == before.clauses["warranty"].markdown
    assert content.clauses["warranty"].front.of == before.clauses["warranty"].digest


def test_what_lies_there_stays(tmp_path: Path):
    """A page that the owner has changed is never written over."""
    page = tmp_path / "content" / "clauses" / "warranty.md"
    page.parent.mkdir(parents=True)
    page.write_text("mine", encoding="utf-8")
    done = CliRunner().invoke(commands, ["copy", *NAMES, "--company", str(tmp_path)])
    assert (done.exit_code, page.read_text(encoding="utf-8")) == (0, "mine")
    assert "warranty.md: is there already" in done.output
    assert (tmp_path / "themes" / "shop" / "styles" / "tokens.css").is_file()


def test_a_name_that_nothing_has():
    """One wrong name, and nothing is copied; the near miss is said."""
    copies, (found,) = own_copies(("clauses/waranty",))
    assert (copies, found.code) == ({}, "own-page-unknown")
    assert found.hint == "did you mean `clauses/warranty`?"


def test_a_copy_for_a_language_lies_in_its_folder(tmp_path: Path):
    """Pages and words to be translated go into content/es; another name of a language is none."""
    names = ("labels", "glossary", "safety/silica")
    typed = ["copy", *names, "--company", str(tmp_path), "--language"]
    assert CliRunner().invoke(commands, [*typed, "es"]).exit_code == 0
    there = {path.relative_to(tmp_path / "content/es").as_posix()
             for path in tmp_path.rglob("*") if path.is_file()}  # fmt: skip
    assert there == {"labels.yaml", "glossary.yaml", "safety/silica.md", "language.yaml"}
    locale = (tmp_path / "content/es/language.yaml").read_text(encoding="utf-8")
    assert locale == "locale: es_US\n"
    assert CliRunner().invoke(commands, [*typed, "../x"]).exit_code == 2


def test_a_whole_language_is_begun(tmp_path: Path):
    """Without a name all of English is copied, and all of it counts as still English."""
    job = write_world(tmp_path, shop.job(language="es"), rate_book=shop.book())
    typed = ["copy", "--company", str(tmp_path)]
    assert CliRunner().invoke(commands, typed).exit_code == 2
    assert CliRunner().invoke(commands, [*typed, "--language", "es"]).exit_code == 0
    lacking = [one for one in shop.faults(job) if one.code == "language-lacks"]
    assert len(lacking) == len(shop.faults(job)) == 1 + len(ROOMS)
    assert (tmp_path / "content/es/care/first-day.md").is_file()
