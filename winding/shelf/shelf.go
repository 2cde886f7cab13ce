package shelf

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// The states of a job.
const (
	// Planned is one of which nothing is recorded as wound.
	Planned = "planned"
	// Wound is one that was wound.
	Wound = "wound"
	// Proved is one whose finished winding was seen to charge, or to give its volts.
	Proved = "proved"
)

// States lists them, in the order a job goes through them.
func States() []string { return []string{Planned, Wound, Proved} }

// Entry is one job of a folder. Turns, wire and throw are of the winding that was wound
// last, else of the reference trial.
type Entry struct {
	File  string `json:"file"`
	Job   string `json:"job,omitempty"`
	Slots int    `json:"slots,omitempty"`
	Poles int    `json:"poles,omitempty"`
	// Span is the throw less one: 3 from slot 1 to 4.
	Span  int             `json:"span_slots,omitempty"`
	Trial string          `json:"trial,omitempty"`
	Wire  string          `json:"wire,omitempty"`
	Turns quantity.Figure `json:"turns_per_coil"`
	// CutInRPM is where it begins to charge: as it was read, else as worked out.
	CutInRPM quantity.Figure `json:"cut_in_rpm"`
	// Date is that of the last record, as typed, else of the file: 2026-03-14.
	Date  string `json:"date,omitempty"`
	State string `json:"state"`
	// Problem says why a file could not be used; nothing but File and State then means
	// anything.
	Problem string `json:"problem,omitempty"`

	notes   string
	bareMM  float64
	records []winding.WoundOutcome
}

// Read is every job of a folder, by file name. Files that do not end in .toml are left
// alone; one that cannot be used is an entry with its problem. The error is that of the
// folder, in plain words.
func Read(folder string) ([]Entry, error) {
	files, err := os.ReadDir(folder)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, fmt.Errorf("%s: there is no such folder", folder)
	case err != nil:
		if info, e := os.Stat(folder); e == nil && !info.IsDir() {
			return nil, fmt.Errorf("%s: read a file, expected a folder of jobs", folder)
		}
		return nil, fmt.Errorf("%s: the folder cannot be read; check who owns it", folder)
	}
	var list []Entry
	for _, f := range files {
		if !f.IsDir() && strings.EqualFold(filepath.Ext(f.Name()), ".toml") {
			list = append(list, entry(folder, f))
		}
	}
	return list, nil
}

// entry is one file.
func entry(folder string, f fs.DirEntry) Entry {
	e := Entry{File: f.Name(), State: Planned, Turns: quantity.Missing("not given"), CutInRPM: quantity.Missing("not given")}
	d, _, err := job.Load(filepath.Join(folder, f.Name()))
	if err != nil {
		e.Problem = err.Error()
		return e
	}
	if p := d.Problems(); len(p) > 0 {
		e.Problem = p[0].Error()
		return e
	}
	if info, err := f.Info(); err == nil {
		e.Date = info.ModTime().Format("2006-01-02")
	}
	e.tell(d.Job())
	return e
}

// tell fills in what the job says.
func (e *Entry) tell(j job.Job) {
	b := winding.Prepare(j)
	e.Job, e.notes, e.Slots, e.Poles = j.Name, j.Notes, j.Machine.Slots.Whole(), j.Machine.Poles.Whole()
	if i := b.Reference(); i < len(j.Trials) {
		t := b.Static(j.Trials[i])
		e.Trial, e.Wire, e.Turns, e.CutInRPM, e.Span, e.bareMM = t.Name, t.Wire, t.Turns, t.CutInRPM, t.Span, t.BareMM.Value
	}
	e.records = b.Wound()
	if len(e.records) == 0 {
		return
	}
	e.State = Wound
	last := e.records[0]
	for _, r := range e.records {
		if r.Date >= last.Date {
			last = r
		}
		if r.CutInRPM.Read.Known() || r.LineVolts.Read.Known() && r.LeadOhms20.Read.Known() {
			e.State = Proved
		}
	}
	e.Trial, e.Wire, e.Turns, e.bareMM = last.Trial, last.Wire, last.Turns, last.BareMM.Value
	if e.CutInRPM = last.CutInRPM.Read; !e.CutInRPM.Known() {
		e.CutInRPM = last.CutInRPM.Expected
	}
	if last.Date != "" {
		e.Date = last.Date
	}
}

// Find is the entries that have a text in any word about them, without regard to case.
func Find(list []Entry, text string) []Entry {
	text = strings.ToLower(strings.TrimSpace(text))
	return slices.DeleteFunc(slices.Clone(list), func(e Entry) bool {
		about := strings.Join([]string{e.File, e.Job, e.notes, e.Wire, e.State, e.Date, fmt.Sprintf("%d/%d", e.Slots, e.Poles)}, "\n")
		return !strings.Contains(strings.ToLower(about), text)
	})
}

// orders is what a shelf can be sorted by.
var orders = []struct {
	name string
	less func(a, b *Entry) int
}{
	{"file", func(a, b *Entry) int { return cmp.Compare(a.File, b.File) }},
	{"machine", func(a, b *Entry) int { return cmp.Compare(strings.ToLower(a.Job), strings.ToLower(b.Job)) }},
	{"slots", func(a, b *Entry) int { return cmp.Or(cmp.Compare(a.Slots, b.Slots), cmp.Compare(a.Poles, b.Poles)) }},
	{"wire", func(a, b *Entry) int { return cmp.Compare(a.bareMM, b.bareMM) }},
	{"turns", func(a, b *Entry) int { return known(a.Turns, b.Turns) }},
	{"begins", func(a, b *Entry) int { return known(a.CutInRPM, b.CutInRPM) }},
	{"date", func(a, b *Entry) int { return cmp.Compare(a.Date, b.Date) }},
	{"state", func(a, b *Entry) int {
		return cmp.Compare(slices.Index(States(), a.State), slices.Index(States(), b.State))
	}},
}

// known compares figures; one that is not known comes last.
func known(a, b quantity.Figure) int {
	if a.Known() != b.Known() {
		if a.Known() {
			return -1
		}
		return 1
	}
	return cmp.Compare(a.Value, b.Value)
}

// Orders is what [Sort] can sort by.
func Orders() []string {
	names := make([]string, len(orders))
	for i, o := range orders {
		names[i] = o.name
	}
	return names
}

// Sort is the entries by one of [Orders], the smallest first; alike ones stay by file. A
// name that is none of them leaves them as they are.
func Sort(list []Entry, by string) []Entry {
	list = slices.Clone(list)
	for _, o := range orders {
		if o.name == by {
			slices.SortStableFunc(list, func(a, b Entry) int { return o.less(&a, &b) })
		}
	}
	return list
}
