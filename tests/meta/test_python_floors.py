"""Dependencies of the Python package point down, and no module leads back to itself.

An import counts wherever it stands: inside a function, for types only, or as `import_module`.
"""

import ast
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "python" / "windwall"

STORIES = [
    ["_core"],
    ["errors", "physics"],
    ["quantities"],
    ["results"],
    ["scenario"],
    ["study", "logs"],
    ["report"],
    ["api", "cli", "sliders"],
    ["__init__", "__main__"],
]


def floor_of(module):
    """`windwall.report.frames` is of the floor `report`; the package itself of the topmost."""
    return module.split(".")[1] if "." in module else "__init__"


def height(floor):
    for at, story in enumerate(STORIES):
        if floor in story:
            return at
    raise AssertionError(f"python/windwall/{floor} is no floor")


def module_of(path):
    parts = ["windwall", *path.relative_to(PACKAGE).with_suffix("").parts]
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


MODULES = {module_of(path): path for path in PACKAGE.rglob("*.py")}
KNOWN = {*MODULES, "windwall._core"}


def imported(tree):
    """Modules of this package that a syntax tree names, as far as they are told by their text."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "modules are named in full"
            for alias in node.names:
                inside = f"{node.module}.{alias.name}"
                yield inside if inside in KNOWN else node.module
        elif isinstance(node, ast.Call) and "import" in ast.unparse(node.func):
            yield from (_beginning(argument) for argument in node.args)


def _beginning(argument):
    """A literal name, or what a composed one begins with."""
    if isinstance(argument, ast.JoinedStr):
        argument = argument.values[0]
    return argument.value if isinstance(argument, ast.Constant) else ""


def ours(text):
    names = (str(name) for name in imported(ast.parse(text)))
    return {name.rstrip(".") for name in names if name.split(".")[0] == "windwall"}


def wrong_imports(module, text):
    """What a module imports from above or from beside its floor."""
    floor = floor_of(module)
    return sorted(
        name
        for name in ours(text)
        if floor_of(name) != floor and height(floor_of(name)) >= height(floor)
    )


def graph(texts):
    """Each module with those it leads to."""
    found = {}
    for module, text in texts.items():
        found[module] = ours(text) - {module}
    return found


def test_imports_point_down():
    wrong = {
        module: found
        for module, path in MODULES.items()
        if (found := wrong_imports(module, path.read_text("utf-8")))
    }
    assert wrong == {}


def test_no_module_leads_back_to_itself():
    texts = {module: path.read_text("utf-8") for module, path in MODULES.items()}
    TopologicalSorter(graph(texts)).prepare()


def test_every_folder_is_a_floor():
    for module in MODULES:
        height(floor_of(module))


@pytest.mark.parametrize(
    "module, line",
    [
        ("windwall.results.outcome", "from windwall.report.frames import stations"),
        ("windwall.results.outcome", "from windwall.scenario import data"),
        ("windwall.scenario.data", "def ask():\n    from windwall.study.solve import top_speed"),
        ("windwall.scenario.data", "if TYPE_CHECKING:\n    from windwall.api import Scenario"),
        ("windwall.study.rank", "import windwall.report.text.rank"),
        ("windwall.report.frames", "import_module('windwall.cli.main')"),
        ("windwall.report.frames", "__import__(f'windwall.cli.{name}')"),
        ("windwall.report.frames", "from windwall import api"),
        ("windwall.quantities.si", "import windwall"),
        ("windwall.cli.new", "from windwall.api import loads"),
    ],
)
def test_an_arrow_up_or_sideways_is_caught(module, line):
    assert len(wrong_imports(module, line)) == 1


def test_an_arrow_down_is_not():
    text = "from windwall import _core\nfrom windwall.quantities.si import si\nimport json\n"
    assert wrong_imports("windwall.study.rank", text) == []


def test_a_circle_inside_a_floor_is_caught():
    texts = {
        "windwall.study.rank": "from windwall.study.sweep import sweep",
        "windwall.study.sweep": "def late():\n    from windwall.study import rank",
    }
    with pytest.raises(CycleError):
        TopologicalSorter(graph({**texts, "windwall.study": ""})).prepare()
