#!/usr/bin/env python3
"""Makes the instances that the solver of this package is checked on, and asks two independent solvers for the answers.

Needs Debian's glpk-utils and coinor-cbc. Run: python3 generate.py
Writes instances.json: each instance with its variables and rows (null is infinite), and what both solvers said. Instances on which the two differ
by more than 1e-6 stop the run.
"""
import json, random, subprocess, tempfile, os, sys

INF = None

def lp_text(inst):
    def name(j): return "x%d" % j
    def term(c, j): return "%s %.17g %s" % ("+" if c >= 0 else "-", abs(c), name(j))
    out = ["Minimize", " obj: " + " ".join(term(v["cost"], j) for j, v in enumerate(inst["vars"])), "Subject To"]
    for i, r in enumerate(inst["rows"]):
        body = " ".join(term(c, j) for j, c in r["terms"])
        if r["low"] is not None and r["low"] == r["high"]:
            out.append(" r%d: %s = %.17g" % (i, body, r["low"]))
            continue
        if r["high"] is not None: out.append(" r%du: %s <= %.17g" % (i, body, r["high"]))
        if r["low"] is not None: out.append(" r%dl: %s >= %.17g" % (i, body, r["low"]))
    out.append("Bounds")
    for j, v in enumerate(inst["vars"]):
        lo = "-inf" if v["low"] is None else "%.17g" % v["low"]
        hi = "+inf" if v["high"] is None else "%.17g" % v["high"]
        out.append(" %s <= %s <= %s" % (lo, name(j), hi))
    whole = [name(j) for j, v in enumerate(inst["vars"]) if v["whole"]]
    if whole: out += ["General", " " + " ".join(whole)]
    return "\n".join(out + ["End", ""])

def glpsol(path, mip):
    sol = path + ".glp"
    said = subprocess.run(["glpsol", "--lp", path, "-w", sol, "--tmlim", "120"] + (["--cuts"] if mip else []), check=True, capture_output=True, text=True).stdout
    if "NO PRIMAL FEASIBLE" in said or "NO FEASIBLE" in said: return "infeasible", None
    if "NO DUAL FEASIBLE" in said or "UNBOUNDED" in said: return "unbounded", None
    for line in open(sol):
        f = line.split()
        if f[:2] == ["s", "mip"]:
            return ("optimal", float(f[5])) if f[4] == "o" else ("infeasible", None) if f[4] in "nu" else (f[4], None)
        if f[:2] == ["s", "bas"]:
            if f[4] == "f" and f[5] == "f": return "optimal", float(f[6])
            return ("infeasible" if f[4] == "n" or (f[4] == "u" and f[5] == "n") else "unbounded"), None
    return "none", None

def cbc(path):
    sol = path + ".cbc"
    subprocess.run(["cbc", path, "ratioGap", "0", "allowableGap", "0", "solve", "solu", sol], check=True, stdout=subprocess.DEVNULL)
    first = open(sol).readline()
    if first.startswith("Optimal"): return "optimal", float(first.split()[-1])
    if "unbounded" in first.lower(): return "unbounded", None
    if "nfeasible" in first: return "infeasible", None
    return first.strip(), None

def var(cost, low=0, high=INF, whole=False): return dict(cost=cost, low=low, high=high, whole=whole)
def row(terms, low=INF, high=INF): return dict(terms=terms, low=low, high=high)

def linear(r, n, m):
    """Dense, feasible and bounded, with free variables, ranges and equalities."""
    x = [r.uniform(-5, 5) for _ in range(n)]
    vs = []
    for j in range(n):
        k = r.random()
        lo = None if k < 0.15 else round(x[j] - r.uniform(0, 4), 2)
        hi = None if k < 0.15 or k > 0.8 else round(x[j] + r.uniform(0.02, 4), 2)
        vs.append(var(0, lo, hi))
    rows = []
    for i in range(m):
        t = [(j, round(r.uniform(-9, 9), 2)) for j in range(n) if r.random() < 0.6]
        s = sum(c * x[j] for j, c in t)
        k = r.random()
        if k < 0.2: rows.append(row(t, s, s))
        elif k < 0.5: rows.append(row(t, None, s + r.uniform(0, 3)))
        elif k < 0.8: rows.append(row(t, s - r.uniform(0, 3), None))
        else: rows.append(row(t, s - r.uniform(0, 3), s + r.uniform(0, 3)))
    # costs from multipliers of the rows and of the bounds that exist, so that the sum can't run away
    for j in range(n): vs[j]["cost"] = 0.0
    for i, q in enumerate(rows):
        y = r.uniform(0, 2)
        if q["low"] is None: y = -y
        for j, c in q["terms"]: vs[j]["cost"] += y * c
    for v in vs:
        if v["low"] is not None: v["cost"] += r.uniform(0, 3)
        if v["high"] is not None: v["cost"] -= r.uniform(0, 3)
        v["cost"] = round(v["cost"], 12)
    return vs, rows

def knapsack(r, n, m, integral=True):
    val = (lambda: r.randint(10, 400)) if integral else (lambda: round(r.uniform(10, 400), 3))
    vs = [var(-val(), 0, 1, True) for _ in range(n)]
    rows = []
    for _ in range(m):
        w = [r.randint(5, 100) for _ in range(n)]
        rows.append(row(list(enumerate(w)), None, sum(w) // 2))
    return vs, rows

def cover(r, n, m):
    vs = [var(r.randint(2, 20), 0, 1, True) for _ in range(n)]
    return vs, [row([(j, 1) for j in sorted(r.sample(range(n), r.randint(2, 6)))], 1, None) for _ in range(m)]

def charge(r, n, m):
    """Open a yard at a fixed charge, then send work to it."""
    vs = [var(r.randint(200, 900), 0, 1, True) for _ in range(n)]
    rows = []
    for i in range(m):
        need = r.randint(5, 30)
        at = len(vs)
        vs += [var(round(r.uniform(1, 20), 2), 0, None) for _ in range(n)]
        rows.append(row([(at + k, 1) for k in range(n)], need, need))
    for k in range(n):
        rows.append(row([(n + i * n + k, 1) for i in range(m)] + [(k, -r.randint(60, 150))], None, 0))
    return vs, rows

def general(r, n, m):
    vs = [var(-r.randint(1, 30), 0, r.randint(3, 12), r.random() < 0.7) for _ in range(n)]
    return vs, [row([(j, r.randint(1, 20)) for j in range(n)], None, r.randint(40, 150)) for _ in range(m)]

def scope(r, n, pots):
    """Works with prerequisites and exclusions, paid from pots of which some pay only for some works."""
    cost = [r.randint(5, 90) * 1000 for _ in range(n)]
    vs = [var(-r.randint(1, 100), 0, 1, True) for _ in range(n)]
    rows = []
    for i in range(n):
        if r.random() < 0.3:
            k = r.randrange(n)
            if k != i: rows.append(row([(i, 1), (k, -1)], None, 0))
        if r.random() < 0.15:
            k = r.randrange(n)
            if k != i: rows.append(row([(i, 1), (k, 1)], None, 1))
    pay = {}
    for i in range(n):
        for p in range(pots):
            if p == 0 or r.random() < 0.4:
                pay[i, p] = len(vs)
                vs.append(var(0, 0, None))
    for i in range(n):
        rows.append(row([(pay[i, p], 1) for p in range(pots) if (i, p) in pay] + [(i, -cost[i])], 0, 0))
    for p in range(pots):
        rows.append(row([(pay[i, p], 1) for i in range(n) if (i, p) in pay], None, sum(cost) * 0.5 / pots))
    return vs, rows

def main():
    r = random.Random(20261)
    made = []
    def add(kind, vr):
        made.append(dict(name="%s-%d" % (kind, len(made)), vars=vr[0], rows=vr[1]))
    for n, m in [(4, 3), (8, 5), (12, 12), (20, 15), (30, 25), (40, 40), (60, 30)]:
        for _ in range(2): add("linear", linear(r, n, m))
    for n in (10, 20, 35, 50): add("knapsack", knapsack(r, n, 1)); add("knapsack-real", knapsack(r, n, 1, False))
    for n, m in [(15, 3), (25, 5), (28, 10)]: add("many-limits", knapsack(r, n, m))
    for n, m in [(15, 12), (30, 25), (40, 40)]: add("cover", cover(r, n, m))
    for n, m in [(4, 5), (6, 8), (8, 12)]: add("charge", charge(r, n, m))
    for n, m in [(6, 3), (10, 5), (14, 6)]: add("general", general(r, n, m))
    for n, p in [(10, 2), (18, 3), (25, 3), (30, 4)]: add("scope", scope(r, n, p))
    # nothing satisfies these, and nothing limits those
    v, w = linear(r, 10, 8); w.append(row(w[0]["terms"], None, -1e4)); w.append(row(w[0]["terms"], 1e4, None)); add("nothing", (v, w))
    v, w = knapsack(r, 12, 2); w.append(row([(j, 1) for j in range(12)], 12, None)); add("nothing", (v, w))
    add("no-limit", ([var(-1), var(2), var(0, None, None)], [row([(0, 1), (1, -1), (2, 1)], 0, None)]))
    versions = [subprocess.run(["glpsol", "--version"], capture_output=True, text=True).stdout.splitlines()[0],
                "CBC " + next(l.split()[1] for l in subprocess.run(["cbc", "quit"], capture_output=True, text=True).stdout.splitlines() if l.startswith("Version:"))]
    with tempfile.TemporaryDirectory() as tmp:
        for inst in made:
            path = os.path.join(tmp, "i.lp")
            open(path, "w").write(lp_text(inst))
            mip = any(v["whole"] for v in inst["vars"])
            a, b = glpsol(path, mip), cbc(path)
            if a[0] != b[0] or (a[1] is not None and abs(a[1] - b[1]) > 1e-6 * max(1, abs(a[1]))):
                sys.exit("%s: glpsol %s, cbc %s" % (inst["name"], a, b))
            inst["status"], inst["value"] = a
            print(inst["name"], *a, file=sys.stderr)
    here = os.path.dirname(os.path.abspath(__file__))
    with open(os.path.join(here, "instances.json"), "w") as f:
        f.write('{"tools": %s, "instances": [\n' % json.dumps(versions))
        f.write(",\n".join(json.dumps(i, separators=(",", ":")) for i in made) + "\n]}\n")

main()
