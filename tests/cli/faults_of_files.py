#!/usr/bin/env python3
"""Every way to name a file meets every place where none can be had: exit status 3, one line, the system's own words.

Status 4 is for faults of the program alone. What is tried: each argument and option that names a file to read or to
write, with links in a ring, a name and a path that are too long, a file taken for a folder, a file that breaks off, a
folder that may not be entered, and a file that may not be read or written. As root may do all of it, the last two are
tried as `nobody`; where that cannot be, they are left out, and that is said.

    faults_of_files.py --haunch PROGRAM
"""

import argparse
import errno
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

NOBODY = 65534
SKIPPED = 77

DOOR = '{"kind": "door", "id": "d", "units": "mm", "opening": {"width": 500, "height": 700}}\n'
STOCK = '{"units": "mm", "stock": [{"id": "a", "length": 3000, "width": 200, "thickness": 27}]}\n'

# How a file is named: the command with the place where it stands, and what else it needs.
READERS = {
    "a spec": ["check", "{}"],
    "a spec of no command": ["{}"],
    "a second spec": ["cutlist", "door.json", "{}"],
    "a shop file": ["check", "door.json", "--shop", "{}"],
    "a shop file of species": ["species", "--shop", "{}"],
    "a spec of lumber": ["lumber", "{}"],
    "a spec of a rod": ["rod", "{}"],
    "stock": ["lumber", "door.json", "--stock", "{}"],
    "stock in CSV": ["lumber", "door.json", "--stock", "{}.csv"],
    "a spec of solids": ["solids", "{}", "-o", "new"],
    "a spec of a trial": ["trial", "{}", "--joint", "J1", "--tenon", "7"],
    "readings": ["trial", "door.json", "--joint", "J1", "--measured", "{}"],
}
WRITERS = {
    "a page": ["check", "door.json", "-o", "{}"],
    "a schema": ["schema", "spec", "-o", "{}"],
    "a rod": ["rod", "door.json", "--format", "svg", "-o", "{}"],
    "a plan": ["lumber", "door.json", "--stock", "stock.json", "-o", "{}"],
    "what is left": ["lumber", "door.json", "--stock", "stock.json", "--leftover", "{}"],
    "what is left, beside a plan": ["lumber", "door.json", "--stock", "stock.json", "-o", "p.txt", "--leftover", "{}"],
}
# What makes a new folder: whatever is there already is in its way, whoever may read it.
FOLDERS = {"solids": ["solids", "door.json", "-o", "{}"]}
LONG_NAME = "n" * 300
LONG_PATH = "/".join(["folder"] * 700)
# Where it stands, and what the system says of it.
PLACES = {
    "ring": errno.ELOOP,
    "ring/door.json": errno.ELOOP,
    LONG_NAME: errno.ENAMETOOLONG,
    LONG_PATH: errno.ENAMETOOLONG,
    "door.json/within": errno.ENOTDIR,
}
BROKEN = {"memory": errno.EIO}  # opens, but cannot be read
FORBIDDEN = {"closed/door.json": errno.EACCES, "secret": errno.EACCES}
FORBIDDEN_FOLDERS = ["closed", "unlisted"]


def make_places(folder):
    """All places, with the names that the options add to them."""
    Path(folder, "door.json").write_text(DOOR)
    Path(folder, "stock.json").write_text(STOCK)
    for ring in ("ring", "ring.csv"):
        Path(folder, ring).symlink_to(ring)
    for memory in ("memory", "memory.csv"):
        Path(folder, memory).symlink_to("/proc/self/mem")
    for name in ("secret", "secret.csv"):
        Path(folder, name).write_text(DOOR)
        Path(folder, name).chmod(0)
    for name, mode in (("closed", 0), ("unlisted", 0o111)):
        Path(folder, name).mkdir()
        Path(folder, name, "door.json").write_text(DOOR)
        Path(folder, name).chmod(mode)
    Path(folder).chmod(0o777)


class Trial:
    def __init__(self, haunch, folder, as_nobody):
        self.haunch, self.folder, self.as_nobody = haunch, folder, as_nobody
        self.count, self.faults = 0, []

    def step_down(self):
        if self.as_nobody:
            os.setgroups([])
            os.setgid(NOBODY)
            os.setuid(NOBODY)

    def run(self, what, command, place, number):
        words = [word.replace("{}", place) for word in command]
        before = sorted(os.listdir(self.folder))
        done = subprocess.run([self.haunch, *words], cwd=self.folder, stdin=subprocess.DEVNULL, capture_output=True,
                              text=True, preexec_fn=self.step_down, timeout=60)
        self.count += 1
        shown = f"{what}: haunch {' '.join(words)[:80]}"
        lines = done.stderr.splitlines()
        if done.returncode != 3:
            self.faults.append(f"{shown}: exit {done.returncode}, 3 is wanted: {done.stderr[-200:]!r}")
        elif len(lines) != 1 or not lines[0].endswith(": " + os.strerror(number)):
            self.faults.append(f"{shown}: {os.strerror(number)!r} is wanted, in one line: {done.stderr[-200:]!r}")
        if sorted(os.listdir(self.folder)) != before:
            self.faults.append(f"{shown}: left something behind")

    def run_all(self, ways, places):
        for what, command in ways.items():
            for place, number in places.items():
                self.run(what, command, place, number)


def may_step_down(haunch, folder):
    """Why nobody cannot run the program here; empty where it can."""
    if os.geteuid() != 0:
        return ""  # who runs this is nobody of note already
    try:
        trial = Trial(haunch, folder, True)
        subprocess.run([haunch, "--version"], cwd=folder, preexec_fn=trial.step_down, check=True, capture_output=True)
        return ""
    except (OSError, subprocess.SubprocessError) as fault:
        return f"root cannot run it as nobody: {fault}"


def run(haunch):
    with tempfile.TemporaryDirectory() as folder:
        # A copy, as nobody may not enter a folder of root's.
        copy = shutil.copy(haunch, Path(folder, "haunch"))
        bench = Path(folder, "bench")
        bench.mkdir()
        make_places(bench)
        Path(folder).chmod(0o755)
        why_not = may_step_down(copy, bench)
        trial = Trial(copy, bench, os.geteuid() == 0 and not why_not)
        trial.run_all(READERS, PLACES | BROKEN)
        trial.run_all(WRITERS | FOLDERS, PLACES)
        if not why_not:
            trial.run_all(READERS, FORBIDDEN)
            trial.run_all(WRITERS, FORBIDDEN)
            for place in FORBIDDEN_FOLDERS:
                trial.run("a new folder", FOLDERS["solids"], f"{place}/new", errno.EACCES)
                trial.run("a folder", ["check", "{}"], place, errno.EACCES)
                trial.run("a file beside others", WRITERS["a page"], f"{place}/page.txt", errno.EACCES)
        for name in FORBIDDEN_FOLDERS:
            Path(bench, name).chmod(0o700)
        return trial, why_not


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--haunch", required=True)
    options = parser.parse_args()
    trial, why_not = run(os.path.abspath(options.haunch))
    for fault in trial.faults:
        print(fault)
    print(f"{trial.count} tried, {len(trial.faults)} not as they should be" + (f"; without rights: {why_not}" if why_not else ""))
    sys.exit(1 if trial.faults else SKIPPED if why_not else 0)


if __name__ == "__main__":
    main()
