"""Every module says which of its names are for others: all that it defines without an underscore.

Such names end in `__all__`; a package that gathers names of its modules lists those besides.
"""

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "python" / "windwall"
WORKED_OUT = PACKAGE / "physics.py"  # lists what the core has when it is loaded
FOR_TOOLS = {"TYPE_CHECKING"}
NAMING = (ast.FunctionDef, ast.AsyncFunctionDef, ast.ClassDef)


def assigned(node):
    """Names that an assignment gives a value."""
    targets = node.targets if isinstance(node, ast.Assign) else [node.target]
    stored = (one for target in targets for one in ast.walk(target) if isinstance(one, ast.Name))
    return {one.id for one in stored}


def defined(tree):
    names = {node.name for node in tree.body if isinstance(node, NAMING)}
    for node in tree.body:
        if isinstance(node, ast.Assign | ast.AnnAssign):
            names |= assigned(node)
    return {name for name in names if not name.startswith("_")} - FOR_TOOLS


def gathered(tree):
    """Names that an import brings in, wherever it stands outside functions."""
    flat = [inner for node in tree.body for inner in getattr(node, "body", [node])]
    imports = (node for node in flat if isinstance(node, ast.Import | ast.ImportFrom))
    return {alias.asname or alias.name for node in imports for alias in node.names}


def listed(tree):
    """What `__all__` holds; nothing where there is none."""
    for node in tree.body:
        if isinstance(node, ast.Assign) and "__all__" in assigned(node):
            return ast.literal_eval(node.value)
    return []


def wrong_names(text, is_package=False):
    """(names that are missing, names too many) of `__all__` in a module."""
    tree = ast.parse(text)
    names = listed(tree)
    allowed = defined(tree) | (gathered(tree) if is_package else set())
    twice = {name for name in names if names.count(name) > 1}
    return sorted(defined(tree) - {*names}), sorted({*names} - allowed | twice)


def test_every_module_lists_its_public_names():
    found = {}
    for path in sorted({*PACKAGE.rglob("*.py")} - {WORKED_OUT}):
        names = wrong_names(path.read_text("utf-8"), path.name == "__init__.py")
        if names != ([], []):
            found[str(path.relative_to(ROOT))] = names
    assert found == {}


@pytest.mark.parametrize(
    "text, missing, surplus",
    [
        ("def push(): ...", ["push"], []),
        ("class Push: ...\n__all__ = []", ["Push"], []),
        ("PUSH: int = 1", ["PUSH"], []),
        ("here, there = 1, 2\n__all__ = ['here']", ["there"], []),
        ("from math import pi\n__all__ = ['pi']", [], ["pi"]),
        ("__all__ = ['gone']", [], ["gone"]),
        ("def _push(): ...\n__all__ = ['_push']", [], ["_push"]),
        ("push = 1\n__all__ = ['push', 'push']", [], ["push"]),
    ],
)
def test_a_name_missing_or_too_many_is_caught(text, missing, surplus):
    assert wrong_names(text) == (missing, surplus)


def test_a_package_may_gather():
    text = "from math import pi\nif CHECKING:\n    from math import e as euler\n__all__ = {}"
    assert wrong_names(text.format(["euler", "pi"]), is_package=True) == ([], [])
    assert wrong_names(text.format(["tau"]), is_package=True) == ([], ["tau"])
