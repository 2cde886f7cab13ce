package winding

import (
	"math"

	"slotwright/winding/quantity"
)

// # What a proof says
//
// A reading of a finished winding is held against what was worked out for the turns and the
// wire that were really put in. What was worked out may itself be off, by the mean turn, the
// flux or the inductance; turns and strands are counted and are not. So its ± is that of the
// trial's own figure, as a part of it; and the reading's own ± comes on top where one was
// typed: a reading is off only where neither can explain it. Screen and card hold a reading to
// the same limits: [ProofLeast] at least, [ProofLimit] where no ± is known (common practice,
// no source).
//
// What a reading that is off speaks of are facts of the trade (common practice, no source),
// the same that stand on the card; a known fault that makes just these readings stands before
// them (faults.go).

// Stand is where a reading stands beside what was worked out for it.
type Stand int

const (
	// NotRead is nothing read yet.
	NotRead Stand = iota
	// NotHeld is a reading with nothing to hold it against.
	NotHeld
	// Good is within the limits.
	Good
	// Low is below them.
	Low
	// High is above them.
	High
	// Uneven is within them by the mean, and a pair of leads further from it than it may be.
	Uneven
)

// Limits are between what a reading must lie, as [Between] has it for the card; ok is false
// where nothing could be worked out, or only a guess that nobody knows the ± of.
func (p Proof) Limits() (low, high float64, ok bool) {
	if p.Expected.PlusMinus == 0 && p.Expected.Origin.Weak() {
		return 0, 0, false
	}
	low, high, _, ok = Between(p.Expected)
	return low, high, ok
}

// Stand is where the reading stands.
func (p Proof) Stand() Stand {
	low, high, ok := p.Limits()
	switch {
	case !p.Read.Known():
		return NotRead
	case !ok:
		return NotHeld
	case p.Read.Value+p.Read.PlusMinus < low:
		return Low
	case p.Read.Value-p.Read.PlusMinus > high:
		return High
	case p.Apart() > p.even:
		return Uneven
	}
	return Good
}

// ofPairs is a proof with what each pair of leads read, times a factor, and how far from their mean
// each may be.
func (p Proof) ofPairs(each []float64, factor, even float64) Proof {
	for _, v := range each {
		p.Each = append(p.Each, v*factor)
	}
	p.even = even
	return p
}

// Apart is how far the pair of leads furthest from the mean of all is from it, as a part of it; 0 where
// only a mean was read. Even is how far it may be: [BalanceLimit] of ohms, [ProofLeast] of volts, whose
// speed and field do not stand still meanwhile (common practice, no source).
func (p Proof) Apart() (part float64) {
	for _, v := range p.Each {
		part = max(part, math.Abs(v/p.Read.Value-1))
	}
	return part
}

// Even is how far from the mean of all a pair of leads may be, as a part of it.
func (p Proof) Even() float64 { return p.even }

// Proved reports whether the finished winding was seen to do what it is for: to charge, or to
// have its ohms and give its volts; and none of these is far off. Volts without their speed,
// which nothing can be held against, show nothing.
func (r *WoundOutcome) Proved() bool {
	seen := r.CutInRPM.Read.Known() || r.LineVolts.Off.Known() && r.LeadOhms20.Off.Known()
	return seen && !r.LeadOhms20.far() && !r.LineVolts.far() && !r.CutInRPM.far()
}

// far reports whether a reading, or any pair of it, is further off than is let pass without a word.
func (p Proof) far() bool {
	far := p.Off.Known() && math.Abs(p.Off.Value) > farOff
	for _, v := range p.Each {
		far = far || p.Off.Known() && math.Abs(v/p.Expected.Value-1) > farOff/100
	}
	return far
}

// Check is one proof of a record, with what a reading that is off speaks of.
type Check struct {
	// Label is what was read, Field the input of the record that it was typed into.
	Label, Field string
	Proof        Proof
	Dim          quantity.Dimension
	// Low and High are what a reading below and above the limits speaks of.
	Low, High string
	// uneven is what pairs speak of that are unlike each other, where that is known.
	uneven string
}

// Speaks is what the reading speaks of, "" where it is good; of one that is held against a guess only
// where it is far worse.
func (c Check) Speaks() string {
	switch c.Proof.Stand() {
	case Low:
		return c.Low
	case High:
		return c.High
	case Uneven:
		if c.uneven != "" {
			return c.uneven
		}
		return "one phase is not like the others: a strand, a joint or a coil of it; read each pair again"
	case NotHeld:
		if rise := c.Proof; c.Field == "warm" && rise.Off.Known() && rise.Off.Value > muchWarmer {
			return quantity.Number(rise.Read.Value/rise.Expected.Value, quantity.AtMost(2)) + " times as much as was guessed: write it at Rise per watt, on Machine, and look at every temperature and limit again"
		}
	}
	return ""
}

// Checks are the proofs of a record, in the order of the bench.
func (r *WoundOutcome) Checks() []Check {
	list := checks(r.MeanTurnMM, r.WireKg, r.LeadOhms20, r.LineVolts, r.CutInRPM, r.RisePerWatt)
	r.speaks(list)
	return list
}

// Checks are what a record of a trial will be held against, nothing read yet; its volts are at
// the speed of the test, its rise per watt at the usual speed.
func (o *Outcome) Checks(trial int) []Check {
	t, no := &o.Trials[trial], quantity.Missing("not read")
	return checks(proof(no, t.MeanTurnMM), proof(no, t.CopperKg), proof(no, t.LeadOhms20), proof(no, t.LineAtTest), proof(no, t.CutInRPM), proof(no, o.surelyWarms()))
}

func checks(turn, weight, ohms, volts, began, rise Proof) []Check {
	return []Check{
		{"mean turn, by the wire used", "wire_length", turn, quantity.Millimetres,
			"turns or a coil short of the count, or wire not counted in", "longer ends than planned, more turns than counted, or offcuts counted in", ""},
		{"weight of the wire used", "wire_weight", weight, quantity.Kilograms,
			"not all of the wire was weighed, or the length is not what went in", "the spool or what is left on it was weighed along, or the length is not what went in", ""},
		{"ohms at 20 °C", "lead", ohms, quantity.Ohms,
			"turns short in a coil, wire touching wire, thicker wire or a strand more than said", "a cold joint, a strand broken or left out, thinner wire or longer turns", ""},
		{"volts", "line", volts, quantity.Volts,
			"speed, field current or gap; then a coil joined the wrong way round, or turns short", "speed or field current more than said, or turns more than counted", ""},
		{"begins to charge", "cut_in", began, quantity.RPM,
			"sooner than worked out: check the tachometer; then more flux than reckoned with", "late: where the volts are right, battery, diodes, cable; else as with low volts", ""},
		{"rise per watt, after an hour", "warm", rise, quantity.KelvinPerW,
			"cooled better than reckoned with", "less air than reckoned with; hotter by much, or by and by: a short, stop", ""},
	}
}

// spreadProofs gives what a record is held against the ± of its trial's figure, as a part of it.
func (o *Outcome) spreadProofs() {
	for i := range o.Wound {
		asSure(&o.Wound[i].RisePerWatt, o.surelyWarms())
		for k := range o.Trials {
			if r, t := &o.Wound[i], &o.Trials[k]; t.Name == r.Trial {
				asSure(&r.MeanTurnMM, t.MeanTurnMM)
				asSure(&r.WireKg, t.CopperKg)
				r.WireKg.withEnamel()
				asSure(&r.LeadOhms20, t.LeadOhms20)
				asSure(&r.LineVolts, t.LinePerRPM)
				r.LineVolts.carry(r.carrying)
				asSure(&r.CutInRPM, t.CutInRPM)
				break
			}
		}
	}
}

// asSure gives an expectation the ± of a figure of its kind.
func asSure(p *Proof, of quantity.Figure) {
	if p.Expected.Known() && of.Known() && of.Value != 0 {
		p.Expected.PlusMinus = math.Abs(p.Expected.Value * of.PlusMinus / of.Value)
	}
}

// withEnamel lets a weight be a tenth off at least: what is weighed has its enamel on it, which
// the plan has not (common practice, no source).
func (p *Proof) withEnamel() {
	if p.Expected.Known() {
		p.Expected.PlusMinus = max(p.Expected.PlusMinus, p.Expected.Value*ProofLimit)
	}
}

// surelyWarms is the rise per watt with its ±; one that is guessed has none, for what its inputs
// may be off is little beside the guess.
func (o *Outcome) surelyWarms() quantity.Figure {
	f := o.Machine.RisePerWatt
	if f.Origin.Weak() {
		f.PlusMinus = 0
	}
	return f
}
