package machine

import (
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"

	"github.com/charmbracelet/x/ansi"
)

// line is one figure that follows from the inputs, or only a heading.
type line struct {
	heading string

	label  string
	figure quantity.Figure
	dim    quantity.Dimension
	digits int
	// past is set where the figure is past a limit or not to be had, burns where the winding does not
	// survive to give it.
	past, burns bool
}

// lineOf is a row of the comparison for one trial.
func lineOf(r *winding.Row, trial int) line {
	c := &r.Cells[trial]
	return line{label: r.Label, figure: c.Figure, dim: r.Dim, digits: r.Digits, past: c.Verdict == winding.Past, burns: c.Burns}
}

// burns is what stands in place of a figure that the winding does not survive to give.
const burns = "burns"

// lines are figures that no trial changes.
func lines(s *session.Session, ids ...string) []line {
	var out []line
	for _, id := range ids {
		o := winding.MachineOutputOf(id)
		out = append(out, line{label: o.Label, figure: o.OfMachine(&s.Outcome().Machine), dim: o.Dim, digits: o.Digits})
	}
	return out
}

// oldLines are figures of the old winding.
func oldLines(old *winding.TrialOutcome, ids ...string) []line {
	var out []line
	for _, id := range ids {
		o := winding.OutputOf(id)
		out = append(out, line{label: o.Label, figure: o.Of(old), dim: o.Dim, digits: o.Digits})
	}
	return out
}

// draw writes lines as a table, and under it why figures are missing. Where there is no room for both,
// whole names are preferred to ±.
func draw(s *session.Session, w int, lines []line) []string {
	out := table(s, lines, true).Lines(s.Theme, w)
	if !whole(s.Theme, out, lines) {
		out = table(s, lines, false).Lines(s.Theme, w)
	}
	seen := map[string]bool{}
	for _, known := range []bool{false, true} {
		for _, l := range lines {
			if l.figure.Known() == known && l.figure.Why != "" && !seen[l.figure.Why] {
				seen[l.figure.Why] = true
				out = append(out, s.Theme.WrapPaint(kit.Hint, l.label+": "+s.Units.Words(l.figure.Why), w)...)
			}
		}
	}
	return out
}

// table is lines with their units, and with how far they may be off.
func table(s *session.Session, lines []line, spread bool) kit.Table {
	tb := kit.Table{Columns: []kit.Column{{Role: kit.Label, Shrink: true}, {Align: kit.Point, Role: kit.Value}, {Role: kit.Unit}}}
	for _, l := range lines {
		if l.heading != "" {
			tb.Rows = append(tb.Rows, kit.TableRow{Heading: l.heading})
			continue
		}
		cell := s.Figure(l.figure, l.dim, l.digits)
		if cell.Mark == kit.Guessed { // before the figure, as everywhere
			cell.Text, cell.Mark = session.Rough+cell.Text, kit.Plain
		}
		unit := kit.Cell{Text: cell.Unit}
		if cell.Unit = ""; spread && l.figure.Known() && l.figure.PlusMinus > 0 {
			cell.Unit = l.figure.Spread(s.Units.For(l.dim), l.digits) // beside its figure
		}
		if l.past { // as on Trials
			cell.Mark, cell.Role = kit.Broken, kit.Broken
		}
		if l.burns {
			cell, unit = kit.Cell{Text: burns, Mark: kit.Broken, Role: kit.Broken, Word: true}, kit.Cell{}
		}
		tb.Rows = append(tb.Rows, kit.TableRow{Cells: []kit.Cell{{Text: l.label}, cell, unit}})
	}
	return tb
}

// whole reports whether every line has its whole name.
func whole(t kit.Theme, drawn []string, lines []line) bool {
	for i, l := range lines {
		if !strings.Contains(ansi.Strip(drawn[i]), t.Text(l.label)) {
			return false
		}
	}
	return true
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
	list := lines(s, "slot_gross_mm2", "slot_liner_mm2", "slot_wedge_mm2", "slot_net_mm2", "pole_pitch_mm", "flux_per_pole_mwb", "gap_flux_density_t")
	if m.MagnetsAgainstWound.Known() {
		list = append(list, lines(s, "magnets_over_wound")...)
	}
	if old := s.Outcome().Old; old != nil {
		list = append(list, line{heading: "The old winding"})
		list = append(list, oldLines(old, "kw1", "mean_turn_mm", "lead_ohms_20c", "volts_line_rms_per_1000rpm", "cut_in_rpm", "wire_fill")...)
	}
	out := draw(s, w, list)
	if m.FluxFrom != "" {
		out = append(out, s.Theme.WrapPaint(kit.Hint, "Flux from "+m.FluxFrom+".", w)...)
	}
	if m.NextReading != "" {
		out = append(out, s.Theme.WrapPaint(kit.Hint, "Next: "+m.NextReading+".", w)...)
	}
	if m.SlotNote != "" {
		out = append(out, s.Theme.WrapPaint(kit.Hint, strings.ToUpper(m.SlotNote[:1])+m.SlotNote[1:]+".", w)...)
	}
	return out
}

// DriveFollows is what follows from the inputs of the Drive screen.
func DriveFollows(s *session.Session, w int) []string {
	return drawKnown(s, w, lines(s, "drive_ratio", "wanted_ratio", "driven_pulley_for_wanted_ratio_mm", "driver_pulley_for_wanted_ratio_mm", "driven_teeth_for_wanted_ratio",
		"slow_rpm", "usual_rpm", "top_rpm", "test_rpm", "battery_rest_v", "battery_absorption_v", "battery_charge_limit_a", "battery_and_cable_ohms", "fuse_a"))
}
