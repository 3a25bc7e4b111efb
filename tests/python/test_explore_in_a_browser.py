"""The sliders of a notebook in JupyterLab in a real browser: moved by mouse and by keys, heard by
a screen reader, and what they show is what Python says.
"""

import json
from pathlib import Path
from urllib.parse import urlsplit

import pytest

import windwall as ww
from python.browser import browser, needs_browser
from python.lab import lab
from python.samples import DOCUMENT
from windwall.quantities.measures import SPEED
from windwall.report.text.limits import result_measure

# One start of JupyterLab, half a minute on a machine with two cores.
pytestmark = [needs_browser, pytest.mark.slow, pytest.mark.timeout(400)]
pytest.importorskip("anywidget")
pytest.importorskip("jupyterlab")

SHOTS = Path("build/screenshots")
MASS, AREA, BOOST = "body/mass", "body/drag_area", "manifold/boost"
CELL = f"""import windwall as ww
car = ww.load("car.json")
ww.explore(car, {{"{MASS}": ("300 kg", "400 kg"), "{AREA}": ("0.4 m2", "0.7 m2")}}, ["{BOOST}"])"""
READY = "text=Python 3 (ipykernel) | Idle"
RUN = "Run Selected Cell and Do not Advance"
OUTPUT = ".jp-OutputArea-output"
PATIENCE = 60_000  # ms


def notebook(folder):
    import nbformat
    from nbformat.v4 import new_code_cell, new_notebook

    (folder / "car.json").write_text(json.dumps(DOCUMENT), "utf-8")
    kernel = {"name": "python3", "display_name": "Python 3", "language": "python"}
    made = new_notebook(cells=[new_code_cell(CELL)], metadata={"kernelspec": kernel})
    nbformat.write(made, folder / "explore.ipynb")


@pytest.fixture(scope="module")
def tab(tmp_path_factory):
    """The notebook after its cell was run, with what was asked for and complained of meanwhile."""
    root = tmp_path_factory.mktemp("notebooks")
    notebook(root)
    with lab(root, tmp_path_factory.mktemp("lab")) as address, browser() as running:
        tab = running.new_page(viewport={"width": 1100, "height": 800})
        tab.root, tab.asked, tab.complained = root, [], []
        tab.on("request", lambda one: tab.asked.append(one.url))
        tab.on("websocket", lambda one: tab.asked.append(one.url))
        tab.on("pageerror", lambda error: tab.complained.append(str(error)))
        tab.on("console", lambda said: said.type == "error" and tab.complained.append(said.text))
        tab.goto(address.format("explore.ipynb"))
        tab.wait_for_selector(READY, timeout=PATIENCE)
        tab.get_by_role("menuitem", name="Run", exact=True).click()
        tab.get_by_role("menuitem", name=RUN).click()
        tab.wait_for_selector(f"{OUTPUT} table", timeout=PATIENCE)
        yield tab


@pytest.fixture(autouse=True)
def as_in_the_file(tab):
    tab.get_by_role("button", name="Reset all").click()
    says(tab, {})


def slider(tab, name):
    return tab.get_by_role("slider", name=name)


def rows(file, scenario):
    """The table of numbers as Python has it."""
    system, answers = file.system, [one.top_speed() for one in (file, scenario)]
    unit, boost = SPEED.shown(system), result_measure(BOOST)
    speeds = [f"{SPEED.value(one.goal_speed, system):.1f} {unit}" for one in answers]
    return [speeds, [boost.short(one.point.manifold.boost, system) for one in answers]]


def says(tab, changes):
    """Waits until the page shows the numbers of Python, to the digit; the speeds among them."""
    file = ww.loads(json.dumps(DOCUMENT))
    wanted = rows(file, file.set(changes) if changes else file)
    tab.wait_for_function(
        """([output, wanted]) => {
            const cells = [...document.querySelectorAll(`${output} table`)[0].rows].slice(1)
              .map(row => [...row.cells].slice(1, 3).map(cell => cell.textContent));
            return JSON.stringify(cells) === JSON.stringify(wanted);
        }""",
        arg=[OUTPUT, wanted],
        timeout=PATIENCE,
    )
    return wanted[0]


def test_keys_move_a_slider(tab):
    mass = slider(tab, "Mass ready to run")
    assert mass.get_attribute("aria-valuetext") == "340 kg"
    mass.focus()
    tab.keyboard.press("ArrowRight")
    assert mass.get_attribute("aria-valuetext") == "341 kg"
    says(tab, {MASS: "341 kg"})
    tab.keyboard.press("End")
    tab.keyboard.press("ArrowLeft")
    file, now = says(tab, {MASS: "399 kg"})
    assert file != now
    tab.keyboard.press("Tab")
    assert tab.evaluate("document.activeElement.textContent") == "Reset"


def test_the_mouse_moves_a_slider_and_its_button_brings_it_back(tab):
    area = slider(tab, "Drag area")
    box = area.bounding_box()
    middle = box["y"] + box["height"] / 2
    tab.mouse.move(box["x"] + box["width"] / 2, middle)
    tab.mouse.down()
    tab.mouse.move(box["x"] + box["width"] / 5, middle, steps=8)
    tab.mouse.up()
    there = area.get_attribute("aria-valuetext")
    assert 0.4 < float(there.split()[0]) < 0.53
    file, now = says(tab, {AREA: there})
    assert file != now
    tab.screenshot(path=shot("explore_moved"))
    tab.get_by_role("button", name="Reset", exact=True).nth(1).click()
    says(tab, {})
    assert area.get_attribute("aria-valuetext") == "0.550 m2"


def test_the_button_writes_what_is_moved(tab):
    slider(tab, "Mass ready to run").focus()
    tab.keyboard.press("Home")
    says(tab, {MASS: "300 kg"})
    tab.get_by_role("button", name="Save", exact=True).click()
    tab.get_by_text("written to car_moved.json").wait_for()
    file = ww.loads(json.dumps(DOCUMENT))
    assert ww.load(tab.root / "car_moved.json") == file.set({MASS: "300 kg"})


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_nobody_is_kept_out(tab, scheme, oracle):
    axe = oracle("axe_playwright_python.sync_playwright").Axe()
    tab.emulate_media(color_scheme=scheme)
    is_light = str(scheme == "light").lower()
    tab.wait_for_selector(f'body[data-jp-theme-light="{is_light}"]', state="attached")
    found = axe.run(tab, context=OUTPUT).response["violations"]
    assert not found, [(one["id"], one["nodes"][0]["html"]) for one in found]
    tab.screenshot(path=shot(f"explore_{scheme}"))


def test_nothing_is_asked_of_anybody_else(tab):
    here = [one for one in tab.asked if urlsplit(one).scheme not in ("data", "blob")]
    assert len(here) > 20
    assert {urlsplit(one).hostname for one in here} == {"127.0.0.1"}
    assert tab.complained == []


def shot(name):
    SHOTS.mkdir(parents=True, exist_ok=True)
    return SHOTS / f"{name}.png"
