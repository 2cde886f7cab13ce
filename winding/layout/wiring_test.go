package layout

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// follow walks each phase's wire from its 1 lead to its 2 lead along the joins, and returns the sum of
// the coils' effective turns with the sign of the direction of travel.
func follow(t *testing.T, l *Layout, w Wiring, set, phase, harmonic int) (sum complex128, coils int) {
	t.Helper()
	next := map[EndRef]EndRef{}
	for _, j := range w.Joins {
		_, twice := next[j.From]
		require.False(t, twice, "an end joined twice")
		next[j.From] = j.To
	}
	byNumber := map[int]Coil{}
	for _, c := range l.coils {
		byNumber[c.Number] = c
	}
	name := l.PhaseName(set, phase)
	ends := map[EndRef]bool{}
	var starts []EndRef
	for _, lead := range w.Leads {
		switch lead.Name {
		case name + "1":
			starts = lead.Ends
		case name + "2":
			for _, e := range lead.Ends {
				ends[e] = true
			}
		}
	}
	require.Len(t, starts, l.circuits)
	for _, at := range starts {
		for range len(l.coils) + 1 {
			c := byNumber[at.Coil]
			c.Sense = 1 // the direction of the wire, not the list's
			out := EndRef{c.Number, Finish, c.Finish}
			if at.End == Finish {
				c.Sense, out = -1, EndRef{c.Number, Start, c.Start}
			}
			sum += l.effective(&c, harmonic)
			coils++
			if ends[out] {
				delete(ends, out)
				break
			}
			var ok bool
			at, ok = next[out]
			require.True(t, ok, "the wire ends at %s without a lead", out)
		}
	}
	assert.Empty(t, ends, "leads that no wire comes to")
	return sum, coils
}

// Walking the joins from lead to lead visits every coil of the phase once, and the sum is the phase's
// phasor: what gets wound is what was computed.
func TestJoinsMakeThePhase(t *testing.T) {
	n := 0
	for _, layers := range []int{1, 2} {
		eachSpec(true, 3, layers, func(s Spec) {
			if s.Slots > 60 {
				return
			}
			for _, kind := range []Kind{Lap, Concentric, Wave} {
				s.Kind = kind
				l, err := New(s)
				if err != nil {
					continue
				}
				for _, a := range l.CircuitChoices() {
					split, err := l.WithCircuits(a)
					require.NoError(t, err)
					for _, conn := range []Connection{Star, Delta} {
						w := split.Wiring(conn)
						for phase := range 3 {
							sum, coils := follow(t, split, w, 0, phase, 1)
							want := split.PhasePhasor(0, phase, 1) * complex(float64(a), 0)
							require.InDelta(t, 0, cmplx.Abs(sum-want), 1e-9*cmplx.Abs(want), "%+v, %d circuits", s, a)
							require.Equal(t, split.CoilsPerPhase(), coils)
						}
						require.Len(t, w.Order, len(l.coils))
						n++
					}
				}
			}
		})
	}
	assert.Greater(t, n, 500)
}

// Star joins the three 2 leads in one point; delta joins each 1 lead to the 2 lead of another phase,
// using all six once.
func TestStarAndDelta(t *testing.T) {
	l, err := New(Spec{Slots: 36, Poles: 12, Phases: 3, Span: 3, Layers: 2})
	require.NoError(t, err)
	star := l.Wiring(Star)
	require.Len(t, star.Nodes, 1)
	assert.Equal(t, []string{"U2", "V2", "W2"}, star.Nodes[0].Leads)
	delta := l.Wiring(Delta)
	require.Len(t, delta.Nodes, 3)
	used := map[string]bool{}
	for _, n := range delta.Nodes {
		for _, lead := range n.Leads {
			assert.False(t, used[lead])
			used[lead] = true
		}
	}
	assert.Len(t, used, 6)
	// Leads as IEC 60034-8 names them.
	names := []string{}
	for _, lead := range star.Leads {
		names = append(names, lead.Name)
	}
	assert.Equal(t, []string{"U1", "U2", "V1", "V2", "W1", "W2"}, names)
}

// The steps agree with the joins, and every sentence stands alone.
func TestStepsFollowTheJoins(t *testing.T) {
	for _, s := range []Spec{{Slots: 36, Poles: 12, Phases: 3, Span: 3, Layers: 2}, {Slots: 36, Poles: 12, Phases: 3, Span: 3, Layers: 1, Kind: Wave},
		{Slots: 24, Poles: 4, Phases: 3, Span: 6, Layers: 1, Kind: Concentric}, {Slots: 12, Poles: 10, Phases: 3, Span: 1, Layers: 2}, {Slots: 9, Poles: 8, Phases: 3, Span: 1, Layers: 2}} {
		l, err := New(s)
		require.NoError(t, err)
		w := l.Wiring(Star)
		joins := map[EndRef]EndRef{}
		for _, j := range w.Joins {
			joins[j.From] = j.To
		}
		seen := map[int]bool{}
		for i, st := range l.WindingOrder() {
			assert.Equal(t, i+1, st.Number)
			assert.False(t, seen[st.Coil])
			seen[st.Coil] = true
			if st.EndLead == "" {
				assert.Equal(t, joins[st.Leave], st.Next)
			}
			assert.Contains(t, st.String(), fmt.Sprintf("coil %d, from slot %d ", st.Coil, st.From))
			assert.Equal(t, i%(len(l.coils)/3) == 0, st.Lead != "", "three leads begin")
		}
		assert.Len(t, seen, len(l.coils))
	}
}

// A reversed coil, a missing one and one two turns short are reflected in phasors, turns and balance.
func TestListsAsFound(t *testing.T) {
	l, err := New(Spec{Slots: 36, Poles: 12, Phases: 3, Span: 3, Layers: 2})
	require.NoError(t, err)
	l, err = l.WithTurns(10)
	require.NoError(t, err)
	assert.True(t, l.Balance().Equal)
	whole := cmplx.Abs(l.PhasePhasor(0, 0, 1))
	change := func(f func(*Coil)) *Layout {
		coils := l.Coils()
		f(&coils[0])
		found, err := FromCoils(l.Spec(), coils)
		require.NoError(t, err)
		return found
	}
	reversed := change(func(c *Coil) { c.Sense = -c.Sense })
	assert.InDelta(t, whole*10/12, cmplx.Abs(reversed.PhasePhasor(0, 0, 1)), 1e-9, "one of twelve works against the rest")
	assert.False(t, reversed.Balance().Equal)
	missing := change(func(c *Coil) { c.Turns = 0 })
	assert.InDelta(t, whole*11/12, cmplx.Abs(missing.PhasePhasor(0, 0, 1)), 1e-9)
	assert.Equal(t, 110, missing.PhaseTurns(0, 0))
	short := change(func(c *Coil) { c.Turns = 8 })
	assert.InDelta(t, whole*118/120, cmplx.Abs(short.PhasePhasor(0, 0, 1)), 1e-9)
	assert.Equal(t, 118, short.PhaseTurns(0, 0))
	_, err = FromCoils(l.Spec(), append(l.Coils(), l.Coils()[0]))
	assert.ErrorContains(t, err, "twice")

	// In two circuits six coils are 60 turns, and 58 with the short one: each is one turn off their mean of 59.
	halves, err := l.WithCircuits(2)
	require.NoError(t, err)
	assert.Zero(t, halves.Balance().WorstCircuitPercent)
	coils := halves.Coils()
	coils[0].Turns = 8
	halves, err = FromCoils(halves.Spec(), coils)
	require.NoError(t, err)
	assert.InDelta(t, 100.0/59, halves.Balance().WorstCircuitPercent, 1e-9)
	for i := range coils {
		if coils[i].Phase == 0 && coils[i].Circuit == 1 {
			coils[i].Turns = 0
		}
	}
	halves, err = FromCoils(halves.Spec(), coils)
	require.NoError(t, err)
	assert.Zero(t, halves.PhasePhasor(0, 0, 1), "a circuit of no turns shorts the other")
}

// Between two leads by hand: a star has two phases in series, and two phasors 120° apart; a delta one phase
// in parallel with the other two in series, 1/(1 + 1/2), and the volts of that phase. One phase is what it is,
// whatever it is called.
func TestLeadsOverAPhase(t *testing.T) {
	assert.Equal(t, 2.0, Star.LeadPerPhase(3))
	assert.InDelta(t, 1/(1+1.0/2), Delta.LeadPerPhase(3), 1e-15)
	assert.InDelta(t, cmplx.Abs(1-cmplx.Rect(1, 2*math.Pi/3)), Star.LinePerPhase(3), 1e-15)
	assert.Equal(t, 1.0, Delta.LinePerPhase(3))
	for _, joined := range []Connection{Star, Delta} {
		assert.Equal(t, []float64{1, 1}, []float64{joined.LeadPerPhase(1), joined.LinePerPhase(1)})
	}
}
