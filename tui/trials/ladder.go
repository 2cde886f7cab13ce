package trials

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/text"
	"slotwright/winding/wants"
)

// ladder is every gauge with the slot full, from thick and few to thin and many, in place of the table.
// It takes longer than a key may, so it is worked out in the background, and identified by the job's
// text.
type ladder struct {
	open    bool
	strands int
	row     int  // the marked rung
	placed  bool // the cursor was put on the present winding, or moved
}

// ladderWork is the name of the work.
const ladderWork = "ladder"

// most strands in hand for which the ladder is worked out.
const mostStrands = 12

// show opens it at the chosen trial's own strands.
func (l *ladder) show(s *session.Session) {
	if len(s.Outcome().Trials) == 0 {
		s.Say("no trial yet: n makes the first one")
		return
	}
	*l = ladder{open: true, strands: max(1, s.Outcome().Trials[s.Trial].Strands)}
}

// about identifies the subject of the ladder now asked for.
func (l *ladder) about(s *session.Session) string {
	return fmt.Sprint(s.Trial, " ", l.strands, " ", s.Sizes(), " ", s.Document().Text())
}

// ask asks for the rungs, and puts the cursor on the present one once they are there.
func (l *ladder) ask(s *session.Session) {
	if !l.open || len(s.Outcome().Trials) == 0 {
		l.open = false
		return
	}
	bench, trial, strands, sizes := s.Bench(), s.Trial, l.strands, s.Sizes()
	s.Later(ladderWork, l.about(s), func() any {
		list := bench.LadderIn(trial, strands, sizes)
		return worked{list, bench.Elsewhere(trial, list)}
	})
	list := l.rungs(s)
	if !l.placed && len(list) > 0 {
		l.placed = true
		l.row = nearest(list, s.Outcome().Trials[s.Trial].BareMM.Value)
	}
	if len(list) > 0 {
		l.row = max(0, min(l.row, len(list)-1))
	}
}

// nearest is the present rung, else the one whose wire is nearest in size.
func nearest(list []winding.Rung, bareMM float64) int {
	best := 0
	for i := range list {
		if list[i].Present {
			return i
		}
		if math.Abs(list[i].BareMM.Value-bareMM) < math.Abs(list[best].BareMM.Value-bareMM) {
			best = i
		}
	}
	return best
}

// rungs are the rungs worked out so far.
func (l *ladder) rungs(s *session.Session) []winding.Rung {
	value, _, _ := s.Answer(ladderWork, l.about(s))
	done, _ := value.(worked)
	return done.rungs
}

// worked is the rungs, and what other circuits bring if more than all of them.
type worked struct {
	rungs     []winding.Rung
	elsewhere string
}

// elsewhere is what other circuits bring, and the key that goes there; "" where it is no more.
func (l *ladder) elsewhere(s *session.Session) string {
	value, _, _ := s.Answer(ladderWork, l.about(s))
	done, _ := value.(worked)
	if done.elsewhere == "" {
		return ""
	}
	return "o: " + s.Units.Words(done.elsewhere) + "."
}

// bindings are its keys.
func (l *ladder) bindings(s *session.Session) []kit.Binding {
	const group = "The ladder"
	list := l.rungs(s)
	to := func(i int) func() { return func() { l.row = max(0, min(i, len(list)-1)) } }
	take := func(asNew bool) func() {
		return func() {
			if l.row < len(list) {
				s.TakeRung(list[l.row], asNew)
				l.open = false
			}
		}
	}
	strands := func(by int) func() {
		return func() {
			next := l.strands + by
			if next < 1 || next > mostStrands || by > 0 && len(list) == 0 {
				s.Say("no more strands than that")
				return
			}
			l.strands, l.placed = next, false
		}
	}
	first := kit.Bind(group, "enter", "take it", "Wind the chosen trial like the marked row.", take(false)).When(len(list) > 0)
	if path, ok := l.waitsFor(s, list); ok {
		first = kit.Bind(group, "enter", "to the field", "Go to the field that the ladder waits for.", func() { l.open = false; goTo(s, path, waiting) })
	}
	return []kit.Binding{
		first,
		kit.Bind(group, "n", "as new trial", "Make a new trial of the marked row.", take(true)).When(len(list) > 0),
		kit.Bind(group, "esc e", "back", "Back to the table.", func() { l.open = false }),
		kit.Bind(group, "> .", "strand more", "One strand more in hand.", strands(1)),
		kit.Bind(group, "< ,", "fewer", "One strand fewer.", strands(-1)),
		kit.Bind(group, "up k", "", "The next thicker.", to(l.row-1)),
		kit.Bind(group, "down j", "", "The next thinner.", to(l.row+1)),
		kit.Bind(group, "pgup", "", "Eight rows up.", to(l.row-8)),
		kit.Bind(group, "pgdown space", "", "Eight rows down.", to(l.row+8)),
		kit.Bind(group, "home", "", "The thickest.", to(0)),
		kit.Bind(group, "end G", "", "The thinnest.", to(len(list)-1)),
		kit.Bind(group, "b", "best", "The next row that is the best of a column, or meets what is wanted.", l.toBest(s, list)).When(len(list) > 0),
		kit.Bind(group, "right l", "", "The ladder of the next trial.", func() { l.placed = false; s.Choose(s.Trial + 1) }),
		kit.Bind(group, "left h", "", "The ladder of the trial before.", func() { l.placed = false; s.Choose(s.Trial - 1) }),
		kit.Bind("The slot", "A", "", "Slot area up a step; the depth where the slot has a shape.", func() { s.StepArea(1) }),
		kit.Bind("The slot", "a", "smaller", "Slot, or side of a flat coil, down a step (capital A: up).", func() { s.StepArea(-1) }),
		kit.Bind("The slot", "F", "", "Fill limit up a hundredth.", func() { s.StepFill(1) }),
		kit.Bind("The slot", "f", "fill", "Fill limit down a hundredth (capital F: up).", func() { s.StepFill(-1) }),
		kit.Bind(group, "c", "star/delta", "Star to delta and back.", s.FlipConnection).When(!noStar(s)),
		kit.Bind(group, "o", "circuits", "Next number of parallel circuits that the layout allows.", s.StepCircuits),
	}
}

// toBest goes to the next rung that is the best of a column or meets what is wanted, wrapping to the
// first.
func (l *ladder) toBest(s *session.Session, list []winding.Rung) func() {
	return func() {
		for by := 1; by <= len(list); by++ {
			i := (l.row + by) % len(list)
			if r := &list[i]; r.Meets || r.BestSlow || r.BestUsual || r.BestTop || r.BestYear {
				l.row = i
				return
			}
		}
		s.Say("no gauge brings anything within every limit")
	}
}

// draw fills the rectangle: its heading, the rungs, the slot of the marked one beside them if there is
// room, and the meaning of the marks.
func (l *ladder) draw(s *session.Session, r kit.Rect) []kit.Block {
	t := s.Theme
	top, body := l.areas(r)
	_, rest := r.SplitTop(1)
	_, foot := rest.SplitBottom(footLines(r))
	head := l.head(s, top.W)
	blocks := []kit.Block{kit.Bare(t, top, []string{t.Paint(kit.Title, t.Cut(head, top.W))})}
	list := l.rungs(s)
	_, done, wrong := s.Answer(ladderWork, l.about(s))
	switch {
	case !done:
		return append(blocks, kit.Bare(t, rest, []string{"", t.Paint(kit.Hint, "  working out…")}))
	case wrong != "":
		return append(blocks, kit.Bare(t, rest, t.WrapPaint(kit.Broken, wrong, rest.W)))
	case len(list) == 0:
		none := l.whyNone(s)
		if _, ok := l.waitsFor(s, list); ok {
			none += " Enter goes to the field."
		}
		return append(blocks, kit.Bare(t, rest, t.Wrap(none, rest.W)))
	}
	tb := l.tableIn(s, list, body.W)
	w := body.W
	if wants := tb.Width(t) + 3; body.W-wants >= leastBeside { // 2 of it for the bar
		left, right := body.SplitLeft(wants)
		_, right = right.SplitLeft(1)
		blocks = append(blocks, l.beside(s, right, list)...)
		body, w = left, left.W
	}
	full := w
	if len(list)+2 > body.H {
		w -= 2 // for the bar
	}
	lines := tb.Head(t, w)
	lines = append(lines, kit.Window(t, tb.Body(t, w), l.row, full, body.H-len(lines))...)
	return append(blocks, kit.Bare(t, body, lines), kit.Bare(t, foot, l.foot(s, &list[l.row], foot.W, foot.H)))
}

// head is the ladder's heading, in w cells: what does not fit is on the table.
func (l *ladder) head(s *session.Session, w int) string {
	o := &s.Outcome().Trials[s.Trial]
	what := "slot"
	if flat(s) {
		what = "coil"
	}
	head, by := fmt.Sprintf("%s: every %s size, the %s full", o.Name, s.Sizes(), what), "; "
	parts := []string{text.Count(l.strands, "strand") + " in hand", o.Connection.String(), text.Count(o.Circuits, "circuit")}
	if noStar(s) {
		parts = slices.Delete(parts, 1, 2)
	}
	for _, part := range parts {
		if kit.Width(head+by+part) > w {
			break
		}
		head, by = head+by+part, ", "
	}
	return head
}

// leastBeside is the width from which a picture is beside the rungs.
const leastBeside = 24

// waitsFor is the field without which there are no rungs.
func (l *ladder) waitsFor(s *session.Session, list []winding.Rung) (path string, ok bool) {
	if _, done, _ := s.Answer(ladderWork, l.about(s)); !done || len(list) > 0 {
		return "", false
	}
	j := s.Job()
	if t := j.Trials[s.Trial]; t.Gauge.IsZero() {
		return job.PathOf("trial", s.Trial, "gauge"), true
	}
	return wants.FieldFor(&j, s.Bench().TurnsThatFit(j.Trials[s.Trial]).Why, s.Trial)
}

// whyNone says why there are no rungs.
func (l *ladder) whyNone(s *session.Session) string {
	t := s.Job().Trials[s.Trial]
	fit := s.Bench().TurnsThatFit(t)
	switch {
	case t.Gauge.IsZero():
		return "The ladder goes by a wire: give trial " + t.Name + " one, with ] or by typing it."
	case !t.AlsoGauge.IsZero():
		return "The ladder is for wire of one size; trial " + t.Name + " has two."
	case len(t.CoilTurns) > 0:
		return "The ladder is for coils of equal turns; those of trial " + t.Name + " are not."
	case !fit.Known():
		return "The ladder fills the slot: it " + fit.Why + "."
	}
	return fmt.Sprintf("No gauge of which %s in hand fit this slot. < takes a strand out.", text.Count(l.strands, "strand"))
}

// tableIn is the rungs in w cells: where not every column fits, the limit goes first, then the slow
// condition, then the heat, each of which a mark in the rest still indicates.
func (l *ladder) tableIn(s *session.Session, list []winding.Rung, w int) kit.Table {
	var without []string
	for {
		for _, tight := range []bool{false, true} {
			tb := l.table(s, list, tight, without)
			if tb.Width(s.Theme)+2 <= w || tight && len(without) == len(lessWanted) {
				return tb
			}
		}
		without = lessWanted[:len(without)+1]
	}
}

// lessWanted are the columns of the rungs that are dropped where room is short, in that order.
var lessWanted = []string{"limit_amps_dc", "amps_dc_slow", "winding_c_hottest", "amps_dc_top", "year_kwh"}

// table is the rungs without some columns, marks right behind the figures where it is tight.
func (l *ladder) table(s *session.Session, list []winding.Rung, tight bool, without []string) kit.Table {
	o := s.Outcome()
	num := func(head, unit string) kit.Column {
		return kit.Column{Head: head, Unit: unit, Align: kit.Point, Role: kit.Value, Tight: tight}
	}
	tb := kit.Table{Margin: true, Gap: 1, Columns: []kit.Column{
		{Head: "wire", Role: kit.Label, Min: 7}, {Head: "turns", Align: kit.Right, Role: kit.Value}, num("begins", "alt. rpm"),
	}}
	amps := []string{"amps_dc_slow", "amps_dc_usual", "amps_dc_top"}
	ids := []string{"cut_in_rpm"}
	put := func(id string, c kit.Column) {
		if !slices.Contains(without, id) {
			ids, tb.Columns = append(ids, id), append(tb.Columns, c)
		}
	}
	for i := range amps {
		if winding.OutputOf(amps[i]).Again(&o.Machine) {
			continue
		}
		whose, at := "A net", ""
		if i < len(o.Machine.Conditions) {
			whose, at = conditionHead(s.Units.Words(o.Machine.Conditions[i].Label))
		}
		put(amps[i], num(whose, at))
	}
	u := s.Units.For(quantity.Celsius).Name
	put("winding_c_hottest", num("hottest", u))
	put("limit_amps_dc", num("limit", "A"))
	if s.Job().Drive.Kind == job.DriveWind {
		put("year_kwh", num("a year", "kWh"))
	}
	tb.Columns = append(tb.Columns, kit.Column{Role: kit.Plain})
	for i := range list {
		tb.Rows = append(tb.Rows, kit.TableRow{Cells: rungCells(s, &list[i], ids, tight), Focus: i == l.row})
	}
	return tb
}

// conditionHead is the head of net amps in a condition: "A, engine" over "1200 rpm"; "A net" where
// there is no shaft but the alternator's.
func conditionHead(label string) (head, unit string) {
	before, after, _ := strings.Cut(label, " ")
	if before == "alternator" {
		return "A net", "alt. " + after
	}
	return "A, " + before, after
}

// rungCells are a rung's cells: best of its column and past a limit marked, and in words whether it
// meets what is wanted or how it does not suit the drive, and whether it is the present winding.
func rungCells(s *session.Session, r *winding.Rung, ids []string, tight bool) []kit.Cell {
	wire := kit.Cell{Text: shortWire(r.Wire)}
	if r.Present {
		wire.Mark, wire.Role = kit.Chosen, kit.Chosen
	}
	turns := kit.Cell{Text: quantity.Screen.Number(r.Turns.Value, 0)}
	if !r.Fits() {
		turns.Mark, turns.Role = kit.Broken, kit.Broken
	}
	cells := []kit.Cell{wire, turns}
	best := map[string]bool{"amps_dc_slow": r.BestSlow, "amps_dc_usual": r.BestUsual, "amps_dc_top": r.BestTop, "year_kwh": r.BestYear}
	for _, id := range ids {
		f := winding.OutputOf(id)
		c := plainCell(s, f.Of(&r.TrialOutcome), winding.Row{Dim: f.Dim, Digits: f.Digits})
		switch {
		case f.Burns(&r.TrialOutcome):
			c = burns
		case best[id]:
			c.Mark, c.Role = kit.Better, kit.Better
		case f.Past(s.Outcome(), &r.TrialOutcome), id == "limit_amps_dc" && r.OverLimit():
			c.Mark, c.Role = kit.Broken, kit.Broken
		}
		cells = append(cells, c)
	}
	words := r.Word
	if !tight {
		words += s.Units.Words(r.Where)
	}
	switch {
	case r.Present && r.Turns.Value == s.Outcome().Trials[s.Trial].Turns.Value:
		words = strings.TrimSpace(words + " now")
	case r.Present: // the trial's slot is not full, or too full
		words = strings.TrimSpace(words + " its wire")
	}
	role := kit.Better
	if r.Word != "" && !r.Meets {
		role = kit.Worse
	}
	return append(cells, kit.Cell{Text: words, Role: role})
}

// footLines is the number of lines under the rungs for why the marked one brings what it does and for
// the meaning of the marks.
func footLines(r kit.Rect) int { return max(2, min(6, r.H/4)) }

// foot is why the marked rung brings what it does, as far as it fits, and the meaning of the marks.
func (l *ladder) foot(s *session.Session, r *winding.Rung, w, h int) []string {
	t := s.Theme
	parts := append([]string{l.fills(s, r)}, strings.Split(s.Units.Words(r.Holds), "; ")...)
	if !r.Fits() {
		parts = parts[:1] // nothing else counts
	} else if r.WhyBest != "" {
		parts = append(parts, s.Units.Words(r.WhyBest))
	}
	other := t.WrapPaint(kit.Hint, l.elsewhere(s), w)
	least := len(t.Wrap(parts[len(parts)-1]+".", w)) + len(other)
	legend := l.legend(s, w, min(2, h-least))
	room := h - len(legend) - len(other)
	why := clipped(sentences(t, parts, w, room), room)
	return clipped(append(append(why, other...), legend...), h)
}

// legend is the meaning of the marks, as fully as fits h lines; nothing where not even the shortest
// does.
func (l *ladder) legend(s *session.Session, w, h int) []string {
	t := s.Theme
	if text := s.ReversedShort(); text != "" { // none of them is called the best
		return clipped(t.WrapPaint(kit.Broken, t.Mark(kit.Broken)+" "+text+".", w), h)
	}
	begins := "charges by the slow speed, brings"
	if s.Job().Drive.Kind == job.DriveWind {
		begins = "brings in the mean wind"
	}
	turns := map[string]string{job.DrivePedals: ", lets the pedals turn", job.DriveWater: ", lets the wheel turn", job.DriveWind: ", lets the rotor turn"}[s.Job().Drive.Kind]
	better, broken := t.Mark(kit.Better), t.Mark(kit.Broken)
	for _, text := range []string{
		fmt.Sprintf("%s most of its column within every limit; %s past a limit, or nothing comes; meets: %s what is wanted, breaks no limit%s.", better, broken, begins, turns),
		fmt.Sprintf("%s most within every limit; %s past one, or nothing comes; meets: all that is wanted.", better, broken),
		fmt.Sprintf("%s most within limits; %s past one, or nothing comes; meets: all that is wanted.", better, broken),
	} {
		if lines := t.WrapPaint(kit.Hint, text, w); len(lines) <= h {
			return lines
		}
	}
	return nil
}

// sentences are as many of the parts as fit h lines whole, from the last on: that is the condition in
// which windings differ most.
func sentences(t kit.Theme, parts []string, w, h int) []string {
	for from := range parts {
		if lines := t.WrapPaint(kit.Plain, strings.Join(parts[from:], "; ")+".", w); len(lines) <= h {
			return lines
		}
	}
	return nil
}

// fills is how full a rung is and what limits it.
func (l *ladder) fills(s *session.Session, r *winding.Rung) string {
	if why := r.CannotBeWound(); why != "" {
		return fmt.Sprintf("%d × %s %s, more strands of thinner wire go in", r.Trial.Turns.Whole(), shortWire(r.Wire), why)
	}
	text := fmt.Sprintf("%d × %s: wire fill %s", r.Trial.Turns.Whole(), shortWire(r.Wire), quantity.Screen.Number(r.WireFill.Value, 2))
	if r.MostAmps.Known() {
		text += ", at most " + s.Text(r.MostAmps, quantity.Amps, 3)
	}
	if r.LimitBy != "" {
		text += ", limit " + s.Text(r.LimitAmps, quantity.Amps, 3) + " by " + r.LimitBy
	}
	return text
}
