"""How fast a quote opens in Chromium, and how fast a choice on it shows: `./run bench` prints both.

The processor is slowed down to a fourth, as an old phone has it. First paint is what the browser
itself reports, and so is how far things jump while the page opens. An update is timed from the
click to the end of the layout that follows it; one frame of a 60 Hz screen is 16 ms.
"""

import shutil
from pathlib import Path
from statistics import median

from playwright.sync_api import Page, ViewportSize, sync_playwright

SLOWED_DOWN, WIDTH_PX = 4, 360
PAINT_MS, UPDATE_MS = 500, 33
"""What is asked for: half a second, and two frames."""
SETTLED_MS = 500  # nobody chooses while the page still opens
FIRST_PAINT = """() => new Promise((done) => {
  new PerformanceObserver((list) => done(list.getEntries()[0].startTime))
    .observe({type: "paint", buffered: true});
})"""
SHIFTS = """() => new Promise((done) => {
  let moved = 0;
  new PerformanceObserver((list) => { for (const one of list.getEntries()) moved += one.value; })
    .observe({type: "layout-shift", buffered: true});
  setTimeout(() => done(moved), 100);
})"""
CHOICES = "#choose input:not(:disabled):not(:checked)"
UPDATE = """(box) => {
  const start = performance.now();
  box.click();
  document.body.getBoundingClientRect();
  return performance.now() - start;
}"""


def print_page(quote: Path, runs: int) -> None:
    """Open a quote so many times on a phone's screen, choose, and print what it took."""
    paints, updates, shifts = list[float](), list[float](), list[float]()
    system = shutil.which("chromium") or shutil.which("google-chrome")
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(
            executable_path=system, args=["--headless", "--no-sandbox", "--disable-gpu"]
        )
        for _ in range(runs):
            page = chromium.new_page(viewport=ViewportSize(width=WIDTH_PX, height=800))
            slower = page.context.new_cdp_session(page)
            slower.send("Emulation.setCPUThrottlingRate", {"rate": SLOWED_DOWN})
            page.goto(quote.as_uri(), wait_until="load")
            paints.append(page.evaluate(FIRST_PAINT))
            page.wait_for_timeout(SETTLED_MS)
            shifts.append(page.evaluate(SHIFTS))
            updates += _updates(page)
            page.close()
        chromium.close()
    size = quote.stat().st_size
    print(
        f"\nquote.html, {size:,} bytes, in Chromium at {WIDTH_PX} px and a {SLOWED_DOWN}th of the"
        f" speed, median of {runs} runs\n"
    )
    print(f"  {'first paint':<36}{median(paints):8.0f} ms, asked for {PAINT_MS}")
    print(f"  {'shift of the layout, at most':<36}{max(shifts):8.4f}")
    if updates:
        print(f"  {'choose to update':<36}{median(updates):8.1f} ms, asked for {UPDATE_MS}")
        print(f"  {'the slowest of them':<36}{max(updates):8.1f} ms")


def _updates(page: Page) -> list[float]:
    """Choose each thing that can be chosen, one after the other, as a reader does."""
    boxes = page.query_selector_all(CHOICES)
    return [float(box.evaluate(UPDATE)) for box in boxes if box.is_enabled()]
