#!/usr/bin/env python3
"""What one would write oneself: the cut list of the benchmark's plain doors, as CSV, with no key but theirs and no check.

    cutlist_alone.py FILE    the same bytes as haunch cutlist FILE --format csv
"""

import json
import sys

MUNTIN, TONGUE = 90, 14.6
ACROSS, ALONG = 3, 1  # a panel's gaps
HORN = 25


def rows(door):
    width = door["opening"]["width"] - 2 * door["clearance"]
    height = door["opening"]["height"] - 2 * door["clearance"]
    stile, tenon, groove, thick = door["stile_width"], door["tenon_depth"], door["groove_depth"], door["thickness"]
    top, lock, foot = door["rail_widths"]
    lights = [height - top - lock["top"], lock["top"] - lock["width"] - foot]
    yield "stile", "A B", 2, height, height + 2 * HORN, stile, thick, "along", "stiles"
    between = width - 2 * stile
    for mark, rail, name in zip("CDE", (top, lock["width"], foot), ("top rail", lock.get("name", "lock rail"), "bottom rail")):
        yield "rail", mark, 1, between + 2 * tenon, between + 2 * tenon, rail, thick, "along", name
    for tier, light in enumerate(lights):
        yield "muntin", "FG"[tier], 1, light + 2 * tenon, light + 2 * tenon, MUNTIN, thick, "along", f"muntin, tier {tier + 1}"
    across = (between - MUNTIN) / 2 + 2 * (groove - ACROSS)
    for marks, light in zip(("H I", "J K"), lights):
        along = light + 2 * (groove - ALONG)
        yield "panel", marks, 2, along, along, f"{across:g}", TONGUE, "upright", "panels"


print("item,part,marks,quantity,length_mm,saw_length_mm,width_mm,thickness_mm,material,grain,name,called,area_m2,volume_m3,"
      "saw_width_mm,strips")
with open(sys.argv[1], encoding="utf-8") as specs:
    for line in specs:
        spec = json.loads(line)
        for part, marks, count, length, saw, wide, thick, grain, called in rows(spec):
            area = (length / 1000) * (float(wide) / 1000) * count
            called = f'"{called}"' if "," in called else called
            print(f"{spec['id']},{part},{marks},{count},{length},{saw},{wide},{thick},,{grain},"
                  f"{spec.get('name', 'door')},{called},{area:.6f},{area * (thick / 1000):.6f},{wide},")
