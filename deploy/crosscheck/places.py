"""Geodesics and the local plane held against the package of the method's author, and the sun against an ephemeris."""

import ephem
import numpy as np
from geographiclib.geodesic import Geodesic

SAME_LENGTH = 1e-4  # difference of a geodesic's length and ends, m: what the core claims
SAME_PLANE = 1e-3  # difference in the plane over 2 km, m
SAME_AZIMUTH = 1e-9  # rad
SAME_SKY = 0.01  # difference on the sky, degrees: what the core claims
SAME_TIME = 60.0  # difference of rising and setting, s: what the core claims below 65 degrees of latitude
HIGH = 5.0  # elevation from which refraction is compared, degrees; lower down the weather rules it
SAME_REFRACTION = 0.005  # difference of how far the air lifts the sun by two formulas, degrees

WGS84 = Geodesic.WGS84


def degrees(position):
    return np.degrees(position["Latitude"]), np.degrees(position["Longitude"])


def radii(latitude):
    """Radii of the ellipsoid across and along the meridian, m."""
    square = 1 - WGS84.f * (2 - WGS84.f) * np.sin(latitude) ** 2
    across = WGS84.a / np.sqrt(square)
    return np.array([across, across * (1 - WGS84.f) ** 2 / square])


def turned(a, b):
    """Angle between two directions, rad."""
    return abs((a - b + np.pi) % (2 * np.pi) - np.pi)


def apart(a, b):
    """Length between two positions of one height, m."""
    return WGS84.Inverse(*degrees(a), *degrees(b))["s12"]


def ends(case, distance):
    there = WGS84.Direct(*degrees(case["datum"]), np.degrees(case["azimuthRadians"]), distance)
    return {"Latitude": np.radians(there["lat2"]), "Longitude": np.radians(there["lon2"])}


def check_plane(case, name, hold):
    """The near place in the plane: arc and azimuth of the package on the circle that touches the ellipsoid there (Euler's radius), stretched by the
    height over the ellipsoid east and north."""
    near = WGS84.Inverse(*degrees(case["datum"]), *degrees(case["near"]))
    azimuth, both, high = np.radians(near["azi1"]), radii(case["datum"]["Latitude"]), case["datum"]["Height"]
    ahead = np.array([np.sin(azimuth), np.cos(azimuth)])
    arc = 1 / np.sum(ahead**2 / both)
    level = arc * np.sin(near["s12"] / arc) * ahead * (1 + high / both)
    expected = np.array([*level, -np.sum(level**2 / (both + high)) / 2])
    difference = np.max(np.abs(expected - [case["local"][k] for k in "XYZ"]))
    back = max(apart(case["near"], case["back"]), abs(case["near"]["Height"] - case["back"]["Height"]))
    return hold(f"{name}: plane", max(difference, back), SAME_PLANE)


def check_geodesics(case, name, hold):
    """Lengths both ways, near and far; ends of lines of up to 2 km and 2,000 km."""
    worst = 0.0
    for ours, there in ((case["short"], case["near"]), (case["long"], case["far"])):
        theirs = WGS84.Inverse(*degrees(case["datum"]), *degrees(there))
        worst = max(worst, hold(f"{name}: length", abs(ours["Length"] - theirs["s12"]), SAME_LENGTH))
        slack = SAME_AZIMUTH + SAME_LENGTH / max(theirs["s12"], 1e-3)
        for ours_azimuth, key in ((ours["Start"], "azi1"), (ours["End"], "azi2")):
            hold(f"{name}: azimuth", turned(ours_azimuth, np.radians(theirs[key])), slack)
    for place, distance in ((case["near"], case["distanceMeters"]), (case["along"], 1000 * case["distanceMeters"])):
        worst = max(worst, hold(f"{name}: end after {distance:.0f} m", apart(place, ends(case, distance)), SAME_LENGTH))
    return worst


def check_places(cases, hold):
    plane = max(check_plane(case, f"place {k}", hold) for k, case in enumerate(cases))
    lines = max(check_geodesics(case, f"place {k}", hold) for k, case in enumerate(cases))
    print(f"{len(cases)} places: plane within {plane * 1e3:.4f} mm over 2 km, geodesics within {lines * 1e3:.4f} mm")


def observer(case, pressure=0.0):
    seen = ephem.Observer()
    seen.lat, seen.lon, seen.elevation, seen.pressure = case["place"]["Latitude"], case["place"]["Longitude"], 0, pressure
    seen.temp = case["place"]["Temperature"] - 273.15
    seen.date = instant(case["moment"])
    return seen


def instant(moment):
    return ephem.Date(ephem.Date("1970/1/1") + moment / 86400)


def check_sky(case, name, hold):
    """Place of the sun, and how much the air lifts it."""
    sun, position = ephem.Sun(observer(case)), case["position"]
    off = max(turned(position["Azimuth"], sun.az) * np.cos(sun.alt), abs(position["True"] - sun.alt))
    off = hold(f"{name}: place", np.degrees(off), SAME_SKY)
    if np.degrees(sun.alt) > HIGH:
        lifted = ephem.Sun(observer(case, case["place"]["Pressure"] / 100)).alt
        hold(f"{name}: refraction", np.degrees(abs(position["Elevation"] - position["True"] - (lifted - sun.alt))), SAME_REFRACTION)
    return off


def check_day(case, name, hold):
    """Rising and setting, and the ends of civil twilight where there are any."""
    worst = 0.0
    for span, horizon in ((case["day"]["Sun"], "-0:50"), (case["day"]["Twilight"], "-6")):
        if span["Always"] or span["Never"]:
            continue
        seen = observer(case)
        seen.horizon, seen.date = horizon, instant(case["day"]["Noon"])
        begin, end = (find(ephem.Sun(), use_center=True) for find in (seen.previous_rising, seen.next_setting))
        off = max(abs(instant(span["Begin"]) - begin), abs(instant(span["End"]) - end)) * 86400
        worst = max(worst, hold(f"{name}: horizon {horizon}", off, SAME_TIME))
    return worst


def check_suns(cases, hold):
    sky = max(check_sky(case, f"moment {case['moment']:.0f}", hold) for case in cases)
    day = max(check_day(case, f"moment {case['moment']:.0f}", hold) for case in cases)
    print(f"{len(cases)} moments: sun within {sky:.4f} degrees, rising and setting within {day:.1f} s")


def check(cases, hold):
    check_places(cases["places"], hold)
    check_suns(cases["suns"], hold)
