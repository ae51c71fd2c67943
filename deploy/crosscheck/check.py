"""Holds the core against a general-purpose numerical package; ends with 1 when anything disagrees.

The cases come as JSON on the standard input: inputs and what the core made of them.
"""

import json
import sys
import time

import numpy as np
import scipy.linalg
import scipy.stats

import falls
import formulas
import landings
import lattice
import launches
import motions
import outlines
import places

SAME_MATRIX = 1e-9  # greatest relative difference of two solutions of one matrix
SAME_WING = 0.005  # greatest relative difference of two lattices; the neutral point as a share of the chord
SAME_TWISTED = 0.02  # the same of the side force of a twisted wing, which grows with the square of the twist too
SMALL = 0.02  # a derivative below this is compared with this instead of with itself
SAME_RUN = 1e-6  # greatest relative difference of two integrations
SAME_ROOTS = 1e-9  # greatest difference of two roots over the largest root of the matrix
SAME_FUNCTION = 1e-15  # greatest relative difference of two values of an elementary function
SAME_SHARE = 1e-12  # the same of a share of a distribution

FIGURES = {
    "liftSlope": "lift slope",
    "neutralPointMeters": "neutral point (of the chord)",
    "inducedDrag": "induced drag",
    "sideways": "sideways",
}

failures = []


def hold(what, difference, limit):
    """Notes a difference beyond its limit, or one that is not a number."""
    if not difference <= limit:
        failures.append(f"{what}: differs by {difference:.3g}, allowed {limit:g}")
    return difference


def apart(ours, theirs):
    """Largest difference over the largest value."""
    ours, theirs = np.asarray(ours), np.asarray(theirs)
    return float(np.max(np.abs(ours - theirs)) / np.max(np.abs(theirs)))


def equations(system):
    """Matrix, right-hand sides and the core's answers, columns side by side."""
    size = system["size"]
    return np.array(system["matrix"]).reshape(size, size), np.array(system["columns"]).T, np.array(system["answers"]).T


def openblas():
    """Whether the package runs on OpenBLAS."""
    with open("/proc/self/maps", encoding="ascii", errors="replace") as loaded:
        return "openblas" in loaded.read()


def check_wing(wing):
    """The same matrix by the package, and the same planform by the lattice of lattice.py."""
    name, ours = wing["name"], wing["figures"]
    matrix, columns, answers = equations(wing["system"])
    solved = scipy.linalg.solve(matrix, columns)
    filled = [k for k in range(columns.shape[1]) if np.any(columns[:, k])]
    same = max(hold(f"{name}: solution of column {k}", apart(answers[:, k], solved[:, k]), SAME_MATRIX) for k in filled)
    other = lattice.Lattice(wing["surfaces"], wing["groundHeightMeters"])
    theirs = other.figures(wing["liftCoefficient"])
    scales = {"neutralPointMeters": other.chord}
    differences = {k: abs(ours[k] - theirs[k]) / abs(scales.get(k, theirs[k])) for k in ours}
    for key, difference in differences.items():
        hold(f"{name}: {key} {ours[key]:.6g} against {theirs[key]:.6g}", difference, SAME_WING)
    differences["sideways"] = check_sideways(name, wing["sideways"], wing["surfaces"], other)
    listed = ", ".join(f"{FIGURES[key]} {difference:.3%}" for key, difference in differences.items())
    print(f"{name:28} {len(matrix):4} unknowns, same matrix {same:.1e}; own lattice: {listed}")


def check_sideways(name, ours, surfaces, other):
    """Roll and side force in sideways motions under a little lift, and yaw too where nothing lifts; the largest difference. Of the side
    force the core takes what is linear in the lift."""
    lifting, inverted, still = (
        other.derivatives(other.incidence_for(lift), ours["pointMeters"]) for lift in (ours["liftCoefficient"], -ours["liftCoefficient"], 0.0)
    )
    linear = still[0] + (lifting[0] - inverted[0]) / 2
    twisted = any(surface["tipTwistRadians"] for surface in surfaces)
    rows = [("roll", ours["roll"], lifting[1], SAME_WING), ("side force", ours["side"], linear, SAME_TWISTED if twisted else SAME_WING)]
    if "still" in ours:
        rows.append(("side force, roll, yaw without lift", ours["still"], still, SAME_WING))
    worst = 0.0
    for what, mine, anew, limit in rows:
        difference = float(np.max(np.abs(np.array(mine) - anew) / np.maximum(np.abs(anew), SMALL)))
        worst = max(worst, hold(f"{name}: {what} in sideslip, roll, yaw {mine} against {anew.tolist()}", difference, limit))
    return worst


def compare(name, ours, theirs, shown, scales=None):
    """Figures of one motion by two integrations, each over itself, over one where smaller, or over the figure given as its scale."""
    scales = scales or {}
    differences = {key: abs(ours[key] - value) / max(abs(scales.get(key, value)), 1) for key, value in theirs.items()}
    for key, difference in differences.items():
        hold(f"{name}: {key} {ours[key]:.9g} against {theirs[key]:.9g}", difference, SAME_RUN)
    worst = max(differences, key=differences.get)
    listed = ", ".join(f"{key} {theirs[key]:.3f}" for key in shown)
    print(f"{name:32} {listed}: {len(theirs)} figures within {differences[worst]:.1e} ({worst})")


def check_motions(all_motions):
    """Roots of the same matrices, and of the equations of motion written anew."""
    worst = 0.0
    for motion in all_motions:
        ours = [complex(root["Real"], root["Imaginary"]) for root in motion["roots"]]
        of_matrix, of_aircraft = motions.roots(motion)
        difference = hold(f"{motion['name']}: roots", motions.unmatched(ours, of_matrix), SAME_ROOTS)
        if of_aircraft is not None:
            anew = hold(f"{motion['name']}: roots of the equations of motion", motions.unmatched(ours, of_aircraft), SAME_ROOTS)
            print(f"{motion['name']:28} roots of the same matrix {difference:.1e}, of the equations written anew {anew:.1e}")
        worst = max(worst, difference)
    print(f"{len(all_motions)} matrices of motion, largest difference of a root {worst:.1e}")


def check_functions(functions):
    """Elementary functions and the factors of Student's distribution."""
    worst = 0.0
    for function in functions:
        places, values = np.array(function["places"]), np.array(function["values"])
        if function["name"] == "student":
            # The package's quantile is good to nine digits, its distribution to all.
            shares = scipy.stats.t.cdf(values, places) - scipy.stats.t.cdf(-values, places)
            student = hold("Student factors", apart(shares, [scipy.stats.norm.cdf(1) - scipy.stats.norm.cdf(-1)]), SAME_SHARE)
        else:
            theirs = getattr(np, function["name"])(places)
            worst = max(worst, hold(f"function {function['name']}", float(np.max(np.abs(values / theirs - 1))), SAME_FUNCTION))
    print(f"{len(functions) - 1} elementary functions {worst:.1e}, shares within the Student factors {student:.1e}")


def check_speed(timed):
    """The same 400 equations by the package, as quick as it goes here and now; printed, not judged."""
    matrix, columns, answers = equations(timed["system"])
    hold("400 equations", apart(answers, scipy.linalg.solve(matrix, columns)), SAME_MATRIX)
    times = []
    start = time.perf_counter()
    while time.perf_counter() - start < 0.5:
        began = time.perf_counter()
        scipy.linalg.lu_solve(scipy.linalg.lu_factor(matrix, check_finite=False), columns, check_finite=False)
        times.append(time.perf_counter() - began)
    best, median = min(times), sorted(times)[len(times) // 2]
    if not openblas():
        failures.append("the package does not run on OpenBLAS, so that the ratio says nothing")
    print(
        f"{len(matrix)} equations, {columns.shape[1]} right-hand sides: "
        f"core {timed['bestSeconds'] * 1e3:.2f} ms (median {timed['medianSeconds'] * 1e3:.2f}), "
        f"OpenBLAS {best * 1e3:.2f} ms (median {median * 1e3:.2f}): {timed['bestSeconds'] / best:.2f} times OpenBLAS"
    )


def main():
    cases = json.load(sys.stdin)
    if sys.argv[1:] != ["speed"]:
        for wing in cases["wings"]:
            check_wing(wing)
        launches.check(cases["launches"], compare)
        landings.check(cases["landings"], compare, hold)
        falls.check(cases["falls"], compare)
        places.check(cases, hold)
        outlines.check(cases["outlines"], hold)
        check_motions(cases["motions"])
        check_functions(cases["functions"])
        formulas.check(cases["formulas"], hold)
    check_speed(cases["timed"])
    for failure in failures:
        print("DISAGREES", failure)
    sys.exit(1 if failures else 0)


main()
