"""Importing is light, and everything promised is there."""

import subprocess
import sys
from pathlib import Path
from rlcompleter import Completer

import pytest

import windwall as ww

HEAVY = ("pandas", "xarray", "matplotlib", "tqdm", "argparse", "ipywidgets", "anywidget")


def test_what_is_used_late_is_loaded_late():
    code = f"import sys, windwall; print([m for m in {HEAVY!r} if m in sys.modules])"
    said = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60
    )
    assert said.stdout.strip() == "[]"


def test_the_package_alone_loads_nothing():
    """So that an interrupt has somewhere to go as early as can be."""
    folder = str(Path(ww.__file__).parents[1])
    code = f"import sys; sys.path.insert(0, {folder!r}); was = {{*sys.modules}}\n"
    code += "import windwall; print(*{*sys.modules} - was)"
    bare = [sys.executable, "-I", "-S", "-c", code]  # without what an installer hooks in
    said = subprocess.run(bare, capture_output=True, text=True, check=True, timeout=60)
    assert all(name.split(".")[0] == "windwall" for name in said.stdout.split())


def test_every_promised_name_is_there():
    for name in ww.__all__:
        assert getattr(ww, name) is not None
    assert set(ww.__all__) <= set(dir(ww))
    assert not hasattr(ww, "nothing")


@pytest.mark.parametrize("module", ["ww", "ww.plot", "ww.physics"])
def test_a_prompt_offers_names_for_users_alone(module):
    offered = {name.rstrip("()") for name in Completer({"ww": ww}).attr_matches(f"{module}.")}
    assert offered == {f"{module}.{name}" for name in eval(module).__all__}


def test_versions_are_told():
    info = ww.build_info()
    assert info["windwall"] == ww.__version__
    assert set(info) >= {"compiler", "eigen", "boost", "nlohmann_json", "pybind11", "python"}
    assert info["build_type"] in ("Release", "Debug", "RelWithDebInfo", "MinSizeRel")
    assert info["flags"].startswith("-std=c++20 ")


def test_the_handbook_explains_itself():
    assert "flow_function" in ww.physics.__all__
    for name in ww.physics.__all__:
        assert len(getattr(ww.physics, name).__doc__) > 40, name
