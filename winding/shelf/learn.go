package shelf

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// lastJobs is how many of the latest records count: a winder's hand changes.
const lastJobs = 5

// sizes are the classes of wire that a hand fills a slot with alike: bare mm, from and to. They are
// this program's own; common practice knows only that thick wire fills less.
var sizes = [][2]float64{{0, 0.5}, {0.5, 1}, {1, 1.5}, {1.5, 100}}

// Lesson is what the records of a bench say of one thing: the mean of the last few, and the scatter of
// one of them (the sample's standard deviation). Its Why names how many.
type Lesson struct {
	// FromMM and ToMM are the range of bare wire it is about.
	FromMM float64         `json:"from_mm"`
	ToMM   float64         `json:"to_mm"`
	Fill   quantity.Figure `json:"wire_fill"`
}

// Warmth is what the records say of one kind of machine.
type Warmth struct {
	// Machine is the kind, in words.
	Machine     string          `json:"machine"`
	RisePerWatt quantity.Figure `json:"rise_k_per_w"`

	kin kin
}

// Bench is what this bench has learned.
type Bench struct {
	// Fills is the wire fill that this hand reaches where it wound a slot full, by wire.
	Fills []Lesson `json:"fills,omitempty"`
	// MeanTurnOff is the deviation of the mean turn by the wire used from the computed one, in per cent
	// of that.
	MeanTurnOff quantity.Figure `json:"mean_turn_off_percent"`
	// Rises is the rise per watt by the temperature of windings after an hour, by machine.
	Rises []Warmth `json:"rises,omitempty"`
}

// Learn is what the records of a folder say. It puts nothing into a job.
func Learn(list []Entry) Bench {
	records := latest(list)
	var b Bench
	for _, size := range sizes {
		fill := mean(records, func(r *record) quantity.Figure {
			if r.Filled != "full" || !r.BareMM.Known() || r.BareMM.Value < size[0] || r.BareMM.Value >= size[1] {
				return quantity.Figure{}
			}
			return r.WireFill
		})
		if fill.Known() {
			b.Fills = append(b.Fills, Lesson{size[0], size[1], fill})
		}
	}
	b.MeanTurnOff = mean(records, func(r *record) quantity.Figure { return r.MeanTurnMM.Off })
	b.Rises = rises(records)
	return b
}

// rises is the rise per watt of each kind of machine, that of the latest record first.
func rises(records []record) []Warmth {
	var list []Warmth
	for i := range records {
		k := records[i].machine
		if !records[i].RiseTaught().Known() || !k.like(k) || slices.ContainsFunc(list, func(w Warmth) bool { return w.kin.like(k) }) {
			continue
		}
		rise := mean(records, func(r *record) quantity.Figure {
			if !r.machine.like(k) {
				return quantity.Figure{}
			}
			return r.RiseTaught()
		})
		list = append(list, Warmth{k.String(), rise, k})
	}
	return list
}

// latest is every record, the latest first.
func latest(list []Entry) []record {
	var records []record
	for _, e := range list {
		records = append(records, e.records...)
	}
	slices.SortStableFunc(records, func(a, b record) int { return cmp.Compare(b.Date, a.Date) })
	return records
}

// mean is the mean of a figure over the last few records that have it.
func mean(records []record, of func(*record) quantity.Figure) quantity.Figure {
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

// kin is what makes machines lose heat alike: the same kind of stator and cooling, and a size within a
// tenth. Common practice, no source.
type kin struct {
	flat, outside   bool
	cooling         string
	slots, poles    int
	boreMM, stackMM float64
}

const alike = 0.1 // of bore and stack

func kinOf(m *job.Machine) kin {
	return kin{m.Stator == job.StatorFlat, m.Rotor == job.RotorOutside, job.OrWord("machine.cooling", m.Cooling), m.Slots.Whole(), m.Poles.Whole(), m.BoreMM.Or(0), m.StackMM.Or(0)}
}

// like reports whether two machines are of one kind; one whose size is not known is like none.
func (k kin) like(o kin) bool {
	near := func(a, b float64) bool { return a > 0 && b > 0 && math.Abs(a-b) <= alike*max(a, b) }
	sizes := near(k.boreMM, o.boreMM) && near(k.stackMM, o.stackMM)
	k.boreMM, k.stackMM, o.boreMM, o.stackMM = 0, 0, 0, 0
	return sizes && k == o
}

// String is the kind in words.
func (k kin) String() string {
	across, cooled := "bore", map[string]string{"closed": "closed", "open": "open to the air", "fan": "with its fan"}[k.cooling]
	switch {
	case k.flat:
		across = "circle"
	case k.outside:
		across = "outside"
	}
	return fmt.Sprintf("%d/%d, %s %.4g, stack %.4g mm, %s", k.slots, k.poles, across, k.boreMM, k.stackMM, cooled)
}
