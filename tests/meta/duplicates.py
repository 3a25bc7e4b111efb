"""Blocks of code that stand more than once.

    python tests/meta/duplicates.py [ROOT] [--show]    the count, and with --show every block

A block is six lines or more in a row that stand elsewhere too, letter for letter but for spaces.
What is left out says the same everywhere by its nature: includes and imports, namespaces, comments,
and tables of rows or of literals with the function they stand in.
"""

import re
import sys
from collections import defaultdict
from pathlib import Path

LEAST = 6
FOLDERS = ("cpp", "python", "tests")
NOTHING = re.compile(r"(?:#|//|using |namespace |}  // namespace|import |from \S+ import ).*|")
IMPORTS = re.compile(r"from \S+ import \(")
TABLE = re.compile(r".* rows\(\) \{|.*constexpr \S+ \w+\[\] = \{")
END_OF_TABLE = re.compile(r"return table;|\};")
LITERAL = re.compile(r"[{(\[]*(?:[-+]?\d|\"|\'|\.|f\").*[,{\[]|\{.*\},?|\"[^\"]*\"[;)]*|[}\]],")


def lines_of(text):
    """Line numbers and lines that count, without their spaces."""
    kept, table, imports = [], False, False
    for number, line in enumerate(text.splitlines(), 1):
        line = re.sub(r"\s*(?://|  #).*", "", line.strip())
        imports = bool(IMPORTS.fullmatch(line)) or (imports and line != ")")
        if imports:
            continue
        if END_OF_TABLE.fullmatch(line):
            table = False
            continue
        table = table or bool(TABLE.fullmatch(line))
        if table or NOTHING.fullmatch(line) or LITERAL.fullmatch(line):
            continue
        kept.append((number, re.sub(r"\s+", "", line)))
    return kept


def files(root):
    for folder in FOLDERS:
        for path in sorted((root / folder).rglob("*")):
            if path.suffix in {".cpp", ".hpp", ".py"}:
                yield path


def repeated(texts):
    """For each name the runs of lines, as first and last number, that stand elsewhere too."""
    kept = {name: lines_of(text) for name, text in texts.items()}
    places = defaultdict(list)
    for name, lines in kept.items():
        for at in range(len(lines) - LEAST + 1):
            places[tuple(line for _, line in lines[at : at + LEAST])].append((name, at))
    marked = defaultdict(set)
    for found in places.values():
        if len(found) > 1:
            for name, at in found:
                marked[name].update(range(at, at + LEAST))
    return {name: list(runs(kept[name], sorted(at))) for name, at in marked.items()}


def runs(lines, marked):
    """Neighbours together."""
    start = before = marked[0]
    for at in [*marked[1:], None]:
        if at is None or at != before + 1:
            yield lines[start][0], lines[before][0], before - start + 1
            start = at
        before = at


def count(found):
    """Blocks and their lines, every copy counted."""
    blocks = [length for places in found.values() for _, _, length in places]
    return len(blocks), sum(blocks)


def of_checkout(root):
    return repeated({p.relative_to(root).as_posix(): p.read_text("utf-8") for p in files(root)})


def main():
    arguments = [one for one in sys.argv[1:] if not one.startswith("-")]
    found = of_checkout(Path(arguments[0]) if arguments else Path(__file__).parents[2])
    print("{} blocks, {} lines".format(*count(found)))
    if "--show" in sys.argv:
        for name, places in found.items():
            for first, last, _ in places:
                print(f"{name}:{first}-{last}")


if __name__ == "__main__":
    main()
