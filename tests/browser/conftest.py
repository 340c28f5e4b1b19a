"""The demo packages, and a browser that lets nothing out and writes down what a page tries."""

import shutil
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from playwright.sync_api import Browser, Page, Route, ViewportSize, sync_playwright

from quotegen.pipeline import figure
from quotegen.problem import Source
from quotegen.publish.manifest import Whose
from quotegen.publish.package import package, specimens
from quotegen.publish.write import Folder, write
from tests.once_per_run import once_per_run
from tests.pricing.shop import example_results, shared
from tests.publish.built import built

REPO = Path(__file__).resolve().parents[2]
JOBS = sorted((REPO / "example_jobs" / "itemized" / "jobs").glob("*.yaml"))
QUIET = [
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
]  # fmt: skip
LOGO = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 40"><title>Pennywort</title>'
    '<circle cx="20" cy="20" r="18" fill="#7a4a1e"/><path d="M44 30h72v4h-72z"/></svg>'
)
TELL_VIOLATIONS = """
document.addEventListener("securitypolicyviolation", (event) =>
  console.error(`policy: ${event.effectiveDirective} blocked ${event.blockedURI}`));
"""


@dataclass(frozen=True, slots=True)
class Opened:
    """A page in the browser, and what it did since it was opened."""

    page: Page
    requests: list[str] = field(default_factory=list)
    complaints: list[str] = field(default_factory=list)


def need(program: str, package: str) -> str:
    """Return the path of a program that a test cannot do without."""
    found = shutil.which(program)
    if not found:
        pytest.fail(
            f"{program} is missing: type 'apt-get install {package}' as root", pytrace=False
        )
    return found


@pytest.fixture(scope="session")
def packages(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder with the packages of the examples, as `quotegen package` writes them."""
    out = tmp_path_factory.mktemp("packages")
    assert JOBS, "no job in example_jobs/"
    for job in JOBS:
        _laid_out(out / example_results(job).job.quote, built(job))
    return out


@pytest.fixture(scope="session")
def second_theme(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the folder of one package in the other theme, with a logo, and of both specimens."""
    out = tmp_path_factory.mktemp("themed")
    _laid_out(out / "2026-029", once_per_run("package in the second theme", _in_second_theme))
    return out


def _laid_out(folder: Path, files: Mapping[str, bytes]) -> None:
    whose = Whose(quote=folder.name, place=Source(file=str(folder)))
    write((Folder(path=folder, whose=whose, files=files),))


def _in_second_theme() -> dict[str, bytes]:
    with TemporaryDirectory() as folder:
        home = Path(folder)
        shutil.copytree(REPO / "example_jobs" / "itemized", home, dirs_exist_ok=True)
        (home / "mark.svg").write_text(LOGO, encoding="utf-8")
        with (home / "company.yaml").open("a", encoding="utf-8") as company:
            company.write("theme: notebook\npaper: A4\nlogo: mark.svg\n")
        priced = figure(home / "jobs" / "cutters-row-drive.yaml", shared())
    assert priced.results is not None, priced.problems
    assert priced.owner is not None
    files = package(priced.results, priced.owner, ()).files
    shown = {f"customer/{name}": data for name, data in specimens(priced.results).items()}
    return {**files, **shown}


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Return the system's Chromium, or the one that Playwright brought where there is none."""
    system = shutil.which("chromium") or shutil.which("google-chrome")
    with sync_playwright() as playwright:
        if not system and not Path(playwright.chromium.executable_path).exists():
            need("chromium", "chromium")
        chromium = playwright.chromium.launch(executable_path=system, args=QUIET)
        yield chromium
        chromium.close()


@contextmanager
def opened(
    browser: Browser,
    path: Path,
    *,
    width: int = 1280,
    javascript: bool = True,
    policy_off: bool = False,
    first: str = "",
) -> Iterator[Opened]:
    """Open an HTML file with no way out; `policy_off` lets a checking script in.

    `first` is a script that runs before all others.
    """
    context = browser.new_context(
        viewport=ViewportSize(width=width, height=800),
        java_script_enabled=javascript,
        bypass_csp=policy_off,
        offline=True,
    )
    seen = Opened(context.new_page())
    seen.page.set_default_timeout(5_000)
    seen.page.on("request", lambda request: seen.requests.append(request.url))
    seen.page.on(
        "console",
        lambda said: seen.complaints.append(said.text) if said.type == "error" else None,
    )
    seen.page.on("pageerror", lambda error: seen.complaints.append(str(error)))

    def let_in(route: Route) -> None:
        if route.request.url == path.as_uri() or route.request.url.startswith("data:"):
            route.continue_()
        else:
            route.abort()

    context.route("**/*", let_in)
    context.add_init_script(TELL_VIOLATIONS + first)
    try:
        seen.page.goto(path.as_uri(), wait_until="load")
        yield seen
    finally:
        context.close()
