package wound

import (
	"cmp"

	"slotwright/winding/quantity"
)

// Check is one proof of a record, with the explanation of a reading that is off.
type Check struct {
	// Label is what was read, Field the input of the record that it was typed into.
	Label, Field string
	Proof        Proof
	Dim          quantity.Dimension
	// Low and High explain a reading below and above the limits.
	Low, High string
	// uneven explains pairs that differ, where that is known.
	uneven string
	// pairs is what each pair read, by name.
	pairs string
}

// Pairs is the reading of each pair of leads, by name, in the base unit: "U-V 3.11, V-W 3.10, W-U
// 3.24"; "" where only a mean was read.
func (c Check) Pairs() string { return c.pairs }

// Speaks explains the reading, "" where it is good; one compared with a guess is explained only where
// it is far worse. Pairs that differ come before their mean.
func (c Check) Speaks() string {
	switch stand := c.Proof.Stand(); {
	case c.Proof.Unlike():
		return cmp.Or(c.uneven, "one phase is not like the others: a strand, a joint or a coil of it")
	case stand == Low:
		return c.Low
	case stand == High:
		return c.High
	case c.Field == "warm":
		return c.Proof.Warmer()
	}
	return ""
}

// Checks are the proofs of a record, in the order of the bench.
func (r *Record) Checks() []Check {
	list := checks(r.magnets, r.MeanTurnMM, r.WireKg, r.LeadOhms20, r.LineVolts, r.CutInRPM, r.RisePerWatt)
	for i := range list {
		list[i].pairs = r.each(list[i].Proof)
	}
	r.speaks(list)
	return list
}

// Checks are what a record of a trial will be compared with, nothing read yet; the volts predicted are
// at the speed of the test, the rise per watt at the usual speed.
func Checks(p Predicted, magnets bool) []Check {
	no := quantity.Missing("not read")
	return checks(magnets, Compare(no, p.MeanTurnMM), Compare(no, p.WireKg), Compare(no, p.LeadOhms20), Compare(no, p.LineVolts), Compare(no, p.CutInRPM), Compare(no, p.RisePerWatt))
}

func checks(magnets bool, turn, weight, ohms, volts, began, rise Proof) []Check {
	list := []struct {
		label, field string
		proof        Proof
		dim          quantity.Dimension
		low, high    string
	}{
		{"mean turn, by the wire used", "wire_length", turn, quantity.Millimetres,
			"turns or a coil short of the count, or wire not counted in", "longer ends than planned, more turns than counted, or offcuts counted in"},
		{"weight of the wire used", "wire_weight", weight, quantity.Kilograms,
			"not all of the wire was weighed, or the length is not what went in", "the spool or what is left on it was weighed along, or the length is not what went in"},
		{"ohms at 20 °C", "lead", ohms, quantity.Ohms,
			"turns short in a coil, wire touching wire, " + wireOver, badJoint + " or longer turns"},
		{"volts", "line", volts, quantity.Volts,
			weaker(magnets) + "; then a coil joined the wrong way round, or turns short", stronger(magnets) + ", or turns more than counted"},
		{"begins to charge", "cut_in", began, quantity.RPM,
			"sooner than worked out: check the tachometer; then more flux than reckoned with", "late: where the volts are right, battery, diodes, cable; else as with low volts"},
		{"rise per watt, after an hour", "warm", rise, quantity.KelvinPerW,
			"cooled better than assumed", "less air than assumed; much hotter, or getting hotter: a short, stop"},
	}
	rows := make([]Check, len(list))
	for i, c := range list {
		rows[i] = Check{Label: c.label, Field: c.field, Proof: c.proof, Dim: c.dim, Low: c.low, High: c.high}
	}
	return rows
}
