// Package wants says what to count and measure first: the few fields of a job that the figures wait
// for, in the order of the bench; the ways to volts that are open, of which one is enough; and the
// field that a missing figure waits for (needs.go).
//
// It reads the job and the reasons, and computes nothing.
package wants
