"""The built-in example's stator at equal copper: turns from 15 to 36 on the usual speed of its wheel, and
what a smaller field current or magnets would change. Writes out_sweep.csv and out_field.csv.

Equal copper: wire area goes as 1/turns, so ohms and henries go as turns squared, volts as turns.
Field: "typed" is 2.5 A as the job says; "driven" is what the battery's volts drive through the brushes and
the coil at 80 C, at most the typed current, its flux taken in proportion to the current (one reading only: the
truth lies between that and no change); "magnets" is the typed current's flux and no field watts.
"""
import csv
import os

from drives import Wheel
from machine import Machine, num, warm
from run import HERE, Curve, read, write


def scaled(row, turns, flux=1.0, field_a=None):
    k = turns / float(row["turns"])
    r = dict(row, turns=str(turns))
    r["volts_phase_rms_per_rpm"] = float(row["volts_phase_rms_per_rpm"]) * k * flux
    r["phase_ohms_20c"] = float(row["phase_ohms_20c"]) * k * k
    r["phase_mh"] = float(row["phase_mh"]) * k * k
    r["conductor_mm2"] = float(row["conductor_mm2"]) / k
    m = Machine(r)
    if field_a is not None:
        m.field_w = field_a ** 2 * warm(float(row["coil_ohm_20c"]), float(row["coil_c"])) + field_a * float(row["brush_v"])
    return m


def driven(row, volts, c):
    """Amps that a supply drives through brushes and a coil at a temperature."""
    return (volts - float(row["brush_v"])) / warm(float(row["coil_ohm_20c"]), c)


def sweep():
    row = next(r for r in read("machines.csv") if r["job"] == "water" and r["trial"] == "A")
    d = next(r for r in read("drive_inputs.csv") if r["job"] == "water")
    ratio, eff = num(d, "ratio"), num(d, "efficiency")
    law = Wheel(num(d, "watts"), num(d, "usual_rpm"), num(d, "top_rpm"))
    usual = num(d, "usual_rpm")
    out = []
    for volts in (12.6, 13.6, 14.4):
        for heat in ("copper", "all"):
            for turns in range(15, 37):
                for field in ("typed", "driven", "magnets"):
                    typed = float(row["field_a"])
                    amps = {"typed": typed, "driven": min(typed, driven(row, volts, 80.0)), "magnets": 0.0}[field]
                    flux = amps / typed if field == "driven" else 1.0
                    m = scaled(row, turns, flux, amps)
                    s = m.settle(usual * ratio, volts, heat)
                    o = dict(volts=volts, heat=heat, turns=turns, field=field, field_a=amps, flux_of_typed=flux)
                    o.update({k: s[k] for k in ("amps", "battery_w", "field_w", "net_w", "net_amps", "winding_c",
                                                "phase_rms", "shaft_w", "copper_w")})
                    o.update(cut_in_rpm=m.cut_in(volts), drive_w=s["shaft_w"] / eff,
                             net_efficiency=s["net_w"] / s["shaft_w"],
                             a_per_mm2=s["phase_rms"] / m.mm2, gives_w=law.watts(usual))
                    slow = m.settle(num(d, "slow_rpm") * ratio, volts, heat)
                    o["slow_net_w"] = slow["net_w"]
                    if heat == "copper" and field != "driven" and turns % 3 == 0:
                        c = Curve(m, volts, heat, num(d, "top_rpm") * ratio)
                        n = c.roots(lambda q: eff * law.watts(q / ratio))[-1]
                        t = c.state(n)
                        o.update(let_go_rpm=n / ratio, let_go_amps=t["amps"], let_go_net_w=t["net_w"],
                                 let_go_c=t["winding_c"])
                    out.append(o)
    write("out_sweep", out)


def fields():
    """What a supply drives through the rotor: cold, at 80 C; watts drawn; whether the typed current is reached.
    The engine job has readings at two currents: volts E = Ew I / (I0 + I) through both (Froelich)."""
    out = []
    for job in ("water", "wind-wound-rotor", "engine"):
        row = next(r for r in read("machines.csv") if r["job"] == job)
        typed = float(row["field_a"])
        i0 = None
        if job == "engine":
            (a, ea), (b, eb) = (1.0, 6.1), (2.5, 9.6)
            i0 = a * b * (eb - ea) / (ea * b - eb * a)
        for v in (12.6, 13.56, 14.52):
            for c in (20.0, 80.0):
                i = driven(row, v, c)
                o = dict(job=job, supply_v=v, coil_c=c, typed_a=typed, driven_a=i, driven_w=i * v,
                         typed_w=Machine(row).field_w, supply_for_typed_v=typed * warm(float(row["coil_ohm_20c"]), c) + 1.0)
                if i0:
                    o["flux_of_typed"] = i / (i0 + i) * (i0 + typed) / typed
                out.append(o)
    write("out_field", out)


if __name__ == "__main__":
    fields()
    sweep()
