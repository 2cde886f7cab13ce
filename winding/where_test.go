package winding_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The order of the trials by the rows that a person reads is the order by what the drive
// makes of them: a year's energy in wind, all that the drive can give elsewhere.
func TestRowsAndBalanceAgreeOnTheOrder(t *testing.T) {
	for _, name := range []string{"pedals", "wind-trap", "water", "engine"} {
		o := winding.Evaluate(load(t, name+".toml"))
		require.Len(t, o.Trials, 2, name)
		a, b := &o.Trials[0], &o.Trials[1]
		byRow := a.AmpsUsual.Value - b.AmpsUsual.Value
		byBalance := a.RunAmps.Value - b.RunAmps.Value
		if a.YearKWh.Known() {
			byBalance = a.YearKWh.Value - b.YearKWh.Value
		}
		if a.RunAmps.Known() || a.YearKWh.Known() {
			assert.Positive(t, byRow*byBalance, "%s: %v A by the rows, %v by the balance", name, byRow, byBalance)
		}
	}
	// In a good wind job the mean wind and the year may disagree: light wind favours B, strong A. Both
	// are rows, and the year says what the mean wind does not.
	o := winding.Evaluate(load(t, "wind-good.toml"))
	assert.Greater(t, o.Trials[0].YearKWh.Value, o.Trials[1].YearKWh.Value)
	assert.Greater(t, o.Trials[0].AmpsTop.Value, o.Trials[1].AmpsTop.Value)
}

// No row promises what the drive does not have: 110 W of a rider, less chain and losses.
func TestNoMoreThanTheDriveGives(t *testing.T) {
	o := winding.Evaluate(load(t, "pedals.toml"))
	for _, a := range o.Trials {
		for _, p := range a.Operating {
			assert.LessOrEqual(t, p.DriveWatts, 110*1.001, "%s %s", a.Name, p.Condition)
			assert.Less(t, p.NetWatts, p.DriveWatts)
			sum := p.NetWatts + p.FieldWatts + p.CopperWatts + p.DiodeWatts + p.IronWatts + p.CableWatts + p.BeltWatts
			assert.InDelta(t, p.DriveWatts, sum, 1e-6*p.DriveWatts+1e-9, "every watt is somewhere")
		}
	}
}

// Torque given and torque taken agree to 1e-6 at every operating point.
func TestTorquesBalance(t *testing.T) {
	for _, name := range []string{"pedals", "water"} {
		j := load(t, name+".toml")
		for _, a := range winding.Evaluate(j).Trials {
			p := a.Operating[1]
			x, u, w, free := p.DriveRPM, j.Drive.UsualRPM.Value, j.Drive.Watts.Value, j.Drive.TopRPM.Value
			given := w / u * x * (2 - x/u)
			if x > u {
				given = w / u * x * (free - x) / (free - u)
			}
			assert.InEpsilon(t, given, p.DriveWatts, 2e-5, "%s %s at %.2f rpm", name, a.Name, x)
		}
	}
}

// The fuse carries the highest current, with the winding still cold and the battery empty; and the
// cable has to withstand more than the fuse.
func TestFuseAndCable(t *testing.T) {
	j := load(t, "wind-good.toml")
	o := winding.Evaluate(j)
	most := math.Max(o.Trials[0].MostAmps.Value, o.Trials[1].MostAmps.Value)
	for _, a := range o.Trials {
		assert.Greater(t, a.MostAmps.Value, a.BridgeTop.Value*1.1, "a cold winding lets more through than a hot one")
	}
	assert.GreaterOrEqual(t, o.Machine.FuseAmps.Value, 1.25*most)
	assert.Less(t, o.Machine.FuseAmps.Value, 1.25*most*1.35, "the next size, not any")
	for _, a := range o.Trials { // one trial's fuse is no protection for another's wire
		assert.GreaterOrEqual(t, a.FuseAmps.Value, 1.25*a.MostAmps.Value, a.Name)
		assert.Less(t, a.FuseAmps.Value, 1.25*a.MostAmps.Value*1.5, a.Name)
	}
	assert.Less(t, o.Trials[1].FuseAmps.Value, o.Machine.FuseAmps.Value)
	assert.Contains(t, cautionTexts(&o), fmt.Sprintf("Trial B: fuse %.3g A", o.Trials[1].FuseAmps.Value))
	j.Battery.CableMM2 = quantity.Known(1.5)
	o = winding.Evaluate(j)
	f := finding(&o, "battery.cable_area")
	require.NotNil(t, f)
	assert.Contains(t, f.Text, "does not protect a cable of 1.5 mm²")
	assert.Contains(t, cautionTexts(&o), "When it blows, nothing holds the machine any more")
}

func cautionTexts(o *winding.Outcome) string {
	var all []string
	for _, c := range o.Cautions {
		all = append(all, c.Text)
	}
	return strings.Join(all, "\n")
}

// The voltage reported is the highest possible: in the gale, and of the battery itself.
func TestVoltageCautionsLookEverywhere(t *testing.T) {
	o := winding.Evaluate(load(t, "wind-12v-gale.toml"))
	assert.InEpsilon(t, o.Trials[0].OpenAtGaleVolts.Value, o.Trials[0].MostVolts.Value, 1e-12)
	assert.Greater(t, o.Trials[0].MostVolts.Value, 3*o.Trials[0].OpenAtTopVolts.Value)
	assert.Contains(t, cautionTexts(&o), "Above 60 V DC")
	o = winding.Evaluate(load(t, "high-battery.toml"))
	assert.InEpsilon(t, 48*2.42, o.Trials[0].MostVolts.Value, 0.01, "48 cells absorbing")
	assert.Contains(t, cautionTexts(&o), "Above 60 V DC")
}

// What the rotor takes is deducted from amps, watts, efficiency and the year, and a rotor that takes
// more than comes in is reported.
func TestNetOfTheField(t *testing.T) {
	j := job.Example().Job()
	o := winding.Evaluate(j)
	for _, a := range o.Trials {
		for _, p := range a.Operating {
			assert.InDelta(t, p.BatteryWatts-p.FieldWatts, p.NetWatts, 1e-9)
			assert.InDelta(t, p.AmpsDC-p.FieldWatts/p.PostsVolts, p.NetAmps, 1e-9)
		}
		require.True(t, a.BreakEvenRPM.Known())
		assert.Greater(t, a.BreakEvenRPM.Value, a.CutInRPM.Value, "begins to charge, and pays for its field later")
	}
	assert.Positive(t, o.Trials[1].AmpsUsual.Value, "the example's middle trial charges at its usual condition")
	assert.Greater(t, o.Trials[1].AmpsUsual.Value, o.Trials[0].AmpsUsual.Value, "too few turns")
	assert.Greater(t, o.Trials[1].AmpsUsual.Value, o.Trials[2].AmpsUsual.Value, "too many turns")
	assert.Nil(t, findingOf(&o, "B"), "the middle trial is blamed for nothing")
	assert.InDelta(t, 574, o.Trials[1].BreakEvenRPM.Value, 0.5)
	assert.Contains(t, notesOf(&o, "B"), "the rotor takes more than comes in up to 574 alternator rpm, above the slow speed of 459 alternator rpm")

	j.Trials[0].Turns = quantity.Known(12)
	o = winding.Evaluate(j)
	assert.Negative(t, o.Trials[0].AmpsUsual.Value)
	require.NotNil(t, findingOf(&o, "A"))
	w := winding.Evaluate(load(t, "wind-wound-rotor.toml"))
	gross := load(t, "wind-wound-rotor.toml")
	gross.Field.Ohms = quantity.Known(1e-3) // a field that costs next to nothing
	g := winding.Evaluate(gross)
	assert.Less(t, w.Trials[0].YearKWh.Value, g.Trials[0].YearKWh.Value-100, "the field's part of the year")
}

// notesOf is what is only noted of a trial.
func notesOf(o *winding.Outcome, trial string) []string {
	var list []string
	for _, f := range o.Findings {
		if f.Trial == trial && f.Severity == winding.Note {
			list = append(list, f.Text)
		}
	}
	return list
}

func findingOf(o *winding.Outcome, trial string) *winding.Finding {
	for i, f := range o.Findings {
		if f.Trial == trial && f.Severity >= winding.Doubt {
			return &o.Findings[i]
		}
	}
	return nil
}

// Changing from a wound rotor to magnets takes one word, and the readings of the wound rotor are not
// taken for theirs.
func TestMagnetsAreOneWordAway(t *testing.T) {
	j := job.Example().Job()
	j.Field.Kind = "magnets"
	o := winding.Evaluate(j)
	assert.Contains(t, o.Machine.FluxFrom, "magnets")
	for _, a := range o.Trials {
		assert.Zero(t, a.Operating[1].FieldWatts)
	}
	assert.Greater(t, o.Trials[1].AmpsUsual.Value, winding.Evaluate(job.Example().Job()).Trials[1].AmpsUsual.Value)
}

// Flux, amps and watts are for one field current: with a curve they follow a typed one, with a single
// reading they are converted as half-saturated iron would have it, with a wide ±, and it says so. By
// hand: from 2.5 to 0.5 A, x = 0.2, 2x/(1 + x) = 1/3 of the flux, ±100 % at most.
func TestFieldCurrentAndFluxBelongTogether(t *testing.T) {
	j := job.Example().Job()
	strong := winding.Evaluate(j)
	j.Field.Amps = quantity.Known(1.3)
	weak := winding.Evaluate(j)
	assert.InEpsilon(t, 10.6/14.6, weak.Machine.FluxMWb.Value/strong.Machine.FluxMWb.Value, 0.06)
	assert.Less(t, weak.Trials[0].FieldWatts.Value, strong.Trials[0].FieldWatts.Value*0.5)

	j = load(t, "water.toml")
	j.Field.Amps = quantity.Known(0.5)
	o := winding.Evaluate(j)
	assert.InDelta(t, 0.5, o.Machine.FieldAmps.Value, 1e-12, "the one in use")
	full := winding.Evaluate(load(t, "water.toml"))
	assert.InEpsilon(t, full.Machine.FluxMWb.Value/3, o.Machine.FluxMWb.Value, 1e-9)
	assert.InEpsilon(t, 1, o.Machine.FluxMWb.PlusMinus/o.Machine.FluxMWb.Value, 0.05)
	f := finding(&o, "field.current")
	require.NotNil(t, f)
	assert.Contains(t, f.Text, "was read at 2.5 A of field")

	j.Field.Amps = quantity.Known(2.5) // which the supply of 12.6 V cannot drive through the warm coil
	o = winding.Evaluate(j)
	f = finding(&o, "field.current")
	require.NotNil(t, f)
	assert.Contains(t, f.Text, "2.13 A", "worked outside: testdata/balance/out_field.csv")
}

// The best field current is one: neither a little more nor a little less leaves the battery more.
func TestBestFieldIsTheBest(t *testing.T) {
	j := job.Example().Job()
	o := winding.Evaluate(j)
	for i, a := range o.Trials {
		if !a.BestUsual.Known() || a.BestUsual.Why != "" {
			continue
		}
		net := func(amps float64) float64 {
			k := j
			k.Field.Amps = quantity.Known(amps)
			return winding.Evaluate(k).Trials[i].NetWattsUsual.Value
		}
		best := net(a.BestUsual.Value)
		assert.InDelta(t, a.NetWattsUsual.Value+a.BestGainUsual.Value, best, 0.02*math.Abs(best)+0.3, a.Name)
		assert.GreaterOrEqual(t, best, net(a.BestUsual.Value*0.8)-0.3, a.Name)
		if a.BestUsual.Value < 0.999*o.Machine.FieldAmps.Value { // not all that the battery drives
			assert.GreaterOrEqual(t, best, net(a.BestUsual.Value*1.15)-0.3, a.Name)
		}
	}
}

// Amps are into a battery under charge: a typed voltage, else half way to absorption, with both ends
// beside it.
func TestTheBatteryUnderCharge(t *testing.T) {
	j := ready()
	o := winding.Evaluate(j)
	assert.InEpsilon(t, 13.5, o.Machine.ChargingVolts.Value, 1e-12, "half way from 12.6 to 14.4")
	a := o.Trials[0]
	for typed, want := range map[float64]quantity.Figure{12.6: a.EmptyUsual, 13.5: a.AmpsUsual, 14.4: a.FullUsual} {
		k := j
		k.Battery.ChargingVolts = quantity.Known(typed)
		assert.InEpsilon(t, want.Value, evaluateA(k).AmpsUsual.Value, 2e-3, "%v V", typed)
	}
	j.Battery.AbsorptionVolts = quantity.Reading{}
	assert.InEpsilon(t, 12.6, winding.Evaluate(j).Machine.ChargingVolts.Value, 1e-12)
}

// The winding is warmed by copper, and by part of iron and field: by hand in a held condition.
func TestAllThatWarmsTheWinding(t *testing.T) {
	j := ready()
	j.Machine.IronWatts, j.Machine.IronRPM = quantity.Known(20), quantity.Known(900)
	j.Target.SlowRPM = quantity.Known(300)
	a := evaluateA(j)
	p := a.Operating[1]
	assert.InDelta(t, 25+0.8*(p.CopperWatts+0.7*20), p.WindingC, 0.1, "rise per watt 0.8, seven tenths of the iron")
	still := a.Operating[0]
	require.Zero(t, still.AmpsDC)
	assert.InDelta(t, 25+0.8*0.7*still.IronWatts, still.WindingC, 0.1, "warm before it charges")
}

// A drag that was not measured is a guess within a factor of two, never zero: the invented stator's
// typed 18 W at 600 rpm against the iron's estimate.
func TestDragIsGuessedNotForgotten(t *testing.T) {
	j := job.Example().Job()
	j.Machine.IronWatts, j.Machine.IronRPM = quantity.Reading{}, quantity.Reading{}
	m := winding.Evaluate(j).Machine
	require.True(t, m.DragWatts.Known())
	assert.Equal(t, quantity.Guessed, m.DragWatts.Origin)
	assert.InDelta(t, math.Log(18), math.Log(m.DragWatts.Value), math.Log(2.2))
}

// A fan cools by speed: between the still air's rise per watt and the plate's.
func TestFanCoolsBySpeed(t *testing.T) {
	j := job.Example().Job()
	j.Machine.Cooling = "fan"
	j.Drive = job.DriveSpec{}
	rise := func(rpm float64) float64 {
		j.Target.UsualRPM = quantity.Known(rpm)
		return winding.Evaluate(j).Machine.RisePerWatt.Value
	}
	open := job.Example().Job()
	assert.InEpsilon(t, winding.Evaluate(open).Machine.RisePerWatt.Value, rise(1), 0.01, "hardly turning: still air")
	assert.Less(t, rise(6000), rise(3000))
	assert.Less(t, rise(3000), rise(600))
	// At the plate's speed the plate's copper, iron and field bring class F to its 105 K, the current
	// nearly a sine: π/(3√2) A rms of one ampere DC.
	a := winding.Evaluate(j).Old
	watts := 3*math.Pow(45*math.Pi/(3*math.Sqrt2), 2)*a.PhaseOhms20.Value*(234.5+145)/254.5 + 0.7*18*math.Pow(10, 1.5) + 0.5*fieldWatts(t)
	assert.InEpsilon(t, 105/watts, rise(6000), 0.01)
}

func fieldWatts(t *testing.T) float64 {
	t.Helper()
	return winding.Evaluate(job.Example().Job()).Trials[0].FieldWatts.Value
}

// The limit of the temperature search is never printed as a temperature, and a winding that burns is
// reported with the wind from which it does.
func TestNoTemperatureThatIsNone(t *testing.T) {
	o := winding.Evaluate(load(t, "wind-good.toml"))
	for _, a := range o.Trials {
		assert.False(t, a.HotTopC.Known())
		assert.Contains(t, a.HotTopC.Why, "gets past 300 °C")
		f := findingText(&o, a.Name, "it burns")
		require.NotEmpty(t, f)
		assert.Contains(t, f, "m/s")
	}
}

func findingText(o *winding.Outcome, trial, part string) string {
	for _, f := range o.Findings {
		if f.Trial == trial && strings.Contains(f.Text, part) {
			return f.Text
		}
	}
	return ""
}

// Every winding that is offered was computed: it fits, breaks no limit, and beats the trial when it
// replaces it.
func TestOffersHoldWhatTheyPromise(t *testing.T) {
	offers := 0
	for _, name := range []string{"example", "pedals", "water", "wind-trap", "pedals-hub", "engine", "fixed"} {
		j := job.Example().Job()
		if name != "example" {
			j = load(t, name+".toml")
		}
		o := winding.Evaluate(j)
		for i, a := range o.Trials {
			if a.Offer == nil {
				continue
			}
			offers++
			what := fmt.Sprintf("%s %s: %s", name, a.Name, a.Mend)
			assert.Contains(t, a.Mend, fmt.Sprintf("%d turns of", a.Offer.Turns))
			n := winding.Evaluate(inPlace(j, i, a.Offer)).Trials[i]
			assert.LessOrEqual(t, n.WireFill.Value, n.FillLimit.Value*(1+1e-9), what)
			if n.MouthSpareMM.Known() {
				assert.Positive(t, n.MouthSpareMM.Value, what)
			}
			if j.Drive.Kind == "wind" {
				assert.Greater(t, n.YearKWh.Value, 0.88*a.YearKWh.Value, what)
			} else {
				begins := o.Machine.SlowRPM.Value
				if strings.HasSuffix(a.Mend, "after the slow speed too") {
					begins = a.CutInRPM.Value
				}
				assert.LessOrEqual(t, n.CutInRPM.Value, begins*1.001, what)
				assert.Greater(t, n.AmpsUsual.Value, math.Min(0.88*a.AmpsUsual.Value, a.AmpsUsual.Value), what)
			}
			if n.LimitAmps.Known() && n.SteadyAmps.Known() {
				assert.LessOrEqual(t, n.SteadyAmps.Value, n.LimitAmps.Value*1.03, what)
			}
			for _, p := range n.Operating {
				assert.False(t, p.TooHot, what)
			}
		}
	}
	assert.GreaterOrEqual(t, offers, 4)
}

// Shorted leads brake less when hot, brake two sets twice as hard, and their figures say so.
func TestJoinedLeads(t *testing.T) {
	o := winding.Evaluate(load(t, "wind-good.toml"))
	for _, a := range o.Trials {
		assert.Greater(t, a.StopsCold.Value, a.StopsHot.Value)
		assert.Positive(t, a.BrakePeakNm.Value)
	}
	assert.Contains(t, cautionTexts(&o), "stops a turning rotor in up to")
	j := ready()
	j.Machine.Slots, j.Machine.Poles, j.Machine.Span, j.Machine.Layers = quantity.Known(48), quantity.Known(8), quantity.Reading{}, quantity.Known(2)
	j.Machine.Sets = quantity.Known(2)
	two := evaluateA(j)
	coil := two.Brake.CoilAmps.Value
	hot := two.PhaseOhms20.Value * (234.5 + 130) / 254.5
	assert.InEpsilon(t, 6*coil*coil*hot, two.Brake.Watts.Value, 1e-9, "six phase windings, not three")
}

// A drive's free speed bounds what it gives; a ratio that was counted is not taken for more.
func TestTheFreeSpeedBoundsTheDrive(t *testing.T) {
	j := load(t, "water.toml")
	for _, free := range []float64{70, 85, 110} {
		j.Drive.TopRPM = quantity.Known(free)
		for _, a := range winding.Evaluate(j).Trials {
			assert.Less(t, a.Operating[1].DriveRPM, free)
			assert.Less(t, a.Operating[2].DriveRPM, free)
		}
	}
}

// A rotor coil without ohms still has its watts deducted from every row: the full supply times the
// current that was read (Ohm's law, brushes included), and it is reported.
func TestCoilOfUnknownOhmsStillTakes(t *testing.T) {
	j := job.Example().Job()
	require.Equal(t, "wound", j.Field.Kind)
	j.Field.Ohms, j.Field.Volts = quantity.Reading{}, quantity.Reading{}
	j.Field.Amps = quantity.Known(2.5)
	j.Spins = j.Spins[:1]
	j.Spins[0].FieldAmps = quantity.Known(2.5)
	o := winding.Evaluate(j)
	watts := 2.5 * o.Machine.ChargingVolts.Value
	for _, a := range o.Trials {
		assert.InEpsilon(t, watts, a.FieldWatts.Value, 1e-9)
		assert.Equal(t, quantity.Guessed, a.FieldWatts.Origin)
		assert.InDelta(t, a.BridgeUsual.Value-watts/o.Machine.ChargingVolts.Value, a.AmpsUsual.Value, 0.02*watts)
		assert.Less(t, a.AmpsUsual.Value, a.BridgeUsual.Value-2)
	}
	f := finding(&o, "field.coil")
	require.NotNil(t, f)
	assert.Contains(t, f.Text, "all the supply")

	j.Field.Amps, j.Spins[0].FieldAmps = quantity.Reading{}, quantity.Reading{}
	o = winding.Evaluate(j)
	assert.False(t, o.Trials[0].FieldWatts.Known())
	f = finding(&o, "field.coil")
	require.NotNil(t, f)
	assert.Contains(t, f.Text, "before it is subtracted")
}

// Grid, verdict, finding and ladder compare the same current with the limit: the warm one, which is the
// highest of those that the conditions list. The limit is thermal, so the first minute's cold current,
// which the fuse is chosen for, does not count.
func TestOneCurrentIsHeldAgainstTheLimit(t *testing.T) {
	over, under, coldOnly := 0, 0, 0
	for _, name := range []string{"example", "pedals", "water", "wind-good", "pedals-hub", "engine"} {
		j := job.Example().Job()
		if name != "example" {
			j = load(t, name+".toml")
		}
		bench := winding.Prepare(j)
		o := bench.Outcome()
		for i := range o.Trials {
			a := &o.Trials[i]
			if !a.LimitAmps.Known() || !a.SteadyAmps.Known() {
				continue
			}
			what, most := name+" "+a.Name, 0.0
			for _, p := range a.Operating {
				most = math.Max(most, p.AmpsDC)
			}
			assert.Equal(t, most, a.SteadyAmps.Value, what)
			past := most > 1.005*a.LimitAmps.Value
			assert.Equal(t, past, winding.OutputOf("bridge_amps_dc_steady").Past(&o, a), what)
			assert.Equal(t, past, strings.Contains("; "+a.Verdict, "; passes its limit"), "%s: %s", what, a.Verdict)
			told := false
			for _, f := range o.Findings {
				told = told || f.Trial == a.Name && strings.Contains(f.Text, "is over its limit of")
			}
			assert.Equal(t, past, told, what)
			for _, r := range bench.Ladder(i) {
				if r.BestUsual || r.Meets {
					assert.LessOrEqual(t, r.SteadyAmps.Value, 1.005*r.LimitAmps.Value, what)
				}
			}
			switch {
			case past:
				over++
			case a.MostAmps.Value > a.LimitAmps.Value:
				coldOnly++
			default:
				under++
			}
		}
	}
	assert.Positive(t, over)
	assert.Positive(t, under)
	assert.Positive(t, coldOnly, "a trial over only while cold is among them")
}
