#!/usr/bin/env python3
"""Measures drawn boards as a browser shows and prints them, for plans of every third example and for parts that are hard to
letter. All examples in one plan would take a minute, twice.

On each sheet no lettering lies on other lettering or reaches into the 10 mm round it, each board is as long as its
scale says, each part of the plan is drawn once, and a printed page holds one sheet. Needs Debian's chromium, else the
script ends with 77.

    measure_boards.py --haunch PROGRAM --examples FOLDER
"""

import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import browser

NEAR = 0.05  # mm
FREE = 10  # mm
PAPERS = {"a4": (297, 210), "letter": (279.4, 215.9)}
SPECIES = ["European oak", "European beech", "European ash", "European cherry", "white oak", "birch plywood"]
BOARDS = [(2650, 270, 54), (4200, 280, 54), (3000, 200, 40), (3600, 200, 27), (2400, 180, 20)]
SHEETS = [6, 9, 12, 18, 22]
SAWING = {"units": "mm", "kerf": 3.2, "trim": {"end": 20, "edge": 4}, "least_offcut": {"length": 400, "width": 60},
          "glue_up": {"limit": 150, "jointing": 3}}
# Of parts that are hard to letter: (name, length, width, how many).
HARD = [("the island's long bank of drawers, <b>flour</b> & \"scoops\" дверь мельницы 戸棚の扉", 620, 90, 3),
        ("שלום/A", 420, 40, 4), ("strip", 1900, 12, 8), ("peg", 20, 20, 60), ("WWWWMMMM" * 9, 900, 60, 2)]


def yard():
    """A rack and a yard with something of every wood."""
    stock = []
    for species in SPECIES:
        for length, width, thickness in BOARDS:
            stock.append({"id": f"{species} {thickness}, {length}", "length": length, "width": width, "species": species,
                          "thickness": thickness, "price": 60, "per": "board"})
        stock[-1] |= {"defects": [[700, 780], [1500, 1530]]}
        stock += [{"id": f"{species} sheet {thickness}", "kind": "sheet", "length": 2440, "width": 1220, "price": 50,
                   "thickness": thickness, "per": "board", "species": species} for thickness in SHEETS]
    return {**SAWING, "stock": stock}


def hard_parts():
    rows = ["name,length_mm,width_mm,thickness_mm,quantity,material,rough"]
    for name, length, width, quantity in HARD:
        rows.append(f'"{name.replace(chr(34), chr(34) * 2)}",{length},{width},20,{quantity},European oak,true')
    return "\n".join(rows) + "\n"


def haunch(program, *arguments):
    run = subprocess.run([program, "lumber", *arguments, "-q"], stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
    if run.returncode > 1:  # 1: some part found no place; the rest is drawn all the same
        raise SystemExit(f"haunch lumber {' '.join(arguments)} ends with {run.returncode}: {run.stderr.decode()}")
    return run.stdout.decode()


MORE = """
    boards: [...sheet.querySelectorAll('g.board')].map(g => [+g.dataset.scale,
      g.querySelector('rect.whole').getBoundingClientRect().width * mm, +g.querySelector('rect.whole').dataset.lengthMm]),
    parts: [...sheet.querySelectorAll('rect.part')].map(e => +e.dataset.boards)"""


def check(program, chromium, words, paper):
    text = haunch(program, *words, "--format", "svg", "--paper", paper)
    plan = json.loads(haunch(program, *words, "--format", "json"))["plan"]
    sheets = browser.measured(chromium, browser.page_of([text], browser.sheets_script(MORE)))
    drawn = 0
    for sheet in sheets:
        yield from browser.faults_of_lettering(sheet, FREE, NEAR)
        if any(abs(a - b) > NEAR for a, b in zip(sheet["paper"], PAPERS[paper])):
            yield f"{sheet['title']}: is no sheet of {paper}"
        for scale, width, length in sheet["boards"]:
            if abs(width * scale - length) > NEAR * scale:
                yield f"{sheet['title']}: a board of {length} is {width} at 1 : {scale}"
        drawn += sum(sheet["parts"])
    wanted = sum(len(board["cuts"]) for board in plan["boards"])
    if drawn != wanted:
        yield f"{drawn} parts are drawn of {wanted}"
    pages = browser.printed_pages(chromium, browser.page_of([text], ""))
    if pages != len(sheets):
        yield f"{pages} pages are printed of {len(sheets)} sheets"


def main():
    options = browser.asked()
    chromium = browser.found()
    faults = []
    with tempfile.TemporaryDirectory() as folder:
        stock, hard = Path(folder, "stock.json"), Path(folder, "hard.csv")
        stock.write_text(json.dumps(yard()), "utf-8")
        hard.write_text(hard_parts(), "utf-8")
        examples = sorted(str(path) for path in Path(options.examples).glob("*.json"))
        for paper, words in [("a4", examples[::5]), ("letter", examples[1::8]), ("a4", ["--parts", str(hard)])]:
            faults += [f"{paper}: {fault}"
                       for fault in check(options.haunch, chromium, [*words, "--stock", str(stock)], paper)]
    print("\n".join(faults[:40]))
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
