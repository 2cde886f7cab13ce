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

// What passes its own limit of current where the drive takes it says so on top, before guesses and
// readings to look at again; and with a limit that stands under NOT MORE THAN.
func TestItsOwnLimitStandsBeforeGuesses(t *testing.T) {
	seen, before := 0, 0
	for name, work := range jobs(t) {
		w := newWriter(work.b, &work.o, Options{})
		for i := range w.o.Trials {
			trial := &w.o.Trials[i]
			worst, _ := w.worst(trial.Name)
			if !trial.OverLimit() {
				continue
			}
			require.NotNil(t, worst, name)
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

// Where a fan cools it, it stands more at one speed than at another: the card says what it stands in
// each of the drive's.
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

// What is past a limit is told so without how far it is from the reference, which says nothing of the
// limit.
func TestPastStandsAlone(t *testing.T) {
	past := 0
	for name, work := range jobs(t) {
		text := Report(work.b, &work.o, Options{Sections: []string{"compared"}})
		past += strings.Count(text, " PAST")
		assert.NotRegexp(t, `[%x] PAST`, text, name)
	}
	assert.Greater(t, past, 3)
}
