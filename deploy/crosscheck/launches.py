"""Launches integrated anew: a run along strip, rails or stroke, then the flight in the angles of the path through the air.

The flight is written in airspeed and path angle, with the change of the wind met on the way as a force, where the core takes
velocities over the ground. Every kink of rails, cord and stroke ends a stretch. Source: the equations stated in the core's documentation,
Newton's second law along and across the path.
"""

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

WHEELS, RAMP, BUNGEE, HAND, CATAPULT = range(1, 6)
PITCH_TIME = 0.5  # time constant with which the path angle is held, s
CONTACT = 1e-6  # depth below the ground that counts as contact, m
LONGEST_FLIGHT = 1500.0  # beyond the distance asked for, m
SETTINGS = {"method": "DOP853", "rtol": 1e-12, "atol": 1e-12}


class Air:
    """Density, gravity and the wind of a logarithmic profile."""

    def __init__(self, numbers):
        self.density, self.gravity = numbers["Density"], numbers["Gravity"] or 9.80665
        self.head, self.cross = numbers["Headwind"], numbers["Crosswind"]
        self.roughness = numbers["Profile"]["RoughnessLength"]
        self.reference = numbers["Profile"]["ReferenceHeight"] or 10.0

    def factor(self, height):
        """Wind at a height over that at the reference height."""
        if self.roughness <= 0:
            return 1.0
        return np.log(height / self.roughness) / np.log(self.reference / self.roughness) if height > self.roughness else 0.0

    def shear(self, height):
        """Change of the factor with height, 1/m."""
        if self.roughness <= 0 or height <= self.roughness:
            return 0.0
        return 1.0 / (height * np.log(self.reference / self.roughness))


class Craft:
    """Forces on the model."""

    def __init__(self, numbers, air):
        self.numbers, self.air, self.mass, self.over = numbers, air, numbers["Mass"], numbers["WingHeight"]
        self.tilt = numbers["ThrustAngle"]

    def thrust(self, speed, time):
        e = self.numbers["Thrust"]
        built = 1 - (1 - e["Idle"]) * np.exp(-time / e["Spool"]) if e["Spool"] > 0 else 1.0
        return (e["Static"] - e["Fall"] * max(speed, 0.0)) * built

    def pressure(self, speed):
        """Dynamic pressure times area, N."""
        return 0.5 * self.air.density * self.numbers["Area"] * speed * abs(speed)

    def drag_coefficient(self, lift, height):
        n = self.numbers
        effect = 1.0
        if n["Span"] > 0:
            near = (16 * height / n["Span"]) ** 2
            effect = 1 - 1 / (1 + near)
        return n["CD0"] + effect * n["InducedFactor"] * lift**2


def stretch(rate, start, state, events, longest=60.0, step=np.inf):
    """Integrates to the first event; returns the time, the state, and which event it was."""
    for event in events:
        event.terminal = True
    solved = solve_ivp(rate, (start, start + longest), state, events=events, max_step=step, **SETTINGS)
    met = [k for k, times in enumerate(solved.t_events) if len(times)]
    if not met:
        raise ArithmeticError("no event is met")
    return solved.t[-1], solved.y[:, -1], met[0]


def rising(value):
    def event(t, state):
        return value(t, state)

    event.direction = 1
    return event


def falling(value):
    event = rising(value)
    event.direction = -1
    return event


class Launch:
    """One launch of the core, with its numbers under the core's names."""

    def __init__(self, case):
        self.numbers, self.air = case["launch"], Air(case["air"])
        self.craft = Craft(case["craft"], self.air)
        self.method, self.slope = self.numbers["Method"], self.numbers["Slope"]
        self.climb_lift = (self.numbers["ClimbLift"] or 0.7) * case["craft"]["CLMax"]
        self.screen = self.numbers["ScreenHeight"] or 10.0
        self.carried = self.craft.mass + (self.numbers["DollyMass"] if self.method in (RAMP, CATAPULT) else 0.0)
        self.rails = self.pieces_of_rails()
        self.foot = 0.0
        if self.method == RAMP and self.numbers["EndHeight"] > 0:
            self.foot = self.numbers["EndHeight"] - sum(length * np.sin(angle) for length, angle in self.rails)

    def table(self, name, value, result="Force", place="Travel"):
        points = self.numbers[name]
        return np.interp(value, [p[place] for p in points], [p[result] for p in points])

    def pieces_of_rails(self):
        """Lengths and slopes of the straight pieces."""
        profile = self.numbers["RailProfile"]
        if self.method != RAMP:
            return []
        if not profile:
            return [(self.numbers["Length"], self.slope)]
        steps = np.diff([p["Distance"] for p in profile])
        return list(zip(steps, np.arcsin(np.diff([p["Height"] for p in profile]) / steps)))

    def ground(self, distance):
        if self.numbers["Ground"]:
            return self.table("Ground", distance, "Height", "Distance")
        if self.method == WHEELS:
            return np.tan(self.slope) * distance
        if self.method == BUNGEE:
            return np.tan(self.slope) * min(distance, self.numbers["Stretch"] * np.cos(self.slope))
        return 0.0

    def ground_slope(self, distance):
        """Rise of the ground over distance there."""
        if self.numbers["Ground"]:
            places = [p["Distance"] for p in self.numbers["Ground"]]
            k = int(np.clip(np.searchsorted(places, distance, side="right"), 1, len(places) - 1))
            if not places[0] <= distance < places[-1]:
                return 0.0
            a, b = self.numbers["Ground"][k - 1], self.numbers["Ground"][k]
            return (b["Height"] - a["Height"]) / (b["Distance"] - a["Distance"])
        below = distance < self.numbers["Stretch"] * np.cos(self.slope)
        return np.tan(self.slope) if self.method == WHEELS or (self.method == BUNGEE and below) else 0.0

    # The run.

    def pull_of_cord(self, travel):
        """Efficiency times the cord's force at the stretch left, by Hooke or the pull test with its origin."""
        left, n = max(self.numbers["Stretch"] - travel, 0.0), self.numbers
        if not n["PullTest"]:
            return n["Efficiency"] * n["Stiffness"] * left
        places, forces = ([0.0] + [p[k] for p in n["PullTest"]] for k in ("Travel", "Force"))
        return n["Efficiency"] * np.interp(left, places, forces)

    def pull(self, travel):
        if self.method == BUNGEE:
            return self.pull_of_cord(travel)
        return self.table("Forces", travel) if self.method == CATAPULT else 0.0

    def joints(self):
        """Travels at which the force or the rails have a kink, the last at the end of the launcher."""
        n = self.numbers
        if self.method == RAMP:
            return list(np.cumsum([length for length, _ in self.rails]))
        if self.method == CATAPULT:
            return [p["Travel"] for p in n["Forces"] if p["Travel"] > 0]
        end = n["Stretch"]
        if n["HookForce"] > 0:
            end = brentq(lambda s: self.pull_of_cord(s) - n["HookForce"], 0, n["Stretch"], xtol=1e-14, rtol=1e-14)
        kinks = [n["Stretch"] - p["Travel"] for p in n["PullTest"] or []]
        return sorted(k for k in kinks if 0 < k < end) + [end]

    def along(self, travel, angle, lift, inertia, free=False):
        """Rate of a straight piece of the run; travel is what came before it, with its distance and height."""
        craft, n = self.craft, self.numbers
        done, distance, height = travel

        def wing(s):
            if self.method != RAMP:
                return craft.over
            place = distance + (s - done) * np.cos(angle)
            return height + (s - done) * np.sin(angle) - self.ground(place) + craft.over

        def speed(state):
            return state[1] + self.air.head * self.air.factor(wing(state[0])) * np.cos(angle)

        def rate(t, state):
            v = speed(state)
            push, pressure = craft.thrust(v, t), craft.pressure(v)
            weight = self.carried * self.air.gravity
            on_ground = weight * np.cos(angle) - max(pressure, 0.0) * lift - push * np.sin(craft.tilt)
            drag = pressure * (craft.drag_coefficient(lift, wing(state[0])) + craft.numbers["GroundDrag"])
            force = push * np.cos(craft.tilt) - drag - n["Friction"] * max(on_ground, 0.0) - weight * np.sin(angle)
            force += 0.0 if free else self.pull(state[0])
            return [state[1], (max(force, 0.0) if state[1] <= 0 else force) / inertia]

        return rate, speed

    def carries(self, speed, lift, angle):
        """Event that lift and upward thrust carry the model."""
        craft = self.craft
        return rising(
            lambda t, s: max(craft.pressure(speed(s)), 0) * lift
            + craft.thrust(speed(s), t) * np.sin(craft.tilt)
            - craft.mass * self.air.gravity * np.cos(angle)
        )

    def roll(self, time, state):
        """On wheels: tail down, level, rotated until the wing carries it, or floats off before where the controls set the time."""
        n, craft = self.numbers, self.craft
        controlled = n["TailUpSpeed"] > 0 or n["RotationSpeed"] > 0
        attitudes = [(craft.numbers["CLGround"], max(n["LiftoffSpeed"], n["RotationSpeed"]))]
        if n["TailUpSpeed"] > 0:
            attitudes.insert(0, (n["CLTailDown"], n["TailUpSpeed"]))
        for lift, wanted in attitudes:
            rate, speed = self.along((0, 0, 0), self.slope, lift, craft.mass)
            fast = rising(lambda t, s, wanted=wanted: speed(s) - wanted)
            if fast(time, state) >= 0:
                continue
            events = [fast] + ([self.carries(speed, lift, self.slope)] if controlled else [])
            time, state, met = stretch(rate, time, state, events)
            if met == 1:
                return time, state, speed(state)
        rate, speed = self.along((0, 0, 0), self.slope, self.climb_lift, craft.mass)
        leaves = self.carries(speed, self.climb_lift, self.slope)
        if leaves(time, state) < 0:
            time, state, _ = stretch(rate, time, state, [leaves])
        return time, state, speed(state)

    def pushed(self, time, state):
        """By a launcher, piece by piece; a model too slow for its wing slides on without the cord."""
        lift, craft = self.craft.numbers["CLGround"], self.craft
        inertia = craft.mass + self.numbers["CordMass"] / 3 if self.method == BUNGEE else self.carried
        before, angles = (0.0, 0.0, self.foot), [angle for _, angle in self.rails]
        for k, joint in enumerate(self.joints()):
            angle = angles[k] if angles else self.slope
            rate, speed = self.along(before, angle, lift, inertia)
            time, state, _ = stretch(rate, time, state, [rising(lambda t, s, joint=joint: s[0] - joint)])
            piece = joint - before[0]
            before = (joint, before[1] + piece * np.cos(angle), before[2] + piece * np.sin(angle))
        if self.method == BUNGEE:
            rate, speed = self.along(before, angle, lift, craft.mass, free=True)
            leaves = self.carries(speed, self.climb_lift, angle)
            if leaves(time, state) < 0:
                time, state, _ = stretch(rate, time, state, [leaves])
                piece = state[0] - before[0]
                before = (state[0], before[1] + piece * np.cos(angle), before[2] + piece * np.sin(angle))
        return time, state, speed(state), before, angle

    def hold_time(self):
        """Time until the thrust in the standing wind has grown to the release force."""
        needed = self.numbers["ReleaseForce"]
        blowing = max(self.air.head * self.air.factor(self.craft.over) * np.cos(self.slope), 0.0)
        if needed <= 0 or self.craft.thrust(blowing, self.numbers["ThrustTime"]) >= needed:
            return 0.0
        opened = self.numbers["ThrustTime"]
        return brentq(lambda t: self.craft.thrust(blowing, opened + t) - needed, 0, 60, xtol=1e-13)

    # The flight: distance, height, airspeed, path angle through the air, drift.

    def sines(self, height, speed, angle, thrust):
        """Lift coefficient by which the pilot flies: no more than held, than the load allows, than the climb needs that the thrust keeps up."""
        n, craft, weight = self.numbers, self.craft, self.craft.mass * self.air.gravity
        if n["HoldLift"]:
            return self.climb_lift
        pressure = craft.pressure(speed)
        drag = pressure * craft.drag_coefficient(min(self.climb_lift, weight / pressure), height)
        steepest = np.sin(n["MaxClimbAngle"] or np.radians(20))
        target = np.arcsin(np.clip((thrust - drag) / weight, -1, steepest))
        change = (target - angle + np.pi) % (2 * np.pi) - np.pi
        load = min(n["MaxLoad"] or 1.3, np.cos(angle) + speed * change / (self.air.gravity * PITCH_TIME))
        return np.clip((load * weight - thrust * np.sin(craft.tilt)) / pressure, 0, self.climb_lift)

    def wing(self, state):
        return state[1] - self.ground(state[0]) + self.craft.over

    def fly(self, t, state):
        distance, _, speed, angle, _ = state
        craft, air, height = self.craft, self.air, self.wing(state)
        thrust, pressure = craft.thrust(speed, t), craft.pressure(speed)
        lift = self.sines(height, speed, angle, thrust)
        forward, up = speed * np.cos(angle) - air.head * air.factor(height), speed * np.sin(angle)
        gust = air.head * air.shear(height) * (up - self.ground_slope(distance) * forward)
        along = thrust * np.cos(craft.tilt) - pressure * craft.drag_coefficient(lift, height)
        across = pressure * lift + thrust * np.sin(craft.tilt)
        return [
            forward,
            up,
            along / craft.mass - air.gravity * np.sin(angle) + gust * np.cos(angle),
            (across / craft.mass - air.gravity * np.cos(angle) - gust * np.sin(angle)) / speed,
            -air.cross * air.factor(height),
        ]

    def gap(self, state):
        """Height over the screen, which stands on the higher of the ground and the start."""
        return state[1] - max(0.0, self.ground(state[0])) - self.screen

    def flight(self, time, state):
        """Flies to the end and returns the figures of the flight."""
        reach = self.numbers["Distance"]
        contact = falling(lambda t, s: s[1] - self.ground(s[0]) + CONTACT)
        far = rising(lambda t, s: max(min(s[0] - reach, self.gap(s)), s[0] - reach - LONGEST_FLIGHT))
        screen, lowest = rising(lambda t, s: self.gap(s)), rising(lambda t, s: np.sin(s[3]))
        contact.terminal = far.terminal = True
        solved = solve_ivp(self.fly, (time, time + 60), state, events=[contact, far, screen, lowest], max_step=0.05, **SETTINGS)
        end = solved.y[:, -1]
        low = min([state, end] + list(solved.y_events[3]), key=lambda s: s[1])
        at_screen = [(solved.t_events[2][0], solved.y_events[2][0])] if len(solved.t_events[2]) else []
        if not at_screen and abs(self.gap(end)) < CONTACT:
            at_screen = [(solved.t[-1], end)]
        started = self.numbers["ThrustTime"] + self.hold_time()
        when, there = at_screen[0] if at_screen else (started, np.zeros(5))
        return {
            "lowest": low[1], "lowest at": low[0],
            "screen at": there[0], "screen time": when - started, "screen speed": there[2],
            "end": end[0], "end height": end[1], "end drift": end[4], "end time": solved.t[-1] - started, "end speed": end[2],
        }  # fmt: skip

    def figures(self):
        hold = self.hold_time()
        start = self.numbers["ThrustTime"] + hold
        if self.method == HAND:
            angle, time, travel, place, speed = self.slope, start, [0.0, self.numbers["HandSpeed"]], (0.0, 0.0, self.numbers["HandHeight"]), None
        elif self.method == WHEELS:
            (time, travel, speed), angle = self.roll(start, np.zeros(2)), self.slope
            place = (travel[0], travel[0] * np.cos(angle), travel[0] * np.sin(angle))
        else:
            time, travel, speed, place, angle = self.pushed(start, np.zeros(2))
        height = place[2] - self.ground(place[1]) + self.craft.over
        forward, up = travel[1] * np.cos(angle) + self.air.head * self.air.factor(height), travel[1] * np.sin(angle)
        state = np.array([place[1], place[2], np.hypot(forward, up), np.arctan2(up, forward), 0.0])
        # The airspeed of a run is that along the ground or rails, at the height over the ground of the run.
        out = {"hold": hold, "run": travel[0], "end of run": place[1], "height": place[2], "ground speed": travel[1], "time": time - start}
        out["airspeed"] = state[2] if speed is None else speed
        self.left = (place, travel[1], angle)
        return out | self.flight(time, state)

    def dolly(self, numbers):
        """Fall of the dolly, in airspeed vectors."""
        (_, distance, height), speed, angle = self.left
        speed = max(speed - numbers["Kick"], 0.0)
        factor = 0.5 * self.air.density * numbers["DragArea"] / self.numbers["DollyMass"]

        def rate(t, s):
            blowing = self.air.factor(s[1] - self.ground(s[0])) * np.array([-self.air.head, 0.0, -self.air.cross])
            through = s[3:] - blowing
            return [*s[3:], *(-factor * np.linalg.norm(through) * through - np.array([0, self.air.gravity, 0]))]

        landed = falling(lambda t, s: s[1] - self.ground(s[0]) + CONTACT)
        time, s, _ = stretch(rate, 0, [distance, height, 0, speed * np.cos(angle), speed * np.sin(angle), 0], [landed])
        return {"dolly at": s[0], "dolly drift": s[2], "dolly time": time, "dolly speed": np.linalg.norm(s[3:])}


def check(cases, compare):
    """Compares every launch; one line each."""
    for case in cases:
        launch = Launch(case)
        theirs = launch.figures()
        if "dolly" in case:
            theirs |= launch.dolly(case["dolly"])
        compare(case["name"], case["figures"], theirs, ("airspeed", "run", "time", "lowest", "screen at", "end"))
