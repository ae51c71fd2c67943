"""Landings integrated anew: slope by root, flare in the angles of the path through the air, float and roll along the ground.

The height at which the flare starts is taken from the core, which finds it to a millimetre, and with it whether the path runs along the
ground or meets it first. That it ends at no height, or with no more sink than a millimetre more would have taken, is held here.
"""

import numpy as np
from scipy.optimize import brentq

from launches import SETTINGS, Air, Craft, falling, rising, solve_ivp, stretch

CLOSE = 1.1e-3  # height over the ground at which the core lets a flare end, m
PARTS = {"flare": "total", "float": "total", "roll": "total", "flare time": "roll time", "float time": "roll time"}  # what parts are compared with


class Landing:
    def __init__(self, case):
        self.plan, self.air = case["plan"], Air(case["air"])
        self.craft = Craft(case["craft"], self.air)
        n, p = self.craft.numbers, self.plan
        self.weight, self.slope = n["Mass"] * self.air.gravity, p["Slope"]
        self.stall = np.sqrt(2 * self.weight / (self.air.density * n["Area"] * n["CLMax"]))
        self.speed = p["ApproachSpeed"] or (p["ApproachRatio"] or 1.3) * self.stall

    def idle(self, speed):
        return self.plan["Idle"]["Static"] - self.plan["Idle"]["Fall"] * max(speed, 0.0)

    def head(self, clearance):
        return self.air.head * self.air.factor(max(clearance, 0.0) + self.craft.over)

    def ground(self, distance):
        return np.tan(self.slope) * max(distance, 0.0)

    def drag(self, speed, lift, height):
        pressure = self.craft.pressure(speed)
        return pressure * self.craft.drag_coefficient(lift / pressure, height)

    def approach(self):
        """Slope with idle thrust, slope flown, thrust for it: sin(ga) = (D - T)/(W - m w' V cos(ga)), over the ground by the wind triangle."""
        top = max(self.plan["ScreenHeight"], 4.0)
        blowing, growth = self.head(top / 2), (self.head(top) - self.head(top / 4)) / (0.75 * top)

        def lacking(angle):
            """Thrust that a slope through the air lacks."""
            pull = self.weight - self.craft.mass * growth * self.speed * np.cos(angle)
            return self.drag(self.speed, self.weight * np.cos(angle), np.inf) - pull * np.sin(angle)

        def over_ground(angle):
            return np.arctan2(self.speed * np.sin(angle), self.speed * np.cos(angle) - blowing)

        steepest = over_ground(brentq(lambda angle: lacking(angle) - self.idle(self.speed), -1.3, 1.3, xtol=1e-15))
        wanted = self.plan["Angle"] or min(steepest, np.radians(12))
        flown = min(wanted, steepest)
        through = brentq(lambda angle: over_ground(angle) - flown, -1.3, 1.3, xtol=1e-15)
        return steepest, flown, lacking(through)

    def flare(self, height, angle, meets):
        """From a height of the slope until the path runs along the ground or meets it: where it starts, the time, the end, its forward speed and sink."""
        aim, load = self.plan["AimPoint"], 1 + (self.plan["FlareLoad"] or 0.1)
        start = aim - (height - self.ground(aim)) / np.tan(angle)
        craft, blowing = self.craft, self.head(height - self.ground(start))
        through = angle - np.arcsin(blowing * np.sin(angle) / self.speed)

        def rate(t, s):
            distance, high, speed, path = s
            clearance = high - self.ground(distance)
            pressure, over = craft.pressure(speed), max(clearance, 0.0) + craft.over
            lift = min(load * self.weight, pressure * craft.numbers["CLMax"])
            forward, up = speed * np.cos(path) - self.head(clearance), speed * np.sin(path)
            rise = np.tan(self.slope) if distance > 0 else 0.0
            gust = self.air.head * self.air.shear(over) * (up - rise * forward) if clearance > 0 else 0.0
            along = self.idle(speed) - pressure * craft.drag_coefficient(lift / pressure, over)
            return [
                forward,
                up,
                along / craft.mass - self.air.gravity * np.sin(path) + gust * np.cos(path),
                (lift / craft.mass - self.air.gravity * np.cos(path) - gust * np.sin(path)) / speed,
            ]

        rises = np.tan(self.slope)
        level = rising(lambda t, s: rate(t, s)[1] - rises * rate(t, s)[0])
        contact = falling(lambda t, s: s[1] - self.ground(s[0]))
        time, end, _ = stretch(rate, 0, [start, height, self.speed, -through], [contact if meets else level], step=0.05)
        forward, up, _, _ = rate(time, end)
        sink = rises * forward - up
        self.missed = abs(end[1] - self.ground(end[0]))  # a flare that the ground meets sinks on; its sink is compared
        return start, time, end, forward, sink

    def afloat(self, speed):
        """Along the ground with the lift of the weight across it, to the touchdown speed: time and distance along the ground."""
        wind, wanted = self.head(0.0), (self.plan["TouchdownRatio"] or 1.1) * self.stall
        if speed + wind <= wanted:
            return 0.0, 0.0, speed

        def rate(t, s):
            drag = self.drag(s[1] + wind, self.weight * np.cos(self.slope), self.craft.over)
            return [s[1], (self.idle(s[1] + wind) - drag - self.weight * np.sin(self.slope)) / self.craft.mass]

        time, end, _ = stretch(rate, 0, [0, speed], [falling(lambda t, s: s[1] + wind - wanted)], 300)
        return time, end[0], end[1]

    def roll(self, speed):
        """To rest: time and distance along the ground."""
        p, craft, wind = self.plan, self.craft, self.head(0.0)
        lift = craft.numbers["CLGround"]
        drag = craft.drag_coefficient(lift, craft.over) + (0.0 if p["Belly"] else craft.numbers["GroundDrag"])

        def rated(friction):
            def rate(t, s):
                pressure = craft.pressure(s[1] + wind)
                normal = max(self.weight * np.cos(self.slope) - max(pressure, 0.0) * lift, 0.0)
                thrust = 0.0 if p["Shutdown"] else self.idle(s[1] + wind)
                return [s[1], (thrust - pressure * drag - friction * normal - self.weight * np.sin(self.slope)) / craft.mass]

            return rate

        time, state = 0.0, [0.0, speed]
        if p["BrakeFriction"] and not p["Belly"]:
            solved = solve_ivp(rated(p["Friction"]), (0, p["BrakeDelay"]), state, **SETTINGS)
            time, state = p["BrakeDelay"], solved.y[:, -1]
        friction = p["BrakeFriction"] if p["BrakeFriction"] and not p["Belly"] else p["Friction"]
        time, end, _ = stretch(rated(friction), time, state, [falling(lambda t, s: s[1])], 300)
        return time, end[0]

    def figures(self, height, sink, levels):
        """All parts, the flare from a height, met by the ground at a sink; what levels floats on."""
        steepest, angle, thrust = self.approach()
        start, flare_time, end, pace, left = self.flare(height, angle, sink > 1e-6)
        aim, level = self.plan["AimPoint"], np.cos(self.slope)
        screen = aim - (self.plan["ScreenHeight"] - self.ground(aim)) / np.tan(angle)
        float_time, floated, slow = self.afloat(pace / level)
        roll_time, rolled = self.roll(slow)
        stops = end[0] + (floated + rolled) * level
        return {
            "stall": self.stall, "approach speed": self.speed, "steepest": steepest, "angle": angle, "thrust": thrust,
            "flare height": height, "approach": start - screen, "flare": end[0] - start, "flare time": flare_time,
            "flare end height": end[1], "flare end speed": end[2], "flare end sink": left,
            "float": floated * level, "float time": float_time, "touchdown speed": slow + self.head(0.0) if levels else end[2],
            "roll": rolled * level, "roll time": roll_time, "total": stops - screen, "stops at": stops,
        }  # fmt: skip


def check(cases, compare, hold):
    """Compares every landing; one line each."""
    for case in cases:
        landing = Landing(case)
        theirs = landing.figures(case["figures"]["flare height"], case["figures"]["flare end sink"], case["levels"])
        hold(f"{case['name']}: flare misses the ground by {landing.missed:.4f} m", landing.missed, CLOSE)
        scales = {part: theirs[whole] for part, whole in PARTS.items()}
        compare(case["name"], case["figures"], theirs, ("flare", "float", "touchdown speed", "roll", "total"), scales)
