"""A file is written as a whole or not at all, and one that is there is safe until then."""

import json
import os
import resource
import stat
import subprocess
import sys
from contextlib import contextmanager

import pytest

import windwall as ww
from windwall.scenario import files

BEFORE = "what was there before\n"


@pytest.fixture
def there(tmp_path):
    path = tmp_path / "there.json"
    path.write_text(BEFORE, encoding="utf-8")
    return path


@contextmanager
def full_disk():
    """No file may grow beyond a few bytes: the system refuses in the middle of a write.

    Around the writing alone: whoever runs the tests may write a file of its own between them.
    """
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (100, before[1]))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)


def test_a_full_disk_leaves_the_file_that_was_there(car, there):
    with pytest.raises(OSError, match="too large"), full_disk():
        car.save(there)
    assert there.read_text(encoding="utf-8") == BEFORE
    assert os.listdir(there.parent) == [there.name]


def test_a_full_disk_leaves_no_half_of_a_new_file(tmp_path, car):
    for over in (True, False):
        with pytest.raises(OSError, match="too large"), full_disk():
            files.write(tmp_path / "new.json", car.text(), over=over)
    assert os.listdir(tmp_path) == []


@pytest.mark.parametrize(
    "arguments", [["schema", "--output"], ["new", "--set", "title=car", "--force"]]
)
def test_the_command_leaves_it_too(arguments, there, car, tmp_path):
    if arguments[0] == "new":
        from windwall.cli.new_questions import QUESTIONS

        arguments[1:1] = [
            word
            for one in QUESTIONS
            if one.needed and not one.after
            for word in ("--set", f"{one.name}={one.example}")
        ]
    code = (
        "import resource, sys; from windwall.cli.main import main\n"
        "resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100)); sys.exit(main(sys.argv[1:]))"
    )
    said = subprocess.run(
        [sys.executable, "-c", code, *arguments, str(there)],
        capture_output=True, text=True, check=False, timeout=60,
    )  # fmt: skip
    assert said.returncode == 2
    assert "File too large" in said.stderr
    assert "Traceback" not in said.stderr
    assert there.read_text(encoding="utf-8") == BEFORE
    assert os.listdir(there.parent) == [there.name]


def test_permissions_and_a_link_stay(car, there):
    there.chmod(0o640)
    link = there.with_name("link.json")
    link.symlink_to(there.name)
    car.save(link)
    assert link.is_symlink()
    assert ww.load(there) == car
    assert stat.S_IMODE(there.stat().st_mode) == 0o640


def test_a_new_file_has_the_permissions_that_are_usual(car, tmp_path):
    usual = tmp_path / "usual"
    usual.touch()
    car.save(tmp_path / "saved.json")
    assert (tmp_path / "saved.json").stat().st_mode == usual.stat().st_mode


def test_what_is_no_file_is_written_into(car, tmp_path):
    car.save(os.devnull)
    assert os.path.exists(os.devnull)
    with pytest.raises(IsADirectoryError):
        car.save(tmp_path)


def test_never_over_a_file_that_came_in_the_meantime(there):
    with pytest.raises(FileExistsError):
        files.write(there, "other", over=False)
    assert there.read_text(encoding="utf-8") == BEFORE


def test_a_name_is_shown_without_what_moves_a_cursor():
    assert files.shown("a\x1b[2Jb\n") == r"a\x1b[2Jb\n"
    assert files.shown(b"K\xfcbel".decode("utf-8", "surrogateescape")) == r"K\xfcbel"
    assert files.shown("Kübel.json") == "Kübel.json"
    assert "\u202e" not in files.shown("a\u202eb")


@pytest.mark.parametrize(
    "ask",
    [
        lambda car: car.get("\ud800"),
        lambda car: car.set({"\ud800": 1}),
        lambda car: car.set({"title": "\ud800"}),
        lambda car: car.install("\ud800"),
        lambda car: car.operating_point("\ud800"),
        lambda car: ww.rank(car, budget="\ud800"),
        lambda car: ww.sweep(car, {"\ud800": [1]}),
        lambda car: ww.sweep(car, {"body/mass": ["\ud800"]}),
    ],
)
def test_half_a_letter_is_refused_wherever_it_is_typed(car, ask):
    with pytest.raises(ww.ScenarioError, match="half a letter"):
        ask(car)


def test_half_a_letter_is_refused_with_a_sentence(document):
    text = json.dumps(document, ensure_ascii=False).replace("Garden", "Gar\ud800den")
    with pytest.raises(ww.ScenarioError, match="UTF-8"):
        ww.loads(text)
