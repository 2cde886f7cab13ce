package winding

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"slotwright/winding/job"
	"slotwright/winding/published"
	"slotwright/winding/quantity"
)

// Pinned is a job of testdata/jobs with the volts and the inductance that its machine has in
// testdata/balance/machines.csv, so that its balance is held to the tables worked outside
// whatever the program makes of magnets, iron and gap: a flux density typed and a bridge
// reading of the first trial's winding stand for them. Readings of the job's own are kept; a
// mean turn that was guessed is taken as measured, for the tables were worked with it.
func Pinned(t testing.TB, name string) job.Job {
	t.Helper()
	j := loadJob(t, name)
	if j.Machine.MeanTurnMM.Given() {
		j.Machine.MeanTurnMM.Origin = quantity.Measured
	}
	for _, row := range published.Rows(t, "balance/machines.csv") {
		w := worked(row)
		if w["job"] != name || w["trial"] != j.Trials[0].Name {
			continue
		}
		first := Prepare(j).layouts.candidate(j.Trials[0])
		if len(j.Spins) == 0 {
			webers := w.number(t, "volts_phase_rms_per_rpm") * 120 / (math.Sqrt2 * math.Pi * j.Machine.Poles.Value * first.coils.effective)
			pole := math.Pi * j.Machine.BoreMM.Value / j.Machine.Poles.Value * j.Machine.StackMM.Value * 1e-6
			j.Field.GapTesla = quantity.Known(webers * math.Pi / 2 / pole)
		}
		if len(j.Shorts) == 0 && !j.Old.LeadMilliHenries.Given() {
			if !j.Old.Turns.Given() {
				j.Old.Wound, j.Old.Connection = j.Trials[0].Wound, j.Trials[0].Connection
			}
			j.Old.LeadMilliHenries = quantity.Known(1)
			once := Prepare(j).Static(j.Trials[0]).PhaseMilliHenries.Value
			j.Old.LeadMilliHenries = quantity.Known(w.number(t, "phase_mh") / once)
		}
		o := Prepare(j).Static(j.Trials[0])
		require.InEpsilon(t, w.number(t, "volts_phase_rms_per_rpm"), o.PhasePerRPM.Value, 1e-6, name)
		require.InEpsilon(t, w.number(t, "phase_ohms_20c"), o.PhaseOhms20.Value, 1e-6, name)
		require.InEpsilon(t, w.number(t, "phase_mh"), o.PhaseMilliHenries.Value, 1e-6, name)
		return j
	}
	t.Fatal("no machine ", name)
	return j
}
