package card

import (
	"fmt"
	"math"
	"strconv"
	"strings"

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

// percent is a fraction as a percentage.
func percent(f quantity.Figure) string {
	f.Value, f.PlusMinus = f.Value*100, f.PlusMinus*100
	return bare(f, quantity.None[0], 2) + " %"
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

// figure is a line for a figure that is known; one that is not waits for [writer.flush].
func (w *writer) figure(label string, f quantity.Figure, dim quantity.Dimension, figures int) {
	w.figureAnd(label, f, dim, figures, "")
}

// figureAnd adds some words after the figure.
func (w *writer) figureAnd(label string, f quantity.Figure, dim quantity.Dimension, figures int, more string) {
	if !f.Known() {
		w.known.add(label, f.Why)
		return
	}
	w.pair(label, w.amount(f, dim, figures)+more)
}
