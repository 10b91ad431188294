"""The worst ratio of stored layouts, by statics and shooting: nothing here is shared with the engine.

Bend (frame, signs and fields as in the engine's layout request): integrate from the tip, s the distance from it,
    dx/ds = -cos a   dy/ds = -sin a   da/ds = -(M/EI + rest)   dM/ds = Ny cos a - Nx sin a   dNy/ds = -m g
with Runge-Kutta 4; at every ring the line's force T (e_ahead - e_behind) and its moment about the axis are added.
Unknown are the tip's angle and the direction of every span of the line; wanted are the butt's angle and that every
span points from ring to ring. Newton with a difference Jacobian, the load followed up from nothing.

    score_layouts.py cases.json      prints one JSON line per case: the worst ratio found here, and the stored one
"""
import json
import sys

import numpy as np

G = 9.80665


def table(rows, key, length, count=4001):
    at = np.linspace(0, length, count)
    if not rows:
        return np.zeros(count)
    return np.interp(at, [r["fromTipM"] for r in rows], [r[key] for r in rows])


class Bench:
    """One request; bends batches of layouts under all loads."""

    def __init__(self, request):
        self.request = request
        rod, guides = request["rod"], request["guides"]
        self.length = rod["lengthM"]
        self.stiffness = table(rod["stiffness"], "EINm2", self.length)
        self.mass = table(rod.get("massPerLength"), "kgPerM", self.length)
        self.rest = table(rod.get("restCurvature"), "perM", self.length)
        self.n = guides["count"]
        sign = 1 if guides["side"] == "over" else -1
        heights = [request["tipTop"]["ringHeightM"], *guides["ringHeightsM"]]
        self.height = np.array(heights)
        self.offset = sign * self.height
        self.sign = sign
        self.ring_mass = np.array([request["tipTop"].get("massKg", 0), *guides.get("massesKg", [0] * self.n)])
        self.loads = request["ladder"]
        self.steps = 24

    def look(self, of, s):
        u = np.clip(s / self.length * (len(of) - 1), 0, len(of) - 1.000001)
        i = u.astype(int)
        return of[i] + (u - i) * (of[i + 1] - of[i])

    def shoot(self, stations, unknown, tension, pull, tied, share, keep=False):
        """stations (B, n); unknown (B, n + 2): tip angle, then span directions. Returns the residual (B, n + 2)."""
        batch, n = stations.shape[0], self.n
        x = np.zeros(batch)
        y = np.zeros(batch)
        a = unknown[:, 0].copy()
        moment = np.zeros(batch)
        nx = share * tied * np.cos(pull)
        ny = share * tied * np.sin(pull)
        ex, ey = np.cos(pull), np.sin(pull)
        rings, paths = [], []
        ends = np.concatenate([np.zeros((batch, 1)), stations, np.full((batch, 1), self.length)], axis=1)
        for k in range(n + 1):
            bx, by = np.cos(unknown[:, 1 + k]), np.sin(unknown[:, 1 + k])
            fx, fy = share * tension * (ex - bx), share * tension * (ey - by)
            ox, oy = -self.offset[k] * np.sin(a), self.offset[k] * np.cos(a)
            rings.append((x + ox, y + oy))
            moment = moment + ox * fy - oy * fx
            nx = nx + fx
            ny = ny + fy - share * self.ring_mass[k] * G
            ex, ey = bx, by
            steps = self.steps if k < n else 2 * self.steps
            h = (ends[:, k + 1] - ends[:, k]) / steps
            path = [(ends[:, k].copy(), x, y)]
            for i in range(steps):
                s = ends[:, k] + i * h
                x, y, a, moment, ny = self.step(s, h, x, y, a, moment, nx, ny, share)
                path.append((s + h, x, y))
            paths.append(path)
        t = self.request["buttAngleRad"]
        reel = self.request["reel"]
        off = self.sign * reel["offsetM"]
        rings.append((x + reel["alongM"] * np.cos(t) - off * np.sin(t), y + reel["alongM"] * np.sin(t) + off * np.cos(t)))
        out = np.empty((batch, n + 2))
        out[:, 0] = a - t
        for k in range(n + 1):
            dx = rings[k][0] - rings[k + 1][0]
            dy = rings[k][1] - rings[k + 1][1]
            out[:, 1 + k] = dx * np.sin(unknown[:, 1 + k]) - dy * np.cos(unknown[:, 1 + k])
        return (out, rings, paths) if keep else out

    def step(self, s, h, x, y, a, moment, nx, ny, share):
        def rates(s, a, moment, ny):
            c, d = np.cos(a), np.sin(a)
            bend = -(moment / self.look(self.stiffness, s) + self.look(self.rest, s))
            return -c, -d, bend, ny * c - nx * d, -share * G * self.look(self.mass, s)

        k1 = rates(s, a, moment, ny)
        k2 = rates(s + h / 2, a + h / 2 * k1[2], moment + h / 2 * k1[3], ny + h / 2 * k1[4])
        k3 = rates(s + h / 2, a + h / 2 * k2[2], moment + h / 2 * k2[3], ny + h / 2 * k2[4])
        k4 = rates(s + h, a + h * k3[2], moment + h * k3[3], ny + h * k3[4])
        mean = [(p + 2 * q + 2 * r + w) / 6 for p, q, r, w in zip(k1, k2, k3, k4)]
        return x + h * mean[0], y + h * mean[1], a + h * mean[2], moment + h * mean[3], ny + h * mean[4]

    def newton(self, stations, unknown, load, share=1.0, iterations=9):
        """Returns the unknowns and which of the batch converged."""
        tension, pull, tied = load["tensionN"], load["pullAngleRad"], load.get("tiedN", 0)
        batch, m = unknown.shape
        done = np.zeros(batch, bool)
        unknown = unknown.copy()
        delta = 1e-6
        for _ in range(iterations):
            todo = np.flatnonzero(~done)
            if len(todo) == 0:
                break
            u, st = unknown[todo], stations[todo]
            shifted = np.repeat(u[:, None, :], m + 1, axis=1)
            for j in range(m):
                shifted[:, j + 1, j] += delta
            with np.errstate(all="ignore"):
                f = self.shoot(np.repeat(st, m + 1, axis=0), shifted.reshape(-1, m), tension, pull, tied, share)
            f = f.reshape(-1, m + 1, m)
            jacobian = np.swapaxes((f[:, 1:] - f[:, :1]) / delta, 1, 2)
            good = np.isfinite(jacobian).all(axis=(1, 2)) & np.isfinite(f[:, 0]).all(axis=1)
            move = np.zeros_like(u)
            if good.any():
                move[good] = np.linalg.solve(jacobian[good], -f[good, 0][..., None])[..., 0]
            largest = np.abs(move).max(axis=1)
            move *= np.minimum(1, 0.4 / np.maximum(largest, 1e-30))[:, None]
            unknown[todo] = u + move
            done[todo[good & (largest < 1e-6)]] = True
        return unknown, done

    def from_nothing(self, stations):
        """Unknowns of one layout under every load, the load followed up from nothing."""
        out = []
        for load in self.loads:
            t = self.request["buttAngleRad"]
            u = np.full((1, self.n + 2), t)
            share, step = 0.0, 0.05
            while share < 1:
                target = min(1.0, share + step)
                v, ok = self.newton(stations[None], u, load, max(target, 1e-9))
                if ok[0]:
                    u, share, step = v, target, step * 1.6
                else:
                    step /= 3
                    if step < 1e-4:
                        raise RuntimeError(f"no bend beyond {share} of {load}")
            out.append(u[0])
        return np.array(out)

    def ratios(self, stations, unknown, load):
        """Worst line angle, gap and extra bend over their limits, each (B,)."""
        tension, pull, tied = load["tensionN"], load["pullAngleRad"], load.get("tiedN", 0)
        _, rings, paths = self.shoot(stations, unknown, tension, pull, tied, 1.0, keep=True)
        limits = self.request["limits"]
        turn = np.abs(np.diff(unknown[:, 1:], axis=1))[:, : self.n - 1]  # guides 1 to n - 1
        worst_gap = np.zeros(len(stations))
        worst_extra = np.zeros(len(stations))
        for k in range(self.n):
            (hx, hy), (lx, ly) = rings[k], rings[k + 1]
            length = np.hypot(hx - lx, hy - ly)
            ux, uy = (hx - lx) / length, (hy - ly) / length
            s = np.array([p[0] for p in paths[k]])
            dx = np.array([p[1] for p in paths[k]]) - lx
            dy = np.array([p[2] for p in paths[k]]) - ly
            along = np.clip((dx * ux + dy * uy) / length, 0, 1)
            height = self.height[k + 1] + along * (self.height[k] - self.height[k + 1])
            gap = -self.sign * (dy * ux - dx * uy) - height
            extra = tension * gap / self.look(self.stiffness, s)
            worst_gap = np.maximum(worst_gap, top(gap))
            worst_extra = np.maximum(worst_extra, top(extra))
        return (
            turn.max(axis=1, initial=0) / limits["lineAngleRad"],
            worst_gap / limits["gapM"],
            worst_extra / limits["extraBendPerM"],
        )

    def worst(self, stations, unknown):
        """unknown (B, loads, n + 2). Returns worst ratio (B,), and the corrected unknowns."""
        worst = np.zeros(len(stations))
        unknown = unknown.copy()
        for k, load in enumerate(self.loads):
            u, ok = self.newton(stations, unknown[:, k], load)
            unknown[:, k] = u
            with np.errstate(all="ignore"):
                r = np.max(self.ratios(stations, u, load), axis=0)
            worst = np.maximum(worst, np.where(ok, r, 1e3))
        return worst, unknown


def top(values):
    """Largest of equally spaced values along axis 0, by the parabola through it and its neighbours."""
    i = np.clip(values.argmax(axis=0), 1, values.shape[0] - 2)
    c = np.arange(values.shape[1])
    low, mid, high = values[i - 1, c], values[i, c], values[i + 1, c]
    second = low - 2 * mid + high
    with np.errstate(all="ignore"):
        peak = mid - (high - low) ** 2 / (8 * second)
    inside = (values.argmax(axis=0) == i) & (second < 0)
    return np.maximum(np.where(inside, peak, values.max(axis=0)), 0)


def main():
    for case in json.load(open(sys.argv[1]))["cases"]:
        bench = Bench(case["request"])
        at = np.array(case["fromTipM"])
        try:
            worst = bench.worst(at[None], bench.from_nothing(at)[None])[0][0]
            print(json.dumps({"name": case["name"], "worst": worst, "stored": case["worst"]}), flush=True)
        except RuntimeError as reason:
            print(json.dumps({"name": case["name"], "failed": str(reason), "stored": case["worst"]}), flush=True)


if __name__ == "__main__":
    main()
