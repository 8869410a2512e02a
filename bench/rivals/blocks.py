# A hull girder on blocks that only push and give way at a yield: Hermite beam elements with consistent loads, which are exact at the nodes, a banded
# Cholesky solve, and blocks that let go, give way and come back until none is wrong.
import json
import sys

import numpy as np
import scipy
from scipy.linalg import solveh_banded

from solid import asked, timed

ask = asked()
xb, k, settle, cap = (np.array(ask[n]) for n in ("x", "stiffness", "settle", "yield"))
ends, ei, grid = np.array(ask["ends"]), np.array(ask["ei"]), np.array(ask["grid"])
nodes = np.unique(np.round(np.concatenate([xb, ends, grid]), 12))
h, mid = np.diff(nodes), (nodes[1:] + nodes[:-1]) / 2
at = np.searchsorted(nodes, xb - 1e-9)  # the node of each block
E = ei[np.searchsorted(ends, mid) - 1]
band = np.zeros((4, 2 * len(nodes)))  # upper form: band[3] is the diagonal
unit = np.array([[12, 6, -12, 6], [6, 4, -6, 2], [-12, -6, 12, -6], [6, 2, -6, 4]], float)
for i, (e, l) in enumerate(zip(E, h)):
    scale = np.outer([1, l, 1, l], [1, l, 1, l]) * e / l**3 * unit
    for a in range(4):
        for b in range(a, 4):
            band[3 + a - b, 2 * i + b] += scale[a, b]
scale = np.ones(2 * len(nodes))


def loads(q):
    """Consistent loads of a load that is linear between the points of the grid."""
    w = np.interp(nodes, grid, q)
    a, b = w[:-1], w[1:]
    f = np.zeros(2 * len(nodes))
    np.add.at(f, 2 * np.arange(len(h)), h * (7 * a + 3 * b) / 20)
    np.add.at(f, 2 * np.arange(len(h)) + 1, h**2 * (3 * a + 2 * b) / 60)
    np.add.at(f, 2 * np.arange(len(h)) + 2, h * (3 * a + 7 * b) / 20)
    np.add.at(f, 2 * np.arange(len(h)) + 3, -(h**2) * (2 * a + 3 * b) / 60)
    return f


def solve(q, state):
    """state: 1 carries, 0 has let go, 2 has given way."""
    f = loads(q)
    for _ in range(200):
        m, r = band.copy(), f.copy()
        on, gone = state == 1, state == 2
        m[3, 2 * at[on]] += k[on]
        r[2 * at[on]] += k[on] * settle[on]
        r[2 * at[gone]] -= cap[gone]
        y = solveh_banded(m, r, check_finite=False)[2 * at]
        push = k * (y - settle)
        new = np.where(push <= 0, 0, np.where(push >= cap, 2, 1))
        if (new == state).all():
            return np.clip(push, 0, cap), state
        state = new
    raise SystemExit("blocks: no end to it")


answers = []


def work():
    answers.clear()
    state = np.ones(len(xb), int)  # the last level's is the next one's start
    for q in ask["cases"]:
        force, state = solve(np.array(q), state)
        answers.append(force.tolist())


work()  # warm
json.dump({"tool": f"NumPy {np.__version__}, SciPy {scipy.__version__}", **timed(ask["repeat"], work), "answers": answers}, sys.stdout)
