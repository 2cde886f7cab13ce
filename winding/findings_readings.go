package winding

import (
	"fmt"

	"slotwright/winding/readings"
)

// doubtTogether is what the readings say of each other.
func (b *Bench) doubtTogether(d *doubts) {
	f := b.fit
	b.doubtWhole(d)
	if !f.ok {
		if f.why != "" && len(b.job.Amps) > 0 {
			d.add(Doubt, "amps[0].current", "", "", "", "the amps readings are not used: %s", f.why)
		}
		return
	}
	for _, c := range f.fit.Readings() {
		path := f.pathOf(c.Reading)
		switch {
		case c.Aside != "":
			d.add(Doubt, path, "", "", "", "%s, is not used: %s", kindWords(c.Kind), c.Aside)
		case c.Off > 1:
			read, unit := c.Amps, "A"
			switch c.Kind {
			case readings.SpinUp, readings.TrialCoil:
				read, unit = c.Volts, "V"
			case readings.Bridge:
				read, unit = c.Henries*1000, "mH"
				c.Shown *= 1000
			}
			d.add(Doubt, path, "", "take it again, its speed too", "least squares on the exact bridge",
				"%s does not agree with the others: %.3g %s where they speak of %.3g %s, %.1f times what such a reading may be off", kindWords(c.Kind), read, unit, c.Shown, unit, c.Off)
		}
	}
}

// doubtWhole is about readings that lack something.
func (b *Bench) doubtWhole(d *doubts) {
	for i, s := range b.job.Amps {
		if !s.RPM.Given() || !s.Amps.Given() || !s.Volts.Given() {
			d.add(Doubt, fmt.Sprintf("amps[%d].current", i), "", "an amps reading is a speed, amps and the volts at the bridge", "", "the amps reading is not whole and is not used")
		}
	}
	for i, s := range b.shorts {
		if b.fit.ok && s.LineAmps.Given() && int(s.Sets.Or(float64(b.machine.sets))) < b.machine.sets {
			d.add(Note, fmt.Sprintf("short[%d].sets", i), "", "join the leads of both sets, each among themselves", "", "read with one set alone, the other idle: it is not used along with amps that both gave")
		}
	}
}

// kindWords is a kind of reading at the head of a sentence.
func kindWords(k readings.Kind) string {
	switch k {
	case readings.Plate:
		return string(k)
	case readings.Began:
		return "the speed at which it began to charge"
	}
	return "the reading of " + string(k)
}

// pathOf is the field that a reading stands in.
func (f *fitted) pathOf(r readings.Reading) string {
	for _, t := range f.told {
		if t.Kind == r.Kind && t.RPM == r.RPM && (t.Volts == r.Volts || t.Kind == readings.Short) {
			return t.path
		}
	}
	return ""
}
