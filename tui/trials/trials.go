// Package trials is the central screen: up to four candidate windings side by side, every figure in its
// row, the three inputs slot area, fill limit and wire a single key away, what each does in a sentence,
// amps against speed and the slots to scale where they fit, and the ladder of every gauge with the slot
// full.
package trials

import (
	"slices"
	"strings"

	"slotwright/tui/form"
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/shelf"

	tea "github.com/charmbracelet/bubbletea"
)

// View is the trials screen. Its rows are a grid: inputs on top, figures below; the cursor walks over
// all of them so that each can be explained.
type View struct {
	// row is the id of the marked row, line its last position among the rows, for when that row is
	// gone.
	row     string
	line    int
	editing bool
	asked   bool // what is typed was asked back: a figure replaces it
	input   form.TextLine
	picking bool // the choices of the marked row are listed
	list    kit.Choice
	picture int // which of the pictures there is room for
	at      kit.Rect
	flipped bool // every row, none folded
	ladder  ladder
	why     why
	// offer is what the bench's records have for the marked input, where offers is set.
	offer  shelf.Hint
	offers bool
}

// New is the screen with the cursor on the turns.
func New() *View { return &View{row: rowTurns} }

// Name is on the tab.
func (v *View) Name() string { return "Trials" }

// Typing reports whether letters are text: a value is being typed, or picked.
func (v *View) Typing(*session.Session) bool { return v.editing || v.picking }

// SetSize gives the screen its rectangle and keeps the cursor on the present rows.
func (v *View) SetSize(s *session.Session, r kit.Rect) {
	v.at = r
	ids := v.ids(s)
	if i := slices.Index(ids, v.row); i >= 0 {
		v.line = i
	} else {
		v.line = max(0, min(v.line, len(ids)-1))
		v.row = ids[v.line]
	}
	v.offer, v.offers = s.Offer(v.row)
	v.ladder.ask(s)
	v.why.keep(v.options(s))
}

// Bindings are the keys of the screen.
func (v *View) Bindings(s *session.Session) []kit.Binding {
	switch {
	case v.editing:
		const group = "Typing a value"
		return append([]kit.Binding{
			kit.Bind(group, "enter", "take it", "Take the value typed and go on to the next input.", func() { v.take(s) }),
			kit.Bind(group, "esc", "leave it as it was", "Leave the value as it was.", func() { v.editing = false }),
		}, form.LineBindings()...)
	case v.picking:
		return v.pickBindings(s)
	case v.why.open:
		return v.whyBindings(s)
	case v.ladder.open:
		return v.ladder.bindings(s)
	}
	own, rest := changes(s), append(v.trials(s), v.moves(s)...)
	if v.wire(s) {
		own, rest = withoutNames(own), withoutNames(rest)
	}
	if v.offers {
		own = append([]kit.Binding{kit.Bind("The slot", "f9", "take "+v.offer.Typed, "Put what this bench's records say into the marked input, which is empty, as a guess.", func() { s.TakeOffer(v.offer) })}, own...)
	}
	return slices.Concat(own, v.typing(s), rest)
}

// Commands are what can be done by name, whatever lies over the table: that closes first.
func (v *View) Commands(s *session.Session) []kit.Binding {
	list := slices.Concat(changes(s), v.typing(s), v.trials(s), v.moves(s))
	for i := range list {
		if do := list[i].Do; do != nil {
			list[i].Do = func(msg tea.KeyMsg) tea.Cmd {
				v.editing, v.picking, v.why.open, v.ladder.open = false, false, false, false
				return do(msg)
			}
		}
	}
	return list
}

// changes are the keys that change the job.
func changes(s *session.Session) []kit.Binding {
	const trial, full, slot = "Chosen trial", "Turns and wire together", "The slot"
	area, areaHelp := "area", "Slot area down a step (capital A: up)."
	if flat(s) {
		area, areaHelp = "side", "Side of a coil down a step (capital A: up)."
	}
	return []kit.Binding{
		kit.Bind(trial, "+ =", "turn more", "One turn more on every coil.", func() { s.StepTurns(1) }),
		kit.Bind(trial, "- _", "fewer", "One turn fewer.", func() { s.StepTurns(-1) }),
		kit.Bind(trial, "]", "thicker", "Next thicker wire.", func() { s.StepWire(1) }),
		kit.Bind(trial, "[", "thinner", "Next thinner wire.", func() { s.StepWire(-1) }),
		kit.Bind(full, "T", "keep full", "Keep the slot full: thicker or thinner wire and strands take as many turns as fit with them.", s.FlipFull),
		kit.Bind(full, "t", "", "As many turns as fit, once.", s.FillTurns),
		kit.Bind(full, "s", "", "The same metal in twice the strands of thinner wire, once.", s.SplitWire),
		kit.Bind(trial, "> .", "strand more", "One strand more in hand.", func() { s.StepStrands(1) }),
		kit.Bind(trial, "< ,", "fewer", "One strand fewer.", func() { s.StepStrands(-1) }),
		kit.Bind(slot, "A", "", "Slot area up a step; the depth where the slot has a shape.", func() { s.StepArea(1) }),
		kit.Bind(slot, "a", area, areaHelp, func() { s.StepArea(-1) }),
		kit.Bind(slot, "F", "", "Fill limit up a hundredth.", func() { s.StepFill(1) }),
		kit.Bind(slot, "f", "fill", "Fill limit down a hundredth (capital F: up).", func() { s.StepFill(-1) }),
		kit.Bind(trial, "c", "star/delta", "Star to delta and back.", s.FlipConnection).When(!noStar(s)),
		kit.Bind(trial, "o", "circuits", "Next number of parallel circuits that the layout allows.", s.StepCircuits),
	}
}

// trials are the keys that make and take out whole trials.
func (v *View) trials(s *session.Session) []kit.Binding {
	const trials = "Trials"
	return []kit.Binding{
		kit.Bind(trials, "e", "every gauge", "The ladder: every gauge with the slot full, from thick and few to thin and many.", func() { v.ladder.show(s) }),
		kit.Bind(trials, "n", "new", "Copy the chosen trial into a new one.", s.AddTrial),
		kit.Bind(trials, "x", "remove", "Take the chosen trial out.", s.RemoveTrial),
		kit.Bind(trials, "r", "reference", "Compare the others with the chosen trial.", s.MakeReference),
	}
}

// typing are the keys that begin a value.
func (v *View) typing(s *session.Session) []kit.Binding {
	const trial = "Chosen trial"
	keys, shown := "0 1 2 3 4 5 6 7 8 9 ~", "0 … 9, ~"
	if v.wire(s) {
		keys, shown = keys+" "+strings.Join(strings.Split(named, ""), " "), shown+", a s i"
	}
	folded := v.row == rowFold
	figures := kit.Command(trial, keys, "", "Begins a value in the marked input; ~ says that it is a guess. On Wire, a, s and i begin AWG, SWG and IEC.", func(msg tea.KeyMsg) tea.Cmd {
		if folded { // which of its inputs is meant is not known
			v.edit(s)
			return nil
		}
		v.begin("")
		v.typed(msg)
		return nil
	}).When(folded || v.inputPath(s) != "")
	figures.SetHelp(shown, figures.Help().Desc)
	return []kit.Binding{
		kit.Bind(trial, "enter", kit.Either(v.passes(s), "next", "why"), "On an input: go on to the next, what is there holds. On a figure: why it is so, or to the field that it waits for.", func() { v.enter(s) }),
		kit.Bind(trial, "space", kit.Either(v.passes(s), "edit", ""), "Edit the marked input's value, or list its choices.", func() { v.edit(s) }),
		figures,
		kit.Bind("Trials", "y f5", "why", "Why the marked figure is so: its formula with the numbers in it, and the inputs it comes from.", func() { v.why.open = true }),
	}
}

// moves are the keys that move the cursor and change what is shown.
func (v *View) moves(s *session.Session) []kit.Binding {
	const moving = "Moving"
	ids := v.ids(s)
	to := func(i int) func() {
		return func() { v.line = max(0, min(i, len(ids)-1)); v.row = ids[v.line] }
	}
	return []kit.Binding{
		kit.Bind(moving, "left h", "", "The trial to the left.", func() { s.Choose(s.Trial - 1) }),
		kit.Bind(moving, "right l", "", "The trial to the right.", func() { s.Choose(s.Trial + 1) }),
		kit.Bind(moving, "up k", "", "The row above; what it means stands below the table.", to(v.line-1)),
		kit.Bind(moving, "down j", "", "The row below.", to(v.line+1)),
		kit.Bind(moving, "home pgup", "", "The first row.", to(0)),
		kit.Bind(moving, "end pgdown", "", "The last row.", to(len(ids)-1)),
		kit.Bind(moving, "m", "more rows", "Every row, none folded, or only the ones looked at first.", func() { v.flipped = !v.flipped }),
		kit.Bind("Trials", "v", "pictures", "Amps against speed, the slots to scale, or the table alone.", v.nextPicture),
	}
}

// nextPicture goes to the next picture; where every row leaves no room for one, back to the rows looked
// at first.
func (v *View) nextPicture() {
	if v.room() == middle && v.flipped {
		v.flipped = false
		return
	}
	v.picture++
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	_, used := kit.Press(v.Bindings(s), msg)
	switch {
	case used:
		return true
	case v.editing:
		return v.typed(msg)
	case v.picking:
		return v.pick(s, msg)
	}
	return v.opens(s, msg)
}

// begin opens the input with a text.
func (v *View) begin(text string) {
	v.editing, v.asked, v.input = true, false, form.NewTextLine(text)
}

// passes reports whether the marked row holds a value from which enter goes on to the next.
func (v *View) passes(s *session.Session) bool {
	return v.inputPath(s) != "" && v.row != rowFold && v.row != rowAlike
}

// enter goes on from an input, as on every screen; it explains a figure.
func (v *View) enter(s *session.Session) {
	if v.passes(s) {
		v.next(s)
		return
	}
	v.edit(s)
}

// edit opens the marked input with its value, or its choices; a figure is explained, or the field
// visited that it waits for.
func (v *View) edit(s *session.Session) {
	switch path := v.inputPath(s); {
	case path != "" && len(choicesOf(s, v.row)) > 0:
		v.openChoices(s)
	case v.row == rowFold || v.row == rowAlike:
		v.flipped = true
	case path != "":
		text, _, _ := s.Document().Typed(path)
		v.begin(text)
	default:
		if field, ok := v.waitsFor(s); ok {
			goTo(s, field, waiting)
			return
		}
		v.why.open = true
	}
}

// typed takes a key while a value is being typed.
func (v *View) typed(msg tea.KeyMsg) bool {
	if v.asked { // a figure replaces what was asked back, a unit goes with it
		v.asked, v.input = false, v.input.Anew(msg)
	}
	next, used := v.input.Key(msg)
	v.input = next
	return used
}
