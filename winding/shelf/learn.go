package shelf

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"slotwright/winding"
	"slotwright/winding/quantity"
)

// lastJobs is how many of the latest records count: a hand changes.
const lastJobs = 5

// sizes are the classes of wire that a hand fills a slot with alike: bare mm, from and to.
// They are this program's own; common practice knows only that thick wire fills less.
var sizes = [][2]float64{{0, 0.5}, {0.5, 1}, {1, 1.5}, {1.5, 100}}

// Lesson is what the records of a bench say of one thing: the mean of the last few, and how
// far one of them is from it (the sample's standard deviation). Its Why names how many.
type Lesson struct {
	// FromMM and ToMM are the bare wire it is about.
	FromMM float64         `json:"from_mm"`
	ToMM   float64         `json:"to_mm"`
	Fill   quantity.Figure `json:"wire_fill"`
}

// Bench is what this bench learns.
type Bench struct {
	// Fills is the wire fill that this hand reaches where it wound a slot full, by wire.
	Fills []Lesson `json:"fills,omitempty"`
	// MeanTurnOff is how far the mean turn by the wire used is from the one reckoned with,
	// in percent of that.
	MeanTurnOff quantity.Figure `json:"mean_turn_off_percent"`
}

// Learn is what the records of a folder say. Nothing is put into a job by it.
func Learn(list []Entry) Bench {
	records := latest(list)
	var b Bench
	for _, size := range sizes {
		fill := mean(records, func(r *winding.WoundOutcome) quantity.Figure {
			if r.Filled != "full" || !r.BareMM.Known() || r.BareMM.Value < size[0] || r.BareMM.Value >= size[1] {
				return quantity.Figure{}
			}
			return r.WireFill
		})
		if fill.Known() {
			b.Fills = append(b.Fills, Lesson{size[0], size[1], fill})
		}
	}
	b.MeanTurnOff = mean(records, func(r *winding.WoundOutcome) quantity.Figure { return r.MeanTurnMM.Off })
	return b
}

// latest is every record, the latest first.
func latest(list []Entry) []winding.WoundOutcome {
	var records []winding.WoundOutcome
	for _, e := range list {
		records = append(records, e.records...)
	}
	slices.SortStableFunc(records, func(a, b winding.WoundOutcome) int { return cmp.Compare(b.Date, a.Date) })
	return records
}

// mean is that of a figure in the last few records that have it.
func mean(records []winding.WoundOutcome, of func(*winding.WoundOutcome) quantity.Figure) quantity.Figure {
	var values []float64
	for i := range records {
		if f := of(&records[i]); f.Known() && len(values) < lastJobs {
			values = append(values, f.Value)
		}
	}
	n := float64(len(values))
	if n == 0 {
		return quantity.Missing("nothing is recorded of it yet")
	}
	sum, squares := 0.0, 0.0
	for _, v := range values {
		sum += v
	}
	for _, v := range values {
		squares += (v - sum/n) * (v - sum/n)
	}
	f := quantity.Of(sum / n)
	if n > 1 {
		f.PlusMinus = math.Sqrt(squares / (n - 1))
	}
	if n == 1 {
		return f.Because("your last job")
	}
	return f.Because(fmt.Sprintf("your last %.0f jobs", n))
}
