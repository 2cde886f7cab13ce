package charge

// CutInEMFPeak is the peak EMF of one phase, V, above which current flows: the load's Volts and two
// diode drops, over √3 for three phases in star; one drop at half wave, half of all in a doubler. Ohms,
// henries and frequency do not affect it. It is 0, "at once", for a plain resistor on ideal diodes, and
// also for a load or a number of phases that Solve would refuse: Solve says why.
func CutInEMFPeak(l Load, phases int, delta bool) float64 {
	if checkLoad(l) != nil || checkPhases(phases) != nil || l.Rectifier.Takes(phases) != nil {
		return 0
	}
	return l.held() / l.peakPerPhase(phases, delta)
}
