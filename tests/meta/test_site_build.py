"""The site is built whole, without a warning, and asks nothing of a network."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

from python.browser import browser, needs_browser

ROOT = Path(__file__).parents[2]
FROM_OUTSIDE = re.compile(
    r"""<(?:script|img|iframe|source)\b[^>]*\bsrc=["'](?:https?:)?//"""
    r"""|<link\b[^>]*\bhref=["'](?:https?:)?//|@import\s+["'(]*https?:|url\(["']?https?:"""
)
LOOKED_AT = ("index", "docs/start", "docs/physics/orifice", "docs/reference/python")

pytestmark = [pytest.mark.slow, pytest.mark.timeout(600)]


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    """Without running the notebooks, which have a test of their own."""
    pytest.importorskip("myst_nb")
    folder = tmp_path_factory.mktemp("site")
    command = [sys.executable, "-m", "sphinx", "-q", "-W", "--keep-going", "-c", "docs"]
    options = ["-D", "nb_execution_mode=off", "-d", folder / "trees", ".", folder / "html"]
    done = subprocess.run(
        [*command, *options], cwd=ROOT, capture_output=True, text=True, timeout=500, check=False
    )
    assert done.returncode == 0, done.stderr
    return folder / "html"


def test_no_page_names_a_thing_from_outside(site):
    pages = [*site.rglob("*.html"), *(site / "_static").rglob("*.css")]
    assert len(pages) > 60
    named = {page.name for page in pages if FROM_OUTSIDE.search(page.read_text("utf-8"))}
    assert not named


def test_a_physics_page_has_equations_inputs_and_checks(site):
    page = (site / "docs/physics/charge_path.html").read_text("utf-8")
    assert page.count("<math") > 100
    assert 'id="inputs-positive_blower"' in page
    assert "Efficiency of the ideal roots" in page
    assert "<mfrac>" in page


@needs_browser
def test_pages_are_read_from_a_disk(site):
    with browser() as running:
        for name in LOOKED_AT:
            page = running.new_page()
            heard = []
            page.on("pageerror", lambda error, heard=heard: heard.append(str(error)))
            page.on(
                "request",
                lambda asked, heard=heard: (
                    asked.url.startswith(("file:", "data:")) or heard.append(asked.url)
                ),
            )
            page.goto((site / f"{name}.html").as_uri(), timeout=120_000)
            page.wait_for_selector("h1", timeout=60_000)
            assert not heard, name
            page.close()


WIDEST = """() => [...document.querySelectorAll("article pre")].map(one => ({
    letters: Math.max(...one.textContent.split("\\n").map(line => line.length)),
    is_cut: one.scrollWidth > one.clientWidth + 1,
}))"""


@needs_browser
def test_a_line_of_a_terminal_is_whole_on_a_usual_screen(site):
    with browser() as running:
        tab = running.new_page(viewport={"width": 1200, "height": 900})
        seen = []
        for name in ("docs/start", "docs/howto/how_fast", "notebooks/afternoon"):
            tab.goto((site / f"{name}.html").as_uri(), timeout=120_000)
            seen += tab.evaluate(WIDEST)
    assert max(one["letters"] for one in seen) >= 80
    assert [one for one in seen if one["is_cut"] and one["letters"] <= 88] == []
