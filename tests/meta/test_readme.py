"""The README's lines do what they say, and its commands and pages exist."""

import re
from pathlib import Path

import pytest

import windwall as ww

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


@pytest.mark.timeout(400)  # where it is run alone, it ranks the demo
def test_the_ten_lines_run(monkeypatch, capsys, today, tmp_path):
    demo = today("airfield_cyclecar")
    ranking = demo.ranking  # by the function that is replaced below

    def rank(scenario):
        assert scenario == demo.scenario
        return ranking

    (tmp_path / "scenarios").symlink_to(ROOT / "scenarios")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(ww, "rank", rank)  # the same question was answered already
    (example,) = re.findall(r"```python\n(.*?)```", README, re.DOTALL)
    exec(compile(example, "README.md", "exec"), {})
    said = capsys.readouterr().out
    for words in ("Why it stops", "indicated", "1.35", "4200 rpm", "Every upgrade"):
        assert words in said
    assert ww.load("cyclecar.html") == demo.scenario


def test_the_two_commands_are_targets():
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    for command in re.findall(r"^make (\S+)", README, re.MULTILINE):
        assert re.search(rf"^{command}:", makefile, re.MULTILINE), command


def test_every_page_it_points_to_exists():
    for page in re.findall(r"\]\(([^)#]+)\)", README):
        assert (ROOT / page).exists(), page


def test_it_leads_to_a_vehicle_of_ones_own_and_to_its_notebooks():
    pages = re.findall(r"\]\(([^)#]+)\)", README)
    for page in ("docs/start.md", "docs/howto/your_own_vehicle.md"):
        assert page in pages
    assert "jupyter lab notebooks" in README
    assert README.index("`windwall new") < README.index("`windwall rank mine.json`")
