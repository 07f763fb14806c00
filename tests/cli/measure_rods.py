#!/usr/bin/env python3
"""Measures drawn rods as a rule laid on them would, for every example, in one piece and on paper of each size.

In the file: the lines of class mark stand as far from each other as their places in `--format json`, to 0.01 mm; none is
left out; sheets overlap, and their crosses stand at one place. Of the report, `haunch joints`, the ends of pieces and the
mortises stand on the rods too.

With --chromium the same is measured in Debian's browser, where it is installed (else the script ends with 77): lines in
the page's own millimetres, and that no lettering lies on other lettering or reaches into the 10 mm round a sheet.

    measure_rods.py --haunch PROGRAM --examples FOLDER [--chromium]
"""

import argparse
import json
import re
import subprocess
import sys
import xml.etree.ElementTree as ElementTree
from pathlib import Path

import browser

NEAR = 0.01  # mm
FREE = 10  # mm
PAPERS = {"": None, "a4": (210, 297), "letter": (215.9, 279.4)}
SVG = "{http://www.w3.org/2000/svg}"
# Cut to length at the bench, or bought: not on a rod.
NOT_LAID_ON = {"bead", "wedge", "pin", "dowel", "loose-tenon", "spline", "button"}


def haunch(program, command, example, *arguments):
    """The week's order has its units from the shop's file."""
    shop = ["--shop", str(Path(example).parent / "shop/mill-shop.json")] if example.endswith("week.jsonl") else []
    run = subprocess.run([program, command, example, *arguments, *shop, "-q"], stdout=subprocess.PIPE, check=False)
    if run.returncode > 1:  # 1: a check fails; the rod comes all the same
        raise SystemExit(f"haunch {command} {example} ends with {run.returncode}")
    return run.stdout.decode()


class Sheet:
    """A sheet of a drawing: its words, its size, and the marks on it by the height of their lines."""

    def __init__(self, element):
        self.title = element.find(f"{SVG}title").text
        self.width, self.height = (float(element.get(key)) for key in ("width", "height"))
        self.marks = [(float(line.get("data-at-mm")), line.get("data-mark"), float(line.get("y1")))
                      for line in element.iter(f"{SVG}line") if line.get("class") == "mark"]
        self.crosses = [(float(line.get("data-at-mm")), float(line.get("y1")))
                        for line in element.iter(f"{SVG}line") if line.get("class") == "register"]
        self.span = tuple(float(element.get(key)) for key in ("data-from-mm", "data-to-mm"))
        self.proof = [float(line.get("x2")) - float(line.get("x1"))
                      for line in element.iter(f"{SVG}line") if line.get("data-length-mm")]


def check_scale(sheet, marks):
    """All lines of a sheet stand by one zero."""
    zeros = [at + y for at, y in marks]
    if zeros and max(zeros) - min(zeros) > NEAR:
        yield f"{sheet}: marks are {max(zeros) - min(zeros)} off each other"


def mark_words(rod, mark, pieces):
    """What a drawing's data-mark has at least: every piece and what it is."""
    return [(name["what"], piece) for name in mark["names"] for piece in name["pieces"]]


def check_rod(rod, sheets, paper):
    where = sheets[0].title
    places = [mark["at"] for mark in rod["marks"]]
    drawn = sorted({at for sheet in sheets for at, _, _ in sheet.marks})
    if len(places) != len(drawn) or any(abs(a - b) > NEAR for a, b in zip(places, drawn)):
        yield f"{where}: the drawing's marks are not those of the JSON"
    words = {at: mark for sheet in sheets for at, mark, _ in sheet.marks}
    for mark in rod["marks"]:
        text = words.get(min(drawn, key=lambda at: abs(at - mark["at"])), "")
        for what, piece in mark_words(rod, mark, text):
            if what not in text or not re.search(rf"\b{piece}\b", text):
                yield f"{where}: {what} of {piece} is not told at {mark['at']}"
    for sheet in sheets:
        yield from check_scale(sheet.title, [(at, y) for at, _, y in sheet.marks] + sheet.crosses)
        if sheet.proof != [100]:
            yield f"{sheet.title}: the line to prove the printer is {sheet.proof}"
        if paper and (sheet.width, sheet.height) != paper:
            yield f"{sheet.title}: is no sheet of that paper"
    for sheet, after in zip(sheets, sheets[1:]):
        if sheet.span[1] - after.span[0] < 20 - NEAR:
            yield f"{after.title}: does not overlap the one before"
        if not {at for at, _ in sheet.crosses} & {at for at, _ in after.crosses}:
            yield f"{after.title}: has no cross of the one before"


def parse_drawing(text):
    root = ElementTree.fromstring(text)
    width, height = root.get("width"), root.get("height")
    if root.get("viewBox") != f"0 0 {width.removesuffix('mm')} {height.removesuffix('mm')}":
        raise SystemExit("a user unit is no millimetre")
    return [Sheet(element) for element in root.findall(f"{SVG}svg")]


def sheets_by_rod(rods, sheets):
    """The sheets of each rod, which come in the rods' order."""
    names = [f"{rod['item']}{', ' + rod['of'] if 'of' in rod else ''}: {rod['direction']} rod" for rod in rods]
    return [[sheet for sheet in sheets if re.sub(r", sheet \d+ of \d+$", "", sheet.title) == name] for name in names]


def report_places(item, axis):
    """Where the report has ends of pieces and mortises along an axis of the assembly: (place, mark of the piece)."""
    number = "xyz".index(axis)
    parts = {part["mark"]: part for part in item["parts"] if part["role"] not in NOT_LAID_ON}
    for part in parts.values():
        own = [a.lstrip("-") for a in part["at"]["axes"]].index(axis)
        size = (part["length"], part["width"], part["thickness"])[own]
        low = part["at"]["origin"][number] - (size if part["at"]["axes"][own].startswith("-") else 0)
        yield low, part["mark"]
        yield low + size, part["mark"]
    for joint in item["joints"]:
        part = parts.get(joint["receives"])
        if part is None or "mortise" not in joint["kind"] + "mortise" or "from_foot" not in joint.get("mortise", {}):
            continue
        if joint["kind"] not in ("mortise-and-tenon", "through-tenon", "twin-tenon") or part["at"]["axes"][0] != axis:
            continue
        for span in joint["mortise"].get("each", [joint["mortise"]]):
            begins = part["at"]["origin"][number] + span["from_foot"]
            yield begins, part["mark"]
            yield begins + span["length"], part["mark"]


def marks_of(rod, piece):
    return [mark["at"] for mark in rod["marks"] if any(piece in name["pieces"] for name in mark["names"])]


def missing(rod, places, zero):
    """Of the report's places those that a rod has not, whose zero stands there in the report."""
    return [(place, piece) for place, piece in places if not any(abs(at + zero - place) <= NEAR for at in marks_of(rod, piece))]


def check_report(item, rods):
    for rod in rods:
        if rod["item"] != item["id"]:
            continue
        places = list(report_places(item, {"height": "y", "width": "x", "depth": "z"}[rod["direction"]]))
        zeros = [0]
        if item["kind"] == "run":  # of its pieces on each rod some, from a zero of its own
            laid = {piece for strip in rod["strips"] for piece in strip["pieces"]}
            places = [(place, piece) for place, piece in places if piece in laid]
            zeros = {round(places[0][0] - at, 6) for at in marks_of(rod, places[0][1])}
        for place, piece in min((missing(rod, places, zero) for zero in zeros), key=len):
            yield f"{item['id']}: the report has {piece} at {place}, the {rod.get('of', '')} {rod['direction']} rod has not"


def measured_in_file(program, example):
    rods = json.loads(haunch(program, "rod", example, "--format", "json", "--units", "mm"))["rods"]
    report = json.loads(haunch(program, "joints", example, "--format", "json", "--units", "mm"))
    for item in report["items"]:
        yield from check_report(item, rods)
    for name, paper in PAPERS.items():
        sheets = parse_drawing(drawing(program, example, name))
        for rod, its in zip(rods, sheets_by_rod(rods, sheets)):
            yield from check_rod(rod, its, paper)


def drawing(program, example, paper):
    return haunch(program, "rod", example, "--format", "svg", *(["--paper", paper] if paper else []))


MORE = """
    marks: [...sheet.querySelectorAll('line.mark')].map(e => {
      const m = e.getScreenCTM(); return [+e.dataset.atMm, (m.d * e.y1.baseVal.value + m.f - frame.top) * mm]; }),
    proof: [...sheet.querySelectorAll('[data-length-mm]')].map(e => {
      const b = e.getBoundingClientRect(); return b.width * mm; })"""


def measured_in_chromium(program, chromium, examples):
    for name in PAPERS:
        drawings = [drawing(program, example, name) for example in examples]
        for sheet in browser.measured(chromium, browser.page_of(drawings, browser.sheets_script(MORE))):
            yield from check_scale(sheet["title"], sheet["marks"])
            yield from browser.faults_of_lettering(sheet, FREE, NEAR)
            if any(abs(length - 100) > NEAR for length in sheet["proof"]):
                yield f"{sheet['title']}: the line of 100 mm is {sheet['proof']}"


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--haunch", required=True)
    parser.add_argument("--examples", required=True)
    parser.add_argument("--chromium", action="store_true")
    options = parser.parse_args()
    examples = sorted(str(path) for path in Path(options.examples).glob("*.json*"))
    if not options.chromium:
        faults = [fault for example in examples for fault in measured_in_file(options.haunch, example)]
    else:
        faults = list(measured_in_chromium(options.haunch, browser.found(), examples))
    print("\n".join(faults[:40]))
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
