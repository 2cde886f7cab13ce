package card

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var overLimit = regexp.MustCompile(`is over its limit of ([0-9.]+) A`)

// What passes its own current limit where the drive takes it says so at the top, before guesses and
// readings to check; and with a limit that is under NOT MORE THAN.
func TestItsOwnLimitStandsBeforeGuesses(t *testing.T) {
	seen, before := 0, 0
	for name, work := range jobs(t) {
		w := newWriter(work.b, &work.o, Options{})
		for i := range w.o.Trials {
			trial := &w.o.Trials[i]
			stand := w.against(trial.Name)
			if !trial.OverLimit() {
				continue
			}
			require.NotEmpty(t, stand, name)
			worst := stand[0]
			if worst.NoUse || worst.Severity == winding.Broken {
				continue
			}
			one := flat(sheets(&work, i)[0])
			found := overLimit.FindStringSubmatch(one)
			require.NotNil(t, found, "%s %s: %s", name, trial.Name, worst.Text)
			assert.Regexp(t, `NOT MORE THAN [^;]*\b`+regexp.QuoteMeta(found[1])+` A`, one, "%s %s", name, trial.Name)
			seen++
			if first := firstDoubt(w, trial.Name); !first.Past {
				before++
			}
		}
	}
	assert.Greater(t, seen, 3)
	assert.Greater(t, before, 0, "a doubt that is called out before it gives way")
}

func firstDoubt(w *writer, trial string) winding.Finding {
	for _, f := range w.findingsOf(trial) {
		if f.Severity == winding.Doubt {
			return f
		}
	}
	return winding.Finding{}
}

// Where a fan cools it, its limit depends on speed: the card has the limit in each of the drive's
// conditions.
func TestLimitsOfOtherSpeedsStandOnTheCard(t *testing.T) {
	told := 0
	for name, work := range jobs(t) {
		w := newWriter(work.b, &work.o, Options{})
		for i := range w.o.Trials {
			trial := &w.o.Trials[i]
			one := flat(sheets(&work, i)[0])
			for _, p := range w.ownConditions(trial) {
				limit := quantity.Figure{Value: trial.LimitIn(&p.RunPoint), Origin: trial.LimitAmps.Origin}
				if !trial.LimitAmps.Known() || p.AmpsDC == 0 || limit.Value > 0.99*trial.LimitAmps.Value && limit.Value < 1.01*trial.LimitAmps.Value {
					continue
				}
				assert.Contains(t, one, fmt.Sprintf("%s at %s", w.amount(limit, quantity.Amps, 3), w.condition(p).Label), name)
				told++
			}
		}
	}
	assert.Greater(t, told, 0)
}

// What is past a limit is shown so without its difference from the reference, which says nothing about
// the limit.
func TestPastStandsAlone(t *testing.T) {
	past := 0
	for name, work := range jobs(t) {
		text := Report(work.b, &work.o, Options{Sections: []string{"compared"}})
		past += strings.Count(text, " PAST")
		assert.NotRegexp(t, `[%x] PAST`, text, name)
	}
	assert.Greater(t, past, 3)
}

// gale is a wind rotor's job with a gauge of no table in its first trial, and a second that gives more
// in a gale than low-voltage insulation is made for and stalls the rotor.
const gale = `format = 1
[machine]
slots = 36
poles = 10
span = 3
bore_in = 6
stack_in = 2
air_gap_in = 0.03
[slot]
area_in2 = 0.224
[old]
turns = 4
gauge = "13 AWG"
strands = 2
lead_ohm = 0.0737
[field]
kind = "magnets"
[drive]
kind = "wind"
rotor_ft = 7
[battery]
cells = 24
[[trial]]
name = "A"
turns = 22
gauge = "16"
[[trial]]
name = "B"
turns = 18
gauge = "15 AWG"
[[spin]]
speed_rpm = 300
line_v = 9.9
`

// At the top is what concerns the trial itself, what can hurt first, then the rest; another trial's
// wire is not mentioned.
func TestTheHeadSpeaksOfItsOwnTrial(t *testing.T) {
	w := workOut(gale)
	gauge, danger := map[string]int{}, map[string]int{}
	for _, name := range []string{"A", "B"} {
		for i, f := range newWriter(w.b, &w.o, Options{}).against(name) {
			if strings.Contains(f.Text, "of which gauge") {
				gauge[name] = i + 1
			}
			if f.Danger {
				danger[name] = i + 1
			}
		}
	}
	assert.Positive(t, danger["A"])
	assert.Positive(t, danger["B"])
	assert.Less(t, danger["A"], gauge["A"])
	assert.NotContains(t, gauge, "B")
	assert.NotContains(t, flat(sheets(&w, 1)[0]), "of which gauge")
}
