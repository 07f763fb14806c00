#!/usr/bin/env python3
"""Fails when a command, an option, a value of an option or an example of `haunch --help` stands in no case.

    every_option_is_tested.py --haunch PROGRAM CASE…
"""

import argparse
import re
import subprocess
import sys
from pathlib import Path

from run_cases import parse_case


def wanted_words(text):
    """What the help promises: (words to be found side by side, how the help writes them)."""
    wanted = [(command.split(), command) for command in re.findall(r"^  (haunch .*?)(?:  .*)?$", text, flags=re.M)]
    commands = text.split("\nCommands\n")[1].split("\n\n")[0]
    wanted += [(["haunch", name], f"haunch {name}") for name in re.findall(r"^  (\w+) ", commands, flags=re.M)]
    for row in re.findall(r"^  (-.*)$", text.split("\nOptions\n")[1], flags=re.M):
        written = row.split("  ")[0]
        names = re.findall(r"--?[a-z]+", written)
        wanted += [([name], name) for name in names]
        for value in re.findall(r"[a-z]+(?:\|[a-z]+)+", written):
            wanted += [([names[-1], word], f"{names[-1]} {word}") for word in value.split("|")]
    return wanted


def words_of(command):
    return re.findall(r"[^\s=|;()<>]+", command)


def stands_in(words, command):
    found = words_of(command)
    return any(found[i : i + len(words)] == words for i in range(len(found)))


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--haunch", required=True)
    parser.add_argument("cases", nargs="+")
    options = parser.parse_args()
    text = subprocess.run([options.haunch, "--help"], check=True, stdout=subprocess.PIPE).stdout.decode()
    commands = [run.command for case in options.cases for run in parse_case(Path(case).read_text(encoding="utf-8"))[1]]
    wanted = wanted_words(text)
    missing = [written for words, written in wanted if not any(stands_in(words, command) for command in commands)]
    for written in missing:
        print(f"in no case: {written}")
    print(f"{len(wanted) - len(missing)} of {len(wanted)} stand in a case")
    sys.exit(1 if missing or not wanted else 0)


if __name__ == "__main__":
    main()
