# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# Finite-element references for a bake by conduction alone: reads <case>.json (the input of `tinwright bake`), meshes
# the food, runs FreeFem++ (section.edp, solid.edp) on the fine mesh and time step, on a mesh twice as coarse and on
# a time step twice as long, and writes <case>.csv with the differences in its head.
# Rerun from this folder (some minutes, one core, no network; Debian packages freefem++ and libfreefem++):
#     python3 heat.py [case ...]
#
# What each heat transfer acts on: `top` on all food open to the air above it (the fill's surface, and where a crust
# stands above the fill, the crust's inner face and its level top); `wall` on the sides that touch the pan, up to
# the food's height, a tube pan's core too; `base` on the floor. Pan standing above the food does nothing.

import json
import math
import os
import subprocess
import sys
import tempfile
import time

import exact_wall

UNITS = {"cm": 0.01, "mm": 0.001, "C": 1, "min": 60, "s": 1, "W/mK": 1, "kg/m3": 1, "J/kgK": 1, "W/m2K": 1}
CASES = ["tapered_round", "lined_round", "fluted_tart", "tapered_loaf", "tapered_ring", "straight_round",
         "straight_box"]
# Fine size of a mesh edge [m] and time step [s].
FINE = {"tapered_round": (0.001, 7.5), "lined_round": (0.00075, 7.5), "tapered_ring": (0.001, 7.5),
        "straight_round": (0.001, 7.5), "fluted_tart": (0.0016, 7.5), "tapered_loaf": (0.0031, 15),
        "straight_box": (0.0031, 15)}


def si(text):
    number, unit = text.split(" ")
    return float(number) * UNITS[unit]


def substance(s):
    return si(s["conductivity"]), si(s["density"]) * si(s["heat_capacity"])


def programme(job, step):
    stages = job["stages"]
    return [f"{step} {si(job['report_every'])} {si(job['start'])} {len(stages)}"] + [
        f"{si(s['air'])} {si(s['for'])}" for s in stages]


def edge_lines(lines, size):
    """'x0 y0 x1 y1 edges transfer' of each (from, to, transfer), with edges no longer than size."""
    return [f"{a[0]:.17g} {a[1]:.17g} {b[0]:.17g} {b[1]:.17g} {max(1, math.ceil(math.dist(a, b) / size - 1e-9))} {h}"
            for a, b, h in lines]


def section(job):
    """Lines of the radial section, substances and a point in each."""
    outline, profile, fill = job["pan"]["outline"], job["pan"]["profile"], job["fill"]
    top, wall, base = (si(job["transfer"][k]) for k in ("top", "wall", "base"))
    depth, inset = si(profile["depth"]), si(profile.get("base_inset", "0 cm"))
    lean, height = inset / depth, si(fill["height"])
    rim = si(outline.get("diameter", outline.get("outer_diameter", "0 cm"))) / 2

    def outer(z):
        return rim - inset + lean * z

    if outline["kind"] == "ring":
        core_inset = si(profile.get("core_inset", "0 cm"))
        core = si(outline["inner_diameter"]) / 2
        low, high = core + core_inset, core + core_inset * (1 - height / depth)
        lines = [((low, 0), (outer(0), 0), base), ((outer(0), 0), (outer(height), height), wall),
                 ((outer(height), height), (high, height), top), ((high, height), (low, 0), wall)]
        return lines, [(substance(fill["substance"]), (0.5 * (low + outer(0)), 0.5 * height))]
    if "lining" not in job:
        lines = [((0, 0), (outer(0), 0), base), ((outer(0), 0), (outer(height), height), wall),
                 ((outer(height), height), (0, height), top), ((0, height), (0, 0), 0)]
        return lines, [(substance(fill["substance"]), (0.5 * rim, 0.5 * height))]
    floor, crust = si(job["lining"]["floor"]), si(job["lining"]["height"])
    run = si(job["lining"]["wall"]) * math.hypot(1, lean)
    level = floor + height

    def inner(z):
        return outer(z) - run

    lines = [((0, 0), (outer(0), 0), base), ((outer(0), 0), (outer(crust), crust), wall),
             ((outer(crust), crust), (inner(crust), crust), top), ((inner(crust), crust), (inner(level), level), top),
             ((inner(level), level), (0, level), top), ((0, level), (0, floor), 0), ((0, floor), (0, 0), 0),
             ((0, floor), (inner(floor), floor), 0), ((inner(floor), floor), (inner(level), level), 0)]
    return lines, [(substance(fill["substance"]), (0.5 * rim, floor + 0.5 * height)),
                   (substance(job["lining"]["substance"]), (0.5 * rim, 0.5 * floor))]


def wedge(job, size):
    """Half a flute from the axis: out along its crest, along the edge in chords a fifth of `size`, back."""
    outline = job["pan"]["outline"]
    rim, flutes, flute_depth = si(outline["diameter"]) / 2, outline["flutes"], si(outline["flute_depth"])
    half = math.pi / flutes

    def at(angle):
        r = rim - flute_depth / 2 + flute_depth / 2 * math.cos(flutes * angle)
        return (r * math.cos(angle), r * math.sin(angle))

    chords = math.ceil(5 * 0.0113 / size)
    edge = [at(half * i / chords) for i in range(chords + 1)]
    h = si(job["transfer"]["wall"])
    lines = [((0, 0), edge[0], 0)] + [(a, b, h) for a, b in zip(edge[:-1], edge[1:])] + [(edge[-1], (0, 0), 0)]
    return half, lines


def plane_input(job, size, step, lines, substances, axisymmetric=1, head=None):
    rows = (head or programme(job, step)) + [f"{axisymmetric} {len(substances)}"]
    rows += [f"{k} {c} {x} {y}" for (k, c), (x, y) in substances]
    return rows + [str(len(lines))] + edge_lines(lines, size)


def solid_input(job, size, step):
    (k, c), height = substance(job["fill"]["substance"]), si(job["fill"]["height"])
    transfer = " ".join(str(si(job["transfer"][n])) for n in ("top", "wall", "base"))
    outline, profile = job["pan"]["outline"], job["pan"]["profile"]
    if outline["kind"] == "fluted":
        half, lines = wedge(job, size)
        rows = programme(job, step) + [f"{k} {c} {transfer} 1 {height} {math.ceil(height / size)}", f"{half:.17g}",
                                       str(len(lines))]
        return rows + [line.rsplit(" ", 1)[0] for line in edge_lines(lines, size)]
    inset = si(profile.get("base_inset", "0 cm"))
    halves = [si(outline[n]) / 2 - inset for n in ("length", "width")]
    cells = [math.ceil(v / size) for v in halves]
    # Along the length the field changes little in the middle: cells half as long again.
    cells[0] = math.ceil(cells[0] / 1.5)
    return programme(job, step) + [
        f"{k} {c} {transfer} 0 {height} {math.ceil(height / size)}",
        f"{halves[0]:.17g} {halves[1]:.17g} {inset / si(profile['depth']):.17g} {cells[0]} {cells[1]}"]


def solve(script, rows):
    with tempfile.NamedTemporaryFile("w", suffix=".txt") as file:
        file.write("\n".join(rows) + "\n")
        file.flush()
        began = time.time()
        environment = dict(os.environ, FF_LOADPATH="/usr/lib/freefem++", OMP_NUM_THREADS="1")
        done = subprocess.run(["FreeFem++-nw", "-nw", "-v", "0", script, file.name], capture_output=True, text=True,
                              env=environment)
    result = {"seconds": time.time() - began, "rows": []}
    for line in done.stdout.splitlines():
        words = line.split()
        if words and words[0] == "ROW":
            result["rows"].append([float(w) for w in words[1:]])
        elif words and words[0] in ("VOLUME", "SURFACE", "UNKNOWNS"):
            result[words[0].lower()] = float(words[1])
    if done.returncode != 0 or not result["rows"]:
        sys.exit(done.stdout[-2000:] + done.stderr)
    return result


def run_case(job, size, step):
    if job["pan"]["outline"]["kind"] in ("fluted", "rectangle"):
        return solve("solid.edp", solid_input(job, size, step))
    lines, substances = section(job)
    return solve("section.edp", plane_input(job, size, step, lines, substances))


def upright_product(job, size):
    """Core and mean of an upright fluted pan: its plane section (finite elements) times the exact wall in z."""
    _, lines = wedge(job, size)
    fill = job["fill"]
    head = ["5 60 0 1", "1 2400"]  # warming from 0 to air at 1: the coldest point is the axis
    inside = [(substance(fill["substance"]), (0.05, 1e-4))]
    plane = solve("section.edp", plane_input(job, size, 5, lines, inside, 0, head))
    at = {round(r[0]): (1 - r[1], 1 - r[2]) for r in plane["rows"]}
    k, c = substance(fill["substance"])
    height, transfer = si(fill["height"]), job["transfer"]
    wall = exact_wall.Wall(si(transfer["base"]) * height / k, si(transfer["top"]) * height / k)
    start, stages = si(job["start"]), [(si(s["air"]), si(s["for"])) for s in job["stages"]]
    every, rows = round(si(job["report_every"])), []
    for t in range(every, round(sum(s[1] for s in stages)) + 1, every):
        changes, before, began = [], start, 0.0
        for air, length in stages:
            if t > began:
                changes.append((air - before, round(t - began)))
            before, began = air, began + length

        def temperature(which, factor):
            return start + sum(step * (1 - at[s][which] * factor(k / c * s / height**2)) for step, s in changes)

        core = min(temperature(0, lambda fo, z=i / 1000: wall.theta(z, fo)) for i in range(1001))
        rows.append((t, core, temperature(1, wall.mean)))
    return rows


def largest(a, b, column):
    return max(abs(x[column] - y[column]) for x, y in zip(a["rows"], b["rows"]))


def apart(core, mean):
    return f"core {core:.4f} C, mean {mean:.4f} C"


def air_text(job):
    return ", then ".join(f"{s['air']} for {s['for']}" for s in job["stages"])


def write(name):
    with open(name + ".json") as file:
        job = json.load(file)
    size, step = FINE[name]
    fine, coarse, slow = run_case(job, size, step), run_case(job, 2 * size, step), run_case(job, size, 2 * step)
    core, mean = (largest(fine, coarse, i) + largest(fine, slow, i) for i in (1, 2))
    head = [f"# Conduction in {name}.json, FreeFem++ 4.11 finite elements (quadratic), SDIRK2 in time; see heat.py.",
            f"# Made by: python3 heat.py {name}", f"# pan: {json.dumps(job['pan'])}"]
    if "lining" in job:
        head.append(f"# lining: {json.dumps(job['lining'])}")
    head += [f"# fill: {json.dumps(job['fill'])}", f"# start: {job['start']}; air: {air_text(job)}",
             f"# transfer: {json.dumps(job['transfer'])}",
             f"# mesh edge {size * 1000:g} mm, {fine['unknowns']:.0f} unknowns, time step {step:g} s: "
             f"{fine['seconds']:.0f} s to run "
             f"(coarse mesh {coarse['seconds']:.0f} s, long step {slow['seconds']:.0f} s)"]
    scale = 2 * job["pan"]["outline"]["flutes"] if job["pan"]["outline"]["kind"] == "fluted" else 1
    scale = 4 if job["pan"]["outline"]["kind"] == "rectangle" else scale
    head += [f"# meshed food volume {fine['volume'] * scale * 1e6:.4f} ml; sum of transfer times area "
             f"{fine['surface'] * scale:.6f} W/K",
             f"# against a mesh twice as coarse: {apart(largest(fine, coarse, 1), largest(fine, coarse, 2))}",
             f"# against a time step twice as long: {apart(largest(fine, slow, 1), largest(fine, slow, 2))}",
             f"# estimated error (the sum of both, cautious): {apart(core, mean)}"]
    if job["pan"]["outline"]["kind"] == "fluted":
        product = upright_product(job, size / 2)
        by_time = {round(r[0]): r for r in fine["rows"]}
        worst = [max(abs(by_time[r[0]][i] - r[i]) for r in product) for i in (1, 2)]
        head.append(f"# against plane section (finite elements) times exact wall: {apart(*worst)}")
    last = fine["rows"][-1]
    solid = job["pan"]["outline"]["kind"] in ("fluted", "rectangle")
    place = f"{last[4]:.4f} {last[5]:.4f}, {last[6]:.4f}" if solid else f"{last[4]:.4f}, {last[5]:.4f}"
    head.append(f"# coldest point at the end (metres from the axis or middle, height above the pan's floor): {place}")
    with open(name + ".csv", "w") as file:
        file.write("\n".join(head) + "\nt_min,core_c,mean_c,air_c\n")
        for row in fine["rows"]:
            file.write(f"{row[0] / 60:g},{row[1]:.4f},{row[2]:.4f},{row[3]:g}\n")
    print(name, f"core {last[1]:.3f} mean {last[2]:.3f} error {core:.4f} {mean:.4f}", flush=True)


if __name__ == "__main__":
    for case in sys.argv[1:] or CASES:
        write(case)
