package wound

import (
	"fmt"
	"slices"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"
)

// recordOf is a record as worked out; ok is false for the empty one that is to be begun.
func recordOf(s *session.Session, i int) (r *wound.Record, ok bool) {
	if list := s.Outcome().Wound; i < len(list) {
		return &list[i], true
	}
	return nil, false
}

// planOf is the index of a record's trial, the chosen one for a record to be begun; -1 where the job
// has none such.
func planOf(s *session.Session, i int) int {
	o := s.Outcome()
	r, begun := recordOf(s, i)
	if !begun {
		return min(s.Trial, len(o.Trials)-1)
	}
	return slices.IndexFunc(o.Trials, func(t winding.TrialOutcome) bool { return t.Name == r.Trial })
}

// check is one comparison of a record, and its conditions: " at 600 rpm, 2.31 A of field".
type check struct {
	wound.Check
	at string
}

// checks are the comparisons of a record. Where nothing was read and nothing is known of the record
// itself, as for volts without their speed, they are those of the trial.
func checks(s *session.Session, i int) []check {
	plan := planOf(s, i)
	if plan < 0 {
		return nil
	}
	var list []check
	r, begun := recordOf(s, i)
	m := &s.Outcome().Machine
	for k, c := range s.Outcome().Checks(plan) {
		rpm, amps := m.TestRPM, m.FieldAmps
		if begun {
			if own := r.Checks()[k]; own.Proof.Read.Known() || own.Proof.Expected.Known() {
				c, rpm, amps = own, r.RPM, r.FieldAmps
			}
		}
		at := ""
		if c.Field == "line" && rpm.Known() {
			at = " at " + s.Text(rpm, quantity.RPM, quantity.AtMost(4)) + fed(s, amps)
		}
		list = append(list, check{c, at})
	}
	return list
}

// fed is the field current of a wound rotor's volts, "" with magnets.
func fed(s *session.Session, amps quantity.Figure) string {
	if s.Job().Field.Kind != job.FieldWound || !amps.Known() {
		return ""
	}
	return ", " + s.Text(amps, quantity.Amps, 3) + " of field"
}

// limits are between what a reading must lie, in words.
func limits(s *session.Session, c check) string {
	low, high, ok := c.Proof.Limits()
	if !ok {
		return ""
	}
	u := s.Units.For(c.Dim)
	return quantity.Screen.Value(u.From(low), u, 3) + " to " + quantity.Screen.Value(u.From(high), u, 3)
}

// manifold is the excess of a reading over its plan, in per cent, from which it is given as a multiple.
const manifold = 150

// off is by how much a reading is off.
func off(c check) string {
	if c.Proof.Off.Value > manifold {
		return quantity.Screen.Number(1+c.Proof.Off.Value/100, quantity.AtMost(2)) + " times the plan"
	}
	word := "high"
	if c.Proof.Stand() == wound.Low {
		word = "low"
	}
	return quantity.Screen.Number(max(c.Proof.Off.Value, -c.Proof.Off.Value), quantity.AtMost(2)) + " % " + word
}

// short is the verdict on a reading, in a few words; "" where nothing was read.
func short(s *session.Session, c check) string {
	switch c.Proof.Stand() {
	case wound.Good:
		return "good, " + limits(s, c)
	case wound.Low, wound.High:
		if c.Proof.Unlike() {
			return off(c) + " and uneven, " + limits(s, c)
		}
		return off(c) + ", " + limits(s, c)
	case wound.Uneven:
		return "a pair " + apart(c) + " allowed"
	case wound.NotHeld:
		if c.Speaks() != "" {
			return quantity.Screen.Number(1+c.Proof.Off.Value/100, quantity.AtMost(2)) + " times the guess"
		}
		return unheld(s, c)
	}
	return ""
}

// apart is how far the pairs are from their mean, and how far they may be.
func apart(c check) string {
	percent := func(part float64) string { return quantity.Screen.Number(100*part, quantity.AtMost(2)) }
	return percent(c.Proof.Apart()) + " % off, " + percent(c.Proof.Even()) + " %"
}

// unheld says why a reading is not compared.
func unheld(s *session.Session, c check) string {
	if c.Proof.Expected.Known() {
		return "not judged: planned " + s.Text(c.Proof.Expected, c.Dim, 3) + " is only a guess"
	}
	return "nothing to compare it with: " + c.Proof.Expected.Why
}

// sentence is the verdict on a reading, in full: what was planned, its limits, and the explanation
// where it is off.
func sentence(s *session.Session, c check) string {
	p := c.Proof
	name := strings.ToUpper(c.Label[:1]) + c.Label[1:] + c.at
	within := limits(s, c)
	if p.Expected.PlusMinus == 0 && within != "" {
		within += ", a tenth each way since its ± is not known"
	}
	read := s.Text(p.Read, c.Dim, 3)
	switch p.Stand() {
	case wound.Good:
		if low, high, _ := p.Limits(); p.Read.Value < low || p.Read.Value > high {
			within += " as near as it was read"
		}
		return fmt.Sprintf("%s: %s lies within %s: good.", name, read, within)
	case wound.Low, wound.High:
		uneven, again := "", ""
		if p.Unlike() {
			uneven = ", and a pair is " + apart(c) + " of the mean is allowed"
			again = " Read each pair again."
		}
		return fmt.Sprintf("%s: %s is %s (%s)%s: %s.%s", name, read, off(c), within, uneven, c.Speaks(), again)
	case wound.Uneven:
		if within == "" {
			return fmt.Sprintf("%s: %s is held against no plan, but a pair is %s of the mean is allowed: %s. Read each pair again.", name, read, apart(c), c.Speaks())
		}
		return fmt.Sprintf("%s: %s lies within %s, but a pair is %s of the mean is allowed: %s. Read each pair again.", name, read, within, apart(c), c.Speaks())
	case wound.NotHeld:
		if c.Speaks() != "" {
			return fmt.Sprintf("%s: %s, planned was a guess of %s; %s.", name, read, s.Text(p.Expected, c.Dim, 3), c.Speaks())
		}
		return fmt.Sprintf("%s: %s; %s.", name, read, unheld(s, c))
	}
	switch {
	case !p.Expected.Known():
		return ""
	case within == "":
		return fmt.Sprintf("%s: planned %s, a guess that sets no limits.", name, s.Text(p.Expected, c.Dim, 3))
	}
	return fmt.Sprintf("%s: planned %s, must lie within %s.", name, s.Text(p.Expected, c.Dim, 3), within)
}

// role is how a reading is shown: what is off is marked.
func role(c check) kit.Role {
	switch c.Proof.Stand() {
	case wound.Low, wound.High, wound.Uneven:
		return kit.Warning
	case wound.Good:
		return kit.Better
	}
	if c.Speaks() != "" {
		return kit.Warning
	}
	return kit.Hint
}

// stands says how far the job has come, and what brings it further.
func stands(s *session.Session) string {
	o := s.Outcome()
	state := "Planned, nothing wound yet."
	switch {
	case len(o.Trials) > 0 && (!o.Trials[s.Trial].Turns.Known() || o.Trials[s.Trial].Wire == ""):
		state = "Trial " + o.Trials[s.Trial].Name + " has no turns or no wire yet, so there is nothing to hold readings against: Trials is where they are chosen."
	case len(o.Trials) > 0:
		state = "Planned, nothing wound yet: f6 begins a record of trial " + o.Trials[s.Trial].Name + "."
	}
	proved := 0
	for i := range o.Wound {
		if o.Wound[i].Proved() {
			proved, state = i+1, "Proved. It counts in what this bench learns: f9 on Shelf."
			continue
		}
		state = "Wound, not proved yet: read ohms and volts, or where charging begins."
		switch r := &o.Wound[i]; {
		case r.CutInRPM.Read.Known():
			state = notProved(s, i)
		case r.LineVolts.Read.Known() && !r.RPM.Known():
			state = "Wound, not proved yet: say at which speed the volts were read."
		case r.LineVolts.Read.Known() && r.LeadOhms20.Read.Known():
			state = notProved(s, i)
		}
	}
	if proved > 0 && proved < len(o.Wound) {
		return fmt.Sprintf("Record %d is proved. The last one: %s", proved, state)
	}
	return state
}

// notProved says which readings prevent a record from being proved.
func notProved(s *session.Session, record int) string {
	names := map[string]string{"lead": "ohms", "line": "volts", "cut_in": "where it begins to charge", "warm": "warmth"}
	var off []string
	for _, c := range checks(s, record) {
		if name := names[c.Field]; name != "" && markOf(c) == kit.Warning {
			off = append(off, name)
		}
	}
	if len(off) == 0 {
		return "Wound, not proved: explain what is far from the plan first."
	}
	return "Wound, not proved: explain " + strings.Join(off, ", ") + " first, marked !."
}

// lines are what was planned and read of a record, in w cells.
func lines(s *session.Session, i, w int) []string {
	t := s.Theme
	out := append(t.WrapPaint(kit.Title, stands(s), w), "")
	list := checks(s, i)
	if list == nil {
		return append(out, t.WrapPaint(kit.Hint, "This record is of no trial of the job.", w)...)
	}
	tb := kit.Table{Columns: []kit.Column{
		{Role: kit.Label, Shrink: true}, {Head: "planned", Align: kit.Point, Role: kit.Value}, {Head: "must lie within", Align: kit.Right}, {Head: "read", Align: kit.Point, Role: kit.Value}, {},
	}}
	for _, c := range list {
		if c.Field == "wire_weight" && !c.Proof.Read.Known() {
			continue // the mean turn goes by it
		}
		u := s.Units.For(c.Dim).Name
		label, _, _ := strings.Cut(c.Label, ",") // the sentence below names the reading; the unit must not be cut off
		planned, read := s.Figure(c.Proof.Expected, c.Dim, 3), s.Figure(c.Proof.Read, c.Dim, 3)
		planned.Unit, read.Unit, planned.Mark, read.Mark = "", "", kit.Plain, kit.Plain
		word := map[wound.Stand]string{wound.Good: "good", wound.Low: "low", wound.High: "high", wound.Uneven: "uneven"}[c.Proof.Stand()]
		tb.Rows = append(tb.Rows, kit.TableRow{Cells: []kit.Cell{{Text: label + c.at + ", " + u}, planned, {Text: limits(s, c)}, read, {Text: word, Role: role(c), Mark: markOf(c)}}})
	}
	out = append(append(out, tb.Lines(t, w)...), "")
	for _, c := range list {
		if c.Proof.Read.Known() {
			out = append(out, t.WrapPaint(role(c), sentence(s, c), w)...)
		}
	}
	return out
}

// markOf marks what is off.
func markOf(c check) kit.Role {
	if role(c) == kit.Warning {
		return kit.Warning
	}
	return kit.Plain
}
