"""Outlines held against a package for plane geometry."""

import numpy as np
from shapely.geometry import LinearRing, LineString, Point, Polygon

SAME_LENGTH = 1e-9  # greatest difference of lengths and of square roots of areas, m


def corners(points):
    return [(p["X"], p["Y"]) for p in points]


def distinct(points):
    """Corners without those that repeat the one before."""
    return [p for k, p in enumerate(points) if p != points[k - 1]]


def whole(points):
    """Whether an outline has an area and does not meet itself."""
    kept = distinct(points)
    if len(set(kept)) < 3:
        return False
    return LinearRing(kept).is_simple and Polygon(kept).area > 0


def differences(case):
    """Differences of lengths of a whole outline, m; infinite where a place lies on the other side."""
    outline = Polygon(corners(case["corners"]))
    yield "area", abs(np.sqrt(case["area"]) - np.sqrt(outline.area))
    yield "perimeter", case["perimeter"] - outline.length
    yield "centroid", outline.centroid.distance(Point(corners([case["centroid"]])[0]))
    for place, inside, away in zip(map(Point, corners(case["places"])), case["inside"], case["distances"]):
        yield "inside", 0.0 if inside == outline.contains(place) else np.inf
        yield "distance", abs(away) - outline.exterior.distance(place)
        yield "side", 0.0 if (away > 0) == inside else np.inf
    yield "distance of a line", case["lineAway"] - outline.distance(LineString(corners(case["line"])))
    yield "distance of an area", case["otherAway"] - outline.distance(Polygon(corners(case["other"])))


def check(cases, hold):
    """Compares every outline and prints one line."""
    worst, kept, met = 0.0, 0, 0
    for number, case in enumerate(cases):
        expected = whole(corners(case["corners"]))
        hold(f"outline {number}: whole {case['whole']}, by the package {expected}", float(case["whole"] != expected), 0.5)
        kept += expected
        if not (case["whole"] and expected):
            continue
        for what, difference in differences(case):
            worst = max(worst, hold(f"outline {number}: {what}", abs(difference), SAME_LENGTH))
        met += case["otherAway"] == 0
    print(f"{len(cases)} outlines, {kept} whole and the rest refused by both, {met} of them over another: lengths within {worst:.1e} m")
