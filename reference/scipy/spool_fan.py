"""The fan of lines off a fixed spool, as vectors in space; extremes by scipy.optimize from a dense net of starts.

Independent of the engine: no closed form and no symmetry. Axes: x from the grip's front to the tip, y away from the
rings' side, z out of the plane. The surface is made of its profile turned about x; the distance of the fan from it is
the least distance of any point of any line to any point of it, a search over four numbers (place on the lip, on the
line, on the profile, round the rod), its sign by whether the point lies inside.

One JSON request per line on standard input (fields as the engine's spool request), one JSON answer per line on
standard output.
"""

import json
import sys

import numpy as np
from scipy.optimize import minimize, minimize_scalar


def unit(v):
    return v / np.linalg.norm(v)


def answer(request):
    length = request["lengthM"]
    spool = request["spool"]
    radius = spool["lipDiameterM"] / 2
    middle = np.array([spool["alongM"], -spool["offsetM"], 0.0])
    tilt = spool["tiltRad"]
    axis = np.array([np.cos(tilt), np.sin(tilt), 0.0])
    side = np.array([0.0, 0.0, 1.0])
    up = np.cross(side, axis)

    def lip(turn):
        return middle + radius * (np.cos(turn) * up + np.sin(turn) * side)

    places = [np.array([length - r["fromTipM"], -r["ringHeightM"], 0.0]) for r in request["rings"]]
    order = sorted(range(len(places)), key=lambda i: places[i][0])
    first, second = places[order[0]], places[order[1]]

    def turned(turn):
        a, b = unit(first - lip(turn)), unit(second - first)
        return np.arctan2(np.linalg.norm(np.cross(a, b)), a @ b)

    def extreme(sign):
        net = np.linspace(0, 2 * np.pi, 181)
        start = min(net, key=lambda t: sign * turned(t))
        found = minimize_scalar(
            lambda t: sign * turned(t), bounds=(start - 0.05, start + 0.05), method="bounded", options={"xatol": 1e-10}
        )
        return min(sign * turned(start), found.fun) * sign

    rows = request["surface"]
    xs = np.array([length - row["fromTipM"] for row in rows])
    rs = np.array([row["radiusM"] for row in rows])
    far = 10.0
    xs = np.concatenate([[xs[0] + far], xs, [xs[-1] - far]])
    rs = np.concatenate([[rs[0]], rs, [rs[-1]]])
    run = np.concatenate([[0], np.cumsum(np.hypot(np.diff(xs), np.diff(rs)))])

    def profile(s):
        return np.interp(s, run, xs), np.interp(s, run, rs)

    def gap(v):
        turn, share, s, around = v
        start = lip(turn)
        p = start + share * (first - start)
        x, r = profile(s)
        q = np.array([x, r * np.cos(around), r * np.sin(around)])
        inside = np.hypot(p[1], p[2]) < np.interp(p[0], xs[::-1], rs[::-1])
        d = np.linalg.norm(p - q)
        return -d if inside else d

    def clearance():
        # a net over lip and line; the distance to the profile in the half plane through the point
        best = []
        for turn in np.linspace(0, 2 * np.pi, 73):
            start = lip(turn)
            for share in np.linspace(0, 1, 61):
                p = start + share * (first - start)
                rho = np.hypot(p[1], p[2])
                inside = rho < np.interp(p[0], xs[::-1], rs[::-1])
                d, s = 1e9, 0.0
                for i in range(len(xs) - 1):
                    a = np.array([xs[i], rs[i]])
                    b = np.array([xs[i + 1], rs[i + 1]])
                    n = (b - a) @ (b - a)
                    t = 0.0 if n == 0 else np.clip((np.array([p[0], rho]) - a) @ (b - a) / n, 0, 1)
                    here = np.linalg.norm(np.array([p[0], rho]) - a - t * (b - a))
                    if here < d:
                        d, s = here, run[i] + t * np.sqrt(n)
                best.append((-d if inside else d, turn, share, s, np.arctan2(p[2], p[1])))
        best.sort()
        least = best[0][0]
        if least < 0:  # deepest point inside: a search over lip and line with the nearest place of the profile

            def depth(v):
                p = lip(v[0]) + np.clip(v[1], 0, 1) * (first - lip(v[0]))
                rho = np.hypot(p[1], p[2])
                ways = []
                for i in range(len(xs) - 1):
                    a, b = np.array([xs[i], rs[i]]), np.array([xs[i + 1], rs[i + 1]])
                    n = (b - a) @ (b - a)
                    t = 0.0 if n == 0 else np.clip((np.array([p[0], rho]) - a) @ (b - a) / n, 0, 1)
                    ways.append(np.linalg.norm(np.array([p[0], rho]) - a - t * (b - a)))
                inside = rho < np.interp(p[0], xs[::-1], rs[::-1])
                return -min(ways) if inside else min(ways)

            for start in best[:5]:
                found = minimize(depth, start[1:3], method="Nelder-Mead", options={"xatol": 1e-9, "fatol": 1e-12})
                least = min(least, found.fun)
            return least
        for start in best[:8]:
            found = minimize(
                lambda v: gap([v[0], np.clip(v[1], 0, 1), v[2], v[3]]),
                start[1:],
                method="Nelder-Mead",
                options={"xatol": 1e-9, "fatol": 1e-12, "maxiter": 4000, "maxfev": 4000},
            )
            least = min(least, found.fun)
        return least

    meets = None
    if axis[1] > 0:
        t = -middle[1] / axis[1]
        meets = length - (middle + t * axis)[0]
        if meets <= 0:
            meets = None
    inside = [r["insideM"] for r in request["rings"]]
    narrow = min(range(len(inside)), key=lambda i: (inside[i], places[i][0]))
    needed = np.interp(
        [p[0] for p in places], [middle[0], places[narrow][0]], [2 * radius, inside[narrow]]
    )
    return {
        "least": extreme(1),
        "largest": extreme(-1),
        "clearanceM": clearance(),
        "axisMeetsFromTipM": meets,
        "insideNeededM": list(needed),
    }


for line in sys.stdin:
    if line.strip():
        print(json.dumps(answer(json.loads(line))), flush=True)
