#!/usr/bin/env python3
"""Measures haunch against figures of its own making: ratios within one run, since absolute times vary by machine.

    bench.py --haunch PROGRAM --baseline PROGRAM --phases PROGRAM [--quick]

Not part of the tests: a busy machine must not fail them.
"""

import argparse
import json
import os
import random
import subprocess
import sys
import tempfile
import time
from pathlib import Path


def specs(count, seed=1):
    """Doors a shop might make in a year, all of them sound."""
    rng = random.Random(seed)
    for number in range(count):
        yield {"kind": "door", "id": f"door-{number}", "units": "mm",
               "opening": {"width": rng.randint(700, 1000), "height": rng.randint(1950, 2150)}, "clearance": 3,
               "thickness": 44, "stile_width": rng.randint(100, 125),
               "rail_widths": [118, {"width": 195, "name": "lock rail", "top": 965}, 230], "panels": 4,
               "tenon_depth": 65, "groove_depth": 13, "fit_allowance": 0.15}


def write_lines(path, count):
    with open(path, "w", encoding="utf-8") as out:
        for spec in specs(count):
            out.write(json.dumps(spec) + "\n")


def seconds(command):
    begin = time.perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - begin


def best_alternating(commands, rounds):
    """The least time of each command, run in turns so that all see the same machine."""
    best = [float("inf")] * len(commands)
    for _ in range(rounds):
        for i, command in enumerate(commands):
            best[i] = min(best[i], seconds(command))
    return best


def peak_mib(command):
    child = os.fork()
    if child == 0:
        null = os.open(os.devnull, os.O_WRONLY)
        os.dup2(null, 1)
        os.execv(command[0], command)
    _, _, usage = os.wait4(child, 0)
    return usage.ru_maxrss / 1024


def row(what, ratio, limit):
    print(f"{'ok  ' if ratio <= limit else 'OVER'}  {ratio:6.2f}  (at most {limit})  {what}")
    return ratio <= limit


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    for program in ("haunch", "baseline", "phases"):
        parser.add_argument("--" + program, required=True)
    parser.add_argument("--quick", action="store_true", help="a tenth of the specs")
    options = parser.parse_args()
    many = 1_000 if options.quick else 10_000
    good = True
    with tempfile.TemporaryDirectory() as folder:
        one, batch, large = (str(Path(folder, name)) for name in ("one.json", "batch.jsonl", "large.jsonl"))
        Path(one).write_text(json.dumps(next(specs(1))), encoding="utf-8")
        write_lines(batch, many)
        write_lines(large, 10 * many)

        ours, base = best_alternating([[options.haunch, one], [options.baseline, one]], 100)
        good &= row(f"one spec, whole process: {ours * 1e3:.2f} ms against {base * 1e3:.2f} ms", ours / base, 1.3)

        phases = json.loads(subprocess.run([options.phases, batch], check=True, stdout=subprocess.PIPE).stdout)
        batch_seconds = seconds([options.haunch, batch, "--format", "json"])
        alone = phases["nlohmann_parse"] + phases["nlohmann_dump"]
        good &= row(f"{many} specs to JSON: {batch_seconds:.2f} s against {alone:.2f} s of nlohmann/json alone",
                    batch_seconds / alone, 3)
        good &= row(f"checks {phases['check']:.3f} s against writing {phases['write']:.3f} s", phases["check"] / phases["write"], 1)

        small_peak = peak_mib([options.haunch, batch, "--format", "json"])
        large_peak = peak_mib([options.haunch, large, "--format", "json"])
        good &= row(f"{10 * many} specs peak at {large_peak:.1f} MiB, {many} at {small_peak:.1f} MiB", large_peak / small_peak, 1.2)
    print(json.dumps({name: round(value, 3) for name, value in phases.items()}))
    sys.exit(0 if good else 1)


if __name__ == "__main__":
    main()
