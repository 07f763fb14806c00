#!/usr/bin/env python3
"""Measures sheets of drawings as a browser shows them, for every example and for words that are hard to fit.

No two texts of a sheet lie on each other, none comes out of its sheet's frame, and nothing that is drawn does. Letters are
measured in each of the usual plain faces that are installed, all sheets in one run of the browser. Needs Debian's chromium, else the script ends with 77.

    measure_drawings.py --haunch PROGRAM --examples FOLDER
"""

import json
import subprocess
import sys
import tempfile
from pathlib import Path

import browser

NEAR = 0.1  # mm
FACES = ["sans-serif", "DejaVu Sans", "Liberation Sans"]
HARD = [
    {"kind": "door", "id": "island-drawer-bank-number-twelve-of-the-old-mill", "units": "mm", "opening": {"width": 500, "height": 400},
     "name": "Küchentür «Mühle» <b>&\"'</b> дверь мельницы 戸棚の扉 דלת הטחנה with a name that goes on for some while"},
    {"kind": "door", "id": "WWWWMMMM" * 12, "name": "WWWWMMMM" * 20, "units": "in", "opening": {"width": "19 5/32", "height": "31 7/64"}},
    {"kind": "door", "id": "six-panels-across", "units": "mm", "opening": {"width": 1800, "height": 2600}, "leaves": 2, "panels": {"across": 3}},
    {"kind": "cabinet", "id": "deep-drawers", "units": "mm", "size": {"width": 2400, "height": 2300, "depth": 600}, "case": {"thickness": 18},
     "layout": {"columns": [{"rows": [{"front": "drawer"}, {"front": "door"}]}, {"rows": [{"front": "drawer"}] * 3}, {}]}},
]

MEASURE = """
const mm = 25.4 / 96, all = [];
const corners = (e) => { const b = e.getBBox(), m = e.getScreenCTM();
  const at = [[b.x, b.y], [b.x + b.width, b.y + b.height]].map(([x, y]) => [(m.a * x + m.c * y + m.e) * mm, (m.b * x + m.d * y + m.f) * mm]);
  return [Math.min(at[0][0], at[1][0]), Math.min(at[0][1], at[1][1]), Math.max(at[0][0], at[1][0]), Math.max(at[0][1], at[1][1])]; };
for (const sheet of document.querySelectorAll('svg.sheet')) {
  const texts = [...sheet.querySelectorAll('text')].map(e => ({words: e.textContent, upright: e.parentNode.getAttribute('class') == 'upright', box: corners(e),
    size: parseFloat(getComputedStyle(e).fontSize)}));
  const frame = corners(sheet.querySelector('.frame path'));
  const out = [...sheet.querySelectorAll('path, line')].filter(e => { const b = corners(e);
    return b[0] < frame[0] - 0.1 || b[1] < frame[1] - 0.1 || b[2] > frame[2] + 0.1 || b[3] > frame[3] + 0.1; });
  all.push({id: sheet.id, face: sheet.closest("[data-face]").dataset.face, texts, frame, out: out.map(e => e.parentNode.getAttribute('class'))});
}
""" + browser.LEAVE


def haunch(program, *arguments):
    run = subprocess.run([program, *arguments, "-q"], stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
    if run.returncode > 1:  # 1: a check fails; it is drawn all the same
        raise SystemExit(f"haunch {' '.join(arguments)} ends with {run.returncode}: {run.stderr.decode()}")
    return run.stdout.decode()


def ink(text):
    """The box of what is printed: a line of type has free room above its letters and below them."""
    left, top, right, bottom = text["box"]
    size = text["size"]
    above, below = (bottom - top if not text["upright"] else right - left) - 0.95 * size, 0.2 * size
    return (left + above, top, right - below, bottom) if text["upright"] else (left, top + above, right, bottom - below)


def faults_of(sheet):
    left, top, right, bottom = sheet["frame"]
    boxes = [(text["words"], ink(text)) for text in sheet["texts"]]
    for number, (words, box) in enumerate(boxes):
        if box[0] < left or box[1] < top or box[2] > right or box[3] > bottom:
            yield f'{sheet["id"]}: "{words}" comes out of the frame'
        for other, its in boxes[number + 1:]:
            if browser.lie_on_each_other(box, its, NEAR):
                yield f'{sheet["id"]}: "{words}" and "{other}" lie on each other'
    for kind in sheet["out"]:
        yield f'{sheet["id"]}: a line of "{kind}" comes out of the frame'


def main():
    options = browser.asked()
    chromium = browser.found()
    examples = sorted(str(path) for path in Path(options.examples).glob("*.json"))
    with tempfile.TemporaryDirectory() as folder:
        hard = Path(folder, "hard.json")
        hard.write_text(json.dumps(HARD), "utf-8")
        drawings = [haunch(options.haunch, "draw", *examples), haunch(options.haunch, "draw", str(hard)),
                    haunch(options.haunch, "draw", *examples[:6], "--units", "in", "--paper", "letter")]
    in_faces = [drawing.replace('font-family="sans-serif"', f'font-family="{face}" data-face="{face}"') for face in FACES for drawing in drawings]
    sheets = browser.measured(chromium, browser.page_of(in_faces, MEASURE))
    faults = set(f"{sheet['face']}: {fault}" for sheet in sheets for fault in faults_of(sheet))
    if len(sheets) < len(FACES) * len(examples):
        faults.add("there are fewer sheets than examples")
    print("\n".join(sorted(faults)[:60]))
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
