"""Letters that the bundled fonts have, and texts that need others."""

from io import BytesIO

from fontTools.ttLib import TTFont
from pydantic import BaseModel

from quotegen.reading.yaml.letters import bundled_letters, letter_faults
from quotegen.reading.yaml.located import Places
from quotegen.resources import themes_folder


class _Inner(BaseModel):
    says: tuple[str, ...]


class _File(BaseModel):
    title: str
    inner: dict[str, _Inner]


def _paths(title: str, *said: str) -> list[str]:
    value = _File(title=title, inner={"a": _Inner(says=said)})
    return [problem.path for problem in letter_faults(value, Places("job.yaml"))]


def test_every_theme_has_the_same_letters():
    """So a job that is read can be printed in any of them; held against each font file itself."""
    fonts = sorted(themes_folder().glob("*/fonts/*.woff2"))
    assert len(fonts) >= 4
    for font in fonts:
        opened = TTFont(BytesIO(font.read_bytes()))
        assert set(map(chr, opened.getBestCmap())) == bundled_letters() - {"\n", "\t"}


def test_western_names_and_signs_are_letters():
    """Names of Western Europe, quotes and dashes (ISO 8859-1, from memory) can be set."""
    assert _paths("Zoë Núñez-Østergård, “Café”, 7 × 5 — ½", "Jürgen", "two\nlines") == []


def test_names_of_all_europe_and_of_vietnam_are_letters():
    """Latin Extended-A (Unicode chart U+0100-017F, from memory; no long s) and Vietnamese."""
    assert _paths("Łukasz Wójcik, Ağaç, Şahin", "Dvořák, Žižek, Őry", "Nguyễn Thị Ánh Tuyết") == []
    assert {chr(code) for code in range(0x100, 0x17F)} <= bundled_letters()


def test_each_text_is_named_where_it_stands():
    """Emoji, Chinese, Hindi, Thai, Cyrillic, what cannot be seen: found wherever they are."""
    assert _paths("\U0001f44d", "plain", "王", "देव", "ไทย", "Ж", "a\u200b", "\u2028") == [
        "title", *(f"inner.a.says[{index}]" for index in range(1, 7))]  # fmt: skip
