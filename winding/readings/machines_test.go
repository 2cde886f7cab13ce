package readings

import (
	"encoding/csv"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// simulated is one machine of testdata/readings/machines.csv: alternators that saturate, stepped
// through time by simulate.py beside it, which shares no code with this program.
type simulated struct {
	name string
	old  Machine
	// rows by turns, as multiples of the old ones.
	rows map[float64]row
}

// row is one winding: the columns of the table by name.
type row map[string]float64

// multiples are the speeds of the table, in times cut-in.
var multiples = []float64{1.1, 1.25, 1.5, 2, 3, 4, 5}

func (r row) ampsAt(cutIns float64) float64 {
	return r["amps_at_"+strconv.FormatFloat(cutIns, 'g', -1, 64)]
}

// wound reports whether the machine has a field coil, otherwise magnets.
func (s simulated) wound() bool {
	return !strings.HasPrefix(s.name, "magnet") && (strings.Contains(s.name, "claw") || strings.Contains(s.name, "wound"))
}

func machines(t testing.TB) []simulated { return machinesOf(t, "machines") }

// machinesOf is a set of simulated machines: "machines", or "apart", from which nothing in this package
// was tuned except modelDoubt.
func machinesOf(t testing.TB, set string) []simulated {
	t.Helper()
	file, err := os.Open("../../testdata/readings/" + set + ".csv")
	require.NoError(t, err)
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	var all []simulated
	for _, line := range lines[1:] {
		r, text := row{}, map[string]string{}
		for n, name := range lines[0] {
			text[name] = line[n]
			r[name], _ = strconv.ParseFloat(line[n], 64)
		}
		if len(all) == 0 || all[len(all)-1].name != text["machine"] {
			all = append(all, simulated{name: text["machine"], rows: map[float64]row{}})
		}
		s := &all[len(all)-1]
		s.rows[r["turns"]] = r
		if r["turns"] == 1 {
			s.old = Machine{
				Wound: all[len(all)-1].wound(), Phases: int(r["phases"]), Delta: text["delta"] == "yes", Poles: r["poles"], Ohms: r["phase_ohms"],
				DiodeVolts: r["diode_v"], DiodeOhms: r["diode_ohms"],
			}
		}
	}
	require.GreaterOrEqual(t, len(all), 40)
	return all
}

// meters is the error of readings; the zero value reads exactly.
type meters struct{ r *rand.Rand }

// read is a value as a meter with a ± shows it.
func (m meters) read(v, plusMinus float64) float64 {
	if m.r == nil {
		return v
	}
	return v * (1 + plusMinus/coverage*m.r.NormFloat64())
}

// loaded is amps into the battery at a multiple of cut-in.
func (s simulated) loaded(m meters, k Kind, cutIns float64) Reading {
	r := s.rows[1]
	return Reading{Kind: k, RPM: m.read(r["cut_in_rpm"]*cutIns, tachometer), Volts: m.read(r["volts"], battery), Amps: m.read(r.ampsAt(cutIns), Usual(k))}
}

func (s simulated) spin(m meters) Reading {
	rpm := 2 * s.rows[1]["cut_in_rpm"]
	return Reading{Kind: SpinUp, RPM: m.read(rpm, tachometer), Volts: m.read(s.rows[1]["line_v_per_krpm"]*rpm/1000, Usual(SpinUp))}
}

func (s simulated) short(m meters) Reading {
	return Reading{Kind: Short, RPM: m.read(s.rows[1]["short_rpm"], tachometer), Amps: m.read(s.rows[1]["short_line_a"], Usual(Short))}
}

func (s simulated) began(m meters) Reading {
	return Reading{Kind: Began, RPM: m.read(s.rows[1]["began_rpm"], Usual(Began)), Volts: s.rows[1]["volts"]}
}

func (s simulated) bridge(meters) Reading {
	return Reading{Kind: Bridge, Henries: s.rows[1]["bridge_h"]}
}

// routes are the sets of readings that people may take.
var routes = map[string]func(simulated, meters) []Reading{
	"spin-up, short, amps at 1.25 and 2": func(s simulated, m meters) []Reading {
		return []Reading{s.spin(m), s.short(m), s.loaded(m, Loaded, 1.25), s.loaded(m, Loaded, 2)}
	},
	"amps at 1.25 and 4": func(s simulated, m meters) []Reading {
		return []Reading{s.loaded(m, Loaded, 1.25), s.loaded(m, Loaded, 4)}
	},
	"amps at 1.25, 2 and 4": func(s simulated, m meters) []Reading {
		return []Reading{s.loaded(m, Loaded, 1.25), s.loaded(m, Loaded, 2), s.loaded(m, Loaded, 4)}
	},
	"plate and began": func(s simulated, m meters) []Reading {
		return []Reading{s.loaded(m, Plate, 5), s.began(m)}
	},
	"spin-up, short": func(s simulated, m meters) []Reading {
		return []Reading{s.spin(m), s.short(m)}
	},
	"spin-up, plate": func(s simulated, m meters) []Reading {
		return []Reading{s.spin(m), s.loaded(m, Plate, 5)}
	},
	"spin-up, bridge": func(s simulated, m meters) []Reading {
		return []Reading{s.spin(m), s.bridge(m)}
	},
	"spin-up, short, amps at 1.25": func(s simulated, m meters) []Reading {
		return []Reading{s.spin(m), s.short(m), s.loaded(m, Loaded, 1.25)}
	},
	"short, amps at 1.25": func(s simulated, m meters) []Reading {
		return []Reading{s.short(m), s.loaded(m, Loaded, 1.25)}
	},
	"spin-up behind the bridge, short, plate, began": func(s simulated, m meters) []Reading {
		spin := s.spin(m)
		spin.Kind, spin.Volts = SpinUpDC, spin.Volts*math.Sqrt2-2*s.old.DiodeVolts
		return []Reading{spin, s.short(m), s.loaded(m, Plate, 5), s.began(m)}
	},
	"everything": func(s simulated, m meters) []Reading {
		return []Reading{s.spin(m), s.short(m), s.loaded(m, Loaded, 1.25), s.loaded(m, Loaded, 2), s.loaded(m, Loaded, 4), s.loaded(m, Plate, 5), s.began(m), s.bridge(m)}
	},
	"spin-up, amps at 4": func(s simulated, m meters) []Reading {
		return []Reading{s.spin(m), s.loaded(m, Loaded, 4)}
	},
}

// miss is one predicted current against the simulated one.
type miss struct {
	s             simulated
	turns, cutIns float64
	off, stated   float64 // fractions of the true amps; stated is the ±
}

// predict runs a route on every nth machine of a set; the ± takes six times as long.
func predict(t testing.TB, set, route string, m meters, every int, plusMinus bool) []miss {
	t.Helper()
	var all []miss
	for n, s := range machinesOf(t, set) {
		if n/families[set]%every != 0 {
			continue
		}
		f, err := Solve(s.old, routes[route](s, m))
		require.NoError(t, err, s.name)
		for turns, r := range s.rows {
			w, err := f.At(turns, 0)
			require.NoError(t, err)
			for _, x := range multiples {
				rpm, l, want := x*r["cut_in_rpm"], s.old.load(r["volts"]), r.ampsAt(x)
				one := miss{s, turns, x, math.Abs(w.Into(rpm, l).DCAmps/want - 1), 0}
				if plusMinus {
					one.stated = w.Amps(rpm, l).PlusMinus / want
				}
				all = append(all, one)
			}
		}
	}
	return all
}

// families is the number of alternating families in a set.
var families = map[string]int{"machines": 7, "apart": 5}

// worst95 is the 95th percentile of the error of those selected, %.
func worst95(all []miss, asked func(miss) bool) float64 {
	var off []float64
	for _, m := range all {
		if asked(m) {
			off = append(off, m.off*100)
		}
	}
	slices.Sort(off)
	return off[len(off)*95/100]
}

// covered is the share within their ±, %.
func covered(all []miss, asked func(miss) bool) (percent, medianStated float64) {
	in, n := 0.0, 0.0
	var stated []float64
	for _, m := range all {
		if asked(m) {
			n++
			stated = append(stated, m.stated*100)
			if m.off <= m.stated {
				in++
			}
		}
	}
	slices.Sort(stated)
	return in / n * 100, stated[len(stated)/2]
}
