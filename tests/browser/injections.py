"""What an attacker would type: in every text field of all four files at once, another in each.

An injection is a way out of where a text may stand, and then a thing to do. Whatever does it calls
`canary`, or asks for something at `canary.example`.
"""

import email
import email.policy
from collections.abc import Iterator
from itertools import product
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import yaml
from playwright.sync_api import Browser, Dialog

from quotegen.pipeline import Shared
from tests.browser.conftest import opened
from tests.pricing.shop import as_yaml
from tests.property.hostile_files import schema_walk
from tests.publish.built import build, unprinted
from tests.world import COMPANY_FILES, EXAMPLES

WAYS_OUT = (
    "", '">', "'>", "</script>", "</style>", "-->", "]]>", "</title>", "</textarea></template>",
    '\\"', "*/", "\n\n",
)  # fmt: skip
DEEDS = (
    "<script>canary()</script>", "<img src=x onerror=canary()>", "<svg onload=canary()>",
    "<svg><script>canary()</script></svg>", '<iframe srcdoc="<script>parent.canary()</script>">',
    '<a href="javascript:canary()">x</a>', "[x](javascript:canary())", "<javascript:canary()>",
    "![x](http://canary.example/a.png)", "[x](http://canary.example/)", "<http://canary.example/>",
    "<base href=http://canary.example/>", "<link rel=stylesheet href=http://canary.example/a.css>",
    "<meta http-equiv=refresh content='0;url=http://canary.example/'>",
    "<form action=http://canary.example/><button autofocus>x</button></form>",
    '" onfocus="canary()" autofocus x="', "' onmouseover='canary()' x='",
    "} body { background: url(http://canary.example/b) } x {",
    "@import 'http://canary.example/c.css';", "{{ 7 * 7 }}{% for a in view %}{{ a }}{% endfor %}",
    "${canary()}`", "&bcc=eve@canary.example", "<!--<script>canary()//",
    "=styles= =policy= {{rule}}",
    '=HYPERLINK("http://canary.example/") &lt;script&gt;canary()&lt;/script&gt;',
)  # fmt: skip
INJECTIONS = tuple(way + deed for way, deed in product(WAYS_OUT, DEEDS))
JOBS = ("cutters-row-drive", "orchard-bend-pool-deck")
"""One with every paper, and one with choices on its page."""
LISTED = {"size", "style"}
"""Texts that must be one of a list of the trade."""
OWN = ("data:", "mailto:", "tel:", "sms:")
"""What a page of ours may ask for, if its links are clicked."""
CANARY = "window.canary = () => { window.sung = (window.sung || 0) + 1; };"
MADE_OF = """() => ({
  scripts: document.scripts.length,
  styles: document.querySelectorAll("style, link").length,
  others: document.querySelectorAll("iframe, object, embed, base, form").length,
  metas: document.querySelectorAll("meta").length,
  acts: [...document.querySelectorAll("*")].filter((one) => [...one.attributes].some((said) =>
    said.name.startsWith("on") || (["href", "src", "action", "style"].includes(said.name) &&
      /^\\s*javascript:|canary\\.example/i.test(said.value.replace(/^mailto:/, "") === said.value
        ? said.value : new URL(said.value).searchParams.get("bcc") || "")))).length,
})"""


def injected(job: str, turn: int | None, folder: Path) -> tuple[Path, int]:
    """Lay out the four files with an injection in each text; return the job and how many texts.

    Args:
        job: an example.
        turn: which injection the first text gets, the others the ones after it; None for none.
        folder: an empty one.
    """
    count = 0
    files = {name: EXAMPLES / name for name in COMPANY_FILES}
    files["job.yaml"] = EXAMPLES / "jobs" / f"{job}.yaml"
    for name, path in files.items():
        made = yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
        for holder, key in _texts(name.removesuffix(".yaml"), made):
            if turn is not None:
                holder[key] = f"{holder[key]} {INJECTIONS[(turn + count) % len(INJECTIONS)]}"
            count += 1
        (folder / name).write_text(as_yaml(made), encoding="utf-8")
    return folder / "job.yaml", count


def _texts(kind: str, made: Any) -> Iterator[tuple[Any, Any]]:
    """Yield where each free text of a file stands: what its schema says no form of."""
    for holder, key, schema in schema_walk(kind, made):
        plain = schema.get("type") == "string" and isinstance(holder[key], str)
        if plain and key not in LISTED and not {"pattern", "format", "enum", "const"} & set(schema):
            yield holder, key


def built_pages(job: str, turn: int | None, shared: Shared) -> tuple[dict[str, bytes], int]:
    """Build all files of the job, unprinted; return them and how many texts were injected."""
    with TemporaryDirectory() as folder, unprinted():
        path, count = injected(job, turn, Path(folder))
        made = build((path,), shared)
    assert made.packages, [str(problem) for problem in made.problems][:5]
    (package,) = made.packages.values()
    return dict(package.files), count


def harm(
    browser: Browser,
    files: dict[str, bytes],
    clean: dict[str, bytes],
    folder: Path,
    only: tuple[str, ...] = (),
) -> tuple[list[str], int]:
    """Open each page, under its policy and without; return what went wrong, and how many loads.

    `only` names the pages, if not all are to be opened.
    """
    wrong, loads = [*_mail_harm(files, clean)], 0
    pages = only or tuple(name for name in sorted(files) if name.endswith(".html"))
    for name, policy_off in product(pages, (False, True)):
        parts, did = _made_of(browser, files[name], folder, policy_off=policy_off)
        usual, _ = _made_of(browser, clean[name], folder, policy_off=policy_off)
        loads += 1
        wrong += [f"{name}: {said}" for said in did]
        if parts != usual:
            wrong.append(f"{name}: made of {parts}, not of {usual}")
    return wrong, loads


def _made_of(
    browser: Browser, page: bytes, folder: Path, *, policy_off: bool
) -> tuple[dict[str, int], list[str]]:
    """Open a page, click all that can be; return what it is made of, and what it did."""
    path = folder / "page.html"
    path.write_bytes(page)
    with opened(browser, path, policy_off=policy_off, first=CANARY) as seen:
        dialogs = list[str]()

        def noted(dialog: Dialog) -> None:
            dialogs.append(dialog.message)
            dialog.dismiss()

        seen.page.on("dialog", noted)
        seen.page.locator("summary, input, button, option, a").evaluate_all(
            "(all) => all.forEach((one) => { one.dispatchEvent(new MouseEvent('mouseover', "
            "{bubbles: true})); one.focus(); one.click(); })"
        )
        sung = seen.page.evaluate("window.sung")
        made: dict[str, int] = seen.page.evaluate(MADE_OF)
        asked = {url for url in seen.requests if not url.startswith(OWN) and url != path.as_uri()}
    did = [f"asked for {url[:60]}" for url in asked] + [f"said {text}" for text in dialogs]
    return made, [*did, *(["sang"] if sung else [])]


def _mail_harm(files: dict[str, bytes], clean: dict[str, bytes]) -> Iterator[str]:
    """Yield where a mail has another header or recipient, or a calendar another event."""
    for name, data in files.items():
        if name.endswith(".eml"):
            mails = [
                email.message_from_bytes(one, policy=email.policy.default)
                for one in (data, clean[name])
            ]
            heads = [(mail.keys(), [to.addr_spec for to in mail["To"].addresses]) for mail in mails]
            if heads[0] != heads[1]:
                yield f"{name}: {heads[0]}"
        if name.endswith(".ics"):
            begun = [one.count(b"\r\nBEGIN:") for one in (data, clean[name])]
            if begun[0] != begun[1] or b"\n" in data.replace(b"\r\n", b""):
                yield f"{name}: {begun}"
