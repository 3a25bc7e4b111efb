"""Questions put to the core, and what is found by asking it again and again. Each is loaded when it
is first asked: `study.rank`.
"""

from importlib import import_module
from types import ModuleType


def __getattr__(name: str) -> ModuleType:
    try:
        return import_module(f"{__name__}.{name}")
    except ModuleNotFoundError as missing:
        if missing.name != f"{__name__}.{name}":
            raise
        raise AttributeError(f"there is no study {name!r}") from None
