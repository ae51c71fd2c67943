"""Holds the core against a general-purpose numerical package; ends with 1 when anything disagrees.

The cases come as JSON on the standard input: inputs and what the core made of them.
"""

import json
import sys
import time

import numpy as np
import scipy.integrate
import scipy.linalg

import lattice

SAME_MATRIX = 1e-9  # greatest relative difference of two solutions of one matrix
SAME_WING = 0.005  # greatest relative difference of two lattices; the neutral point as a share of the chord
SAME_RUN = 1e-6  # greatest relative difference of two integrations

FIGURES = {
    "liftSlope": "lift slope",
    "neutralPointMeters": "neutral point (of the chord)",
    "inducedDrag": "induced drag",
    "rollDamping": "roll damping",
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


def check_wing(wing):
    """The same matrix by the package, and the same planform by the lattice of lattice.py."""
    name, ours = wing["name"], wing["figures"]
    matrix, columns, answers = equations(wing["system"])
    solved = scipy.linalg.solve(matrix, columns)
    same = max(hold(f"{name}: solution of column {k}", apart(answers[:, k], solved[:, k]), SAME_MATRIX) for k in range(columns.shape[1]) if np.any(columns[:, k]))
    other = lattice.Lattice(wing["surfaces"])
    theirs = other.figures(wing["liftCoefficient"])
    scales = {"neutralPointMeters": other.chord}
    differences = {k: abs(ours[k] - theirs[k]) / abs(scales.get(k, theirs[k])) for k in ours}
    for key, difference in differences.items():
        hold(f"{name}: {key} {ours[key]:.6g} against {theirs[key]:.6g}", difference, SAME_WING)
    listed = ", ".join(f"{FIGURES[key]} {difference:.3%}" for key, difference in differences.items())
    print(f"{name:28} {len(matrix):4} unknowns, same matrix {same:.1e}; own lattice: {listed}")


def check_launch(run):
    """A take-off run by the package's own integrator of order eight."""
    g, wind = run["gravityMetersPerSecondSquared"], run["headwindMetersPerSecond"] * np.cos(run["slopeRadians"])

    def rate(t, state):
        air = state[1] + wind
        pressure = 0.5 * run["densityKilogramsPerCubicMeter"] * run["areaSquareMeters"] * air**2
        thrust = (run["staticThrustNewtons"] - run["thrustFallNewtonsPerMeterPerSecond"] * air) * (1 - np.exp(-t / run["spoolTimeSeconds"]))
        weight = run["massKilograms"] * g
        normal = max(0.0, weight * np.cos(run["slopeRadians"]) - pressure * run["liftCoefficient"])
        force = thrust - pressure * run["dragCoefficient"] - run["friction"] * normal - weight * np.sin(run["slopeRadians"])
        return [state[1], max(force, 0.0) / run["massKilograms"] if state[1] <= 0 else force / run["massKilograms"]]

    def rotates(t, state):
        return state[1] + wind - run["rotationAirspeedMetersPerSecond"]

    rotates.terminal = True
    solved = scipy.integrate.solve_ivp(rate, (0, 60), [0.0, 0.0], method="DOP853", rtol=1e-12, atol=1e-12, events=rotates, max_step=0.05)
    distance = hold("launch: run", apart(run["runMeters"], solved.y[0, -1]), SAME_RUN)
    duration = hold("launch: time", apart(run["timeSeconds"], solved.t[-1]), SAME_RUN)
    print(f"take-off run of {solved.y[0, -1]:.2f} m in {solved.t[-1]:.2f} s: distance {distance:.1e}, time {duration:.1e}")


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
    print(
        f"{len(matrix)} equations, {columns.shape[1]} right-hand sides: core {timed['bestSeconds'] * 1e3:.2f} ms (median {timed['medianSeconds'] * 1e3:.2f}), "
        f"OpenBLAS {best * 1e3:.2f} ms (median {median * 1e3:.2f}): {timed['bestSeconds'] / best:.2f} times OpenBLAS"
    )


def main():
    cases = json.load(sys.stdin)
    if sys.argv[1:] != ["speed"]:
        for wing in cases["wings"]:
            check_wing(wing)
        check_launch(cases["launch"])
    check_speed(cases["timed"])
    for failure in failures:
        print("DISAGREES", failure)
    sys.exit(1 if failures else 0)


main()
