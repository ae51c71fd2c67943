"""A vortex lattice written from the textbook, to hold the one of the core against.

Horseshoes over the whole span, port and starboard, on the twisted surface itself; each is three straight segments, the
trailing ones long instead of endless; the stream turns with the incidence. It takes the numbers of the planform and nothing
else. Source: Katz and Plotkin, Low-Speed Aerodynamics, chapter 12 and the segment routine of its appendix.
"""

import numpy as np

TRAIL = 1.0e4  # length of the trailing segments, m
BENDS = np.concatenate([[0.0], np.geomspace(0.03, 60.0, 30)])  # places behind the trailing edge where a bent one has corners, m
STRAIGHT, ASIDE, RAISED, BENT = range(4)  # ways of a wake
STEP = 1e-6  # slope, or bend per m, of which half the difference is a derivative


def segment(points, start, end):
    """Velocity at each point by each segment of unit circulation, shape (points, segments, 3).

    q = 1/(4 pi) (r1 x r2)/|r1 x r2|^2 (r0 . (r1/|r1| - r2/|r2|)); a point on the segment feels nothing.
    """
    r1 = points[:, None, :] - start[None, :, :]
    r2 = points[:, None, :] - end[None, :, :]
    r0 = (end - start)[None, :, :]
    cross = np.cross(r1, r2)
    square = np.sum(cross * cross, axis=2)
    along = r1 / np.linalg.norm(r1, axis=2)[..., None] - r2 / np.linalg.norm(r2, axis=2)[..., None]
    dot = np.sum(r0 * along, axis=2)
    clear = square > 1e-20
    factor = np.where(clear, dot / np.where(clear, square, 1.0), 0.0) / (4 * np.pi)
    return cross * factor[..., None]


def horseshoe(points, left, right, left_edge, right_edge, trails):
    """Velocity at each point by each horseshoe of unit circulation: from far behind along the wake to the trailing edge on the
    left, along the chord to the bound segment, and the same way back on the right. Trails are the corners of the wakes from the
    trailing edge on."""
    corners = [left_edge + t for t in reversed(trails)] + [left, right] + [right_edge + t for t in trails]
    return sum(segment(points, start, end) for start, end in zip(corners[:-1], corners[1:]))


def trails_of(way, amounts):
    """Corners of wakes: straight along x, or aside to starboard or raised by an amount per length, or bent to starboard by half the
    amount times the square of the length."""
    distances = BENDS if way == BENT else np.array([0.0, TRAIL])
    moved = distances[:, None] ** (2 if way == BENT else 1) * amounts * (0.5 if way == BENT else 1.0)
    along, none = np.broadcast_to(distances[:, None], moved.shape), np.zeros_like(moved)
    return np.stack([along, none if way in (STRAIGHT, RAISED) else moved, moved if way == RAISED else none], axis=-1)


def axes(incidence):
    """Directions of the stream and upward across it."""
    return np.array([np.cos(incidence), 0.0, np.sin(incidence)]), np.array([-np.sin(incidence), 0.0, np.cos(incidence)])


def below(points, height):
    """Mirror images of points in the ground, which lies a height under the origin."""
    return np.stack([points[..., 0], points[..., 1], -2 * height - points[..., 2]], axis=-1)


class Surface:
    """One straight-tapered surface: what the planform gives at a place y from tip to tip."""

    def __init__(self, numbers):
        self.half = numbers["halfSpanMeters"]
        self.root, self.tip = numbers["rootChordMeters"], numbers["tipChordMeters"]
        self.x, self.z = numbers["rootLeadingEdgeXMeters"], numbers["rootLeadingEdgeZMeters"]
        self.sweep, self.dihedral = numbers["leadingEdgeSweepRadians"], numbers["dihedralRadians"]
        self.incidence, self.twist = numbers["incidenceRadians"], numbers["tipTwistRadians"]
        self.rows, self.strips = numbers["rows"], numbers["strips"]
        self.equal = numbers.get("equalStrips", 0)

    def area(self):
        """Projected area, m2."""
        return self.half * (self.root + self.tip)

    def mean_chord(self):
        """Mean aerodynamic chord of the trapezoid, m: 2/3 root (1 + t + t^2)/(1 + t)."""
        taper = self.tip / self.root
        return 2.0 / 3.0 * self.root * (1 + taper + taper**2) / (1 + taper)

    def chord(self, y):
        return self.root + (self.tip - self.root) * np.abs(y) / self.half

    def angle(self, y):
        """Nose-up angle of the chord line, rad."""
        return self.incidence + self.twist * np.abs(y) / self.half

    def place(self, y, fraction):
        """Point at a fraction of the chord, which is turned about its leading edge."""
        along, angle = fraction * self.chord(y), self.angle(y)
        return np.stack(
            [
                self.x + np.abs(y) * np.tan(self.sweep) + along * np.cos(angle),
                y,
                self.z + np.abs(y) * np.tan(self.dihedral) - along * np.sin(angle),
            ],
            axis=-1,
        )

    def normal(self, y):
        """Unit normal of the turned and raised chord plane."""
        angle, slope = self.angle(y), np.sign(y) * self.dihedral
        return np.stack([np.sin(angle) * np.cos(slope), -np.cos(angle) * np.sin(slope), np.cos(angle) * np.cos(slope)], axis=-1)

    def cuts(self):
        """Edges and middles of the strips from port tip to starboard tip, even in the angle of y = -half cos(angle).

        Equal strips end a quarter strip short of the tips (Hough, Journal of Aircraft 10, 1973).
        """
        if self.equal:
            edges = np.arange(-self.equal, self.equal + 1) * self.half / (self.equal + 0.25)
            return edges, (edges[1:] + edges[:-1]) / 2
        edges = np.linspace(0, np.pi, 2 * self.strips + 1)
        return -self.half * np.cos(edges), -self.half * np.cos((edges[1:] + edges[:-1]) / 2)

    def felt_width(self, port, starboard):
        """Half the width over which a strip takes the mean; of equal strips from middle to middle, as wakes run along the edges."""
        return starboard - port if self.equal else (starboard - port) / 2


class Fin:
    """An upright surface in the plane of symmetry; y counts upward from its root."""

    def __init__(self, numbers):
        self.plane = Surface(numbers)
        self.rows = self.plane.rows

    def place(self, y, fraction):
        flat = self.plane.place(y, fraction)
        return np.array([flat[0], 0.0, flat[2] + y])

    def normal(self, y):
        return np.array([0.0, -1.0, 0.0])

    def cuts(self):
        """Edges and middles of the strips from root to tip, narrower towards both."""
        edges = np.linspace(0, np.pi, self.plane.strips + 1)
        return self.plane.half * (1 - np.cos(edges)) / 2, self.plane.half * (1 - np.cos((edges[1:] + edges[:-1]) / 2)) / 2

    def felt_width(self, port, starboard):
        """None across the stream."""
        return 0.0


class Lattice:
    """The horseshoes of all surfaces; coefficients on area, chord and span of the first. Height 0 is far from the ground."""

    def __init__(self, surfaces, height=0.0):
        self.height, self.reference = height, np.zeros(3)
        self.surfaces = [(Fin if s["role"] == "fin" else Surface)(s) for s in surfaces]
        main = self.surfaces[0]
        self.area, self.chord, self.span = main.area(), main.mean_chord(), 2 * main.half
        left, right, control, normal, strip, wake, owner, width = [], [], [], [], [], [], [], []
        for number, surface in enumerate(self.surfaces):
            edges, middles = surface.cuts()
            for port, starboard, middle in zip(edges[:-1], edges[1:], middles):
                for row in range(surface.rows):
                    bound, point = (row + 0.25) / surface.rows, (row + 0.75) / surface.rows
                    left.append(surface.place(port, bound))
                    right.append(surface.place(starboard, bound))
                    control.append(surface.place(middle, point))
                    normal.append(surface.normal(middle))
                    strip.append(len(wake))
                    owner.append(number)
                    width.append(surface.felt_width(port, starboard))
                wake.append([surface.place(y, 1.0) for y in (port, middle, starboard)])
        self.left, self.right, self.control = np.array(left), np.array(right), np.array(control)
        self.normal, self.strip, self.wake = np.array(normal), np.array(strip), np.array(wake)
        self.own = np.equal.outer(owner, owner)
        self.width = np.array(width)
        self.matrix, self.changes = self.influence(STRAIGHT, np.zeros(len(left))), None

    def influence(self, way, amounts, receivers=slice(None)):
        """Normal velocity at control points by each horseshoe, whose wake goes its way by an amount."""
        corners = [self.left, self.right, self.wake[self.strip, 0], self.wake[self.strip, 2]]
        trails = trails_of(way, amounts)
        velocity = horseshoe(self.control[receivers], *corners, trails)
        if self.height:
            images = [below(corner, self.height) for corner in corners]
            velocity -= horseshoe(self.control[receivers], *images, trails * [1, 1, -1])
        return np.einsum("ijk,ik->ij", velocity, self.normal[receivers])

    def change(self, way, step, receivers=slice(None)):
        """Derivative of the influence with the amount by which wakes go a way."""
        steps = np.broadcast_to(step, self.strip.shape)
        return (self.influence(way, steps, receivers) - self.influence(way, -steps, receivers)) / (2 * steps)

    def changes_by_wake(self):
        """Derivatives of the matrix with the ways of the wake. A strip of another surface feels how it has moved aside in the mean over
        its width, half the difference between wakes that pass it by that to either side; its middle alone would feel too much of a
        bare vortex that passes near it. A bent wake passes a place as far aside as a straight one of the slope midway."""
        aside, raised, bent = (self.change(way, STEP) for way in (ASIDE, RAISED, BENT))
        behind = self.control[:, None, 0] - self.wake[None, self.strip, 1, 0]
        mean = aside.copy()
        for i in np.flatnonzero(~self.own.all(axis=1)):
            wide = self.change(ASIDE, np.maximum(self.width[i] / np.abs(behind[i]), STEP), slice(i, i + 1))[0]
            mean[i] = np.where(self.own[i], aside[i], wide)
        return mean, raised, bent + behind / 2 * (mean - aside)

    def matrix_in(self, motion):
        """The matrix in sideways motion: the wake runs with the stream from the trailing edge on."""
        if not motion:
            return self.matrix
        if self.changes is None:
            self.changes = self.changes_by_wake()
        edge = self.wake[self.strip, 1]
        moved, further = (self.stream(at, 0.0, **motion) - self.stream(at, 0.0) for at in (edge, edge + [1.0, 0.0, 0.0]))
        amounts = moved[:, 1], moved[:, 2], (further - moved)[:, 1]
        return self.matrix + sum(change * amount for change, amount in zip(self.changes, amounts))

    def stream(self, points, incidence, slip=0.0, roll=0.0, yaw=0.0):
        """Velocity of the air over speed: incidence and sideslip in rad, turning about the stream and across it in p b/(2V), r b/(2V)."""
        along, up = axes(incidence)
        turning = 2 / self.span * (roll * along + yaw * up)
        return along + np.array([0.0, -slip, 0.0]) + np.cross(turning, points - self.reference)

    def circulation(self, incidence, **motion):
        """Circulation over speed of each horseshoe, m."""
        stream = self.stream(self.control, incidence, **motion)
        return np.linalg.solve(self.matrix_in(motion), -np.sum(stream * self.normal, axis=1))

    def lift_and_moment(self, circulation):
        """Lift coefficient and nose-up moment coefficient about the origin, of the bound segments in a stream along x."""
        lift = 2 * (self.right - self.left)[:, 1] * circulation
        middle = (self.left + self.right) / 2
        return np.sum(lift) / self.area, -np.sum(lift * middle[:, 0]) / (self.area * self.chord)

    def sideways(self, incidence, **motion):
        """Coefficients of side force to starboard, roll starboard down and yaw nose to starboard, of all segments up to the trailing
        edge in the stream, without what the horseshoes induce on each other."""
        circulation = self.circulation(incidence, **motion)
        port, starboard = self.wake[self.strip, 0], self.wake[self.strip, 2]
        force, moment = np.zeros(3), np.zeros(3)
        for start, end in ((port, self.left), (self.left, self.right), (self.right, starboard)):
            middle = (start + end) / 2
            forces = 2 * circulation[:, None] * np.cross(self.stream(middle, incidence, **motion), end - start)
            force += np.sum(forces, axis=0)
            moment += np.sum(np.cross(middle - self.reference, forces), axis=0)
        along, up = axes(incidence)
        volume = self.area * self.span
        return np.array([force[1] / self.area, -moment @ along / volume, -moment @ up / volume])

    def derivatives(self, incidence, reference):
        """Changes of side force, roll and yaw about a point with sideslip, roll rate and yaw rate: columns in this order."""
        self.reference, step = np.array(reference), 1e-4
        columns = [
            (self.sideways(incidence, **{motion: step}) - self.sideways(incidence, **{motion: -step})) / (2 * step)
            for motion in ("slip", "roll", "yaw")
        ]
        return np.array(columns).T

    def incidence_for(self, lift):
        """Incidence at a lift coefficient, rad."""
        low, high = (self.lift_and_moment(self.circulation(a))[0] for a in (0.0, 1e-3))
        return (lift - low) / (high - low) * 1e-3

    def induced_drag(self, circulation):
        """Induced-drag coefficient from the wake far behind: sum of circulation times normal wash times width over the area."""
        strength = np.bincount(self.strip, weights=circulation)
        port, middle, starboard = (self.wake[:, k] for k in range(3))
        across = (starboard - port)[:, 1:]
        width = np.linalg.norm(across, axis=1)
        normal = np.stack([-across[:, 1], across[:, 0]], axis=1) / width[:, None]

        def vortex(center):
            """Velocity in the plane by unit vortices along the stream."""
            arm = middle[:, None, 1:] - center[None, :, 1:]
            return np.stack([-arm[..., 1], arm[..., 0]], axis=2) / (2 * np.pi * np.sum(arm * arm, axis=2))[..., None]

        velocity = vortex(port) - vortex(starboard)
        if self.height:
            velocity -= vortex(below(port, self.height)) - vortex(below(starboard, self.height))
        wash = np.einsum("ijk,j,ik->i", velocity, strength, normal)
        return abs(np.sum(strength * wash * width)) / self.area

    def figures(self, lift):
        """Lift slope, neutral point (m), induced drag at a lift coefficient."""
        step = 1e-3
        low, high = self.circulation(0.0), self.circulation(step)
        lift_low, moment_low = self.lift_and_moment(low)
        lift_high, moment_high = self.lift_and_moment(high)
        slope = (lift_high - lift_low) / step
        at_lift = low + (lift - lift_low) / (lift_high - lift_low) * (high - low)
        return {
            "liftSlope": slope,
            "neutralPointMeters": -self.chord * (moment_high - moment_low) / (lift_high - lift_low),
            "inducedDrag": self.induced_drag(at_lift),
        }
