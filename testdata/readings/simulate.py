"""Machines that saturate, stepped through time: the truth that package readings is tested on.

Makes machines.csv: what a meter would show on 140 alternators drawn at random, with
the winding they came with and with 0.6 to 3.5 times its turns at equal copper.
Standard library only:  python3 simulate.py > machines.csv   (some minutes)

With a word behind it, python3 simulate.py apart > apart.csv, 70 more are made from another
seed, with another law of saturation and other ranges (draw_apart). Nothing in the program but
the doubt of its own model was chosen by those: they say what it is worth on machines that it was not
made on.

Nothing here is taken from the Go program. The stator is two flux linkages in a frame that
stands still; the rotor turns past it and carries a field of constant ampere-turns (wound or
magnets). Field and armature share one saturating path,

    f(m) = Lu*m / (1 + (m/ms)^n)^(1/n),   m = sqrt(a^2 + s*b^2)

a and b the ampere-turns along and across the poles, s the saliency; its flux is the slope of
a co-energy, so that energy is kept. Leakage, a part of which saturates with the current
(tooth tips, claw to claw), the 5th and 7th harmonic of the rotor's field
and a resistance across the EMF for the iron's loss are added. Each of the three legs of the
bridge (two for one phase) holds its lead at a rail, or rests: of the 13 patterns the one is
taken whose currents and voltages agree. The step is the midpoint rule for the ohms and
backward for the diodes, STEPS a cycle, until the mean current stands still. Diodes are a
constant drop, or exponential, v = n*kT/q*ln(1 + i/Is) + r*i, taken by the tangent at the
step before. Left out: currents in the rotor, hysteresis, heat.
"""
import csv
import math
import random
import sys
from multiprocessing import Pool

STEPS = 960
TURNS = (0.6, 1.0, 1.5, 2.0, 3.5)
MULTIPLES = (1.1, 1.25, 1.5, 2.0, 3.0, 4.0, 5.0)
AXES = [(math.cos(x), math.sin(x)) for x in (0.0, 2 * math.pi / 3, -2 * math.pi / 3)]
LEGS3 = [s for s in [(a, b, c) for a in (1, 0, -1) for b in (1, 0, -1) for c in (1, 0, -1)]
         if (0 in s and sum(s) == 0) or (0 not in s and abs(sum(s)) == 1)]


class Winding:
    """One stator winding: the machine, and how many times the first winding's turns."""

    def __init__(self, m, turns):
        c = turns
        self.m, self.phases = m, m["phases"]
        self.i_f, self.ms, self.lu = m["i_f"] / c, m["ms"] / c, m["lu"] * c * c
        self.leak, self.ohms, self.core = m["leak"] * c * c, m["star_ohms"] * c * c, m["core"] * c * c
        self.n, self.s, self.thin, self.il = m["n"], m["s"], m["thin"], m["il"] / c
        self.rest = m.get("rest")  # slope that is left when the path is full; None is the root law
        self.psi0 = m["psi0"] * c
        self.h5, self.h7 = m["h5"] / 5 * self.psi0, m["h7"] / 7 * self.psi0

    def flux(self, jx, jy, cs, sn, th):
        """Flux linkage at a current out of the winding, and how fast it falls with it."""
        a = self.i_f - (jx * cs + jy * sn)
        b = -(-jx * sn + jy * cs)
        s = self.s
        m = math.sqrt(a * a + s * b * b) + 1e-12
        if self.rest is None:
            x = (m / self.ms) ** self.n
            g = self.lu * (1 + x) ** (-1 / self.n)
            dg = -g * x / (1 + x) / m
        else:
            m += 1e-4 * self.ms
            u, part = m / self.ms, self.lu * (1 - self.rest)
            g = part * math.atan(u) / u + self.lu * self.rest
            dg = part / self.ms * (1 / (u * (1 + u * u)) - math.atan(u) / (u * u))
        pd, pq = g * a, g * s * b
        daa = g + dg * a * a / m
        dab = dg * a * s * b / m
        dbb = s * g + dg * s * s * b * b / m
        q = 1 / (1 + (jx * jx + jy * jy) / (self.il * self.il))
        lx = self.leak * (1 - self.thin + self.thin * math.sqrt(q))
        dl = -self.leak * self.thin * q * math.sqrt(q) / (self.il * self.il)
        hx = self.h5 * math.cos(5 * th) + self.h7 * math.cos(7 * th)
        hy = -self.h5 * math.sin(5 * th) + self.h7 * math.sin(7 * th)
        px = pd * cs - pq * sn + hx - lx * jx
        py = pd * sn + pq * cs + hy - lx * jy
        xx = daa * cs * cs - 2 * dab * cs * sn + dbb * sn * sn + lx + dl * jx * jx
        xy = (daa - dbb) * cs * sn + dab * (cs * cs - sn * sn) + dl * jx * jy
        yy = daa * sn * sn + 2 * dab * cs * sn + dbb * cs * cs + lx + dl * jy * jy
        return px, py, xx, xy, yy


class Diodes:
    def __init__(self, m):
        self.exp, self.v, self.r = m["diode"] == "exponential", m["diode_v"], m["diode_r"]
        self.nvt, self.i_s, self.floor = m["nvt"], m["i_s"], m["floor"]

    def tangent(self, i):
        """Drop at no current and slope, of the line that touches the law at a current."""
        if not self.exp:
            return self.v, self.r
        i = max(abs(i), self.floor)
        slope = self.nvt / (i + self.i_s)
        return self.nvt * math.log(1 + i / self.i_s) - slope * i, slope + self.r

    def start(self):
        d, r = self.tangent(0)
        return d + (r * self.floor if self.exp else 0)


def legs3(mxx, mxy, myx, myy, cx, cy, volts, tangents, start, first):
    """The currents with M*i + v = c and each leg at a rail or at rest."""
    for s in [first] + LEGS3 + [(0, 0, 0)]:
        live = [k for k in (0, 1, 2) if s[k]]
        if not live:
            u = [AXES[k][0] * cx + AXES[k][1] * cy for k in (0, 1, 2)]
            if max(u) - min(u) <= volts + 2 * max(start, *(t[0] for t in tangents)):
                return 0.0, 0.0, cx, cy, s
        elif len(live) == 2:
            p, q = (live[0], live[1]) if s[live[0]] > 0 else (live[1], live[0])
            dx, dy = AXES[p][0] - AXES[q][0], AXES[p][1] - AXES[q][1]
            tx, ty = dx * 2 / 3, dy * 2 / 3
            wx, wy = mxx * tx + mxy * ty, myx * tx + myy * ty
            i = (dx * cx + dy * cy - volts - tangents[p][0] - tangents[q][0]) / (dx * wx + dy * wy + tangents[p][1] + tangents[q][1])
            if i <= 0:
                continue
            vx, vy = cx - wx * i, cy - wy * i
            z = 3 - p - q
            up = volts / 2 + tangents[p][0] + tangents[p][1] * i
            uz = up + (AXES[z][0] - AXES[p][0]) * vx + (AXES[z][1] - AXES[p][1]) * vy
            if abs(uz) <= volts / 2 + max(start, tangents[z][0]) + 1e-9 * volts:
                return tx * i, ty * i, vx, vy, s
        else:
            ax, bxy, dy = mxx, 0.0, myy
            vx = vy = 0.0
            rxx = rxy = ryy = 0.0
            for k in (0, 1, 2):
                u = s[k] * (volts / 2 + tangents[k][0])
                x, y = AXES[k]
                vx += 2 / 3 * u * x
                vy += 2 / 3 * u * y
                r = 2 / 3 * tangents[k][1]
                rxx += r * x * x
                rxy += r * x * y
                ryy += r * y * y
            a, b, c, d = ax + rxx, mxy + rxy, myx + rxy, dy + ryy
            det = a * d - b * c
            fx, fy = cx - vx, cy - vy
            ix, iy = (d * fx - b * fy) / det, (a * fy - c * fx) / det
            if all(s[k] * (AXES[k][0] * ix + AXES[k][1] * iy) >= 0 for k in (0, 1, 2)):
                return ix, iy, vx + rxx * ix + rxy * iy, vy + rxy * ix + ryy * iy, s
    return None  # rounding at a corner: the caller keeps its last pattern


def run(w, hertz, volts, diodes, steps=STEPS, cycles=60):
    """Steady state: mean amps into the battery and rms amps in a lead. volts None: all leads joined."""
    om = 2 * math.pi * hertz
    h = 1 / hertz / steps
    short = volts is None
    one = w.phases == 1
    start = 0 if short else diodes.start()
    th = 0.0
    psx, psy, _, _, _ = w.flux(0, 0, 1.0, 0.0, 0.0)
    ix = iy = jx = jy = 0.0
    pattern, last, got, still = (0, 0, 0), -1.0, None, 0
    run.lost = 0
    r, rc = w.ohms, w.core
    for cycle in range(cycles):
        total = square = 0.0
        for _ in range(steps):
            th += om * h
            cs, sn = math.cos(th), math.sin(th)
            px, py, lxx, lxy, lyy = w.flux(jx, jy, cs, sn, th)
            if one:
                b = lxx / rc + h
                m = (lxx * (1 + r / 2 / rc) + h * r / 2) / b
                c = (px + lxx * jx - psx) / b - r * ix / 2
                if short:
                    n, v = c / m, 0.0
                else:
                    d, rd = diodes.tangent(ix)
                    v = c
                    n = 0.0
                    if abs(c) > volts + 2 * start:
                        sg = 1 if c > 0 else -1
                        n = (c - sg * (volts + 2 * d)) / (m + 2 * rd)
                        if n * sg < 0:
                            n = 0.0
                        v = c - m * n
                e = v + r * (n + ix) / 2
                psx += h * e
                jx = n + e / rc
                ix = n
                total += abs(n)
                square += n * n
                continue
            bxx, bxy, byy = lxx / rc + h, lxy / rc, lyy / rc + h
            det = bxx * byy - bxy * bxy
            k = 1 + r / 2 / rc
            axx, axy, ayy = lxx * k + h * r / 2, lxy * k, lyy * k + h * r / 2
            mxx, mxy = (byy * axx - bxy * axy) / det, (byy * axy - bxy * ayy) / det
            myx, myy = (bxx * axy - bxy * axx) / det, (bxx * ayy - bxy * axy) / det
            fx, fy = px + lxx * jx + lxy * jy - psx, py + lxy * jx + lyy * jy - psy
            cx = (byy * fx - bxy * fy) / det - r * ix / 2
            cy = (bxx * fy - bxy * fx) / det - r * iy / 2
            if short:
                d = mxx * myy - mxy * myx
                nx, ny, vx, vy = (myy * cx - mxy * cy) / d, (mxx * cy - myx * cx) / d, 0.0, 0.0
            else:
                tan = [diodes.tangent(AXES[q][0] * ix + AXES[q][1] * iy) for q in (0, 1, 2)]
                found = legs3(mxx, mxy, myx, myy, cx, cy, volts, tan, start, pattern)
                if found is None:
                    found = (0.0, 0.0, cx, cy, (0, 0, 0))
                    run.lost += 1
                nx, ny, vx, vy, pattern = found
            ex, ey = vx + r * (nx + ix) / 2, vy + r * (ny + iy) / 2
            psx += h * ex
            psy += h * ey
            jx, jy = nx + ex / rc, ny + ey / rc
            ix, iy = nx, ny
            total += sum(max(0.0, AXES[q][0] * nx + AXES[q][1] * ny) for q in (0, 1, 2))
            square += (nx * nx + ny * ny) / 2
        got = total / steps, math.sqrt(square / steps)
        now = got[1] if short else got[0]
        still = still + 1 if abs(now - last) <= 1e-5 * now + 1e-9 else 0
        if still >= 2:
            break
        last = now
    if run.lost:
        print(f"{w.m['name']}: {run.lost} steps found no pattern", file=sys.stderr)
    return got


run.lost = 0


def open_volts(w):
    """rms between leads for 1 rad/s, turning open (the core's small current left out)."""
    e = math.hypot(w.psi0, 5 * w.h5, 7 * w.h7)
    return e / math.sqrt(2) * (math.sqrt(3) if w.phases == 3 else 1)


def bridge(w):
    """Henries of a phase of the star that a bridge finds at a standstill, the mean over a turn
    of the rotor; the field coil dead, magnets there as always."""
    full, w.i_f = w.i_f, w.i_f * (1e-6 if w.m["wound"] else 1)
    _, _, xx, _, yy = w.flux(0, 0, 1.0, 0.0, 0.0)
    w.i_f = full
    return (xx + yy) / 2


def draw(i, rng):
    """A machine of one of seven families, in turn; a third of them has exponential diodes.

    How full the field alone makes the path it shares with the armature is x = i_f/ms. In a
    wound rotor most of what fills is the rotor's own iron, by flux that leaks between the
    claws and that the armature does not move: the armature sees a stiff source and a path
    with some way to go, 0.2 to 1.2. A claw pole of 180 A measured by Sarafianos et al. (2015)
    behaves so: its inductance falls with current. "full claw" has the shared path itself
    full, 1.2 to 2.2: there the inductance grows with current, for the armature empties it.
    "leaky claw" has much leakage, most of it saturating, and falls the most.
    """
    family = ("claw", "magnet claw", "hub", "single", "low-speed wound", "full claw", "leaky claw")[i % 7]
    m = {"name": f"{family} {i // 7 + 1}", "phases": 1 if family == "single" else 3}
    m["delta"] = m["phases"] == 3 and rng.random() < 0.3
    m["poles"] = {"claw": rng.choice((12, 12, 14, 16)), "full claw": rng.choice((12, 14, 16)), "leaky claw": rng.choice((12, 14, 16)), "magnet claw": rng.choice((12, 14, 16)),
                  "hub": rng.choice((20, 46, 56)), "single": rng.choice((6, 8, 12)),
                  "low-speed wound": rng.choice((4, 8, 16))}[family]
    m["volts"] = rng.choice((13.5, 14.2, 14.2, 27.6, 28.4, 54.0))
    cut_in = {"claw": (800, 1300), "full claw": (800, 1300), "leaky claw": (800, 1300), "magnet claw": (400, 1200), "hub": (60, 250), "single": (500, 1800),
              "low-speed wound": (150, 700)}[family]
    m["cut_in"] = rng.uniform(*cut_in)
    top = rng.uniform(*{"claw": (35, 150), "full claw": (35, 150), "leaky claw": (35, 150), "magnet claw": (15, 60), "hub": (4, 30), "single": (4, 25),
                        "low-speed wound": (8, 60)}[family])
    leaky = family == "leaky claw"
    wound = leaky or family in ("claw", "low-speed wound", "full claw")
    m["wound"] = wound
    x = rng.uniform(1.2, 2.2) if family == "full claw" else rng.uniform(0.2, 0.6) if leaky else rng.uniform(0.2, 1.2) if wound else rng.uniform(0.1, 0.7)
    m["n"] = rng.uniform(1.6, 4.0)
    m["s"] = rng.uniform(1.0, 1.3) if leaky else rng.uniform(0.7, 1.1) if wound else rng.uniform(0.85, 1.15)
    m["diode"] = "exponential" if rng.random() < 1 / 3 else "constant"
    m["diode_v"], m["diode_r"] = rng.uniform(0.65, 0.9), rng.uniform(0, 0.02) * m["volts"] / top
    m["nvt"], m["i_s"], m["floor"] = 0.0, 0.0, 0.0
    if m["diode"] == "exponential":
        m["nvt"] = rng.uniform(1.3, 1.9) * 0.02778  # kT/q at 50 C
        m["i_s"] = top / 2 / math.exp(m["diode_v"] / m["nvt"])  # diode_v is at half the top amps
        m["floor"] = 1e-5 * top
    crest = m["volts"] + 2 * m["diode_v"]
    hertz = m["cut_in"] * m["poles"] / 120
    m["psi0"] = crest / (math.sqrt(3) if m["phases"] == 3 else 1) / (2 * math.pi * hertz)
    m["i_f"] = top * rng.uniform(1.0, 1.2)
    m["ms"] = m["i_f"] / x
    chord = m["psi0"] / m["i_f"]
    m["lu"] = chord * (1 + x ** m["n"]) ** (1 / m["n"])
    m["leak"] = chord * (rng.uniform(0.5, 1.0) if leaky else rng.uniform(0.15, 0.5) if wound else rng.uniform(0.08, 0.35))
    m["thin"], m["il"] = (rng.uniform(0.7, 0.95), top * rng.uniform(0.15, 0.4)) if leaky else (rng.uniform(0, 0.7), top * rng.uniform(0.3, 1.5))
    m["star_ohms"] = 2 * math.pi * hertz * (chord + m["leak"]) / rng.uniform(0.5, 3.5)
    m["core"] = 2 * math.pi * hertz * m["psi0"] / m["i_f"] / rng.uniform(0.004, 0.03)
    m["h5"], m["h7"] = rng.uniform(-0.04, 0.04), rng.uniform(-0.02, 0.02)
    # cut-in as a person works it out: sqrt(2) times the volts read reach the battery and two diodes
    m["cut_in"] = crest / (math.sqrt(2) * open_volts(Winding(m, 1)) * math.pi * m["poles"] / 60)
    return m


def draw_apart(i, rng):
    """A machine of the other set: an inverse tangent and the slope that is left of air,

        f(m) = Lu*((1-e)*ms*atan(m/ms) + e*m)

    where the field alone comes anywhere between hardly full and quite full, wound or magnets,
    salient either way, with more of its iron lost and more harmonics than in the first set.
    """
    family = ("claw", "magnets inside", "hub", "flywheel", "salient wound")[i % 5]
    wound = family in ("claw", "salient wound")
    m = {"name": f"{family} {i // 5 + 1}", "phases": 1 if family == "flywheel" else 3}
    m["delta"] = m["phases"] == 3 and rng.random() < 0.4
    m["poles"] = rng.choice({"claw": (12, 16), "magnets inside": (4, 8, 10), "hub": (16, 28, 40), "flywheel": (4, 6, 12, 18), "salient wound": (4, 6, 8)}[family])
    m["volts"] = rng.choice((7.0, 13.8, 14.4, 27.2, 56.0))
    m["cut_in"] = rng.uniform(*{"claw": (700, 1500), "magnets inside": (300, 1500), "hub": (50, 400), "flywheel": (400, 2500), "salient wound": (200, 1000)}[family])
    top = rng.uniform(*{"claw": (30, 200), "magnets inside": (10, 80), "hub": (3, 40), "flywheel": (3, 30), "salient wound": (10, 80)}[family])
    x = rng.uniform(0.2, 1.8) if wound else rng.uniform(0.05, 0.9)
    m["wound"], m["n"], m["rest"] = wound, 0.0, rng.uniform(0.03, 0.12)
    m["s"] = rng.uniform(0.55, 1.2) if wound else rng.uniform(0.75, 1.3)
    m["diode"] = "exponential" if rng.random() < 0.5 else "constant"
    m["diode_v"], m["diode_r"] = rng.uniform(0.6, 1.0), rng.uniform(0, 0.02) * m["volts"] / top
    m["nvt"], m["i_s"], m["floor"] = 0.0, 0.0, 0.0
    if m["diode"] == "exponential":
        m["nvt"] = rng.uniform(1.2, 2.0) * 0.02778
        m["i_s"] = top / 2 / math.exp(m["diode_v"] / m["nvt"])
        m["floor"] = 1e-5 * top
    crest = m["volts"] + 2 * m["diode_v"]
    hertz = m["cut_in"] * m["poles"] / 120
    m["psi0"] = crest / (math.sqrt(3) if m["phases"] == 3 else 1) / (2 * math.pi * hertz)
    m["i_f"] = top * rng.uniform(0.95, 1.3)
    m["ms"] = m["i_f"] / x
    chord = m["psi0"] / m["i_f"]
    m["lu"] = chord / ((1 - m["rest"]) * math.atan(x) / x + m["rest"])
    m["leak"] = chord * (rng.uniform(0.15, 0.8) if wound else rng.uniform(0.08, 0.5))
    m["thin"], m["il"] = rng.uniform(0, 0.8), top * rng.uniform(0.2, 1.2)
    m["star_ohms"] = 2 * math.pi * hertz * (chord + m["leak"]) / rng.uniform(0.4, 4.0)
    m["core"] = 2 * math.pi * hertz * m["psi0"] / m["i_f"] / rng.uniform(0.004, 0.04)
    m["h5"], m["h7"] = rng.uniform(-0.05, 0.05), rng.uniform(-0.03, 0.03)
    m["cut_in"] = crest / (math.sqrt(2) * open_volts(Winding(m, 1)) * math.pi * m["poles"] / 60)
    return m


def amps_at(m, w, rpm):
    return run(w, rpm * m["poles"] / 120, m["volts"], Diodes(m))[0]


def began(m, w, amps):
    """The speed at which that many amps flow."""
    low, high = 0.9 * m["cut_in"], 1.3 * m["cut_in"]
    f_low, f_high = -amps, amps_at(m, w, high) - amps
    for _ in range(12):
        mid = (low + high) / 2
        f = amps_at(m, w, mid) - amps
        if abs(f) < 0.01 * amps:
            return mid
        if f < 0:
            low, f_low = mid, f
        else:
            high, f_high = mid, f
    return low + (high - low) * -f_low / (f_high - f_low)


def measure(m):
    """All rows of one machine."""
    rows = []
    root3 = math.sqrt(3)
    for turns in TURNS:
        w = Winding(m, turns)
        n0 = m["cut_in"] / turns
        line = open_volts(w) * math.pi * m["poles"] / 60  # rms per rpm
        base = [m["name"], m["phases"], "yes" if m["delta"] else "no", m["poles"], turns,
                w.ohms * (3 if m["delta"] else 1), m["volts"], m["diode"], m["diode_v"], m["diode_r"], n0, line * 1000]
        short = run(w, 3 * n0 * m["poles"] / 120, None, None)[1]
        amps = [amps_at(m, w, n0 * x) for x in MULTIPLES]
        one = began(m, w, 0.01 * amps[-1]) if turns == 1.0 else 0
        rows.append(base + [3 * n0, short, one, bridge(w) * (3 if m["delta"] else 1)] + amps)
    return rows


def show(v):
    return f"{v:.6g}" if isinstance(v, float) else v


def main():
    if sys.argv[1:] == ["apart"]:
        rng = random.Random(77131)
        machines = [draw_apart(i, rng) for i in range(70)]
    else:
        count = int(sys.argv[1]) if len(sys.argv) > 1 else 140
        rng = random.Random(20240611)
        machines = [draw(i, rng) for i in range(count)]
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow("machine phases delta poles turns phase_ohms volts diodes diode_v diode_ohms cut_in_rpm line_v_per_krpm "
                 "short_rpm short_line_a began_rpm bridge_h".split() + [f"amps_at_{x:g}" for x in MULTIPLES])
    with Pool(2) as pool:
        for rows in pool.imap(measure, machines):
            for row in rows:
                out.writerow([show(v) for v in row])


if __name__ == "__main__":
    main()
