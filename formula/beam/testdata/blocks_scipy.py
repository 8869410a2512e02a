"""Reference for the beam solver: a stepped beam with a trapezoidal weight curve on twelve blocks that only push, one of them short, one out,
and all with a yield. Force method: the blocks' pushes minimise the complementary energy under equilibrium and their bounds (scipy.optimize.lsq_linear, BVLS,
polished by the linear equations of the active set), flexibilities by quadrature of the moments of a cantilever. Run:
python3 blocks_scipy.py > blocks_scipy.json"""
import json, sys
import numpy as np, scipy
from scipy.integrate import quad
from scipy.optimize import lsq_linear

L = 60.0
ei = [(0.0, 15.0, 4e8), (15.0, 45.0, 1.5e9), (45.0, 60.0, 4e8)]           # N.m2
loads = [(0.0, 20.0, 1e5, 4e5), (20.0, 40.0, 4e5, 3.5e5), (40.0, 60.0, 3.5e5, 0.5e5)]  # N/m down
x = np.linspace(5.0, 54.5, 12)
k = np.full(12, 6e7); k[4] = 9e7
settle = np.zeros(12); settle[6] = 0.030; settle[10] = 0.050; settle[1] = 0.004                # m
cap = np.full(12, 1.9e6)                                                   # N

def w(s):
    return sum(a + (b - a) * (s - p) / (q - p) for p, q, a, b in loads if p <= s < q)

def total(lever):
    return sum(quad(lambda s: (a + (b - a) * (s - p) / (q - p)) * (s if lever else 1.0), p, q)[0] for p, q, a, b in loads)

def m_load(s):  # moment at s of the load beyond s, clamped at 0, hogging negative
    out = 0.0
    for p, q, a, b in loads:
        lo = max(p, s)
        if lo < q:
            wl = a + (b - a) * (lo - p) / (q - p); h = q - lo
            out -= (wl * h) * (lo - s + h / 2) + (b - wl) * h / 2 * (lo - s + 2 * h / 3)
    return out

def integral(f, upto):
    cuts = sorted({0.0, upto, *[c for c in (15.0, 20.0, 40.0, 45.0) if c < upto]})
    t = 0.0
    for lo, hi in zip(cuts, cuts[1:]):
        e = next(v for p, q, v in ei if p <= (lo + hi) / 2 < q)
        t += quad(lambda s: f(s) / e, lo, hi, epsabs=0, epsrel=1e-12)[0]
    return t

n = len(x)
F = np.zeros((n, n)); d = np.zeros(n)
for i in range(n):
    d[i] = integral(lambda s: -m_load(s) * (x[i] - s), x[i])
    for j in range(n):
        F[i, j] = integral(lambda s: (x[i] - s) * (x[j] - s), min(x[i], x[j]))
W, M = total(False), total(True)
A = F + np.diag(1 / k); c = d - settle
# minimise 1/2 R'AR - R'c subject to sum R = W, sum R x = M, 0 <= R <= cap: least squares of the Cholesky factor, the two equations of
# balance as heavy rows; forces in MN
S = 1e6
C = np.linalg.cholesky(A * S).T
G = np.vstack([C, 1e4 * np.ones(n), 1e4 * x / 30])
h = np.concatenate([np.linalg.solve(C.T, c), [1e4 * W / S, 1e4 * M / S / 30]])
r = lsq_linear(G, h, bounds=(0, cap / S), method="bvls", tol=1e-15, max_iter=10000).x * S
lo, hi = r < 2e3, r > cap - 2e3  # active bounds, to the accuracy of BVLS; checked below
free = ~(lo | hi)
nf = free.sum()
K = np.zeros((nf + 2, nf + 2)); rhs = np.zeros(nf + 2)
K[:nf, :nf] = A[np.ix_(free, free)]; K[:nf, nf] = K[nf, :nf] = 1; K[:nf, nf + 1] = K[nf + 1, :nf] = x[free]
rhs[:nf] = c[free] - A[np.ix_(free, hi)] @ cap[hi]; rhs[nf] = W - cap[hi].sum(); rhs[nf + 1] = M - cap[hi] @ x[hi]
sol = np.linalg.solve(K, rhs)
out = np.where(hi, cap, 0.0); out[free] = sol[:nf]
assert (out >= 0).all() and (out <= cap * (1 + 1e-12)).all(), out
gap = A @ out - c + sol[nf] + x * sol[nf + 1]  # Kuhn and Tucker: not below zero where open, not above where it gives way
assert (gap[lo] >= -1e-9).all() and (gap[hi] <= 1e-9).all(), gap
json.dump({"tool": "SciPy " + scipy.__version__ + ", NumPy " + np.__version__, "x": x.tolist(), "stiffness": k.tolist(), "settle": settle.tolist(),
           "yield": cap.tolist(), "force": out.tolist(), "open": [int(i) for i in np.where(lo)[0]], "plastic": [int(i) for i in np.where(hi)[0]]}, sys.stdout, indent=1)
print()
