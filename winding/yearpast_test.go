package winding

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hours is the energy of a year between two winds, kWh, by small slices of the Rayleigh density
// (π/2)·v/m²·exp(−π·v²/4m²), 8760 h, with watts interpolated linearly between the points.
func hours(points []DrivePoint, mean float64, counts func(p, q *DrivePoint) bool) (kWh float64) {
	const slices = 400
	for n := 1; n < len(points); n++ {
		p, q := &points[n-1], &points[n]
		if !counts(p, q) {
			continue
		}
		step := (q.X - p.X) / slices
		for k := range slices {
			v := p.X + (float64(k)+0.5)*step
			watts := p.kept() + (q.kept()-p.kept())*(v-p.X)/(q.X-p.X)
			kWh += 8.760 * watts * math.Pi / 2 * v / mean / mean * math.Exp(-math.Pi*v*v/4/mean/mean) * step
		}
	}
	return kWh
}

// A winding that exceeds its limit or its class in some winds states how much of its year comes in
// those. Limit and class are checked here independently, wind by wind.
func TestAYearSaysWhatTheWindingDoesNotStand(t *testing.T) {
	some, none := 0, 0
	for _, name := range []string{"wind-good", "vane-on-a-mast", "hub-in-wind", "wind-12v-gale", "on-the-edge"} {
		for _, kelvin := range []float64{0, 0.05} {
			j := loadJob(t, name)
			if kelvin > 0 {
				j.Machine.KelvinPerWatt = quantity.Known(kelvin)
			}
			b := Prepare(j)
			o := b.Outcome()
			mean := b.drive.year.Mean
			for i := range o.Trials {
				a := &o.Trials[i]
				stands := func(p *DrivePoint) bool {
					cool := p.WindingC <= o.Machine.MeanLimitC.Value && !p.TooHot
					run := RunPoint{RPM: p.RPM, AmpsDC: p.AmpsDC, HeldFieldAmps: p.lowered.fieldAmps, FieldWatts: p.lowered.fieldWatts, IronWatts: p.lowered.ironWatts, Spent: p.lowered.spent}
					return cool && p.AmpsDC <= a.LimitIn(&run)*limitSlack && (a.fullTo == 0 || p.X <= a.fullTo)
				}
				past := hours(a.Points, mean, func(p, q *DrivePoint) bool { return !stands(p) || !stands(q) })
				if past < 1e-3 {
					none++
					assert.False(t, a.YearPastKWh.Known(), "%s %s", name, a.Name)
					assert.Empty(t, a.YearKWh.Why)
					continue
				}
				some++
				require.True(t, a.YearPastKWh.Known(), "%s %s: %g", name, a.Name, past)
				assert.InEpsilon(t, past, a.YearPastKWh.Value, 1e-3, "%s %s", name, a.Name)
				assert.True(t, OutputOf("year_kwh_past_limit").Past(&o, a))
				assert.Contains(t, a.YearKWh.Why, fmt.Sprintf("%.0f kWh of it come in winds that the winding does not withstand", a.YearPastKWh.Value))
				burns := slices.ContainsFunc(a.Points, func(p DrivePoint) bool { return p.TooHot })
				assert.Equal(t, burns, strings.Contains(a.YearKWh.Why, "but those in which it burns"), "%s %s: %s", name, a.Name, a.YearKWh.Why)
				if wind := a.coolTo(&b.air); wind > 0 && !stands(&a.Points[len(a.Points)-1]) {
					assert.GreaterOrEqual(t, a.YearKWh.Value-a.YearPastKWh.Value, a.yearTo(wind, b.drive.year)-1e-6, "furled there it keeps no more")
				}
			}
		}
	}
	assert.Greater(t, some, 4)
	assert.Greater(t, none, 2)
}

// Each reason alone: the current limit with a battery taking charge, the class, and a stretch of winds
// in the middle, above which the winding withstands them again.
func TestEachReasonNotToStandAWindCounts(t *testing.T) {
	b := Prepare(loadJob(t, "wind-good"))
	o := b.Outcome()
	a := &o.Trials[0]
	past := func(stands func(p *DrivePoint) bool) float64 {
		return hours(a.Points, 5, func(p, q *DrivePoint) bool { return !stands(p) || !stands(q) })
	}
	a.fullTo = 0
	overAmps := past(func(p *DrivePoint) bool { return p.AmpsDC <= a.LimitAmps.Value })
	assert.InEpsilon(t, overAmps, a.yearPast(&b.bed).Value, 1e-3)

	a.Limits = Limits{LimitAmps: quantity.Missing("")}
	b.air.meanC = 60
	overClass := past(func(p *DrivePoint) bool { return p.WindingC <= 60 && !p.TooHot })
	require.NotEqual(t, overAmps, overClass)
	assert.InEpsilon(t, overClass, a.yearPast(&b.bed).Value, 1e-3)

	for i := range a.Points {
		if a.Points[i].WindingC = 50; a.Points[i].X == 6 || a.Points[i].X == 6.5 {
			a.Points[i].WindingC = 70
		}
		a.Points[i].TooHot = false
	}
	a.YearKWh = quantity.Of(a.Driven.yearOf(b.drive.year, func(*DrivePoint) bool { return true }))
	hump := hours(a.Points, 5, func(p, q *DrivePoint) bool { return p.X >= 5.5 && q.X <= 7 })
	assert.InEpsilon(t, hump, a.yearPast(&b.bed).Value, 1e-3)
}

// A rotor that furls at the last wind withstood keeps the rest of the year: remedy and figure agree.
func TestFurlingKeepsWhatIsNotPast(t *testing.T) {
	b := Prepare(loadJob(t, "wind-good"))
	o := b.Outcome()
	a := &o.Trials[0]
	require.True(t, a.YearPastKWh.Known())
	assert.InDelta(t, a.yearTo(a.coolTo(&b.air), b.drive.year), a.YearKWh.Value-a.YearPastKWh.Value, 1e-6)
}

// A figure written as zero is given no percentage.
func TestNothingHasNoPercent(t *testing.T) {
	o := Evaluate(loadJob(t, "vane-on-a-mast"))
	f := OutputOf("amps_dc_usual")
	o.Trials[0].AmpsUsual, o.Trials[1].AmpsUsual = quantity.Of(2e-5), quantity.Of(0.4)
	c := o.Row(f, true).Cells[1]
	assert.False(t, c.Percent.Known())
	assert.InDelta(t, 0.4, c.Difference.Value, 1e-4)
	o.Trials[0].AmpsUsual = quantity.Of(0.2)
	assert.InDelta(t, 100, o.Row(f, true).Cells[1].Percent.Value, 1e-9)
}

// A few kilowatt-hours in winds that the winding does not withstand are told as well as hundreds are: of a
// rotor that furls ever later they are ever more, from none on.
func TestAFewKilowattHoursPastALimitAreTold(t *testing.T) {
	few, before := 0, 0.0
	for furl := 10.0; furl <= 14; furl += 0.5 {
		j := loadJob(t, "on-the-edge")
		j.Drive.CutOutMS = quantity.Known(furl)
		b := Evaluate(j).Trials[1]
		past := b.YearPastKWh.Value
		assert.GreaterOrEqual(t, past, before, "furled at %g m/s", furl)
		if before = past; past > 0 && past < 0.04*b.YearKWh.Value {
			few++
		}
	}
	assert.Positive(t, few)
	assert.Positive(t, before)
}
