package readings

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// full is the family whose field alone fills the iron that it shares with the armature.
func (m miss) full() bool { return strings.HasPrefix(m.s.name, "full") }

// From exact readings, 95 of 100 predicted amps from 1.5 times cut-in up, for the winding that
// was read and for 0.6, 1.5, 2 and 3.5 times its turns, lie this near, %. Wanted are 5 and 7
// from three independent facts on, 6 and 8 from amps at two speeds, 12 from the plate with
// the speed at which charging began.
//
// Three facts reach that on all machines. Two facts leave open how the inductance changes with
// current and take what is usual; that reaches it on six of the seven families. On the
// last, "full claw", whose inductance grows with current by as much as the model allows,
// it does not, and so not on all taken together: what is reached there is held here, and
// that the ± says so is held in TestPlusMinusCovers.
func TestPredictedAmps(t *testing.T) {
	for route, limit := range map[string]struct{ old, rewound, allOld, allRewound float64 }{
		"spin-up, short, amps at 1.25 and 2": {5, 7, 5, 7},
		"amps at 1.25, 2 and 4":              {5, 7, 5, 7},
		"amps at 1.25 and 4":                 {6, 8, 7.5, 8},   // all: 6 is wanted, not reached
		"plate and began":                    {12, 12, 13, 12}, // all: 12 is wanted, not reached on the old winding
	} {
		t.Run(route, func(t *testing.T) {
			t.Parallel()
			all := predict(t, route, meters{}, 1, false)
			pick := func(old, full bool) func(miss) bool {
				return func(m miss) bool { return m.cutIns >= 1.5 && (m.turns == 1) == old && (full || !m.full()) }
			}
			usual, rewound := worst95(all, pick(true, false)), worst95(all, pick(false, false))
			withFull, rewoundFull := worst95(all, pick(true, true)), worst95(all, pick(false, true))
			worst := worst95(all, func(m miss) bool { return m.cutIns >= 1.5 && m.full() })
			t.Logf("six families %.1f and %.1f %%, all %.1f and %.1f %%, the full claws alone %.1f %%", usual, rewound, withFull, rewoundFull, worst)
			assert.LessOrEqual(t, usual, limit.old, "old winding")
			assert.LessOrEqual(t, rewound, limit.rewound, "rewound")
			assert.LessOrEqual(t, withFull, limit.allOld, "old winding, all families")
			assert.LessOrEqual(t, rewoundFull, limit.allRewound, "rewound, all families")
		})
	}
}

// The stated ± holds 95 of 100, on all families, exact readings and meters that are off as
// readings.Usual has it; and it is not so wide as to say nothing.
func TestPlusMinusCovers(t *testing.T) {
	widest := map[string]float64{ // of half of the stated ±, %
		"spin-up, short, amps at 1.25 and 2": 7, "amps at 1.25, 2 and 4": 7, "amps at 1.25 and 4": 9,
		"plate and began": 13, "spin-up, short": 13, "spin-up, amps at 4": 11,
	}
	for route := range routes {
		for kind, m := range map[string]meters{"exact": {}, "meters": {rand.New(rand.NewPCG(1, 2))}} {
			t.Run(route+", "+kind, func(t *testing.T) {
				t.Parallel()
				all := predict(t, route, m, 3, true)
				high, wide := covered(all, func(m miss) bool { return m.cutIns >= 1.5 })
				low, _ := covered(all, func(m miss) bool { return m.cutIns < 1.5 })
				t.Logf("from 1.5 times cut-in %.1f %% within, half of the ± under %.1f %%; below %.1f %% within", high, wide, low)
				fulls, _ := covered(all, func(m miss) bool { return m.cutIns >= 1.5 && m.full() })
				t.Logf("of the full claws %.1f %%", fulls)
				assert.GreaterOrEqual(t, high, 95.0, "from 1.5 times cut-in up")
				assert.GreaterOrEqual(t, low, 85.0, "at 1.1 and 1.25 times cut-in")
				assert.LessOrEqual(t, wide, widest[route])
			})
		}
	}
}
