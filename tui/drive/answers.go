package drive

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slotwright/tui/chart"
	"slotwright/tui/kit"
	"slotwright/tui/machine"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/charmbracelet/x/ansi"
)

// sentence is how a trial suits the drive, or why that is unknown; one that cannot be wound says that
// first.
func sentence(o *winding.TrialOutcome) string {
	if why := o.CannotBeWound(); why != "" {
		return "cannot be wound, it " + why + "; if it could: " + suits(o)
	}
	return suits(o)
}

// suits is sentence for a trial that fits.
func suits(o *winding.TrialOutcome) string {
	if o.Suits != "" {
		return o.Suits
	}
	if o.NoCharging != "" {
		return "not known: " + o.NoCharging
	}
	return "not known: " + o.StartsAt.Why
}

// answerAreas are the pictures' rectangle and that of the box under it.
func answerAreas(r kit.Rect) (pictures, box kit.Rect) {
	if r.H >= bothHigh {
		return r.SplitTop(34)
	}
	return r.SplitTop(max(9, min(r.H*2/5, 20)))
}

// bothHigh is the height from which two pictures are one above the other.
const bothHigh = 52

// drawAnswers is the pictures over the sentences and the table.
func (v *View) drawAnswers(s *session.Session, r kit.Rect) []kit.Block {
	t := s.Theme
	top, box := answerAreas(r)
	in := kit.Inner(box)
	blocks := []kit.Block{kit.Panel{Title: "What each trial makes of it", Note: "ctrl+g, then ↓ reads on", Focused: v.answers}.
		Draw(t, box, v.scroll.Window(t, v.text, in.W, in.H))}
	if r.H < bothHigh {
		return append(blocks, kit.Bare(t, top, v.picture(s, v.drawn, top.W, top.H)))
	}
	first, second := top.SplitTop(top.H / 2)
	return append(blocks, kit.Bare(t, first, v.picture(s, v.drawn, first.W, first.H)), kit.Bare(t, second, v.picture(s, v.drawn+1, second.W, second.H)))
}

// The pictures there are.
const (
	shaftWatts = iota // what each trial takes of the drive, and what that gives
	netAmps
	netWatts
)

// drawings are the pictures of a job in their order: what the drive gives comes first where it is
// known.
func drawings(s *session.Session) []int {
	j := s.Job()
	if _, ok := winding.DriveLawOf(&j); ok {
		return []int{shaftWatts, netAmps, netWatts}
	}
	return []int{netAmps, netWatts}
}

// picture is one of the pictures, by an index that wraps, in w by h cells.
func (v *View) picture(s *session.Session, n, w, h int) []string {
	list := drawings(s)
	return drawn(s, list[n%len(list)], w, h)
}

// drawn is a figure of every trial against wind or drive speed, with what the drive gives over what the
// trials take, in w by h cells.
func drawn(s *session.Session, what, w, h int) []string {
	c, any := chartOf(s, what, w, h)
	if !any {
		return s.Theme.WrapPaint(kit.Hint, "No curve yet. "+s.Units.Words(firstReason(s.Outcome())), w)
	}
	return c.Lines(s.Theme)
}

// chartOf is drawn as a chart; any is false where no trial has a curve.
func chartOf(s *session.Session, what, w, h int) (c chart.Chart, any bool) {
	o := s.Outcome()
	c = chart.Chart{Width: w, Height: h, X: chart.Axis{Label: "drive speed", Unit: "rpm", Zero: true}, Y: axes[what]}
	u := quantity.RPM[0]
	if windy(s) {
		u = s.Units.For(quantity.WindSpeed)
		c.X = chart.Axis{Label: "wind", Unit: u.Name}
	}
	started := false
	for i := range o.Trials {
		tr := &o.Trials[i]
		series := chart.Series{Letter: letter(tr.Name), Name: s.WoundAs(i)}
		if series.Short = series.Name; strings.Contains(series.Name, " turns ") && (w < wholeNamesW || h < wholeNamesH) {
			series.Short, _, _ = strings.Cut(series.Name, " turns ")
			series.Short += " turns"
		}
		for _, p := range tr.Points {
			series.Points = append(series.Points, chart.XY{X: u.From(p.X), Y: of(p, what)})
			any = true
		}
		series.Thin = keptUp(tr.Points, u)
		started = started || len(series.Thin) > 0
		c.Series = append(c.Series, series)
		if mark, ok := markOf(tr, what, u); ok {
			mark.Role = kit.Series(i)
			c.Markers = append(c.Markers, mark)
		}
	}
	if started {
		c.Series = append(c.Series, chart.Series{Name: "only once started", Thin: [][2]float64{{0, math.MaxFloat64}}, Role: kit.Dim})
	}
	if any && what == shaftWatts {
		law := lawSeries(s, w < wholeNamesW || h < wholeNamesH)
		most := timesShown * highest(law.Points, c.Markers)
		for i := range c.Series {
			c.Series[i].Points = upTo(c.Series[i].Points, most)
		}
		c.Series = append(c.Series, law)
	}
	return c, any
}

// keptUp are the stretches of wind in which a trial keeps its speed once the rotor turns, and does not
// reach it from rest: its line is thin there.
func keptUp(points []winding.DrivePoint, u quantity.Unit) (thin [][2]float64) {
	for i, p := range points {
		switch x := u.From(p.X); {
		case !p.Gust:
		case i > 0 && points[i-1].Gust:
			thin[len(thin)-1][1] = x
		default:
			thin = append(thin, [2]float64{x, x})
		}
	}
	return thin
}

// timesShown limits the chart to this multiple of the drive's maximum: demand above that never occurs,
// and would squeeze the crossing, which is of interest, down to the axis.
const timesShown = 2.0

// highest is the maximum of a line and of the marks.
func highest(line []chart.XY, marks []chart.Marker) (most float64) {
	for _, p := range line {
		most = max(most, p.Y)
	}
	for _, m := range marks {
		most = max(most, m.Y)
	}
	return most
}

// upTo is a line up to where it first exceeds most, where it ends.
func upTo(line []chart.XY, most float64) []chart.XY {
	for i, p := range line {
		if p.Y <= most {
			continue
		}
		if i == 0 {
			return nil
		}
		from := line[i-1]
		return append(line[:i:i], chart.XY{X: from.X + (p.X-from.X)*(most-from.Y)/(p.Y-from.Y), Y: most})
	}
	return line
}

// axes are the pictures' upright axes.
var axes = [...]chart.Axis{
	shaftWatts: {Label: "at the drive's shaft: what is taken, what it gives", Shorter: []string{"at the drive's shaft: taken, given", "taken, given"}, Unit: "W", Zero: true},
	netAmps:    {Label: "net into the battery", Unit: "A", Zero: true},
	netWatts:   {Label: "net into the battery", Unit: "W", Zero: true},
}

// of is what a picture shows of a point.
func of(p winding.DrivePoint, what int) float64 {
	return [...]float64{shaftWatts: p.DriveWatts, netAmps: p.NetAmps, netWatts: p.NetWatts}[what]
}

// lawSeries is what the drive gives, named as assumed where nobody typed its shape.
func lawSeries(s *session.Session, short bool) chart.Series {
	j := s.Job()
	law, _ := winding.DriveLawOf(&j)
	line := chart.Series{Letter: "=", Name: "drive gives, as typed", Role: kit.Value}
	if law.Assumed {
		line.Name = "drive gives, assumed"
	}
	if line.Short = line.Name; short {
		line.Short = strings.TrimPrefix(line.Name, "drive ")
	}
	for _, p := range law.Points {
		line.Points = append(line.Points, chart.XY{X: p.RPM, Y: p.Watts})
	}
	return line
}

// markOf is a trial's mark: where it runs in the usual condition, against what the drive gives; else
// where it begins to charge.
func markOf(tr *winding.TrialOutcome, what int, u quantity.Unit) (chart.Marker, bool) {
	if what == shaftWatts {
		if at := tr.In(winding.UsualCondition); at != nil && at.DriveWatts > 0 {
			return chart.Marker{X: at.DriveRPM, Y: at.DriveWatts, Label: letter(tr.Name) + " runs " + quantity.Screen.Number(at.DriveRPM, 3)}, true
		}
		return chart.Marker{}, false
	}
	if !tr.StartsAt.Known() || len(tr.Points) == 0 {
		return chart.Marker{}, false
	}
	return chart.Marker{X: u.From(tr.StartsAt.Value), Y: atStart(tr, what)}, true
}

// atStart is the curve's value where charging begins: nothing comes in, and the rotor takes its share.
func atStart(o *winding.TrialOutcome, what int) float64 {
	p := o.Points[0]
	for _, next := range o.Points {
		if next.X > o.StartsAt.Value {
			break
		}
		p = next
	}
	return of(p, what)
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

// named is a trial's name before its sentence, in the colour of its curve.
func named(s *session.Session, i int) string {
	return s.Theme.Paint(kit.Series(i), kit.Clean(s.Outcome().Trials[i].Name)+":") + " "
}

// first is the question that has to be settled before anything else, where there is one.
func first(s *session.Session, w int) []string {
	text := s.Reversed()
	if text == "" {
		return nil
	}
	return append(s.Theme.Hang(s.Theme.Mark(kit.Broken)+" ", kit.Broken, strings.ToUpper(text[:1])+text[1:], w), "")
}

// words is the sentences and the table.
func (v *View) words(s *session.Session, w int) []string {
	t := s.Theme
	out := first(s, w)
	trial, to, rejoined := s.Rejoined()
	for i := range s.Outcome().Trials {
		o := &s.Outcome().Trials[i]
		lead := named(s, i)
		role := kit.Plain
		if o.CannotBeWound() != "" {
			role = kit.Broken
		}
		out = append(out, t.Hang(lead, role, s.Units.Words(sentence(o))+".", w)...)
		better := o.Better()
		if better != "" {
			better = "would do better: " + better
		}
		try := ""
		if rejoined && i == trial {
			try = "f6 makes a trial of the same coils in " + session.JointsText(to)
		}
		for _, hint := range []string{better, try, o.InTheWay} {
			if hint == "" {
				continue
			}
			out = append(out, t.Hang(strings.Repeat(" ", kit.Width(lead)), kit.Hint, s.Units.Words(hint), w)...)
		}
	}
	if len(out) == 0 {
		return out
	}
	j := s.Job()
	if law, ok := winding.DriveLawOf(&j); ok {
		mark := ""
		if law.Assumed {
			mark = t.PaintMark(kit.Guessed) + " "
		}
		out = append(out, t.Hang(mark, kit.Plain, "The drive: "+law.Words+".", w)...)
	}
	out = append(out, "")
	out = append(out, v.table(s).Lines(t, w)...)
	out = append(out, "")
	out = append(out, machine.DriveFollows(s, w)...)
	out = append(out, "")
	out = append(out, t.WrapPaint(kit.Hint, worst(s), w)...)
	if terms := session.Explained(ansi.Strip(strings.Join(out, "\n"))); len(terms) > 0 {
		out = append(out, "", t.Paint(kit.Title, "Words"))
		for _, says := range terms {
			out = append(out, t.WrapPaint(kit.Hint, says, w)...)
		}
	}
	return out
}

// table is the rows that any trial knows.
func (v *View) table(s *session.Session) kit.Table {
	o := s.Outcome()
	tb := kit.Table{Columns: []kit.Column{{Role: kit.Label, Shrink: true}}}
	for i := range o.Trials {
		tb.Columns = append(tb.Columns, kit.Column{Head: o.Trials[i].Name, Hue: kit.Series(i), Align: kit.Point, Role: kit.Value})
	}
	for _, f := range winding.Outputs() {
		if f.Show == winding.InDrive || f.ID == "year_kwh" || f.ID == "year_kwh_past_limit" || f.ID == "volts_dc_open_top" {
			if r := o.Row(&f, windy(s)); anyKnown(r) {
				tb.Rows = append(tb.Rows, tableRow(s, &r))
			}
		}
	}
	return tb
}

// wholeNamesW and wholeNamesH are the size from which a picture has whole names in two rows of its
// legend.
const wholeNamesW, wholeNamesH = 60, 12

// startsAt is the figure against what the drive does: its speed, or the wind's.
const startsAt = "charges_from_x"

// tableRow is one figure of every trial.
func tableRow(s *session.Session, r *winding.Row) kit.TableRow {
	label := s.Units.Words(r.Label)
	if u := s.Units.For(r.Dim).Name; u != "" {
		if r.ID == startsAt && !windy(s) {
			u = "drive " + u // every other speed of the list is the alternator's
		}
		label += ", " + u // once, so that three trials have room beside it
	}
	cells := []kit.Cell{{Text: label}}
	for _, c := range r.Cells {
		cell := s.Plain(c.Figure, r.Dim, r.Digits)
		if c.Verdict == winding.Past {
			cell.Mark = kit.Broken
		}
		if c.Burns { // it does not survive to give that figure
			cell = kit.Cell{Text: "burns", Mark: kit.Broken, Role: kit.Broken, Word: true}
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
func windy(s *session.Session) bool { return s.Job().Drive.Kind == job.DriveWind }

// worst is the caution about shorting the leads: what that stops, and that it heats.
func worst(s *session.Session) string {
	text := "Brake: all leads joined at the top speed. "
	for i := range s.Outcome().Trials {
		text += stops(s, &s.Outcome().Trials[i])
	}
	m := &s.Outcome().Machine
	return text + fmt.Sprintf("It heats the winding: hold it no longer than to the class limit. Above the speed of most torque the leads hold less and less. Battery at rest %s, charging %s, absorption %s.",
		s.Text(m.RestVolts, quantity.Volts, 3), s.Text(m.ChargingVolts, quantity.Volts, 3), s.Text(m.AbsorptionVolts, quantity.Volts, 3))
}

// stops says up to what shorted leads stop a turning shaft; "" where that is not known.
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
