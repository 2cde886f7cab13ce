package winding

import (
	"encoding/json"
	"math"
)

// Figure is one number of an Outcome, or the reason why there is none. Its unit is
// the one its field's name ends with.
type Figure struct {
	Value float64
	// PlusMinus is how far it may be off, same unit; 0 when not worked out.
	PlusMinus float64
	// Origin is Derived when it follows from measured numbers, Guessed when a guess
	// or a default weighs in it, Absent when there is none.
	Origin Origin
	// Why says what is missing, or where the number came from.
	Why string
}

// Known reports whether there is a number.
func (f Figure) Known() bool { return f.Origin != Absent }

// MarshalJSON writes the number, or null when there is none.
func (f Figure) MarshalJSON() ([]byte, error) {
	if !f.Known() || math.IsNaN(f.Value) || math.IsInf(f.Value, 0) {
		return []byte("null"), nil
	}
	return json.Marshal(f.Value)
}

// derived is a number that follows from others. A value that is not finite is the
// mark of an input out of its range; it becomes a missing figure here, so that it can
// get no further.
func derived(v float64, from ...Origin) Figure {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return missing("the inputs are out of range")
	}
	f := Figure{Value: v, Origin: Derived}
	for _, o := range from {
		if o == Guessed {
			f.Origin = Guessed
		}
	}
	return f
}

// missing is no number, and why.
func missing(why string) Figure { return Figure{Why: why} }

// because is the figure with a note of where it came from.
func (f Figure) because(why string) Figure {
	f.Why = why
	return f
}

// then is g(f), keeping what is known of f: missing stays missing, guessed guessed.
func (f Figure) then(g func(float64) float64) Figure {
	if !f.Known() {
		return f
	}
	r := derived(g(f.Value), f.Origin)
	if r.Known() {
		r.Why = f.Why
	}
	return r
}

// times is the figure, and how far it may be off, times a plain number.
func (f Figure) times(k float64) Figure {
	r := f.then(func(v float64) float64 { return v * k })
	if r.Known() {
		r.PlusMinus = math.Abs(k) * f.PlusMinus
	}
	return r
}

// with is g of two figures; missing if one is.
func (f Figure) with(h Figure, g func(a, b float64) float64) Figure {
	switch {
	case !f.Known():
		return f
	case !h.Known():
		return h
	}
	return derived(g(f.Value, h.Value), f.Origin, h.Origin)
}

// over is f/h.
func (f Figure) over(h Figure) Figure {
	return f.with(h, func(a, b float64) float64 { return a / b })
}

// figure is a reading as a figure.
func (r Reading) figure(why string) Figure {
	if !r.Given() {
		return missing(why)
	}
	f := Figure{Value: r.Value, PlusMinus: r.PlusMinus, Origin: Derived}
	if r.Origin == Guessed {
		f.Origin = Guessed
	}
	return f
}
