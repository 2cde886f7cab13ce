package wound_test

import (
	"slices"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pairsRecord is a record of the example's trial A with pairs read as multiples of the plan, and its
// outcome.
func pairsRecord(t *testing.T, connection string, strands string, ohms, volts [3]float64) (wound.Record, winding.Outcome) {
	t.Helper()
	d := job.Example().Set("trial[0].connection", connection, quantity.Choice{}).Set("trial[0].strands", strands, quantity.Choice{})
	require.Empty(t, d.Problems())
	j := d.Job()
	made := winding.Evaluate(j).Trials[0]
	of := func(times [3]float64, plan float64) (each []float64, mean quantity.Reading) {
		for _, k := range times {
			each, mean.Value = append(each, k*plan), mean.Value+k*plan/3
		}
		return each, quantity.Known(mean.Value)
	}
	r := job.AsWound{Trial: j.Trials[0].Name, LeadOhmsC: quantity.Known(20), RPM: quantity.Known(1000)}
	r.LeadPairs, r.LeadOhms = of(ohms, made.LeadOhms20.Value)
	r.LinePairs, r.LineVolts = of(volts, made.LinePerRPM.Value*1000)
	j.AsWound = []job.AsWound{r}
	o := winding.Evaluate(j)
	return o.Wound[0], o
}

// ohmsCheck is the check of a record's ohms.
func ohmsCheck(r wound.Record) wound.Check {
	list := r.Checks()
	return list[slices.IndexFunc(list, func(c wound.Check) bool { return c.Field == "lead" })]
}

// Each pair of leads by hand: a star of R and R, one phase of k·R, has pairs of 2R and twice (1+k)R; a
// delta 2R/3 healthy, of k·R in one side 2kR/(2+k) across it and (1+k)R/(2+k) twice; an open delta 2R and
// twice R; a star with one phase turned round E and twice E where √3·E is the plan's.
func TestPairsTellWhichPhase(t *testing.T) {
	one := [3]float64{1, 1, 1}
	for _, c := range []struct {
		name, connection, strands string
		ohms, volts               [3]float64
		likely                    string      // "" for none
		stand                     wound.Stand // of the ohms
		proved                    bool
	}{
		{"sound", "star", "2", [3]float64{1.01, 0.99, 1}, [3]float64{1, 1.01, 0.99}, "", wound.Good, true},
		{"two strands, one open in a phase, star", "star", "2", [3]float64{1.5, 1, 1.5}, one, "1 strand of 2 open in phase U", wound.High, false},
		{"five strands, one open in a phase: the mean is good", "star", "5", [3]float64{1.125, 1.125, 1}, one, "1 strand of 5 open in phase V", wound.Uneven, false},
		{"ten strands, one open in a phase: the mean is good", "star", "10", [3]float64{(1 + 10./9) / 2, (1 + 10./9) / 2, 1}, one, "1 strand of 10 open in phase V", wound.Uneven, false},
		{"two strands, one open in a phase, delta", "delta", "2", [3]float64{1.5, 9. / 8, 9. / 8}, one, "1 strand of 2 open in phase U", wound.High, false},
		{"one phase of the delta open", "delta", "1", [3]float64{1.5, 3, 1.5}, one, "phase V of the delta open: the pair across it reads twice the others", wound.High, false},
		{"the mean of one phase open, the pairs alike: it is in every phase", "star", "2", [3]float64{4. / 3, 4. / 3, 4. / 3}, one, "", wound.High, false},
		{"one phase turned round", "star", "1", one, [3]float64{1, 0.577, 0.577}, "phase W turned round: V-W and W-U read low, at 58 % of the third", wound.Good, false},
		{"volts of the same mean, alike", "star", "1", one, [3]float64{0.718, 0.718, 0.718}, "", wound.Good, false},
	} {
		r, o := pairsRecord(t, c.connection, c.strands, c.ohms, c.volts)
		ohms := ohmsCheck(r)
		assert.Equal(t, c.stand, ohms.Proof.Stand(), c.name)
		assert.Equal(t, c.proved, r.Proved(), c.name)
		if c.likely == "" {
			for _, l := range r.Likely {
				assert.NotContains(t, l.Fault, "phase U", c.name)
				assert.NotContains(t, l.Fault, "one phase", c.name)
			}
		} else if assert.NotEmpty(t, r.Likely, c.name) {
			assert.Equal(t, c.likely, r.Likely[0].Fault, c.name)
		}
		assert.Len(t, o.Wound[0].LeadOhms20.Each, 3)
		if c.stand == wound.Uneven {
			assert.Contains(t, ohms.Speaks(), c.likely, c.name)
		}
	}
}

// Pairs that no single phase explains name those that do: of 1.03, 1 and 0.97 the phases of a star are
// 1.06, 1 and 0.94 by hand. 2 % of the mean of ohms is the limit of ANSI/EASA AR100.
func TestUnlikePairsSpeak(t *testing.T) {
	r, _ := pairsRecord(t, "star", "1", [3]float64{1.03, 1, 0.97}, [3]float64{1, 1, 1})
	c := ohmsCheck(r)
	assert.Equal(t, wound.Uneven, c.Proof.Stand())
	assert.InDelta(t, 0.03, c.Proof.Apart(), 1e-9)
	assert.Contains(t, c.Speaks(), "phase V, in U-V and V-W, is 6 % high: a cold joint")
	assert.Contains(t, c.Speaks(), "phase W, in V-W and W-U, is 6 % low: thicker wire")
	r, _ = pairsRecord(t, "star", "1", [3]float64{1.019, 1, 0.981}, [3]float64{1, 1, 1})
	assert.Equal(t, wound.Good, ohmsCheck(r).Proof.Stand())
}

// Unlike pairs are reported at their field, and like ones are not.
func TestUnlikePairsAreCalledOut(t *testing.T) {
	_, o := pairsRecord(t, "star", "1", [3]float64{1.03, 1, 0.97}, [3]float64{1.06, 1, 0.94})
	said := map[string]bool{}
	for _, f := range o.Findings {
		said[f.Path] = said[f.Path] || strings.Contains(f.Text, "off the mean of all")
	}
	assert.True(t, said["wound[0].lead"] && said["wound[0].line"], o.Findings)
	_, o = pairsRecord(t, "star", "1", [3]float64{1.01, 1, 0.99}, [3]float64{1.01, 1, 0.99})
	for _, f := range o.Findings {
		assert.NotContains(t, f.Text, "off the mean of all")
	}
}
