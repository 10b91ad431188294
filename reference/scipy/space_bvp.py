"""Bend of a rod in space as a boundary-value problem of statics, solved by scipy.integrate.solve_bvp.

Independent of the engine: Kirchhoff's equations of forces and moments, no energy, no finite elements. First-order
system on every stretch between the places where something acts (rings, point masses), all mapped to [0, 1].

States of a stretch, s from the clamp, all in the fixed frame (x the way the rod points, y up, z right): place r 3,
unit quaternion p of the frame (d1, d2, t) 4, force N and moment M of all that lies beyond.
    r' = t     p' = 1/2 p (0, k)     N' = m g y     M' = -t x N
with k in the blank's own axes: k1 = M.d1/EI - side bow, k2 = M.d2/EI + bow, k3 = M.t/GJ.
At a ring N and M jump by the line's pull along both arms and its moment about the axis; with friction T grows (line
coming in) or falls (going out) by exp(mu turn) behind the ring.

One JSON request per line on standard input (the engine's bend request with aroundRad everywhere), one answer per line.
"""

import json
import sys
import time

import numpy as np
from scipy.integrate import solve_bvp

G = 9.80665
STATES = 13


class Table:
    def __init__(self, rows, key, default):
        rows = rows or [{"fromTipM": 0.0}]
        self.x = np.array([row["fromTipM"] for row in rows], float)
        self.y = np.array([row.get(key, default) for row in rows], float)

    def __call__(self, from_tip):
        return np.interp(from_tip, self.x, self.y)


def times(a, b):
    """Product of quaternions."""
    return np.array(
        [
            a[0] * b[0] - a[1] * b[1] - a[2] * b[2] - a[3] * b[3],
            a[0] * b[1] + a[1] * b[0] + a[2] * b[3] - a[3] * b[2],
            a[0] * b[2] - a[1] * b[3] + a[2] * b[0] + a[3] * b[1],
            a[0] * b[3] + a[1] * b[2] - a[2] * b[1] + a[3] * b[0],
        ]
    )


def axes(p):
    """d1, d2, t."""
    w, x, y, z = p / np.sqrt(np.sum(p * p, axis=0))
    return (
        np.array([1 - 2 * (y * y + z * z), 2 * (x * y + w * z), 2 * (x * z - w * y)]),
        np.array([2 * (x * y - w * z), 1 - 2 * (x * x + z * z), 2 * (y * z + w * x)]),
        np.array([2 * (x * z + w * y), 2 * (y * z - w * x), 1 - 2 * (x * x + y * y)]),
    )


def about(axis, angle):
    return np.array([np.cos(angle / 2), *(np.sin(angle / 2) * np.array(axis, float))])


class Problem:
    def __init__(self, request):
        rod = request["rod"]
        self.length = rod["lengthM"]
        self.bending = Table(rod["stiffness"], "EINm2", 1.0)
        self.twisting = Table(rod["torsion"], "GJNm2", 1.0)
        self.mass = Table(rod.get("massPerLength"), "kgPerM", 0.0)
        self.bow = Table(rod.get("restCurvature"), "perM", 0.0)
        self.side_bow = Table(rod.get("restCurvature"), "sidePerM", 0.0)
        butt, roll = request["buttAngleRad"], request.get("rollRad", 0.0)
        level = np.array([0.5, 0.5, 0.5, 0.5])
        unrolled = times(about([0, 0, 1], butt), level)
        self.clamp = times(unrolled, about([0, 0, 1], -roll))
        tip = request["load"].get("tip", {})
        self.tip_force = np.array([tip.get("xN", 0.0), tip.get("yN", 0.0), tip.get("zN", 0.0)])
        self.line = request["load"].get("line")
        friction = request.get("friction", {"coefficient": 0.0, "direction": "in"})
        self.friction = friction["coefficient"] * (1.0 if friction["direction"] == "in" else -1.0)
        guides = request.get("guides", []) if self.line else []
        self.rings = [(self.length - g["fromTipM"], self.across(g["ringHeightM"], g["aroundRad"])) for g in guides]
        self.masses = [(self.length - m["fromTipM"], m["massKg"]) for m in request.get("masses", [])]
        if self.line:
            reel = request["reel"]
            d1, d2, t = axes(self.clamp)
            a, b = self.across(reel["offsetM"], reel["aroundRad"])
            self.reel = reel["alongM"] * t + a * d1 + b * d2
            pull, side = self.line["pullAngleRad"], self.line.get("pullSideRad", 0.0)
            self.pull = np.array([np.cos(side) * np.cos(pull), np.cos(side) * np.sin(pull), np.sin(side)])
        stops = sorted({round(s, 12) for s, _ in self.rings + self.masses if 1e-9 < s < self.length - 1e-9})
        self.stops = [0.0, *stops, self.length]
        self.count = len(self.stops) - 1
        self.sizes = np.diff(self.stops)

    @staticmethod
    def across(height, around):
        return (-height * np.cos(around), height * np.sin(around))

    def slope(self, u, y, scale):
        states = y.reshape(self.count, STATES, -1)
        out = np.empty_like(states)
        for j in range(self.count):
            size = self.sizes[j]
            from_tip = self.length - (self.stops[j] + u * size)
            p, force, moment = states[j, 3:7], states[j, 7:10], states[j, 10:13]
            d1, d2, t = axes(p)
            ei = self.bending(from_tip)
            k1 = np.sum(moment * d1, axis=0) / ei - self.side_bow(from_tip)
            k2 = np.sum(moment * d2, axis=0) / ei + self.bow(from_tip)
            k3 = np.sum(moment * t, axis=0) / self.twisting(from_tip)
            out[j, 0:3] = size * t
            out[j, 3:7] = 0.5 * size * times(p, np.array([np.zeros_like(k1), k1, k2, k3]))
            out[j, 7] = out[j, 9] = 0.0
            out[j, 8] = size * scale * self.mass(from_tip) * G
            out[j, 10:13] = -size * np.cross(t, force, axis=0)
        return out.reshape(y.shape)

    def stop_of(self, s):
        return int(np.argmin([abs(stop - s) for stop in self.stops]))

    def ring_places(self, ends):
        places = []
        for s, (a, b) in self.rings:
            r, p = (ends[self.stop_of(s) - 1][0:3], ends[self.stop_of(s) - 1][3:7]) if s > 1e-9 else (np.zeros(3), self.clamp)
            d1, d2, _ = axes(p)
            places.append(r + a * d1 + b * d2)
        return places

    def acting_at_stops(self, ends, scale):
        acting = np.zeros((self.count, 6))
        for s, kg in self.masses:
            if s > 1e-9:
                acting[self.stop_of(s) - 1, 1] -= scale * kg * G
        acting[-1, 0:3] += scale * self.tip_force
        if not self.line:
            return acting
        ahead = self.pull
        places = [*self.ring_places(ends), self.reel]
        tension = scale * self.line["tensionN"]
        for k, (s, _) in enumerate(self.rings):
            behind = places[k + 1] - places[k]
            behind /= np.sqrt(behind @ behind)
            turn = np.arctan2(np.linalg.norm(np.cross(ahead, -behind)), -ahead @ behind)
            tension_behind = tension * np.exp(self.friction * turn)
            force = tension * ahead + tension_behind * behind
            tension = tension_behind
            ahead = -behind
            if s > 1e-9:
                j = self.stop_of(s) - 1
                acting[j, 0:3] += force
                acting[j, 3:6] += np.cross(places[k] - ends[j][0:3], force)
        return acting

    def conditions(self, start, end, scale):
        starts, ends = start.reshape(self.count, STATES), end.reshape(self.count, STATES)
        acting = self.acting_at_stops(ends, scale)
        out = [*starts[0, 0:3], *(starts[0, 3:7] - self.clamp)]
        for j in range(self.count):
            beyond = starts[j + 1] if j + 1 < self.count else np.zeros(STATES)
            if j + 1 < self.count:
                out += list(ends[j, 0:7] - beyond[0:7])
            out += list(ends[j, 7:13] - beyond[7:13] - acting[j])
        return np.array(out)

    def unloaded(self, u):
        """The rod turned by its own bow alone, in small steps."""
        fine = np.linspace(0.0, self.length, 2001)
        h = fine[1]
        r, p = np.zeros((2001, 3)), np.zeros((2001, 4))
        p[0] = self.clamp
        for i in range(1, 2001):
            from_tip = self.length - 0.5 * (fine[i] + fine[i - 1])
            k = np.array([-self.side_bow(from_tip), self.bow(from_tip), 0.0]) * h
            turn = np.sqrt(k @ k)
            step = about(k / turn, turn) if turn > 0 else np.array([1.0, 0, 0, 0])
            p[i] = times(p[i - 1], step)
            middle = p[i - 1] + p[i]
            r[i] = r[i - 1] + h * axes(middle)[2]
        guess = np.zeros((self.count, STATES, u.size))
        for j in range(self.count):
            s = self.stops[j] + u * self.sizes[j]
            for i in range(3):
                guess[j, i] = np.interp(s, fine, r[:, i])
            for i in range(4):
                guess[j, 3 + i] = np.interp(s, fine, p[:, i])
        return guess.reshape(STATES * self.count, u.size)


def solve(request):
    tolerance = request.get("tolerance", 1e-5)
    problem = Problem(request)
    u = np.linspace(0.0, 1.0, 4)
    y = problem.unloaded(u)
    started = time.perf_counter()
    scale, step, failures, solution = 0.0, request.get("firstStep", 0.25), 0, None
    while scale < 1.0:
        target = min(1.0, scale + step)
        last = target == 1.0
        attempt = solve_bvp(
            lambda u, y: problem.slope(u, y, target),
            lambda a, b: problem.conditions(a, b, target),
            u,
            y,
            tol=tolerance if last else 1e-2,
            bc_tol=min(tolerance, 1e-7) if last else 1e-3,
            max_nodes=300,
        )
        if attempt.status == 0 and np.max(np.abs(attempt.sol(u) - y).reshape(problem.count, STATES, -1)[:, 3:7]) < 0.4:
            scale, solution, u, y = target, attempt, attempt.x, attempt.y
            step = min(2 * step, 1.0)
        else:
            step *= 0.4
            failures += 1
            if failures > 40:
                return {"status": "failed", "reason": attempt.message}
    return answer(problem, solution, time.perf_counter() - started)


def answer(problem, solution, seconds):
    per_stretch = max(2, 200 // problem.count)
    points = []
    for j in reversed(range(problem.count)):
        u = np.linspace(1.0, 0.0, per_stretch + 1)
        states = solution.sol(u)[STATES * j : STATES * (j + 1)]
        for i in range(0 if j == problem.count - 1 else 1, u.size):
            from_tip = problem.length - (problem.stops[j] + u[i] * problem.sizes[j])
            points.append({"fromTipM": from_tip, "xM": states[0, i], "yM": states[1, i], "zM": states[2, i]})
    start = solution.sol(np.array([0.0]))[:, 0][0:STATES]
    ends = solution.sol(np.array([1.0]))[:, 0].reshape(problem.count, STATES)
    places = problem.ring_places(ends) if problem.line else []
    return {
        "status": "converged",
        "points": points,
        "rings": [{"xM": p[0], "yM": p[1], "zM": p[2], "lineAngleRad": a} for p, a in zip(places, line_angles(problem, places))],
        # the clamp gives the rod what the rest gives it back, positive about minus the butt's axis
        "gripTorqueNm": float(start[10:13] @ axes(problem.clamp)[2]),
        "twistRad": twist(problem, solution),
        "residual": float(np.max(solution.rms_residuals)),
        "seconds": seconds,
    }


def line_angles(problem, places):
    if not problem.line:
        return []
    ahead, angles = problem.pull, []
    for here, behind in zip(places, [*places[1:], problem.reel]):
        back = (here - behind) / np.sqrt((here - behind) @ (here - behind))
        angles.append(float(np.arctan2(np.linalg.norm(np.cross(ahead, back)), ahead @ back)))
        ahead = back
    return angles


def twist(problem, solution):
    """From clamp to tip, positive turning a ring from under to the right: about minus t."""
    total = 0.0
    for j in range(problem.count):
        u = np.linspace(0.0, 1.0, 201)
        states = solution.sol(u)[STATES * j : STATES * (j + 1)]
        t = axes(states[3:7])[2]
        from_tip = problem.length - (problem.stops[j] + u * problem.sizes[j])
        k3 = np.sum(states[10:13] * t, axis=0) / problem.twisting(from_tip)
        total -= float(np.sum(0.5 * (k3[1:] + k3[:-1]) * np.diff(u)) * problem.sizes[j])
    return total


if __name__ == "__main__":
    for text in sys.stdin:
        if text.strip():
            print(json.dumps(solve(json.loads(text))), flush=True)
