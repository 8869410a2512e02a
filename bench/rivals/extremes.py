# The generalised extreme value law by maximum likelihood, and the profile likelihood interval of a return level: SciPy's law, Nelder-Mead and brentq.
import json
import math
import sys

import numpy as np
import scipy
from scipy.optimize import brentq, minimize
from scipy.stats import genextreme

from solid import asked, timed

ask = asked()
y = -math.log1p(-1 / ask["period"])


def nll(x, location, scale, shape):
    """-log likelihood; SciPy's shape has the other sign. Written out as an array expression, ten times as fast as genextreme.nnlf."""
    if scale <= 0:
        return math.inf
    z = (x - location) / scale
    if abs(shape) < 1e-9:
        return len(x) * math.log(scale) + float((z + np.exp(-z)).sum())
    t = 1 + shape * z
    if t.min() <= 0:
        return math.inf
    t = np.log(t)
    return len(x) * math.log(scale) + float(((1 + 1 / shape) * t + np.exp(-t / shape)).sum())


def least(f, start):
    opt = {"xatol": 1e-10, "fatol": 1e-12, "maxiter": 4000, "maxfev": 4000}
    r = minimize(f, start, method="Nelder-Mead", options=opt)
    return minimize(f, r.x, method="Nelder-Mead", options=opt)


def factor(shape):
    return -math.log(y) if abs(shape) < 1e-9 else math.expm1(-shape * math.log(y)) / shape


def interval(x):
    spread = math.sqrt(6) / math.pi * x.std()
    fit = least(lambda p: nll(x, p[0], p[1], p[2]), [x.mean() - 0.5772 * spread, spread, 0.05])
    location, scale, shape = fit.x
    level = location + scale * factor(shape)
    assert abs(nll(x, location, scale, shape) - genextreme.nnlf((-shape, location, scale), x)) < 1e-6
    state = {}

    def excess(q):
        """How far twice the fall of the likelihood, all else fitted anew, is over the drop. Starts from the last fit, or from the best point of a net
        where that leaves a maximum outside the law."""

        def f(p):
            return nll(x, q - p[0] * factor(p[1]), p[0], p[1])

        start = state["at"]
        if not all(math.isfinite(f([start[0] * a, start[1] + b])) for a in (1, 1.05) for b in (0, 0.05)):
            start = min(([scale * math.exp(a), shape + b] for a in np.linspace(-0.5, 2, 11) for b in np.linspace(-0.8, 0.8, 17)), key=f)
        r = least(f, start)
        state["at"] = r.x
        return 2 * (r.fun - fit.fun) - ask["drop"]

    ends = []
    for way in (-1, 1):
        state["at"] = [scale, shape]
        near, step = level, 0.25 * scale
        far = near + way * step
        while excess(far) < 0:
            near, step = far, 2 * step
            far += way * step
        ends.append(brentq(excess, near, far, xtol=1e-8) if near != level else brentq(excess, level + way * 1e-3 * scale, far, xtol=1e-8))
    return {"Location": location, "Scale": scale, "Shape": shape, "Level": level, "Low": ends[0], "High": ends[1]}


answers = []


def work():
    answers[:] = [interval(np.array(d)) for d in ask["data"]]


interval(np.array(ask["data"][0]))  # warm
json.dump({"tool": f"SciPy {scipy.__version__}, NumPy {np.__version__}", **timed(ask["repeat"], work), "answers": answers}, sys.stdout)
