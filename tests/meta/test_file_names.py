"""Test files are named one way: `test_` is for pytest, C++ tests are called by what they try."""

from pathlib import Path

TESTS = Path(__file__).parents[1]


def misnamed(paths):
    """Files of tests that pytest would not collect, and others that look as if it would."""
    for path in paths:
        if path.suffix == ".py" and "\ndef test_" in path.read_text("utf-8"):
            if not path.stem.startswith("test_"):
                yield path.name
        elif path.suffix != ".py" and (
            path.stem.startswith("test_") or path.stem.endswith("_test")
        ):
            yield path.name


def test_files_are_named_one_way():
    paths = [path for path in TESTS.rglob("*") if path.suffix in {".py", ".cpp", ".hpp"}]
    assert list(misnamed(paths)) == []
    assert not [path.name for path in paths if path.stem.endswith("_test")]


def test_other_names_are_caught(tmp_path):
    for name in ("balance_test.cpp", "test_balance.cpp", "balance.py"):
        (tmp_path / name).write_text("\ndef test_one(): ...\n")
    assert len(list(misnamed(sorted(tmp_path.iterdir())))) == 3
