// Package field says what flux a rotor makes: a wound one from readings at several
// field currents, magnets from their grade and size.
//
// Fluxes are in whatever unit the readings are; a curve through them carries that unit.
// The package knows nothing of stator windings.
package field
