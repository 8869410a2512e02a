# A closed surface of triangles cut by a plane of water, in NumPy. The integrals of every triangle are ready beforehand, as parts of cones from a point of the
# plane, so that the cut face adds nothing and a triangle wholly under water is a row of one sum; those that the plane crosses are clipped side by side.
import json
import sys
import time

import numpy as np


class Solid:
    def __init__(self, vertices, triangles):
        self.v = np.array([[p["X"], p["Y"], p["Z"]] if isinstance(p, dict) else p for p in vertices], float)
        self.t = np.array(triangles, np.intp)
        self.columns = parts(self.v[self.t])

    def under(self, n, d):
        """Volume and first moment of what lies under the plane n.x = d."""
        o = n * d
        h = self.v @ n - d
        k = h[self.t]
        wet = k < 0
        some = wet.any(1)
        whole = wet.all(1)
        s = whole @ self.columns
        cross = np.flatnonzero(some & ~whole)
        if len(cross):
            s = s + parts(clipped(self.v[self.t[cross]], k[cross])).sum(0)
        volume = (s[0] - o @ s[1:4]) / 6
        moment = (s[4:7] - o @ s[7:16].reshape(3, 3) + o * (s[0] - o @ s[1:4])) / 24
        return volume, moment


def parts(p):
    """Of triangles (n, 3 corners, xyz): a.N, N, a.N S, N S' with N twice the area vector and S the sum of the corners."""
    a = p[:, 0]
    n = np.cross(p[:, 1] - a, p[:, 2] - a)
    s = p.sum(1)
    an = (a * n).sum(1)
    return np.hstack([an[:, None], n, an[:, None] * s, (n[:, :, None] * s[:, None, :]).reshape(-1, 9)])


def clipped(p, h):
    """The parts under water of triangles that a plane crosses, as triangles."""
    wet = h < 0
    two = wet.sum(1) == 2
    lone = np.where(two, (~wet).argmax(1), wet.argmax(1))  # the corner that lies apart
    i = np.arange(len(p))
    a, b, c = (p[i, (lone + k) % 3] for k in range(3))
    ha, hb, hc = (h[i, (lone + k) % 3][:, None] for k in range(3))
    ab, ac = a + (b - a) * (ha / (ha - hb)), a + (c - a) * (ha / (ha - hc))
    one = np.stack([a, ab, ac], 1)[~two]
    return np.concatenate([one, np.stack([ab, b, c], 1)[two], np.stack([ab, c, ac], 1)[two]])


def plane(draft, trim, heel, length):
    """Normal and offset of the water plane, and its axes forward and to port."""
    a = np.arctan(trim * np.cos(heel) / length)
    n = np.array([np.sin(a), -np.cos(a) * np.sin(heel), np.cos(a) * np.cos(heel)])
    u = np.array([1, 0, 0]) - n * n[0]
    u /= np.sqrt(u @ u)
    return n, n @ np.array([length / 2, 0, draft]), u, np.cross(n, u)


def timed(repeat, work):
    """The least time of so many runs, on the clock and on all processors."""
    wall, cpu = [], []
    for _ in range(repeat):
        w, c = time.perf_counter(), time.process_time()
        work()
        wall.append(time.perf_counter() - w)
        cpu.append(time.process_time() - c)
    return {"wall": min(wall), "cpu": min(cpu)}


def asked():
    return json.load(open(sys.argv[1]))
