"""Views to HTML: a theme's template, its one style element and the policy that guards it."""

import base64
import hashlib
from collections.abc import Callable
from dataclasses import dataclass
from importlib.resources.abc import Traversable

import yaml
from jinja2 import Environment, FunctionLoader, StrictUndefined
from markupsafe import Markup

from quotegen.explain.law_sheet import LawSheet
from quotegen.explain.order_list import OrderList
from quotegen.explain.private import PrivateSheet
from quotegen.explain.views import Paper
from quotegen.explain.weather_sheet import WeatherSheet
from quotegen.publish.contrast import accent_ink

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
    view: Paper | PrivateSheet | OrderList | LawSheet | WeatherSheet,
    words: Callable[..., str],
    theme: Traversable,
) -> str:
    """Render one template of a theme.

    A template gets `view`, `t` (the fixed words), `css` (the text of its style element), `csp`
    (the content security policy) and `paper` (the address of the print engine's style sheet),
    and nothing else. A name that it does not have is an error, and so is a missing word.
    """
    environment = Environment(
        loader=FunctionLoader(lambda name: _text(theme, name)),
        autoescape=_is_html,  # noqa: S701 - on for all but plain text
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    styles = styles_of(template, theme)
    css = stylesheet(styles.page, view.accent, theme)
    paper = stylesheet(styles.paper, view.accent, theme)
    return environment.get_template(template).render(
        view=view,
        t=words,
        css=Markup(css),  # noqa: S704 - our own style sheets
        csp=policy(css),
        paper=data_address("text/css", paper.encode()),
    )


def styles_of(template: str, theme: Traversable) -> Styles:
    """Return the style sheets that a theme lists for a template."""
    listed = yaml.safe_load(_text(theme, "theme.yaml"))["styles"].get(template, {})
    return Styles(page=tuple(listed.get("page", ())), paper=tuple(listed.get("paper", ())))


def stylesheet(names: tuple[str, ...], accent: str, theme: Traversable) -> str:
    """Join style sheets of a theme, with its fonts set in as data and the company's accent."""
    text = "\n".join(_text(theme, f"styles/{name}") for name in names)
    for font in sorted(_fonts(theme)):
        if f"url({font})" in text:
            address = data_address("font/woff2", (theme / "fonts" / font).read_bytes())
            text = text.replace(f"url({font})", f"url({address})")
    return text.replace(ACCENT, f"--accent: {accent_ink(accent)}")


def policy(css: str) -> str:
    """Return a policy that lets a page use what is in it and fetch nothing (CSP Level 3)."""
    digest = base64.b64encode(hashlib.sha256(css.encode()).digest()).decode("ascii")
    return (
        "default-src 'none'; img-src data:; font-src data:; "
        f"style-src 'sha256-{digest}'; script-src 'none'; base-uri 'none'; form-action 'none'"
    )


def data_address(kind: str, data: bytes) -> str:
    """Return the data: address that holds a file (RFC 2397)."""
    return f"data:{kind};base64,{base64.b64encode(data).decode('ascii')}"


def _is_html(name: str | None) -> bool:
    return name is None or not name.endswith(".txt.j2")


def _text(theme: Traversable, name: str) -> str:
    return theme.joinpath(*name.split("/")).read_text(encoding="utf-8")


def _fonts(theme: Traversable) -> list[str]:
    return [f.name for f in (theme / "fonts").iterdir() if f.name.endswith(".woff2")]
