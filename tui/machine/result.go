package machine

import (
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/quantity"
)

// line is one figure that follows from the inputs.
type line struct {
	label  string
	figure quantity.Figure
	dim    quantity.Dimension
	digits int
}

// draw writes lines as a table, and under it why figures are missing.
func draw(s *session.Session, w int, lines []line) []string {
	tb := kit.Table{Columns: []kit.Column{{Role: kit.Label, Shrink: true}, {Align: kit.Point, Role: kit.Value}}}
	var why []string
	seen := map[string]bool{}
	for _, l := range lines {
		cell := s.Figure(l.figure, l.dim, l.digits)
		if pm := l.figure.PlusMinus; l.figure.Known() && pm > 0 {
			cell.Unit += " ±" + session.Number(s.Units.For(l.dim).From(pm)-s.Units.For(l.dim).From(0), 2)
		}
		tb.Rows = append(tb.Rows, kit.TableRow{Cells: []kit.Cell{{Text: l.label}, cell}})
		if !l.figure.Known() && l.figure.Why != "" && !seen[l.figure.Why] {
			seen[l.figure.Why] = true
			why = append(why, l.label+": "+l.figure.Why)
		}
	}
	out := tb.Lines(s.Theme, w)
	for _, text := range why {
		out = append(out, s.Theme.WrapPaint(kit.Hint, text, w)...)
	}
	for _, l := range lines {
		if l.figure.Known() && l.figure.Why != "" && !seen[l.figure.Why] {
			seen[l.figure.Why] = true
			out = append(out, s.Theme.WrapPaint(kit.Hint, l.label+": "+l.figure.Why, w)...)
		}
	}
	return out
}

// drawKnown leaves out what is not known.
func drawKnown(s *session.Session, w int, lines []line) []string {
	var known []line
	for _, l := range lines {
		if l.figure.Known() {
			known = append(known, l)
		}
	}
	return draw(s, w, known)
}

func machineResult(s *session.Session, w int) []string {
	m := s.Outcome().Machine
	lines := []line{
		{"slot, bare", m.GrossMM2, quantity.SquareMM, 3},
		{"liner takes", m.LinerMM2, quantity.SquareMM, 2},
		{"wedge takes", m.WedgeMM2, quantity.SquareMM, 2},
		{"room for wire", m.NetMM2, quantity.SquareMM, 3},
		{"pole pitch", m.PolePitchMM, quantity.Millimetres, 3},
		{"flux of a pole", m.FluxMWb, quantity.Only("mWb"), 3},
		{"gap flux density", m.GapTesla, quantity.Tesla, 2},
	}
	if m.MagnetsAgainstWound.Known() {
		lines = append(lines, line{"magnets instead: volts ×", m.MagnetsAgainstWound, quantity.None, 2})
	}
	if o := s.Outcome().Old; o != nil {
		lines = append(lines,
			line{"old: winding factor", o.Kw1, quantity.None, 4},
			line{"old: mean turn", o.MeanTurnMM, quantity.Millimetres, 3},
			line{"old: lead to lead 20 °C", o.LeadOhms20, quantity.Ohms, 3},
			line{"old: V at 1000 rpm", o.LinePer1000RPM, quantity.Volts, 3},
			line{"old: charging begins", o.CutInRPM, quantity.RPM, 3},
			line{"old: wire fill", o.WireFill, quantity.None, 2},
		)
	}
	out := draw(s, w, lines)
	if m.FluxFrom != "" {
		out = append(out, s.Theme.WrapPaint(kit.Hint, "Flux from "+m.FluxFrom+".", w)...)
	}
	if m.SlotNote != "" {
		out = append(out, s.Theme.WrapPaint(kit.Hint, m.SlotNote, w)...)
	}
	return out
}

// DriveFollows is what follows from the inputs of the Drive screen.
func DriveFollows(s *session.Session, w int) []string {
	m := s.Outcome().Machine
	return drawKnown(s, w, []line{
		{"turns per drive turn", m.Ratio, quantity.None, 3},
		{"… for the speed wanted", m.WantedRatio, quantity.None, 3},
		{"alternator pulley for it", m.DrivenMM, quantity.Millimetres, 3},
		{"or drive pulley for it", m.DriverMM, quantity.Millimetres, 3},
		{"slow", m.SlowRPM, quantity.RPM, 3},
		{"usual", m.UsualRPM, quantity.RPM, 3},
		{"top", m.TopRPM, quantity.RPM, 3},
		{"test", m.TestRPM, quantity.RPM, 3},
		{"battery at rest", m.RestVolts, quantity.Volts, 3},
		{"absorption", m.AbsorptionVolts, quantity.Volts, 3},
		{"charge limit", m.ChargeLimitAmps, quantity.Amps, 3},
		{"battery and cable", m.LoadOhms, quantity.Ohms, 2},
		{"fuse at the post", m.FuseAmps, quantity.Amps, 2},
	})
}
