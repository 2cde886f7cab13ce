package winding_test

import (
	"math"
	"strconv"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/published"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// example is a row of testdata/winding/emf_examples.csv; each names its source.
type example struct {
	id, topic, output string
	in                map[string]float64
	want              float64
}

func examples(t *testing.T) []example {
	var list []example
	for _, row := range published.Rows(t, "winding/emf_examples.csv") {
		if want, err := strconv.ParseFloat(row["recomputed_value"], 64); err == nil {
			list = append(list, example{row["id"], row["topic"], row["output"], row.Inputs("inputs"), want})
		}
	}
	return list
}

// machineOf is the example as a job: the whole road from slots and turns to volts. Its
// flux comes by a gap flux density on an iron of three metres, where the example gives the flux
// itself.
func machineOf(e example) (job.Job, bool) {
	in := e.in
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

// The books use 4.44 for √2·π and often two-figure factors; the recomputed column is
// compared, with the 0.4 % that the table asks for.
func TestEMFOfPublishedMachines(t *testing.T) {
	tried := 0
	for _, e := range examples(t) {
		if e.topic != "emf" && e.topic != "flux-from-B" {
			continue
		}
		j, ok := machineOf(e)
		if !ok {
			continue
		}
		o := winding.Evaluate(j)
		a := o.Trials[0]
		var got float64
		switch e.output {
		case "f_Hz":
			got = o.Machine.HertzPerRPM.Value * e.in["rpm"]
		case "E_phase_rms_V":
			got = a.PhasePerRPM.Value * e.in["rpm"]
		case "E_line_rms_V":
			got = a.LinePerRPM.Value * e.in["rpm"]
		default:
			continue
		}
		tried++
		assert.InEpsilon(t, e.want, got, 0.004, "%s %s", e.id, e.output)
	}
	assert.Greater(t, tried, 15)
}
