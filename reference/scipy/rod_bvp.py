"""Bend of a rod as a boundary-value problem of statics, solved by scipy.integrate.solve_bvp (4th order collocation).

Independent of the engine: forces and moments, no energy; first-order system on every stretch between the places
where something acts on the rod (rings, point masses), all stretches mapped to [0, 1] and solved together.

States of a stretch, s from the clamp: angle a, moment M of all that lies beyond, place x, y, and force (nx, ny) of
all that lies beyond.
    a' = M/EI + k0      x' = cos a   y' = sin a   nx' = 0   ny' = m g   M' = -(cos a ny - sin a nx)
At a ring the line pulls along both its arms, F = T (u_ahead + u_behind), at the ring's centre, which stands off the
axis along the left normal (-sin a, cos a); so n and M jump there by F and by the arm's moment of F. With friction T
grows (line coming in) or falls (going out) by exp(mu turn) behind the ring.

One JSON request per line on standard input (fields as the engine's bend request), one JSON answer per line on
standard output: tip-first points, ring centres, the largest residual, the time that solve_bvp took.
"""

import json
import sys
import time

import numpy as np
from scipy.integrate import solve_bvp

G = 9.80665


class Table:
    def __init__(self, rows, key, default):
        rows = rows or [{"fromTipM": 0.0, key: default}]
        self.x = np.array([row["fromTipM"] for row in rows], float)
        self.y = np.array([row[key] for row in rows], float)

    def __call__(self, from_tip):
        return np.interp(from_tip, self.x, self.y)


class Problem:
    def __init__(self, request):
        rod = request["rod"]
        self.length = rod["lengthM"]
        self.stiffness = Table(rod["stiffness"], "EINm2", 1.0)
        self.mass = Table(rod.get("massPerLength"), "kgPerM", 0.0)
        self.rest = Table(rod.get("restCurvature"), "perM", 0.0)
        self.butt = request["buttAngleRad"]
        self.tip_force = request["load"].get("tip", {"xN": 0.0, "yN": 0.0})
        self.line = request["load"].get("line")
        friction = request.get("friction", {"coefficient": 0.0, "direction": "in"})
        self.friction = friction["coefficient"] * (1.0 if friction["direction"] == "in" else -1.0)
        guides = request.get("guides", []) if self.line else []
        side = {"over": 1.0, "under": -1.0}
        self.rings = [(self.length - g["fromTipM"], side[g["side"]] * g["ringHeightM"]) for g in guides]
        self.masses = [(self.length - m["fromTipM"], m["massKg"]) for m in request.get("masses", [])]
        if self.line:
            reel = request["reel"]
            off = side[guides[0]["side"]] * reel["offsetM"]
            c, s = np.cos(self.butt), np.sin(self.butt)
            self.reel = np.array([reel["alongM"] * c - off * s, reel["alongM"] * s + off * c])
        stops = sorted({round(s, 12) for s, _ in self.rings + self.masses if 1e-9 < s < self.length - 1e-9})
        self.stops = [0.0, *stops, self.length]
        self.count = len(self.stops) - 1
        self.sizes = np.diff(self.stops)

    def slope(self, u, y, scale):
        states = y.reshape(self.count, 6, -1)
        out = np.empty_like(states)
        for j in range(self.count):
            size = self.sizes[j]
            from_tip = self.length - (self.stops[j] + u * size)
            a, moment, _, _, nx, ny = states[j]
            out[j, 0] = size * (moment / self.stiffness(from_tip) + self.rest(from_tip))
            out[j, 1] = -size * (np.cos(a) * ny - np.sin(a) * nx)
            out[j, 2] = size * np.cos(a)
            out[j, 3] = size * np.sin(a)
            out[j, 4] = 0.0
            out[j, 5] = size * scale * self.mass(from_tip) * G
        return out.reshape(y.shape)

    def slope_jacobian(self, u, y, scale):
        states = y.reshape(self.count, 6, -1)
        out = np.zeros((6 * self.count, 6 * self.count, u.size))
        for j in range(self.count):
            size = self.sizes[j]
            from_tip = self.length - (self.stops[j] + u * size)
            a, _, _, _, nx, ny = states[j]
            b = 6 * j
            out[b, b + 1] = size / self.stiffness(from_tip)
            out[b + 1, b] = size * (np.sin(a) * ny + np.cos(a) * nx)
            out[b + 1, b + 4] = size * np.sin(a)
            out[b + 1, b + 5] = -size * np.cos(a)
            out[b + 2, b] = -size * np.sin(a)
            out[b + 3, b] = size * np.cos(a)
        return out

    def ring_places(self, ends):
        """Centre of every ring, tip-top first, from the upper ends of the stretches."""
        places = []
        for s, offset in self.rings:
            a, _, x, y, _, _ = ends[self.stop_of(s) - 1] if s > 1e-9 else (self.butt, 0, 0, 0, 0, 0)
            places.append(np.array([x - offset * np.sin(a), y + offset * np.cos(a)]))
        return places

    def stop_of(self, s):
        return int(np.argmin([abs(stop - s) for stop in self.stops]))

    def acting_at_stops(self, ends, scale):
        """Force and moment about the axis of all that acts on the rod at the upper end of each stretch."""
        acting = np.zeros((self.count, 3))
        for s, kg in self.masses:
            if s > 1e-9:
                acting[self.stop_of(s) - 1, 1] -= scale * kg * G
        acting[-1, 0] += scale * self.tip_force["xN"]
        acting[-1, 1] += scale * self.tip_force["yN"]
        if not self.line:
            return acting
        pull = self.line["pullAngleRad"]
        ahead = np.array([np.cos(pull), np.sin(pull)])
        places = [*self.ring_places(ends), self.reel]
        tension = scale * self.line["tensionN"]
        for k, (s, _) in enumerate(self.rings):
            behind = places[k + 1] - places[k]
            behind /= np.hypot(*behind)
            turn = abs(np.arctan2(ahead[0] * -behind[1] + ahead[1] * behind[0], -ahead @ behind))
            tension_behind = tension * np.exp(self.friction * turn)
            fx, fy = tension * ahead + tension_behind * behind
            tension = tension_behind
            ahead = -behind
            if s > 1e-9:
                j = self.stop_of(s) - 1
                armx, army = places[k] - ends[j][2:4]
                acting[j] += (fx, fy, armx * fy - army * fx)
        return acting

    def conditions(self, start, end, scale):
        starts, ends = start.reshape(self.count, 6), end.reshape(self.count, 6)
        acting = self.acting_at_stops(ends, scale)
        out = [starts[0, 0] - self.butt, starts[0, 2], starts[0, 3]]
        for j in range(self.count):
            beyond = starts[j + 1] if j + 1 < self.count else np.zeros(6)
            if j + 1 < self.count:
                out += list(ends[j, [0, 2, 3]] - beyond[[0, 2, 3]])
            fx, fy, moment = acting[j]
            out += [ends[j, 4] - beyond[4] - fx, ends[j, 5] - beyond[5] - fy, ends[j, 1] - beyond[1] - moment]
        return np.array(out)

    def unloaded(self, u):
        """The straight, or naturally bowed, rod without load."""
        fine = np.linspace(0.0, self.length, 2001)
        angle = self.butt + np.concatenate(
            [[0.0], np.cumsum(0.5 * np.diff(fine) * (self.rest(self.length - fine)[1:] + self.rest(self.length - fine)[:-1]))]
        )
        step = np.diff(fine)
        middle = 0.5 * (angle[1:] + angle[:-1])
        x = np.concatenate([[0.0], np.cumsum(step * np.cos(middle))])
        y = np.concatenate([[0.0], np.cumsum(step * np.sin(middle))])
        guess = np.zeros((self.count, 6, u.size))
        for j in range(self.count):
            s = self.stops[j] + u * self.sizes[j]
            guess[j, 0], guess[j, 2], guess[j, 3] = np.interp(s, fine, angle), np.interp(s, fine, x), np.interp(s, fine, y)
        return guess.reshape(6 * self.count, u.size)


def solve(request):
    tolerance = request.get("tolerance", 1e-6)
    problem = Problem(request)
    u = np.linspace(0.0, 1.0, 5)
    y = problem.unloaded(u)
    started = time.perf_counter()
    scale, step, failures = 0.0, request.get("firstStep", 0.25), 0
    solution = None
    while scale < 1.0:
        target = min(1.0, scale + step)
        last = target == 1.0
        attempt = solve_bvp(
            lambda u, y: problem.slope(u, y, target),
            lambda a, b: problem.conditions(a, b, target),
            u,
            y,
            fun_jac=lambda u, y: problem.slope_jacobian(u, y, target),
            tol=tolerance if last else 1e-3,
            bc_tol=min(tolerance, 1e-8) if last else 1e-4,
            max_nodes=2000,
        )
        if attempt.status == 0 and turned(y, u, attempt) < 0.8:
            scale, solution, u, y = target, attempt, attempt.x, attempt.y
            step = min(2 * step, 1.0)
        else:
            step *= 0.4
            failures += 1
            if failures > 40:
                return {"status": "failed", "reason": attempt.message}
    seconds = time.perf_counter() - started
    return answer(problem, solution, seconds)


def turned(y, u, attempt):
    """Largest change of an angle in one load step: a jump to another branch shows here."""
    return float(np.max(np.abs(attempt.sol(u)[0::6] - y[0::6])))


def answer(problem, solution, seconds):
    per_stretch = max(2, 400 // problem.count)
    points = []
    for j in reversed(range(problem.count)):
        u = np.linspace(1.0, 0.0, per_stretch + 1)
        states = solution.sol(u)[6 * j : 6 * j + 6]
        for i in range(0 if j == problem.count - 1 else 1, u.size):
            from_tip = problem.length - (problem.stops[j] + u[i] * problem.sizes[j])
            points.append({"fromTipM": from_tip, "xM": states[2, i], "yM": states[3, i], "angleRad": states[0, i]})
    ends = solution.sol(np.array([1.0]))[:, 0].reshape(problem.count, 6)
    rings = [{"xM": place[0], "yM": place[1]} for place in problem.ring_places(ends)] if problem.line else []
    return {
        "status": "converged",
        "points": points,
        "rings": rings,
        "residual": float(np.max(solution.rms_residuals)),
        "nodes": int(solution.x.size),
        "seconds": seconds,
    }


if __name__ == "__main__":
    for text in sys.stdin:
        if text.strip():
            print(json.dumps(solve(json.loads(text))), flush=True)
