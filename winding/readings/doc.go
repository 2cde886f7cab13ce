// Package readings works a machine out of what its old winding showed: volts when spun up,
// amps with the leads joined, amps into a battery at any number of speeds, the plate, the
// speed at which charging began, an inductance bridge.
//
// Solve finds the EMF for each rpm, the inductance and how the inductance falls with current,
// all together, by least squares on the exact bridge of package charge; solve.go has the
// idea and its limits. The ohms are known to begin with. Fit.Rewound carries what was found
// over to a winding of other turns, and Winding.Amps says what that sends into a battery.
// Every figure has its ±, which is meant to hold 95 times of 100.
//
// The package knows no slot, no job and no screen. Volts, amps, ohms, henries, rpm; a phase is
// what lies between two leads in delta, and between a lead and the star point in star.
package readings
