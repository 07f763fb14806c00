"""Pages as Debian's browser shows and prints them, for the scripts that measure what haunch draws."""

import argparse
import html
import json
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

SKIPPED = 77


def found():
    """The browser; without one the script ends as skipped."""
    chromium = shutil.which("chromium")
    if chromium is None:
        print("not measured: chromium is not installed (Debian's package of that name)")
        sys.exit(SKIPPED)
    return chromium


def asked():
    """What a measuring script is called with."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--haunch", required=True)
    parser.add_argument("--examples", required=True)
    return parser.parse_args()


def page_of(drawings, script):
    """A page of some SVG documents, and what measures them."""
    body = "\n".join(text.partition("?>")[2] for text in drawings)
    style = "body { margin: 0 } body > svg { display: block }"
    return f"<!DOCTYPE html><meta charset=utf-8><style>{style}</style><body>{body}<script>{script}</script>"


def shown(chromium, text, *arguments):
    """What it makes of a page: the document as it is at last, or what it printed to FOLDER/printed.pdf."""
    with tempfile.TemporaryDirectory() as folder:
        page = Path(folder, "page.html")
        page.write_text(text, "utf-8")
        run = subprocess.run([chromium, "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={folder}/user",
                              *(each.replace("FOLDER", folder) for each in arguments), page.as_uri()],
                             stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, check=True, timeout=120)
        printed = Path(folder, "printed.pdf")
        return printed.read_bytes() if printed.exists() else run.stdout


# A page's script measures, and leaves what it found in the page's stead.
LEAVE = "document.body.innerHTML = '<pre>' + JSON.stringify(all).replace(/&/g, '&amp;').replace(/</g, '&lt;') + '</pre>';"


def measured(chromium, text):
    """What the script of a page left in `all`."""
    told = re.search(r"<pre>(.*)</pre>", shown(chromium, text, "--dump-dom").decode(), re.DOTALL)
    return json.loads(html.unescape(told[1]))


def printed_pages(chromium, text):
    pdf = shown(chromium, text, "--no-pdf-header-footer", "--print-to-pdf=FOLDER/printed.pdf")
    return len(re.findall(rb"/Type\s*/Page\b(?!s)", pdf))


def lie_on_each_other(a, b, near):
    """Boxes (left, top, right, bottom); touching is none."""
    return min(a[2], b[2]) - max(a[0], b[0]) > near and min(a[3], b[3]) - max(a[1], b[1]) > near


# Of every svg.sheet of a page of drawings: its title, its paper, and its texts with their boxes, in millimetres.
SHEETS = """
const mm = 25.4 / 96, all = [], drawings = [...document.querySelectorAll('body > svg')];
const alone = (drawing) => drawings.forEach(each => each.style.display = each == drawing ? 'block' : 'none');
for (const drawing of drawings) for (const sheet of drawing.querySelectorAll('svg.sheet')) {
  alone(drawing);  // far down a page its figures are no longer exact
  const frame = sheet.querySelector('rect').getBoundingClientRect();
  const box = (e) => { const r = e.getBoundingClientRect();
    return [r.left - frame.left, r.top - frame.top, r.right - frame.left, r.bottom - frame.top].map(v => v * mm); };
  all.push({title: sheet.querySelector('title').textContent, paper: [frame.width * mm, frame.height * mm],
    texts: [...sheet.querySelectorAll('text')].map(e => [e.textContent, ...box(e)]) MORE});
}
""" + LEAVE


def sheets_script(more=""):
    """That script; `more` measures other things of a sheet: "name: …" of `sheet` and `frame`."""
    return SHEETS.replace(" MORE", f",\n{more}" if more else "")


def faults_of_lettering(sheet, free, near):
    """Lettering that lies on other lettering or reaches into what is to be free round a sheet."""
    width, height = sheet["paper"]
    texts = sorted(sheet["texts"], key=lambda text: text[2])
    for words, left, top, right, bottom in texts:
        if left < free - near or top < free - near or right > width - free + near or bottom > height - free + near:
            yield f"{sheet['title']}: \"{words}\" reaches into the {free} mm round the sheet"
    for i, (words, *box) in enumerate(texts):
        for other, *others in texts[i + 1:]:
            if others[1] > box[3] - near:
                break
            if lie_on_each_other(box, others, near):
                yield f"{sheet['title']}: \"{words}\" and \"{other}\" lie on each other"
