package readings

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// full is the family in which the field alone saturates the iron that it shares with the armature.
func (m miss) full() bool { return strings.HasPrefix(m.s.name, "full") }

// From exact readings, 95 of 100 predicted amps from 1.5 times cut-in up, for the winding that was read
// and for 0.6, 1.5, 2 and 3.5 times its turns, are within, %: 5 and 7 from three independent facts on,
// 6 and 8 from amps at two speeds, 12 from the plate with the speed at which charging began. This holds
// on the machines with which the solver was developed and on the independent ones, whose iron losses
// are higher: there spin-up and short circuit with amps up to twice cut-in slightly exceed 5 and 7, at
// 0.6 times the turns far above cut-in, where iron loss is highest.
func TestPredictedAmps(t *testing.T) {
	for route, limits := range map[string]struct{ old, rewound, oldApart, rewoundApart float64 }{
		"spin-up, short, amps at 1.25 and 2": {5, 7, 5.5, 7.5}, // apart: 5 and 7 are wanted, not reached
		"amps at 1.25, 2 and 4":              {5, 7, 5, 7},
		"amps at 1.25 and 4":                 {6, 8, 6, 8},
		"plate and began":                    {12, 12, 12, 12},
	} {
		for set := range families {
			t.Run(route+", "+set, func(t *testing.T) {
				t.Parallel()
				limit := limits
				all := predict(t, set, route, meters{}, 1, false)
				pick := func(old bool) func(miss) bool {
					return func(m miss) bool { return m.cutIns >= 1.5 && (m.turns == 1) == old }
				}
				read, rewound := worst95(all, pick(true)), worst95(all, pick(false))
				if set == "apart" {
					limit.old, limit.rewound = limit.oldApart, limit.rewoundApart
				}
				t.Logf("as read %.1f, rewound %.1f %%", read, rewound)
				assert.LessOrEqual(t, read, limit.old, "old winding")
				assert.LessOrEqual(t, rewound, limit.rewound, "rewound")
			})
		}
	}
}

// The stated ± covers 95 of 100, on all families of both sets, with exact readings and with meters that
// are off as in readings.Usual; and it is not too wide to be useful.
func TestPlusMinusCovers(t *testing.T) {
	widest := map[string]float64{ // of half of the stated ±, %
		"spin-up, short, amps at 1.25 and 2": 7.5, "amps at 1.25, 2 and 4": 7.5, "amps at 1.25 and 4": 9.5,
		"plate and began": 13.5, "spin-up, short": 13, "spin-up, amps at 4": 11,
		"spin-up, plate": 13, "spin-up, bridge": 60, "spin-up, short, amps at 1.25": 13, "short, amps at 1.25": 20,
		"spin-up behind the bridge, short, plate, began": 14, "everything": 7.5,
	}
	for route := range routes {
		for set := range families {
			for kind, m := range map[string]meters{"exact": {}, "meters": {rand.New(rand.NewPCG(1, 2))}} {
				t.Run(route+", "+set+", "+kind, func(t *testing.T) {
					t.Parallel()
					every := 3
					if testing.Short() {
						every = 6
					}
					all := predict(t, set, route, m, every, true)
					high, wide := covered(all, func(m miss) bool { return m.cutIns >= 1.5 })
					low, _ := covered(all, func(m miss) bool { return m.cutIns < 1.5 })
					t.Logf("from 1.5 times cut-in %.1f %% within, half of the ± under %.1f %%; below %.1f %% within", high, wide, low)
					if set == "machines" {
						fulls, _ := covered(all, func(m miss) bool { return m.cutIns >= 1.5 && m.full() })
						t.Logf("of the full claws %.1f %%", fulls)
					}
					assert.GreaterOrEqual(t, high, 95.0, "from 1.5 times cut-in up")
					assert.GreaterOrEqual(t, low, 85.0, "at 1.1 and 1.25 times cut-in")
					assert.LessOrEqual(t, wide, widest[route])
				})
			}
		}
	}
}
