#!/usr/bin/env python3
"""How much work each example's sheet is, beside that of the plain side door.

    examples.py PROGRAM [SPEC…]

Counted in instructions, by valgrind, which come out the same on a busy machine. What is over ten times the side door's
is marked: a joint should not cost more than that to be measured. The second figure is for one piece beside one of the side
door's: a cabinet of 45 pieces is four doors' work at the least. Without SPEC all of examples.
"""

import json
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


def pieces(program, spec):
    told = subprocess.run([program, "labels", str(spec), "--format", "json", "-q"], check=False, stdout=subprocess.PIPE).stdout
    return len(json.loads(told)["labels"])


def main():
    program, *specs = sys.argv[1:]
    specs = [Path(spec) for spec in specs] or sorted(EXAMPLES.glob("*.json"))
    door = EXAMPLES / "side-door.json"
    plain, plain_pieces = instructions(program, door), pieces(program, door)
    print(f"side door {plain / 1e6:.1f} million instructions; others so many times that, and for a piece")
    rows = sorted(((instructions(program, spec) / plain, spec) for spec in specs), reverse=True)
    for ratio, spec in rows:
        for_piece = ratio * plain_pieces / pieces(program, spec)
        print(f"{'OVER' if ratio > MOST else '    '} {ratio:7.1f} {for_piece:7.1f}  {spec.name}")
    sys.exit(rows[0][0] > MOST)


if __name__ == "__main__":
    main()
