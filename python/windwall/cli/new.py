"""`windwall new`: a scenario file from a few questions, each answer judged by the loader."""

from __future__ import annotations

import errno
import json
import os
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from windwall.cli.new_asked import METRIC, said_of
from windwall.cli.new_doubts import doubts
from windwall.cli.new_draft import draft_of, goes_on, keep
from windwall.cli.new_question import Question
from windwall.cli.new_questions import QUESTIONS, document, readings, si, trial, word
from windwall.cli.new_readings import Values, gears, heading, refuse_decimal_comma
from windwall.cli.new_refused import refused
from windwall.cli.new_talk import LeftEarly, Talk, shown
from windwall.cli.new_upgrades import refuse_twice
from windwall.cli.output import say
from windwall.cli.stock_engine import agree
from windwall.errors import Problem, ScenarioError
from windwall.report.text.new import closing, opening
from windwall.scenario import files
from windwall.scenario.data import ScenarioData
from windwall.study.default_sensitivity import default_sensitivities
from windwall.study.diagnosis import diagnose
from windwall.study.solve import top_speed

__all__ = [
    "DEFAULT_NAME", "NO", "Unfinished", "accept", "answers_of", "ask_all", "declines", "new",
    "prepared", "refuse_empty", "refuse_to_overwrite", "stated_answers", "talked", "write",
]  # fmt: skip

DEFAULT_NAME = "scenario.json"
NO = ("no", "none", "nothing")


class Unfinished(Exception):  # noqa: N818  # it is no error of the program
    """The answers ended before the questions did, or the person left; what became of them."""

    def __init__(self, kept: str, interrupted: bool) -> None:
        super().__init__(kept)
        self.kept, self.interrupted = kept, interrupted


def accept(question: Question, text: str, before: Values) -> Values:
    """What an answer means, or a ScenarioError that says what is wrong with it."""
    if not text or declines(question, text):
        if question.needed:
            refuse_empty(question, before)
        return {}
    wrong: list[list[Problem]] = []
    try:
        if question.read not in (gears, heading):
            refuse_decimal_comma(question.address, text)
        meant = readings(question, text)
    except ScenarioError as told:
        wrong, meant = [told.problems], []
    for values in meant:
        try:
            refuse_twice(values, before)
            ScenarioData.read(trial({**before, **values}))
            agree({**before, **values}, si)
            return values
        except ScenarioError as told:
            wrong.append(told.problems)
    raise ScenarioError(refused(question, text, wrong, before.get("units", METRIC)))


def declines(question: Question, text: str) -> bool:
    """Whether a plain `no` says that there is none, as of a blower."""
    return text.lower() in NO and not question.needed and question.read not in (word, heading)


def refuse_empty(question: Question, before: Values) -> None:
    """A ScenarioError where something needed follows from nothing that was answered before."""
    try:
        ScenarioData.read(trial(before, without=question.address))
    except ScenarioError:
        message = f'is missing ({said_of(question)}); write for example "{question.example}"'
        raise ScenarioError([Problem(question.address, 0, 0, message)]) from None


def ask_all(ask: Callable[[Question, Values], Values]) -> Values:
    """Every question that applies, in their order."""
    values: Values = {}
    answered: dict[str, Values] = {}
    for question in QUESTIONS:
        if question.follows(answered):
            answered[question.name] = ask(question, values)
            values |= answered[question.name]
    return values


def talked(path: Path, stated: dict[str, str], system: str) -> Values:
    """The answers of somebody who types them; whoever leaves finds them again."""
    draft = draft_of(path)
    kept = stated_answers(str(draft), []) if draft.exists() else {}
    say(opening(files.shown(path), files.shown(draft)))
    if kept:
        shown(goes_on(path, kept))
    talk = Talk(accept, kept, stated, system)
    try:
        return talk.values()
    except (LeftEarly, KeyboardInterrupt) as left:
        interrupted = isinstance(left, KeyboardInterrupt)
        typed = {name: text for name, text in talk.answers.items() if name not in stated}
        raise Unfinished(keep(path, typed), interrupted) from None


def prepared(answers: dict[str, str]) -> Values:
    """Answers made beforehand: nothing is asked, and everything wrong is said at once."""
    problems = list(_unknown(answers))

    def look_up(question: Question, before: Values) -> Values:
        try:
            return accept(question, answers.get(question.name, "").strip(), before)
        except ScenarioError as wrong:
            problems.extend(
                one._replace(address=question.name, line=0, column=0) for one in wrong.problems
            )
            return {}

    values = ask_all(look_up)
    if problems:
        raise ScenarioError(problems, "answers")
    return values


def _unknown(answers: dict[str, str]) -> Iterator[Problem]:
    names = [question.name for question in QUESTIONS]
    for name in answers:
        if name not in names:
            yield Problem(name, 0, 0, f"no question is called that; there are {', '.join(names)}")


def stated_answers(path: str | None, pairs: list[str]) -> dict[str, str]:
    """Answers of a file, and those of the command line over them."""
    answers: dict[str, Any] = {}
    if path is not None:
        answers = answers_of(path)
    for pair in pairs:
        name, equals, text = pair.partition("=")
        if not equals:
            raise ScenarioError([Problem(pair, 0, 0, 'an answer is set as "mass=348 kg"')])
        answers[name.strip()] = text
    return {name: _text(value) for name, value in answers.items()}


def answers_of(path: str) -> dict[str, Any]:
    """The object in a file of answers."""
    source = files.shown(path)
    try:
        answers = json.loads(files.read(path))
    except ValueError as wrong:
        raise ScenarioError([Problem("", 0, 0, f"this is not JSON: {wrong}")], source) from None
    except RecursionError:
        raise ScenarioError([Problem("", 0, 0, "this is nested too deeply")], source) from None
    if not isinstance(answers, dict):
        raise ScenarioError([Problem("", 0, 0, "one object of answers is expected")], source)
    return answers


def _text(value: Any) -> str:
    if isinstance(value, list):
        return ", ".join(map(str, value))
    return "" if value is None else str(value)


def refuse_to_overwrite(path: Path) -> None:
    message = "this file is there already; name another, or say --force to write over it"
    raise ScenarioError([Problem("", 0, 0, message)], files.shown(path))


def new(arguments: Any) -> int:
    """Asks, writes the file, and says what it leans on."""
    path = Path(arguments.file)
    if arguments.file == "-":
        raise ScenarioError([Problem("", 0, 0, "a file is made, so it needs a name")], "-")
    if path.exists() and not arguments.force:
        refuse_to_overwrite(path)
    if not path.absolute().parent.is_dir():  # said before anybody answers anything
        raise FileNotFoundError(errno.ENOENT, os.strerror(errno.ENOENT), str(path))
    answers = stated_answers(arguments.answers, arguments.set)
    stated = {"units": arguments.units} if arguments.units else {}
    if arguments.answers is None and not arguments.set:
        values = talked(path, stated, arguments.units or METRIC)
        draft_of(path).unlink(missing_ok=True)
    else:
        values = prepared(answers | stated)
    made = ScenarioData.read(json.dumps(document(values), ensure_ascii=False), str(path))
    write(made, path, arguments.force)
    answer, doubted = top_speed(made, brief=True), list(doubts(values, made.system))
    held = diagnose(made) if answer.answered and made.observed else None
    say(closing(made, answer, held, doubted, default_sensitivities(made)))
    return 0


def write(made: ScenarioData, path: Path, force: bool) -> None:
    """Never over a file that came in the meantime, unless told to."""
    try:
        files.write(path, made.text(), over=force)
    except FileExistsError:
        refuse_to_overwrite(path)
