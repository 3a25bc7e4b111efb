"""The handbook formulas of the core, in SI units and over arrays, so that they can be held against
a table. Each function says its units, its range and its source: `help(physics.flow_function)`.
"""

from windwall import _core

__all__ = sorted(name for name in vars(_core.physics) if not name.startswith("_"))

globals().update({name: getattr(_core.physics, name) for name in __all__})
