#!/usr/bin/env python3
"""Measures haunch against figures of its own making: ratios within one run, since absolute times vary by machine.

    bench.py --haunch PROGRAM --baseline PROGRAM --phases PROGRAM [--quick]

Not part of the tests: a busy machine must not fail them.
"""

import argparse
import json
import os
import random
import re
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

EXAMPLES = Path(__file__).parents[2] / "examples"


def plain_doors(count, seed=1):
    """Doors a shop might make in a year, all of them sound."""
    rng = random.Random(seed)
    for number in range(count):
        yield {"kind": "door", "id": f"door-{number}", "units": "mm",
               "opening": {"width": rng.randint(700, 1000), "height": rng.randint(1950, 2150)}, "clearance": 3,
               "thickness": 44, "stile_width": rng.randint(100, 125),
               "rail_widths": [118, {"width": 195, "name": "lock rail", "top": 965}, 230], "panels": 4,
               "tenon_depth": 65, "groove_depth": 13, "fit_allowance": 0.15}


def other_work(count):
    """The same doors, by turns plain, moulded, dowelled, with their seasons, and in a frame."""
    for number, door in enumerate(plain_doors(count)):
        turn = number % 5
        if turn == 1:
            door["edge"] = {"kind": "coped", "profile": "ovolo", "width": 9}
        elif turn == 2:
            del door["tenon_depth"]
            door |= {"joint": "dowel", "dowel": {"diameter": 16, "depth": 60}}
        elif turn == 3:
            door |= {"species": "white oak", "moisture": {"build": 9, "low": 8, "high": 10}}
        elif turn == 4:
            leaf = {key: door[key] for key in ("thickness", "stile_width", "rail_widths", "groove_depth", "panels")}
            door = {"kind": "doorset", "id": door["id"], "units": "mm", "leaf": leaf,
                    "frame": {"wall_opening": {"width": 910 + number % 50, "height": 2100}, "jamb_thickness": 32}}
        yield door


def write_lines(path, specs):
    with open(path, "w", encoding="utf-8") as out:
        for spec in specs:
            out.write(json.dumps(spec) + "\n")


def output(command):
    return subprocess.run(command, check=True, stdout=subprocess.PIPE).stdout


def seconds(command):
    """Of the processor: what else the machine does counts less than in time."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime


def time_of(command):
    begin = time.perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - begin


def best_alternating(commands, rounds, measure=seconds):
    """The least of each command, run in turns so that all see the same machine."""
    best = [float("inf")] * len(commands)
    for _ in range(rounds):
        for i, command in enumerate(commands):
            best[i] = min(best[i], measure(command))
    return best


def peak_mib(command):
    """The program's own peak, looked up while it runs: what the kernel tells at its end counts this script's memory too,
    which was the child's until it became the program."""
    peak = 0
    with subprocess.Popen(command, stdout=subprocess.DEVNULL) as process:
        while process.poll() is None:
            status = Path(f"/proc/{process.pid}/status").read_text(encoding="utf-8")
            found = re.search(r"^VmHWM:\s+(\d+) kB", status, flags=re.M)
            peak = int(found[1]) if found else peak  # none once it has ended
            time.sleep(0.005)
    return peak / 1024


def pieces_of(haunch, spec):
    return sum(len(item["parts"]) for item in json.loads(output([haunch, spec, "--format", "json"]))["items"])


def cabinets(haunch):
    """What a piece of a cabinet costs beside one of the side door; a drawer's tails slope, and it is tried on its way."""
    door = str(EXAMPLES / "side-door.json")
    for name in ("proving-base", "sack-store"):
        cabinet = str(EXAMPLES / f"{name}.json")
        theirs, doors = best_alternating([[haunch, cabinet], [haunch, door]], 30)
        of_piece = theirs / pieces_of(haunch, cabinet) / (doors / pieces_of(haunch, door))
        yield (f"a piece of {name}'s sheet beside one of the side door's: {theirs * 1e3:.2f} ms against {doors * 1e3:.2f} ms in all",
               of_piece, 10)


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
    some = many // 10  # of work that takes longer
    good = True
    with tempfile.TemporaryDirectory() as folder:
        one, doors, work, little = (str(Path(folder, name)) for name in ("one.json", "doors.jsonl", "work.jsonl", "little.jsonl"))
        Path(one).write_text(json.dumps(next(plain_doors(1))), encoding="utf-8")
        write_lines(doors, plain_doors(many))
        write_lines(work, other_work(some))
        write_lines(little, other_work(some // 10))
        haunch = options.haunch

        ours, base = best_alternating([[haunch, one], [options.baseline, one]], 100)
        good &= row(f"one spec, whole process: {ours * 1e3:.2f} ms against {base * 1e3:.2f} ms", ours / base, 1.3)
        for what, ratio, limit in cabinets(haunch):
            good &= row(what, ratio, limit)

        for what, batch, limit in ((f"{many} plain doors", doors, 1.2), (f"{some} of all kinds of work", work, 3)):
            phases = json.loads(output([options.phases, batch]))
            batch_seconds = seconds([haunch, batch, "--format", "json"])
            alone = phases["nlohmann_parse"] + phases["nlohmann_dump"]
            good &= row(f"{what} to JSON: {batch_seconds:.2f} s against {alone:.2f} s of nlohmann/json alone",
                        batch_seconds / alone, limit)
            good &= row(f"checks {phases['check']:.3f} s against writing {phases['write']:.3f} s",
                        phases["check"] / phases["write"], 1)
            print("      " + json.dumps({name: round(value, 3) for name, value in phases.items()}))

        script = [sys.executable, str(Path(__file__).with_name("cutlist_alone.py")), doors]
        cutlist = [haunch, "cutlist", doors, "--format", "csv"]
        if output(script) != output(cutlist):
            sys.exit("the script's cut list is another one")
        ours, alone = best_alternating([cutlist, script], 3)
        good &= row(f"{many} cut lists as CSV: {ours:.2f} s against {alone:.2f} s of a script that reckons only these",
                    ours / alone, 3)

        if os.cpu_count() > 1:
            beside, alone = best_alternating([[haunch, doors, "--format", "json", "--jobs", jobs] for jobs in "21"], 3, time_of)
            good &= row(f"two jobs side by side: {beside:.2f} s against {alone:.2f} s", beside / alone, 1 / 1.8)

        little_peak = peak_mib([haunch, little, "--format", "json"])
        peak = peak_mib([haunch, work, "--format", "json"])
        good &= row(f"{some} of all kinds of work peak at {peak:.1f} MiB, {some // 10} at {little_peak:.1f} MiB",
                    peak / little_peak, 1.2)
    sys.exit(0 if good else 1)


if __name__ == "__main__":
    main()
