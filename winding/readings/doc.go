// Package readings identifies a machine from readings of its old winding: volts when spun up, amps with
// the leads shorted, amps into a battery at any number of speeds, the plate, the speed at which
// charging began, an inductance bridge.
//
// Solve finds the EMF per rpm, the inductance and how the inductance falls with current, all together,
// by least squares on the exact bridge of package charge; solve.go has the idea and its limits. The
// ohms have to be known. Fit.At scales the result to a winding of other turns, and Winding.Amps says
// what that sends into a battery. Every figure has its ±, which is meant to be a 95 % interval.
//
// The package knows no slot, no job and no screen. Volts, amps, ohms, henries, rpm; a phase is between
// two leads in delta, and between a lead and the star point in star.
package readings
