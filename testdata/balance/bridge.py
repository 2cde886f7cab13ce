"""A diode bridge between an alternator and a battery, in small implicit time steps.

Each phase is an EMF  e_k = E sin(theta - 120 k)  behind R and L; each diode drops V0 + r*i while it
conducts and blocks otherwise; the battery is V behind Rb. A phase's current always passes exactly one
diode, so r is added to R; the two diodes in series add 2*V0 to V.

One step of h radians by the backward Euler rule asks for currents i with sum 0 that minimise

    a/2 * sum(i^2) - sum(b*i) + V'*s + Rb/2 * s^2,   s = sum|i|/2 = the current into the battery,
    a = X/h + R,  b = X/h * i_before + e,  V' = V + 2*V0

which is strictly convex: every diode that should conduct does, and no events have to be looked for.
Its minimum has one of three shapes, tried in turn: one phase against the two others, one against one,
none. The step's error is of order h, so each answer is taken with N and 2N steps to 60 degrees and
carried on to h = 0 (Richardson). The periodic state is found by marching 60 degrees at a time: after
60 degrees the currents must be those of before, turned on by one phase with signs changed.
Where memory is long (large X/R) Newton's rule on the 60 degree map shortens the march.

Units: volts, amps, ohms, radians. Sine EMF, constant inductance.
"""
import math
from functools import lru_cache

SQ3 = math.sqrt(3.0)
STEPS = 90     # to 60 degrees, the coarse run; the fine run has twice as many


@lru_cache(maxsize=None)
def _sines(n):
    third = 2 * math.pi / 3
    out = []
    for j in range(1, n + 1):
        t = j * math.pi / 3 / n
        out.append((math.sin(t), math.sin(t - third), math.sin(t + third)))
    return out


def _step(st, e, c, a, Vp, Rb):
    """One backward Euler step: the minimum of the convex function above, c = X/h, a = c + R."""
    b = (c * st[0] + e[0], c * st[1] + e[1], c * st[2] + e[2])
    pa, pb, pc = abs(b[0]), abs(b[1]), abs(b[2])
    k = 0 if pa >= pb and pa >= pc else (1 if pb >= pc else 2)   # the one driven hardest stands alone
    x, y, z = b[k], b[(k + 1) % 3], b[(k + 2) % 3]
    sign = 1.0
    if x < 0:
        x, y, z, sign = -x, -y, -z, -1.0
    s = (x - 2 * Vp / 3) / (a + 2 * Rb / 3)
    i2 = i3 = 1.0
    if s > 0:
        w = (Vp + Rb * s) / 3
        i2, i3 = (y + w) / a, (z + w) / a
    if i2 > 0 or i3 > 0:          # not all three: the hardest pair
        s = max((x - min(y, z) - Vp) / (2 * a + Rb), 0.0)
        i2, i3 = (-s, 0.0) if y < z else (0.0, -s)
    i1, i2, i3 = sign * s, sign * i2, sign * i3
    return ((i1, i2, i3), (i3, i1, i2), (i2, i3, i1))[k], s


def _pattern(st):
    return (st[0] > 0) - (st[0] < 0), (st[1] > 0) - (st[1] < 0), (st[2] > 0) - (st[2] < 0)


FINE = 24   # a step in which a diode opens or closes is taken again in so many


def _sixty(state, E, X, R, Vp, Rb, n, tally):
    """60 degrees on; returns the currents turned back into the first frame, and the means."""
    h = math.pi / 3 / n
    third = 2 * math.pi / 3
    c, cf = X / h, X * FINE / h
    m = [0.0, 0.0, 0.0, 0.0]
    st, pat, th = state, _pattern(state), 0.0

    def values(st, s, e):
        return (s, s * s, st[0] ** 2 + st[1] ** 2 + st[2] ** 2,
                e[0] * st[0] + e[1] * st[1] + e[2] * st[2])

    last = values(st, (abs(st[0]) + abs(st[1]) + abs(st[2])) / 2,
                  (0.0, -E * math.sin(third), E * math.sin(third)))

    def add(st, s, e, w):
        nonlocal last
        new = values(st, s, e)
        for j in range(4):
            m[j] += w * (last[j] + new[j]) / 2
        last = new

    for sines in _sines(n):
        e = (E * sines[0], E * sines[1], E * sines[2])
        nx, s = _step(st, e, c, c + R, Vp, Rb)
        np_ = _pattern(nx)
        if np_ != pat:
            nx = st
            for j in range(1, FINE + 1):
                t = th + h * j / FINE
                e = (E * math.sin(t), E * math.sin(t - third), E * math.sin(t + third))
                nx, s = _step(nx, e, cf, cf + R, Vp, Rb)
                if tally:
                    add(nx, s, e, 1.0 / FINE)
            np_ = _pattern(nx)
        elif tally:
            add(nx, s, e, 1.0)
        st, pat = nx, np_
        th += h
    # at +60 degrees phase a's EMF is -b's of the frame before, b's -c's, c's -a's
    return (-st[2], -st[0], -st[1]), tuple(v / n for v in m)


def _periodic3(E, X, R, Vp, Rb, n, start, tol=1e-9):
    st = start
    scale = E / math.hypot(X, R) + 1e-12
    one = lambda s: _sixty(s, E, X, R, Vp, Rb, n, False)[0]
    for turn in range(400):
        nx = one(st)
        d0, d1 = nx[0] - st[0], nx[1] - st[1]
        if abs(d0) + abs(d1) < tol * scale:
            st = nx
            break
        if turn >= 3 and turn % 3 == 0:      # Newton on the map of two currents
            e = 1e-6 * scale
            g0 = one((st[0] + e, st[1], -st[0] - e - st[1]))
            g1 = one((st[0], st[1] + e, -st[0] - st[1] - e))
            j00, j10 = (g0[0] - nx[0]) / e - 1, (g0[1] - nx[1]) / e
            j01, j11 = (g1[0] - nx[0]) / e, (g1[1] - nx[1]) / e - 1
            det = j00 * j11 - j01 * j10
            if abs(det) > 1e-9:
                u = -(d0 * j11 - d1 * j01) / det
                v = -(j00 * d1 - j10 * d0) / det
                st = (st[0] + u, st[1] + v, -st[0] - st[1] - u - v)
                continue
        st = nx
    return st, _sixty(st, E, X, R, Vp, Rb, n, True)[1]


def _periodic1(E, X, R, Vp, Rb, n, start, tol=1e-9):
    n3 = 3 * n
    h = math.pi / n3
    c = X / h
    a = c + R + Rb
    scale = E / math.hypot(X, R) + 1e-12
    i = start
    for turn in range(3000):
        first, s1, s2, p = i, 0.0, 0.0, 0.0
        for j in range(1, n3 + 1):
            e = E * math.sin(j * h)
            b = c * i + e
            i = (b - Vp) / a if b > Vp else ((b + Vp) / a if b < -Vp else 0.0)
            s1 += abs(i)
            s2 += i * i
            p += e * i
        i = -i
        if abs(i - first) < tol * scale:
            break
    return i, (s1 / n3, s2 / n3, s2 / n3, p / n3)


def bridge(E, X, R, V, Rb=0.0, V0=0.0, r=0.0, phases=3, steps=STEPS):
    """Peak phase EMF E, reactance X and resistance R a phase, battery V behind Rb, diode V0 + r*i.

    Returns a dict: amps (mean DC), amps_sq (mean square DC), phase_rms, emf_w (power out of the EMF),
    phase_sq (mean of the sum of the phase currents' squares)."""
    Vp = V + 2 * V0
    none = dict(amps=0.0, amps_sq=0.0, phase_rms=0.0, emf_w=0.0, phase_sq=0.0)
    if (SQ3 if phases == 3 else 1.0) * E <= Vp:
        return none
    if (SQ3 if phases == 3 else 1.0) * E < 1.2 * Vp:
        steps *= 4          # short pulses just above cut-in
    if phases == 3:
        st, m1 = _periodic3(E, X, R + r, Vp, Rb, steps, (0.0, 0.0, 0.0))
        _, m2 = _periodic3(E, X, R + r, Vp, Rb, 2 * steps, st)
    else:
        st, m1 = _periodic1(E, X, R + 2 * r, Vp, Rb, steps, 0.0)
        _, m2 = _periodic1(E, X, R + 2 * r, Vp, Rb, 2 * steps, st)
    m = [max(2 * y - x, 0.0) for x, y in zip(m1, m2)]
    return dict(amps=m[0], amps_sq=m[1], phase_sq=m[2],
                phase_rms=math.sqrt(m[2] / phases), emf_w=m[3])
