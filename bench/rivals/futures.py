# The futures of a ship, as package futures runs them, written again in NumPy: the same parts, lives, pumps, patches, dockings, triggers and money, many
# futures side by side, one event of each at a time. The draws are NumPy's own, so the answers agree within Monte Carlo error and no closer. Reads the
# model and one plan as JSON (argument 1), runs its futures in blocks that fit the cache, writes answers and times as JSON to standard output.
import json
import sys
import time

import numpy as np
import scipy
from scipy.special import ndtr

INF = np.inf
ask = json.load(open(sys.argv[1]))
m, plan, N = ask["model"], ask["plan"], ask["futures"]
Y, dock, funds, watch = m["Years"], m["Dock"], m["Money"], m["Watch"]
BLOCK = ask.get("block", 2048)
rng = np.random.Generator(np.random.SFC64(ask["seed"]))

# Parts that can let water in come first: only they are events. The others matter to triggers alone.
parts = sorted(m["Parts"], key=lambda p: not (p["Flow"] > 0 and p["Space"] >= 0))
new = {id(p): i for i, p in enumerate(parts)}
at_new = [new[id(p)] for p in m["Parts"]]
P = len(parts)
WET = sum(p["Flow"] > 0 and p["Space"] >= 0 for p in parts)


def column(get, rows=parts):
    return np.array([get(r) for r in rows], float)


class Lives:
    """Weibull lives of a row of parts; a zero scale never fails."""

    def __init__(self, laws):
        self.scale = np.array([w["Scale"] if w["Scale"] > 0 else INF for w in laws])
        self.power = np.array([1 / w["Shape"] if w["Scale"] > 0 else 1.0 for w in laws])
        self.age = np.array([w["Age"] for w in laws], float)
        self.lived = np.array([(w["Age"] / w["Scale"]) ** w["Shape"] if w["Scale"] > 0 else 0.0 for w in laws])

    def left(self, shape, sel=slice(None)):
        h = self.lived[sel] + rng.standard_exponential(shape)
        return self.scale[sel] * h ** self.power[sel] - self.age[sel]


first, renewed, patched = (Lives([p[k] for p in parts]) for k in ("Life", "Renewed", "PatchLife"))
guard = Lives([z["Protection"] for z in m["Zones"]])
plates = np.array([i for i, p in enumerate(parts) if p["Wastage"]], int)
others = np.array([i for i, p in enumerate(parts) if not p["Wastage"]], int)
wear = [parts[i]["Wastage"] for i in plates]
left0, left_sd, factor = (column(lambda w: w[k], wear) for k in ("Left", "LeftSD", "Factor"))
zone = np.array([w["Zone"] for w in wear], int)
z_rate, z_spread, z_bare, z_unnoticed = (column(lambda z: z[k], m["Zones"]) for k in ("Rate", "RateSpread", "Bare", "Unnoticed"))
flow, flow_spread, patchable = (column(lambda p: p[k]) for k in ("Flow", "FlowSpread", "Patchable"))
space = [m["Spaces"][p["Space"]] if i < WET else m["Spaces"][0] for i, p in enumerate(parts)]
critical, shore, own_pump, shore_fail, own_fail, alarm, alarmed, fatal = (
    column(lambda s: s[k], space) for k in ("Critical", "Shore", "Own", "ShoreFail", "OwnFail", "Alarm", "Alarmed", "Fatal"))


class Triangles:
    """Triangles from low over likely to high, a row of them."""

    def __init__(self, rows):
        self.low, self.mode, self.high = (np.array([r[k] for r in rows], float) for k in ("low", "likely", "high"))
        self.width, self.rise, self.fall = self.high - self.low, self.mode - self.low, self.high - self.mode

    def at(self, u, sel=slice(None)):
        low, w, r, f = self.low[sel], self.width[sel], self.rise[sel], self.fall[sel]
        uw = u * w
        return np.where(uw < r, low + np.sqrt(uw * r), low + w - np.sqrt((w - uw) * f))


patch = Triangles([p["Patch"] for p in parts])
scope = sorted(plan["Scope"] or [], key=lambda w: (not m["Works"][w]["Must"], -m["Works"][w]["Value"], w))
works = [m["Works"][w] for w in scope]
W = len(works)
cost_of, growth = Triangles([w["Cost"] for w in works]), Triangles([w["Growth"] for w in works])
grows = bool((growth.high > 0).any())
work_days = column(lambda w: w["Days"], works)
must = np.array([w["Must"] for w in works], bool)
covers = np.zeros((W, P), bool)
for i, w in enumerate(works):
    covers[i, [at_new[q] for q in w["Parts"] or []]] = True
urgent = (must[:, None] | covers).T  # part, work: done when that part sends her to dock
urgent_f = urgent.astype(float)
hurry = (urgent.astype(int) @ covers.astype(int) > 0) | np.eye(P, dtype=bool)  # part, part: renewed when it sends her to dock
whole = urgent.all(1)
kept = np.vstack([np.zeros((1, P), bool), np.logical_or.accumulate(covers, 0)])  # by works kept, part: renewed
fixed, away, lump = Triangles([dock["Fixed"]]), Triangles([dock["Away"]]), Triangles([funds["Lump"]])
share, alone = np.sqrt(dock["Correlate"]), np.sqrt(1 - dock["Correlate"])
drift = np.log1p(dock["Escalation"]) - np.log1p(dock["Discount"])
plate_at = {int(i): k for k, i in enumerate(plates)}  # by part: its place among those that wear


class Gauges:
    """Plates that a trigger reads: a part's own draw where the model has the part, or one by number."""

    def __init__(self, rows):
        self.thickness, self.sd, self.factor, self.limit, self.weight = (column(lambda g: g[k], rows) for k in ("Thickness", "SD", "Factor", "Limit", "Weight"))
        self.zone = np.array([g["Zone"] for g in rows], int)
        self.drawn = [("part", plate_at[at_new[g["Part"]]]) if g["Part"] >= 0 else ("plate", g["Draw"]) for g in rows]


def members(t):
    """The parts that a trigger counts."""
    if t["Parts"] is not None or t["Gauges"]:
        return [at_new[q] for q in t["Parts"] or []]
    return [i for i, p in enumerate(parts) if p["Group"] == t["Group"]]


triggers = [(t, np.array(members(t), int), Gauges(t["Gauges"]) if t["Gauges"] else None) for t in plan["Triggers"] or []]
read = sorted({d[1] for _, _, g in triggers if g for d in g.drawn if d[0] == "plate"})
counts_money = bool(funds["Hand"] or funds["Giving"] or funds["Lumps"] or funds["Pledges"])
rounds = plan["Rounds"] if plan["Rounds"] > 0 else watch["Rounds"]
quarters = np.arange(int(Y * 4) + 1) / 4
discounting = np.log1p(dock["Discount"])


def annuity(n):
    return n if discounting == 0 else -np.expm1(-discounting * n) / discounting


def wasting(z, rate, dead, mended):
    """When each plate is through: protected, then bare, then protected again."""
    left = left0 + left_sd * z
    r, bare, d = rate[:, zone] * factor, z_bare[zone], dead[:, zone]
    t = left / r
    exposed = mended[:, zone] - d
    u = (left - r * d) / (r * bare)
    t = np.where(t <= d, t, np.where(u <= exposed, d + u, mended[:, zone] + (left - r * d - r * bare * exposed) / r))
    return np.where(left <= 0, 0, t)


class Purses:
    """The money of a block of futures."""

    def __init__(self, c):
        self.pace = np.exp(funds["Spread"] * rng.standard_normal(c))
        pledges = funds["Pledges"] or []
        most = int(funds["Lumps"] * Y + 8 * np.sqrt(funds["Lumps"] * Y) + 8) if funds["Lumps"] > 0 else 0
        due, amount = np.empty((c, len(pledges) + most)), np.empty((c, len(pledges) + most))
        for i, p in enumerate(pledges):
            due[:, i] = p["Due"]
            amount[:, i] = p["Amount"] * (rng.random(c) < p["Chance"])
        if most:
            due[:, len(pledges):] = np.cumsum(rng.standard_exponential((c, most)) / funds["Lumps"], 1)
            amount[:, len(pledges):] = lump.at(rng.random((c, most)), np.zeros(most, int))
        self.due, self.amount = due, amount

    def free(self, rows, t):
        gifts = (self.amount[rows] * (self.due[rows] <= t[:, None])).sum(1)
        return self.granted(funds["Hand"] - funds["Reserve"] + funds["Giving"] * self.pace[rows] * (t + funds["Trend"] * t * t / 2) + gifts)

    @staticmethod
    def granted(own):
        return own + np.minimum(funds["Match"] * np.maximum(own, 0), funds["Cap"])

    def affordable(self, need):
        """The first quarter of a year in which the funds reach the need."""
        c, q = len(self.pace), len(quarters)
        at = np.minimum(np.ceil(self.due * 4), q).astype(int) + (q + 1) * np.arange(c)[:, None]
        gifts = np.bincount(at.ravel(), self.amount.ravel(), c * (q + 1)).reshape(c, q + 1)[:, :q].cumsum(1)
        own = funds["Hand"] - funds["Reserve"] + funds["Giving"] * self.pace[:, None] * (quarters + funds["Trend"] * quarters**2 / 2) + gifts
        ok = self.granted(own) >= need * (1 + dock["Escalation"]) ** quarters
        return np.where(ok.any(1), quarters[ok.argmax(1)], INF)


def window(t):
    """The first yard date not before t."""
    if not dock["Windows"]:
        return t
    best = np.full_like(t, INF)
    for w in dock["Windows"]:
        on = np.where(np.isfinite(t), t, 0)
        x = np.full_like(t, w)
        if dock["Every"] > 0:
            x = np.where(w < on, w + dock["Every"] * np.ceil((on - w) / dock["Every"]), w)
        best = np.minimum(best, np.where((x >= on) & np.isfinite(t), x, INF))
    return best


class Block:
    """Futures side by side. Rows that are done are dropped when they are half of what is left."""

    def __init__(self, c):
        self.c = c
        rate = z_rate * np.exp(z_spread * rng.standard_normal((c, len(z_rate))))
        dead = guard.left(rate.shape)
        mended = dead + z_unnoticed * rng.standard_exponential(rate.shape)
        self.at = np.empty((c, P))
        self.at[:, others] = first.left((c, len(others)), others)
        self.z = rng.standard_normal((c, len(plates)))
        self.at[:, plates] = wasting(self.z, rate, dead, mended)
        self.rate, self.dead, self.mended = rate, dead, mended
        self.read = {d: rng.standard_normal(c) for d in read}
        self.wet = np.zeros((c, P), bool)
        self.purse = Purses(c) if counts_money else None
        self.water, self.emerged, self.lost, self.docked = (np.full(c, INF) for _ in range(4))
        self.cost, self.income, self.fired = np.zeros(c), np.zeros(c), np.zeros(c, int)
        self.deferred = np.zeros(c)
        self.due = self.planned()

    def planned(self):
        c = self.c
        if plan["Dock"] < 0:
            return np.full(c, INF)
        need = dock["Fixed"]["likely"] + sum((w["Cost"]["low"] + w["Cost"]["likely"] + w["Cost"]["high"]) / 3 for w in works)
        money = self.purse.affordable(need) if counts_money else np.zeros(c)
        return window(np.maximum(plan["Dock"], money + dock["Lead"]) if plan["Wait"] else np.full(c, float(plan["Dock"])))

    def run(self):
        rows = np.arange(self.c)
        at, due = self.at[:, :WET], self.due
        while len(rows):
            view = at if len(rows) == self.c else at[rows]
            p = view.argmin(1)
            t, d = view[np.arange(len(rows)), p], due[rows]
            docks = (d <= t) & (d < Y)
            fails = ~docks & (t < Y)
            if docks.any():
                self.dock(rows[docks], d[docks])
            alive = docks | fails
            if fails.any():
                r = rows[fails]
                self.fail(r, p[fails], t[fails])
                alive[fails] = self.lost[r] == INF
            rows = rows[alive]
        return self

    def fail(self, r, p, t):
        self.water[r] = np.minimum(self.water[r], t)
        k = len(r)
        u = rng.random((4, k))
        q = flow[p] * np.exp(flow_spread[p] * rng.standard_normal(k))
        pumps = shore[p] * (u[0] >= shore_fail[p]) + own_pump[p] * (u[1] >= own_fail[p])
        over = q > pumps
        unseen = np.zeros(k, bool)
        if over.any():
            i = np.flatnonzero(over)
            unseen[i] = ~self.found(p[i], critical[p[i]] / (q[i] - pumps[i]) / 3600)
        afloat = ~unseen & ((q <= pumps / 4) | (u[2] < patchable[p]))
        i = np.flatnonzero(afloat)
        rp, tp, pp = r[i], t[i], p[i]
        self.cost[rp] += patch.at(u[3][i], pp) * np.exp(drift * tp)
        self.wet[rp, pp] = True
        self.at[rp, pp] = tp + patched.left(len(i), pp)
        i = np.flatnonzero(~afloat)
        if len(i):
            dies = unseen[i] & (rng.random(len(i)) < fatal[p[i]])
            self.lose(r[i][dies], t[i][dies])
            i = i[~dies]
            self.emergency(r[i], p[i], t[i])

    @staticmethod
    def found(p, hours):
        """Whether somebody who can act is there within so many hours: the alarm, or the next round."""
        u = rng.random((3, len(p)))
        between = np.where(u[0] > watch["Season"], max(rounds, watch["Closed"]), rounds)
        seen = u[1] * between
        seen = np.where(u[2] < alarm[p], np.minimum(seen, alarmed[p]), seen)
        return seen + watch["Act"] <= hours

    def lose(self, r, t):
        self.lost[r] = np.minimum(self.lost[r], t)
        self.cost[r] += dock["Loss"] * np.exp(drift * t)
        self.income[r] += dock["Income"] * np.exp(drift * t) * annuity(np.maximum(Y - t, 0))

    @staticmethod
    def bill(k):
        x = share * rng.standard_normal((k, 1)) + alone * rng.standard_normal((k, W))
        c = cost_of.at(ndtr(x))
        if grows:
            c *= np.where(growth.high > 0, growth.at(rng.random((k, W))), 1)
        return c, fixed.at(rng.random(k), np.zeros(k, int))

    def pay(self, r, t, money, days):
        now = np.exp(drift * t)
        self.cost[r] += money * now
        self.income[r] += dock["Income"] / 365.25 * days * now

    def renew(self, r, t, which):
        i, q = np.nonzero(which)
        self.at[r[i], q] = t[i] + renewed.left(len(i), q)
        self.wet[r[i], q] = False

    def emergency(self, r, p, t):
        self.emerged[r] = np.minimum(self.emerged[r], t)
        u = rng.random((2, len(r)))
        dies = (u[0] < dock["NoDock"]) & (u[1] < dock["NoDockLoss"])
        self.lose(r[dies], t[dies])
        r, p, t = r[~dies], p[~dies], t[~dies]
        c, fix = self.bill(len(r))
        days = urgent_f[p] @ work_days
        bill = (c * urgent_f[p]).sum(1) + fix + days * dock["DayRate"]
        self.pay(r, t, dock["Emergency"] * bill, days + away.at(rng.random(len(r)), np.zeros(len(r), int)))
        self.renew(r, t, hurry[p])
        again = whole[p]
        self.due[r[again]] = t[again] + plan["Again"] if plan["Dock"] >= 0 and plan["Again"] > 0 else INF

    def thin(self, trigger, g, r, t):
        """Whether the plates of a trigger are as it says, worn on to the day."""
        z = np.stack([self.z[r, d[1]] if d[0] == "part" else self.read[d[1]][r] for d in g.drawn], 1)
        t = t[:, None]
        unguarded = np.maximum(np.minimum(t, self.mended[r]) - np.minimum(t, self.dead[r]), 0)
        worn = self.rate[r] * (t + (z_bare - 1) * unguarded)
        over = g.thickness + g.sd * z - worn[:, g.zone] * g.factor - g.limit
        if trigger["Mean"]:
            return over.sum(1) >= 0
        weight = ((over < 0) * g.weight).sum(1)
        return weight >= trigger["Least"] if trigger["Worse"] else weight <= trigger["Least"]

    def dock(self, r, t):
        first_time = self.docked[r] == INF
        c, fix = self.bill(len(r))
        bill, days = c.sum(1), np.full(len(r), work_days.sum())
        money, extra = np.zeros(len(r)), np.zeros(len(r))
        at, wet, soon = self.at[r], self.wet[r], (t + 1)[:, None]
        for i, (g, members, plates_read) in enumerate(triggers):
            if plates_read:
                lit = first_time & self.thin(g, plates_read, r, t)
            else:
                n = (wet[:, members] | (at[:, members] < soon)).sum(1)
                lit = n >= g["Count"] if g["Worse"] else n <= g["Count"]
            money += lit * g["Money"]
            extra += lit * g["Days"]
            self.fired[r] |= (lit & first_time).astype(int) << min(i, 31)
        bill, days = np.maximum(bill + money, 0), np.maximum(days + extra, 0)
        keep = np.full(len(r), W)
        if not plan["Wait"] and counts_money and first_time.any():
            free = np.where(first_time, self.purse.free(r, t), INF)
            for w in range(W - 1, -1, -1):
                off = (keep == w + 1) & (bill > free) & ~must[w]
                if not off.any():
                    break
                keep -= off
                bill -= off * c[:, w]
            bill = np.where(first_time, np.maximum(bill, 0), bill)
        self.deferred[r] += first_time * (W - keep)
        self.docked[r] = np.where(first_time, t, self.docked[r])
        self.pay(r, t, bill + fix + days * dock["DayRate"], days)
        self.renew(r, t, kept[keep])
        self.due[r] = t + plan["Again"] if plan["Again"] > 0 else INF


def simulate(n):
    out = [Block(min(BLOCK, n - i)).run() for i in range(0, n, BLOCK)]
    return {k: np.concatenate([getattr(b, k) for b in out]) for k in ("water", "emerged", "lost", "docked", "cost", "income", "fired", "deferred")}


def mean(x):
    return {"mean": float(x.mean()), "se": float(x.std(ddof=1) / np.sqrt(len(x)))}


def by_year(x):
    return [float((x <= y).mean()) for y in range(1, int(np.ceil(Y)) + 1)]


simulate(min(N, 4 * BLOCK))  # warm
wall, cpu = [], []
for _ in range(ask.get("repeat", 1)):
    w, c = time.perf_counter(), time.process_time()
    o = simulate(N)
    wall.append(time.perf_counter() - w)
    cpu.append(time.process_time() - c)
json.dump({
    "tool": f"NumPy {np.__version__}, SciPy {scipy.__version__}", "wall": min(wall), "cpu": min(cpu), "n": N,
    "answers": {"water": by_year(o["water"]), "emergency": by_year(o["emerged"]), "loss": by_year(o["lost"]), "docked": by_year(o["docked"]),
                "cost": mean(o["cost"]), "income": mean(o["income"]), "deferred": mean(o["deferred"]),
                "fired": [float((o["fired"] >> i & 1).mean()) for i in range(len(triggers))]},
}, sys.stdout)
