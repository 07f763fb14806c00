#!/usr/bin/env python3
"""Runs command lines and compares what they print, from two kinds of text.

A case file (*.case) tells one story:

    # What it shows, for the reader.
    --- file door.json
    {"kind": "door"}
    --- run haunch check door.json
    --- exit 2
    --- out
    --- err
    door.json:1:1: error: …

Files are made in a fresh folder, which also holds the examples; in it every run is a bash command line. A run without
an `out` or `err` prints none. Lines that begin with `# ` right under a run are notes on it. MOST_MEMORY, for
`ulimit -v`, is 256 MiB in kilobytes; for a build with sanitizers set it to `unlimited`.

In a Markdown page every ```console block is run in a folder that holds the examples: `$ ` begins a command, what
follows is its output, both streams together; a line `...` stands for any number of lines.

What a run of haunch alone prints as JSON must keep to the published schema, and what it prints as CSV must have as many
fields in every row as in its header. Stock files that are taken, and those that are written, keep to theirs.

    run_cases.py --haunch PROGRAM --examples FOLDER [--accept] FILE…
"""

import argparse
import csv
import io
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

try:
    import jsonschema
except ImportError:  # the schema is then checked where the package is, in CI
    jsonschema = None


class Run:
    def __init__(self, command):
        self.command = command
        self.notes = []
        self.exit = 0
        self.out = []
        self.err = []


def sections(text):
    """The (head, lines) of every `--- ` section of a case."""
    found = []
    for line in text.splitlines():
        if line.startswith("--- "):
            found.append((line[4:].strip(), []))
        elif found:
            found[-1][1].append(line)
    return found


def parse_case(text):
    if not text.startswith("# "):
        raise SystemExit("a case begins with its story, in lines that begin with '# '")
    files, runs = {}, []
    for head, lines in sections(text):
        word, _, rest = head.partition(" ")
        if word == "file" and not runs:
            files[rest] = "\n".join(lines) + "\n"
        elif word == "run":
            runs.append(Run(rest))
            runs[-1].notes = lines
        elif word == "exit":
            runs[-1].exit = int(rest)
        elif word in ("out", "err"):
            setattr(runs[-1], word, lines)
        else:
            raise SystemExit(f"unknown section, or a file after a run: {head}")
    return files, runs


class Bench:
    """Where commands run: a fresh folder, with the program on the path."""

    def __init__(self, haunch, schemas):
        self.haunch = haunch
        self.schemas = schemas

    def run(self, command, folder, merged=False):
        env = {"PATH": f"{Path(self.haunch).parent}:/usr/bin:/bin", "HOME": folder, "LC_ALL": "C.UTF-8",
               "MOST_MEMORY": os.environ.get("MOST_MEMORY", "262144")}
        done = subprocess.run(["bash", "-o", "pipefail", "-c", command], cwd=folder, env=env, stdin=subprocess.DEVNULL,
                              stdout=subprocess.PIPE, stderr=subprocess.STDOUT if merged else subprocess.PIPE, timeout=120)
        out = done.stdout.decode("utf-8", "replace")
        return done.returncode, out, "" if merged else done.stderr.decode("utf-8", "replace")

    def against(self, which, text):
        if which not in self.schemas:
            return []
        try:
            errors = [e.message[:200] for e in self.schemas[which].iter_errors(json.loads(text))]
        except ValueError as fault:
            errors = [str(fault)]
        return [f"not by the schema of {which}: {e}" for e in errors[:3]]

    def faults_of_shop(self, command, folder):
        """Of shop files that were taken."""
        names = re.findall(r"--shop (\S+\.json)", command)
        files = [Path(folder, name) for name in names if Path(folder, name).is_file()]
        return [fault for file in files for fault in self.against("shop", file.read_text(encoding="utf-8-sig"))]

    def faults_of_stock(self, command, folder):
        """Of stock files in JSON that were taken, and of those that were written."""
        names = re.findall(r"--(?:stock|leftover) (\S+\.json)", command)
        files = [Path(folder, name) for name in names if Path(folder, name).is_file()]
        return [fault for file in files for fault in self.against("stock", file.read_text(encoding="utf-8"))]

    def faults_of_form(self, command, out):
        if not out or not re.fullmatch(r"haunch [^|;&]*", command):
            return []
        format = re.match(r'\{"format": "haunch-(\w+)-1"', out)
        if format:
            return self.against(format[1], out)
        if "--format csv" in command:
            rows = list(csv.reader(io.StringIO(out), delimiter=";" if "--csv semicolon" in command else ","))
            if any(len(row) != len(rows[0]) for row in rows):
                return ["a CSV row has another number of fields than the header"]
        return []


def validators(haunch):
    found = {}
    for which in ("shop", "report", "lumber", "labels", "explain", "stock", "trial", "rod", "species", "moisture", "settings") if jsonschema else ():
        text = subprocess.run([haunch, "schema", which], check=True, stdout=subprocess.PIPE).stdout
        schema = json.loads(text)
        jsonschema.Draft202012Validator.check_schema(schema)
        found[which] = jsonschema.Draft202012Validator(schema)
    return found


def difference(name, wanted, got):
    if wanted == got:
        return []
    for i in range(max(len(wanted), len(got))):
        a = wanted[i] if i < len(wanted) else "(nothing)"
        b = got[i] if i < len(got) else "(nothing)"
        if a != b:
            return [f"{name}, line {i + 1}: wanted {a!r}", f"{name}, line {i + 1}:    got {b!r}"]
    return []


def run_case(path, bench, examples, accept):
    text = path.read_text(encoding="utf-8")
    files, runs = parse_case(text)
    faults = []
    with tempfile.TemporaryDirectory() as folder:
        shutil.copytree(examples, Path(folder, "examples"))
        for name, content in files.items():
            Path(folder, name).parent.mkdir(parents=True, exist_ok=True)
            Path(folder, name).write_text(content, encoding="utf-8")
        for run in runs:
            status, out, err = bench.run(run.command, folder)
            if accept:
                run.exit, run.out, run.err = status, out.splitlines(), err.splitlines()
            found = difference("out", run.out, out.splitlines()) + difference("err", run.err, err.splitlines())
            if status != run.exit:
                found.append(f"exit: wanted {run.exit}, got {status}")
            found += bench.faults_of_form(run.command, out)
            if status in (0, 1) and not err:
                found += bench.faults_of_stock(run.command, folder) + bench.faults_of_shop(run.command, folder)
            faults += [f"{run.command}\n    {fault}" for fault in found]
    if accept:
        path.write_text(written_case(text, runs), encoding="utf-8")
    return len(runs), faults


def written_case(text, runs):
    """The case with what its runs printed."""
    head = re.split(r"^--- run ", text, maxsplit=1, flags=re.M)[0]
    parts = [head.rstrip("\n")]
    for run in runs:
        parts += [f"--- run {run.command}", *run.notes, f"--- exit {run.exit}"]
        for name, lines in (("out", run.out), ("err", run.err)):
            if lines:
                parts += [f"--- {name}"] + lines
    return "\n".join(parts) + "\n"


def console_blocks(text):
    return re.findall(r"^```console\n(.*?)^```", text, flags=re.M | re.S)


def matches(wanted, got):
    """Whether lines match, `...` standing for any number of them."""
    pattern = "\n".join(r"(?:.*\n)*?.*" if line == "..." else re.escape(line) for line in wanted)
    return re.fullmatch(pattern, "\n".join(got)) is not None


def run_page(path, bench, examples, accept):
    faults, count = [], 0
    text = path.read_text(encoding="utf-8")
    with tempfile.TemporaryDirectory() as folder:
        shutil.copytree(examples, folder, dirs_exist_ok=True)
        for block in console_blocks(text):
            new_block = ""
            for step in re.split(r"^\$ ", block, flags=re.M)[1:]:
                command, _, wanted = step.partition("\n")
                _, out, _ = bench.run(command, folder, merged=True)
                count += 1
                keeps = matches(wanted.splitlines(), out.splitlines())
                if not keeps and not accept:
                    faults.append(f"{command}\n    prints otherwise than {path.name} says:\n" + out[:2000])
                new_block += f"$ {command}\n" + (wanted if keeps else out)
                faults += [f"{command}\n    {fault}" for fault in bench.faults_of_form(command, out)]
            if accept:
                text = text.replace(block, new_block)
    if accept:
        path.write_text(text, encoding="utf-8")
    return count, faults


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--haunch", required=True)
    parser.add_argument("--examples", required=True)
    parser.add_argument("--accept", action="store_true", help="write what is printed into the files; then read the change")
    parser.add_argument("files", nargs="+")
    options = parser.parse_args()
    haunch = os.path.abspath(options.haunch)
    bench = Bench(haunch, validators(haunch))
    passed = failed = 0
    for path in map(Path, options.files):
        run = run_page if path.suffix == ".md" else run_case
        count, faults = run(path, bench, options.examples, options.accept)
        for fault in faults:
            print(f"{path}: {fault}")
        failed += min(len(faults), 1)
        passed += count if not faults else 0
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
