#!/usr/bin/env python3
"""Measures sheets of stickers as a browser shows and prints them, for every example and for words that are hard to fit.

On each sticker no line lies on another or on the drawing, and nothing comes out at its sides; the stickers of a sheet stand
side by side on its paper; pieces told on stickers are those of the cut list; a printed page holds one sheet. Letters are
measured in each of the usual plain faces that are installed. Needs Debian's chromium, else the script ends with 77.

    measure_labels.py --haunch PROGRAM --examples FOLDER
"""

import json
import subprocess
import sys
import tempfile
from pathlib import Path

import browser

NEAR = 0.4  # mm: type is set to whole pixels
FACES = ['Arial, "Liberation Sans", "DejaVu Sans", sans-serif', '"DejaVu Sans"', '"Liberation Sans"']
SHEETS = [
    ["--sticker", "70x36"],
    ["--sticker", "38.1x21.2", "--gap", "2.5x0", "--margin", "4x10"],
    ["--paper", "letter", "--sticker", "2 5/8 x 1 in", "--gap", "1/8x0 in", "--margin", "1/8x1/2 in"],
]
HARD = [
    {"kind": "door", "id": "island-drawer-bank-number-twelve", "units": "mm", "quantity": 30, "opening": {"width": 500, "height": 400},
     "name": "Küchentür «Mühle» <b>&\"'</b> дверь мельницы 戸棚の扉 with a name that goes on for some while, over several lines",
     "species": "an oak that has a name of its own, sawn on the quarter"},
    {"kind": "door", "id": "WWWWMMMMWWWW", "name": "WWWWMMMM" * 8, "units": "mm", "opening": {"width": 500, "height": 400}},
]

MEASURE = """
const mm = 25.4 / 96;
const box = (r) => [r.left, r.top, r.right, r.bottom].map(v => v * mm);
const inked = (e) => { const range = document.createRange(); range.selectNodeContents(e); return range.getBoundingClientRect(); };
const all = [...document.querySelectorAll('.sheet')].map(sheet => ({sheet: box(sheet.getBoundingClientRect()),
  stickers: [...sheet.querySelectorAll('.sticker')].map(s => ({box: box(s.getBoundingClientRect()), pieces: +s.dataset.pieces,
    held: [...s.querySelectorAll('p, b')].map(e => [e.textContent, ...box(inked(e))])
      .concat([...s.querySelectorAll('svg')].map(e => ['the drawing', ...box(e.getBoundingClientRect())]))}))}));
""" + browser.LEAVE


def measured(chromium, text, face):
    text = text.replace(FACES[0], face).replace("</body>", f"<script>{MEASURE}</script></body>")
    return browser.measured(chromium, text)


def lie_on_each_other(a, b):
    """Lines of type may reach into each other's leading, not into each other's letters."""
    return browser.lie_on_each_other(a, b, NEAR)


def faults_of(sheets):
    for sheet in sheets:
        stickers = sheet["stickers"]
        for number, sticker in enumerate(stickers):
            left, top, right, bottom = sticker["box"]
            if left < sheet["sheet"][0] - NEAR or right > sheet["sheet"][2] + NEAR or bottom > sheet["sheet"][3] + NEAR:
                yield "a sticker reaches over the paper's edge"
            if any(lie_on_each_other(sticker["box"], other["box"]) for other in stickers[number + 1:]):
                yield "two stickers lie on each other"
            held = sticker["held"]
            for i, (words, *its) in enumerate(held):
                if its[0] < left + 2 - NEAR or its[2] > right - 2 + NEAR or its[1] < top + 2 - NEAR or its[3] > bottom - 2 + NEAR:
                    yield f'"{words}" comes out of the 2 mm that are to be free round a sticker'
                for other, *others in held[i + 1:]:
                    if lie_on_each_other(its, others):
                        yield f'"{words}" and "{other}" lie on each other'


def haunch(program, *arguments):
    run = subprocess.run([program, *arguments, "-q"], stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
    if run.returncode > 1:  # 1: a check fails; the labels come all the same
        raise SystemExit(f"haunch {' '.join(arguments)} ends with {run.returncode}: {run.stderr.decode()}")
    return run.stdout.decode()


def pieces_cut(program, specs):
    report = json.loads(haunch(program, "cutlist", *specs, "--format", "json"))
    return sum(row["quantity"] for item in report["items"] for row in item["cutlist"])


def check(program, chromium, specs, sheet):
    text = haunch(program, "labels", *specs, "--format", "html", "--order", "week 12", *sheet)
    for face in FACES:
        sheets = measured(chromium, text, face)
        for fault in faults_of(sheets):
            yield f"{' '.join(sheet)}, {face}: {fault}"
        told = sum(sticker["pieces"] for each in sheets for sticker in each["stickers"])
        if told != pieces_cut(program, specs):
            yield f"{' '.join(sheet)}: {told} pieces are told of {pieces_cut(program, specs)}"
    if browser.printed_pages(chromium, text) != len(sheets):
        yield f"{' '.join(sheet)}: {browser.printed_pages(chromium, text)} pages are printed of {len(sheets)} sheets"


def main():
    options = browser.asked()
    chromium = browser.found()
    faults = []
    with tempfile.TemporaryDirectory() as folder:
        hard = Path(folder, "hard.json")
        hard.write_text(json.dumps(HARD), "utf-8")
        examples = sorted(str(path) for path in Path(options.examples).glob("*.json"))
        for sheet in SHEETS:
            faults += check(options.haunch, chromium, examples, sheet)
        faults += check(options.haunch, chromium, [str(hard)], SHEETS[0])
    print("\n".join(faults[:40]))
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
