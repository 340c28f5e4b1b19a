"""Views to HTML: a theme's template, its one style element and the policy that guards it."""

import base64
import hashlib
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from jinja2 import Environment, FunctionLoader, StrictUndefined
from jinja2.ext import Extension
from jinja2.lexer import Token, TokenStream
from markupsafe import Markup

from quotegen.explain.sheets.views import CustomerView, Paper
from quotegen.explain.wording import Words
from quotegen.explain.words.no_break import on_page, ties
from quotegen.publish.web import themes
from quotegen.publish.web.choice_data import choice_json
from quotegen.publish.web.contrast import accent_ink
from quotegen.reading.images.photos import data_address

ACCENT = "--accent: #000000"
"""What a style sheet writes where the company's accent goes."""


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
    view: Paper,
    words: Words,
    theme: Path,
    *,
    on_paper: bool = False,
) -> str:
    """Render one template of a theme, for a browser, or with `on_paper` for the print engine.

    A template gets `view`, `t` (the fixed words), `css` (the text of its style element), `csp`
    (the content security policy), `paper` (the address of the print engine's style sheet),
    `on_paper`, and where something can be chosen `script` and `combinations` (what the
    script looks up).
    A name that it does not have is an error, and so is a missing word.
    """
    styles = styles_of(template, theme, view.head.paper_size)
    css = stylesheet(styles.page, view.head.accent, theme)
    script, combinations = ("", "") if on_paper else _choosing(template, view, words, theme)
    environment = _environment(theme, ties(words) if styles.page else None)
    return environment.get_template(template).render(
        view=view,
        t=words,
        css=Markup(css),  # noqa: S704 - the theme's own
        csp=policy(css, script),
        paper=data_address("text/css", stylesheet(styles.paper, view.head.accent, theme).encode()),
        on_paper=on_paper,
        script=Markup(script),  # noqa: S704 - the theme's own
        combinations=Markup(combinations),  # noqa: S704 - JSON without any `<`
    )


@lru_cache(maxsize=8)
def _environment(theme: Path, tied: Callable[[str], str] | None) -> Environment:
    """Return what reads and keeps the templates of a theme, for one language or for plain text."""
    environment = Environment(
        loader=FunctionLoader(lambda name: themes.read(theme, name)),
        autoescape=_is_html,  # noqa: S701 - on for all but plain text
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    if tied:
        environment.add_extension(BetweenTags)
        environment.filters["tied"] = tied_with(tied)
    return environment


def _choosing(template: str, view: Paper, words: Words, theme: Path) -> tuple[str, str]:
    """Return the script of a template and what it looks up; nothing where there is no choice."""
    name = themes.settings(theme, "scripts").get(template)
    if name is None or not isinstance(view, CustomerView) or not view.choice.combinations:
        return "", ""
    return themes.read(theme, f"scripts/{name}"), choice_json(view.choice, ties(words))


def styles_of(template: str, theme: Path, paper_size: str) -> Styles:
    """Return the style sheets that a theme lists for a template on a size of paper."""
    own = themes.settings(theme, "styles").get(template, {})
    size = themes.settings(theme, "paper_sizes").get(paper_size, ())
    page = (*size, *own.get("page", ())) if own else ()
    return Styles(page=tuple(page), paper=tuple(own.get("paper", ())))


def stylesheet(names: tuple[str, ...], accent: str, theme: Path) -> str:
    """Join style sheets of a theme, with its fonts set in as data and the company's accent."""
    text = "\n".join(themes.read(theme, f"styles/{name}") for name in names)
    for font in themes.fonts(theme):
        if f"url({font})" in text:
            data = themes.find(theme, f"fonts/{font}").read_bytes()
            text = text.replace(f"url({font})", f"url({data_address('font/woff2', data)})")
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


def _is_html(name: str | None) -> bool:
    return name is None or not name.endswith(".txt.j2")


class BetweenTags(Extension):
    """Passes each value that a template sets between two tags through the filter `tied`.

    A value within a tag, such as a link or the name of a drawing, is left alone, and so is what
    arrives as markup.
    """

    def filter_stream(self, stream: TokenStream) -> Iterator[Token]:
        """Read `{{ value }}` as `{{ (value) | tied }}`."""
        within = False
        for token in stream:
            if token.type == "data":
                opened, closed = token.value.rfind("<"), token.value.rfind(">")
                within = opened > closed if opened != closed else within
            if token.type == "variable_end" and not within:
                for kind, value in (("rparen", ")"), ("pipe", "|"), ("name", "tied")):
                    yield Token(token.lineno, kind, value)
            yield token
            if token.type == "variable_begin" and not within:
                yield Token(token.lineno, "lparen", "(")


def tied_with(ties: Callable[[str], str]) -> Callable[[object], object]:
    """Return the filter `tied` for a language."""
    return lambda value: (
        on_page(value, ties) if isinstance(value, str) and not isinstance(value, Markup) else value
    )
