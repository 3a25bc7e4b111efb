"""Single-line mutants of the physics floors: which of them does no test notice?

    .venv/bin/python tests/meta/mutate.py --count 150 --seed 1

Works on a copy of the sources in build/mutants, so that the checkout stays as it is. Each mutant
changes one operator, sign or index on one line, rebuilds its own object and the test binaries that
guard its floor, and runs them, what is quick first, until one test fails. The log
(build/mutants/mutants.jsonl) is read again on the next run, so that a run can be broken off and
taken up; `--again` tries what survived once more. A mutant that makes the same object file is
equivalent; one that does not compile, or takes far longer than the tests do, is killed. What
survives wants a test, or a reason in mutants_explained.json beside this file.
"""

import argparse
import hashlib
import json
import os
import random
import re
import resource
import shutil
import subprocess
import sys
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
LONG = 0.3  # s, of a test that is left for what the others do not notice
# Gives up by the clock, so that a busy machine fails it too.
TIMED = "RandomLayouts.WithNozzlesAndCompressors"

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


def run(command: list[str], seconds: int = 3600) -> str | None:
    """What it printed, or nothing where it ended well; seconds are the processor's."""

    def bounded() -> None:
        resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds))

    done = subprocess.run(
        command,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        check=False,
        env=os.environ | FEWER,
        preexec_fn=bounded,
    )
    return None if done.returncode == 0 else done.stdout.decode(errors="replace")


class Guard:
    """A test binary; what is slow in it comes last."""

    def __init__(self, binary: Path) -> None:
        self.binary, self.quick, self.slow, self.seconds = binary, "*", "", 3600

    def measure(self) -> None:
        """What each test takes; kept beside the binary as long as that is the same."""
        told = self.binary.with_suffix(".json")
        if not told.exists() or told.stat().st_mtime < self.binary.stat().st_mtime:
            asked = [f"--gtest_output=json:{told}", f"--gtest_filter=-{TIMED}"]
            if said := run([str(self.binary), *asked]):
                told.unlink(missing_ok=True)
                sys.exit(f"{self.binary.name} fails without a mutant: {said[-2000:]}")
        tests = {
            f"{suite['name']}.{test['name']}": float(test["time"].rstrip("s"))
            for suite in json.loads(told.read_text())["testsuites"]
            for test in suite["testsuite"]
        }
        slow = ":".join(name for name, seconds in tests.items() if seconds > LONG)
        self.quick, self.slow = f"-{slow}:{TIMED}", slow
        self.seconds = 20 + 6 * int(sum(tests.values()))

    def failing(self, stage: str) -> str | None:
        """The first test of a stage that fails, or nothing."""
        command = [str(self.binary), "--gtest_fail_fast", f"--gtest_filter={stage}"]
        said = run(command, self.seconds)
        if said is None:
            return None
        failed = re.search(r"\[  FAILED  \] ([\w./]+)", said)
        begun = re.findall(r"\[ RUN      \] ([\w./]+)", said)
        return failed[1] if failed else (begun[-1] if begun else "its end")


class Copy:
    """The sources beside the checkout, built one file at a time."""

    def __init__(self, folder: Path) -> None:
        # Laid out and compiled as the checkout is: a compiler cache has all but the mutants.
        self.tree, self.build = folder / "tree", folder / "tree" / "build" / "dev"
        self.guards: dict[str, Guard] = {}
        self.digests: dict[str, str] = {}

    def make(self, names: list[str]) -> None:
        for name in COPIED:
            copy_changed(ROOT / name, self.tree / name)
        flags = ["-DWINDWALL_TESTS=ON", "-DWINDWALL_PYTHON=OFF", "-DWINDWALL_UNITY=OFF"]
        flags += ["-DWINDWALL_WARNINGS_AS_ERRORS=ON", "-DCMAKE_BUILD_TYPE=Release"]
        where = ["-G", "Ninja", "-S", str(self.tree), "-B", str(self.build)]
        subprocess.run(["cmake", *where, *flags], check=True, stdout=subprocess.DEVNULL)
        if said := self.ninja(*names):
            sys.exit(said)
        for floor in GUARDS:
            for path in (self.tree / "cpp/windwall" / floor).rglob("*.cpp"):
                file = str(path.relative_to(self.tree))
                self.digests[file] = self.digest(file)
        for name in names:
            self.guards[name] = Guard(self.build / name)
            self.guards[name].measure()

    def ninja(self, *targets: str) -> str | None:
        return run(["ninja", "-j1", "-C", str(self.build), *targets])

    def digest(self, file: str) -> str:
        (found,) = self.build.rglob(f"{file}.o")
        return hashlib.sha256(found.read_bytes()).hexdigest()

    def verdict(self, floor: str, file: str, number: int, line: str) -> str:
        """`killed by ...`, `equivalent` or `survived`; the file is as before when it returns."""
        path = self.tree / file
        text = path.read_text()
        lines = text.splitlines(keepends=True)
        lines[number - 1] = line + "\n"
        try:
            path.write_text("".join(lines))
            return self.judged(file, [self.guards[name] for name in GUARDS[floor]])
        finally:
            path.write_text(text)

    def judged(self, file: str, guards: list[Guard]) -> str:
        for guard in guards:
            if self.ninja(guard.binary.name):
                return "killed by the compiler"
            if self.digest(file) == self.digests[file]:
                return "equivalent"
            if failing := guard.failing(guard.quick):
                return f"killed by {failing}"
        for guard in guards:
            if guard.slow and (failing := guard.failing(guard.slow)):
                return f"killed by {failing}"
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


def explained() -> dict[tuple[str, str], str]:
    """File and changed line of what no test can notice, or need not, and why."""
    told = json.loads((Path(__file__).parent / "mutants_explained.json").read_text())
    return {(entry["file"], entry["as"]): entry["why"] for entry in told}


class Log:
    """What was found before, a line each, by file, line and what it becomes."""

    def __init__(self, path: Path, again: bool) -> None:
        self.path, self.known = path, {}
        for line in path.read_text().splitlines() if path.exists() else []:
            entry = json.loads(line)
            if not (again and entry["verdict"] == "survived"):
                self.known[entry["file"], entry["line"], entry["as"]] = entry["verdict"]

    def keep(self, key: tuple[str, int, str], verdict: str) -> None:
        self.known[key] = verdict
        with self.path.open("a") as out:
            entry = dict(zip(("file", "line", "as"), key, strict=True)) | {"verdict": verdict}
            out.write(json.dumps(entry) + "\n")


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--folder", type=Path, default=Path("build/mutants"))
    parser.add_argument("--count", type=int, default=150)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--floors", nargs="+", choices=list(GUARDS), default=list(GUARDS))
    parser.add_argument("--again", action="store_true", help="try what survived once more")
    asked = parser.parse_args()
    folder = (ROOT / asked.folder).resolve()
    chosen = random.Random(asked.seed).sample(all_mutants(asked.floors), asked.count)
    copy, reasons = Copy(folder), explained()
    copy.make(sorted({guard for floor in asked.floors for guard in GUARDS[floor]}))
    log = Log(folder / "mutants.jsonl", asked.again)
    ends: list[str] = []
    for floor, file, number, line in chosen:
        key = (file, number, line.strip())
        if key not in log.known:
            log.keep(key, copy.verdict(floor, file, number, line))
        why = reasons.get((file, line.strip()))
        ends.append("explained" if log.known[key] == "survived" and why else log.known[key])
        print(f"{ends[-1]:40} {file}:{number}: {key[2]}", flush=True)
    count = {end: ends.count(end) for end in ("survived", "explained", "equivalent")}
    count["killed"] = len(ends) - sum(count.values())
    print(f"{len(ends)} mutants:", ", ".join(f"{number} {end}" for end, number in count.items()))
    return 1 if count["survived"] > 0.05 * len(ends) else 0


if __name__ == "__main__":
    sys.exit(main())
