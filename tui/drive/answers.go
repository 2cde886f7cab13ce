package drive

import (
	"fmt"
	"slices"

	"slotwright/tui/chart"
	"slotwright/tui/kit"
	"slotwright/tui/machine"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// sentence is how a trial suits the drive, or why nobody knows.
func sentence(o *winding.TrialOutcome) string {
	if o.Suits != "" {
		return o.Suits
	}
	if o.NoCharging != "" {
		return "not known: " + o.NoCharging
	}
	return "not known: " + o.StartsAt.Why
}

// answerAreas are the curve's rectangle and that of the box under it.
func answerAreas(r kit.Rect) (curve, box kit.Rect) {
	return r.SplitTop(max(9, min(r.H*2/5, 20)))
}

// drawAnswers is the curve over the sentences and the table.
func (v *View) drawAnswers(s *session.Session, r kit.Rect) []kit.Block {
	t := s.Theme
	top, box := answerAreas(r)
	in := kit.Inner(box)
	return []kit.Block{
		kit.Bare(t, top, v.curve(s, top.W, top.H)),
		kit.Panel{Title: "What each trial makes of it", Note: "ctrl+g, then ↓ reads on", Focused: v.answers}.
			Draw(t, box, v.scroll.Window(t, v.text, in.W, in.H)),
	}
}

// curve is net amps or watts of every trial against wind or drive speed.
func (v *View) curve(s *session.Session, w, h int) []string {
	o := s.Outcome()
	c := chart.Chart{Width: w, Height: h, X: chart.Axis{Label: "drive speed", Unit: "rpm", Zero: true}, Y: chart.Axis{Label: "net into the battery", Unit: "A", Zero: true}}
	u := quantity.RPM[0]
	if windy(s) {
		u = quantity.WindSpeed[0]
		c.X = chart.Axis{Label: "wind", Unit: u.Name}
	}
	if v.watts {
		c.Y.Unit = "W"
	}
	any := false
	for i := range o.Trials {
		tr := &o.Trials[i]
		series := chart.Series{Letter: letter(tr.Name), Name: quantity.Screen.Number(tr.Turns.Value, 0) + " of " + tr.Wire}
		for _, p := range tr.Points {
			y := p.NetAmps
			if v.watts {
				y = p.NetWatts
			}
			series.Points = append(series.Points, chart.XY{X: u.From(p.X), Y: y})
			any = true
		}
		c.Series = append(c.Series, series)
		if tr.StartsAt.Known() && len(tr.Points) > 0 {
			c.Markers = append(c.Markers, chart.Marker{X: u.From(tr.StartsAt.Value), Y: v.atStart(tr), Label: "", Role: kit.Series(i)})
		}
	}
	if v.watts && !windy(s) && any {
		gives := chart.Series{Letter: "=", Name: "drive gives"}
		for _, p := range o.Trials[0].Points {
			if p.GivesWatts > 0 {
				gives.Points = append(gives.Points, chart.XY{X: p.X, Y: p.GivesWatts})
			}
		}
		c.Series = append(c.Series, gives)
	}
	if !any {
		return s.Theme.WrapPaint(kit.Hint, "No curve yet. "+firstReason(o), w)
	}
	return c.Lines(s.Theme)
}

// atStart is what the curve is at where charging begins: nothing comes in, and the rotor
// takes what it takes.
func (v *View) atStart(o *winding.TrialOutcome) float64 {
	p := o.Points[0]
	for _, next := range o.Points {
		if next.X > o.StartsAt.Value {
			break
		}
		p = next
	}
	if v.watts {
		return p.NetWatts
	}
	return p.NetAmps
}

func letter(name string) string {
	for _, r := range name {
		return string(r)
	}
	return "?"
}

func firstReason(o *winding.Outcome) string {
	for i := range o.Trials {
		return sentence(&o.Trials[i])
	}
	return "There is no trial."
}

// words is the sentences and the table.
func (v *View) words(s *session.Session, w int) []string {
	t := s.Theme
	var out []string
	for i := range s.Outcome().Trials {
		o := &s.Outcome().Trials[i]
		out = append(out, t.Wrap(o.Name+": "+sentence(o)+".", w)...)
		if o.Mend != "" {
			out = append(out, t.WrapPaint(kit.Hint, "   would do better: "+o.Mend, w)...)
		}
	}
	if len(out) == 0 {
		return out
	}
	out = append(out, "")
	out = append(out, v.table(s).Lines(t, w)...)
	out = append(out, "")
	out = append(out, machine.DriveFollows(s, w)...)
	out = append(out, "")
	out = append(out, t.WrapPaint(kit.Hint, worst(s), w)...)
	return out
}

// table is the rows that any trial knows.
func (v *View) table(s *session.Session) kit.Table {
	o := s.Outcome()
	tb := kit.Table{Columns: []kit.Column{{Role: kit.Label, Shrink: true}}}
	for i := range o.Trials {
		tb.Columns = append(tb.Columns, kit.Column{Head: o.Trials[i].Name, Align: kit.Point, Role: kit.Value})
	}
	for _, f := range winding.Outputs() {
		if f.Show == winding.InDrive || f.ID == "year_kwh" || f.ID == "volts_dc_open_top" {
			if r := o.Row(&f, windy(s)); anyKnown(r) {
				tb.Rows = append(tb.Rows, tableRow(s, &r))
			}
		}
	}
	return tb
}

// tableRow is one figure of every trial.
func tableRow(s *session.Session, r *winding.Row) kit.TableRow {
	label := r.Label
	if u := s.Units.For(r.Dim).Name; u != "" {
		label += ", " + u // once, so that three trials have room beside it
	}
	cells := []kit.Cell{{Text: label}}
	for _, c := range r.Cells {
		cell := s.Figure(c.Figure, r.Dim, r.Digits)
		cell.Unit = ""
		if c.Verdict == winding.Past {
			cell.Mark = kit.Broken
		}
		cells = append(cells, cell)
	}
	return kit.TableRow{Cells: cells}
}

// anyKnown reports whether a trial has the figure.
func anyKnown(r winding.Row) bool {
	return slices.ContainsFunc(r.Cells, func(c winding.Cell) bool { return c.Figure.Known() })
}

// windy reports whether the wind is the drive.
func windy(s *session.Session) bool { return s.Job().Drive.Kind == "wind" }

// worst is the caution about joining leads: what they stop, and that it heats.
func worst(s *session.Session) string {
	text := "Brake: all leads joined at the top speed. "
	for i := range s.Outcome().Trials {
		text += stops(s, &s.Outcome().Trials[i])
	}
	m := &s.Outcome().Machine
	return text + fmt.Sprintf("It heats the winding: hold it no longer than to the class limit. Above the speed of most torque the leads hold less and less. Battery at rest %s, charging %s, absorption %s.",
		s.Text(m.RestVolts, quantity.Volts, 3), s.Text(m.ChargingVolts, quantity.Volts, 3), s.Text(m.AbsorptionVolts, quantity.Volts, 3))
}

// stops says up to what joined leads stop a turning shaft; "" where nobody knows.
func stops(s *session.Session, o *winding.TrialOutcome) string {
	f := winding.OutputOf("brake_stops_to_x_cold")
	if !o.StopsCold.Known() || !o.StopsHot.Known() {
		return ""
	}
	of := "a drive of"
	if windy(s) {
		of = "a turning rotor in"
	}
	up := func(fig quantity.Figure) string { return s.Text(fig, f.DimFor(windy(s)), f.Digits) }
	return fmt.Sprintf("%s: joined leads stop %s up to %s with a cold winding, %s with a hot one. ", o.Name, of, up(o.StopsCold), up(o.StopsHot))
}
