package curves

import (
	"math"
	"slices"

	"slotwright/tui/chart"
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"

	"github.com/charmbracelet/x/ansi"
)

// Amps draws the net amps of all trials against speed in w by h cells, with the marks of where each
// begins, really runs and reaches its limit: the chart of this screen without its cursor.
func Amps(s *session.Session, w, h int) []string {
	switch {
	case endOf(s) <= 0:
		return nothing(s, w)
	case w < 24 || h < 7:
		return s.Theme.WrapPaint(kit.Hint, "no room for the curves", w)
	}
	v := New()
	v.still = true
	return v.picture(s, w, h)
}

// picture is the chart of the chosen quantity.
func (v *View) picture(s *session.Session, w, h int) []string {
	short := h < roomy
	crowded := short && len(s.Outcome().Trials) > 2
	q, names := v.now(), letters(s)
	cursor := v.cursor(s)
	end := endOf(s)
	ch := chart.Chart{
		Width: w, Height: h,
		X: chart.Axis{Label: "alternator speed", Unit: "rpm", Min: 0, Max: end},
		Y: chart.Axis{Label: v.axis(s), Shorter: v.shorterAxis(s), Unit: q.unit(s).Name, Zero: v.quantity != ofWinding},
	}
	if !v.still {
		ch.Cursor = &chart.Cursor{X: cursor, Label: rpmText(cursor) + " rpm"}
	}
	for i := range s.Outcome().Trials {
		ch.Series = append(ch.Series, v.series(s, i, crowded))
		for _, m := range v.markers(s, i, names) {
			if crowded && i != s.Trial {
				m.Label = "" // the mark stays; the chosen trial's are named
			}
			ch.Markers = append(ch.Markers, m)
		}
	}
	if slices.ContainsFunc(ch.Series, func(l chart.Series) bool { return len(l.Thin) > 0 }) {
		ch.Series = append(ch.Series, chart.Series{Name: "past a limit", Thin: [][2]float64{{0, end}}, Role: kit.Dim})
	}
	for _, sp := range speedsOf(s, false) {
		ch.VLines = append(ch.VLines, chart.Limit{At: sp.rpm, Label: sp.name + " " + rpmText(sp.rpm)})
	}
	ch.HLines = v.levels(s)
	if !short || h < 1 {
		return ch.Lines(s.Theme)
	}
	// The last row has only the axis' title: its unit moves next to the figures instead.
	ch.Height++
	lines := ch.Lines(s.Theme)[:h]
	room := w - len(shortUnit) - 1
	figures := ansi.Truncate(lines[h-1], wholeFigures(ansi.Strip(lines[h-1]), room-1), "")
	lines[h-1] = s.Theme.Fit(figures, room) + " " + s.Theme.Paint(kit.Label, shortUnit)
	return lines
}

// wholeFigures is how many of w cells a line of uncut figures takes.
func wholeFigures(line string, w int) int {
	cells := []rune(line)
	for w > 0 && w < len(cells) && (cells[w-1] != ' ' && cells[w] != ' ') {
		w--
	}
	return max(0, min(w, len(cells)))
}

// series is a trial's curve, thin wherever the winding does not withstand the current and nowhere else.
// An empty one only keeps its place, so that the others keep their colours.
func (v *View) series(s *session.Session, i int, crowded bool) chart.Series {
	t := &s.Outcome().Trials[i]
	if empty(t) {
		return chart.Series{}
	}
	line := chart.Series{Letter: letters(s)[i], Name: seriesName(s, i, crowded), Short: seriesName(s, i, true), Points: v.points(s, t), Chosen: i == s.Trial}
	if v.quantity != ofOpenVolts { // nothing flows there
		for _, of := range t.NotWithstood(&s.Outcome().Machine) {
			line.Thin = append(line.Thin, [2]float64{of.From, of.To})
		}
	}
	return line
}

// empty reports whether a trial has neither turns nor a wire yet.
func empty(t *winding.TrialOutcome) bool { return !t.Turns.Known() && t.Wire == "" }

// shortUnit is the speeds' unit beside the figures: the alternator's.
const shortUnit = "alt. rpm"

// roomy is the height from which a chart keeps a row for its axis' title, and all its marks are named
// where there are more than two trials.
const roomy = 16

// points are a trial's curve with gaps where a value is undefined: the current in a winding without a
// steady temperature, a temperature that is not known.
func (v *View) points(s *session.Session, t *winding.TrialOutcome) []chart.XY {
	if !hasCurve(t) {
		return nil
	}
	q := v.now()
	out := make([]chart.XY, 0, len(t.Curve))
	for _, p := range t.Curve {
		y := q.value(s, p)
		if p.TooHot && v.quantity != ofOpenVolts || v.quantity == ofWinding && !followed(t) || q.charging && p.AmpsDC == 0 && !t.CutInRPM.Known() {
			y = math.NaN()
		}
		out = append(out, chart.XY{X: p.RPM, Y: y})
	}
	return out
}

// followed reports whether the winding's temperature is worked out at all.
func followed(t *winding.TrialOutcome) bool {
	return t.HotSlowC.Known() || t.HotUsualC.Known() || t.HotTopC.Known()
}

// axis names the quantity and what every curve of it is for.
func (v *View) axis(s *session.Session) string {
	if v.quantity == ofOpenVolts {
		return v.now().axis
	}
	return v.now().axis + ", " + held(s)
}

// shorterAxis is the same in fewer words.
func (v *View) shorterAxis(s *session.Session) []string {
	if v.quantity == ofOpenVolts {
		return nil
	}
	volts := s.Text(s.Outcome().Machine.ChargingVolts, quantity.Volts, 3)
	return []string{v.now().axis + ", held, battery at " + volts, v.now().axis + ", held, " + volts, v.now().axis}
}

// held says what the curves are for: a held speed, not where a trial really runs.
func held(s *session.Session) string {
	return "held at that speed, battery at " + s.Text(s.Outcome().Machine.ChargingVolts, quantity.Volts, 3)
}

// seriesName is a trial in the legend: its turns, and its wire where there is room.
func seriesName(s *session.Session, i int, crowded bool) string {
	t := &s.Outcome().Trials[i]
	if !hasCurve(t) {
		return "no curve yet"
	}
	if t.Turns.Known() && crowded {
		return quantity.Screen.Number(t.Turns.Value, 0) + " turns"
	}
	return s.WoundAs(i)
}

// markers are a trial's cut-in, its crossing with the reference, its current limit, and
// where it really runs in the usual condition of the drive.
func (v *View) markers(s *session.Session, i int, names []string) []chart.Marker {
	t := &s.Outcome().Trials[i]
	if !hasCurve(t) || v.quantity == ofWinding && !followed(t) {
		return nil
	}
	q := v.now()
	var out []chart.Marker
	add := func(f quantity.Figure, label string, role kit.Role) {
		if !f.Known() || f.Value > endOf(s) {
			return
		}
		p, ok := pointAt(s, i, f.Value)
		if !ok || v.quantity == ofWinding && p.TooHot {
			return
		}
		out = append(out, chart.Marker{X: f.Value, Y: q.value(s, p), Label: label, Role: role})
	}
	add(t.CutInRPM, names[i]+" from "+rpmText(t.CutInRPM.Value), kit.Series(i))
	if v.quantity <= ofWatts {
		ref := s.Outcome().Reference
		add(t.CrossRPM, names[i]+"="+names[ref]+" "+rpmText(t.CrossRPM.Value), kit.Value)
	}
	if s.Job().Drive.Kind != "" {
		add(t.RunsUsual, names[i]+" runs "+rpmText(t.RunsUsual.Value), kit.Series(i))
	}
	add(t.LimitRPM, names[i]+" limit "+s.Text(t.LimitAmps, quantity.Amps, 2), kit.Warning)
	return out
}

// levels are the lines across the chart.
func (v *View) levels(s *session.Session) []chart.Limit {
	o := s.Outcome()
	switch v.quantity {
	case ofAmps: // the blanks round each label separate it from its line
		if wanted := s.Job().Target.Amps; wanted.Given() {
			return []chart.Limit{{At: wanted.Value, Label: " wanted " + quantity.Screen.Number(wanted.Value, 2) + " A "}}
		}
	case ofWinding:
		limit := o.Machine.MeanLimitC
		at := s.Units.For(quantity.Celsius).From(limit.Value)
		return []chart.Limit{{At: at, Label: " class " + o.Machine.ThermalClass + " mean " + s.Text(limit, quantity.Celsius, 3) + " ", Role: kit.Broken}}
	case ofOpenVolts:
		if o.Machine.RestVolts.Known() {
			return []chart.Limit{{At: o.Machine.RestVolts.Value, Label: " battery at rest " + s.Text(o.Machine.RestVolts, quantity.Volts, 3) + " "}}
		}
	}
	return nil
}

// rpmText is a speed in whole rpm.
func rpmText(rpm float64) string { return quantity.Screen.Number(math.Round(rpm), 0) }
