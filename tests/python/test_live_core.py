"""The compiled core inside a page says what the package says, to the digit and to the word."""

import json
import random

import pytest

import windwall as ww
from python.browser import browser, moved, moved_back, needs_browser, opened
from windwall.quantities.measures import SPEED
from windwall.report.live import live_block
from windwall.report.live.chosen import sliders
from windwall.report.live.core import compiled_core
from windwall.report.text.limits import bound_text, result_measure
from windwall.report.text.speed import speeds
from windwall.report.wording.top_speed import limit_word
from windwall.scenario.titles import plain_name

pytestmark = [
    needs_browser,
    pytest.mark.slow,
    pytest.mark.timeout(600),  # a browser on a machine that others share
    pytest.mark.skipif(not compiled_core(), reason="the core for browsers is not built: make live"),
]
SCENARIOS = ["airfield_cyclecar", "lakebed_streamliner", "village_microcar"]
POSITIONS = 70
SLOWEST = 0.5  # s, of an answer on a busy machine; docs/decisions has what it takes on a quiet one


def scenario(name, system=None):
    return ww.load(f"scenarios/{name}.json").shown_in(system)


@pytest.fixture(scope="module")
def running():
    with browser() as made:
        yield made


@pytest.fixture(scope="module")
def pages(running, tmp_path_factory):
    """A page of each scenario and system of units, opened when it is first asked for."""
    made = {}

    def page(name, system=None):
        if (name, system) not in made:
            fragment = live_block(scenario(name, system))
            made[name, system] = opened(running, tmp_path_factory.mktemp(name), fragment)
        return made[name, system]

    return page


def passed(one, system):
    worst = result_measure(one.address).text(one.worst, system)
    said = f"{plain_name(one.address)}: {bound_text(one, system)}, at worst {worst}: {one.why}"
    return "limit passed", said, one.address


def rows(answer):
    """What the package says, in the order of the page."""
    if not answer.answered:
        return [["no answer", answer.sentence]]
    system = answer.scenario_info.system
    made = [*speeds(answer), ("limited by", limit_word(answer)), ("why", answer.sentence)]
    made += [("next", answer.next_limit)] if answer.next_limit else []
    made += [passed(one, system) for one in answer.passed]
    made += [
        ("caution", f"{plain_name(one.address)}: {one.sentence}", one.address)
        for one in answer.cautions
    ]
    return [list(row) for row in made]


def positions(car, count, seed):
    """Some sliders moved to anywhere, the others left where the file has them."""
    draw = random.Random(seed)
    for _ in range(count):
        left = draw.random()
        yield [0 if draw.random() < left else draw.randint(x.low, x.high) for x in sliders(car)]


@pytest.mark.parametrize(
    "name, system", [*((name, None) for name in SCENARIOS), ("airfield_cyclecar", "us")]
)
def test_every_row_is_that_of_the_package(pages, name, system):
    car, page = scenario(name, system), pages(name, system)
    took = []
    for steps in positions(car, POSITIONS, name):
        found = moved(page, steps)
        assert found["rows"] == rows(car.set(found["changes"]).top_speed())
        took.append(found["took"])
    print(f"{name}: {sorted(took)[len(took) // 2]:.0f} ms an answer")
    assert sorted(took)[len(took) // 2] < 1000 * SLOWEST
    assert page.heard == []


def settled(page):
    page.wait_for_function(
        "async () => { const live = document.querySelector('.windwall-live');"
        "const said = live.querySelector('.headline').textContent;"
        "return said === live.windwall.headline_of(await live.windwall.ask(), live.windwall.file);}"
    )
    return page.inner_text(".headline")


def test_mouse_and_keys_move_the_answer(pages):
    name = "airfield_cyclecar"
    car, page = scenario(name), pages(name)
    moved_back(page)
    before = settled(page)
    page.focus("input >> nth=2")
    for _ in range(5):
        page.keyboard.press("ArrowRight")
    by_keys = settled(page)
    box = page.locator("input").nth(3).bounding_box()
    page.mouse.move(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    page.mouse.down()
    page.mouse.move(box["x"] + box["width"] / 5, box["y"] + box["height"] / 2, steps=6)
    page.mouse.up()
    by_mouse = settled(page)
    assert len({before, by_keys, by_mouse}) == 3
    said = page.locator("output").all_inner_texts()
    moved_to = {one.address: text for one, text in zip(sliders(car), said, strict=True)}
    wanted = {address: moved_to[address] for address in ("body/mass", "body/drag_area")}
    speed = SPEED.value(car.set(wanted).top_speed().goal_speed, car.system)
    assert by_mouse.startswith(f"{speed:.1f} km/h, +")
    assert page.heard == []


def test_what_the_core_refuses_is_told(pages):
    page = pages("village_microcar")
    found = page.evaluate(
        "async () => { const live = document.querySelector('.windwall-live').windwall;"
        "const file = JSON.parse(live.data.scenario); return live.rows_for("
        "{ problems: [{ address: 'body/mass', message: 'From 20 to 5000 kg.' }] }); }"
    )
    assert found == [["refused", "Mass ready to run: From 20 to 5000 kg.", "body/mass"]]


def test_a_limit_is_called_by_its_name_and_its_address_is_shown_where_one_points(running, tmp_path):
    document = scenario("airfield_cyclecar").document()
    document["limits"]["engine/piston_speed"] = {"max": "5 m/s", "why": "a try"}
    document["limits"]["charge_path/blower/outlet/temperature"] = {"max": "20 degC", "why": "a try"}
    page = opened(running, tmp_path, live_block(ww.loads(json.dumps(document))))
    said = page.evaluate(
        "() => [...document.querySelectorAll('.windwall-live dd')]"
        ".filter(one => one.title).map(one => [one.title, one.textContent.split(':')[0]])"
    )
    assert ["engine/piston_speed", "engine piston speed"] in said
    assert ["charge_path/blower/outlet/temperature", "blower outlet temperature"] in said
    assert page.heard == []
