"""No more blocks of code stand twice than there are; see `duplicates.py`."""

from pathlib import Path

from meta.duplicates import count, of_checkout, repeated

ROOT = Path(__file__).parents[2]
MOST_LINES = 51  # every copy counted; to be lowered, never raised


def test_no_block_is_copied():
    found = of_checkout(ROOT)
    _, lines = count(found)
    assert lines <= MOST_LINES, found


BLOCK = "\n".join(f"    total += weigh(part_{at});" for at in "abcdef")


def test_a_copy_is_found_whatever_its_spaces():
    texts = {"one.cpp": f"int f() {{\n{BLOCK}\n}}", "two.cpp": BLOCK.replace("    ", "\t")}
    assert count(repeated(texts)) == (2, 12)
    assert repeated(texts)["one.cpp"] == [(2, 7, 6)]


def test_five_lines_and_tables_are_none():
    five = BLOCK.rpartition("\n")[0]
    assert repeated({"one.cpp": five, "two.cpp": five}) == {}
    rows = f"Rows rows() {{\n{BLOCK}\nreturn table;"
    assert repeated({"one.cpp": rows, "two.cpp": rows}) == {}
    literals = "\n".join(f'    "key_{at}": {at},' for at in range(8))
    assert repeated({"one.py": literals, "two.py": literals}) == {}
