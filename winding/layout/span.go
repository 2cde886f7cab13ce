package layout

// MeanSpan is the mean span of the wound coils in slots, each the shorter way round, weighted by turns:
// the basis of the mean turn of concentric windings. 0 without turns.
func (l *Layout) MeanSpan() float64 {
	sum, turns := 0, 0
	for i := range l.coils {
		c := &l.coils[i]
		sum += c.Turns * l.SpanOf(*c)
		turns += c.Turns
	}
	if turns == 0 {
		return 0
	}
	return float64(sum) / float64(turns)
}

// SpanOf is the span of a coil in slots, the shorter way round.
func (l *Layout) SpanOf(c Coil) int {
	ahead := wrap(c.Finish-c.Start, l.spec.Slots)
	return min(ahead, l.spec.Slots-ahead)
}
