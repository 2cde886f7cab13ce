package job

import "slotwright/wiretable"

// GaugeAt is the wire at a path, as "trial[1].gauge"; zero where there is none.
func (j *Job) GaugeAt(path string) wiretable.Gauge {
	for _, f := range Fields {
		if f.Kind != Wire {
			continue
		}
		for i := range max(1, len(j.Trials)) {
			if f.PathAt(i) == path && (f.Table != "trial" || i < len(j.Trials)) {
				return *f.at(j, i).(*wiretable.Gauge)
			}
		}
	}
	return wiretable.Gauge{}
}
