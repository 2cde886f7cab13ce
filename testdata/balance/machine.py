"""The alternator warm and running: bridge, drag, field, copper that heats; leads joined; bare heating.

Units: rpm of the alternator's shaft, volts, amps, ohms, watts, newton metres, degrees Celsius, seconds.
"""
import math
from bridge import bridge

COPPER_K = 234.5           # IEC 60028
RHO20 = 1.7241e-8          # ohm m at 20 C, IEC 60028
HEAT, DENSITY = 385.0, 8890.0   # J/(kg K) (from memory), kg/m3 (IEC 60028)
CLASS = {"A": 105.0, "E": 120.0, "B": 130.0, "F": 155.0, "H": 180.0}   # IEC 60085
NO_COOLING = 2000.0        # the search for a steady temperature ends here


def warm(ohms20, c):
    return ohms20 * (COPPER_K + c) / (COPPER_K + 20.0)


def num(row, key, default=None):
    return float(row[key]) if row.get(key) not in (None, "") else default


class Machine:
    def __init__(self, row):
        self.row = row
        self.phases = int(row["phases"])
        self.sets = int(row["sets"])
        self.poles = int(row["poles"])
        self.delta = row["connection"] == "delta"
        self.volts_rpm = num(row, "volts_phase_rms_per_rpm")   # of one winding
        self.ohms20 = num(row, "phase_ohms_20c")
        self.henry = num(row, "phase_mh") * 1e-3
        self.rise = num(row, "rise_k_per_w")
        self.ambient = num(row, "ambient_c")
        self.limit_c = CLASS[row["thermal_class"]]
        self.drag_w, self.drag_rpm = num(row, "drag_w", 0.0), num(row, "drag_rpm", 1.0)
        self.field_a = num(row, "field_a", 0.0)
        coil, brush = num(row, "coil_ohm_20c", 0.0), num(row, "brush_v", 0.0)
        self.field_w = self.field_a ** 2 * warm(coil, num(row, "coil_c", 20.0)) + self.field_a * brush
        self.rest, self.absorption = num(row, "battery_rest_v"), num(row, "battery_absorption_v")
        self.dc_ohms, self.cable_ohms = num(row, "dc_ohms"), num(row, "cable_ohms", 0.0)
        self.diode_v, self.diode_ohms = num(row, "diode_v"), num(row, "diode_ohms")
        self.mm2 = num(row, "conductor_mm2") * int(row["circuits"])

    def drag(self, rpm):
        """Watts to turn it with nothing connected; power 1.5 of the speed (common practice, no source)."""
        return self.drag_w * (rpm / self.drag_rpm) ** 1.5

    def cut_in(self, volts):
        e = (volts + 2 * self.diode_v) / math.sqrt(2) / self.volts_rpm
        return e / math.sqrt(3) if self.phases == 3 and not self.delta else e

    def emf(self, rpm):
        """Peak EMF, reactance and the divisor that makes delta a star."""
        k = math.sqrt(3) if self.delta else 1.0
        div = 3.0 if self.delta else 1.0
        x = 2 * math.pi * rpm * self.poles / 120 * self.henry
        return math.sqrt(2) * self.volts_rpm * rpm / k, x / div, div

    def at(self, rpm, volts, c):
        """The state at a speed, a battery's volts (behind its ohms) and a winding temperature."""
        e, x, div = self.emf(rpm)
        r = warm(self.ohms20, c) / div
        o = bridge(e, x, r, volts, self.dc_ohms, self.diode_v, self.diode_ohms, self.phases)
        s = dict(rpm=rpm, winding_c=c, amps=o["amps"])
        s["phase_rms"] = o["phase_rms"] / (math.sqrt(3) if self.delta else 1.0)
        s["copper_w"] = o["phase_sq"] * r
        if self.phases == 3:
            s["diode_w"] = 2 * self.diode_v * o["amps"] + self.diode_ohms * o["phase_sq"]
        else:
            s["diode_w"] = 2 * self.diode_v * o["amps"] + 2 * self.diode_ohms * o["phase_sq"]
        s["cable_w"] = o["amps_sq"] * self.cable_ohms
        s["battery_w"] = volts * o["amps"] + o["amps_sq"] * (self.dc_ohms - self.cable_ohms)
        s["terminal_v"] = volts + o["amps"] * (self.dc_ohms - self.cable_ohms)
        s["drag_w"] = self.drag(rpm)
        s["shaft_w"] = s["copper_w"] + s["diode_w"] + s["cable_w"] + s["battery_w"] + s["drag_w"]
        s["emf_w"] = o["emf_w"]
        s["field_w"] = self.field_w
        s["net_amps"] = s["amps"] - self.field_w / s["terminal_v"]
        s["net_w"] = s["battery_w"] - self.field_w
        s["open_v"] = e * (math.sqrt(3) if self.phases == 3 else 1.0)
        return s

    def heat_w(self, s, heat):
        """Watts that leave through the stator: copper alone; copper, drag and field all of it; none yet."""
        if heat == "cold":
            return 0.0
        return s["copper_w"] + (s["drag_w"] + s["field_w"] if heat == "all" else 0.0)

    def settle(self, rpm, volts, heat="copper", guess=None):
        """The state with the winding at the temperature its own losses hold it at."""
        f = lambda c: self.ambient + self.rise * self.heat_w(self.at(rpm, volts, c), heat) - c
        a = self.ambient if guess is None else guess
        if rpm <= self.cut_in(volts):
            s = self.at(rpm, volts, a)
            return self.at(rpm, volts, self.ambient + self.rise * self.heat_w(s, heat))
        fa = f(a)
        b = min(max(a + fa, self.ambient), NO_COOLING)
        for _ in range(40):
            if abs(b - a) < 1e-4:
                break
            fb = f(b)
            slope = (fb - fa) / (b - a)
            a, fa = b, fb
            b = min(max(b - fb / slope if slope < -1e-6 else b + 0.5 * fb, self.ambient), NO_COOLING)
        return self.at(rpm, volts, b)

    # ---- leads joined -------------------------------------------------------------------------

    def joined(self, rpm, c):
        """All leads joined: amps in a winding, watts and torque; T = m E^2 R / (w (R^2 + X^2))."""
        e = self.volts_rpm * rpm
        r, x = warm(self.ohms20, c), 2 * math.pi * rpm * self.poles / 120 * self.henry
        amps = e / math.hypot(r, x)
        watts = self.sets * self.phases * amps ** 2 * r
        return dict(amps=amps, watts=watts, torque=watts / (rpm * math.pi / 30))

    def joined_peak(self, c):
        """Speed of the greatest torque, R = w L, and that torque."""
        rpm = warm(self.ohms20, c) / self.henry * 60 / math.pi / self.poles
        return rpm, self.joined(rpm, c)["torque"]

    def seconds(self, amps, from_c, to_c):
        """Seconds for the copper alone to come from one temperature to another: amps is a figure or
        amps(c); dT/dt = J^2 rho(T) / (c d), by Simpson's rule."""
        n = 400
        total = 0.0
        for k in range(n + 1):
            c = from_c + (to_c - from_c) * k / n
            i = amps(c) if callable(amps) else amps
            j = i / (self.mm2 * 1e-6)
            w = 1 if k in (0, n) else (4 if k % 2 else 2)
            total += w * HEAT * DENSITY / (j * j * warm(RHO20, c))
        return total * (to_c - from_c) / n / 3
