package winding

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// weakEngine is the stored engine with a given power at its usual 1200 rpm: by its law two thirds of
// that at the slow 800.
func weakEngine(t *testing.T, watts float64) job.Job {
	t.Helper()
	j := loadJob(t, "engine")
	j.Drive.Watts = quantity.Known(watts)
	return j
}

// The parts of a speed are ours; common practice, no source.
func TestAnEngineDraggedBelowItsSpeedIsTold(t *testing.T) {
	assert.Equal(t, 0.95, draggedSaid)
	assert.Equal(t, 0.9, draggedFar)
	at := func(name string, x, rpm float64) Operating {
		return Operating{Meeting: Meeting{Condition: name, X: x, DriveRPM: rpm, HeldBack: rpm < x, governed: true}}
	}
	of := func(slow, usual, top float64) *Charging {
		return &Charging{Operating: []Operating{at("slow", 900, slow), at("usual", 1100, usual), at("top", 1800, top)}}
	}
	assert.Equal(t, "drags the engine from 900 to 427 rpm", of(427, 1100, 1800).Drags("engine"))
	assert.Equal(t, "drags the engine from 1800 to 1043 rpm", of(900, 1043, 1043).Drags("engine"), "the worst")
	assert.Equal(t, "stops the engine at 900 rpm", of(0, 1100, 1800).Drags("engine"))
	legs := of(427, 1100, 1800)
	legs.Operating[slow].governed = false
	assert.Empty(t, legs.Drags("pedals"), "legs slow down by their nature")
	assert.Empty(t, of(811, 991, 1621).Drags("engine"), "a tenth is not far")
	_, told := of(856, 1100, 1800).DraggedTo(slow)
	assert.False(t, told, "a few per cent are a governor's")
	rpm, told := of(854, 1100, 1800).DraggedTo(slow)
	assert.True(t, told)
	assert.Equal(t, 854.0, rpm)
}

func TestDraggedAtTheSlowSpeedAloneIsFoundSaidAndNotMet(t *testing.T) {
	found := 0
	for _, watts := range []float64{350, 500, 600, 700, 900, 1100, 2000} {
		j := weakEngine(t, watts)
		j.Target.Amps = quantity.Reading{}
		b := Prepare(j)
		o := b.Outcome()
		for i := range o.Trials {
			a := &o.Trials[i]
			p := a.in(slow)
			require.NotNil(t, p)
			says := heldBackTo(p)
			if p.keeps() >= draggedSaid {
				assert.NotContains(t, a.Suits, says)
				continue
			}
			found++
			calls := 0
			for _, f := range o.Findings {
				if f.Trial == a.Name && f.Source == "balance of drive and alternator" && !strings.Contains(f.Text, "can stay at two speeds") {
					calls++
					assert.Contains(t, f.Text, says, "%g W", watts)
				}
			}
			assert.Equal(t, 1, calls, "one finding, %g W %s", watts, a.Name)
			if p.keeps() < draggedFar {
				assert.Contains(t, a.Verdict, "the engine", "%g W %s", watts, a.Name)
				assert.Contains(t, a.Verdict, a.Drags("engine"))
				assert.True(t, OutputOf("amps_dc_slow").Past(&o, a), "the amps are not those of the speed beside them")
			}
		}
		for _, r := range b.Ladder(0) {
			assert.False(t, r.Meets && r.dragged(draggedFar) != nil, "%g W %s", watts, r.Wire)
		}
	}
	assert.Greater(t, found, 2)
}

// A field current or a regulator that is named cures what the trial was blamed for when it is typed,
// and no offer drags the engine down.
func TestWhatIsNamedInPlaceOfADragMendsIt(t *testing.T) {
	field := regexp.MustCompile(`a field current of ([\d.]+) A in place`)
	most := regexp.MustCompile(`Most current at ([\d.]+) A`)
	mosts := 0
	for _, watts := range []float64{350, 400, 450, 475, 500, 525, 550, 600, 700} {
		j := weakEngine(t, watts)
		for i, a := range Evaluate(j).Trials {
			if a.dragged(draggedSaid) == nil {
				assert.Empty(t, field.FindString(a.Calmer))
				continue
			}
			typed := func(part string, change func(k *job.Job, amps float64)) {
				amps, err := strconv.ParseFloat(part, 64)
				require.NoError(t, err)
				k := j
				change(&k, amps)
				n := Evaluate(k).Trials[i]
				assert.Nil(t, n.dragged(draggedSaid), "%g W: %s", watts, a.Calmer)
				assert.False(t, n.OverLimit(), a.Calmer)
			}
			if m := field.FindStringSubmatch(a.Calmer); m != nil {
				typed(m[1], func(k *job.Job, amps float64) { k.Field.Amps = quantity.Known(amps) })
			}
			if m := most.FindStringSubmatch(a.Calmer); m != nil {
				mosts++
				typed(m[1], func(k *job.Job, amps float64) { k.Battery.MostAmps = quantity.Known(amps) })
			}
			if a.Offer != nil {
				k := j
				k.Trials = append([]job.Trial{}, j.Trials...)
				k.Trials[i].Turns, k.Trials[i].Gauge, k.Trials[i].Circuits = quantity.Known(float64(a.Offer.Turns)), a.Offer.Gauge, quantity.Known(float64(a.Offer.Circuits))
				assert.Nil(t, Evaluate(k).Trials[i].dragged(draggedFar), a.Mend)
			}
		}
	}
	assert.Positive(t, mosts)
}

// One turn of thick wire begins far too late, and so do all sizes near it; thinner ones do not.
func TestAllBeginTooLateIsSaidOnlyWhereAllDo(t *testing.T) {
	j := loadJob(t, "engine")
	gauge, err := wiretable.Parse("5 mm")
	require.NoError(t, err)
	j.Trials[0].Turns, j.Trials[0].Gauge = quantity.Known(1), gauge
	a := Evaluate(j).Trials[0]
	assert.NotContains(t, a.InTheWay, "all that fit begin after")
	assert.True(t, a.Offer != nil || a.InTheWay != "")
}

// Legs that a winding of far too many turns holds to a crawl are reported, with a winding that brings
// more; one that already brings the most is only noted, and no winding that lets them turn is named. By
// hand: of 120 W at 60 rpm the law P·x·(2 − x) leaves 25.0 W at 6.627 rpm, x = 0.1104.
func TestLegsHeldToACrawlAreTold(t *testing.T) {
	j := loadJob(t, "pedals")
	j.Drive.Watts, j.Drive.UsualRPM = quantity.Known(120), quantity.Known(60)
	assert.InDelta(t, 25.0, drive.Yielding{UsualRPM: 60, UsualWatts: 120}.Watts(6.627), 0.05)
	thin, err := wiretable.Parse("0.5 mm")
	require.NoError(t, err)
	for turns, held := range map[float64]bool{60: true, 30: false, 5: false} {
		j.Trials[0].Turns, j.Trials[0].Gauge = quantity.Known(turns), thin
		o := Evaluate(j)
		a := &o.Trials[0]
		p := a.in(usual)
		assert.Equal(t, held, a.stalls() != nil, "%g turns: %g W at %g rpm", turns, p.DriveWatts, p.DriveRPM)
		if !held {
			continue
		}
		assert.Less(t, p.DriveWatts, 0.8*120)
		says := stalledAt("pedals", p)
		assert.Contains(t, says, "W of the 120 W to be had")
		assert.Contains(t, a.Suits, says)
		assert.Contains(t, a.Verdict, says)
		require.NotNil(t, a.Offer, "fewer turns let them turn")
		assert.Less(t, float64(a.Offer.Turns)/float64(max(1, a.Offer.Circuits)), turns)
		better := j
		better.Trials = []job.Trial{j.Trials[0]}
		better.Trials[0].Turns, better.Trials[0].Gauge, better.Trials[0].Circuits = quantity.Known(float64(a.Offer.Turns)), a.Offer.Gauge, quantity.Known(float64(max(1, a.Offer.Circuits)))
		put := Evaluate(better).Trials[0]
		assert.Greater(t, put.AmpsUsual.Value, 1.03*a.AmpsUsual.Value)
	}
	point, err := drive.NewCurve([]drive.Point{{RPM: 20, Watts: 40}, {RPM: 50, Watts: 90}, {RPM: 70, Watts: 60}})
	require.NoError(t, err)
	assert.Equal(t, drive.Point{RPM: 50, Watts: 90}, drive.Best(point))
	assert.Equal(t, drive.Point{RPM: 60, Watts: 120}, drive.Best(drive.Yielding{UsualRPM: 60, UsualWatts: 120}))
	assert.Zero(t, drive.Best(drive.Governed{}))
}

// A rung that holds legs to a crawl meets nothing, however many amps it brings, and says what limits
// it. By hand: the law P·x·(2 − x) leaves four fifths at x = 1 − √0.2 = 0.5528, so of 120 W at 60 rpm
// less than 96 W are left below 33.2 rpm.
func TestNoRungMeetsThatHoldsLegsToACrawl(t *testing.T) {
	j := loadJob(t, "pedals")
	j.Drive.Watts, j.Drive.UsualRPM, j.Target.Amps = quantity.Known(120), quantity.Known(60), quantity.Known(1)
	assert.InDelta(t, 96, drive.Yielding{UsualRPM: 60, UsualWatts: 120}.Watts(33.17), 0.01)
	crawls, meets := 0, 0
	for _, r := range Prepare(j).Ladder(0) {
		switch p := r.in(usual); {
		case r.Meets:
			meets++
			assert.Greater(t, p.DriveRPM, 33.16, r.Wire)
		case p.DriveRPM < 33.16 && p.NetAmps > 1 && !r.OverLimit() && r.Fits():
			crawls++
			assert.Contains(t, r.Holds, fmt.Sprintf("holds the pedals to %s rpm: %s W of the 120 W to be had, %s W of them reach the battery", figures(p.DriveRPM), figures(p.DriveWatts), figures(p.NetWatts)))
		}
	}
	assert.Greater(t, crawls, 3)
	assert.Greater(t, meets, 3)
}
