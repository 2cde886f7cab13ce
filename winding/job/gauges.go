package job

import (
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// GaugeAt is the wire at a path such as "trial[1].gauge"; zero where there is none.
func (j *Job) GaugeAt(path string) wiretable.Gauge {
	many := map[string]int{"trial": len(j.Trials), "wound": len(j.AsWound)}
	for i := range Fields {
		f := &Fields[i]
		t, _ := TableOf(f.Table)
		n := 1
		if t.Many() {
			n = many[f.Table]
		}
		for k := 0; f.Kind == Wire && k < n; k++ {
			if f.PathAt(k) == path {
				return *f.at(j, k).(*wiretable.Gauge)
			}
		}
	}
	return wiretable.Gauge{}
}

// ReadingAt is the number given at a path, in the base unit of its field; ok is false where nothing, or
// no number, was given.
func (j *Job) ReadingAt(path string) (r quantity.Reading, ok bool) {
	in, known := InputAt(path)
	if !known || in.Kind != Number {
		return r, false
	}
	t, _ := TableOf(in.Table)
	for i := range t.Most {
		if in.PathAt(i) == path {
			r = *in.at(j, i).(*quantity.Reading)
		}
	}
	return r, r.Given()
}
