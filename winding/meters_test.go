package winding

import (
	"math"
	"strings"
	"testing"

	"slotwright/winding/charge"
	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 14.6 V rms between leads at 1200 rpm, 12 poles, by hand: 120 Hz; 14.6/√3 = 8.429 V to the
// star point; √2·14.6 = 20.65 V peak, 11.92 V peak to the star point; behind a bridge of
// 0.75 V a diode 20.65 - 1.5 = 19.15 V with a capacitor, 3/π·20.65 - 1.5 = 18.22 V without.
func TestSpinUpSevenWays(t *testing.T) {
	j := loadJob(t, "spin-up-seven-ways")
	require.Len(t, j.Spins, 7)
	b := Prepare(j)
	for i, s := range b.spins {
		assert.InEpsilon(t, 1200, s.RPM.Value, 1e-12, "reading %d", i)
		assert.InEpsilon(t, 14.6, s.LineVolts.Value, 5e-4, "reading %d", i)
	}
	o := b.Outcome()
	assert.InEpsilon(t, 14.6/1.2, o.Old.LinePer1000RPM.Value, 3e-4)
	for _, f := range o.Findings {
		assert.NotContains(t, f.Path, "spin", f.Text)
		assert.NotEqual(t, "machine.poles", f.Path)
	}
}

// A single phase has no star point and its bridge two pulses: 2/π of the peak, by hand
// 0.6366·20.65 - 1.5 = 11.65 V. In delta there is no star point either.
func TestSpinUpOfOnePhaseBehindABridge(t *testing.T) {
	one := machine{phases: 1}
	dc := dcSide{diodeVolts: quantity.Of(0.75)}
	s := job.SpinReading{LineVolts: quantity.Known(11.65), Across: job.AcrossBridge}
	assert.InEpsilon(t, 14.6, lineVolts(s, &one, layout.Star, &dc).Value, 1e-3)
	s = job.SpinReading{LineVolts: plusMinusOf(8.43, 0.1), Across: job.AcrossStar}
	assert.InEpsilon(t, 8.43, lineVolts(s, &one, layout.Star, &dc).Value, 1e-12)
	three := machine{phases: 3}
	assert.InEpsilon(t, 8.43, lineVolts(s, &three, layout.Delta, &dc).Value, 1e-12)
	assert.InEpsilon(t, 0.1*math.Sqrt(3), lineVolts(s, &three, layout.Star, &dc).PlusMinus, 1e-12)
}

// Half wave has half of that mean and one diode, 20.65/π - 0.75 = 5.823 V, with a capacitor 19.90 V;
// a doubler has its capacitors always, 2·20.65 - 1.5 = 39.80 V.
func TestSpinUpBehindHalfWaveAndDoubler(t *testing.T) {
	one := machine{phases: 1}
	for _, c := range []struct {
		way    charge.Rectifier
		across string
		volts  float64
	}{
		{charge.HalfWave, job.AcrossBridge, 5.823}, {charge.HalfWave, job.AcrossCapacitor, 19.90},
		{charge.Doubler, job.AcrossBridge, 39.80}, {charge.Doubler, job.AcrossCapacitor, 39.80},
	} {
		dc := dcSide{rectifier: c.way, diodeVolts: quantity.Of(0.75)}
		s := job.SpinReading{LineVolts: quantity.Known(c.volts), Across: c.across}
		assert.InEpsilon(t, 14.6, lineVolts(s, &one, layout.Star, &dc).Value, 1e-3, "%s, %s", c.way, c.across)
	}
}

func plusMinusOf(v, pm float64) quantity.Reading {
	return quantity.Reading{Value: v, PlusMinus: pm, Origin: quantity.Measured}
}

// 140 Hz at 1200 rpm is 14 poles, p = 120·f/n.
func TestFrequencyChecksThePoles(t *testing.T) {
	j := loadJob(t, "spin-up-seven-ways")
	j.Spins[0].Hertz = quantity.Known(140)
	text := ""
	for _, f := range Evaluate(j).Findings {
		if f.Path == "machine.poles" {
			text = f.Text
		}
	}
	assert.Equal(t, "140 Hz at 1200 rpm is a machine of 14 poles, not of 12", text)
}

// A frequency of which there is no machine, or one that another reading contradicts with the count, is
// doubted itself, and the poles are not: 7.9 Hz at 1000 rpm is 0.948 poles, 79 Hz 9.48, 120 Hz at 1000 rpm
// 14.4; 100 Hz at 1000 rpm bears 12 out. p = 120·f/n.
func TestAFrequencyThatIsOddIsDoubtedItself(t *testing.T) {
	spin := func(hertz, rpm float64) job.SpinReading {
		return job.SpinReading{Hertz: quantity.Known(hertz), RPM: quantity.Known(rpm), LineVolts: quantity.Known(8)}
	}
	for _, c := range []struct {
		spins []job.SpinReading
		at    string
	}{
		{[]job.SpinReading{spin(100, 1000), spin(7.9, 1000)}, "spin[1].frequency"},
		{[]job.SpinReading{spin(7.9, 1000)}, "spin[0].frequency"},
		{[]job.SpinReading{spin(79, 1000)}, "spin[0].frequency"},
		{[]job.SpinReading{spin(140, 1200), spin(100, 1000)}, "spin[0].frequency"},
		{[]job.SpinReading{spin(140, 1200)}, "machine.poles"},
		{[]job.SpinReading{spin(140, 1200), spin(70, 600)}, "machine.poles"},
	} {
		j := loadJob(t, "spin-up-seven-ways")
		j.Spins = c.spins
		o := Evaluate(j)
		at := map[string]bool{}
		for _, f := range o.Findings {
			if strings.Contains(f.Text, "is a machine of") {
				at[f.Path] = true
			}
		}
		assert.Equal(t, map[string]bool{c.at: true}, at)
		assert.Equal(t, c.at == "machine.poles", Prepare(j).machine.Poles.Origin == quantity.Guessed)
	}
}

// Two leads joined give √3/2 of the amps of all three, in star and in delta: package drive has
// both circuits, worked out each by itself.
func TestTwoLeadsJoined(t *testing.T) {
	m := machine{phases: 3}
	for _, delta := range []bool{false, true} {
		pair, all := drive.ShortPair(10, 0.1, 0.7, 1000, delta), drive.ShortAll(10, 0.1, 0.7, 1000, 3, delta)
		got := allLeads(job.ShortReading{LineAmps: quantity.Known(pair.LeadAmps), Leads: job.LeadsTwo}, &m)
		assert.InEpsilon(t, all.LeadAmps, got.Value, 1e-12)
	}
	j := loadJob(t, "spin-up-seven-ways")
	assert.InEpsilon(t, 31, Prepare(j).shorts[0].LineAmps.Value, 1e-3, "26.85 A · 2/√3")
}

// Five turns at 1000 rpm of 12 poles, 100 Hz, on 0.72 V over a full pitch: by E = 4.44·f·N·Φ
// (any textbook) Φ = 0.72/(4.44·100·5) = 0.3243 mWb, √2·π for 4.44. Over two of three slots
// the pitch factor is sin 60° = 0.8660, as in the tables of testdata/layout, and the volts 0.6235.
func TestTrialCoilGivesTheFlux(t *testing.T) {
	j := loadJob(t, "trial-coil")
	both := Evaluate(j)
	assert.InEpsilon(t, 0.3243, both.Machine.FluxMWb.Value, 1e-3)
	assert.Equal(t, "trial coils", both.Machine.FluxFrom)
	for i := range j.Coils {
		k := j
		k.Coils = j.Coils[i : i+1]
		assert.InEpsilon(t, 0.3243, Evaluate(k).Machine.FluxMWb.Value, 1e-3, "coil %d", i)
	}
	// 17 turns in 6 coils of full pitch a phase: 102/5 times the volts of the coil, and √3.
	assert.InEpsilon(t, 0.72*102/5*math.Sqrt(3), both.Trials[0].LinePer1000RPM.Value, 1e-3)

	k := j
	k.Coils = []job.CoilReading{j.Coils[0]}
	k.Coils[0].Span = quantity.Known(6) // both sides under like poles: nothing
	o := Evaluate(k)
	assert.False(t, o.Machine.FluxMWb.Known())
	found := false
	for _, f := range o.Findings {
		found = found || f.Path == "coil[0].span"
	}
	assert.True(t, found)
}

// A machine of a textbook, example EX003 of testdata/winding/emf_examples.csv (12 poles, 180 slots,
// 0.05 Wb, 600 rpm): its 300 turns a phase give 3822.9 V with kd = 0.957, so a coil of ten
// turns over a full pole of 15 slots gives 3822.9·10/300/0.957 V.
func TestTrialCoilOfATextbookMachine(t *testing.T) {
	j := job.Job{}
	j.Machine.Slots, j.Machine.Poles = quantity.Known(180), quantity.Known(12)
	j.Coils = []job.CoilReading{{Turns: quantity.Known(10), Span: quantity.Known(15), RPM: quantity.Known(600), Volts: quantity.Known(3822.9 * 10 / 300 / 0.957)}}
	assert.InEpsilon(t, 50, Evaluate(j).Machine.FluxMWb.Value, 2e-3)
}

// Spin-up of the old winding comes before a trial coil, a trial coil before the speed at which
// the old winding began to charge.
func TestTrialCoilsRank(t *testing.T) {
	j := loadJob(t, "spin-up-seven-ways")
	j.Coils = loadJob(t, "trial-coil").Coils
	j.Old.CutInRPM = quantity.Known(850)
	assert.Contains(t, Evaluate(j).Machine.FluxFrom, "spin-up")
	j.Spins = nil
	assert.Contains(t, Evaluate(j).Machine.FluxFrom, "trial coil")
}
