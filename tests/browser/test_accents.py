"""Any company's color can be worn: 200 of them, and our measure of them is that of axe-core."""

import colorsys
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

from quotegen.publish.web.contrast import LEAST_FOR_TEXT, accent_ink, contrast
from tests.browser.conftest import opened

HUES, LIGHTS, SATURATIONS = 20, (0.15, 0.35, 0.55, 0.75, 0.95), (0.35, 1.0)


def accents() -> tuple[str, ...]:
    """Return 200 colors: 20 hues, each in 5 steps from dark to light, dull and full."""
    return tuple(
        "#" + "".join(f"{round(p * 255):02x}" for p in colorsys.hls_to_rgb(hue / HUES, light, full))
        for hue in range(HUES) for light in LIGHTS for full in SATURATIONS
    )  # fmt: skip


def test_there_are_two_hundred():
    """The table is as long as it says, and no color stands in it twice."""
    assert len(set(accents())) == 200


def test_each_accent_can_be_read():
    """Text in the accent on paper, and paper on the accent, is at AA (WCAG 2.2, 1.4.3)."""
    for accent in accents():
        worn = accent_ink(accent)
        assert contrast(worn, "#ffffff") >= LEAST_FOR_TEXT, accent
        if contrast(accent, "#ffffff") >= LEAST_FOR_TEXT:
            assert worn == accent


def test_a_darkened_accent_keeps_its_hue():
    """A yellow company stays yellow as far as it can be read: by 2 degrees of hue at most."""
    for accent in accents():
        before, after = (_hue_deg(color) for color in (accent, accent_ink(accent)))
        apart = abs(before - after)
        assert min(apart, 360 - apart) <= 2, (accent, accent_ink(accent))


def test_axe_measures_the_same(browser: Browser, tmp_path: Path):
    """On every ninth accent and its reverse axe-core finds no violation, and our own ratios."""
    worn = [accent_ink(accent) for accent in accents()[::9]]
    rows = "".join(
        f'<p class="a{n}">Forty squares</p><p class="b{n}">Forty squares</p>'
        for n in range(len(worn))
    )
    rules = "".join(
        f".a{n} {{ color: {ink} }} .b{n} {{ color: #fff; background: {ink} }}"
        for n, ink in enumerate(worn)
    )
    page = tmp_path / "accents.html"
    page.write_text(
        f'<!DOCTYPE html><html lang="en"><head><title>Accents</title><style>{rules}</style></head>'
        f"<body><main><h1>Accents</h1>{rows}</main></body></html>",
        encoding="utf-8",
    )
    with opened(browser, page, policy_off=True) as seen:
        result = Axe().run(seen.page, options={"runOnly": ["color-contrast"]})
    assert result.violations_count == 0, result.generate_report()
    passed = [
        node["any"][0]["data"] for rule in result.response["passes"] for node in rule["nodes"]
    ]
    measured = [one for one in passed if {one["fgColor"], one["bgColor"]} & {*worn}]
    assert len(measured) == 2 * len(worn)
    for one in measured:
        ours = contrast(one["fgColor"], one["bgColor"])
        assert one["contrastRatio"] == pytest.approx(ours, abs=0.01), one


def _hue_deg(color: str) -> float:
    red, green, blue = (int(color[at : at + 2], 16) / 255 for at in (1, 3, 5))
    return colorsys.rgb_to_hls(red, green, blue)[0] * 360
