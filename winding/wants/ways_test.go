package wants_test

import (
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/wants"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// asked is whether a field is among the first things, and whether something waits for it.
func asked(j *job.Job, path string) (there, waits bool) {
	for _, w := range wants.Of(j) {
		if w.Path == path {
			return true, !w.Instead
		}
	}
	return false, false
}

// A trial coil, and the magnets if there are any, stay among the first things until one way to volts is
// complete, with or without old turns; from then on only that way is shown.
func TestEveryWayToVoltsIsOfferedUntilOneIsWhole(t *testing.T) {
	others := []string{"coil[0].turns", "coil[0].speed", "coil[0].voltage", "field.remanence", "field.magnet", "old.cut_in"}
	var j job.Job
	j.Field.Kind, j.Old.Turns = "magnets", quantity.Known(12)
	for _, path := range append(others, "spin[0].speed", "spin[0].line") {
		there, waits := asked(&j, path)
		assert.True(t, there && waits, path)
	}
	j.Spins = []job.SpinReading{{RPM: quantity.Known(600)}}
	for _, path := range others {
		there, waits := asked(&j, path)
		assert.True(t, there && !waits, "%s: another way was begun", path)
	}
	j.Spins[0].LineVolts = quantity.Known(9)
	for _, path := range others {
		there, _ := asked(&j, path)
		assert.Equal(t, path == "field.magnet", there, "%s: one way is whole, and only the magnets' thickness is of use beside it", path)
	}
	j.Spins[0].FieldAmps = quantity.Known(2)
	for _, path := range others {
		there, waits := asked(&j, path)
		assert.True(t, there && waits, "%s: the volts were read of a wound rotor, which is gone", path)
	}
}

// A field keeps its place among the first things when it is typed: the next value goes where the next
// field was seen. The magnets' thickness has two places, one for volts and one for amps.
func TestAFieldStaysWhereItIsTyped(t *testing.T) {
	var j job.Job
	j.Field.Kind, j.Old.Turns = "magnets", quantity.Known(12)
	j.Spins = []job.SpinReading{{RPM: quantity.Known(600), LineVolts: quantity.Known(9)}}
	before := order(&j)
	require.Contains(t, before, "field.magnet")
	j.Field.MagnetMM = quantity.Known(8)
	assert.Equal(t, before, order(&j), "the spin-up reading tells the volts")

	j.Spins = nil
	before = order(&j)
	j.Field.MagnetMM = quantity.Reading{}
	assert.Equal(t, before, order(&j), "nothing tells them yet")
}

// order is the first things of a job by their paths.
func order(j *job.Job) (paths []string) {
	for _, w := range wants.Of(j) {
		paths = append(paths, w.Path)
	}
	return paths
}

// Nothing of the old winding is asked once a trial coil or the magnets give the flux of a stripped
// stator; a typed density replaces any way.
func TestAWholeWayLeavesTheOthersOut(t *testing.T) {
	coil := job.Job{Coils: []job.CoilReading{{Turns: quantity.Known(10), RPM: quantity.Known(600), Volts: quantity.Known(0.8)}}}
	var magnets, typed job.Job
	magnets.Field = job.FieldSpec{Kind: "magnets", RemanenceTesla: quantity.Known(1.25), MagnetMM: quantity.Known(10)}
	typed.Field.GapTesla = quantity.Known(0.5)
	for name, j := range map[string]job.Job{"coil": coil, "magnets": magnets, "typed": typed} {
		for _, path := range []string{"spin[0].speed", "spin[0].line", "old.cut_in"} {
			there, _ := asked(&j, path)
			assert.False(t, there, "%s %s", name, path)
		}
	}
	there, _ := asked(&coil, "field.remanence")
	assert.False(t, there)
	there, _ = asked(&magnets, "coil[0].turns")
	assert.False(t, there)
}

// If the old winding is gone, nothing is asked about it, nor about its plate: what is left is the bare
// iron.
func TestNothingIsAskedOfAnOldWindingThatIsGone(t *testing.T) {
	there, gone := job.Job{Field: job.FieldSpec{Kind: "wound"}}, job.Job{Field: job.FieldSpec{Kind: "wound"}}
	is, _ := asked(&there, "old.strands")
	assert.False(t, is, "they are typed with the wire")
	there.Old.Strands, gone.Old.Strands = quantity.Known(2), quantity.Known(2)
	gone.Old.State = job.StateGone
	for _, path := range []string{"old.turns", "old.gauge", "old.strands", "old.lead", "spin[0].speed", "spin[0].line", "spin[0].field"} {
		is, _ := asked(&there, path)
		assert.True(t, is, path)
		is, _ = asked(&gone, path)
		assert.False(t, is, path)
	}
	for _, path := range []string{"old.state", "slot.area", "coil[0].turns", "coil[0].field", "machine.air_gap"} {
		is, _ := asked(&gone, path)
		assert.True(t, is, path)
	}
	gone.Old.Turns = quantity.Known(9) // typed before it was thrown away
	is, _ = asked(&gone, "old.cut_in")
	assert.False(t, is)
	gone.Old.Turns = quantity.Reading{}
	gone.Trials = []job.Trial{{}}
	path, _ := wants.FieldFor(&gone, needVolts, 0)
	assert.Equal(t, "coil[0].turns", path)
}

// Missing volts lead to the way that was begun, or to one that is possible.
func TestMissingVoltsLeadToAWayThatIsPossible(t *testing.T) {
	blank := func() job.Job { return job.Job{Trials: []job.Trial{{}}} }
	cases := map[string]func(*job.Job){
		"old.turns":       func(*job.Job) {},
		"spin[0].speed":   func(j *job.Job) { j.Old.Turns = quantity.Known(9) },
		"spin[0].line":    func(j *job.Job) { j.Spins = []job.SpinReading{{RPM: quantity.Known(600)}} },
		"coil[0].voltage": func(j *job.Job) { j.Coils = []job.CoilReading{{Turns: quantity.Known(9), RPM: quantity.Known(600)}} },
		"coil[0].turns":   func(j *job.Job) { j.Trials[0].Turns = quantity.Known(20) },
		"field.remanence": func(j *job.Job) { j.Field.Kind = "magnets" },
		"field.magnet": func(j *job.Job) {
			j.Field = job.FieldSpec{Kind: "magnets", RemanenceTesla: quantity.Known(1.2)}
		},
	}
	for want, say := range cases {
		j := blank()
		say(&j)
		got, ok := wants.FieldFor(&j, needVolts, 0)
		require.True(t, ok)
		assert.Equal(t, want, got)
	}
	j := blank()
	j.Spins = []job.SpinReading{{RPM: quantity.Known(600), LineVolts: quantity.Known(9)}}
	got, _ := wants.FieldFor(&j, needVolts, 0)
	assert.Equal(t, "old.turns", got, "the volts are there, the turns that gave them are not")
	j.Old.Turns, j.Field.Kind, j.Spins[0].FieldAmps = quantity.Known(9), "magnets", quantity.Known(2)
	got, _ = wants.FieldFor(&j, needVolts, 0)
	assert.Equal(t, "coil[0].turns", got, "what the wound rotor gave says nothing of the magnets")
}

const needVolts = "needs a spin-up reading of the old winding or the speed at which it began to charge (with its turns), or a trial coil, or a gap flux density, or the magnets"
