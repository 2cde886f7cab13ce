package card

import (
	"fmt"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// Options say how the text is set.
type Options struct {
	// ASCII writes Ω as ohm, ² as 2 and so on: every byte is then below 0x7f.
	ASCII bool
	// Units are those to show; volts, amps and the like have only one.
	Units quantity.Choice
	// Document is the job file, for the inputs as they were typed; without it the card
	// leaves their list to the file.
	Document *job.Document
}

// writer is a paper and what is written about.
type writer struct {
	*paper
	b     *winding.Bench
	job   job.Job
	o     *winding.Outcome
	opt   Options
	known missingList
}

func newWriter(b *winding.Bench, o *winding.Outcome, opt Options) *writer {
	return &writer{paper: newPaper(opt.ASCII), b: b, job: b.Job(), o: o, opt: opt}
}

// estimate is what every card and report says about its figures.
const estimate = "Figures are design estimates, not a rating. Local codes and licensed practice decide what may be built, connected and run."

// Text is the winding card of one trial, counted from 0: what to wind, how, and what
// the finished winding should read. No line is wider than 80 columns, none ends in a
// blank, the last ends with a newline. A trial that does not exist gives a card that
// says so.
func Text(b *winding.Bench, o *winding.Outcome, trial int, opt Options) string {
	w := newWriter(b, o, opt)
	if trial < 0 || trial >= len(o.Trials) {
		w.title("WINDING CARD", jobName(o))
		w.say(2, fmt.Sprintf("There is no trial %d: this job has %s.", trial+1, count(len(o.Trials), "trial")))
		return w.String()
	}
	t := &o.Trials[trial]
	w.title("WINDING CARD, TRIAL "+t.Name, jobName(o))
	w.head(t.Note)
	w.settleFirst(t)
	w.machine()
	w.oldWinding()
	w.newWinding(t, trial)
	w.wireToBuy(t)
	w.slotTable(trial)
	w.windingOrder(trial)
	w.joints(t, trial)
	w.readings(t, trial)
	w.limits(t)
	w.charging(t)
	w.battery()
	w.drive(t)
	w.cautions(t.Name)
	w.findings(t.Name)
	w.layoutNotes(trial)
	w.inputs(trial)
	w.derivations(t)
	w.close()
	return w.String()
}

// Report is every figure of every trial, side by side, with its unit, how it stands
// against the reference, the limits with their reasons and sources, the job's own
// speeds, findings and cautions. Width and ends of lines are as for [Text].
func Report(b *winding.Bench, o *winding.Outcome, opt Options) string {
	w := newWriter(b, o, opt)
	w.title("REPORT", jobName(o))
	w.head("")
	w.machine()
	w.oldWinding()
	w.windings()
	w.comparison()
	w.moreFigures()
	w.allLimits()
	w.allOperating()
	w.allSpeeds()
	w.battery()
	w.allDrives()
	w.findings("")
	w.cautions("")
	w.inputs(-1)
	w.rowHelp()
	w.close()
	return w.String()
}

// close is the last words.
func (w *writer) close() {
	w.rule('=')
	w.say(2, estimate)
}

func jobName(o *winding.Outcome) string {
	if o.Job == "" {
		return "job without a name"
	}
	return o.Job
}
