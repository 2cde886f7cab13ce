package wound

import (
	"fmt"
	"slices"
	"strings"

	"slotwright/tui/form"
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"
)

// or are other fields that can give what a field's check is made of.
var or = map[string]string{"wire_weight": "wire_length", "warm_lead": "warm"}

// beside adds to a row what was planned for its input, its limits and the verdict on the reading,
// abbreviated where room is short: the box of the marked row has all of it. It reports whether the row
// is shown.
func (v *View) beside(s *session.Session, row *form.Row) bool {
	row.Note, row.Uncut = "", false // what is read says itself in the units liked
	shown := beside(s, row)
	row.Few = inFew(row.Note)
	if v.at.W < narrow {
		row.Note = row.Few
	}
	return shown
}

// inFew is the short form of what is beside a value, for a narrow screen: for a reading the verdict,
// for a plan its limits where it has any.
func inFew(note string) string {
	first, rest, several := strings.Cut(strings.NewReplacer("rise per watt ", "", "plan fill ", "plan ").Replace(note), ", ")
	low, high, limited := strings.Cut(rest, " to ")
	switch planned := strings.HasPrefix(first, "plan "); {
	case strings.HasPrefix(first, "not judged"):
		return "not judged"
	case strings.HasPrefix(first, "nothing to hold"):
		return "no plan"
	case planned && several && limited:
		if strings.Contains(high, " ") { // a unit other than the field's: limits with it have no room
			return strings.TrimPrefix(first, "plan ")
		}
		return low + "–" + high
	case planned && several:
		return rest
	}
	if wire := strings.ReplaceAll(first, " × ", "×"); wire != first { // of whole words the wire says most
		return strings.TrimPrefix(wire, "plan ")
	}
	if kit.Width(first) >= len("plan 0.781 kg") {
		return strings.TrimPrefix(first, "plan ") // a unit says more than that word
	}
	return first
}

func beside(s *session.Session, row *form.Row) bool {
	table, i, field := job.SplitPath(row.ID)
	if table != "wound" || field == "" {
		return true
	}
	if !counts(s, i, field) && row.Text == "" {
		return false
	}
	r, begun := recordOf(s, i)
	if !begun {
		row.Group = "The next record"
	}
	if plan := planOf(s, i); plan >= 0 {
		besidePlan(row, field, &s.Outcome().Trials[plan], r, s)
	}
	list, typed := checks(s, i), row.Text != ""
	by := or[field]
	if slices.ContainsFunc(list, func(c check) bool { return c.Field == field && c.Proof.Read.Known() }) {
		by = "" // it is held against a plan of its own
	}
	for _, c := range list {
		own := c.Field == field && (typed || !c.Proof.Read.Known())
		if own && by == "" || own && !typed || typed && c.Field == by {
			besideCheck(s, row, c)
		}
	}
	return true
}

// counts reports whether a field of a record applies: strands, enamel and metal belong to a wire of the
// record's own, turns by coil to unequal coils, circuits to a layout that allows several; span, layers
// and kind are shown where they are given.
func counts(s *session.Session, i int, field string) bool {
	j := s.Job()
	switch field {
	case "strands", "also_gauge", "build", "metal":
		return i < len(j.AsWound) && !j.AsWound[i].Gauge.IsZero()
	case "also_strands":
		return i < len(j.AsWound) && !j.AsWound[i].AlsoGauge.IsZero()
	case "coil_turns":
		return s.Trial < len(j.Trials) && len(j.Trials[s.Trial].CoilTurns) > 0
	case "circuits":
		plan := planOf(s, i)
		return plan >= 0 && len(s.Outcome().Trials[plan].CircuitChoices) > 1
	case "span", "layers", "kind":
		return false
	}
	return true
}

// besidePlan is for what is counted: trial, turns, wire, how full.
func besidePlan(row *form.Row, field string, plan *winding.TrialOutcome, r *wound.Record, s *session.Session) {
	switch field {
	case "trial":
		for i := range s.Outcome().Trials {
			row.Choices = append(row.Choices, s.Outcome().Trials[i].Name)
		}
		if r == nil {
			row.Ghost = plan.Name + ", chosen"
		}
	case "turns":
		row.Note, row.NoteAs = turns(plan, r), kit.Hint
	case "gauge":
		if plan.Wire != "" {
			row.Note, row.NoteAs = "plan "+plan.Wire, kit.Hint
		}
	case "connection", "circuits", "span", "layers", "kind":
		if plan.Turns.Known() {
			joins := map[string]string{
				"connection": plan.Connection.String(), "circuits": fmt.Sprint(plan.Circuits),
				"span": fmt.Sprint(plan.Span), "layers": fmt.Sprint(plan.Layers), "kind": plan.Kind,
			}
			row.Note, row.NoteAs = "plan "+joins[field], kit.Hint
		}
	case "field":
		if amps := s.Outcome().Machine.FieldAmps; amps.Known() {
			row.Note, row.NoteAs = "plan "+s.Text(amps, quantity.Amps, 3), kit.Hint
		}
	case "cut_in":
		if amps := s.Outcome().Machine.FieldAmps; amps.Known() {
			row.Help += " Planned with " + s.Text(amps, quantity.Amps, 3) + " in the rotor."
		}
	case "wire_length":
		row.Note, row.NoteAs = used(s, plan.Used(), quantity.Metres), kit.Hint
	case "wire_weight":
		row.Note, row.NoteAs = used(s, plan.CopperKg, quantity.Kilograms), kit.Hint
	case "filled":
		row.NoteAs = kit.Hint
		if plan.WireFill.Known() {
			row.Note = "plan fill " + s.Text(plan.WireFill, quantity.None, 2)
		}
		if r != nil && r.WireFill.Known() && r.WireFill.Value != plan.WireFill.Value {
			row.Note = "fill " + s.Text(r.WireFill, quantity.None, 2) + ", plan " + s.Text(plan.WireFill, quantity.None, 2)
		}
	}
}

// used is the planned wire, as it is read off the spools or the scales.
func used(s *session.Session, planned quantity.Figure, dim quantity.Dimension) string {
	if !planned.Known() {
		return ""
	}
	return "plan " + s.Text(planned, dim, 3)
}

// turns is the planned turns, and how many more or fewer were put in.
func turns(plan *winding.TrialOutcome, r *wound.Record) string {
	if !plan.Turns.Known() {
		return ""
	}
	text := "plan " + quantity.Screen.Number(plan.Turns.Value, 0)
	if r == nil || !r.Turns.Known() {
		return text
	}
	switch more := r.Turns.Value - plan.Turns.Value; {
	case more > 0:
		return text + ", " + quantity.Screen.Number(more, 0) + " more"
	case more < 0:
		return text + ", " + quantity.Screen.Number(-more, 0) + " fewer"
	}
	return text
}

// besideCheck is for what is read. Where that is another quantity than what was typed, as the rise per
// watt for a temperature, it is named. The mean turn is as far off as the wire it follows from: there
// the verdict precedes the planned wire, and the limits of the mean turn are in the sentence.
func besideCheck(s *session.Session, row *form.Row, c check) {
	name := ""
	if c.Field == "warm" {
		name, _, _ = strings.Cut(c.Label, ",")
		name += " "
	}
	planned := row.Note
	if text := short(s, c); text != "" {
		if planned != "" {
			text, _, _ = strings.Cut(text, ",")
			planned = ", " + planned
		}
		row.Note = name + text + planned
	} else if c.Proof.Expected.Known() && planned == "" {
		row.Note = "plan " + name + s.Text(c.Proof.Expected, c.Dim, 3)
		if within := limits(s, c); within != "" {
			if row.Note += ", " + within; name != "" { // of another unit than the field's
				row.Note += " " + s.Units.For(c.Dim).Name
			}
		}
	}
	row.NoteAs = role(c)
	if c.Speaks() != "" {
		row.Warning = "" // its finding says the same in other words
	}
	if text := sentence(s, c); text != "" {
		row.Help = text + " " + row.Help
	}
}
