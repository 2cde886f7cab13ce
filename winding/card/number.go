package card

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"slotwright/winding"
	"slotwright/winding/quantity"
)

// asGiven, as a number of figures, is for numbers a person gave.
const asGiven = quantity.AsGiven

// amount is a figure with its unit, or why there is none.
func (w *writer) amount(f quantity.Figure, dim quantity.Dimension, figures int) string {
	if !f.Known() {
		return notKnown(f.Why)
	}
	u := w.opt.Units.For(dim)
	return strings.TrimRight(f.Text(u, figures)+" "+u.Name, " ")
}

func notKnown(why string) string {
	if why == "" {
		return "not known"
	}
	return "not known: " + why
}

// asFigure is a reading as a figure, for printing only.
func asFigure(r quantity.Reading) quantity.Figure {
	f := quantity.Figure{Value: r.Value, PlusMinus: r.PlusMinus, Origin: r.Origin}
	if !r.Given() {
		f.Why = "not given"
	}
	return f
}

// figureAnd is a line for a known figure, with some words after it; an unknown one is left to
// [writer.flush].
func (w *writer) figureAnd(label string, f quantity.Figure, dim quantity.Dimension, figures int, more string) {
	if !f.Known() {
		w.known.add(label, f.Why)
		return
	}
	w.pair(label, w.amount(f, dim, figures)+more)
}

// ofTrial is the line of a trial's figure, with some words after it.
func (w *writer) ofTrial(t *winding.TrialOutcome, id string, more ...string) {
	o := winding.OutputOf(id)
	w.figureAnd(title(o.LabelFor(&w.o.Machine)), o.Of(t), o.DimFor(w.windy()), o.Digits, strings.Join(more, ""))
}

// ofMachine is the line of a figure that no trial changes.
func (w *writer) ofMachine(id string, more ...string) {
	o := winding.MachineOutputOf(id)
	w.figureAnd(title(o.Label), o.OfMachine(&w.o.Machine), o.Dim, o.Digits, strings.Join(more, ""))
}

// trialText is a trial's figure with its unit, or why there is none.
func (w *writer) trialText(t *winding.TrialOutcome, id string) string {
	o := winding.OutputOf(id)
	return w.amount(o.Of(t), o.DimFor(w.windy()), o.Digits)
}

// machineText is the same for a figure that no trial changes.
func (w *writer) machineText(id string) string {
	o := winding.MachineOutputOf(id)
	return w.amount(o.OfMachine(&w.o.Machine), o.Dim, o.Digits)
}

// title begins a label with a capital.
func title(label string) string {
	r, n := utf8.DecodeRuneInString(label)
	return string(unicode.ToUpper(r)) + label[n:]
}

// inBoth is an amount in its two units.
func (w *writer) inBoth(a quantity.Figure, aName string, b quantity.Figure, bName string) string {
	return verbatim(w.amount(a, quantity.Only(aName), 3) + ", " + w.amount(b, quantity.Only(bName), 3))
}
