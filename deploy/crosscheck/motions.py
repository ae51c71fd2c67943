"""Motions of an aircraft written from the equations of motion, each left side with its own mass matrix.

Source: Nelson, Flight Stability and Automatic Control, chapters 4 and 5.
"""

import numpy as np
import scipy.linalg


def pitching(s, d):
    """Mass matrix and right-hand matrix for changes of forward and downward speed, pitch rate and attitude; forces in N."""
    q, v = 0.5 * s["Density"] * s["Speed"] ** 2, s["Speed"]
    force, moment = q * s["Area"], q * s["Area"] * s["Chord"]
    rate = s["Chord"] / (2 * v)
    m, g, path = s["Mass"], s["Gravity"], s["PathAngle"]
    left = np.diag([m, m, s["Inertia"]["Pitch"], 1.0])
    left[1, 1] += force * d["LiftIncidenceRate"] * rate / v
    left[2, 1] -= moment * d["IncidenceRateDamping"] * rate / v
    right = np.array(
        [
            [-2 * force * s["Drag"] / v, force * (s["Lift"] - d["DragSlope"]) / v, 0.0, -m * g * np.cos(path)],
            [-2 * force * s["Lift"] / v, -force * (d["LiftSlope"] + s["Drag"]) / v, m * v - force * d["LiftPitchRate"] * rate, -m * g * np.sin(path)],
            [0.0, moment * d["MomentSlope"] / v, moment * d["PitchDamping"] * rate, 0.0],
            [0.0, 0.0, 1.0, 0.0],
        ]
    )
    return left, right


def lateral(s, d):
    """The same for side speed, roll rate, yaw rate and bank."""
    q, v = 0.5 * s["Density"] * s["Speed"] ** 2, s["Speed"]
    force, moment = q * s["Area"], q * s["Area"] * s["Span"]
    rate = s["Span"] / (2 * v)
    m, g, path, inertia = s["Mass"], s["Gravity"], s["PathAngle"], s["Inertia"]
    left = np.diag([m, inertia["Roll"], inertia["Yaw"], 1.0])
    left[1, 2] = left[2, 1] = -inertia["Product"]
    right = np.array(
        [
            [force * d["SideForceBeta"] / v, force * d["SideForceRollRate"] * rate, force * d["SideForceYawRate"] * rate - m * v, m * g * np.cos(path)],
            [moment * d["RollBeta"] / v, moment * d["RollRollRate"] * rate, moment * d["RollYawRate"] * rate, 0.0],
            [moment * d["YawBeta"] / v, moment * d["YawRollRate"] * rate, moment * d["YawYawRate"] * rate, 0.0],
            [0.0, 1.0, np.tan(path), 0.0],
        ]
    )
    return left, right


def unmatched(ours, theirs):
    """Largest distance of a root from the nearest of the other set that is still free, over the largest root."""
    free, worst = list(theirs), 0.0
    for root in ours:
        nearest = min(range(len(free)), key=lambda k: abs(free[k] - root))
        worst = max(worst, abs(free.pop(nearest) - root))
    return worst / max(abs(np.asarray(theirs)))


def roots(motion):
    """Roots of a motion by the package: of its matrix, and of the equations of motion where it comes from an aircraft."""
    of_matrix = scipy.linalg.eigvals(np.array(motion["matrix"]))
    if "state" not in motion:
        return of_matrix, None
    equations = pitching(motion["state"], motion["longitudinal"]) if "longitudinal" in motion else lateral(motion["state"], motion["lateral"])
    return of_matrix, scipy.linalg.eigvals(equations[1], equations[0])
