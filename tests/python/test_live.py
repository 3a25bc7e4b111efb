"""Sliders inside a page, with answers that were worked out beforehand, in a real browser."""

import json
import re

import pytest

import windwall as ww
from python.browser import browser, moved, moved_back, needs_browser, opened
from windwall.errors import ScenarioError
from windwall.quantities.measures import SPEED
from windwall.report.live import baked as bakery
from windwall.report.live import block, live_block
from windwall.report.live.chosen import sliders
from windwall.report.live.slider import round_step

ADDRESSES = ["body/mass", "body/drag_area", "day/temperature", "driveline/box/ratios/4"]


@pytest.fixture(scope="module")
def without_core():
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(block, "compiled_core", str)
        yield


@pytest.fixture(scope="module")
def fragment(car, without_core):
    return live_block(car, ADDRESSES)


@pytest.fixture(scope="module")
def page(fragment, tmp_path_factory):
    with browser() as running:
        yield opened(running, tmp_path_factory.mktemp("page"), fragment)


@pytest.fixture(autouse=True)
def as_it_was(request):
    """Each test finds the sliders where the file has them, and a page that is content."""
    yield
    if "page" in request.fixturenames:
        page = request.getfixturevalue("page")
        moved_back(page)
        assert page.heard == []


def headline(page):
    page.wait_for_timeout(50)
    return page.inner_text(".headline")


def shown(car, speed):
    return f"{SPEED.value(speed, car.system):.1f} {SPEED.shown(car.system)}"


@needs_browser
def test_it_begins_with_the_answer_of_the_file(page, car):
    assert headline(page) == f"{shown(car, car.top_speed().goal_speed)}, as in the file"
    assert page.inner_text(".slider output >> nth=0") == car.readable("body/mass")


@needs_browser
def test_keys_move_a_slider(page, car):
    before = headline(page)
    page.focus("input >> nth=1")
    page.keyboard.press("Home")
    assert headline(page) != before
    said = page.inner_text(".slider output >> nth=1")
    assert page.get_attribute("input >> nth=1", "aria-valuetext") == said
    assert car.set({"body/drag_area": said}).get("body/drag_area") < car.get("body/drag_area")


@needs_browser
def test_a_mouse_moves_a_slider(page):
    before = headline(page)
    box = page.locator("input").nth(0).bounding_box()
    page.mouse.click(box["x"] + box["width"] - 3, box["y"] + box["height"] / 2)
    after = headline(page)
    assert after != before
    assert "against the file" in after
    page.click(".slider .reset >> nth=0")
    assert headline(page) == before


@needs_browser
def test_a_way_back_is_offered_only_for_what_was_moved(page):
    offered = page.locator(".reset:visible, .reset-all:visible")
    assert offered.count() == 0
    page.focus("input >> nth=1")
    page.keyboard.press("ArrowRight")
    assert offered.count() == 2
    assert page.locator(".slider >> nth=1").locator(".reset").is_visible()
    place = page.locator("output >> nth=1").bounding_box()
    page.click(".slider .reset >> nth=1")
    assert offered.count() == 0
    assert page.locator("output >> nth=1").bounding_box() == place  # nothing jumps
    assert page.evaluate("document.activeElement === document.querySelectorAll('input')[1]")


@needs_browser
def test_between_positions_it_is_off_by_no_more_than_it_says(page, car):
    for steps in ([7, 0, 0, 0], [-9, 11, 0, 0], [13, -6, 9, 0], [5, 3, -17, 2]):
        found = moved(page, steps)
        answer = found["answer"]
        true = car.set(found["changes"]).top_speed().goal_speed
        assert abs(answer["run_up"]["speed"] - true) <= 1.5 * answer["error"]
        name, said = found["rows"][-1]
        assert name == "by interpolation"
        assert SPEED.shown(car.system) in said


@needs_browser
def test_at_positions_that_were_solved_it_is_right(page, car):
    data = page.evaluate("document.querySelector('.windwall-live').windwall.data")
    at = data["baked"]["together_at"]
    for steps in ([at[0][0], at[1][-1], 0, 0], [0, at[1][0], at[2][-1], 0]):
        found = moved(page, steps)
        true = car.set(found["changes"]).top_speed()
        assert found["headline"].startswith(shown(car, true.goal_speed) + ", ")


@needs_browser
def test_page_and_package_interpolate_alike(page, car, without_core):
    found = [near for one in sliders(car, ADDRESSES) if (near := one.nearer(block.SHORT_OF_CORE))]
    made = bakery.baked(car, found)
    for steps in ([3, -4, 5, 0], [-11, 20, 0, 0], [0, 0, -8, 6]):
        by_index = {i: k for i, k in enumerate(steps) if k}
        expected = bakery.estimate(made, "speed", by_index)
        assert moved(page, steps)["answer"]["run_up"]["speed"] == pytest.approx(expected, rel=1e-12)


@needs_browser
def test_the_moved_scenario_is_a_file(page, car):
    page.focus("input >> nth=0")
    page.keyboard.press("PageUp")
    page.focus("input >> nth=2")
    page.keyboard.press("End")
    page.focus("input >> nth=3")
    page.keyboard.press("ArrowLeft")
    with page.expect_download() as saved:
        page.click(".save")
    text = saved.value.path().read_text("utf-8")
    said = page.locator(".slider output").all_inner_texts()
    wanted = {"body/mass": said[0], "day/temperature": said[2], ADDRESSES[3]: float(said[3])}
    expected = car.set(wanted)
    assert expected != car
    assert ww.loads(text).digest == expected.digest


def test_texts_of_the_file_never_become_markup(document, without_core):
    document["title"] = '</script><script>alert("x")</script><!--'
    made = live_block(ww.loads(json.dumps(document)), ["body/mass"])
    shown = re.sub(r"<script type=.application/json.>.*?</script>", "", made, flags=re.DOTALL)
    assert made.count("</script>") == 2
    assert "<!--" not in made
    assert "alert(" not in shown


def test_nothing_is_fetched_and_no_handler_is_inline(fragment):
    assert not re.search(r"""\b(src|href)\s*=|\bon\w+\s*=\s*["']|@import|url\(""", fragment)


def test_a_usual_vehicle_gets_the_usual_sliders(car):
    found = [one.address for one in sliders(car)]
    assert {"body/mass", "body/drag_area", "day/temperature", "day/headwind"} <= set(found)
    assert any(address.startswith("driveline/") for address in found)


def test_each_position_is_a_value_of_a_file(car):
    for one in sliders(car):
        assert one.low <= 0 <= one.high
        for k in (one.low, -1, 1, one.high):
            if one.low <= k <= one.high and k:
                assert isinstance(car.set({one.address: one.given(k)}).get(one.address), float)


def test_a_span_that_is_asked_for_is_kept(car):
    (one,) = sliders(car, {"body/mass": ("300 kg", "400 kg")})
    assert (one.text(one.low), one.text(one.high)) == ("300 kg", "400 kg")


def test_an_address_that_is_none_is_refused(car):
    with pytest.raises(ScenarioError, match="body/mess"):
        live_block(car, ["body/mess"])


@pytest.mark.parametrize(
    "span, step", [(100, (1, 0)), (55, (5, 1)), (0.3, (2, 3)), (2000, (20, 0)), (1.999, (1, 2))]
)
def test_steps_are_round(span, step):
    assert round_step(span) == step


def test_positions_hold_both_ends_and_the_file(car):
    for one in sliders(car):
        ks = bakery.nodes(one)
        assert ks[0] == one.low
        assert ks[-1] == one.high
        assert 0 in ks
        assert set(bakery.every_second(ks)) >= {one.low, 0, one.high}
