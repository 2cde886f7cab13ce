package wound

import (
	"fmt"
	"math"

	"slotwright/winding/quantity"
)

// # A room's temperature in the other unit
//
// The ohms of a winding are read at room temperature. Someone who measures in inches thinks of a room
// as 68, and taking that as °C makes the ohms at 20 °C a sixth too low: short turns, where there are
// none. So, where lengths are in inches and the temperature would be a room's in °F, the program asks
// which was meant; not where the ohms agree with the plan in °C and do not in °F. R ∝ k + t, k 234.5
// for copper (IEC 60028).

// inFahrenheit is the proof of the ohms if their temperature was meant in °F.
func (r *Record) inFahrenheit() Proof {
	p := r.LeadOhms20
	zeroC := r.metal.InferredZeroC()
	times := (r.restC - zeroC) / (quantity.Celsius[1].Base(r.restC) - zeroC)
	q := Compare(p.Read.Times(times), p.Expected).ofPairs(p.Each, times, p.even, p.step, p.law)
	q.Read.PlusMinus = p.Read.PlusMinus * times
	return q
}

// asksUnit reports whether to ask which unit the temperature of the ohms was meant in.
func (r *Record) asksUnit() bool {
	return r.restC > 0 && r.LeadOhms20.Read.Known() && (r.LeadOhms20.Stand() != Good || r.inFahrenheit().Stand() == Good)
}

// UnitAsked is that question, with what it would make of the ohms; "" where there is nothing to ask.
func (r *Record) UnitAsked() string {
	if !r.asksUnit() {
		return ""
	}
	would := ""
	switch off := r.inFahrenheit().Off; {
	case off.Known() && math.Abs(off.Value) < 0.5:
		would = ", and its ohms as planned"
	case off.Known():
		would = fmt.Sprintf(", and its ohms %.2g %% %s", math.Abs(off.Value), highOrLow(off.Value))
	}
	return fmt.Sprintf("%.0f °C at rest, or %.0f °F? That would be %.0f °C%s", r.restC, r.restC, quantity.Celsius[1].Base(r.restC), would)
}
