"""`windwall new`: a scenario file from a few questions, each answer judged by the loader."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from windwall.cli.new_asked import asked
from windwall.cli.new_questions import QUESTIONS, Question, document, readings, si, trial
from windwall.cli.new_readings import Values
from windwall.cli.output import say
from windwall.cli.stock_engine import agree
from windwall.errors import Problem, ScenarioError
from windwall.report.text.new import closing, opening
from windwall.scenario import files
from windwall.scenario.data import ScenarioData
from windwall.study.default_sensitivity import default_sensitivities

DEFAULT_NAME = "scenario.json"


class Unfinished(Exception):  # noqa: N818  # it is no error of the program
    """The answers ended before the questions did."""


def accept(question: Question, text: str, before: Values) -> Values:
    """What an answer means, or a ScenarioError that says what is wrong with it."""
    if not text:
        if question.needed:
            ScenarioData.read(trial(before, without=question.address))
        return {}
    wrong = []
    for values in readings(question, text):
        try:
            ScenarioData.read(trial({**before, **values}))
            agree({**before, **values}, si)
            return values
        except ScenarioError as refused:
            wrong.append(refused.problems)
    raise ScenarioError([problem._replace(line=0, column=0) for problem in _told(wrong)])


def _told(wrong: list[list[Problem]]) -> list[Problem]:
    """Of several readings, those that are not about the wrong kind of quantity altogether."""
    close = [problems for problems in wrong if "is the unit of" not in problems[0].message]
    return [problem for problems in (close or wrong) for problem in problems]


def applies(question: Question, answered: set[str]) -> bool:
    return not question.after or question.after in answered


def ask_all(ask: Callable[[Question, Values], tuple[str, Values]]) -> Values:
    """Every question that applies, in their order."""
    values: Values = {}
    answered: set[str] = set()
    for question in QUESTIONS:
        if applies(question, answered):
            text, meant = ask(question, values)
            values |= meant
            answered |= {question.name} if text else set()
    return values


def at_the_terminal(question: Question, before: Values) -> tuple[str, Values]:
    """Asks until the loader takes the answer."""
    say(asked(question))
    while True:
        text = typed()
        try:
            return text, accept(question, text, before)
        except ScenarioError as wrong:
            for problem in wrong.problems:
                say(f"  {problem.address}: {problem.message}")


def typed() -> str:
    """One answer; where nobody types it is shown, so that the record reads like a talk."""
    if sys.stdin is None:
        raise Unfinished
    if sys.stdin.isatty():
        import readline  # noqa: F401  # arrow keys move in the answer, where somebody types
    try:
        text = input("> ").strip()
    except EOFError:
        say("")
        raise Unfinished from None
    if not sys.stdin.isatty():
        say(text)
    return text


def prepared(answers: dict[str, str]) -> Values:
    """Answers made beforehand: nothing is asked, and everything wrong is said at once."""
    problems = list(_unknown(answers))

    def look_up(question: Question, before: Values) -> tuple[str, Values]:
        text = answers.get(question.name, "").strip()
        try:
            return text, accept(question, text, before)
        except ScenarioError as wrong:
            problems.extend(
                one._replace(address=question.name, line=0, column=0) for one in wrong.problems
            )
            return text, {}

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
    answers, name = stated_answers(arguments.answers, arguments.set), files.shown(path)
    if arguments.answers is None and not arguments.set:
        say(opening(name))
        values = ask_all(at_the_terminal)
    else:
        values = prepared(answers)
    made = ScenarioData.read(json.dumps(document(values), ensure_ascii=False), str(path))
    write(made, path, arguments.force)
    say(closing(made, default_sensitivities(made), name))
    return 0


def write(made: ScenarioData, path: Path, force: bool) -> None:
    """Never over a file that came in the meantime, unless told to."""
    try:
        files.write(path, made.text(), over=force)
    except FileExistsError:
        refuse_to_overwrite(path)
