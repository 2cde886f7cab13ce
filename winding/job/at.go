package job

import (
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// at points at the value of a path such as "trial[1].gauge"; nil where no field has that path, or its
// table has fewer entries.
func (j *Job) at(path string) any {
	in, known := InputAt(path)
	_, i, _ := SplitPath(path)
	if !known || i < 0 || i >= j.entries(in.Table) {
		return nil
	}
	return in.at(j, i)
}

// entries is how often a table is there: 1 for a plain one.
func (j *Job) entries(table string) int {
	switch table {
	case "spin":
		return len(j.Spins)
	case "short":
		return len(j.Shorts)
	case "amps":
		return len(j.Amps)
	case "coil":
		return len(j.Coils)
	case "drive_point":
		return len(j.Drive.Points)
	case "trial":
		return len(j.Trials)
	case "wound":
		return len(j.AsWound)
	}
	return 1
}

// GaugeAt is the wire at a path such as "trial[1].gauge"; zero where there is none.
func (j *Job) GaugeAt(path string) wiretable.Gauge {
	if g, ok := j.at(path).(*wiretable.Gauge); ok {
		return *g
	}
	return wiretable.Gauge{}
}

// ReadingAt is the number given at a path, in the base unit of its field; ok is false where nothing, or
// no number, was given.
func (j *Job) ReadingAt(path string) (r quantity.Reading, ok bool) {
	if at, number := j.at(path).(*quantity.Reading); number {
		r = *at
	}
	return r, r.Given()
}

// GivenAt reports whether something was given at a path; false where it has a default, which a choice
// or a metal has always.
func (j *Job) GivenAt(path string) bool {
	switch at := j.at(path).(type) {
	case *quantity.Reading:
		return at.Given()
	case *wiretable.Gauge:
		return !at.IsZero()
	case *string:
		return *at != ""
	case *[]int:
		return len(*at) > 0
	}
	return false
}
