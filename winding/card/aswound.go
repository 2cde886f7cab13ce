package card

import (
	"fmt"

	"slotwright/winding/quantity"
	"slotwright/winding/wound"
)

// asWound is what was really put in, compared with its prediction.
func (w *writer) asWound() {
	w.section("AS WOUND")
	if len(w.o.Wound) == 0 {
		w.say(2, "Nothing is recorded yet: [[wound]] in the job file says what was put in and what it read.")
	}
	for i := range w.o.Wound {
		w.record(&w.o.Wound[i])
	}
}

// record is one winding that was put in.
func (w *writer) record(r *wound.Record) {
	head := "Trial " + r.Trial
	if r.Date != "" {
		head += ", " + r.Date
	}
	w.heading(head)
	w.figureAnd("Turns in one coil", r.Turns, quantity.None, 0, "")
	if r.Wire != "" {
		w.pair("Wire", verbatim(r.Wire))
	}
	filled := ""
	if r.Filled != "" {
		filled = ", slots: " + r.Filled
	}
	w.figureAnd("Wire fill reached", r.WireFill, quantity.None, 2, filled)
	w.read("Mean turn, by the wire used", r.MeanTurnMM, quantity.Millimetres)
	if r.WireKg.Read.Known() {
		w.read("Weight of the wire used", r.WireKg, quantity.Kilograms)
	}
	w.read(w.at20("Lead to lead, at "), r.LeadOhms20, quantity.Ohms)
	w.read("Lead to lead"+w.atRPM(r.RPM), r.LineVolts, quantity.Volts)
	w.read("Charging begins", r.CutInRPM, quantity.RPM)
	w.read("Rise per watt, after an hour", r.RisePerWatt, quantity.KelvinPerW)
	if r.Note != "" {
		w.pair("Note", r.Note)
	}
	w.flush()
}

func (w *writer) atRPM(rpm quantity.Figure) string {
	if !rpm.Known() {
		return ""
	}
	return ", " + w.amount(rpm, quantity.RPM, asGiven)
}

// read is a line for a reading and its expected value.
func (w *writer) read(label string, p wound.Proof, dim quantity.Dimension) {
	beside := ""
	if p.Expected.Known() {
		beside = ", worked out " + w.amount(p.Expected, dim, 3)
	}
	if p.Off.Known() {
		beside += fmt.Sprintf(": %s %%", quantity.File.Signed(p.Off.Value, 2))
	}
	for i, v := range p.Each {
		if beside += ", "; i == 0 {
			beside += "pairs "
		}
		beside += quantity.File.Value(w.opt.Units.For(dim).From(v), w.opt.Units.For(dim), 3)
	}
	w.figureAnd(label, p.Read, dim, 3, beside)
}
