"""Camera from marks in a plane, a second way: scipy's trust-region least squares over a rotation vector.

One JSON request per line: marks [{"px":[u,v],"atM":[X,Y]}], widthPx, heightPx, usual (focalShare, focalLogSpread,
centreSpread, k1Spread, k2Spread, markSigmaPx), ask [[X,Y]] places of the plane, seen [[u,v]] pixels. One answer per line:
cost (half the sum of squares), askPx, seenM. Pinhole with radial distortion x(1 + k1 r^2 + k2 r^4), X right, Y up; the
pixel of a place in the plane is undone by scipy's root finder. Nothing here is taken from the program.
"""
import json
import sys

import numpy as np
from scipy.optimize import least_squares, root
from scipy.spatial.transform import Rotation


def project(state, places, request):
    side = max(request["widthPx"], request["heightPx"])
    turn = Rotation.from_rotvec(state[:3]).as_matrix()
    at = np.column_stack([places[:, 0], -places[:, 1], np.zeros(len(places))]) @ turn.T + state[3:6]
    x, y = at[:, 0] / at[:, 2], at[:, 1] / at[:, 2]
    r2 = x * x + y * y
    stretch = np.exp(state[6]) * side * (1 + state[9] * r2 + state[10] * r2 * r2)
    middle = np.array([(request["widthPx"] - 1) / 2, (request["heightPx"] - 1) / 2]) + side * state[7:9]
    return middle + np.column_stack([stretch * x, stretch * y])


def solve(request):
    usual = request["usual"]
    places = np.array([mark["atM"] for mark in request["marks"]], float)
    seen = np.array([mark["px"] for mark in request["marks"]], float)

    def residuals(state):
        off = (project(state, places, request) - seen).ravel() / usual["markSigmaPx"]
        return np.concatenate([off, [
            (state[6] - np.log(usual["focalShare"])) / usual["focalLogSpread"],
            state[7] / usual["centreSpread"], state[8] / usual["centreSpread"],
            state[9] / usual["k1Spread"], state[10] / usual["k2Spread"]]])

    best = None
    for yaw in (-0.2, 0.0, 0.2):
        size = np.ptp(places[:, 0])
        start = np.array([0, yaw, 0, -places[:, 0].mean(), places[:, 1].mean(), 1.2 * size,
                          np.log(usual["focalShare"]), 0, 0, 0, 0])
        found = least_squares(residuals, start, x_scale="jac", xtol=1e-14, ftol=1e-14, gtol=1e-14, max_nfev=2000)
        if best is None or found.cost < best.cost:
            best = found
    ask = np.array(request["ask"], float)
    undone = [root(lambda at, px=px: project(best.x, np.array([at]), request)[0] - px, places.mean(axis=0),
                   tol=1e-12).x.tolist() for px in np.array(request["seen"], float)]
    return {"cost": best.cost, "askPx": project(best.x, ask, request).tolist(), "seenM": undone}


for line in sys.stdin:
    if line.strip():
        print(json.dumps(solve(json.loads(line))), flush=True)
