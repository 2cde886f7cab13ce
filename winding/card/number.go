package card

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"slotwright/winding"
	"slotwright/winding/quantity"
)

// significant writes v with so many significant figures, whole digits always in full;
// 0 figures is a whole number, [asGiven] as many as there are. Huge numbers take an
// exponent.
func significant(v float64, figures int) string {
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return "?"
	case math.Abs(v) >= 1e9:
		return strconv.FormatFloat(v, 'g', 4, 64)
	case v == 0:
		return "0"
	case figures == asGiven:
		return trimZeros(significant(v, 6))
	}
	places := 0
	if figures > 0 {
		places = max(0, figures-1-int(math.Floor(math.Log10(math.Abs(v))+1e-12)))
	}
	s := strconv.FormatFloat(v, 'f', min(places, 9), 64)
	if strings.Trim(s, "-0.") == "" {
		return "0"
	}
	return s
}

// asGiven, as a number of figures, is for numbers a person gave: six at most, four
// where the unit is not the one they are kept in, without noughts behind that nobody
// typed.
const asGiven = -1

// trimZeros takes the noughts off the end of a fraction.
func trimZeros(s string) string {
	if !strings.Contains(s, ".") || strings.Contains(s, "e") {
		return s
	}
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// spread writes a tolerance to the two figures that mean anything.
func spread(v float64) string { return trimZeros(significant(v, 2)) }

// bare is a figure's number in a unit, with "~" before a guess and ± after it.
func bare(f quantity.Figure, u quantity.Unit, figures int) string {
	s := significant(u.From(f.Value), figures)
	if figures == asGiven && u.From(1) != 1 {
		s = trimZeros(significant(u.From(f.Value), 4))
	}
	if f.Origin == quantity.Guessed {
		s = "~" + s
	}
	if f.PlusMinus > 0 {
		s += " ±" + spread(math.Abs(u.From(f.PlusMinus)-u.From(0)))
	}
	return s
}

// amount is a figure with its unit, or why there is none.
func (w *writer) amount(f quantity.Figure, dim quantity.Dimension, figures int) string {
	if !f.Known() {
		return notKnown(f.Why)
	}
	u := w.opt.Units.For(dim)
	return strings.TrimRight(bare(f, u, figures)+" "+u.Name, " ")
}

func notKnown(why string) string {
	if why == "" {
		return "not known"
	}
	return "not known: " + why
}

// asFigure is a reading to print; nothing is worked out from it.
func asFigure(r quantity.Reading) quantity.Figure {
	f := quantity.Figure{Value: r.Value, PlusMinus: r.PlusMinus, Origin: r.Origin}
	if !r.Given() {
		f.Why = "not given"
	}
	return f
}

// count is a number of things in words: "1 trial", "2 trials".
func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// figureAnd is a line for a figure that is known, with some words after it; one that is
// not waits for [writer.flush].
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
	w.figureAnd(title(o.Label), o.Of(t), o.DimFor(w.windy()), o.Digits, strings.Join(more, ""))
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
