"""Closed forms of the core held against the equations behind them: vortex sheet, balance of momentum and energy, beam elements, fields at
a boundary, loads along a span by quadrature, and a fin in unsteady air forces."""

import numpy as np
from scipy import constants
from scipy.integrate import quad, solve_bvp
from scipy.linalg import eigh
from scipy.optimize import brentq, root
from scipy.special import hankel2

ELEMENTS = 40  # of a strut
FIN = (1.0, 1.5)  # least and most flutter speed of strip theory over the core's screening speed
STANDARD_HEAT_RATIO = 1.4
POISSON = 0.3
SAME = {  # greatest relative difference of a kind, 1e-9 where none is named
    "hinge": 1e-7,
    "schrenk": 1e-5,  # the core cuts the span into strips
    "ellipse": 1e-5,
    "chord": 1e-5,
    "strut": 1e-6,
    "pushrod": 2e-3,  # the core's form is that of shallow bows
}


def sheet(hinge, x):
    """Strength of the vortex sheet of a plate, chord 1, bent by a unit angle behind the hinge, over the airspeed: inversion of the integral equation with a
    smooth trailing edge, its principal value by quadrature in s, where the place is 1 - s^2."""
    pole = np.sqrt(1 - x)
    value, _ = quad(lambda s: -2 * np.sqrt(1 - s * s) / (s + pole), 0, np.sqrt(1 - hinge), weight="cauchy", wvar=pole, limit=400)
    return 2 / np.pi * np.sqrt((1 - x) / x) * value


def hinge_moment(bent, ratio):
    """Moment about the hinge over dynamic pressure and flap chord squared, the plate bent at a place."""
    nose = 1 - ratio
    moment, _ = quad(lambda x: 2 * sheet(bent, x) * (x - nose), nose, 1, limit=400, epsabs=1e-11, epsrel=1e-10)
    return -moment / ratio**2


def propeller(case):
    """Thrust and speed added at the disc: balance of momentum, of energy, and the pressure jump after Bernoulli."""
    density, area, power, speed = (case[k] for k in ("density", "area", "power", "speed"))
    scale = (power / (density * area)) ** (1 / 3)

    def balances(logarithms):
        disc, added, thrust = np.exp(logarithms) * np.array([scale, scale, power / scale])
        wake = speed + added
        jump = density * (wake**2 - speed**2) / 2
        return [thrust / (density * area * disc * added) - 1, disc * area * jump / power - 1, area * jump / thrust - 1]

    solved = root(balances, np.log([speed / scale + 0.8, 1.0, 0.8]), tol=1e-13)
    disc, _, thrust = np.exp(solved.x) * np.array([scale, scale, power / scale])
    return thrust, disc - speed


def duct(case):
    """Thrust and exit speed where the jet leaves at ambient pressure: the energy given to it is the power."""
    density, area, power, speed = (case[k] for k in ("density", "area", "power", "speed"))
    given = lambda exit_speed: density * area * exit_speed * (exit_speed**2 - speed**2) / 2 - power
    exit_speed = brentq(given, speed, speed + 10 * (power / (density * area)) ** (1 / 3) + 1, xtol=1e-13, rtol=1e-14)
    return density * area * exit_speed * (exit_speed - speed), exit_speed


def strut(case):
    """Load that buckles a strut of beam elements, by the ends that its effective length stands for."""
    bending = case["modulus"] * np.pi * (case["outer"] ** 4 - case["inner"] ** 4) / 64
    h = case["length"] / ELEMENTS
    turn = np.diag([1, h, 1, h])
    stiff = bending / h**3 * turn @ np.array([[12, 6, -12, 6], [6, 4, -6, 2], [-12, -6, 12, -6], [6, 2, -6, 4]]) @ turn
    push = turn @ np.array([[36, 3, -36, 3], [3, 4, -3, -1], [-36, -3, 36, -3], [3, -1, -3, 4]]) @ turn / (30 * h)
    size = 2 * (ELEMENTS + 1)
    k, g = np.zeros((size, size)), np.zeros((size, size))
    for i in range(ELEMENTS):
        part = slice(2 * i, 2 * i + 4)
        k[part, part] += stiff
        g[part, part] += push
    held = {1: [0, size - 2], 2: [0, 1], 0.5: [0, 1, size - 2, size - 1]}[case["ends"]]
    free = [i for i in range(size) if i not in held]
    return 1 / eigh(g[np.ix_(free, free)], k[np.ix_(free, free)], eigvals_only=True)[-1]


def pushrod(case):
    """Shortening of a bent rod under a push: its shape by the bending equation, its length by quadrature."""
    length, bow = case["length"], case["bow"]
    square = case["push"] / (case["modulus"] * np.pi * case["diameter"] ** 4 / 64)
    rise = lambda x: bow * np.sin(np.pi * x / length)
    slope = lambda x: bow * np.pi / length * np.cos(np.pi * x / length)
    grid = np.linspace(0, length, 101)
    bent = solve_bvp(
        lambda x, y: np.vstack([y[1], -square * (y[0] + rise(x))]), lambda a, b: np.array([a[0], b[0]]), grid, np.zeros((2, 101)), tol=1e-10, max_nodes=20000
    )
    # The difference of two lengths as one integrand: square roots of nearly one would lose the digits.
    longer, _ = quad(lambda x: (lambda new, old: (new**2 - old**2) / (np.sqrt(1 + new**2) + np.sqrt(1 + old**2)))(slope(x) + bent.sol(x)[1], slope(x)), 0, length, limit=200)
    return case["push"] * length / (case["modulus"] * np.pi * case["diameter"] ** 2 / 4) + longer


def reflection(case, upright):
    """Wave thrown back by ground: electric and magnetic fields along the boundary are the same on both sides."""
    omega, air = 2 * np.pi * case["frequency"], np.sqrt(constants.mu_0 / constants.epsilon_0)
    relative = case["permittivity"] - 1j * case["conductivity"] / (omega * constants.epsilon_0)
    index = np.sqrt(relative)
    down, through = np.sin(case["angle"]), np.sqrt(1 - (np.cos(case["angle"]) / index) ** 2)
    impedance = air / index
    if upright:  # unknown magnetic fields of the wave thrown back and of the one that goes on
        fields = np.array([[1, -1], [air * down, impedance * through]])
        return np.linalg.solve(fields, [-1, air * down])[0]
    fields = np.array([[1, -1], [down / air, through / impedance]])
    return np.linalg.solve(fields, [-1, down / air])[0]


def span_load(case, kind):
    """Shear and bending by quadrature of the loading outboard of a place."""
    half = case["span"] / 2
    area = half * (case["root"] + case["tip"])
    chord = lambda y: case["root"] + (case["tip"] - case["root"]) * y / half
    ellipse = lambda y: 4 * area / (np.pi * case["span"]) * np.sqrt(max(0.0, 1 - (y / half) ** 2))
    width = {"schrenk": lambda y: (chord(y) + ellipse(y)) / 2, "ellipse": ellipse, "chord": chord}[kind]
    pressure = case["lift"] / area
    shear, _ = quad(lambda y: pressure * width(y), case["place"], half, epsrel=1e-11)
    bending, _ = quad(lambda y: pressure * width(y) * (y - case["place"]), case["place"], half, epsrel=1e-11)
    return shear, bending


class Fin:
    """A rectangular plate held at its root: one shape of bending and one of torsion about half the chord, in Theodorsen's air forces by strips. They are scaled to the
    lift slope of a finite span, A/(A + 2) of the flat plate's."""

    def __init__(self, case):
        chord, span, thick = case["chord"], case["span"], case["thickness"]
        young = 2 * case["shearModulus"] * (1 + POISSON)
        aspect = span / chord
        self.half = chord / 2
        self.air = STANDARD_HEAT_RATIO * case["pressure"] / case["sound"] ** 2 * aspect / (aspect + 2)
        share = (np.arange(2000) + 0.5) / 2000
        first = brentq(lambda b: np.cos(b) * np.cosh(b) + 1, 1.5, 2.2)
        part = (np.cosh(first) + np.cos(first)) / (np.sinh(first) + np.sin(first))
        self.bend = np.cosh(first * share) - np.cos(first * share) - part * (np.sinh(first * share) - np.sin(first * share))
        self.twist = np.sin(np.pi / 2 * share)
        mass, inertia = case["density"] * chord * thick, case["density"] * chord**3 * thick / 12
        plate = young * chord * thick**3 / 12 / (1 - POISSON**2)
        torsion = case["shearModulus"] * chord * thick**3 / 3
        bends, twists = self.over(self.bend, self.bend), self.over(self.twist, self.twist)
        self.mass = np.diag([mass * bends, inertia * twists])
        self.stiffness = np.diag([plate * (first / span) ** 4 * bends, torsion * (np.pi / 2 / span) ** 2 * twists])

    @staticmethod
    def over(one, other):
        return float(np.mean(one * other))

    def forces(self, reduced):
        """Air forces over the square of the frequency at a reduced frequency: up against bending (down positive), nose up with torsion."""
        b, speed = self.half, self.half / reduced
        lag = hankel2(1, reduced) / (hankel2(1, reduced) + 1j * hankel2(0, reduced))
        moved, turned = 1j, speed + 0.5j * b  # downwash of a unit motion at three quarters of the chord
        circulatory = 2 * np.pi * self.air * speed * lag
        lift = np.array([-np.pi * self.air * b**2 + circulatory * b * moved, np.pi * self.air * b**2 * 1j * speed + circulatory * b * turned])
        moment = np.array([circulatory * b**2 / 2 * moved, np.pi * self.air * b**2 * (b**2 / 8 - 0.5j * speed * b) + circulatory * b**2 / 2 * turned])
        shapes = np.array([[self.over(self.bend, self.bend), self.over(self.bend, self.twist)], [self.over(self.bend, self.twist), self.over(self.twist, self.twist)]])
        return np.array([-lift, moment]) * shapes

    def damping(self, reduced):
        """Damping that each motion would need to go on unchanged, and its speed, in the order of frequency."""
        values = np.linalg.eigvals(np.linalg.solve(self.stiffness, self.mass + self.forces(reduced)))
        values = values[np.argsort(values.real)]
        return values.imag / values.real, self.half / reduced / np.sqrt(values.real)

    def flutter(self):
        """Least speed at which a motion needs damping."""
        before = None
        for reduced in np.geomspace(3, 0.01, 4000):
            needed, speeds = self.damping(reduced)
            if before is not None and np.any((before < 0) & (needed >= 0)):
                return float(np.min(speeds[(before < 0) & (needed >= 0)]))
            before = needed
        return float("nan")


def solve(kind, case):
    """What the equations give for a formula's inputs."""
    family, _, figure = kind.partition("-")
    if family == "hinge":
        return hinge_moment(0.0 if figure == "incidence" else 1 - case["ratio"], case["ratio"])
    if family == "propeller":
        return propeller(case)[figure == "inflow"]
    if family == "fan":
        return duct(case)[figure == "exit-speed"]
    if family in ("upright", "level"):
        wave = reflection(case, family == "upright")
        return wave.real if figure == "real" else wave.imag
    if family in ("schrenk", "ellipse", "chord"):
        return span_load(case, family)[figure == "bending"]
    return {"strut": strut, "pushrod": pushrod}[family](case)


def check(cases, hold):
    """Compares every formula and prints one line a family."""
    worst, count, fins = {}, {}, []
    for case in cases:
        kind, ours = case["kind"], case["value"]
        family = kind.partition("-")[0]
        count[family] = count.get(family, 0) + 1
        if family == "fin":
            ratio = Fin(case["inputs"]).flutter() / ours
            fins.append(hold(f"fin {case['inputs']}: strip theory flutters at {ratio:.3f} of the screening speed", ratio, FIN[1]))
            hold(f"fin {case['inputs']}: strip theory flutters below the screening speed, {ratio:.3f}", FIN[0] / ratio, 1.0)
            continue
        theirs = solve(kind, case["inputs"])
        scale = 1.0 if family in ("upright", "level") else abs(theirs)
        difference = hold(f"{kind} {case['inputs']}: {ours:.9g} against {theirs:.9g}", abs(ours - theirs) / scale, SAME.get(family, 1e-9))
        worst[family] = max(worst.get(family, 0.0), difference)
    listed = ", ".join(f"{count[family]} of {family} {difference:.1e}" for family, difference in worst.items())
    print(f"formulas against their equations: {listed}")
    print(f"{len(fins)} fins: strip theory flutters at {min(fins):.2f} to {max(fins):.2f} times the screening speed")
