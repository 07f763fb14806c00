#!/usr/bin/env python3
"""How much work each example's sheet is, beside that of the plain side door.

    examples.py PROGRAM [SPEC…]

Counted in instructions, by valgrind, which come out the same on a busy machine. What is over ten times the side door's
is marked: a joint should not cost more than that to be measured. Without SPEC all of examples.
"""

import re
import subprocess
import sys
from pathlib import Path

EXAMPLES = Path(__file__).parents[2] / "examples"
MOST = 10


def instructions(program, spec):
    command = ["valgrind", "--tool=callgrind", "--callgrind-out-file=/dev/null", program, "sheet", str(spec)]
    told = subprocess.run(command, check=False, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True).stderr
    return int(re.search(r"Collected : (\d+)", told)[1])


def main():
    program, *specs = sys.argv[1:]
    specs = [Path(spec) for spec in specs] or sorted(EXAMPLES.glob("*.json"))
    plain = instructions(program, EXAMPLES / "side-door.json")
    print(f"side door {plain / 1e6:.1f} million instructions")
    rows = sorted(((instructions(program, spec) / plain, spec.name) for spec in specs), reverse=True)
    for ratio, name in rows:
        print(f"{'OVER' if ratio > MOST else '    '} {ratio:7.1f}  {name}")
    sys.exit(rows[0][0] > MOST)


if __name__ == "__main__":
    main()
