package winding

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// What is said of an offered winding is what the grid says of it once applied: the amps to their three
// figures, the year's energy to 2 % and half a unit.
func TestOffersSayWhatTheGridWill(t *testing.T) {
	files, err := filepath.Glob("../testdata/jobs/*.toml")
	require.NoError(t, err)
	jobs := map[string]job.Job{"example": job.Example().Job()}
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		jobs[filepath.Base(f)] = job.Parse(string(text)).Job()
	}
	said := regexp.MustCompile(`(?:([\d.]+) A net|nothing comes in) .*?\)(?:, about (\d+) kWh)?`)
	offers := 0
	for name, j := range jobs {
		for i, a := range Evaluate(j).Trials {
			if a.Offer == nil {
				continue
			}
			offers++
			k := j
			k.Trials = append([]job.Trial{}, j.Trials...)
			k.Trials[i].Turns, k.Trials[i].Gauge = quantity.Known(float64(a.Offer.Turns)), a.Offer.Gauge
			k.Trials[i].Circuits = quantity.Known(float64(a.Offer.Circuits))
			n := Evaluate(k).Trials[i]
			m := said.FindStringSubmatch(a.Mend)
			require.NotNil(t, m, a.Mend)
			what := fmt.Sprintf("%s %s: %s", name, a.Name, a.Mend)
			if net, _ := strconv.ParseFloat(m[1], 64); net > 0 {
				assert.InEpsilon(t, n.AmpsUsual.Value, net, 0.0051, what)
			} else {
				assert.Less(t, n.AmpsUsual.Value, leastNet, what)
			}
			if m[2] != "" {
				kWh, _ := strconv.ParseFloat(m[2], 64)
				assert.InDelta(t, n.YearKWh.Value, kWh, 0.5+0.02*n.YearKWh.Value, what)
			}
		}
	}
	assert.Greater(t, offers, 8)
}

// Everything of a trial that a full-slot winding depends on is part of its cache key: a new field of a
// trial has to be added there, or here with a reason.
func TestWhatAFullSlotIsKnownBy(t *testing.T) {
	without := map[string]string{
		"Name": "a word", "Note": "a word", "Wound": "its fields are told one by one", "Turns": "as many as fit",
		"CoilTurns": "such are not filled", "AlsoGauge": "such are not filled", "AlsoStrands": "such are not filled",
	}
	known := map[string]bool{}
	for i, key := 0, reflect.TypeFor[fullKey](); i < key.NumField(); i++ {
		known[key.Field(i).Name] = true
	}
	for _, of := range []reflect.Type{reflect.TypeFor[job.Trial](), reflect.TypeFor[job.Wound]()} {
		for i := range of.NumField() {
			name := of.Field(i).Name
			assert.NotEqual(t, known[strings.ToLower(name[:1])+name[1:]], without[name] != "", name)
		}
	}
}

// A point between those of a curve is the same to the last bit, whether or not the trial was evaluated
// before.
func TestRunAtIsTheSameBeforeAndAfter(t *testing.T) {
	for _, name := range []string{"", "engine", "wind-good", "wind-wound-rotor", "amps-readings"} {
		j := job.Example().Job()
		if name != "" {
			text, err := os.ReadFile("../testdata/jobs/" + name + ".toml")
			require.NoError(t, err)
			j = job.Parse(string(text)).Job()
		}
		before, after := Prepare(j), Prepare(j)
		after.Outcome()
		for i := range j.Trials {
			for _, rpm := range []float64{0, 97.5, 313, 801, 2500} {
				want, why := before.RunAt(i, rpm)
				got, no := after.RunAt(i, rpm)
				require.Equal(t, why, no)
				require.Equal(t, want, got, "%s %d at %g rpm", name, i, rpm)
			}
		}
	}
}
