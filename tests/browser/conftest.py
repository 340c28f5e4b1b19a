"""The demo packages, and a browser that lets nothing out and writes down what a page tries."""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, Route, ViewportSize, sync_playwright

from quotegen.publish.write import write
from tests.pricing.shop import example_results
from tests.publish.built import built

REPO = Path(__file__).resolve().parents[2]
JOBS = sorted((REPO / "example_jobs" / "jobs").glob("*.yaml"))
QUIET = [
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
]  # fmt: skip
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
    assert JOBS, "no job in example_jobs/jobs"
    for job in JOBS:
        write(out / example_results(job).job.quote, built(job))
    return out


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
) -> Iterator[Opened]:
    """Open an HTML file with no way out; `policy_off` lets a checking script in."""
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
    context.add_init_script(TELL_VIOLATIONS)
    try:
        seen.page.goto(path.as_uri(), wait_until="load")
        yield seen
    finally:
        context.close()
