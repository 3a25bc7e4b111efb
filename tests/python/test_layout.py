"""Plain text: aligned, wrapped, harmless in a browser."""

from windwall.report.text_layout import WIDTH, bullet, paragraph, section, table


def test_columns_line_up():
    lines = table([("", "W"), ("rubbing", "900"), ("air", "15 000")])
    assert lines == ["                W", "  rubbing     900", "  air      15 000"]


def test_rows_may_be_short():
    assert table([("a", "b", "c"), ("d",)]) == ["  a  b  c", "  d"]
    assert table([]) == []


def test_sentences_wrap_and_hang():
    text = "word " * 60
    assert all(len(line) <= WIDTH for line in paragraph(text) + bullet(text))
    assert bullet(text)[0].startswith("  - word")
    assert bullet(text)[1].startswith("    word")
    assert bullet("") == []


def test_an_empty_section_is_not_printed():
    assert section("Limits", []) == []
    assert section("Limits", ["  x"]) == ["", "Limits", "  x"]


def test_a_title_is_escaped_in_a_notebook(document):
    import json

    import windwall as ww

    document["title"] = "<img src=x onerror=alert(1)>"
    shown = ww.loads(json.dumps(document))._repr_html_()
    assert "<img" not in shown
    assert "&lt;img" in shown
