"""Each notebook agrees with the text beside it, holds no output, and runs from a clean kernel."""

from pathlib import Path

import pytest

FOLDER = Path(__file__).parents[2] / "notebooks"
TEXTS = sorted(FOLDER.glob("*.py"))


@pytest.fixture(params=TEXTS, ids=lambda path: path.stem)
def text(request):
    return request.param


def cells(notebook):
    return [(cell.cell_type, cell.source) for cell in notebook.cells]


def test_there_is_a_pair_of_each():
    assert [path.stem for path in TEXTS] == sorted(path.stem for path in FOLDER.glob("*.ipynb"))
    assert len(TEXTS) >= 2


def test_both_halves_agree(text, oracle):
    nbformat, jupytext = oracle("nbformat"), oracle("jupytext")
    notebook = nbformat.read(text.with_suffix(".ipynb"), as_version=4)
    assert cells(notebook) == cells(jupytext.read(text)), (
        f"jupytext --to ipynb {text.name} makes them agree"
    )


def test_no_output_is_kept(text, oracle):
    notebook = oracle("nbformat").read(text.with_suffix(".ipynb"), as_version=4)
    for cell in notebook.cells:
        assert not cell.get("outputs")
        assert cell.get("execution_count") is None


def test_it_says_what_comes_before_speed(text):
    said = text.read_text(encoding="utf-8")
    for words in ("part throttle first", "plugs read", "one change at a time", "closed course"):
        assert words in " ".join(said.replace("#", " ").split())


@pytest.mark.filterwarnings("ignore::DeprecationWarning")
def test_it_runs_from_a_clean_kernel(text, oracle):
    nbformat, nbclient = oracle("nbformat"), oracle("nbclient")
    notebook = nbformat.read(text.with_suffix(".ipynb"), as_version=4)
    nbclient.NotebookClient(
        notebook, timeout=100, kernel_name="python3", resources={"metadata": {"path": str(FOLDER)}}
    ).execute()
    shown = [
        kind
        for cell in notebook.cells
        for output in cell.get("outputs", [])
        for kind in output.get("data", {})
    ]
    assert "image/png" in shown
