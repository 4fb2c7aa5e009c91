# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# Side by side with finite elements: for cases of ../reference/heat, the cheapest FreeFem++ mesh and time step whose
# largest errors in core and mean against the converged reference are no larger than ours at our own settings, and the
# processor time of both, best of three. Prints, asserts nothing.
#     python3 compare_finite_elements.py BUILD_FOLDER [case ...]     (holding tinwright and tinwright_bench)
#
# Stepping alone is timed as a programme run many times over, less one of no steps: start-up, meshing and the assembly
# of the matrices are outside it, and of our time nothing is. The scripts are heat.py's: quadratic elements, SDIRK2, a
# direct solver that factors the one matrix once. Their steps have to divide the stages and the rows evenly.

import csv
import json
import os
import resource
import subprocess
import sys

REFERENCE = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "reference", "heat")
sys.path.insert(0, REFERENCE)
import heat  # noqa: E402

# Mesh edges [m] and time steps [s] tried, coarse ones first.
SIZES = {"lined_round": [0.024, 0.016, 0.012, 0.009, 0.007, 0.005, 0.004, 0.003],
         "straight_box": [0.03, 0.02, 0.015, 0.0125, 0.01, 0.008]}
STEPS = [60, 30, 20, 15, 10, 7.5]
TIMES_OVER = 20
BEST_OF = 3


def reference_rows(name):
    with open(name + ".csv") as file:
        rows = csv.DictReader(line for line in file if not line.startswith("#"))
        return [(float(row["core_c"]), float(row["mean_c"])) for row in rows]


def worst(rows, reference):
    return [max(abs(row[i] - true[i]) for row, true in zip(rows, reference)) for i in (0, 1)]


def ours(build, name, reference):
    answer = subprocess.run([build + "/tinwright", "bake", name + ".json", "--json"], capture_output=True, check=True)
    history = json.loads(answer.stdout)["history"]
    work = subprocess.run([build + "/tinwright_bench", name + ".json"], capture_output=True, check=True)
    return worst([(row["core_c"], row["mean_c"]) for row in history], reference), json.loads(work.stdout)


def finite_elements(job, size, step):
    """The result, and processor seconds from start to end."""
    def used():
        usage = resource.getrusage(resource.RUSAGE_CHILDREN)
        return usage.ru_utime + usage.ru_stime
    before = used()
    result = heat.run_case(job, size, step)
    return result, used() - before


def best(job, size, step):
    return min(finite_elements(job, size, step)[1] for _ in range(BEST_OF))


def stages_over(job, times):
    """The programme so many times over, with rows at its start and end only; 0: no step at all."""
    whole = sum(heat.si(stage["for"]) for stage in job["stages"])
    stages = job["stages"] * times or [dict(stage, **{"for": "0 s"}) for stage in job["stages"]]
    return dict(job, stages=stages, report_every=f"{max(1, times) * whole:g} s")


def compare(build, name):
    with open(name + ".json") as file:
        job = json.load(file)
    reference = reference_rows(name)
    (core, mean), work = ours(build, name, reference)
    print(f"{name}: ours core {core:.4f} C, mean {mean:.4f} C, {work['cells']} cells, {work['ms']:.2f} ms", flush=True)
    found = []
    for size in SIZES[name]:
        for step in STEPS:
            result, _ = finite_elements(job, size, step)
            errors = worst([row[1:3] for row in result["rows"]], reference)
            fits = errors[0] <= core and errors[1] <= mean
            print(f"  edge {1e3 * size:4.1f} mm, {result['unknowns']:6.0f} unknowns, step {step:4.1f} s: "
                  f"core {errors[0]:.4f} C, mean {errors[1]:.4f} C{'  as good' if fits else ''}", flush=True)
            if fits:
                start = best(stages_over(job, 0), size, step)
                solve = (best(stages_over(job, TIMES_OVER), size, step) - start) / TIMES_OVER
                found.append((solve, best(job, size, step), size, step))
                break
        if len(found) > 2 and found[-1][0] > 1.5 * min(found)[0]:
            break  # finer meshes only get dearer
    if not found:
        print("  none of these is as good")
        return
    solve, whole, size, step = min(found)
    print(f"{name}: cheapest as good: edge {1e3 * size:g} mm, step {step:g} s: stepping {1e3 * solve:.1f} ms, "
          f"{1e3 * solve / work['ms']:.1f} times ours; with start-up, mesh and assembly {1e3 * whole:.0f} ms, "
          f"{1e3 * whole / work['ms']:.0f} times ours", flush=True)


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit("usage: compare_finite_elements.py BUILD_FOLDER [case ...]")
    folder = os.path.abspath(sys.argv[1])
    os.chdir(REFERENCE)
    for case in sys.argv[2:] or SIZES:
        compare(folder, case)
