package charge

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// anyPiece is a piece of a kind with any currents and EMFs, whether a circuit has it or not: dips
// between two humps, double events, fast decays.
func anyPiece(r *rand.Rand) piece {
	number := func() float64 { return 2*r.Float64() - 1 }
	start := number()
	p := piece{kind: pieceKind(1 + r.IntN(3)), sign: 1, restSin: number(), restCos: number(), v: 2 * r.Float64(), rb: r.Float64()}
	x, fast := spread(r, 0.01, 10), spread(r, 0.01, 10)
	p.main = newMode(fast*x, x, start, number(), 2*number(), 2*number())
	p.split = newMode(fast*x/(1+r.Float64()), x, start*number(), number(), 2*number(), 2*number())
	return p
}

// The first event is the first that a scan in small steps finds.
func TestNoEventIsSteppedOver(t *testing.T) {
	const scan = 2000
	r := rand.New(rand.NewPCG(8, 1))
	seen := 0
	for range 3000 {
		p, limit := anyPiece(r), math.Pi
		if start, n := p.jetsAtStart(); min(start[0].value, start[1].value*float64(min(n-1, 1)), start[2].value) < 0 {
			continue
		}
		seen++
		span, event := p.firstEvent(limit)
		last := scan
		if event >= 0 {
			last = int(span / limit * scan)
			at, _ := p.jets(newArc(span))
			assert.InDelta(t, 0, at[event].value, 1e-12*(1+at[event].third), "%+v", p)
		}
		for k := 1; k < last && !t.Failed(); k++ {
			at, n := p.jets(newArc(limit * float64(k) / scan))
			for i := range n {
				if at[i].value >= -1e-13 {
					continue
				}
				t.Errorf("function %d at %g, event %d at %g, %+v", i, limit*float64(k)/scan, event, span, p)
			}
		}
		if t.Failed() {
			return
		}
	}
	assert.Greater(t, seen, 800)
}
