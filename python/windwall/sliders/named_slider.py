"""A slider in a notebook. Those of ipywidgets tell a screen reader neither what they move nor
where they stand, only the number of the place.
"""

from __future__ import annotations

from collections.abc import Mapping
from importlib.resources import files as resources
from typing import Any

import anywidget
import traitlets

__all__ = ["OFF", "NamedSlider", "own"]

OFF = "there is no place {value}; from {low} to {high}"


def own(name: str) -> str:
    """The text of a file that lies beside this one."""
    return resources("windwall.sliders").joinpath(name).read_text("utf-8")


class NamedSlider(anywidget.AnyWidget):
    """Places from `low` on, each with what a file would state there; `value` is the place, and 0
    what the file says. Raises `TraitError` where there is no such place.
    """

    _esm = own("named_slider.js")
    _css = own("named_slider.css")
    label = traitlets.Unicode().tag(sync=True)
    hint = traitlets.Unicode().tag(sync=True)
    low = traitlets.Int().tag(sync=True)
    texts = traitlets.List(traitlets.Unicode()).tag(sync=True)
    value = traitlets.Int().tag(sync=True)

    @property
    def options(self) -> list[tuple[str, int]]:
        """Every place: what is shown there, and its number."""
        return [(text, k) for k, text in enumerate(self.texts, self.low)]

    @traitlets.validate("value")
    def _there(self, proposal: Mapping[str, Any]) -> int:
        value, high = int(proposal["value"]), self.low + len(self.texts) - 1
        if not self.low <= value <= high:
            raise traitlets.TraitError(OFF.format(value=value, low=self.low, high=high))
        return value
