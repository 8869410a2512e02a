# A ship lowered on a straight even line of blocks: at each water level afloat, turning about the end block she meets first (brentq), or flat on the blocks.
import json
import sys

import numpy as np
import scipy
from scipy.optimize import brentq, root

from solid import Solid, asked, plane, timed

ask = asked()
L, rho, w, xg, kg = (ask[k] for k in ("length", "density", "mass", "lcg", "vcg"))
hull = Solid(ask["hull"]["vertices"], ask["hull"]["triangles"])


def excess(draft, trim, x):
    """The moment by which her weight turns her about a block at x against the water, and her displacement."""
    n, d, _, _ = plane(draft, trim, 0, L)
    v, m = hull.under(n, d)
    return w * ((xg - x) * n[2] - kg * n[0]) - rho * ((m[0] - v * x) * n[2] - m[2] * n[0]), rho * v


def afloat():
    def unrest(s):
        turn, carried = excess(*s, xg)
        return carried / w - 1, turn / w / L

    return root(unrest, [3.5, 0], tol=1e-11).x


def sequence():
    draft, trim = afloat()
    x = ask["aft"] if trim >= 0 else ask["fwd"]
    touch = draft + trim * (L / 2 - x) / L
    landed = brentq(lambda z: excess(z, 0, x)[0], 0.01 * draft, touch + abs(trim) + 1, xtol=1e-11, rtol=1e-14)
    up, fwd, aft = [], [], []
    for z in ask["levels"]:
        if z >= touch:
            d, t, p = draft, trim, 0
        else:
            t = 0 if z <= landed else brentq(lambda t: excess(z - t * (L / 2 - x) / L, t, x)[0], 0, trim, xtol=1e-11, rtol=1e-14)
            d = z - t * (L / 2 - x) / L
            p = w - excess(d, t, x)[1]
        up.append(max(p, 0))
        fwd.append(d - t / 2)
        aft.append(d + t / 2)
    return {"Upthrust": up, "Fwd": fwd, "Aft": aft}


answers = {}


def work():
    answers.update(sequence())


afloat()  # warm
json.dump({"tool": f"NumPy {np.__version__}, SciPy {scipy.__version__}", **timed(ask["repeat"], work), "answers": answers}, sys.stdout)
