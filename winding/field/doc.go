// Package field works out a machine's flux and its inductance: the flux of a wound rotor from readings
// at several field currents, of magnets from their grade and size, of a winding from its volts; the
// rotor's own circuit and the speed from which it excites itself; the inductance of a phase from a
// bridge, a short circuit, the plate or the iron.
//
// Fluxes of a Curve are in whatever unit the readings are in; everything else is in webers, henries and
// millimetres. The package does not know which coil lies in which slot (it takes turns in series and a
// winding factor), nor what the machine charges.
package field
