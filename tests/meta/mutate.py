"""Single-line mutants of the physics floors: which of them does no test notice?

    .venv/bin/python tests/meta/mutate.py --count 150 --seed 1

Works on a copy of the sources in build/mutants, so that the checkout stays as it is. Each mutant
changes one operator, sign or index on one line, rebuilds its own object and the test binaries that
guard its floor, and runs them until one fails. The log (build/mutants/mutants.jsonl) is read again
on the next run, so that a run can be broken off and taken up. A mutant that makes the same object
file is equivalent; one that does not compile, or takes far longer than the tests do, is killed.
What survives wants a test, or a reason beside it.
"""

import argparse
import hashlib
import json
import os
import random
import re
import shutil
import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).parents[2]
COPIED = ["CMakeLists.txt", "cpp", "tests/cpp", "tests/bench", "scenarios"]

# Floor, and the test binaries that guard it, its own first.
GUARDS = {
    "numerics": ["test_numerics", "test_solve"],
    "media": ["test_media", "test_charge", "test_engine"],
    "charge": ["test_charge", "test_solve"],
    "engine": ["test_engine", "test_solve"],
    "driveline": ["test_driveline", "test_solve"],
    "road": ["test_road", "test_solve"],
    "vehicle": ["test_vehicle", "test_solve"],
}
# A few of what the long tests make are enough to notice.
FEWER = {"WINDWALL_LAYOUTS": "60", "WINDWALL_VEHICLES": "20"}

# What stands on a line, and what a slip of the hand would make of it.
SWAPS = [
    (r" \+ ", " - "),
    (r" - ", " + "),
    (r" \* ", " / "),
    (r" / ", " * "),
    (r" < ", " >= "),
    (r" > ", " <= "),
    (r" <= ", " < "),
    (r" >= ", " > "),
    (r" && ", " || "),
    (r" \|\| ", " && "),
    (r"std::min\(", "std::max("),
    (r"std::max\(", "std::min("),
    (r"\[i\]", "[i + 1]"),
    (r"\bi \+ 1\b", "i"),
    (r"return -", "return "),
    (r" \+ [a-z_.]+(?=;|\))", ""),
]
SKIPPED = re.compile(r"^\s*(//|#|/?\*|static_assert|template|constexpr std::string)|::rows|\"")


def mutants_of(path: Path) -> list[tuple[int, str]]:
    """Line number from 1 and the line as it would be, for every swap that fits."""
    found = []
    for number, line in enumerate(path.read_text().splitlines(), 1):
        if SKIPPED.search(line):
            continue
        code = line.split("//")[0]
        for pattern, other in SWAPS:
            for match in re.finditer(pattern, code):
                changed = line[: match.start()] + other + line[match.end() :]
                found.append((number, changed))
    return found


def all_mutants(floors: list[str]) -> list[tuple[str, str, int, str]]:
    """Floor, file, line and what it becomes."""
    return [
        (floor, str(path.relative_to(ROOT)), number, line)
        for floor in floors
        for path in sorted((ROOT / "cpp" / "windwall" / floor).rglob("*.cpp"))
        for number, line in mutants_of(path)
    ]


def run(command: list[str], seconds: float) -> bool:
    try:
        done = subprocess.run(
            command, capture_output=True, timeout=seconds, check=False, env=os.environ | FEWER
        )
    except subprocess.TimeoutExpired:
        return False
    return done.returncode == 0


class Copy:
    """The sources beside the checkout, built one file at a time and hardly optimised."""

    def __init__(self, folder: Path) -> None:
        self.tree, self.build = folder / "tree", folder / "build"
        self.usual_seconds: dict[str, float] = {}

    def make(self, guards: list[str]) -> None:
        for name in COPIED:
            copy_changed(ROOT / name, self.tree / name)
        flags = ["-DWINDWALL_TESTS=ON", "-DWINDWALL_PYTHON=OFF", "-DWINDWALL_UNITY=OFF"]
        flags += ["-DWINDWALL_WARNINGS_AS_ERRORS=OFF", "-DCMAKE_BUILD_TYPE=Mutants"]
        flags += ["-DCMAKE_CXX_FLAGS_MUTANTS=-O1"]
        where = ["-G", "Ninja", "-S", str(self.tree), "-B", str(self.build)]
        subprocess.run(["cmake", *where, *flags], check=True, stdout=subprocess.DEVNULL)
        subprocess.run(["ninja", "-C", str(self.build), *guards], check=True)
        for guard in guards:
            began = time.monotonic()
            if not self.passes(guard, 600):
                sys.exit(f"{guard} fails without a mutant")
            self.usual_seconds[guard] = time.monotonic() - began

    def passes(self, guard: str, seconds: float) -> bool:
        return run([str(self.build / guard), "--gtest_brief=1", "--gtest_fail_fast"], seconds)

    def digest(self, file: str) -> str:
        found = sorted(self.build.rglob(f"{file}.o"))
        return hashlib.sha256(found[0].read_bytes()).hexdigest() if found else ""

    def verdict(self, floor: str, file: str, number: int, line: str) -> str:
        """`killed by ...`, `equivalent` or `survived`; the file is as before when it returns."""
        path = self.tree / file
        text, before = path.read_text(), self.digest(file)
        lines = text.splitlines(keepends=True)
        lines[number - 1] = line + "\n"
        try:
            path.write_text("".join(lines))
            for guard in GUARDS[floor]:
                if not run(["ninja", "-C", str(self.build), guard], 600):
                    return "killed by the compiler"
                if before and self.digest(file) == before:
                    return "equivalent"
                if not self.passes(guard, 20 + 6 * self.usual_seconds[guard]):
                    return f"killed by {guard}"
        finally:
            path.write_text(text)
        return "survived"


def copy_changed(source: Path, target: Path) -> None:
    """Files that differ alone, so that nothing else is built again; what is gone goes."""
    if source.is_dir():
        files = [path for path in source.rglob("*") if path.is_file()]
        for old in [path for path in target.rglob("*") if path.is_file()]:
            if not (source / old.relative_to(target)).exists():
                old.unlink()
    else:
        files = [source]
    for file in files:
        to = target / file.relative_to(source)
        to.parent.mkdir(parents=True, exist_ok=True)
        if not to.exists() or to.read_bytes() != file.read_bytes():
            shutil.copyfile(file, to)


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--folder", type=Path, default=Path("build/mutants"))
    parser.add_argument("--count", type=int, default=150)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--floors", nargs="+", choices=list(GUARDS), default=list(GUARDS))
    asked = parser.parse_args()
    folder = (ROOT / asked.folder).resolve()
    chosen = random.Random(asked.seed).sample(all_mutants(asked.floors), asked.count)
    copy = Copy(folder)
    copy.make(sorted({guard for floor in asked.floors for guard in GUARDS[floor]}))
    log = folder / "mutants.jsonl"
    seen = [json.loads(line) for line in log.read_text().splitlines()] if log.exists() else []
    known = {(entry["file"], entry["line"], entry["as"]): entry["verdict"] for entry in seen}
    ends: list[str] = []
    for floor, file, number, line in chosen:
        key = (file, number, line.strip())
        if key not in known:
            known[key] = copy.verdict(floor, file, number, line)
            with log.open("a") as out:
                entry = {"file": file, "line": number, "as": key[2], "verdict": known[key]}
                out.write(json.dumps(entry) + "\n")
        ends.append(known[key])
        print(f"{known[key]:24} {file}:{number}: {key[2]}", flush=True)
    survived, same = ends.count("survived"), ends.count("equivalent")
    print(
        f"{len(ends)} mutants: {len(ends) - survived - same} killed, {survived} survived, "
        f"{same} equivalent"
    )
    return 1 if survived > 0.05 * len(ends) else 0


if __name__ == "__main__":
    sys.exit(main())
