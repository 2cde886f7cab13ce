package drawing

// # Distinguishing without colour
//
// A phase is a pattern: U solid, V dashed, W dotted. A set is a weight: the second is drawn twice as
// thick. There are also letters on every coil side.

// phasePen is the pen of a phase (0, 1, 2) of a set (0, 1).
func phasePen(set, phase int) pen {
	width := 0.4
	if set == 1 {
		width = 0.85
	}
	return pen{width, [3]string{"", "3 1.4", "0.7 0.9"}[phase]}
}

// trialPen is the pen of a trial in the diagram.
func trialPen(i int) pen {
	return pen{0.55, [4]string{"", "4 1.6", "1 1", "6 1.2 1 1.2"}[i%4]}
}
