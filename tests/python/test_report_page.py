"""The page that is sent: whole, harmless, readable by all, and its scenario comes back."""

import json
import re
from pathlib import Path

import matplotlib as mpl
import pytest

import windwall as ww
from python.browser import browser, needs_browser
from python.few_upgrades import CAR, few_upgrades
from windwall.errors import ScenarioError
from windwall.report.page import page, write_page
from windwall.report.page.provenance import known_by
from windwall.scenario.embedded import embedded, taken_out
from windwall.scenario.inputs import uncertain_inputs

MICRO = "scenarios/village_microcar.json"
NASTY = "</script><script>alert(1)</script> & \\u003c <b>Grüße</b> ]]>"
SCENARIOS = ("airfield_cyclecar", "lakebed_streamliner", "village_microcar")
SHOTS = Path("build/screenshots")


@pytest.fixture(scope="module", autouse=True)
def aside():
    mpl.use("Agg")


@pytest.fixture(scope="module")
def few():
    return few_upgrades()


@pytest.fixture(scope="module")
def sent(few, tmp_path_factory):
    path = tmp_path_factory.mktemp("sent") / "page.html"
    write_page(few, path)
    return path


def changed(**entries):
    document = json.loads(Path(MICRO).read_text(encoding="utf-8")) | entries
    return ww.loads(json.dumps(document))


def test_it_says_what_the_answer_says(few, sent):
    text, best = sent.read_text(encoding="utf-8"), few.top_speed()
    assert best.sentence in text
    assert best.next_limit in text
    assert "Cycle wings faired in and a tail" in text
    assert "closed course" in text
    assert "What a little is worth, km/h" in text
    headings = (
        "Why it stops there",
        "Where the watts go",
        "Which upgrade",
        "Knock and spark",
        "How well the inputs are known",
        "Drag coefficient times frontal area",
    )
    for words in headings:
        assert words in text


def test_the_scenario_comes_back(few, sent, windwall):
    back = ww.load(sent)
    assert back.digest == few.digest
    assert back.text() == few.text()
    assert json.loads(windwall("check", sent, "--json").stdout)["problems"] == []


@pytest.mark.parametrize("title", [NASTY, "a\\", 'say "\\\\u003c" or <', "\\\\<&>", ""])
def test_any_title_is_harmless_and_comes_back(title):
    car = changed(title=title)
    text = page(car, live=False)
    assert "<script>alert" not in text
    assert "<b>Gr" not in text
    assert ww.loads(text).title == car.title
    assert ww.loads(text).text() == car.text()


def test_a_page_without_a_scenario_teaches():
    with pytest.raises(ScenarioError, match="no scenario is inside"):
        ww.loads("<!doctype html><title>else</title>")
    begins = "<!DOCTYPE html>\n<p>of it</p>\n"
    with pytest.raises(ScenarioError, match="drag_area") as wrong:
        ww.loads(begins + embedded('{"body": {"drag_area": 3}}'))
    assert "scenario:4:" in str(wrong.value)  # a line of the page
    assert taken_out(b'{"title": "<html>"}', "") == b'{"title": "<html>"}'


def test_every_kind_of_vehicle_has_a_page():
    drowned = {"charge_path/spray/rated_flow": "200 cm3/min", "charge_path/blower/drive_ratio": 1.5}
    stuck = ww.load(CAR).install("spray").set(drowned)
    assert not stuck.top_speed().answered
    assert "No answer" in page(stuck)
    us = page(changed(units="us"), live=False)
    assert "mph" in us
    told = re.sub(r"<script.*?</script>", "", us, flags=re.S)
    told = re.sub(r'<span class="more">[^<]*</span>', "", told)  # quotes a source
    told = re.sub(r">(usual value|design of the engine)[^<]*<", "><", told)
    # A row whose meaning is at that speed says so; no number is in it.
    assert set(re.findall(r"[\d.]+ km/h", told)) <= {"100 km/h"}
    spreads = re.findall(r"degF</td><td>(-?[\d.]+)</td>", told)
    assert spreads
    assert all(float(one) > 0 for one in spreads)


def test_it_can_say_how_sure(few, windwall, tmp_path):
    told = windwall("report", CAR, "-o", tmp_path / "x" / "page.html")
    assert told.returncode == 2
    assert "No such file" in told.stderr
    text = page(few, draws=8, live=False)
    assert "To choose, over all worlds" in text


def test_a_budget_reaches_the_page(few, windwall, tmp_path):
    car, made = tmp_path / "car.json", tmp_path / "page.html"
    car.write_text(few.text(), encoding="utf-8")
    beyond = "Cycle wings faired in and a tail"  # 130 EUR
    assert beyond in page(few, live=False, budget="130 EUR")
    told = windwall("report", car, "-o", made, "--budget", "99 EUR")
    assert told.returncode == 0
    text = made.read_text(encoding="utf-8")
    assert "Which upgrade, for at most 99 EUR" in text
    assert beyond not in re.sub(r"<script.*?</script>", "", text, flags=re.S)
    wrong = windwall("report", car, "-o", tmp_path / "x.html", "--budget", "9 USD")
    assert (wrong.returncode, (tmp_path / "x.html").exists()) == (2, False)
    assert "USD" in wrong.stderr


def test_a_file_without_a_title_is_called_by_its_name():
    document = json.loads(Path(MICRO).read_text(encoding="utf-8"))
    assert not document.get("title")
    text = page(ww.load(MICRO), live=False)
    assert "<h1>Village microcar</h1>" in text
    told = re.sub(r"<script.*?</script>", "", text, flags=re.S)
    assert told.count("Village microcar") == 2  # and no picture repeats it
    nameless = page(ww.loads(json.dumps(document)), live=False)
    assert "<h1>A vehicle</h1>" in nameless
    assert ">Scenario<" not in nameless


def test_a_page_without_a_name_lies_in_the_folder_one_is_in(windwall, tmp_path):
    (tmp_path / "folder").mkdir()
    document = json.loads(Path(MICRO).read_text(encoding="utf-8")) | {"upgrades": []}
    (tmp_path / "folder" / "mine.json").write_text(json.dumps(document), encoding="utf-8")
    told = windwall("report", "folder/mine.json", cwd=tmp_path)
    assert (told.returncode, told.stdout) == (0, "written to mine.html\n")
    assert [one.name for one in tmp_path.glob("**/*.html")] == ["mine.html"]
    made = (tmp_path / "mine.html").read_bytes()
    again = windwall("report", "folder/mine.json", cwd=tmp_path)
    assert again.returncode == 2
    assert "mine.html: this page is there already; say -o" in again.stderr
    assert (tmp_path / "mine.html").read_bytes() == made


def test_it_says_where_each_input_comes_from():
    document = json.loads(Path(CAR).read_text(encoding="utf-8"))
    document["body"]["drag_area"] = "0.70 ± 0.05 m2"
    del document["upgrades"]  # nothing is ranked
    document["notes"] = "Learned by windwall 0.1.0 from 12 facts (a run); before that it was else."
    tied = ["body/drag_area", "body/rolling_rise"]
    document["correlations"] = [{"between": tied, "correlation": -0.4}]
    car = ww.loads(json.dumps(document))
    told = known_by(car)
    by_address = {one.address: told(one) for one in uncertain_inputs(car)}
    assert by_address["body/mass"] == "the file"
    learned = "the file, learned from 12 facts, as its notes say"
    assert by_address["body/drag_area"] == learned
    assert by_address["body/rolling_rise"].startswith("usual value: a constant coefficient")
    assert by_address["engine/breathing/best_speed"] == "rated figures of the stock engine"
    design = "design of the engine, work: common practice, no source"
    assert by_address["engine/valves/intake_closing"] == design
    weather = "usual value: ISO 2533 standard atmosphere"
    assert by_address["day/sea_level_pressure"] == weather
    assert not any(one.endswith("…") for one in by_address.values())  # half a sentence
    assert weather in re.sub(r"<[^>]*>", "", page(car, live=False))


@pytest.mark.parametrize("name", SCENARIOS)
def test_no_usual_value_is_without_a_word_of_its_source(name):
    car = ww.load(f"scenarios/{name}.json")
    told = known_by(car)
    known = [told(one) for one in uncertain_inputs(car)]
    assert len(known) > 40
    assert "usual value" not in known
    assert not any(one.endswith((":", "…")) for one in known)


@needs_browser
@pytest.mark.slow
@pytest.mark.timeout(600)
@pytest.mark.parametrize("name", SCENARIOS)
def test_as_shipped_it_prints_to_two_pages(name, tmp_path):
    SHOTS.mkdir(parents=True, exist_ok=True)
    write_page(ww.load(f"scenarios/{name}.json"), tmp_path / "page.html")
    with browser() as running:
        tab = running.new_page()
        tab.goto((tmp_path / "page.html").as_uri())
        tab.pdf(path=SHOTS / f"{name}.pdf", format="A4", prefer_css_page_size=True)
    printed = (SHOTS / f"{name}.pdf").read_bytes()
    assert 1 <= len(re.findall(rb"/Type\s*/Page\b", printed)) <= 2


AIR = """() => {  // mm left of two sheets of 279 mm, were the page one strip
    const strip = document.documentElement.getBoundingClientRect().height;
    return 2 * 279 - strip * 25.4 / 96;
}"""
SMALLEST = """() => [...document.querySelectorAll("figure text")].map(one => {
    const to = one.getScreenCTM();
    return parseFloat(getComputedStyle(one).fontSize) * Math.hypot(to.a, to.b) * 72 / 96;
})"""
SMALLEST_CELL = """() => [...document.querySelectorAll("td, th, p, li")]
    .filter(one => one.textContent.trim() && one.offsetParent)
    .map(one => parseFloat(getComputedStyle(one).fontSize) * 72 / 96)"""
CUT = """() => [...document.querySelectorAll("figure text")].filter(one => {
    const word = one.getBoundingClientRect();
    const all = one.ownerSVGElement.getBoundingClientRect();
    return word.left < all.left - 1 || word.right > all.right + 1
        || word.top < all.top - 1 || word.bottom > all.bottom + 1;
}).map(one => one.textContent)"""


@needs_browser
@pytest.mark.slow
@pytest.mark.timeout(600)
@pytest.mark.parametrize("name", SCENARIOS)
def test_on_paper_it_is_read_without_a_glass_and_nothing_moves(name, tmp_path):
    write_page(ww.load(f"scenarios/{name}.json"), tmp_path / "page.html")
    with browser() as running:
        tab = running.new_page(viewport={"width": 703, "height": 1055}, color_scheme="dark")
        tab.emulate_media(media="print")  # 703 px are 186 mm, A4 without its margins
        tab.goto((tmp_path / "page.html").as_uri())
        assert min(tab.evaluate(SMALLEST)) > 6.5  # points
        assert min(tab.evaluate(SMALLEST_CELL)) > 7
        assert tab.evaluate(AIR) > 10
        assert not tab.locator(".more:visible").count()
        assert tab.evaluate(CUT) == []
        assert (
            tab.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
        )
        assert not tab.locator("input:visible, button:visible, summary:visible").count()
        assert tab.evaluate("document.documentElement.scrollWidth") <= 703


@needs_browser
def test_a_browser_shows_it(few, sent, tmp_path, oracle):
    SHOTS.mkdir(parents=True, exist_ok=True)
    axe = oracle("axe_playwright_python.sync_playwright").Axe()
    said, asked = [], []
    with browser() as running:
        for scheme in ("light", "dark"):
            tab = running.new_page(color_scheme=scheme, viewport={"width": 1100, "height": 900})
            tab.on("console", lambda message: said.append(message.text))
            tab.on("pageerror", lambda error: said.append(str(error)))
            tab.on("request", lambda request: asked.append(request.url))
            tab.goto(sent.as_uri())
            found = axe.run(tab).response["violations"]
            assert not found, [(one["id"], one["nodes"][0]["html"]) for one in found]
            tab.screenshot(path=SHOTS / f"report_{scheme}.png", full_page=True)
        with tab.expect_download() as saved:
            tab.get_by_role("button", name="Save the scenario").click()
        saved.value.save_as(tmp_path / "saved.json")
        for width in (1100, 360):
            tab.set_viewport_size({"width": width, "height": 900})
            tab.evaluate("document.querySelectorAll('details').forEach(one => one.open = true)")
            tab.wait_for_timeout(100)  # the event that a fold was opened comes by itself
            found = axe.run(tab).response["violations"]
            assert not found, [(one["id"], one["nodes"][0]["html"]) for one in found]
        tab.set_viewport_size({"width": 1100, "height": 900})
        assert (
            saved.value.suggested_filename == "airfield_cyclecar_blown_twin_no_charge_cooler.json"
        )
        assert tab.evaluate("document.documentElement.scrollWidth") <= 1100
        tab.set_viewport_size({"width": 360, "height": 700})
        assert tab.evaluate("document.documentElement.scrollWidth") <= 360
        tab.screenshot(path=SHOTS / "report_phone.png", full_page=True)
        tab.pdf(path=tmp_path / "page.pdf", format="A4", prefer_css_page_size=True)
    assert ww.load(tmp_path / "saved.json").digest == few.digest
    assert said == []
    assert [one for one in asked if not one.startswith(("file:", "blob:", "data:"))] == []
    pages = re.findall(rb"/Type\s*/Page\b", (tmp_path / "page.pdf").read_bytes())
    assert 1 <= len(pages) <= 2
