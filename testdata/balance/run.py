"""Works every case of machines.csv and drive_inputs.csv out and writes the result tables beside them.

    python3 run.py [JOB ...]     all jobs without a name; python3 of any age, standard library only

See README.txt for the columns. A job named alone is worked out and printed, nothing is written.
"""
import csv
import math
import multiprocessing
import os
import sys

from drives import Engine, Fixed, Wheel, Wind
from machine import Machine, num

HERE = os.path.dirname(os.path.abspath(__file__))
CURVE, POWER = 90, 1.7     # points of a curve above cut-in, and how they crowd towards it
HEATS = ("copper", "all", "cold")
POINT = ["rpm", "amps", "terminal_v", "battery_w", "winding_c", "phase_rms", "shaft_w", "copper_w", "diode_w",
         "cable_w", "drag_w", "field_w", "net_amps", "net_w", "open_v"]


def read(name):
    with open(os.path.join(HERE, name)) as f:
        return list(csv.DictReader(l for l in f if not l.startswith("#")))


def volts(m):
    return (("rest", m.rest), ("mid", (m.rest + m.absorption) / 2), ("absorption", m.absorption))


def root(f, a, b, fa, fb, tol=1e-7):
    """Illinois: a bracketed root of f."""
    for _ in range(60):
        c = (a * fb - b * fa) / (fb - fa)
        fc = f(c)
        if abs(b - a) < tol * abs(b) or abs(fc) < 1e-9:
            return c
        if fb * fc < 0:
            a, fa = b, fb
        else:
            fa /= 2
        b, fb = c, fc
    return b


class Curve:
    """A trial at one battery voltage: settled states over speed, worked out once and kept."""

    def __init__(self, m, v, heat, top):
        self.m, self.v, self.heat = m, v, heat
        c = m.cut_in(v)
        lo = [c * k / 12 for k in range(1, 13)] if c < top else [top * k / 12 for k in range(1, 13)]
        n = CURVE
        self.cut, self.top = c, top
        hi = [c + (top - c) * (k / n) ** POWER for k in range(1, n + 1)] if c < top else []
        self.grid = lo + hi
        self.states, guess = [], None
        for rpm in self.grid:
            s = m.settle(rpm, v, heat, guess)
            guess = s["winding_c"]
            self.states.append(s)

    def state(self, rpm):
        near = min(range(len(self.grid)), key=lambda i: abs(self.grid[i] - rpm))
        return self.m.settle(rpm, self.v, self.heat, self.states[near]["winding_c"])

    def between(self, i, rpm, key):
        """A figure between grid points i-1 and i by a cubic in ((rpm - cut-in)^(1/POWER)), in which the points
        lie evenly and the onset of charging is smooth; in a straight line below cut-in, where only drag is."""
        if i < 12 or self.cut >= self.top:
            a, b = self.states[i - 1], self.states[i]
            return a[key] + (b[key] - a[key]) * (rpm - self.grid[i - 1]) / (self.grid[i] - self.grid[i - 1])
        j = min(max(i - 2, 11), len(self.grid) - 4)
        x = CURVE * ((rpm - self.cut) / (self.top - self.cut)) ** (1 / POWER) + 11 - j
        total = 0.0
        for k in range(4):
            w = 1.0
            for q in range(4):
                if q != k:
                    w *= (x - q) / (k - q)
            total += w * self.states[j + k][key]
        return total

    def quick(self, gives):
        """Battery watts at each stable speed, from the curve alone."""
        vals = [gives(n) - s["shaft_w"] for n, s in zip(self.grid, self.states)]
        out = []
        for i in range(1, len(vals)):
            if vals[i - 1] > 0 >= vals[i]:
                n = root(lambda n: gives(n) - self.between(i, n, "shaft_w"), self.grid[i - 1], self.grid[i],
                         vals[i - 1], vals[i])
                out.append(max(self.between(i, n, "battery_w"), 0.0))
        return out

    def roots(self, gives):
        """Speeds where gives(rpm), watts at the alternator's shaft, meets what it takes; stable ones."""
        f = lambda n: gives(n) - self.state(n)["shaft_w"]
        vals = [gives(n) - s["shaft_w"] for n, s in zip(self.grid, self.states)]
        found = []
        for i in range(1, len(vals)):
            if vals[i - 1] > 0 >= vals[i]:
                found.append(root(f, self.grid[i - 1], self.grid[i], vals[i - 1], vals[i]))
        return found


def fields(s, drive_w, drive_rpm, more):
    out = {k: s[k] for k in POINT}
    out["drive_rpm"], out["drive_w"] = drive_rpm, drive_w
    out["loss_between_w"] = drive_w - s["shaft_w"]
    out["efficiency"] = s["battery_w"] / s["shaft_w"] if s["shaft_w"] > 0 else 0.0
    out["net_efficiency"] = s["net_w"] / s["shaft_w"] if s["shaft_w"] > 0 and s["amps"] > 0 else 0.0
    out.update(more)
    return out


# ---- wind -----------------------------------------------------------------------------------------

def wind_points(m, d, w, v, heat):
    """Balance at each wind; with more than one stable speed the one reached from rest, and the highest."""
    ratio, eff = num(d, "ratio"), num(d, "efficiency")
    furl = num(d, "furl_ms")
    curve = Curve(m, v, heat, w.free_rpm(furl + 0.5) * ratio)
    winds = sorted(set([float(k) for k in range(3, int(furl) + 1)] + [furl]))
    out = []
    for wind in winds:
        found = curve.roots(lambda n: eff * w.watts(n / ratio, wind))
        if not found:     # no drag: it runs free below its cut-in
            found = [min(w.free_rpm(wind) * ratio, w.free_rpm(furl) * ratio)]
        s = curve.state(found[0])
        high = curve.state(found[-1])["amps"] if len(found) > 1 else s["amps"]
        rn = s["rpm"] / ratio
        tsr = w.tsr(rn, wind)
        region = "idle" if s["amps"] <= 0 else ("slow side" if tsr < w.tsr0 else "fast side")
        out.append(fields(s, s["shaft_w"] / eff, rn,
                          dict(condition=wind, tsr=tsr, cp_of_best=w.cp(tsr) / w.cp0, region=region,
                               rpm_highest=found[-1], amps_highest=high, roots=len(found))))
    return out, curve


def start_wind(d, w):
    """Wind whose torque on the rotor at rest overcomes the starting torque."""
    return math.sqrt(num(d, "start_torque_nm") * num(d, "ratio") / num(d, "efficiency") / w.torque_at_rest(1.0))


def year(m, d, w, curve):
    """kWh a year into the battery, gross; net of the field whenever it charges; net with the field switched
    off where it does not pay. Weibull of mean wind and k; nothing from the furling wind on."""
    ratio, eff, furl = num(d, "ratio"), num(d, "efficiency"), num(d, "furl_ms")
    k, mean = num(d, "weibull_k"), num(d, "mean_wind_ms")
    scale = mean / math.gamma(1 + 1 / k)
    density = lambda x: k / scale * (x / scale) ** (k - 1) * math.exp(-((x / scale) ** k))
    step = 0.05
    sums = dict.fromkeys(("gross_kwh", "net_kwh", "net_switched_kwh", "started_kwh", "gross_highest_kwh", "net_highest_kwh"), 0.0)
    for i in range(int(round(furl / step))):
        wind = (i + 0.5) * step           # the middle of each slice
        found = curve.quick(lambda n: eff * w.watts(n / ratio, wind))
        if not found:
            continue
        h = density(wind) * step * 8.76
        p, high = found[0], found[-1]
        sums["gross_kwh"] += h * p
        sums["gross_highest_kwh"] += h * high
        if wind >= start_wind(d, w):
            sums["started_kwh"] += h * p
        if p > 0:
            sums["net_kwh"] += h * (p - m.field_w)
            sums["net_switched_kwh"] += h * max(p - m.field_w, 0.0)
        if high > 0:
            sums["net_highest_kwh"] += h * (high - m.field_w)
    return sums


def stops(m, d, w, wind, c, start_tsr):
    """Leads joined on a rotor turning at start_tsr: does it come down, and to what creeping speed?"""
    ratio, eff = num(d, "ratio"), num(d, "efficiency")
    n = w.rpm(start_tsr, wind)
    while n > 1e-4:
        if m.joined(n * ratio, c)["torque"] * ratio / eff <= w.torque(n, wind):
            return w.tsr(n, wind) < 1.0, n
        n *= 0.99
    return True, 0.0


def holding_wind(m, d, w, c, start_tsr):
    lo, hi = 0.5, 80.0
    if stops(m, d, w, hi, c, start_tsr)[0]:
        return hi
    while hi - lo > 1e-3:
        mid = (lo + hi) / 2
        if stops(m, d, w, mid, c, start_tsr)[0]:
            lo = mid
        else:
            hi = mid
    return lo


def brake_wind(m, d, w):
    out = []
    for c in (20.0, 130.0):
        peak_rpm, peak = m.joined_peak(c)
        row = dict(winding_c=c, peak_torque_nm=peak, peak_rpm=peak_rpm)
        row["stops_to_ms"] = holding_wind(m, d, w, c, w.tsr0)
        row["stops_from_free_to_ms"] = holding_wind(m, d, w, c, w.tsr0 * 1.6545)
        row["creeps_rpm"] = stops(m, d, w, row["stops_to_ms"] - 0.01, c, w.tsr0)[1]
        row["stops_at_furl"], n = stops(m, d, w, num(d, "furl_ms"), c, w.tsr0)
        row["creeps_at_furl_rpm"] = n if row["stops_at_furl"] else math.nan
        out.append(row)
    return out


# ---- wheel, legs, engine, fixed -------------------------------------------------------------------

def held(m, v, heat, rpm):
    return m.settle(rpm, v, heat)


def drive_points(m, d, laws, v, heat):
    """At slow, usual and top the drive holds that speed if it can, else is held back to the balance below;
    'let go' is the balance with nobody's hand on gate or pedal (wheel and legs)."""
    ratio, eff = num(d, "ratio"), num(d, "efficiency")
    out = []
    top = num(d, "top_rpm")
    curve = Curve(m, v, heat, top * ratio)
    for law_name, law in laws:
        found = curve.roots(lambda n: eff * law.watts(n / ratio)) if law.kind == "wheel" else []
        wanted = [(k, num(d, k + "_rpm")) for k in ("slow", "usual", "top")]
        if law.kind == "wheel":
            wanted.append(("let go", top))
        for name, n in wanted:
            s = curve.state(n * ratio)
            can = eff * law.watts(n)
            region = "charging" if s["amps"] > 0 else "idle"
            if s["shaft_w"] > can * (1 + 1e-9):
                below = [x for x in found if x < n * ratio]
                if not found:
                    below = [x for x in curve.roots(lambda q: eff * law.watts(q / ratio)) if x < n * ratio]
                if below:
                    s = curve.state(below[-1])
                    region = "held back" if s["amps"] > 0 else "idle"
            out.append(fields(s, s["shaft_w"] / eff, s["rpm"] / ratio,
                              dict(condition=name, law=law_name, region=region,
                                   drive_gives_w=law.watts(s["rpm"] / ratio))))
    return out


def net_cut_in(m, v, heat, top):
    """Speed from which the battery gains more than the field takes."""
    f = lambda n: m.settle(n, v, heat)["net_w"]
    lo = m.cut_in(v)
    if m.field_w <= 0:
        return lo
    hi = lo
    while f(hi) <= 0:
        hi *= 1.05
        if hi > 6 * top:
            return math.nan
    a = hi / 1.05
    return root(f, a, hi, f(a), f(hi), 1e-6)


# ---- the tables -----------------------------------------------------------------------------------

def law_of(d):
    k = d["kind"]
    if k in ("pedals", "water"):
        a = num(d, "watts"), num(d, "usual_rpm"), num(d, "top_rpm")
        return [("straight", Wheel(*a)), ("capped", Wheel(*a, capped=True))]
    if k == "engine":
        return [("engine", Engine(num(d, "watts"), num(d, "usual_rpm")))]
    return [("fixed", Fixed())]


def case(job, tables):
    d = next(r for r in read("drive_inputs.csv") if r["job"] == job)
    for row in (r for r in read("machines.csv") if r["job"] == job):
        m = Machine(row)
        head = dict(job=job, trial=row["trial"])
        ratio = num(d, "ratio")
        w = None
        if d["kind"] == "wind":
            w = Wind(num(d, "rotor_m"), num(d, "peak_cp"), num(d, "peak_tsr"), num(d, "altitude_m"), num(d, "air_c"))
        usual_c = {}
        for heat in HEATS:
            if heat == "all" and not (m.drag_w or m.field_w):
                continue
            for vname, v in volts(m):
                at = dict(head, battery=vname, volts=v, heat=heat)
                if w:
                    pts, curve = wind_points(m, d, w, v, heat)
                    tables["wind"] += [dict(at, **p) for p in pts]
                    if heat != "cold":
                        tables["year"].append(dict(at, **year(m, d, w, curve)))
                    top = w.free_rpm(num(d, "furl_ms")) * ratio
                    speeds = [w.rpm(w.tsr0, x) * ratio for x in
                              (0.7 * num(d, "mean_wind_ms"), num(d, "mean_wind_ms"), num(d, "furl_ms"))]
                    mean = min(pts, key=lambda p: abs(p["condition"] - num(d, "mean_wind_ms")))
                    usual_c[heat, vname] = mean["winding_c"]
                else:
                    pts = drive_points(m, d, law_of(d), v, heat)
                    tables["drive"] += [dict(at, **p) for p in pts]
                    top = num(d, "top_rpm") * ratio
                    speeds = [num(d, k + "_rpm") * ratio for k in ("slow", "usual", "top")]
                    usual_c[heat, vname] = pts[1]["winding_c"]
                tables["most"].append(dict(at, most_amps=max(p.get("amps_highest", p["amps"]) for p in pts),
                                           most_c=max(p["winding_c"] for p in pts),
                                           cut_in_rpm=m.cut_in(v), net_cut_in_rpm=net_cut_in(m, v, heat, top)))
                for name, n in zip(("slow", "usual", "top"), speeds):
                    s = held(m, v, heat, n)
                    tables["held"].append(dict(at, condition=name, **{k: s[k] for k in POINT}))
        if w:
            for b in brake_wind(m, d, w):
                tables["brake"].append(dict(head, **b))
            top = w.rpm(w.tsr0, num(d, "furl_ms")) * ratio
            peak = lambda n: m.emf(n)[0] * math.sqrt(3 if m.phases == 3 else 1)
            tables["open"].append(dict(head, top_rpm=top, open_top_v=peak(top),
                                       furl_free_rpm=w.free_rpm(num(d, "furl_ms")) * ratio,
                                       open_furl_v=peak(w.free_rpm(num(d, "furl_ms")) * ratio),
                                       gale_free_rpm=w.free_rpm(num(d, "gale_ms")) * ratio,
                                       open_gale_v=peak(w.free_rpm(num(d, "gale_ms")) * ratio),
                                       start_ms=start_wind(d, w)))
        else:
            top = num(d, "top_rpm") * ratio
            for c in (20.0, 130.0):
                rpm, t = m.joined_peak(c)
                tables["brake"].append(dict(head, winding_c=c, peak_torque_nm=t, peak_rpm=rpm))
            peak = m.emf(top)[0] * math.sqrt(3 if m.phases == 3 else 1)
            tables["open"].append(dict(head, top_rpm=top, open_top_v=peak))
        for name, c in (("cold", 20.0), ("usual", usual_c["copper", "rest"])):
            amps = lambda t: m.joined(top, t)["amps"]
            t = m.seconds(amps, c, m.limit_c) if c < m.limit_c else 0.0
            tables["heat"].append(dict(head, start=name, from_c=c, to_c=m.limit_c, rpm=top,
                                       amps_at_start=amps(c), watts_at_start=m.joined(top, c)["watts"],
                                       torque_at_start_nm=m.joined(top, c)["torque"], seconds=t))


HEAD = ["job", "trial", "battery", "volts", "heat", "condition", "law"]
PLACES = 6


def text(v):
    if isinstance(v, float):
        return "" if math.isnan(v) else "%.*g" % (PLACES, v)
    return str(v)


def write(name, rows):
    keys = []
    for r in rows:
        keys += [k for k in r if k not in keys]
    keys = [k for k in HEAD if k in keys] + [k for k in keys if k not in HEAD]
    with open(os.path.join(HERE, name + ".csv"), "w") as f:
        f.write("# Written by run.py or sweep.py from machines.csv and drive_inputs.csv; columns and units in README.txt. Status: computed.\n")
        out = csv.writer(f, lineterminator="\n")
        out.writerow(keys)
        for r in rows:
            out.writerow([text(r.get(k, "")) for k in keys])


NAMES = ("wind", "drive", "held", "year", "most", "brake", "open", "heat")


def one(job):
    tables = {k: [] for k in NAMES}
    case(job, tables)
    print(job, "done", file=sys.stderr, flush=True)
    return tables


def main(jobs):
    tables = {k: [] for k in NAMES}
    with multiprocessing.Pool(2) as pool:
        for part in pool.imap(one, jobs or [r["job"] for r in read("drive_inputs.csv")], 1):
            for k in NAMES:
                tables[k] += part[k]
    for name, rows in tables.items():
        if jobs:
            for r in rows:
                print(name, {k: text(v) for k, v in r.items()})
        else:
            write("out_" + name, rows)


if __name__ == "__main__":
    main(sys.argv[1:])
