package quantity

import "math"

// Figure is one number of an Outcome, or the reason why there is none. Its unit is the one its field's
// name ends with.
type Figure struct {
	Value float64
	// PlusMinus is its uncertainty, same unit; 0 when not worked out.
	PlusMinus float64
	// Origin is Measured or Default when it is a reading as given or the default in its place, Derived
	// when it follows from measured numbers, Guessed when a guess or a default affects it, Absent when
	// there is none.
	Origin Origin
	// Why says what is missing, or where the number came from.
	Why string
}

// Known reports whether there is a number.
func (f Figure) Known() bool { return f.Origin != Absent }

const outOfRange = "the inputs are out of range"

// Of is a number that follows from others. A value that is not finite marks an input out of its range;
// it becomes a missing figure here, so that it can get no further.
func Of(v float64, from ...Origin) Figure {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return Missing(outOfRange)
	}
	f := Figure{Value: v, Origin: Derived}
	for _, o := range from {
		if o.Weak() {
			f.Origin = Guessed
		}
	}
	return f
}

// Missing is no number, and why.
func Missing(why string) Figure { return Figure{Why: why} }

// Because is the figure with a note of where it came from; a missing one keeps its reason.
func (f Figure) Because(why string) Figure {
	if f.Known() {
		f.Why = why
	}
	return f
}

// Then is g(f), keeping the origin of f: missing stays missing, guessed guessed.
func (f Figure) Then(g func(float64) float64) Figure {
	if !f.Known() {
		return f
	}
	r := Of(g(f.Value), f.Origin)
	if r.Known() {
		r.Why = f.Why
	}
	return r
}

// Times is the figure and its ± times a plain number.
func (f Figure) Times(k float64) Figure {
	if !f.Known() {
		return f
	}
	r := Of(f.Value * k)
	if !r.Known() {
		return r
	}
	r.PlusMinus, r.Why = math.Abs(k)*f.PlusMinus, f.Why
	if f.Origin.Weak() {
		r.Origin = Guessed
	}
	return r
}

// With is g of two figures; missing if one is.
func (f Figure) With(h Figure, g func(a, b float64) float64) Figure {
	switch {
	case !f.Known():
		return f
	case !h.Known():
		return h
	}
	return Of(g(f.Value, h.Value), f.Origin, h.Origin)
}

// Over is f/h.
func (f Figure) Over(h Figure) Figure {
	return f.With(h, func(a, b float64) float64 { return a / b })
}

// Figure is the reading as a figure; why says what is needed when it was not given.
func (r Reading) Figure(why string) Figure {
	if !r.Given() {
		return Missing(why)
	}
	return Figure{Value: r.Value, PlusMinus: r.PlusMinus, Origin: r.Origin}
}

// OrError is a figure from a function that may refuse its inputs.
func OrError(v float64, err error, from ...Origin) Figure {
	if err != nil {
		return Missing(err.Error())
	}
	return Of(v, from...)
}
