package job

import (
	"fmt"

	"slotwright/winding/quantity"
)

// Default is what replaces an empty field, where that is one number or one word for every job. Where it
// is computed from other fields the field has a Ghost instead, and the value is decided where it is
// computed.
//
// This is the only place for it: the computation, the template of a new file, the form and the card all
// take it from here.
type Default struct {
	// Number is in the field's base unit.
	Number float64
	// Word is that of a field of words, "" when it is a number.
	Word string
	// Source is the standard it is from, or says that there is none.
	Source string
}

// Where defaults come from. Practice is the source of any rule that the trade follows and nobody has
// published.
const (
	Practice    = "common practice, no source"
	leftOut     = "left out unless said"
	cold        = "the reference temperature of IEC 60028"
	standardAir = "the standard atmosphere, ISO 2533, from memory"
)

func amount(v float64, source string) *Default { return &Default{Number: v, Source: source} }

func word(w, source string) *Default { return &Default{Word: w, Source: source} }

// Empty is what is used when the field is empty, in words and in a unit of its own dimension; "" when
// nothing is.
func (f *Input) Empty(u quantity.Unit) string {
	switch d := f.Default; {
	case d == nil:
		return f.Ghost
	case d.Word != "":
		return d.Word
	default:
		text := quantity.File.Value(u.From(d.Number), u, quantity.AsGiven)
		if u.Name != "" {
			text += " " + u.Name
		}
		return text
	}
}

// ToothEndMM is how far the cheeks hold a tooth coil off the end of the iron, mm; common
// practice, no source.
const ToothEndMM = 1.0

// EmptyIn is Empty for a job, where the replacement may differ from the usual one.
func (f *Input) EmptyIn(j *Job, u quantity.Unit) string {
	if f.round != nil && toothCoils(j) {
		in := *f
		in.Default = f.round
		return in.Empty(u)
	}
	return f.Empty(u)
}

// DefaultOf is the number, in the base unit, that replaces an empty field. It panics for a path that
// has no such number: only the program asks, by a path it knows.
func DefaultOf(path string) float64 {
	d := defaultAt(path)
	if d.Word != "" {
		panic(fmt.Sprintf("job: the default of %s is the word %q", path, d.Word))
	}
	return d.Number
}

// DefaultWord is the word that replaces an empty field. It panics for a path that has none.
func DefaultWord(path string) string {
	d := defaultAt(path)
	if d.Word == "" {
		panic(fmt.Sprintf("job: the default of %s is a number", path))
	}
	return d.Word
}

// Or is the reading, or the field's default marked as a guess when none was given.
func Or(path string, r quantity.Reading) quantity.Reading { return r.OrReading(DefaultOf(path)) }

// OrWord is the word, or the field's default when none was given.
func OrWord(path, text string) string {
	if text != "" {
		return text
	}
	return DefaultWord(path)
}

func defaultAt(path string) *Default {
	f, ok := InputAt(path)
	if !ok || f.Default == nil {
		panic(fmt.Sprintf("job: %s has no default", path))
	}
	return f.Default
}
