package wound

import (
	"fmt"
	"math"
	"math/cmplx"
	"slices"
	"strings"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// network is a winding as a network of its coils, by an own way: the mutual inductances are the means of
// the products of the coils' winding functions round a smooth gap, less the products of their means, the
// leakage is each coil's own, and the volts that coils make are the integrals of their winding functions
// over a sine wave of the gap. Nothing of it is the program's but the list of coils.
type network struct {
	coils   []layout.Coil
	poles   int
	gap     [][]float64  // mutual inductance, of a gap of unit permeance
	volts   []complex128 // open
	circuit int          // circuits in each phase
	delta   bool
}

const around = 1440 // points round the gap

func networkOf(plan *layout.Layout, circuits int, delta bool) network {
	spec := plan.Spec()
	n := network{coils: plan.Coils(), poles: spec.Poles, circuit: circuits, delta: delta}
	turns := make([][]float64, len(n.coils))
	n.volts, n.gap = make([]complex128, len(n.coils)), make([][]float64, len(n.coils))
	for i, c := range n.coils {
		turns[i] = make([]float64, around)
		from, to := c.Start, c.Finish
		if to < from {
			to += spec.Slots
		}
		mean := 0.0
		for k := range around {
			at := float64(k)/around*float64(spec.Slots) + 0.5
			if at >= float64(from) && at < float64(to) || at+float64(spec.Slots) < float64(to) {
				turns[i][k] = float64(c.Sense)
			}
			mean += turns[i][k] / around
		}
		for k := range around {
			turns[i][k] -= mean
			n.volts[i] += complex(turns[i][k]/around, 0) * cmplx.Rect(1, -math.Pi*float64(spec.Poles)*float64(k)/around)
		}
	}
	for i := range n.coils {
		n.gap[i] = make([]float64, len(n.coils))
		for k := range n.coils {
			for p := range around {
				n.gap[i][k] += turns[i][p] * turns[k][p] / around
			}
		}
	}
	return n
}

// pairs is the volts between leads, with some coils turned round (by their index), where the reactance of
// a sound phase alone is x times its ohms, and a part of that is leakage.
func (n network) pairs(turned []int, x, leakage float64) (each [3]float64) {
	perPhase := float64(len(n.coils)) / 3
	whole := 0.0
	for i, a := range n.coils {
		for k, b := range n.coils {
			if a.Phase == 0 && b.Phase == 0 {
				whole += n.gap[i][k]
			}
		}
	}
	way := make([]complex128, len(n.coils))
	for i := range way {
		way[i] = 1
	}
	for _, i := range turned {
		way[i] = -1
	}
	branches := 3 * n.circuit
	e, z := make([]complex128, branches), make([][]complex128, branches)
	for i := range z {
		z[i] = make([]complex128, branches)
	}
	at := func(c layout.Coil) int { return c.Phase*n.circuit + c.Circuit - 1 }
	for i, a := range n.coils {
		e[at(a)] += way[i] * n.volts[i]
		for k, b := range n.coils {
			reactance := x * (1 - leakage) * n.gap[i][k] / whole
			ohms := 0.0
			if i == k {
				reactance += x * leakage / perPhase
				ohms = 1 / perPhase
			}
			z[at(a)][at(b)] += complex(ohms, reactance) * way[i] * way[k]
		}
	}
	// Loops: of each phase the first circuit against each other one, and in a delta once round.
	var loops [][]complex128
	for phase := range 3 {
		for c := 1; c < n.circuit; c++ {
			loop := make([]complex128, branches)
			loop[phase*n.circuit], loop[phase*n.circuit+c] = 1, -1
			loops = append(loops, loop)
		}
	}
	if n.delta {
		loop := make([]complex128, branches)
		for phase := range 3 {
			loop[phase*n.circuit] = 1
		}
		loops = append(loops, loop)
	}
	rows, right := make([][]complex128, len(loops)), make([]complex128, len(loops))
	for i, l := range loops {
		rows[i] = make([]complex128, len(loops))
		for b := range branches {
			right[i] += l[b] * e[b]
			for k, m := range loops {
				for d := range branches {
					rows[i][k] += l[b] * z[b][d] * m[d]
				}
			}
		}
	}
	amps := solved(rows, right)
	flows := make([]complex128, branches)
	for i, l := range loops {
		for b := range branches {
			flows[b] += amps[i] * l[b]
		}
	}
	var phase [3]complex128
	for p := range phase {
		b := p * n.circuit
		phase[p] = e[b]
		for d := range branches {
			phase[p] -= z[b][d] * flows[d]
		}
	}
	for p := range each {
		if each[p] = cmplx.Abs(phase[p]); !n.delta {
			each[p] = cmplx.Abs(phase[p] - phase[(p+1)%3])
		}
	}
	return each
}

// solved is the solution of linear equations, by elimination.
func solved(rows [][]complex128, right []complex128) []complex128 {
	n := len(right)
	for i := range n {
		best := i
		for k := i; k < n; k++ {
			if cmplx.Abs(rows[k][i]) > cmplx.Abs(rows[best][i]) {
				best = k
			}
		}
		rows[i], rows[best], right[i], right[best] = rows[best], rows[i], right[best], right[i]
		for k := i + 1; k < n; k++ {
			f := rows[k][i] / rows[i][i]
			for c := i; c < n; c++ {
				rows[k][c] -= f * rows[i][c]
			}
			right[k] -= f * right[i]
		}
	}
	for i := n - 1; i >= 0; i-- {
		for c := i + 1; c < n; c++ {
			right[i] -= rows[i][c] * right[c]
		}
		right[i] /= rows[i][i]
	}
	return right
}

// looped is a stator whose phases have loops.
type looped struct {
	slots, poles, span, layers, circuits int
	delta                                bool
}

// record is its record, with the pairs as planned: 1 Ω and 50 V at 1000 rpm, and its coils.
func (l looped) record(t *testing.T) (*Record, *layout.Layout) {
	t.Helper()
	plan, err := layout.New(layout.Spec{Slots: l.slots, Poles: l.poles, Phases: 3, Span: l.span, Layers: l.layers})
	require.NoError(t, err)
	w := Winding{Phases: 3, Sets: 1, Leads: []string{"U", "V", "W"}, Layout: plan, Circuits: l.circuits, SeriesTurns: 100}
	w.Trial.Connection = layout.Star
	if l.delta {
		w.Trial.Connection = layout.Delta
	}
	as := job.AsWound{RPM: quantity.Known(1000), LinePairs: []float64{50, 50, 50}, LineVolts: quantity.Known(50),
		LeadPairs: []float64{1, 1, 1}, LeadOhms: quantity.Known(1), LeadOhmsC: quantity.Known(20)}
	r := w.Record(&as)
	r.ReadOhms(&as, quantity.Of(1))
	r.ReadVolts(&as, quantity.Of(0.05), 0)
	r.Explain()
	joined, err := plan.WithCircuits(l.circuits)
	require.NoError(t, err)
	return &r, joined
}

// One coil turned round in a delta, or in one of several circuits, each coil of 20 stators in its turn,
// turned either way, at reactances from a tenth of the ohms to ten times them, of which a tenth to all is
// leakage: never is another phase named; up to a reactance like the ohms, with three tenths of leakage or
// more, it is among what is named, and nearly always beyond. Where nothing fits, the phase is said all the
// same. Ohms tell nothing of it.
func TestACoilTurnedRoundInALoopIsNamed(t *testing.T) {
	all, first, none := 0, 0, 0
	for _, l := range []looped{
		{36, 12, 3, 1, 1, true}, {36, 12, 3, 2, 1, true}, {24, 4, 5, 2, 1, true}, {48, 8, 5, 2, 1, true}, {18, 6, 3, 1, 1, true},
		{12, 8, 1, 2, 1, true}, {9, 12, 1, 2, 1, true}, {12, 10, 1, 2, 1, true}, {27, 36, 1, 2, 1, true},
		{36, 12, 3, 1, 2, false}, {36, 12, 3, 1, 3, false}, {36, 12, 3, 1, 6, false}, {36, 12, 3, 2, 2, false}, {24, 4, 5, 2, 2, false},
		{48, 8, 5, 2, 2, false}, {12, 8, 1, 2, 2, false}, {12, 10, 1, 2, 2, false}, {36, 48, 1, 2, 4, false},
		{36, 12, 3, 1, 2, true}, {36, 12, 3, 1, 3, true},
	} {
		r, plan := l.record(t)
		require.Empty(t, r.Likely, "%+v", l)
		n := networkOf(plan, l.circuits, l.delta)
		sound := n.pairs(nil, 1, 0.5)
		for _, way := range []bool{false, true} {
			if way { // the shaft turns the other way
				for i := range n.volts {
					n.volts[i] = cmplx.Conj(n.volts[i])
				}
			}
			for _, leakage := range []float64{0.1, 0.3, 0.6, 1} {
				for _, x := range []float64{0.1, 0.3, 1, 3, 10} {
					for i, c := range n.coils {
						if testing.Short() && i%5 != 0 {
							continue
						}
						q := *r
						q.LineVolts.Each = nil
						for k, v := range n.pairs([]int{i}, x, leakage) {
							q.LineVolts.Each = append(q.LineVolts.Each, v/sound[k]*r.LineVolts.Expected.Value)
						}
						e := q.LineVolts.Each
						q.LineVolts.Read.Value = (e[0] + e[1] + e[2]) / 3
						name := fmt.Sprintf("%+v, coil %d, reactance %v, leakage %v, %.4v", l, c.Number, x, leakage, e)
						q.Likely = q.likely()
						phase := "phase " + r.leads.phase(c.Phase)
						right := func(f Likely) bool {
							return strings.HasPrefix(f.Fault, "one ") && strings.Contains(f.Fault, " of "+phase+" turned round: ")
						}
						for _, f := range q.Likely {
							assert.Contains(t, f.Fault, phase+" turned round", name)
						}
						all++
						switch {
						case len(q.Likely) == 0:
							none++
							assert.Contains(t, q.speaksOfPhases("line"), phase, name)
						case right(q.Likely[0]):
							first++
						}
						if x <= 1 && leakage >= 0.3 {
							assert.True(t, slices.ContainsFunc(q.Likely, right), "%s: %v", name, q.Likely)
						}
					}
				}
			}
		}
	}
	assert.Greater(t, float64(first), 0.97*float64(all), "of %d, %d named nothing", all, none)
}

// By hand, all alike: a delta of which one coil of six is turned round lacks a third of a phase, and its
// pairs read |1 − 2/9| and √(1 − 1/9 + 1/81); one whole phase turned round 1/3 and √(1 − 2/3 + 4/9).
// Of two circuits of three coils, one coil turned round leaves 1 − 1/3 of the phase, as of six in series.
func TestPatternsOfLoopsByHand(t *testing.T) {
	patterns := func(l looped) map[string][3]float64 {
		r, _ := l.record(t)
		list := map[string][3]float64{}
		for _, f := range r.could {
			if f.one != nil && f.one.phase == 1 && f.one.ohms == pairsAlike {
				list[f.Fault] = f.one.volts
			}
		}
		return list
	}
	for _, c := range []struct {
		of          looped
		fault       string
		across, two float64
	}{
		{looped{36, 12, 3, 1, 1, true}, "one coil of 6 turned round in one phase", 7.0 / 9, math.Sqrt(1 - 1.0/9 + 1.0/81)},
		{looped{36, 12, 3, 1, 1, true}, "one phase of the delta turned round", 1.0 / 3, math.Sqrt(1 - 2.0/3 + 4.0/9)},
		{looped{36, 12, 3, 1, 2, true}, "one phase of the delta turned round", 1.0 / 3, math.Sqrt(1 - 2.0/3 + 4.0/9)},
		{looped{36, 12, 3, 1, 2, true}, "one coil of 3 of one of the 2 circuits turned round in one phase", 7.0 / 9, math.Sqrt(1 - 1.0/9 + 1.0/81)},
	} {
		each, ok := patterns(c.of)[c.fault]
		require.True(t, ok, c.fault)
		assert.InDelta(t, c.across, each[1], 1e-9, c.fault)
		assert.InDelta(t, c.two, each[0], 1e-9, c.fault)
		assert.InDelta(t, c.two, each[2], 1e-9, c.fault)
	}
	k := 2.0 / 3
	each := patterns(looped{36, 12, 3, 1, 2, false})["one coil of 3 of one of the 2 circuits turned round in one phase"]
	assert.InDelta(t, math.Sqrt(1+k+k*k)/math.Sqrt(3), each[0], 1e-9, "U-V has it")
	assert.InDelta(t, math.Sqrt(1+k+k*k)/math.Sqrt(3), each[1], 1e-9, "V-W has it")
	assert.InDelta(t, 1, each[2], 1e-9)
}
