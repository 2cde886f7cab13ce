package winding_test

import (
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A coil list with a mistake is treated like a sound one.
func TestStaticOnAChangedCoilList(t *testing.T) {
	j := plain()
	j.Slot.AreaMM2 = quantity.Known(60)
	b := winding.Prepare(j)
	plan, why := b.Plan(0)
	require.Empty(t, why)
	sound := b.Static(j.Trials[0])
	same := b.StaticOn(j.Trials[0], plan)
	assert.InEpsilon(t, sound.LinePerRPM.Value, same.LinePerRPM.Value, 1e-12)
	assert.InEpsilon(t, sound.PhaseOhms20.Value, same.PhaseOhms20.Value, 1e-12)
	assert.InEpsilon(t, sound.WireFill.Value, same.WireFill.Value, 1e-12)

	coils := plan.Coils()
	for i := range coils { // one coil of each phase two turns short
		if coils[i].Group == 1 || coils[i].Number <= 3 {
			coils[i].Turns = 8
		}
	}
	short, err := layout.FromCoils(plan.Spec(), coils)
	require.NoError(t, err)
	got := b.StaticOn(j.Trials[0], short)
	assert.InEpsilon(t, sound.LinePerRPM.Value*58/60, got.LinePerRPM.Value, 1e-9, "6 coils of 10, one of 8")
	assert.InEpsilon(t, sound.PhaseOhms20.Value*58/60, got.PhaseOhms20.Value, 1e-9)
}

// More strands of the same metal lose less to the slot's own field.
func TestSplittingStrands(t *testing.T) {
	j := load(t, "engine.toml")
	a := evaluateA(j)
	require.True(t, a.ACFactor.Known())
	assert.Greater(t, a.ACFactor.Value, 1.0)
	assert.Less(t, a.ACFactorSplit.Value-1, (a.ACFactor.Value-1)*0.9)
}

// 60 rpm at 180 mm onto 60 mm less 2 % slip is 176.4 rpm; for 200 rpm with the driver kept
// the alternator's pulley is 180·0.98·60/200 = 52.92 mm.
func TestPulleysForAWantedSpeed(t *testing.T) {
	j := plain()
	j.Drive = job.DriveSpec{Kind: "water", Transmission: "belt", DriverMM: quantity.Known(180), DrivenMM: quantity.Known(60), UsualRPM: quantity.Known(60)}
	o := winding.Evaluate(j)
	assert.InEpsilon(t, 176.4, o.Machine.UsualRPM.Value, 1e-12)
	assert.False(t, o.Machine.WantedRatio.Known())
	j.Target.UsualRPM = quantity.Known(200)
	m := winding.Evaluate(j).Machine
	assert.InEpsilon(t, 52.92, m.DrivenMM.Value, 1e-9)
	assert.InEpsilon(t, 200.0/60*60/0.98, m.DriverMM.Value, 1e-9)
	j.Drive.TachDriveRPM, j.Drive.TachAltRPM = quantity.Known(58), quantity.Known(165)
	j.Target.UsualRPM = quantity.Reading{}
	m = winding.Evaluate(j).Machine
	assert.InEpsilon(t, 60*165.0/58, m.UsualRPM.Value, 1e-12, "the tachometers go first")
	assert.Contains(t, m.Ratio.Why, "slip")
	// By hand: 165/58 is 2.845 in place of 3: 5.2 % of slip. For 3.333 the pulley of 60 mm becomes
	// 60·2.845/3.333, or that of 180 mm 180·3.333/2.845; so too where the ratio was counted, over two belts.
	j.Target.UsualRPM = quantity.Known(200)
	m = winding.Evaluate(j).Machine
	assert.InEpsilon(t, 51.207, m.DrivenMM.Value, 1e-4, "what slips with one pulley slips with another")
	assert.InEpsilon(t, 210.91, m.DriverMM.Value, 1e-4)
	j.Drive.TachDriveRPM, j.Drive.TachAltRPM, j.Drive.Ratio = quantity.Reading{}, quantity.Reading{}, quantity.Known(8)
	m = winding.Evaluate(j).Machine
	assert.InEpsilon(t, 60*8/(200.0/60), m.DrivenMM.Value, 1e-9, "the other belt is still there")
}

// Magnets replacing a wound rotor: the ratio of the two fluxes, with ±15 %.
func TestMagnetsInAWoundRotorsPlace(t *testing.T) {
	j := load(t, "engine.toml")
	assert.False(t, winding.Evaluate(j).Machine.MagnetsAgainstWound.Known())
	j.Field.RemanenceTesla, j.Field.MagnetMM = quantity.Known(1.2), quantity.Known(4)
	wound := winding.Evaluate(j).Machine
	j.Field.Kind = "magnets"
	j.Spins = nil
	magnets := winding.Evaluate(j).Machine
	assert.InEpsilon(t, magnets.FluxMWb.Value/wound.FluxMWb.Value, wound.MagnetsAgainstWound.Value, 1e-9)
	assert.Equal(t, quantity.Guessed, wound.MagnetsAgainstWound.Origin)
}
