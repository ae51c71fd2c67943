"""Falls after a loss of link integrated anew, with lift by the cross products of airspeed and the vertical.

What engine and surfaces do is a list of stretches of time, each with its own lift coefficient and functions of time for bank and thrust.
"""

import numpy as np
from scipy.optimize import brentq

from launches import Air, falling, rising, stretch

FLY_AWAY, NEUTRAL, SPIRAL, IDLE, HOLD, BREAKUP = range(6)
UP = np.array([0.0, 0.0, 1.0])
LEAST_WIND_HEIGHT = 1.0  # m
FADE = 0.1  # level part of the airspeed over all of it below which lift fades
ENDLESS = 7000.0  # s


def lag(start, end, constant):
    """A value that goes from one to another."""
    return lambda t: end + (start - end) * (np.exp(-t / constant) if constant > 0 else 0.0)


class Fall:
    def __init__(self, case):
        self.loss, self.release, self.model = case["loss"], case["release"], case["loss"]["Model"]
        wind = self.loss["Wind"]
        self.air = Air({"Density": self.loss["Density"], "Gravity": self.loss["Gravity"], "Headwind": 0, "Crosswind": 0, "Profile": wind["Profile"]})
        self.blows = -wind["Speed"] * np.array([np.sin(wind["From"]), np.cos(wind["From"]), 0.0])
        self.inertia = self.air.density * self.model["Area"] / (2 * self.model["Mass"])

    def wind(self, height):
        return self.blows * self.air.factor(max(height, LEAST_WIND_HEIGHT))

    def trimmed(self):
        """Lift coefficient and thrust that hold the release: across and along the path."""
        r, m, g = self.release, self.model, self.air.gravity
        pressure = self.inertia * m["Mass"] * r["Speed"] ** 2
        lift = min(m["Mass"] * g * np.cos(r["Climb"]) / (pressure * np.cos(r["Bank"])), m["CLMax"])
        drag = pressure * (m["CD0"] + m["InducedFactor"] * lift**2)
        return lift, max(drag + m["Mass"] * g * np.sin(r["Climb"]), 0.0)

    def stretches(self):
        """Duration, lift coefficient, bank and thrust over time, whether the engine stands, in order."""
        r, m, action = self.release, self.model, self.loss["Action"]
        lift, thrust = self.trimmed()
        bank, cut = lag(r["Bank"], r["Bank"], 0), lag(thrust, 0.0, m["RunDown"])
        before = (self.loss["Delay"], lift, bank, lag(thrust, thrust, 0), False)
        levels = lag(r["Bank"], 0.0, m["LevelTime"])
        if action == BREAKUP:
            return [before, (ENDLESS, None, bank, lag(0, 0, 0), True)]
        if action == SPIRAL:
            return [before, (ENDLESS, m["SpiralLift"], lag(r["Bank"], m["SpiralBank"], m["RollTime"]), cut, True)]
        if action == HOLD:
            return [(m["HoldEndurance"], *before[1:]), (ENDLESS, lift, bank, cut, True)]
        if action == IDLE:
            idling, ends = lag(thrust, m["IdleThrust"], m["RunDown"]), m["IdleEndurance"]
            dry = lag(idling(ends), 0.0, m["RunDown"])
            return [before, (ends, m["NeutralLift"], levels, idling, False), (ENDLESS, m["NeutralLift"], lag(levels(ends), 0.0, m["LevelTime"]), dry, True)]
        neutral = (ENDLESS, m["NeutralLift"], levels, cut, True)
        return [before, neutral] if action == NEUTRAL else [neutral]

    def rate(self, began, lift, bank, thrust, stands):
        m, g, throttle = self.model, self.air.gravity, self.trimmed()[1]
        parasite = m["DragArea"] / m["Area"] if lift is None else m["CD0"] + (m["StoppedDrag"] if stands else 0.0)

        def forces(t, state):
            u = state[3:] - self.wind(state[2])
            speed = np.linalg.norm(u)
            ahead, dynamic = u / speed, self.inertia * speed**2
            pushed = thrust(t - began)
            # What the airspeed takes of the thrust falls with the thrust of an engine that runs down.
            lost = m["ThrustSlope"] * pushed / throttle * (speed - self.release["Speed"]) if throttle > 0 else 0.0
            push = max(pushed - lost, 0.0) / m["Mass"]
            held = lift or 0.0
            along = push - dynamic * (parasite + m["InducedFactor"] * held**2)
            if held and m["PathDamping"]:
                gain = along - g * ahead[2]
                held = np.clip(held * (1 + 2 * np.sqrt(2) * m["PathDamping"] * gain / g), -m["CLMax"] / 2, m["CLMax"])
                along = push - dynamic * (parasite + m["InducedFactor"] * held**2)
            acceleration = along * ahead - g * UP
            level = np.hypot(ahead[0], ahead[1])
            if held and level > 0:
                right = np.cross(ahead, UP) / level
                normal = np.cross(right, ahead)
                turned = normal * np.cos(bank(t - began)) + right * np.sin(bank(t - began))
                acceleration = acceleration + dynamic * held * min(level / FADE, 1.0) * turned
            return [*state[3:], *acceleration]

        return forces

    def flown_off(self):
        """Place, speed and time at the end of the fuel at top speed, level: T = D."""
        m, r = self.model, self.release
        weight = m["Mass"] * self.air.gravity

        def lacking(speed):
            pressure = self.inertia * m["Mass"] * speed**2
            return pressure * m["CD0"] + m["InducedFactor"] * weight**2 / pressure - (m["FullThrust"] - m["ThrustSlope"] * speed)

        speed = brentq(lacking, 25, 200, xtol=1e-13)
        ahead = speed * np.array([np.sin(r["Heading"]), np.cos(r["Heading"]), 0.0])
        place = np.array([r["Place"]["X"], r["Place"]["Y"], r["Height"]]) + (ahead + self.wind(r["Height"])) * m["FullEndurance"]
        self.release = r | {"Place": {"X": place[0], "Y": place[1]}, "Speed": speed, "Climb": 0.0, "Bank": 0.0}
        return m["FullEndurance"]

    def figures(self):
        before = self.flown_off() if self.loss["Action"] == FLY_AWAY else 0.0
        r, time = self.release, 0.0
        through = r["Speed"] * np.array([np.sin(r["Heading"]) * np.cos(r["Climb"]), np.cos(r["Heading"]) * np.cos(r["Climb"]), np.sin(r["Climb"])])
        state = np.array([r["Place"]["X"], r["Place"]["Y"], r["Height"], *(through + self.wind(r["Height"]))])
        landed = falling(lambda t, s: s[2])
        for lasts, *law in self.stretches():
            if lasts <= 0:
                continue
            rate, ends = self.rate(time, *law), rising(lambda t, s, until=time + lasts: t - until)
            met, calm = 1, 1.0
            while met == 1:
                # The wind has a kink where its profile ends.
                bends = (lambda t, s: s[2] - LEAST_WIND_HEIGHT) if calm else (lambda t, s: 1.0)
                time, state, met = stretch(rate, time, state, [landed, falling(bends), ends], lasts + 1.0)
                calm = 0.0
            if met == 0:
                break
        speed = np.linalg.norm(state[3:])
        return {
            "east": state[0], "north": state[1], "time": time + before, "speed": speed, "angle": np.arctan2(-state[5], np.hypot(state[3], state[4])),
            "energy": self.model["Mass"] * speed**2 / 2, "speed east": state[3], "speed north": state[4], "speed up": state[5],
        }  # fmt: skip


def check(cases, compare):
    """Compares every fall; one line each."""
    for case in cases:
        compare(case["name"], case["figures"], Fall(case).figures(), ("east", "north", "time", "speed"))
