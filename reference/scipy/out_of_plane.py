"""At which load a bow that is pushed straight and beyond leaves its plane: a determinant, no energy.

A uniform rod of length 1 and EI 1 with natural curvature k0, clamped level, a dead force at its tip pulling it down.
The plane bend comes from solve_bvp. A small turn a1 (out of the plane) and a3 (about the axis) of its frame then obeys
    m1 = a1' + k a3        m3 = GJ (a3' - k a1)                  moments added, in the blank's own axes
    m1' = -k m3 + M m3/GJ - (a3 N1 - a1 N3)      m3' = -M m1 + k m1
with k, M, N1, N3 those of the plane bend; a1 = a3 = 0 at the clamp, m1 = m3 = 0 at the tip. It leaves the plane where
the two solutions that start at the clamp leave m1, m3 at the tip without an inverse.

One line {"k0":, "GJ":, "low":, "high":} on standard input, one {"forceN":} on standard output.
"""

import json
import sys

import numpy as np
from scipy.integrate import solve_bvp, solve_ivp
from scipy.optimize import brentq


class PlaneBends:
    """Followed up from no load in steps."""

    def __init__(self, k0):
        self.k0 = k0
        s = np.linspace(0, 1, 41)
        self.known = [(0.0, s, np.array([k0 * s, 0 * s]))]

    def at(self, force):
        near = min(self.known, key=lambda entry: abs(entry[0] - force))
        here, s, y = near
        for step in np.linspace(here, force, max(2, int(abs(force - here) / 0.5) + 2))[1:]:
            found = solve_bvp(
                lambda s, y: np.array([y[1] + self.k0, step * np.cos(y[0])]),
                lambda a, b: np.array([a[0], b[1]]),
                s,
                y,
                tol=1e-6,
                max_nodes=20000,
            )
            if found.status != 0:
                raise RuntimeError(found.message)
            s, y = found.x, found.y
        self.known.append((force, s, y))
        return found.sol


def determinant(bends, force, gj):
    sol = bends.at(force)

    def slope(s, y):
        angle, moment = sol(s)
        k = moment + bends.k0
        n1, n3 = -force * np.cos(angle), -force * np.sin(angle)
        a1, a3, m1, m3 = y
        return [
            m1 - k * a3,
            m3 / gj + k * a1,
            -k * m3 + moment * m3 / gj - (a3 * n1 - a1 * n3),
            -moment * m1 + k * m1,
        ]

    ends = [
        solve_ivp(slope, (0, 1), start, rtol=1e-6, atol=1e-11).y[2:, -1]
        for start in ([0, 0, 1, 0], [0, 0, 0, 1])
    ]
    return float(np.linalg.det(np.array(ends)))


if __name__ == "__main__":
    for text in sys.stdin:
        if text.strip():
            asked = json.loads(text)
            bends = PlaneBends(asked["k0"])
            force = brentq(lambda f: determinant(bends, f, asked["GJ"]), asked["low"], asked["high"], xtol=1e-7)
            print(json.dumps({"forceN": force}), flush=True)
