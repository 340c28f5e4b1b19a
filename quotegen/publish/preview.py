"""The web page of a quote while its files are edited: built again at each save, shown at once.

It is served to this machine alone. A page elsewhere that gives its own name to our address is not
answered, since what is asked for must name the loopback address itself.
"""

import base64
import hashlib
import json
import re
import time
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from importlib.resources import files
from pathlib import Path
from threading import Event, Thread
from typing import TypeAlias

from quotegen.problem import Problem, Severity, Source, has_error
from quotegen.reading.yaml.typed_file import beside

LOOPBACK = "127.0.0.1"
LOOK_EVERY_S = 0.3
QuotePage: TypeAlias = bytes | None
Build: TypeAlias = Callable[[], tuple[QuotePage, tuple[Problem, ...]]]
Seen: TypeAlias = Mapping[Path, tuple[int, int]]
"""Each file that a quote may depend on, with its time and size."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the browser is given.

    Attributes:
        version: counts the builds.
        page: the last quote that could be built, and `page_version` the build that made it.
        took_s: how long the last build took.
    """

    version: int = 0
    page: QuotePage = None
    page_version: int = 0
    problems: tuple[Problem, ...] = ()
    took_s: float = 0.0

    @property
    def said(self) -> str:
        """The line over the page, and in the terminal."""
        errors = sum(problem.severity is Severity.ERROR for problem in self.problems)
        if errors:
            older = "; the page below is from before" if self.page else ""
            return f"{errors} to mend{older}"
        warned = f", {len(self.problems)} warned of" if self.problems else ""
        return f"built in {self.took_s:.1f} s{warned}"

    def state(self) -> bytes:
        """Return what the page asks for again and again, as JSON."""
        problems = [
            {
                "kind": problem.severity.value,
                "place": str(problem.source),
                "message": problem.message,
                "cure": problem.hint,
            }
            for problem in self.problems
        ]
        state = {
            "version": self.version,
            "page": self.page_version,
            "said": self.said,
            "problems": problems,
        }
        return json.dumps(state).encode()


class Preview:
    """A job, its newest page, and the server that shows it on this machine.

    Args:
        job: the job file.
        build: makes the page of the quote, or says what is wrong.
        say: is told a line about each build, and each problem.
        quiet: whether only of problems.
    """

    def __init__(
        self, job: Path, build: Build, say: Callable[[str], None], *, quiet: bool = False
    ) -> None:
        self._job, self._build, self._say, self._quiet = job, build, say, quiet
        self.shown, self.port = Shown(), 0

    def run(self, opened: Callable[[str], None], ended: Event) -> None:
        """Serve the page and build it again at each save, until it is ended.

        Args:
            opened: is told the address once the page can be seen.
            ended: set from elsewhere to stop.

        Raises:
            OSError: the machine is at fault (no port is free).
        """
        with ThreadingHTTPServer((LOOPBACK, 0), self._handler()) as server:
            server.daemon_threads, self.port = True, server.server_port
            seen = self._rebuilt()
            Thread(target=server.serve_forever, daemon=True).start()
            try:
                opened(f"http://{LOOPBACK}:{self.port}/")
                while not ended.wait(LOOK_EVERY_S):
                    if files_of(self._job) != seen:
                        seen = self._rebuilt()
            finally:
                server.shutdown()

    def _rebuilt(self) -> Seen:
        """Build, and return the files as they were before, so that a save meanwhile is seen."""
        seen, before, began = files_of(self._job), self.shown, time.monotonic()
        page, problems = self._built()
        version = before.version + 1
        self.shown = Shown(
            version=version,
            page=page if page is not None else before.page,
            page_version=version if page is not None else before.page_version,
            problems=problems,
            took_s=time.monotonic() - began,
        )
        if not self._quiet:
            self._say(self.shown.said)
        for problem in problems:
            self._say(str(problem))
        return seen

    def _built(self) -> tuple[QuotePage, tuple[Problem, ...]]:
        try:
            page, problems = self._build()
        except Exception as error:  # noqa: BLE001 - a fault of ours must not end the preview
            said = f"quotegen has a fault of its own ({type(error).__name__}: {error})"
            return None, (_fault(self._job, said, "please report it with the job file"),)
        return (None if has_error(problems) else page), problems

    def _handler(self) -> type[BaseHTTPRequestHandler]:
        preview = self

        class Handler(BaseHTTPRequestHandler):
            def do_GET(self) -> None:
                asked, host = self.path, self.headers.get("Host")
                status, headers, body = preview.answer(asked, host, preview.port)
                self.send_response(status)
                for name, value in {**headers, "Content-Length": str(len(body))}.items():
                    self.send_header(name, value)
                self.end_headers()
                self.wfile.write(body)

            def log_message(self, *_: object) -> None:
                """Say nothing of each request."""

        return Handler

    def answer(self, path: str, host: str | None, port: int) -> tuple[int, dict[str, str], bytes]:
        """Return status, headers and body for a path; only our own address is answered.

        Args:
            path: of the request, with what follows it.
            host: the host that the request names.
            port: where the server listens.
        """
        name, shown = path.partition("?")[0], self.shown
        if host not in {f"{LOOPBACK}:{port}", f"localhost:{port}"}:
            return 403, _headers("text/plain"), b"This preview is for its own machine alone.\n"
        if name == "/":
            return 200, _headers("text/html", _frame_policy()), _frame().encode()
        if name == "/state":
            return 200, _headers("application/json"), shown.state()
        if name == "/quote.html" and shown.page is not None:
            return 200, _headers("text/html"), shown.page
        return 404, _headers("text/plain"), b"There is no such page.\n"


def files_of(job: Path) -> Seen:
    """Return every file that the quote of a job may depend on, with its time and size.

    That is what lies beside the job, and in the company's folder down to its own pages.
    """
    company = beside(job, "company.yaml")
    folder = company.parent if company else job.parent
    found = (
        job.parent.glob("*"),
        *(folder.glob(depth) for depth in ("*", "*/*", "content/*/*", "content/*/*/*")),
    )
    seen: dict[Path, tuple[int, int]] = {}
    for path in (one for some in found for one in some):
        try:
            facts = path.stat()
        except OSError:  # it was there a moment ago
            continue
        if path.is_file():
            seen[path] = (facts.st_mtime_ns, facts.st_size)
    return seen


def _fault(job: Path, said: str, hint: str) -> Problem:
    return Problem(code="preview-fault", source=Source(file=str(job)), message=said, hint=hint)


@cache
def _frame() -> str:
    """Return the page round the quote, which looks for news and lists problems."""
    return files("quotegen.publish.web").joinpath("preview.html").read_text("utf-8")


@cache
def _frame_policy() -> str:
    """Return a policy for that page: its own style and script, and this server alone (CSP 3)."""
    style, script = (
        base64.b64encode(hashlib.sha256(text.encode()).digest()).decode() for text in _own(_frame())
    )
    return (
        f"default-src 'none'; style-src 'sha256-{style}'; script-src 'sha256-{script}'; "
        "connect-src 'self'; frame-src 'self'; base-uri 'none'; form-action 'none'; "
        "frame-ancestors 'none'"
    )


def _own(page: str) -> Iterator[str]:
    for name in ("style", "script"):
        found = re.search(f"<{name}>(.*?)</{name}>", page, re.DOTALL)
        yield found[1] if found else ""


def _headers(kind: str, policy: str = "frame-ancestors 'self'") -> dict[str, str]:
    return {
        "Content-Type": f"{kind}; charset=utf-8",
        "Content-Security-Policy": policy,
        "Cache-Control": "no-store",
        "Cross-Origin-Resource-Policy": "same-origin",
        "Referrer-Policy": "no-referrer",
        "X-Content-Type-Options": "nosniff",
    }
