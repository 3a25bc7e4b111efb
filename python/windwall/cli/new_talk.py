"""The questions of `windwall new` as a talk: one after the other, back to the one before, explained
when `?` is typed, and nothing lost when somebody leaves.
"""

from __future__ import annotations

import shutil
import sys
import textwrap
from collections.abc import Callable, Mapping

from windwall.cli.new_asked import METRIC, asked, explained
from windwall.cli.new_doubts import told
from windwall.cli.new_mended import mendings
from windwall.cli.new_question import Question
from windwall.cli.new_questions import QUESTIONS
from windwall.cli.new_readings import Values
from windwall.cli.output import say
from windwall.errors import ScenarioError
from windwall.report.text.new import a_sentence
from windwall.report.text_layout import INDENT, WIDTH

__all__ = [
    "BACK", "END", "ENDED", "EXPLAIN", "NOTHING", "OFFERED", "TAKEN", "Accept", "LeftEarly", "Talk",
    "shown", "typed",
]  # fmt: skip

BACK, EXPLAIN, NOTHING, END = ("back", "b"), ("?", "help"), "-", ("end",)
TAKEN = 'Taken as "{text}".'
OFFERED = 'Did you mean "{text}"? An empty answer takes it.'
ENDED = "The rest keeps its usual values; only what is needed is still asked."
Accept = Callable[[Question, str, Values], Values]


class LeftEarly(Exception):  # noqa: N818  # it is no error of the program
    """The answers ended before the questions did."""


class Talk:
    """Answers by the names of their questions, as typed, and what they mean."""

    def __init__(
        self, accept: Accept, kept: Mapping[str, str], stated: Mapping[str, str], system: str
    ) -> None:
        self.accept, self.system, self.stated = accept, system, stated
        self.answers = {**kept, **stated}
        self.meant: dict[str, Values] = {}
        self._goes_on = True  # with kept answers, up to the first question that has none
        self._offered = ""  # what an empty answer takes that follows one which was not taken
        self._ended = False  # what may stay empty is asked no more

    def values(self) -> Values:
        """What all answers mean, after the last question."""
        at = 0
        while at < len(QUESTIONS):
            at = self._step(at)
        return self._before(at)

    def _before(self, at: int) -> Values:
        values: Values = {}
        for question in QUESTIONS[:at]:
            values |= self.meant.get(question.name, {})
        return values

    def _step(self, at: int) -> int:
        """Where the talk goes on behind this question."""
        question = QUESTIONS[at]
        if not question.follows(self.meant):
            self.meant.pop(question.name, None)
            return at + 1
        if self._known(question):
            try:
                self._take(question, self.answers.get(question.name, ""), at)
                return at + 1
            except ScenarioError:
                pass  # it is asked, and what is wrong is told there
        self._goes_on = False
        return at + 1 if self._ask(question, at) else self._previous(at)

    def _known(self, question: Question) -> bool:
        """Whether a question need not be asked."""
        there = question.name in self.answers
        return (there and (self._goes_on or question.name in self.stated)) or self._ended

    def _take(self, question: Question, text: str, at: int) -> None:
        self.meant[question.name] = self.accept(question, text, self._before(at))
        self.answers[question.name] = text
        if question.name == "units":
            self.system = self.meant[question.name].get("units", METRIC)

    def _place(self, at: int) -> str:
        """Where the talk has come to, of the questions that may still come."""
        applies = [
            where for where, one in enumerate(QUESTIONS) if where >= at or one.follows(self.meant)
        ]
        return f"{applies.index(at) + 1} of {len(applies)}"

    def _previous(self, at: int) -> int:
        before = (one.name for one in QUESTIONS[:at])
        found = [
            where
            for where, name in enumerate(before)
            if name in self.meant and name not in self.stated
        ]
        if not found:
            shown("This is the first question.", INDENT)
        return found[-1] if found else at

    def _ask(self, question: Question, at: int) -> bool:
        """Asks until the loader takes the answer; whether it goes on, and not back."""
        self._offered = ""
        shown(asked(question, self.system, self._place(at)))
        kept = self.answers.get(question.name, "")
        if kept:
            shown(f'So far "{kept}": an empty answer keeps it, {NOTHING} leaves it out.', INDENT)
        while (text := typed()).lower() not in BACK:
            if text.lower() in EXPLAIN:
                for line in explained(question, self.system):
                    shown(line, INDENT)
            elif self._answered(question, self._text(text, self._offered or kept), at):
                return True
        self._ended = False
        return False

    def _text(self, text: str, kept: str) -> str:
        """What is answered by what was typed."""
        if text.lower() in END and not self._ended:
            self._ended = True
            shown(ENDED, INDENT)
        return "" if text == NOTHING else kept if not text or text.lower() in END else text

    def _answered(self, question: Question, text: str, at: int) -> bool:
        """Whether the loader takes it, as typed or as the one thing that it can mean; of several
        the likeliest is offered.
        """
        self._offered = ""
        try:
            self._take(question, text, at)
        except ScenarioError as wrong:
            meant = [one for one in mendings(question, text, self.system)
                     if self._taken(question, one, at)]  # fmt: skip
            if len(meant) != 1:
                self._refuse(wrong, meant)
                return False
            self._take(question, meant[0], at)
            shown(TAKEN.format(text=meant[0]), INDENT)
        for line in told(question.name, self._before(at + 1), self.system):
            shown(a_sentence(line), INDENT)
        return True

    def _taken(self, question: Question, text: str, at: int) -> bool:
        try:
            self.accept(question, text, self._before(at))
        except ScenarioError:
            return False
        return True

    def _refuse(self, wrong: ScenarioError, meant: list[str]) -> None:
        for problem in wrong.problems:
            shown(f"{problem.address}: {problem.message}", INDENT)
        if meant:
            self._offered = meant[0]
            shown(OFFERED.format(text=meant[0]), INDENT)


def shown(text: str, indent: str = "") -> None:
    """A text wrapped at words, to the terminal where that is narrower than a page."""
    width = max(min(WIDTH, shutil.get_terminal_size((WIDTH, 24)).columns - 1), 20)
    say(textwrap.fill(text, width, initial_indent=indent, subsequent_indent=indent or INDENT,
                      break_long_words=False, break_on_hyphens=False))  # fmt: skip


def typed() -> str:
    """One answer; where nobody types it is shown, so that the record reads like a talk."""
    if sys.stdin is None:
        raise LeftEarly
    if sys.stdin.isatty():
        import readline  # noqa: F401  # arrow keys move in the answer, where somebody types
    try:
        text = input("> ").strip()
    except EOFError:
        say("")
        raise LeftEarly from None
    if not sys.stdin.isatty():
        say(text)
    return text
