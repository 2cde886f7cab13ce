package drive

import (
	"fmt"

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

// drawAnswers is the curve over the sentences and the table.
func (v *View) drawAnswers(s *session.Session, r kit.Rect) []kit.Block {
	t := s.Theme
	chartH := max(9, min(r.H*2/5, 20))
	top, rest := r.SplitTop(chartH)
	in := kit.Inner(rest)
	v.bodyH = in.H
	text := v.words(s, in.W-2)
	v.scroll.Top = max(0, min(v.scroll.Top, len(text)-in.H))
	return []kit.Block{
		kit.Bare(t, top, v.curve(s, top.W, top.H)),
		kit.Panel{Title: "What each trial makes of it", Note: "ctrl+g, then ↓ reads on", Focused: v.answers}.
			Draw(t, rest, v.scroll.Window(t, text, in.W, in.H)),
	}
}

// curve is amps or watts of every trial against wind or drive speed.
func (v *View) curve(s *session.Session, w, h int) []string {
	o := s.Outcome()
	c := chart.Chart{Width: w, Height: h, X: chart.Axis{Label: "drive speed", Unit: "rpm", Zero: true}, Y: chart.Axis{Label: "into the battery", Unit: "A", Zero: true}}
	u := quantity.RPM[0]
	if s.Job().Drive.Kind == "wind" {
		u = quantity.WindSpeed[0]
		c.X = chart.Axis{Label: "wind", Unit: u.Name}
	}
	if v.watts {
		c.Y.Unit = "W"
	}
	any := false
	for i := range o.Trials {
		tr := &o.Trials[i]
		series := chart.Series{Letter: letter(tr.Name), Name: session.Number(tr.Turns.Value, 0) + " of " + tr.Wire}
		for _, p := range tr.Points {
			y := p.AmpsDC
			if v.watts {
				y = p.BatteryWatts
			}
			series.Points = append(series.Points, chart.XY{X: u.From(p.X), Y: y})
			any = true
		}
		c.Series = append(c.Series, series)
		if tr.StartsAt.Known() {
			c.Markers = append(c.Markers, chart.Marker{X: tr.StartsAt.Value, Y: 0, Label: "", Role: kit.Series(i)})
		}
	}
	if v.watts && s.Job().Drive.Kind != "wind" && any {
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
		for _, m := range o.Mends {
			out = append(out, t.WrapPaint(kit.Hint, "   would help: "+m, w)...)
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

// row is one figure of every trial.
type row struct {
	label string
	dim   quantity.Dimension
	dig   int
	get   func(*winding.TrialOutcome) quantity.Figure
}

func rows(s *session.Session) []row {
	x := quantity.RPM
	if s.Job().Drive.Kind == "wind" {
		x = quantity.WindSpeed
	}
	list := []row{
		{"charges from", x, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.StartsAt }},
		{"a year's energy", quantity.Only("kWh"), 3, func(t *winding.TrialOutcome) quantity.Figure { return t.YearKWh }},
		{"full power: alternator", quantity.RPM, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.RunRPM }},
		{"full power: amps", quantity.Amps, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.RunAmps }},
		{"open at top speed", quantity.Volts, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.OpenAtTopVolts }},
		{"open in the gale", quantity.Volts, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.OpenAtGaleVolts }},
		{"brake: lead current", quantity.Amps, 3, func(t *winding.TrialOutcome) quantity.Figure { return brake(t, t.Brake.LeadAmps) }},
		{"brake: torque", quantity.Torque, 2, func(t *winding.TrialOutcome) quantity.Figure { return brake(t, t.Brake.TorqueNm) }},
		{"brake: seconds to class", quantity.Only("s"), 2, func(t *winding.TrialOutcome) quantity.Figure { return t.BrakeSeconds }},
		{"dump load, battery full", quantity.Ohms, 2, func(t *winding.TrialOutcome) quantity.Figure { return t.DumpOhms }},
		{"… and its watts", quantity.Watts, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.DumpWatts }},
		{"over charge limit by", quantity.Amps, 2, above},
		{"field takes", quantity.Watts, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.FieldWatts }},
		{"net of field, usual", quantity.Watts, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.NetUsual }},
		{"field to hold, slow", quantity.Amps, 2, func(t *winding.TrialOutcome) quantity.Figure { return holds(t, 0) }},
		{"field to hold, usual", quantity.Amps, 2, func(t *winding.TrialOutcome) quantity.Figure { return holds(t, 1) }},
		{"field to hold, top", quantity.Amps, 2, func(t *winding.TrialOutcome) quantity.Figure { return holds(t, 2) }},
		{"field at a loss below", quantity.RPM, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.BreakEvenRPM }},
		{"excites itself from", quantity.RPM, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.ExciteBuildRPM }},
		{"… and holds to", quantity.RPM, 3, func(t *winding.TrialOutcome) quantity.Figure { return t.ExciteHoldRPM }},
	}
	return list
}

// holds is the field current that holds the regulated voltage at the slow, usual or top
// speed; nothing where full field does not.
func holds(t *winding.TrialOutcome, i int) quantity.Figure {
	if i >= len(t.FieldPoints) || !t.FieldPoints[i].Enough {
		return quantity.Figure{}
	}
	f := t.FieldWatts
	f.Value = t.FieldPoints[i].HoldAmps
	return f
}

// above is how far the battery's charge limit is passed; nothing when it is not.
func above(t *winding.TrialOutcome) quantity.Figure {
	if t.OverChargeAmps.Value <= 0 {
		return quantity.Figure{}
	}
	return t.OverChargeAmps
}

// brake is a figure of the short-circuit brake, known when its time is.
func brake(t *winding.TrialOutcome, v float64) quantity.Figure {
	f := t.BrakeSeconds
	if f.Known() {
		f.Value = v
	}
	return f
}

// table is the rows that any trial knows.
func (v *View) table(s *session.Session) kit.Table {
	o := s.Outcome()
	tb := kit.Table{Columns: []kit.Column{{Role: kit.Label, Shrink: true}}}
	for i := range o.Trials {
		tb.Columns = append(tb.Columns, kit.Column{Head: o.Trials[i].Name, Align: kit.Point, Role: kit.Value})
	}
	for _, r := range rows(s) {
		cells, any := []kit.Cell{{Text: r.label}}, false
		for i := range o.Trials {
			f := r.get(&o.Trials[i])
			any = any || f.Known()
			cells = append(cells, s.Figure(f, r.dim, r.dig))
		}
		if any {
			tb.Rows = append(tb.Rows, kit.TableRow{Cells: cells})
		}
	}
	return tb
}

// worst is the caution about joining leads.
func worst(s *session.Session) string {
	return fmt.Sprintf("Brake: all leads joined at the top speed. It heats the winding; hold it no longer than that, and below the speed of greatest torque it may not hold at all. Battery at rest %s, absorption %s.",
		s.Text(s.Outcome().Machine.RestVolts, quantity.Volts, 3), s.Text(s.Outcome().Machine.AbsorptionVolts, quantity.Volts, 3))
}
