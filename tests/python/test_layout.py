"""Plain text: aligned, wrapped, harmless in a browser."""

from windwall.report.text_layout import (
    WIDTH,
    Section,
    as_text,
    bullet,
    paragraph,
    section,
    table,
)


def lines(blocks):
    return as_text(blocks).split("\n")


def test_columns_line_up():
    shown = table([("rubbing", "900"), ("air", "15 000")], head=("", "W"))
    assert lines(shown) == ["                W", "  rubbing     900", "  air      15 000"]


def test_rows_may_be_short():
    assert lines(table([("a", "b", "c"), ("d",)])) == ["  a  b  c", "  d"]
    assert table([]) == table([], head=("a", "b")) == []


def test_a_cell_goes_on_below():
    shown = table([("1", "one +\ntwo"), ("2", "three")], left=(1,))
    assert lines(shown) == ["  1  one +", "     two", "  2  three"]


def test_the_last_column_goes_on_below_where_a_line_would_be_too_wide():
    shown = table([("10", "a bb ccc"), ("9", "d")], left=(1,), head=("n", "set"), widest=10)
    assert lines(shown) == ["   n  set", "  10  a bb", "      ccc", "   9  d"]


def test_sentences_wrap_and_hang():
    text = "word " * 60
    assert all(len(line) <= WIDTH for line in lines(paragraph(text) + bullet(text)))
    assert lines(bullet(text))[0].startswith("  - word")
    assert lines(bullet(text))[1].startswith("    word")
    assert bullet("") == paragraph(" ") == []


def test_an_empty_section_is_not_printed():
    assert section("Limits", []) == []
    assert section("Limits", ["  x"]) == [Section("Limits", ["  x"])]
    assert lines(section("Limits", ["  x"])) == ["", "Limits", "  x"]


def test_a_title_is_escaped_in_a_notebook(document):
    import json

    import windwall as ww

    document["title"] = "<img src=x onerror=alert(1)>"
    shown = ww.loads(json.dumps(document))._repr_html_()
    assert "<img" not in shown
    assert "&lt;img" in shown
