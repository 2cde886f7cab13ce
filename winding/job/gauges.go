package job

import "slotwright/wiretable"

// GaugeAt is the wire at a path, as "trial[1].gauge"; zero where there is none.
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
