#!/usr/bin/env python3
"""Solids of examples, read by a program that shares nothing with haunch: gmsh, which builds on Open CASCADE.

Each file is to hold one volume, every edge of which bounds two of its faces, with the volume and the middle that the
blank has when the report's cuts and prisms are taken out of it there; and it must not be the mirror image of what the
report tells. There is a file for each part and no other.

    read_solids.py --haunch PROGRAM --examples FOLDER [NAME…]
"""

import argparse
import json
import subprocess
import sys
import tempfile
from pathlib import Path

SKIPPED = 77
CLOSE = 1e-6  # of a volume; of a middle in millimetres, a thousand times that
EXAMPLES = ["side-door.json", "bread-counter.json", "drying-loft.json", "spice-drawers.json", "larder-door.json", "peel-cupboard.json",
            "counter-front.json"]

try:
    import gmsh
except ImportError:  # Debian's, where another Python comes first
    sys.path.append("/usr/lib/python3/dist-packages")
    try:
        import gmsh
    except ImportError:
        print("gmsh is not installed (python3-gmsh): skipped")
        sys.exit(SKIPPED)

AXES = {"length": 0, "width": 1, "thickness": 2}


def extruded(prism):
    """A prism of the report: an outline on two axes, run along the third."""
    along = AXES[prism["along"]]
    across = [axis for axis in range(3) if axis != along]
    points = []
    for corner in prism["polygon"]:
        place = [0.0, 0.0, 0.0]
        place[along] = prism["from"]
        for axis, at in zip(across, corner):
            place[axis] = at
        points.append(gmsh.model.occ.addPoint(*place))
    lines = [gmsh.model.occ.addLine(a, b) for a, b in zip(points, points[1:] + points[:1])]
    face = gmsh.model.occ.addPlaneSurface([gmsh.model.occ.addCurveLoop(lines)])
    way = [0.0, 0.0, 0.0]
    way[along] = prism["to"] - prism["from"]
    return [entity for entity in gmsh.model.occ.extrude([(2, face)], *way) if entity[0] == 3]


def told(part):
    """Volume and middle of a part, in its own axes, by taking cuts out of its blank."""
    gmsh.clear()
    wood = [(3, gmsh.model.occ.addBox(0, 0, 0, part["length"], part["width"], part["thickness"]))]
    for feature in part.get("features", []):
        tools = []
        for x0, y0, z0, x1, y1, z1 in feature.get("cuts", []):
            tools.append((3, gmsh.model.occ.addBox(x0, y0, z0, x1 - x0, y1 - y0, z1 - z0)))
        for prism in feature.get("prisms", []):
            tools += extruded(prism)
        if tools:
            wood, _ = gmsh.model.occ.cut(wood, tools)
    return measured(wood)


def measured(volumes):
    masses = [gmsh.model.occ.getMass(*entity) for entity in volumes]
    middles = [gmsh.model.occ.getCenterOfMass(*entity) for entity in volumes]
    whole = sum(masses)
    return whole, [sum(m * c[axis] for m, c in zip(masses, middles)) / whole for axis in range(3)]


def is_right_handed(at):
    """Whether length, width and thickness are, as the piece stands: the report's z goes away from who sees x to the
    right and y up."""
    order = ["xyz".index(axis.lstrip("-")) for axis in at["axes"]]
    changes = sum(order[i] > order[j] for i in range(3) for j in range(i + 1, 3))
    changes += sum(axis.startswith("-") for axis in at["axes"])
    return changes % 2 == 1


def faults(file, part):
    gmsh.clear()
    gmsh.model.occ.importShapes(str(file))
    gmsh.model.occ.synchronize()
    volumes = gmsh.model.getEntities(3)
    if len(volumes) != 1:
        return [f"{len(volumes)} volumes"]
    wrong = []
    shell = {tag for _, tag in gmsh.model.getBoundary(volumes, oriented=False)}
    if shell != {tag for _, tag in gmsh.model.getEntities(2)}:
        wrong.append("faces that bound nothing")
    for _, edge in gmsh.model.getEntities(1):
        if len(gmsh.model.getAdjacencies(1, edge)[0]) != 2:
            wrong.append("an edge that does not bound two faces")
    volume, middle = measured(volumes)
    wanted, own = told(part)
    if abs(volume - wanted) > CLOSE * wanted:
        wrong.append(f"a volume of {volume}, not {wanted}")
    return wrong + placed_wrong(middle, own, part)


def placed_wrong(middle, own, part):
    """The file's axes are the part's own, of which width and thickness may run backwards."""
    turned = []
    for axis, size in enumerate([part["length"], part["width"], part["thickness"]]):
        ways = [abs(middle[axis] - own[axis]) < 1000 * CLOSE, abs(middle[axis] - (size - own[axis])) < 1000 * CLOSE]
        if not any(ways) or (axis == 0 and not ways[0]):
            return [f"its middle at {middle}, in its own axes {own}"]
        turned.append(None if all(ways) else ways[1])
    if None in turned[1:]:
        return []  # the same either way round
    if (turned[1] != turned[2]) == is_right_handed(part["at"]):
        return ["the mirror image of the part"]
    return []


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--haunch", required=True)
    parser.add_argument("--examples", required=True)
    parser.add_argument("names", nargs="*", default=EXAMPLES)
    options = parser.parse_args()
    gmsh.initialize()
    gmsh.option.setNumber("General.Verbosity", 1)
    read = 0
    wrong = []
    with tempfile.TemporaryDirectory() as folder:
        for name in options.names or EXAMPLES:
            spec = str(Path(options.examples) / name)
            to = Path(folder) / name
            subprocess.run([options.haunch, "solids", spec, "-o", str(to), "-q"], check=False)
            sheet = subprocess.run([options.haunch, "sheet", spec, "--units", "mm", "--format", "json", "-q"], check=False, capture_output=True)
            parts = {f"{item['id']}/{part['mark']}.step": part for item in json.loads(sheet.stdout)["items"] for part in item["parts"]}
            files = {str(file.relative_to(to)) for file in to.rglob("*.step")}
            if files != set(parts):
                wrong.append(f"{name}: other files than parts: {sorted(files ^ set(parts))}")
            for file in sorted(files & set(parts)):
                wrong += [f"{name}: {file}: {fault}" for fault in faults(to / file, parts[file])]
                read += 1
    for fault in wrong:
        print(fault)
    print(f"{read} solids read, {len(wrong)} faults")
    return 1 if wrong or read == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
