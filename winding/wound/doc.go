// Package wound compares what a finished winding reads with what its plan predicts: whether a reading
// lies within its limits, which phase the pairs of leads point to, and which fault would give just
// these readings.
//
// The predictions are given to it, for the turns and the wire that were really put in; it knows no
// machine, and computes no figure of one. Ohms at 20 °C, volts rms between leads, millimetres,
// kilograms, rpm.
package wound
