"""Single-line mutants of the physics floors: which of them does no test notice?

    .venv/bin/python tests/meta/mutate.py --build build/mutants --count 150 --seed 1

Each mutant changes one operator, sign or index on one line, rebuilds its floor's test binaries and
runs them until one fails. The log (build/mutants/mutants.jsonl) is read again on the next run, so
that a run can be broken off and taken up. A mutant that makes the same object file is equivalent;
one that does not compile, or that never ends, is killed. The source is put back whatever happens.
"""

import argparse
import hashlib
import json
import random
import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
CORE = ROOT / "cpp" / "windwall"

# Floor or room, and the test binaries that guard it, the quickest first.
GUARDS = {
    "media": ["test_media", "test_charge", "test_engine"],
    "charge": ["test_charge", "test_solve"],
    "engine": ["test_engine", "test_solve"],
    "driveline": ["test_driveline", "test_solve"],
    "road": ["test_road", "test_solve"],
    "vehicle": ["test_solve"],
    "solve/point": ["test_solve"],
    "solve/full_throttle": ["test_solve", "test_vehicles"],
}

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


def all_mutants(rooms: list[str]) -> list[tuple[str, Path, int, str]]:
    return [
        (room, path, number, line)
        for room in rooms
        for path in sorted((CORE / room).rglob("*.cpp"))
        for number, line in mutants_of(path)
    ]


def run(command: list[str], seconds: int) -> bool:
    try:
        done = subprocess.run(command, cwd=ROOT, capture_output=True, timeout=seconds, check=False)
    except subprocess.TimeoutExpired:
        return False
    return done.returncode == 0


def object_digest(build: Path, path: Path) -> str:
    found = sorted(build.rglob(f"{path.relative_to(ROOT)}.o"))
    return hashlib.sha256(found[0].read_bytes()).hexdigest() if found else ""


def verdict(build: Path, room: str, path: Path, number: int, line: str) -> str:
    """`killed by ...`, `equivalent` or `survived`; the source is as before when it returns."""
    text = path.read_text()
    before = object_digest(build, path)
    lines = text.splitlines(keepends=True)
    lines[number - 1] = line + "\n"
    try:
        path.write_text("".join(lines))
        for guard in GUARDS[room]:
            if not run(["ninja", "-C", str(build), guard], 1200):
                return "killed by the compiler"
            if before and object_digest(build, path) == before:
                return "equivalent"
            if not run([str(build / guard), "--gtest_brief=1"], 300):
                return f"killed by {guard}"
    finally:
        path.write_text(text)
    return "survived"


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--build", type=Path, default=Path("build/mutants"))
    parser.add_argument("--count", type=int, default=150)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--rooms", nargs="+", choices=list(GUARDS), default=list(GUARDS))
    asked = parser.parse_args()
    build = (ROOT / asked.build).resolve()
    log = build / "mutants.jsonl"
    guards = sorted({guard for room in asked.rooms for guard in GUARDS[room]})
    if not run(["ninja", "-C", str(build), *guards], 3600):
        sys.exit(f"{build} does not build; configure it with -DWINDWALL_TESTS=ON")
    seen = [json.loads(line) for line in log.read_text().splitlines()] if log.exists() else []
    known = {(entry["file"], entry["line"], entry["as"]): entry["verdict"] for entry in seen}
    chosen = random.Random(asked.seed).sample(all_mutants(asked.rooms), asked.count)
    ends: list[str] = []
    for room, path, number, line in chosen:
        key = (str(path.relative_to(ROOT)), number, line.strip())
        if key not in known:
            known[key] = verdict(build, room, path, number, line)
            with log.open("a") as file:
                entry = {"file": key[0], "line": number, "as": key[2], "verdict": known[key]}
                file.write(json.dumps(entry) + "\n")
        ends.append(known[key])
        print(f"{known[key]:24} {key[0]}:{number}: {key[2]}", flush=True)
    survived, same = ends.count("survived"), ends.count("equivalent")
    print(
        f"{len(ends)} mutants: {len(ends) - survived - same} killed, {survived} survived, "
        f"{same} equivalent"
    )
    return 1 if survived > 0.05 * len(ends) else 0


if __name__ == "__main__":
    sys.exit(main())
