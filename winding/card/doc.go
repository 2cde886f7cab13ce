// Package card writes the winding card of one trial, and the report on all of them,
// as plain text of at most 80 columns: for a printer, and for the bench, where it is
// read with dirty hands.
//
// It only sets text. Every figure comes from a [winding.Outcome], every coil from the
// trial's [slotwright/winding/layout.Layout]; a figure that is missing is named with
// its reason. It is not for the screen, and nothing reads its text back.
package card
