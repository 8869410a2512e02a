"""Least ballast of ballast_test.go by SciPy's linprog (HiGHS). Prints what each variable takes, t."""
import math
import scipy
from scipy.optimize import linprog

W, XG, ZG, T, XF, KM, MCT, FSM, A, F, Q = 3361.0, 44.78, 4.75, 0.5, 43.3, 5.43, 4790.0, 180.0, 4.0, 87.4, 42.0  # t, m, t.m/m
L, MID = F - A, (A + F) / 2
# mass, x, y, z moments of one tonne
ways = {
    "iron out": (-1, -21.0, 0, -3.5), "iron to hold": (0, 45.5, 0, -2.0), "hold out": (-1, -66.5, 0, -1.5), "hold to iron": (0, -45.5, 0, 2.0),
    "peak in": (1, 85.5, 0, 2.5), "No 2 port out": (-1, -38.4, -2.8, -0.4),
}
rows, bounds = [], []
def limit(of, most):
    rows.append([of(w) for w in ways.values()]); bounds.append(most)
aft = lambda m, x: (m - 6 * (x - m * MID) / L) / L
fwd = lambda m, x: (m + 6 * (x - m * MID) / L) / L
limit(lambda w: aft(w[0], w[1]), Q - aft(W, W * XG))
limit(lambda w: fwd(w[0], w[1]), Q - fwd(W, W * XG))
trim = lambda w: (w[0] * XF - w[1]) / MCT
limit(trim, 1.0 - T)
limit(lambda w: -trim(w), T - 0.0)
side = W * (KM - ZG) * math.tan(math.radians(0.5))
limit(lambda w: w[2], side)
limit(lambda w: -w[2], side)
left = lambda m, z, t: m * (KM - 0.15) - z - MCT * t / (XF - A) * KM
limit(lambda w: -left(w[0], w[3], trim(w)), left(W, W * ZG, T) - FSM)
limit(lambda w: 1 if w == ways["iron out"] or w == ways["iron to hold"] else 0, 20.0)
limit(lambda w: 1 if w == ways["hold out"] or w == ways["hold to iron"] else 0, 120.0)
limit(lambda w: 1 if w == ways["peak in"] else 0, 50.0)
limit(lambda w: 1 if w == ways["No 2 port out"] else 0, 46.0)
r = linprog([1] * len(ways), A_ub=rows, b_ub=bounds, method="highs")
print("SciPy", scipy.__version__, r.message, "%.9f" % r.fun)
for name, x in zip(ways, r.x):
    print(name, "%.9f" % x)
