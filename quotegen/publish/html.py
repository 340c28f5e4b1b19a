"""Views to HTML: a theme's template, its one style element and the policy that guards it."""

import base64
import hashlib
from collections.abc import Callable
from importlib.resources.abc import Traversable

from jinja2 import Environment, FunctionLoader, StrictUndefined
from markupsafe import Markup

from quotegen.explain.private import PrivateSheet
from quotegen.explain.views import CustomerView
from quotegen.publish.contrast import ink_of


def render(
    template: str,
    view: CustomerView | PrivateSheet,
    words: Callable[..., str],
    theme: Traversable,
) -> str:
    """Render one template of a theme.

    A template gets `view`, `t` (the fixed words), `css` (its style element's text) and `csp`
    (the content security policy), and nothing else. A name that it does not have is an error.
    """
    environment = Environment(
        loader=FunctionLoader(lambda name: (theme / name).read_text(encoding="utf-8")),
        autoescape=_is_html,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    css = stylesheet(_styles_of(template), view.accent, theme)
    return environment.get_template(template).render(
        view=view, t=words, css=Markup(css), csp=policy(css)  # noqa: S704 - our own style sheets
    )


def stylesheet(names: tuple[str, ...], accent: str, theme: Traversable) -> str:
    """Join style sheets of a theme, with its fonts set in as data and the company's accent."""
    text = "\n".join((theme / "styles" / name).read_text(encoding="utf-8") for name in names)
    for font in sorted(_fonts(theme)):
        encoded = base64.b64encode((theme / "fonts" / font).read_bytes()).decode("ascii")
        text = text.replace(f"url({font})", f"url(data:font/woff2;base64,{encoded})")
    return text.replace("--accent: #000000", f"--accent: {ink_of(accent)}")


def policy(css: str) -> str:
    """Return a policy that lets a page use what is in it and fetch nothing (CSP Level 3)."""
    digest = base64.b64encode(hashlib.sha256(css.encode()).digest()).decode("ascii")
    return (
        "default-src 'none'; img-src data:; font-src data:; "
        f"style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"
    )


def _is_html(name: str | None) -> bool:
    return name is None or not name.endswith(".txt.j2")


def _styles_of(template: str) -> tuple[str, ...]:
    page = template.partition(".")[0]
    return () if page == "email" else ("base.css", f"{page}.css")


def _fonts(theme: Traversable) -> list[str]:
    return [f.name for f in (theme / "fonts").iterdir() if f.name.endswith(".woff2")]
