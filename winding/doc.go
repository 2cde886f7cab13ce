// Package winding works out what a stator winding does: what fits in the slot, its ohms, its volts per
// rpm, where charging starts, the amps that reach the battery at every speed, the heat, and how it
// loads the drive.
//
// There is one road through it. [Evaluate] takes a [job.Job], which holds only what a person gave, and
// returns an [Outcome], which holds every figure that any screen, card or report shows. Evaluate is
// pure: the same job gives the same outcome; nothing is read, written or remembered. A search that
// changes only turns and wire calls [Prepare] once and [Bench.Static] for each candidate.
//
// The packages below it each answer one question and know nothing of each other: winding/slot what room
// there is, winding/layout which coil lies where, winding/charge the current through the bridge,
// winding/drive what turns the shaft, winding/field what makes the flux, winding/battery what is
// charged, winding/heat what current copper withstands. What needs a job and no bench has a package too:
// winding/wants what to measure first, winding/ratio how fast the drive turns the alternator, winding/wound
// what the readings of a finished winding say.
//
// The package is not a rating authority: its figures are design estimates, to be proved with a meter.
// It knows no file, no terminal and no clock.
package winding
