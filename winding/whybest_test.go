package winding_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// usually is the operating point of a rung in the usual condition.
func usually(t *testing.T, r *winding.Rung) *winding.Operating {
	t.Helper()
	for i := range r.Operating {
		if r.Operating[i].Condition == "usual" {
			return &r.Operating[i]
		}
	}
	require.Fail(t, "does not run", r.Wire)
	return nil
}

// What is said of the neighbours of the best rung is true: each word is checked against their own
// speeds, watts and temperatures at their operating points.
func TestWhyTheBestRungIsTheBest(t *testing.T) {
	words := regexp.MustCompile(`(thinner|thicker) (.+?)(?:, thicker|$)`)
	said := map[string]int{}
	for name, w := range everyWorked(t) {
		list := w.ladder()
		limit := w.outcome.Machine.MeanLimitC.Value
		for i := range list {
			r := &list[i]
			if !r.BestUsual && !r.BestYear {
				assert.Empty(t, r.WhyBest)
				continue
			}
			require.NotEmpty(t, r.WhyBest, "%s %s", name, r.Wire)
			if !r.BestUsual {
				continue
			}
			here := usually(t, r)
			of, _, _ := strings.Cut(r.WhyBest, "; best in a year")
			of = of[strings.Index(of, "): ")+3:]
			for _, side := range []struct {
				word string
				at   int
			}{{"thinner", i + 1}, {"thicker", i - 1}} {
				assert.Equal(t, side.at >= 0 && side.at < len(list), strings.Contains(of, side.word+" "), "%s: %s", name, r.WhyBest)
				if !strings.Contains(of, side.word+" ") {
					continue
				}
				n := &list[side.at]
				there := usually(t, n)
				why := words.FindStringSubmatch(of[strings.Index(of, side.word):])[2]
				said[why]++
				what := name + ": " + r.WhyBest
				switch {
				case strings.HasPrefix(why, "stalls the"), strings.HasPrefix(why, "holds the"):
					assert.Less(t, there.RPM, here.RPM, what)
					assert.Less(t, there.DriveWatts, here.DriveWatts, what)
				case strings.HasPrefix(why, "lets the"):
					assert.Greater(t, there.RPM, here.RPM, what)
					assert.Less(t, there.DriveWatts, here.DriveWatts, what)
				case strings.HasPrefix(why, "begins too late"):
					assert.Zero(t, there.AmpsDC, what)
					assert.Greater(t, n.CutInRPM.Value, there.RPM, what)
				case why == "has fewer volts to spare":
					assert.Less(t, there.OpenVoltsDC, here.OpenVoltsDC, what)
					assert.Less(t, there.NetAmps, here.NetAmps, what)
				case why == "gets too hot":
					assert.Greater(t, n.HottestC.Value, limit, what)
				case why == "burns":
					assert.False(t, n.HottestC.Known(), what)
				case why == "passes its current limit":
					assert.True(t, n.OverLimit(), what)
				case why == "does not go in":
					assert.NotEmpty(t, n.CannotBeWound(), what)
				case why == "loses more in the winding":
					assert.Less(t, there.NetWatts/there.DriveWatts, here.NetWatts/here.DriveWatts, what)
				case strings.HasPrefix(why, "turns faster"):
					assert.Greater(t, there.IronWatts, here.IronWatts, what)
				case why == "brings as much":
				default:
					assert.Fail(t, "unheard of", "%q: %s", why, what)
				}
			}
		}
	}
	assert.Greater(t, len(said), 6, "%v", said)
	t.Log(said)
}

// In a small rotor's wind the best of a year lies between one that holds the rotor and one that
// lets it run, and the wind in which it shows is named.
func TestWhyTheBestOfAYear(t *testing.T) {
	for _, r := range winding.Prepare(withCircuits(load(t, "hub-in-wind.toml"), 12)).Ladder(0) {
		if r.BestYear {
			assert.Regexp(t, `^best in a year: thinner stalls the rotor( more)? \([\d.]+ m/s\), thicker lets the rotor run past its best \([\d.]+ m/s\)$`, r.WhyBest)
		}
	}
}

// Amps that are shown as none are not enough to meet a job, though none were asked for.
func TestWhatBringsNothingThatIsSeenMeetsNothing(t *testing.T) {
	meets, none := 0, 0
	for _, r := range winding.Prepare(withCircuits(load(t, "hub-in-wind.toml"), 12)).Ladder(0) {
		if r.AmpsUsual.Value < 0.005 {
			assert.False(t, r.Meets, r.Wire)
			none++
		} else if r.Meets {
			meets++
		}
	}
	assert.Greater(t, none, 10)
	assert.GreaterOrEqual(t, meets, 2)
}

// Other circuits are mentioned where they bring more than a whole ladder, with what a trial of them
// really brings; where the ladder has the best there is, they are not.
func TestElsewhere(t *testing.T) {
	for name, circuits := range map[string]int{"hub-in-wind": 1, "wind-trap": 1, "wind-good": 1} {
		j := load(t, name+".toml")
		if name == "wind-good" { // beyond, a full battery sets the rotor free of what is found elsewhere
			j.Drive.CutOutMS = quantity.Known(11)
		}
		b := winding.Prepare(withCircuits(j, circuits))
		list := b.Ladder(0)
		best := 0.0
		for _, r := range list {
			if r.BestYear {
				best = r.YearKWh.Value
			}
		}
		said := regexp.MustCompile(`^more than on this ladder: \d+ turns of (.*) in (\d+) parallel circuits, (\S+) A net \(wind \S+ m/s\), about (\d+) kWh a year$`).FindStringSubmatch(b.Elsewhere(0, list))
		require.NotNil(t, said, name)
		there, _ := strconv.Atoi(said[2])
		net, _ := strconv.ParseFloat(said[3], 64)
		kWh, _ := strconv.ParseFloat(said[4], 64)
		assert.Greater(t, kWh, 1.03*best, name)
		found := 0
		for _, r := range winding.Prepare(withCircuits(j, there)).Ladder(0) {
			if r.Wire == "1 × "+said[1] {
				assert.InDelta(t, r.YearKWh.Value, kWh, 0.5+0.02*kWh, "%s %s", name, r.Wire)
				assert.InDelta(t, r.AmpsUsual.Value, net, 0.0051*net+0.005, "%s %s", name, r.Wire)
				found++
			}
		}
		assert.Equal(t, 1, found, name)
	}
	for _, name := range []string{"pedals", "water", "wind-12v-gale"} {
		b := winding.Prepare(load(t, name+".toml"))
		assert.Empty(t, b.Elsewhere(0, b.Ladder(0)), name)
	}
}
