package quantity

// Origin says how far a number can be trusted.
type Origin int

const (
	// Absent: nobody gave the number and nothing replaces it.
	Absent Origin = iota
	// Measured: a person gave it as read from a rule, caliper, meter or plate.
	Measured
	// Guessed: a person gave it with the mark ~, or a guess or a default affects it.
	Guessed
	// Derived: computed here from measured numbers.
	Derived
	// Default: nobody gave it, the program's default is used.
	Default
	// Planned: a person intends it; nothing is wound or counted yet.
	Planned
)

// Weak reports whether the number rests on less than a measurement: a guess or a default, which is what
// the mark ~ stands for.
func (o Origin) Weak() bool { return o == Guessed || o == Default }

// String is the word the screen and the card use.
func (o Origin) String() string {
	switch o {
	case Measured:
		return "measured"
	case Guessed:
		return "guessed"
	case Derived:
		return "derived"
	case Default:
		return "default"
	case Planned:
		return "planned"
	default:
		return "absent"
	}
}

// MarshalText makes JSON carry the word, not the number.
func (o Origin) MarshalText() ([]byte, error) { return []byte(o.String()), nil }

// Reading is one number that a person may have given. Its unit is the one its
// field's name ends with.
type Reading struct {
	// Value is the number, in the field's unit.
	Value float64
	// PlusMinus is the tolerance given with it, same unit, 0 when none was.
	PlusMinus float64
	// Origin is Measured or Guessed when given, Absent when not, Default when the program's own value
	// replaces it.
	Origin Origin
}

// Given reports whether there is a number.
func (r Reading) Given() bool { return r.Origin != Absent }

// Or returns the value, or the fallback when none was given.
func (r Reading) Or(fallback float64) float64 {
	if r.Given() {
		return r.Value
	}
	return fallback
}

// OrReading returns r, or the fallback marked as a default when none was given.
func (r Reading) OrReading(fallback float64) Reading {
	if r.Given() {
		return r
	}
	return Reading{Value: fallback, Origin: Default}
}

// Whole returns the value as a whole number, 0 when none was given.
func (r Reading) Whole() int { return int(r.Or(0)) }

// Known makes a measured reading of a number.
func Known(v float64) Reading { return Reading{Value: v, Origin: Measured} }
