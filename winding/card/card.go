package card

import (
	"fmt"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/text"
)

// Options control the layout of the text.
type Options struct {
	// ASCII writes Ω as ohm, ² as 2 and so on: every byte is then below 0x7f.
	ASCII bool
	// Units are those to show; volts, amps and the like have only one.
	Units quantity.Choice
	// Document is the job file, for the inputs as they were typed; without it the card refers to the
	// file for their list.
	Document *job.Document
	// Pages puts a form feed between sheets, for a printer.
	Pages bool
	// Width wraps the text to so many columns, 60 to 80, for reading on a screen; 0 is the 80 of a
	// sheet. Wrapped, the card still has at most two sheets.
	Width int
	// Sections are those of the report to write, by name; none means all.
	Sections []string
}

// writer is a paper and the subject written about.
type writer struct {
	*paper
	b     *winding.Bench
	job   job.Job
	o     *winding.Outcome
	opt   Options
	known missingList
	// most is how many of what is called out besides the first the last sheet lists.
	most int
}

func newWriter(b *winding.Bench, o *winding.Outcome, opt Options) *writer {
	return &writer{paper: newPaper(opt.ASCII, opt.Units, opt.Width), b: b, job: b.Job(), o: o, opt: opt}
}

// estimate is what every card and report says about its figures.
const estimate = "Figures are design estimates, not a rating. Local codes and licensed practice decide what may be built, connected and run."

// Text is the winding card of one trial, counted from 0. Sheet one, of 66 lines, hangs over the bench:
// what to wind, how, and what the finished winding should read. Sheet two has the slots, the insulation
// and the first run, on more than one sheet if needed. A value that was not given is a blank to write
// on. No line is wider than 80 columns, none ends in a blank, the last ends with a newline. A trial
// that does not exist gives a card that says so.
func Text(b *winding.Bench, o *winding.Outcome, trial int, opt Options) string {
	w := newWriter(b, o, opt)
	if trial < 0 || trial >= len(o.Trials) {
		w.title("WINDING CARD", jobName(o))
		w.say(2, fmt.Sprintf("There is no trial %d: this job has %s.", trial+1, text.Count(len(o.Trials), "trial")))
		return w.String()
	}
	t := &o.Trials[trial]
	one, rest := w.sheets(t, trial)
	sheets := append([][]string{one}, rest...)
	for i, s := range sheets {
		sheets[i] = append(w.sheetHead("WINDING CARD, TRIAL "+t.Name, i+1, len(sheets)), s...)
	}
	return join(sheets, opt.Pages)
}

// sheets is the card, its first sheet and the others. What is called out besides the first of it is on
// the last sheet as far as there is room, and the first says so: whoever winds may have no screen.
func (w *writer) sheets(t *winding.TrialOutcome, trial int) (one []string, rest [][]string) {
	w.most = max(0, len(w.against(t.Name))-1)
	if w.folded() { // as many as on paper
		opt := w.opt
		opt.Width = 0
		paper := newWriter(w.b, w.o, opt)
		paper.sheets(t, trial)
		w.most = paper.most
	}
	for {
		one, over, spilled := w.sheetOne(t, trial)
		rest := pages(w.sheetTwo(t, trial, over, spilled), w.sheetLines()-2)
		if w.most == 0 || w.calledOut(t, rest) {
			return one, w.closed(rest)
		}
		w.most = 0 // no room: the first sheet says that they are in the report
	}
}

// closed puts the closing words under the last sheet if there is room: no sheet is begun for what the
// foot of sheet one says too.
func (w *writer) closed(sheets [][]string) [][]string {
	last, words := len(sheets)-1, w.block(w.close)
	if last >= 0 && len(sheets[last])+1+len(words) <= w.sheetLines()-2 {
		sheets[last] = append(append(sheets[last], ""), words...)
	}
	return sheets
}

// close is the closing words.
func (w *writer) close() { w.say(0, estimate) }

func jobName(o *winding.Outcome) string {
	if o.Job == "" {
		return "job without a name"
	}
	return o.Job
}
