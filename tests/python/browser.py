"""A page in a browser that must not ask for anything and must not complain."""

import shutil
from contextlib import contextmanager

import pytest

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
needs_browser = pytest.mark.skipif(not CHROMIUM, reason="there is no chromium here")
PAGE = (
    '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>{title}</title></head>'
    "<body><main><h1>{title}</h1>{fragment}</main></body></html>"
)


@contextmanager
def browser():
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        running = playwright.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])
        try:
            yield running
        finally:
            running.close()


def opened(running, folder, fragment, title="A page"):
    """The page from disk, with all that it asked for and complained of in `page.heard`."""
    file = folder / "page.html"
    file.write_text(PAGE.format(title=title, fragment=fragment), "utf-8")
    page = running.new_page(viewport={"width": 1200, "height": 900})
    page.heard = []
    page.on("console", lambda said: page.heard.append(said.text))
    page.on("pageerror", lambda error: page.heard.append(str(error)))
    # A blob is a piece of the page itself.
    page.on("request", lambda asked: asked.url.startswith("blob:") or page.heard.append(asked.url))
    page.goto(file.as_uri())
    page.wait_for_selector(".windwall-live dl dt")
    assert page.heard.pop(0) == file.as_uri()
    return page


def moved(page, steps):
    """Puts the sliders there without a hand, and reads what is changed and what is said."""
    return page.evaluate(
        """async steps => {
            const live = document.querySelector(".windwall-live");
            const ranges = [...live.querySelectorAll("input")];
            ranges.forEach((one, i) => { one.value = steps[i]; });
            const start = performance.now(), answer = await live.windwall.ask();
            const took = performance.now() - start;
            return { took, answer, changes: live.windwall.changes(),
                     rows: live.windwall.rows_for(answer),
                     headline: live.windwall.headline_of(answer, live.windwall.file) };
        }""",
        steps,
    )


def moved_back(page):
    """Puts every slider where the file has it, also those that were moved without a hand."""
    page.evaluate("document.querySelector('.windwall-live .reset-all').click()")
