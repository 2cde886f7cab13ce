package winding

import (
	"math"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// # What a meter's figure stands for
//
// Everything uses the volts rms between two leads at a speed. From a lead to the star point they are
// 1/√3 of that in star; in delta there is no such point. Behind a bridge a capacitor holds the peak
// between leads less two diodes; a meter alone shows the mean, 3/π of the peak with three phases and
// 2/π with one, less the diodes (any power electronics text). Half wave shows 1/π of the peak, less one
// diode; a doubler always has its capacitors and shows twice the peak, less two. The old winding is
// assumed to have had the rectifier of the new one. A plain meter shows 1.11 times the rectified mean,
// which is the rms of a sine; for the volts of a real machine it is nearer to the fundamental than true
// rms, since harmonic h counts in it by 1/h. A peak-reading meter is divided by √2: with a flat or
// peaked wave that is a few per cent off.
//
// A frequency stands for a speed by f = p·n/60.

// heardSpins is the spin-up readings as volts rms between leads, each at a speed.
func heardSpins(spins []job.SpinReading, m *machine, conn layout.Connection, dc *dcSide) []job.SpinReading {
	heard := make([]job.SpinReading, len(spins))
	for i, s := range spins {
		if !s.RPM.Given() && s.Hertz.Given() && m.Poles.Given() {
			s.RPM = scaled(s.Hertz, 120/m.Poles.Value)
		}
		s.LineVolts = lineVolts(s, m, conn, dc)
		heard[i] = s
	}
	return heard
}

// lineVolts is a reading's volts rms between leads.
func lineVolts(s job.SpinReading, m *machine, conn layout.Connection, dc *dcSide) quantity.Reading {
	v := s.LineVolts
	switch s.Across {
	case job.AcrossBridge, job.AcrossCapacitor:
		part := 1.0
		if s.Across == job.AcrossBridge {
			part = dc.openMean(m.phases)
		}
		v.Value += dc.rectifier.InLoop() * dc.diodeVolts.Value
		return scaled(v, 1/(math.Sqrt2*part*dc.openPeak(quantity.Of(1)).Value))
	case job.AcrossStar:
		v = scaled(v, m.linePerPhase(conn))
	}
	if s.Meter == job.MeterPeak {
		v = scaled(v, 1/math.Sqrt2)
	}
	return v
}

// scaled is a reading and its ± times a factor; one that was not given stays so.
func scaled(r quantity.Reading, by float64) quantity.Reading {
	if !r.Given() {
		return r
	}
	r.Value, r.PlusMinus = r.Value*by, r.PlusMinus*by
	return r
}

// allLeads is amps in a lead with all leads of a set shorted, from a reading with only two of three
// shorted: 2/√3 as many, in star (√3·E through 2·Z against E through Z) and in delta alike, for a
// machine without saliency.
func allLeads(s job.ShortReading, m *machine) quantity.Reading {
	if s.Leads == job.LeadsTwo && m.phases == 3 {
		return scaled(s.LineAmps, 2/math.Sqrt(3))
	}
	return s.LineAmps
}

// heardShorts is the short circuits as amps in a lead with all leads of a set shorted.
func heardShorts(shorts []job.ShortReading, m *machine) []job.ShortReading {
	heard := make([]job.ShortReading, len(shorts))
	for i, s := range shorts {
		s.LineAmps = allLeads(s, m)
		heard[i] = s
	}
	return heard
}

// polesApart is how far poles by frequency and speed may be from those counted, relative: the errors of
// two tachometers, and less than the step to the next pair at 60 poles.
const polesApart = 0.03

// otherPoles reports whether a reading of speed and frequency is that of another number of poles.
func otherPoles(s job.SpinReading, poles quantity.Reading) bool {
	return s.Hertz.Given() && s.RPM.Given() && poles.Given() && math.Abs(120*s.Hertz.Value/s.RPM.Value/poles.Value-1) > polesApart
}

// misread reports whether reading i itself is wrong where it contradicts the count of the poles:
// another one with speed and frequency confirms the count, or no machine has so many.
func misread(i int, spins []job.SpinReading, poles quantity.Reading) bool {
	for k, s := range spins {
		if k != i && s.Hertz.Given() && s.RPM.Given() && !otherPoles(s, poles) {
			return true
		}
	}
	heard := 120 * spins[i].Hertz.Value / spins[i].RPM.Value
	pairs := math.Round(heard / 2)
	return pairs < 1 || math.Abs(heard/(2*pairs)-1) > polesApart
}

// markPoles marks a pole count that a frequency contradicts, and so what follows from it.
func markPoles(m *machine, spins []job.SpinReading) {
	for i, s := range spins {
		if otherPoles(s, m.Poles) && !misread(i, spins, m.Poles) {
			m.Poles.Origin = quantity.Guessed
		}
	}
}

// doubtFrequency compares the pole count with p = 120·f/n.
func doubtFrequency(d *doubts, spins []job.SpinReading, poles quantity.Reading) {
	for i, s := range spins {
		at := func(name string) string { return job.PathOf("spin", i, name) }
		switch {
		case !s.Hertz.Given():
		case !s.RPM.Given() && !poles.Given():
			d.add(Finding{Severity: Doubt, Path: at("frequency"), Fix: "count the poles, or give the speed", Source: "f = p·n/120"},
				"the reading is not used: a frequency is a speed only where the poles are known")
		case s.RPM.Given() && !poles.Given():
			d.add(Finding{Severity: Note, Path: at("frequency"), Source: "f = p·n/120"},
				"%.3g Hz at %.0f rpm is a machine of %.0f poles", s.Hertz.Value, s.RPM.Value, 120*s.Hertz.Value/s.RPM.Value)
		case otherPoles(s, poles) && misread(i, spins, poles):
			d.add(Finding{Severity: Doubt, Path: at("frequency"), Fix: "read speed and frequency again", Source: "f = p·n/120"},
				"%.3g Hz at %.0f rpm is a machine of %.3g poles, not of %.0f", s.Hertz.Value, s.RPM.Value, 120*s.Hertz.Value/s.RPM.Value, poles.Value)
		case otherPoles(s, poles):
			d.add(Finding{Severity: Broken, Path: "machine.poles", Fix: "count the poles again; else read speed and frequency again", Source: "f = p·n/120"},
				"%.3g Hz at %.0f rpm is a machine of %.3g poles, not of %.0f", s.Hertz.Value, s.RPM.Value, 120*s.Hertz.Value/s.RPM.Value, poles.Value)
		}
	}
}
