"""The documentation site: every page can be reached, and what is set by rule is set whole."""

import os
import re
import shlex
import sys
import xml.etree.ElementTree as ElementTree
from collections import Counter
from pathlib import Path

import pytest

import windwall
from windwall.cli.command import parser
from windwall.scenario.kinds import all_kinds

ROOT = Path(__file__).parents[2]
DOCS = ROOT / "docs"
NOTEBOOKS = ROOT / "notebooks"
PHYSICS = sorted((DOCS / "physics").glob("*.md"))
TOCTREE = re.compile(r"```\{toctree\}\n(.*?)```", re.DOTALL)
BLOCK = re.compile(r"(?:^    .*\S.*\n)+", re.MULTILINE)
FENCED = re.compile(r"```(sh|python)\n(.*?)```", re.DOTALL)
TYPED = [
    pytest.param(page, kind, text, id=f"{page.stem}-{place}")
    for page in [DOCS / "start.md", *sorted((DOCS / "howto").glob("*.md"))]
    for place, (kind, text) in enumerate(FENCED.findall(page.read_text("utf-8")))
]


@pytest.fixture(scope="module")
def site():
    """The modules of docs/site that need nothing but the package."""
    sys.path.insert(0, str(DOCS / "site"))
    import mathml
    import symbols

    yield mathml, symbols
    sys.path.remove(str(DOCS / "site"))


def below(page):
    """The pages that a page's tables of contents name."""
    for listed in TOCTREE.findall(page.read_text("utf-8")):
        for line in listed.splitlines():
            if not line or line.startswith(":"):
                continue
            folder = (page.parent / line).parent.resolve()
            name = Path(line).name if line.endswith("*") else f"{Path(line).name}.*"
            named = [path for path in folder.glob(name) if path.suffix in (".md", ".ipynb")]
            assert named, f"{page.name} names {line}"
            yield from named


def reached(page):
    for path in below(page):
        yield path.resolve()
        if path.suffix == ".md":
            yield from reached(path)


def test_every_page_can_be_reached():
    pages = {path.resolve() for path in [*DOCS.rglob("*.md"), *NOTEBOOKS.glob("*.ipynb")]}
    missed = pages - set(reached(DOCS / "index.md")) - {(DOCS / "index.md").resolve()}
    assert not missed, "name it in a table of contents, such as that of docs/reference/index.md"


def test_no_page_is_named_twice():
    """The site would not be built: a page has one place in the order of reading."""
    named = [path for page in DOCS.rglob("*.md") for path in below(page)]
    places = Counter(path.resolve() for path in named)
    assert [path.name for path, count in places.items() if count > 1] == []


def equations():
    for page in PHYSICS:
        for block in BLOCK.findall(page.read_text("utf-8")):
            yield from (re.split(r"\s{2,}", line.strip()) for line in block.splitlines())


def letters(text):
    return sorted(re.sub(r"[^\w½⅓¼]|_", "", text))


def test_no_letter_of_an_equation_is_lost(site):
    mathml, symbols = site
    count = 0
    for cells in equations():
        for cell in cells:
            made = ElementTree.fromstring(f"<math>{mathml.mathml(cell)}</math>")
            shown, typed = "".join(made.itertext()), cell
            for name, letter in symbols.GREEK.items():
                typed = re.sub(rf"(?<![a-zA-Z]){name}(?![a-zA-Z])", letter, typed)
            typed = typed.replace("dPsi", "dΨ").replace("sqrt", "").replace(".md)", ")")
            typed = re.sub(r"\[(\w+)\]\(\w+\)", r"\1", typed).translate(symbols.LOWERED)
            shown, typed = (one.replace("∑", "Σ").replace("∏", "Π") for one in (shown, typed))
            typed = re.sub(r"(\d)e([-+]?\d)", r"\g<1>10\2", typed)
            back = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")
            assert letters(shown.translate(back)) == letters(typed.translate(back)), cell
            count += 1
    assert count > 300


@pytest.mark.parametrize(
    "typed, above, under",
    [
        ("A_j p/sqrt(R T) Psi", "p", "RT"),
        ("exp(μ φ / sin β)", "μφ", "sin\u2061β"),
        ("(h_m - h_d) / m_e", "hm−hd", "me"),
        ("c 4x/(1 + x)", "4x", "1+x"),
        ("f L/D + K", "L", "D"),
    ],
)
def test_a_stroke_divides_what_it_should(site, typed, above, under):
    made = ElementTree.fromstring(f"<math>{site[0].mathml(typed)}</math>")
    fraction = made.find(".//mfrac")
    assert ["".join(side.itertext()) for side in rows(fraction)] == [above, under]


def rows(fraction):
    """The two sides; a bracket that was taken off leaves its content as it stands."""
    assert len(fraction) == 2
    return list(fraction)


def test_inputs_of_every_kind_stand_on_one_page():
    pytest.importorskip("docutils")
    sys.path.insert(0, str(DOCS / "site"))
    from inputs import EXPLAINS, explained

    shown = [kind.name for page in EXPLAINS for kind in explained(page)]
    assert sorted(shown) == sorted({kind.name for kind in all_kinds()})
    assert {page.stem for page in PHYSICS} >= set(EXPLAINS)


def test_every_kind_has_its_place_in_the_reference():
    pytest.importorskip("docutils")
    sys.path.insert(0, str(DOCS / "site"))
    from inputs import at

    asked = [
        place
        for page in sorted((DOCS / "reference").glob("inputs_*.md"))
        for line in re.findall(r"^```\{kinds\} (.+)$", page.read_text("utf-8"), re.MULTILINE)
        for place in line.split()
    ]
    shown = [(kind.place, kind.name) for place in asked for kind in at(place)]
    assert sorted(shown) == sorted((kind.place, kind.name) for kind in all_kinds())


def test_checks_are_found_by_the_names_of_tests():
    pytest.importorskip("docutils")
    sys.path.insert(0, str(DOCS / "site"))
    from checks import checks_named, held

    ours, theirs = held()["test_efficiency_of_the_ideal_roots"][2:4]
    assert abs(float(ours) / float(theirs) - 1) < 0.01
    pages = {page.stem: checks_named(page.read_text("utf-8")) for page in PHYSICS}
    assert len(pages["charge_path"]) > 20
    assert len(pages["orifice"]) > 8, "named by their file"
    assert sum(map(len, pages.values())) > 180


def test_the_reference_names_all_that_the_package_offers():
    page = (DOCS / "reference/python.md").read_text("utf-8")
    named = set(re.findall(r"auto\w+:: windwall\.(?:report\.)?(\w+)", page))
    assert named - {"plots"} == set(windwall.__all__) - {"plot"}


@pytest.mark.parametrize("page, kind, text", TYPED)
def test_what_a_page_tells_to_type_is_right(page, kind, text, monkeypatch, tmp_path):
    if kind == "python":  # which may write what it is told to
        (tmp_path / "scenarios").symlink_to(ROOT / "scenarios")
        monkeypatch.chdir(tmp_path)
        exec(compile(text, page.name, "exec"), {})
        return
    monkeypatch.chdir(ROOT)
    for line in text.splitlines():
        name, *rest = shlex.split(line.split(">")[0])
        if name != "windwall":
            assert line == "make demo"
            continue
        stated = parser().parse_args(rest)
        given = getattr(stated, "file", "")
        assert not str(given).startswith("scenarios") or os.path.exists(given)
