// Package charge finds the steady current that a small alternator drives through its diodes into a
// battery, a resistor or any load that holds a voltage, at one speed.
//
// [Solve] takes the machine as EMF behind resistance and inductance in each phase: star, delta, a
// single phase, or two of these a quarter of a cycle apart. The rectifier is diodes of constant drop
// plus slope: a bridge of six or four, and for single phases also one diode (half wave) or two with two
// capacitors (doubler). The answer is the exact periodic solution of that circuit, not a simulation run
// to rest: see the essays in bridge3.go, halfwave.go and pair.go. A [Solver] does the same for a series
// of nearby points. [SolveDiode] does it for a diode given by its law.
//
// A resistor is a load of zero volts; a converter's input is one of volts without ohms.
//
// It is not a model of the machine itself. Saliency, saturation, iron loss, harmonics in the EMF, and
// the fall of speed under load are left to whoever supplies the EMF and the inductance: on a real
// saturated machine the lumped circuit is good to 5 to 15 %, whatever the solver's own accuracy.
// Nothing here is about transients, ripple filters or controllers.
package charge
