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
	"slotwright/winding/parallel"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"
)

// The states of a winding.
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

// Winding is one winding of a job: a trial as it is planned, or a record of what was put in.
type Winding struct {
	Trial string `json:"trial,omitempty"`
	// Span is the throw less one: 3 from slot 1 to 4.
	Span int    `json:"span_slots,omitempty"`
	Wire string `json:"wire,omitempty"`
	// Turns are measured where a record counts them, else planned.
	Turns quantity.Figure `json:"turns_per_coil"`
	// CutInRPM is where it begins to charge: as read, else as computed.
	CutInRPM quantity.Figure `json:"cut_in_rpm"`
	// Date is the record's, as typed, else the file's: 2026-03-14.
	Date  string `json:"date,omitempty"`
	State string `json:"state"`

	bareMM float64
}

// Entry is one job of a folder. Its own winding is the one wound last; if none was, the reference
// trial.
type Entry struct {
	File  string `json:"file"`
	Job   string `json:"job,omitempty"`
	Slots int    `json:"slots,omitempty"`
	Poles int    `json:"poles,omitempty"`
	Winding
	// Others are the rest: what was wound before, the latest first; for a job with nothing wound, its
	// other trials.
	Others []Winding `json:"others,omitempty"`
	// Problem says why a file could not be used; only File and State then mean anything.
	Problem string `json:"problem,omitempty"`

	notes   string
	records []record
}

// record is a winding that was wound, and its machine.
type record struct {
	wound.Record
	machine kin
}

// LeftOut is something in a folder that is no job file.
type LeftOut struct {
	Name string `json:"name"`
	Why  string `json:"why"`
}

// Why something is left out.
const (
	notTOML  = "its name does not end in .toml"
	isFolder = "a folder: name it to list what is in it"
	noFile   = "neither a file nor a folder"
)

// Read is every job of a folder, by file name, and what else is there. A job file that cannot be used
// is an entry with its problem. Files are read on all processors, some milliseconds each. The error is
// that of the folder, in plain words.
func Read(folder string) (jobs []Entry, left []LeftOut, err error) {
	files, err := os.ReadDir(folder)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil, fmt.Errorf("%s: there is no such folder", folder)
	case err != nil:
		if info, e := os.Stat(folder); e == nil && !info.IsDir() {
			return nil, nil, fmt.Errorf("%s: read a file, expected a folder of jobs", folder)
		}
		return nil, nil, fmt.Errorf("%s: the folder cannot be read; check who owns it", folder)
	}
	var names []fs.DirEntry
	for _, f := range files {
		if written(f) {
			continue // of a job here: not worth mentioning
		}
		if why := notAJob(folder, f); why != "" {
			left = append(left, LeftOut{f.Name(), why})
		} else {
			names = append(names, f)
		}
	}
	return entries(folder, names), left, nil
}

// written reports whether a file is by its name a card or a drawing, which the program itself writes
// beside a job: wheel-card-b.txt, wheel-amps.svg.
func written(f fs.DirEntry) bool {
	name := strings.ToLower(f.Name())
	card := strings.HasSuffix(name, ".txt") && strings.Contains(name, "-card-")
	return f.Type().IsRegular() && (card || strings.HasSuffix(name, ".svg"))
}

// notAJob is why something in a folder is no job file, "" when its name is that of one.
func notAJob(folder string, f fs.DirEntry) string {
	info, err := os.Stat(filepath.Join(folder, f.Name())) // through links
	switch {
	case err == nil && info.IsDir():
		return isFolder
	case !strings.EqualFold(filepath.Ext(f.Name()), ".toml"):
		return notTOML
	case err == nil && !info.Mode().IsRegular():
		return noFile
	}
	return ""
}

// entries reads files concurrently.
func entries(folder string, files []fs.DirEntry) []Entry {
	list := make([]Entry, len(files))
	parallel.Each(len(files), func(i int) { list[i] = entry(folder, files[i]) })
	return list
}

// entry is one file.
func entry(folder string, f fs.DirEntry) Entry {
	no := quantity.Missing("not given")
	e := Entry{File: f.Name(), Winding: Winding{State: Planned, Turns: no, CutInRPM: no}}
	d, _, err := job.Load(filepath.Join(folder, f.Name()))
	if err != nil {
		e.Problem = err.Error()
		return e
	}
	if p := d.Problems(); len(p) > 0 {
		e.Problem = p[0].Error()
		return e
	}
	date := ""
	if info, err := os.Stat(filepath.Join(folder, f.Name())); err == nil {
		date = info.ModTime().Format("2006-01-02")
	}
	e.tell(d.Job(), date)
	return e
}

// tell fills in what the job says; date is its file's.
func (e *Entry) tell(j job.Job, date string) {
	b := winding.Prepare(j)
	e.Job, e.notes, e.Slots, e.Poles = j.Name, j.Notes, j.Machine.Slots.Whole(), j.Machine.Poles.Whole()
	e.Date = date
	var list []Winding
	for i, r := range b.Records() {
		e.records = append(e.records, record{r, kinOf(&j.Machine)})
		list = append(list, asWound(r, j.AsWound[i].Turns.Given() || len(j.AsWound[i].CoilTurns) > 0, date))
	}
	slices.Reverse(list) // of two on one day the later in the file was wound later
	slices.SortStableFunc(list, func(a, b Winding) int { return cmp.Compare(b.Date, a.Date) })
	if len(list) == 0 {
		list = trials(b, j, date)
	}
	if len(list) > 0 {
		e.Winding, e.Others = list[0], list[1:]
	}
}

// trials is those of a job, the reference first.
func trials(b *winding.Bench, j job.Job, date string) []Winding {
	var list []Winding
	for i, t := range j.Trials {
		o := b.Static(t)
		if o.Turns.Known() {
			o.Turns.Origin = quantity.Planned
		}
		w := Winding{o.Name, o.Span, o.Wire, o.Turns, o.CutInRPM, date, Planned, o.BareMM.Value}
		if i == b.Reference() {
			list = append([]Winding{w}, list...)
		} else {
			list = append(list, w)
		}
	}
	return list
}

// asWound is a record as a line; counted says that it has turns of its own.
func asWound(r wound.Record, counted bool, date string) Winding {
	w := Winding{r.Trial, r.Span, r.Wire, r.Turns, r.CutInRPM.Read, cmp.Or(r.Date, date), Wound, r.BareMM.Value}
	if w.Turns.Known() && !counted {
		w.Turns.Origin = quantity.Planned
	}
	if !w.CutInRPM.Known() {
		w.CutInRPM = r.CutInRPM.Expected
	}
	if r.Proved() {
		w.State = Proved
	}
	return w
}
