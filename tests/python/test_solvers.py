"""Long questions on the command line may have a journal and processes, all in the same words."""

import json
from concurrent.futures import ThreadPoolExecutor

import pytest

from windwall.cli.command import run_command
from windwall.study import executors, menu_pieces
from windwall.study.executors import Lost, Pool

LONG = {
    "rank": ["rank"],
    "drawn": ["rank", "--draws", "4"],
    "driven": ["rank", "--by", "driven_speed"],
    "leans": ["leans", "--rows", "16"],
    "sweep": ["sweep", "--vary", "body/mass", "340 kg", "350 kg"],
}


@pytest.fixture
def asked(file, capsys):
    """What a command says, as a document; seconds are no answer."""

    def ask(question, *options, code=0):
        name, *words = question
        assert run_command([name, str(file), *words, "--json", *map(str, options)]) == code
        made = json.loads(capsys.readouterr().out)
        made.pop("plan", None)
        return made

    return ask


@pytest.mark.parametrize("question", LONG.values(), ids=LONG)
def test_a_journal_goes_on_and_changes_nothing(asked, question, tmp_path, monkeypatch):
    plain, path = asked(question), tmp_path / "journal"
    assert asked(question, "--journal", path) == plain
    monkeypatch.setattr(executors, "solved", None)
    assert asked(question, "--journal", path) == plain


@pytest.mark.parametrize("question", LONG.values(), ids=LONG)
def test_workers_change_nothing(asked, question, monkeypatch):
    plain, made = asked(question), []

    def processes(count):
        made.append(count)
        return Pool(ThreadPoolExecutor(count))

    monkeypatch.setattr(executors, "Processes", processes)
    assert asked(question, "--workers", 2) == plain
    assert set(made) == {2}


def test_real_workers(asked, monkeypatch):
    monkeypatch.setattr(menu_pieces, "PIECE", 3)
    assert asked(["rank"], "--workers", 1) == asked(["rank"])


class Losing(executors.Here):
    """Loses its worker over one task again and again."""

    def answer(self, future):
        raise Lost


def test_where_nobody_is_left_it_says_so(asked, tmp_path, monkeypatch):
    monkeypatch.setattr(executors, "Here", Losing)
    told = asked(["rank"], "--journal", tmp_path / "journal", code=2)
    (problem,) = told["problems"]
    assert "lost 20 times" in problem["message"]


@pytest.mark.parametrize(
    "options, says",
    [
        (["--workers", "0"], "no number of workers from 1 to 1024"),
        (["--workers", "2", "--scheduler", "tcp://127.0.0.1:1"], "not allowed with"),
    ],
)
@pytest.mark.parametrize("name", ["rank", "leans", "sweep"])
def test_wrong_words_are_told(file, capsys, name, options, says):
    assert run_command([name, str(file), *options]) == 2
    assert says in capsys.readouterr().err
