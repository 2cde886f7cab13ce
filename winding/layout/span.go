package layout

// MeanSpan is the mean span of the wound coils in slots, each the shorter way round,
// weighted by turns: what the mean turn goes by in concentric windings. 0 without turns.
func (l *Layout) MeanSpan() float64 {
	sum, turns := 0, 0
	for i := range l.coils {
		c := &l.coils[i]
		ahead := wrap(c.Finish-c.Start, l.spec.Slots)
		sum += c.Turns * min(ahead, l.spec.Slots-ahead)
		turns += c.Turns
	}
	if turns == 0 {
		return 0
	}
	return float64(sum) / float64(turns)
}
