package wound

import (
	"math"

	"slotwright/winding/quantity"
)

// # What a proof says
//
// A reading of a finished winding is compared with the prediction for the turns and the wire that were
// really put in. The prediction may itself be off, by the mean turn, the flux or the inductance; turns
// and strands are counted and are not. So its ± is that of the trial's own figure, relative; and the
// reading's own ± is added where one was typed: a reading is off only where neither explains it. Screen
// and card use the same limits: [ProofLeast] at least, [ProofLimit] where no ± is known (common
// practice, no source).
//
// The explanations of a reading that is off are facts of the trade (common practice, no source), the
// same as on the card; a known fault that predicts just these readings is named first (faults.go).

// Proof is a reading beside its expected value.
type Proof struct {
	Read     quantity.Figure `json:"read"`
	Expected quantity.Figure `json:"expected"`
	// Off is the difference from what was expected, in per cent of that.
	Off quantity.Figure `json:"off_percent"`
	// Each is the reading of each pair of leads, where more than the mean was given.
	Each []float64 `json:"each,omitempty"`
	// even is how far a pair of a sound winding may be from the mean, relative; step the last digit
	// written; law what lies between two leads.
	even, step float64
	law        pairLaw
}

// Compare is a reading beside its expected value, both in one unit; either may be missing.
func Compare(read, expected quantity.Figure) Proof {
	return Proof{Read: read, Expected: expected, Off: read.With(expected, func(r, e float64) float64 { return 100 * (r/e - 1) })}
}

// Stand is how a reading compares with its prediction.
type Stand int

const (
	// NotRead: nothing was read yet.
	NotRead Stand = iota
	// NotHeld: there is nothing to compare the reading with.
	NotHeld
	// Good is within the limits.
	Good
	// Low is below them.
	Low
	// High is above them.
	High
	// Uneven is within the limits by its mean, or has nothing to be compared with, but a pair of leads
	// is too far from the mean.
	Uneven
)

// Limits are the range that a reading must lie in, as [Between] has it for the card; ok is false where
// nothing could be predicted, or only a guess of unknown ±.
func (p Proof) Limits() (low, high float64, ok bool) {
	if p.Expected.PlusMinus == 0 && p.Expected.Origin.Weak() {
		return 0, 0, false
	}
	low, high, _, ok = Between(p.Expected)
	return low, high, ok
}

// Stand compares the reading with its limits.
func (p Proof) Stand() Stand {
	low, high, ok := p.Limits()
	doubt := max(p.Read.PlusMinus, p.step/2)
	switch {
	case !p.Read.Known():
		return NotRead
	case ok && p.Read.Value+doubt < low:
		return Low
	case ok && p.Read.Value-doubt > high:
		return High
	case p.Unlike():
		return Uneven
	case !ok:
		return NotHeld
	}
	return Good
}

// ofPairs adds to a proof the readings of each pair of leads, times a factor, how far from their mean
// each may be, the last digit written, and what lies between two leads.
func (p Proof) ofPairs(each []float64, factor, even, step float64, law pairLaw) Proof {
	for _, v := range each {
		p.Each = append(p.Each, v*factor)
	}
	p.even, p.step, p.law = even, step*factor, law
	return p
}

// Proved reports whether the finished winding was seen to do its job: to charge, or to have its ohms
// and give its volts, none of them far off, and neither ohms nor volts nor warmth marked as off. Volts
// without a speed, which cannot be compared, prove nothing.
func (r *Record) Proved() bool {
	seen := r.CutInRPM.Read.Known() || r.LineVolts.Off.Known() && r.LeadOhms20.Off.Known()
	return seen && !r.faulty() && !r.LeadOhms20.Far() && !r.LineVolts.Far() && !r.CutInRPM.Far()
}

// faulty reports whether any reading of ohms, volts or warmth is marked as off.
func (r *Record) faulty() bool {
	return r.LeadOhms20.Outside() || r.LineVolts.Outside() || r.RisePerWatt.Stand() == High || r.RisePerWatt.Warmer() != ""
}

// RiseTaught is the rise per watt by a record, K/W, where others may use it: missing where the winding
// is marked as faulty, or so warm that a short or drag must be the reason.
func (r *Record) RiseTaught() quantity.Figure {
	p := r.RisePerWatt
	if r.LeadOhms20.Outside() || r.LineVolts.Outside() || r.CutInRPM.Far() || p.tooWarm() {
		return quantity.Missing("the winding is not sound as it was read")
	}
	return p.Read
}

// # Warmer than was guessed
//
// The guess of the rise per watt is good to a factor of 1.5 (package heat), and a machine that is given
// as open but is closed has two thirds of the film coefficient, 10 for 15 W/m²K: another 1.5. Both
// together are 2.25. A winding more than [shortOver] times as warm per counted watt is heated by
// something not counted: shorted turns carry a current of their own, or something drags. Its rise then
// says nothing about the cooling, and nothing may use it. Common practice, no source.
const shortOver = 2.5

// tooWarm reports whether a rise is more than any cooling explains.
func (p Proof) tooWarm() bool {
	return p.Off.Known() && p.Read.Value > shortOver*p.Expected.Value
}

// Warmer is the explanation of a rise per watt much higher than guessed, "" for one that is not, or
// that is compared with a measured one.
func (p Proof) Warmer() string {
	if !p.Off.Known() || !p.Expected.Origin.Weak() || p.Off.Value <= muchWarmer {
		return ""
	}
	times := quantity.Number(p.Read.Value/p.Expected.Value, quantity.AtMost(2)) + " times as much as was guessed"
	if p.tooWarm() {
		return times + p.NoCooling() + ". Stop and look: a coil hotter than the others, each pair's ohms and volts, what it takes to turn it with nothing connected. Nothing is learned from it"
	}
	return times + ": write it at Rise per watt, on Machine, and look at every temperature and limit again"
}

// NoCooling is what is said of a rise that no cooling explains; "" of any other.
func (p Proof) NoCooling() string {
	if !p.tooWarm() {
		return ""
	}
	return ", and no cooling makes that: shorted turns, or drag that was not counted"
}

// Far reports whether a reading, or any pair of it, is further off than passes without a word.
func (p Proof) Far() bool {
	far := p.Off.Known() && math.Abs(p.Off.Value) > farOff
	for _, v := range p.Each {
		far = far || p.Off.Known() && math.Abs(v/p.Expected.Value-1) > farOff/100
	}
	return far
}

// asSureAs gives an expected value the relative ± of a figure of its kind.
func (p *Proof) asSureAs(of quantity.Figure) {
	if p.Expected.Known() && of.Known() && of.Value != 0 {
		p.Expected.PlusMinus = math.Abs(p.Expected.Value * of.PlusMinus / of.Value)
	}
}

// carry adds the uncertainty of converting an expected value to the conditions of the reading, squared
// and relative, to its ±.
func (p *Proof) carry(doubt float64) {
	if e := &p.Expected; e.Known() && doubt != 0 {
		e.PlusMinus = math.Sqrt(max(0, sq(e.PlusMinus)+doubt*sq(e.Value)))
	}
}

func sq(v float64) float64 { return v * v }

// withEnamel lets a weight be off by a tenth at least: the enamel is weighed too, but is not in the
// plan (common practice, no source).
func (p *Proof) withEnamel() {
	if p.Expected.Known() {
		p.Expected.PlusMinus = max(p.Expected.PlusMinus, p.Expected.Value*ProofLimit)
	}
}
