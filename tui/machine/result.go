package machine

import (
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/unit"
)

// line is one figure that follows from the inputs.
type line struct {
	label  string
	figure winding.Figure
	dim    unit.Dimension
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
		{"slot, bare", m.GrossMM2, unit.SquareMM, 3},
		{"liner takes", m.LinerMM2, unit.SquareMM, 2},
		{"wedge takes", m.WedgeMM2, unit.SquareMM, 2},
		{"room for wire", m.NetMM2, unit.SquareMM, 3},
		{"pole pitch", m.PolePitchMM, unit.Millimetres, 3},
		{"flux of a pole", m.FluxMWb, unit.Only("mWb"), 3},
		{"gap flux density", m.GapTesla, unit.Tesla, 2},
	}
	if m.MagnetsAgainstWound.Known() {
		lines = append(lines, line{"magnets instead: volts ×", m.MagnetsAgainstWound, unit.None, 2})
	}
	if o := s.Outcome().Old; o != nil {
		lines = append(lines,
			line{"old: winding factor", o.Kw1, unit.None, 4},
			line{"old: mean turn", o.MeanTurnMM, unit.Millimetres, 3},
			line{"old: lead to lead 20 °C", o.LeadOhms20, unit.Ohms, 3},
			line{"old: V at 1000 rpm", o.LinePer1000RPM, unit.Volts, 3},
			line{"old: charging begins", o.CutInRPM, unit.RPM, 3},
			line{"old: wire fill", o.WireFill, unit.None, 2},
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
		{"turns per drive turn", m.Ratio, unit.None, 3},
		{"… for the speed wanted", m.WantedRatio, unit.None, 3},
		{"alternator pulley for it", m.DrivenMM, unit.Millimetres, 3},
		{"or drive pulley for it", m.DriverMM, unit.Millimetres, 3},
		{"slow", m.SlowRPM, unit.RPM, 3},
		{"usual", m.UsualRPM, unit.RPM, 3},
		{"top", m.TopRPM, unit.RPM, 3},
		{"test", m.TestRPM, unit.RPM, 3},
		{"battery at rest", m.RestVolts, unit.Volts, 3},
		{"absorption", m.AbsorptionVolts, unit.Volts, 3},
		{"charge limit", m.ChargeLimitAmps, unit.Amps, 3},
		{"battery and cable", m.LoadOhms, unit.Ohms, 2},
		{"fuse at the post", m.FuseAmps, unit.Amps, 2},
	})
}
