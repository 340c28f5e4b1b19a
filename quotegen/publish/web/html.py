"""Views to HTML: a theme's template, its one style element and the policy that guards it."""

import base64
import hashlib
import re
from dataclasses import dataclass
from html import unescape
from importlib.resources.abc import Traversable
from string import whitespace

from jinja2 import Environment, FunctionLoader, StrictUndefined
from markupsafe import Markup, escape

from quotegen.explain.private.law_checklist import LawSheet
from quotegen.explain.private.order_list import OrderList
from quotegen.explain.private.weather_sheet import WeatherSheet
from quotegen.explain.sheets.views import CustomerView, Paper
from quotegen.explain.wording import Words
from quotegen.explain.words.tables import OwnersSheet
from quotegen.publish.web import themes
from quotegen.publish.web.choice_data import choice_json
from quotegen.publish.web.contrast import accent_ink
from quotegen.publish.web.fonts import subset
from quotegen.publish.web.lean import lean
from quotegen.publish.web.no_break import tied_page, ties
from quotegen.publish.web.themes import tokens_of

ACCENT = "--accent: #000000"
"""What a style sheet writes where the company's accent goes."""

STYLES, POLICY = "=styles=", "=policy="
"""Where the styles and the policy go; both follow from all else that is on the page."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Styles:
    """The style sheets of one template, as theme.yaml lists them.

    Attributes:
        page: go into the page's style element.
        paper: what only a print engine knows (title block, running heads). A browser never
            reads it.
    """

    page: tuple[str, ...]
    paper: tuple[str, ...]


def render(
    template: str,
    view: Paper | OwnersSheet | OrderList | LawSheet | WeatherSheet,
    words: Words,
    theme: Traversable,
    *,
    on_paper: bool = False,
) -> str:
    """Render one template of a theme, for a browser, or with `on_paper` for the print engine.

    A template gets `view`, `t` (the fixed words), `css` (the text of its style element), `csp`
    (the content security policy), `paper` (the address of the print engine's style sheet),
    `tokens` (the design's custom properties), `on_paper`, and where something can be chosen
    `script` and `ways` (what the script looks up). A name that it does not have is an error, and
    so is a missing word.
    """
    environment = Environment(
        loader=FunctionLoader(lambda name: themes.text(theme, name)),
        autoescape=_is_html,  # noqa: S701 - on for all but plain text
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    styles = styles_of(template, theme, view.paper_size)
    paper = stylesheet(styles.paper, view.accent, theme)
    plain = stylesheet(styles.page, view.accent, theme)
    script, ways = ("", "") if on_paper else _choosing(template, view, theme)
    tied = ties(words.locale, words.units_said())
    page = environment.get_template(template).render(
        view=view,
        t=words,
        css=STYLES,
        csp=POLICY,
        paper=data_address("text/css", paper.encode()),
        tokens=tokens_of(plain),
        on_paper=on_paper,
        script=Markup(script),  # noqa: S704 - our own script
        ways=Markup(tied(ways)),  # noqa: S704 - JSON without any `<`
    )
    if styles.page:
        page = tied_page(page, tied)
    if on_paper or not styles.page:
        css = plain
    else:
        css = squeezed(stylesheet(styles.page, view.accent, theme, letters_of(page)))
        page, css = lean(page, css)
    return page.replace(STYLES, css).replace(POLICY, str(escape(policy(css, script))))


def letters_of(page: str) -> str:
    """Return each letter that a page can show once, in order."""
    shown = unescape(re.sub(r"<[^>]*>", "", page))
    return "".join(sorted({*shown} - {*whitespace} | {" "}))


def squeezed(css: str) -> str:
    """Drop comments and the blanks that a style sheet does without."""
    css = re.sub(r"/\*.*?\*/", "", css, flags=re.DOTALL)
    css = re.sub(r"\s*([{};,>])\s*", r"\1", re.sub(r"\s+", " ", css))
    css = re.sub(r"(?<!accent): ", ":", css)
    css = re.sub(r"(?<=[ :(,-])0\.(?=\d)", ".", css)
    return css.replace(";}", "}").strip()


def _choosing(
    template: str,
    view: Paper | OwnersSheet | OrderList | LawSheet | WeatherSheet,
    theme: Traversable,
) -> tuple[str, str]:
    """Return the script of a template and what it looks up; nothing where there is no choice."""
    name = themes.listed(theme, "scripts").get(template)
    if name is None or not isinstance(view, CustomerView) or not view.choice.ways:
        return "", ""
    lines = (line.strip() for line in themes.text(theme, f"scripts/{name}").splitlines())
    script = "\n".join(line for line in lines if line and not line.startswith("//"))
    return script, choice_json(view.choice)


def styles_of(template: str, theme: Traversable, paper_size: str) -> Styles:
    """Return the style sheets that a theme lists for a template on a size of paper."""
    own = themes.listed(theme, "styles").get(template, {})
    size = themes.listed(theme, "paper_sizes").get(paper_size, ())
    page = (*size, *own.get("page", ())) if own else ()
    return Styles(page=tuple(page), paper=tuple(own.get("paper", ())))


def stylesheet(names: tuple[str, ...], accent: str, theme: Traversable, letters: str = "") -> str:
    """Join style sheets of a theme, with its fonts set in as data and the company's accent.

    Fonts are cut down to some letters where these are given.
    """
    text = "\n".join(themes.text(theme, f"styles/{name}") for name in names)
    for font in themes.fonts(theme):
        if f"url({font})" in text:
            data = themes.found(theme, f"fonts/{font}").read_bytes()
            address = data_address("font/woff2", subset(data, letters) if letters else data)
            text = text.replace(f"url({font})", f"url({address})")
    return text.replace(ACCENT, f"--accent: {accent_ink(accent)}")


def policy(css: str, script: str = "") -> str:
    """Return a policy that lets a page use what is in it and fetch nothing (CSP Level 3)."""
    scripts = _digest(script) if script else "'none'"
    return (
        "default-src 'none'; img-src data:; font-src data:; "
        f"style-src {_digest(css)}; script-src {scripts}; "
        "base-uri 'none'; form-action 'none'"
    )


def _digest(text: str) -> str:
    digest = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode("ascii")
    return f"'sha256-{digest}'"


def data_address(kind: str, data: bytes) -> str:
    """Return the data: address that holds a file (RFC 2397)."""
    return f"data:{kind};base64,{base64.b64encode(data).decode('ascii')}"


def _is_html(name: str | None) -> bool:
    return name is None or not name.endswith(".txt.j2")
