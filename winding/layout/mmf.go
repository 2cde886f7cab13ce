package layout

// SlotAmpTurns is the ampere-conductors of each slot (index 0 is slot 1), positive
// away from the connection end, for the given amps into each phase: index
// 3·set + phase; phases beyond the list carry nothing. Circuits share their phase's
// amps evenly.
func (l *Layout) SlotAmpTurns(amps []float64) []float64 {
	slots := make([]float64, l.spec.Slots)
	for i := range l.coils {
		c := &l.coils[i]
		at := 3*c.Set + c.Phase
		if at >= len(amps) {
			continue
		}
		v := amps[at] * float64(c.Turns*c.Sense) / float64(l.circuits)
		slots[c.Start-1] += v
		slots[c.Finish-1] -= v
	}
	return slots
}

// ToothMMF is the magnetomotive force in ampere-turns across the air gap at each tooth (index 0 is the
// tooth between slots 1 and 2) for the same amps: the running sum of [Layout.SlotAmpTurns], less its
// mean, since the net flux over the gap is zero. The gap is taken as uniform and the iron as ideal.
func (l *Layout) ToothMMF(amps []float64) []float64 {
	teeth := l.SlotAmpTurns(amps)
	sum, mean := 0.0, 0.0
	for i, v := range teeth {
		sum += v
		teeth[i] = sum
		mean += sum / float64(len(teeth))
	}
	for i := range teeth {
		teeth[i] -= mean
	}
	return teeth
}
