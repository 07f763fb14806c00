#!/usr/bin/env python3
"""Do the tests notice a wrong sign? Changes one place of the source at a time and sees whether a test fails.

Run by hand, as it takes hours: it copies the tree, draws places by chance from the files that are asked for, and for each
builds and runs the test programs, those first that fail soonest. A change that no test notices is printed as it stands, to
be read: it is a test that is missing, or a change that makes no difference.

    mutants.py [--number 100] [--seed 1] [--work FOLDER] [--limit SECONDS] [FILE…]

Without files: lengths, joints, checks, lumber, and what is worked.
"""

import argparse
import os
import random
import re
import shutil
import subprocess
import sys
import time
from collections import Counter
from pathlib import Path

TREE = Path(__file__).resolve().parents[2]
USUAL = ["src/core/*.cpp", "src/kinds/*.cpp", "src/checks/*.cpp", "src/lumber/*.cpp", "src/making/*.cpp"]
# Operators stand between spaces in formatted code, so that none is taken for a template's bracket.
CHANGES = [
    (r" < ", " <= "), (r" <= ", " < "), (r" > ", " >= "), (r" >= ", " > "), (r" == ", " != "), (r" != ", " == "),
    (r" \+ ", " - "), (r" - ", " + "), (r" \* ", " / "), (r" \+= ", " -= "), (r" -= ", " += "),
    (r" && ", " || "), (r" \|\| ", " && "), (r"\bstd::min\b", "std::max"), (r"\bstd::max\b", "std::min"),
    (r"\btrue\b", "false"), (r"\bfalse\b", "true"), (r"(?<=[(\s])!(?=[a-z])", ""), (r"(?<![\w.'])(\d)(?![\w.'])", None),
]
# The programs that tell soonest come first; what draws specs is given less of them.
PROGRAMS = {
    "core": ["core", "kinds", "checks"], "kinds": ["kinds", "checks"], "checks": ["checks", "kinds"],
    "lumber": ["lumber", "io"], "making": ["io", "page"],
}
LAST = ["wood", "page", "lumber", "io"]


def code_of(line):
    """The line with its texts and its comment blanked, as long as before."""
    line = re.sub(r'"(?:\\.|[^"\\])*"', lambda text: '"' + "_" * (len(text.group()) - 2) + '"', line)
    return re.sub(r"//.*", lambda text: " " * len(text.group()), line)


def places_in(file):
    """(line number, start, end, what stands there after) of every change that can be made."""
    for number, line in enumerate(file.read_text().splitlines()):
        code = code_of(line)
        if code.startswith("#") or "static_assert" in code or "template" in code:
            continue
        for pattern, after in CHANGES:
            for found in re.finditer(pattern, code):
                text = str(int(found.group()) + 1) if after is None else after
                yield number, found.start(), found.end(), text


def run(command, work, limit):
    environment = dict(os.environ, HAUNCH_TEST_EFFORT="0.25")
    try:
        done = subprocess.run(command, cwd=work, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=limit)
        return done.returncode == 0
    except subprocess.TimeoutExpired:
        return False


def noticed_by(work, room, limit):
    """The test program that fails, "compiler" where it does not build, None where all pass."""
    build = ["cmake", "--build", "build", "-j", str(os.cpu_count()), "--target"]
    if not run(build + ["haunch"], work, 1800):
        return "compiler"
    cases = sorted(str(case) for case in (work / "tests/cli").glob("*.case"))
    names = PROGRAMS.get(room, []) + [name for name in LAST if name not in PROGRAMS.get(room, [])]
    steps = [(f"{name} tests", f"haunch_{name}_tests") for name in names]
    for index, (name, target) in enumerate(steps):
        if not run(build + [target], work, 1800):
            return "compiler"
        if not run([f"build/tests/{target}", "--abort"], work, limit):
            return name
        if index == 0:
            command = [sys.executable, "tests/cli/run_cases.py", "--haunch", "build/src/haunch", "--examples", "examples"]
            if not run(command + cases, work, limit):
                return "command lines"
    return None


def prepare(work):
    shutil.copytree(TREE, work, ignore=shutil.ignore_patterns("build*", ".git"), dirs_exist_ok=True)
    subprocess.run(["cmake", "-B", "build", "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release", "-DCMAKE_CXX_FLAGS_RELEASE=-O1"],
                   cwd=work, check=True, stdout=subprocess.DEVNULL)
    subprocess.run(["cmake", "--build", "build", "-j", str(os.cpu_count())], cwd=work, check=True, stdout=subprocess.DEVNULL)


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--number", type=int, default=100)
    arguments.add_argument("--seed", type=int, default=1)
    arguments.add_argument("--work", type=Path, default=Path("/tmp/haunch-mutants"))
    # A change that never ends is noticed as well.
    arguments.add_argument("--limit", type=int, default=300, help="seconds for one test program")
    arguments.add_argument("files", nargs="*")
    given = arguments.parse_args()
    files = [Path(name) for name in given.files] or [file.relative_to(TREE) for glob in USUAL for file in sorted(TREE.glob(glob))]
    prepare(given.work)
    places = [(file, place) for file in files for place in places_in(TREE / file)]
    drawn = random.Random(given.seed).sample(places, min(given.number, len(places)))
    print(f"{len(drawn)} of {len(places)} places in {len(files)} files, seed {given.seed}", flush=True)
    told = Counter()
    for file, (number, start, end, after) in drawn:
        whole = (TREE / file).read_text()
        lines = whole.splitlines()
        line = lines[number]
        lines[number] = line[:start] + after + line[end:]
        (given.work / file).write_text("\n".join(lines) + "\n")
        began = time.monotonic()
        by = noticed_by(given.work, file.parts[1], given.limit)
        (given.work / file).write_text(whole)
        told[by] += 1
        if by is None:
            print(f"not noticed: {file}:{number + 1}: {line.strip()}  ->  {lines[number].strip()}", flush=True)
        else:
            print(f"  {by}, {time.monotonic() - began:.0f} s: {file}:{number + 1}", flush=True)
    built = len(drawn) - told["compiler"]
    print(f"{built - told[None]} of {built} that build are noticed: {100 * (built - told[None]) / max(built, 1):.0f} %", dict(told))


if __name__ == "__main__":
    main()
