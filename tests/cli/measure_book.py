#!/usr/bin/env python3
"""Measures books as a browser shows them on a phone, a tablet and a desk, and as it prints them.

No page is wider than its screen but for tables and drawings, which move in boxes of their own; lettering in drawings is large enough
to read, and their frames are whole; no words lie on others or are cut off; letters contrast with what is behind them; headings go
down a level at a time; every link leads somewhere; a user's words stay words. On paper every page has its number, and nothing
reaches over an edge. Needs Debian's chromium, else the script ends with 77; without pdftotext the printed pages are not read.

    measure_book.py --haunch PROGRAM --examples FOLDER
"""

import html
import json
import re
import shutil
import subprocess
import sys
import tempfile
from html.parser import HTMLParser
from pathlib import Path

import browser

WIDTHS = [360, 800, 1200]
LEAST_CONTRAST = 4.5  # to 1
READABLE = 10  # pixels, lettering in drawings
MOST_LINES = 7  # of a row of a table on a phone
HOSTILE = '<script>alert(1)</script> "x" & \'y\' שלום 12'
HARD = {"kind": "door", "id": "a b<i>'\"", "name": HOSTILE, "note": HOSTILE, "units": "mm", "quantity": 2,
        "species": "<b>oak</b> & ash", "opening": {"width": 500, "height": 400}}

MEASURE = """
const near = 1.5;  // pixels
function rgba(text) { const n = text.match(/[\\d.]+/g).map(Number); return n.length == 3 ? [...n, 1] : n; }
function light(c) { const f = c.slice(0, 3).map(v => (v /= 255) <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
  return 0.2126 * f[0] + 0.7152 * f[1] + 0.0722 * f[2]; }
function contrast(a, b) { const [x, y] = [light(a), light(b)]; return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05); }
function behind(e, w) { for (; e; e = e.parentElement) { const c = rgba(w.getComputedStyle(e).backgroundColor); if (c[3] > 0) return c; }
  return [255, 255, 255, 1]; }
function faults_of(d, w, width) {
  const faults = [], boxes = [], seen = new Map();
  if (d.documentElement.scrollWidth > width) faults.push(`the page is ${d.documentElement.scrollWidth} wide`);
  const walk = d.createTreeWalker(d.body, 4);
  for (let node; node = walk.nextNode();) {
    if (!node.data.trim()) continue;
    const e = node.parentElement, style = w.getComputedStyle(e), drawn = e.closest('svg');
    if (e.closest('title, desc, style') || style.display == 'none') continue;
    const range = d.createRange(); range.selectNodeContents(node);
    const clip = e.closest('figure > div'), bound = clip && clip.getBoundingClientRect(), scrolls = e.closest('.table');
    if (clip && scrolls) faults.push('a table in a figure');
    if (drawn && parseFloat(style.fontSize) * drawn.getScreenCTM().a < READABLE) faults.push(`"${node.data}" is too small to read`);
    const right = bound ? bound.right : scrolls ? scrolls.getBoundingClientRect().left + scrolls.scrollWidth : width;
    for (const r of range.getClientRects()) {
      if (r.left < -near || r.right > right + near || (bound && (r.top < bound.top - near || r.bottom > bound.bottom + near)))
        faults.push(`"${node.data}" is cut off`);
      if (!drawn) boxes.push([r.left, r.top, r.right, r.bottom, node.data]);
    }
    const ink = rgba(drawn ? style.fill : style.color), paper = drawn ? [255, 255, 255, 1] : behind(e, w);
    const key = ink + '/' + paper;
    if (!seen.has(key)) seen.set(key, contrast(ink, paper));
    if (seen.get(key) < LEAST) faults.push(`"${node.data}" contrasts at ${seen.get(key).toFixed(2)} to 1`);
  }
  boxes.sort((a, b) => a[1] - b[1]);
  boxes.forEach((a, i) => { for (let j = i + 1; j < boxes.length && boxes[j][1] < a[3] - near; ++j) { const b = boxes[j];
    if (Math.min(a[2], b[2]) - Math.max(a[0], b[0]) > near && Math.min(a[3], b[3]) - b[1] > near)
      faults.push(`"${a[4]}" and "${b[4]}" lie on each other`); } });
  for (const line of d.querySelectorAll('figure.sheet path')) {
    const r = line.getBoundingClientRect(), b = line.closest('div').getBoundingClientRect();
    const half = parseFloat(w.getComputedStyle(line).strokeWidth) / 2 * line.ownerSVGElement.getScreenCTM().a - 0.1;
    if (r.left - half < b.left || r.top - half < b.top || r.right + half > b.right || r.bottom + half > b.bottom)
      faults.push('lines of a sheet are cut off');
  }
  if (width < 600) for (const row of d.querySelectorAll('.table tr')) if (row.getBoundingClientRect().height > MOST_LINES * 22)
    faults.push(`the row of "${row.cells[0].textContent}" is ${row.getBoundingClientRect().height} tall`);
  for (const svg of d.querySelectorAll('svg')) if (!svg.querySelector(':scope > title')) faults.push('a drawing has no title');
  return faults;
}
function words_of(d) { return [...d.querySelectorAll('h1, h2, .contents li')].map(e => e.textContent); }
onload = () => {
  const all = {faults: [], words: []};
  for (const frame of document.querySelectorAll('iframe')) {
    const width = +frame.dataset.width;
    for (const fault of faults_of(frame.contentDocument, frame.contentWindow, width)) all.faults.push(`${width} pixels: ${fault}`);
    all.words = words_of(frame.contentDocument);
  }
  LEAVE
};
""".replace("LEAST", str(LEAST_CONTRAST)).replace("READABLE", str(READABLE)).replace("MOST_LINES", str(MOST_LINES)).replace("LEAVE", browser.LEAVE)


def in_frames(book):
    """A page that shows the book in frames as wide as screens are: a window can't be made as narrow as a phone's."""
    frame = '<iframe data-width={0} style="width: {0}px; height: 900px; border: 0" srcdoc="{1}"></iframe>'
    return ("<!DOCTYPE html><meta charset=utf-8><body>" + "".join(frame.format(width, html.escape(book)) for width in WIDTHS) +
            f"<script>{MEASURE}</script>")


class Outline(HTMLParser):
    """What can be told of a book without showing it."""

    def __init__(self, text):
        super().__init__()
        self.ids, self.links, self.levels, self.tags = [], [], [], set()
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        self.tags.add(tag)
        if re.fullmatch(r"h[1-6]", tag):
            self.levels.append(int(tag[1]))
        for name, value in attributes:
            if name == "id":
                self.ids.append(value)
            if name in ("href", "src", "xlink:href", "action"):
                self.links.append(value)


def faults_of_outline(text):
    outline = Outline(text)
    ids = set(outline.ids)
    if len(ids) < len(outline.ids):
        yield f"ids stand twice: {sorted({each for each in outline.ids if outline.ids.count(each) > 1})[:5]}"
    if not outline.links:
        yield "it has no links"
    for link in {link for link in outline.links if not link.startswith("#") or link[1:] not in ids}:
        yield f"the link {link} leads nowhere"
    if outline.levels.count(1) != 1 or outline.levels[0] != 1:
        yield "it does not begin with the one heading of the first level"
    for before, level in zip(outline.levels, outline.levels[1:]):
        if level > before + 1:
            yield f"a heading of level {level} stands below one of {before}"
    for tag in outline.tags & {"script", "iframe", "img", "link", "object", "form", "i"}:
        yield f"it has an element {tag}"
    if re.search(r"https?:", text.replace('"http://www.w3.org/2000/svg"', "")):
        yield "it names something on a network"


def faults_of_words(words):
    """A user's words are there as they were written."""
    if not any(HOSTILE in each and HARD["id"] in each for each in words):
        yield f"the name {HOSTILE} is not told as it is: {words}"


def faults_of_print(chromium, text):
    if shutil.which("pdftotext") is None:
        return
    with tempfile.TemporaryDirectory() as folder:
        printed, told = Path(folder, "book.pdf"), Path(folder, "book.html")
        printed.write_bytes(browser.shown(chromium, text, "--no-pdf-header-footer", "--print-to-pdf=FOLDER/printed.pdf"))
        subprocess.run(["pdftotext", "-bbox", printed, told], check=True, timeout=60)
        pages = re.findall(r'<page width="([\d.]+)" height="([\d.]+)">(.*?)</page>', told.read_text("utf-8"), re.DOTALL)
    free = 9 * 72 / 25.4  # points; sheets have 10 mm round them
    for number, (width, height, body) in enumerate(pages, 1):
        boxes = re.findall(r'xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)</word>', body)
        if [word for *_, word in boxes][-3:] != [str(number), "/", str(len(pages))]:
            yield f"printed page {number} of {len(pages)} does not bear its number"
        for left, top, right, bottom, word in boxes[:-3]:
            if float(left) < free or float(right) > float(width) - free or float(top) < free - 2 or float(bottom) > float(height) - free:
                yield f'on printed page {number} "{html.unescape(word)}" reaches over the edge'


def book(program, *arguments):
    run = subprocess.run([program, "book", *arguments, "-q"], stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
    if run.returncode > 1:  # 1: a check fails; the book comes all the same
        raise SystemExit(f"haunch book {' '.join(arguments)} ends with {run.returncode}: {run.stderr.decode()}")
    return run.stdout.decode()


def check(program, chromium, arguments, hostile=False):
    text = book(program, *arguments)
    shown = browser.measured(chromium, in_frames(text))
    faults = list(faults_of_outline(text)) + shown["faults"] + list(faults_of_print(chromium, text))
    if hostile:
        faults += faults_of_words(shown["words"])
    names = " ".join(Path(each).name for each in arguments)
    for fault in faults:
        yield f"{names}: {fault}"


def main():
    options = browser.asked()
    chromium = browser.found()
    examples = Path(options.examples)

    def named(*names):
        return [str(examples / f"{name}.json") for name in names]

    faults = []
    with tempfile.TemporaryDirectory() as folder:
        hard = Path(folder, "hard.json")
        hard.write_text(json.dumps(HARD), "utf-8")
        stock = str(examples / "lumber" / "stock.csv")
        faults += check(options.haunch, chromium, [*named("side-door", "flour-bin", "oven-room"), "--stock", stock, "--order", "week 12"])
        faults += check(options.haunch, chromium, named("proving-base"))
        faults += check(options.haunch, chromium, [*named("larder-door", "too-tight"), "--stock", stock, "--paper", "letter", "--units", "in"])
        faults += check(options.haunch, chromium, [str(hard), "--order", HOSTILE], hostile=True)
    print("\n".join(faults[:40]))
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
