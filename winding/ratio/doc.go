// Package ratio says how many turns an alternator makes for one of its drive, by what a job tells of it:
// two tachometer readings, a ratio, pulleys or teeth, in that order; where these contradict each other,
// which of them has no effect, and which pulley another speed wants.
//
// What a transmission does to speed and power is in package drive.
package ratio
