// Package layout says which coil of a stator winding lies in which slots, how it is connected, and what
// follows for its turns: winding factors, phasors, parallel circuits, joins, leads, the order of
// winding.
//
// It is built from the star of slots, as a list of coils, and every figure is taken from that list: a
// factor and the coils that get wound cannot disagree. A list as found in an old stator, or one with a
// mistake in it, goes through the same figures (see [FromCoils]).
//
// Conventions, kept everywhere in the package:
//
//   - Slots are numbered 1 to Q clockwise as seen from the connection end
//     (the end where coils are joined and leads come out). "Up" is clockwise.
//   - Slot 1 holds the start of the first coil of phase U (of set 1).
//   - The start of a coil is the wire end in its start slot, the finish the end
//     in its finish slot, whichever way the coil is connected. Sense +1 says the
//     phase goes in at the start and leaves at the finish; -1 the other way.
//   - Phases and sets count from 0 in code (0, 1, 2 is U, V, W); coils, slots,
//     groups and circuits from 1, as on the bench.
//   - With the rotor turning clockwise V lags U by 120 electrical degrees, by 90 where
//     there are two phases.
//   - Harmonics are of electrical order: 1 is the fundamental, with p pole pairs.
//
// The package knows nothing of wire, flux, ohms or volts, and reads no file.
package layout
