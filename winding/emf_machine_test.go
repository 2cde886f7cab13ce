package winding_test

import (
	"math"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// machineOf is a worked example of testdata/winding/emf_examples.csv as a job: the complete path from
// slots and turns to volts. Its flux is given as a gap flux density on an iron of three metres, where
// the example gives the flux itself.
func machineOf(in map[string]float64) (job.Job, bool) {
	slots, poles := in["slots"], in["poles"]
	bore, stack := 3000.0, 3000.0
	tesla := in["flux_per_pole_Wb"] * poles / (2 * bore * stack * 1e-6) // Φ = 2·B·D·L/2p
	if b := in["B_peak_T"]; b > 0 {
		bore, stack, tesla = 2000*in["bore_radius_m"], 1000*in["stack_length_m"], b
	}
	span := slots/poles - in["short_pitch_slots"]
	if s := in["coil_pitch_slots"]; s > 0 {
		span = s
	}
	turns := in["conductors_per_slot"] / 2
	if n := in["turns_per_coil"]; n > 0 {
		turns = n
	}
	if slots == 0 || turns == 0 || span != math.Trunc(span) || tesla == 0 {
		return job.Job{}, false
	}
	j := job.Job{}
	j.Machine = job.Machine{Slots: quantity.Known(slots), Poles: quantity.Known(poles), Phases: quantity.Known(3), Layers: quantity.Known(2),
		Span: quantity.Known(span), BoreMM: quantity.Known(bore), StackMM: quantity.Known(stack)}
	j.Field.GapTesla = quantity.Known(tesla)
	trial := job.Trial{Name: "A"}
	trial.Turns = quantity.Known(turns)
	// Books give conductors or turns per phase; circuits make up for the rest.
	if n := in["turns_per_phase"]; n > 0 {
		trial.Circuits = quantity.Known(math.Max(1, math.Round(turns*slots/3/n)))
	}
	j.Trials = []job.Trial{trial}
	return j, true
}
