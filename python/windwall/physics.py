"""The handbook formulas of the core, in SI units and over arrays, so that they can be held against
a table. Each function says its units, its range and its source: `help(physics.flow_function)`.
"""

from typing import TYPE_CHECKING

from windwall import _core

if TYPE_CHECKING:
    from windwall._core.physics import *  # noqa: F403

__all__ = sorted(name for name in vars(_core.physics) if not name.startswith("_"))

globals().update({name: getattr(_core.physics, name) for name in __all__})


def __dir__() -> list[str]:
    return __all__
