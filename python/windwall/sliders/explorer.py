"""The sliders with their buttons and their answer, of ipywidgets."""

from __future__ import annotations

import os
from collections.abc import Sequence
from contextlib import contextmanager
from functools import cached_property
from html import escape
from pathlib import Path
from typing import Any

import ipywidgets as widgets

from windwall.errors import ScenarioError
from windwall.report.html.fragment import body, framed
from windwall.report.live.slider import Slider
from windwall.report.text_layout import Blocks, headline
from windwall.results.top_speed import TopSpeed
from windwall.results.views import Readable, content, html
from windwall.scenario import files
from windwall.scenario.data import ScenarioData
from windwall.sliders.named_slider import NamedSlider
from windwall.sliders.told import moved_words, told
from windwall.sliders.twin import Places
from windwall.study.solve import top_speed

__all__ = ["EXISTS", "FROM_FILE", "KEPT", "REFUSED", "SAVED", "Explorer", "explorer_content"]

KEPT = 512  # answers, so that a way back costs nothing
FROM_FILE = "Kept output of a notebook; run the cell again to move the sliders."
SAVED = "written to {path}"
EXISTS = "{path} is there already; another name, or remove it first"
REFUSED = "This is refused, and the scenario stays as it was: {why}"


class Explorer(Readable):
    """Sliders and their answer. `scenario` is the moved one and `answer` its top speed."""

    def __init__(
        self, scenario: ScenarioData, sliders: Sequence[Slider], show: Sequence[str]
    ) -> None:
        self.file, self.scenario = scenario, scenario
        self._sliders, self._show = tuple(sliders), tuple(show)
        self._of_file = self.answer = top_speed(scenario)
        self._known: dict[tuple[int, ...], tuple[ScenarioData, TopSpeed]] = {}
        self._held = False
        self.sliders = {one.address: _widget(one) for one in self._sliders}
        self._shown = widgets.HTML()
        self.widget = widgets.VBox([*self._rows(), self._buttons(), self._shown])
        for one in self.sliders.values():
            one.observe(self._moved, "value")
        self._show_now(told(self._of_file, self.answer, self._show))

    def reset(self, address: str | None = None) -> None:
        """One slider back to what the file says, or all of them; solved once."""
        back = self.sliders.values() if address is None else [self.sliders[address]]
        with self._together():
            for one in back:
                one.value = 0

    def save(self, path: str | os.PathLike[str]) -> None:
        """Writes the moved scenario; a file that is there stays. Raises `FileExistsError`."""
        files.write(path, self.scenario.text(), over=False)

    def _repr_mimebundle_(self, **options: Any) -> Any:
        """The sliders where they can be shown, else a table: a notebook keeps both."""
        bundle = self.widget._repr_mimebundle_(**options)
        data = bundle[0] if isinstance(bundle, tuple) else bundle
        still = Places(self.scenario, self._sliders, self._show, FROM_FILE)
        data |= {"text/html": html(still), "text/plain": self.summary()}
        return bundle

    @cached_property
    def _path(self) -> widgets.Text:
        stem = Path(self.file.source).stem or "scenario"
        return widgets.Text(value=f"{stem}_moved.json", description="File", tooltip="where to save")

    @cached_property
    def _said(self) -> widgets.HTML:
        return widgets.HTML()

    def _rows(self) -> list[widgets.HBox]:
        return [
            widgets.HBox([self.sliders[one.address], self._way_back(one)]) for one in self._sliders
        ]

    def _way_back(self, one: Slider) -> widgets.Button:
        made = widgets.Button(
            description="Reset", tooltip=f"{one.label} back to {one.stated}",
            layout=widgets.Layout(width="5em"),
        )  # fmt: skip
        made.on_click(lambda _: self.reset(one.address))
        return made

    def _buttons(self) -> widgets.HBox:
        back = widgets.Button(description="Reset all", tooltip="every slider back to the file")
        keep = widgets.Button(description="Save", tooltip="write the moved scenario as a file")
        back.on_click(lambda _: self.reset())
        keep.on_click(lambda _: self._save())
        return widgets.HBox([back, self._path, keep, self._said])

    def _save(self) -> None:
        path = self._path.value
        try:
            self.save(path)
            text = SAVED.format(path=files.shown(path))
        except FileExistsError:
            text = EXISTS.format(path=files.shown(path))
        except OSError as wrong:
            text = str(wrong)
        self._said.value = escape(text)

    @contextmanager
    def _together(self) -> Any:
        """Several moves as one."""
        self._held = True
        try:
            yield
        finally:
            self._held = False
        self._moved()

    def _moved(self, _change: Any = None) -> None:
        if self._held:
            return
        at = tuple(one.value for one in self.sliders.values())
        try:
            self.scenario, self.answer = self._solved(at)
        except ScenarioError as wrong:
            self._show_now(headline(REFUSED.format(why=wrong)))
            return
        self._show_now(self._blocks())

    def _solved(self, at: tuple[int, ...]) -> tuple[ScenarioData, TopSpeed]:
        """The scenario of these places with its answer; the file's own where nothing is moved."""
        if at in self._known:
            return self._known[at]
        both = zip(self._sliders, at, strict=True)
        changes = {one.address: one.given(k) for one, k in both if k}
        moved = self.file.set(changes) if changes else self.file
        found = moved, top_speed(moved)
        if len(self._known) >= KEPT:
            self._known.pop(next(iter(self._known)))
        self._known[at] = found
        return found

    def _blocks(self) -> Blocks:
        at = [one.value for one in self.sliders.values()]
        return told(self._of_file, self.answer, self._show) + moved_words(self._sliders, at)

    def _show_now(self, blocks: Blocks) -> None:
        self._shown.value = framed(body(blocks))


def _widget(one: Slider) -> NamedSlider:
    """Its places by what a file would state there."""
    return NamedSlider(
        label=one.label,
        hint=f"file {one.stated} {one.hint}".rstrip(),
        low=one.low,
        texts=[one.text(k) for k in range(one.low, one.high + 1)],
    )


@content.register(Explorer)
def explorer_content(explorer: Explorer) -> Blocks:
    """What the sliders show now."""
    return explorer._blocks()
