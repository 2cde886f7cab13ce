"""What turns the alternator: torque and power of a wind rotor, a wheel, legs, an engine.

Units: rpm of the drive's own shaft, watts, newton metres, metres a second, degrees Celsius.
"""
import math


def air_density(altitude_m, air_c):
    """kg/m3: pressure of the standard atmosphere (ISO 2533: 288.15 K, 101325 Pa, 6.5 K/km,
    exponent 5.2559) at the altitude, over R = 287.053 J/(kg K) and the air's own temperature."""
    p = 101325 * (1 - 0.0065 * altitude_m / 288.15) ** 5.2559
    return p / (287.053 * (air_c + 273.15))


def heier(tsr):
    """Power coefficient at pitch 0 by the six-coefficient form of Heier (Grid Integration of Wind Energy
    Conversion Systems) with the coefficients in general use for it, 0.5176 116 0.4 5 21 0.0068
    (from memory; peak 0.48 at 8.1)."""
    x = 1 / tsr - 0.035
    return 0.5176 * (116 * x - 5) * math.exp(-21 * x) + 0.0068 * tsr


def _peak(f, lo, hi):
    g = (math.sqrt(5) - 1) / 2
    while hi - lo > 1e-10:
        a, b = hi - g * (hi - lo), lo + g * (hi - lo)
        if f(a) < f(b):
            lo = a
        else:
            hi = b
    return (lo + hi) / 2


BEST = _peak(heier, 5, 11)
TOP = heier(BEST)


def _zero(f, lo, hi):
    for _ in range(200):
        mid = (lo + hi) / 2
        if f(mid) > 0:
            lo = mid
        else:
            hi = mid
    return (lo + hi) / 2


FREE = _zero(heier, BEST, 20) / BEST     # runaway over best tip-speed ratio


class Wind:
    """A wind rotor: Heier's curve stretched so that its peak is peak_cp at peak_tsr."""
    kind = "wind"

    def __init__(self, rotor_m, peak_cp, peak_tsr, altitude_m=0.0, air_c=15.0):
        self.r = rotor_m / 2
        self.cp0, self.tsr0 = peak_cp, peak_tsr
        self.rho = air_density(altitude_m, air_c)
        self.area = math.pi * self.r ** 2

    def cp(self, tsr):
        if tsr <= 1e-9:
            return 0.0
        return self.cp0 * heier(tsr * BEST / self.tsr0) / TOP

    def tsr(self, rpm, wind):
        return rpm * math.pi / 30 * self.r / wind

    def rpm(self, tsr, wind):
        return tsr * wind / self.r * 30 / math.pi

    def watts(self, rpm, wind):
        return 0.5 * self.rho * self.area * wind ** 3 * self.cp(self.tsr(rpm, wind))

    def torque(self, rpm, wind):
        return self.watts(rpm, wind) / (rpm * math.pi / 30)

    def free_rpm(self, wind):
        return self.rpm(FREE * self.tsr0, wind)

    def torque_at_rest(self, wind):
        """Cp / tsr as the tip-speed ratio goes to 0: only the curve's last term is left."""
        cq = self.cp0 / TOP * 0.0068 * BEST / self.tsr0
        return 0.5 * self.rho * self.area * self.r * wind ** 2 * cq


class Wheel:
    """Water wheel or legs: torque falls in a straight line through watts at `usual` to nothing at `free`.
    capped=True: and never more watts than at the usual speed (common practice, no source, either way)."""
    kind = "wheel"

    def __init__(self, watts, usual, free, capped=False):
        self.p, self.u, self.f, self.capped = watts, usual, free, capped

    def watts(self, n):
        if n >= self.f:
            return 0.0
        p = self.p * n / self.u * (self.f - n) / (self.f - self.u)
        return min(p, self.p) if self.capped else p


class Engine:
    """A governed engine: holds its speed; full torque constant up to the usual speed, then full power."""
    kind = "engine"

    def __init__(self, watts, usual):
        self.p, self.u = watts, usual

    def watts(self, n):
        return self.p * min(1.0, n / self.u)


class Fixed:
    """A speed that does not give way."""
    kind = "fixed"

    def watts(self, n):
        return math.inf


class Points:
    """Typed points (rpm, watts), straight between them, nothing outside the last."""
    kind = "points"

    def __init__(self, points):
        self.pts = sorted(points)

    def watts(self, n):
        pts = self.pts
        if n <= pts[0][0]:
            return pts[0][1] * n / pts[0][0] if pts[0][0] > 0 else pts[0][1]
        for (a, pa), (b, pb) in zip(pts, pts[1:]):
            if n <= b:
                return pa + (pb - pa) * (n - a) / (b - a)
        return 0.0
