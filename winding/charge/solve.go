package charge

import (
	"errors"
	"fmt"
	"math"
)

// Solve gives the steady state of the source on the load through its rectifier. It is exact for the
// circuit: see bridge3.go, halfwave.go and pair.go for the methods and their limits. The error names a
// field that is negative, not finite or out of range, or says that nothing limits the current, or is an
// [UnfitError].
func Solve(s Source, l Load) (Point, error) {
	var cold Solver
	return cold.Solve(s, l)
}

// Solver is Solve for a series of points that lie close together, as in a search: it starts each from
// the state of the one before. The answers are those of Solve within rounding, whatever came before;
// points far apart cost no more than a few rounds extra. The zero value is ready. It is not for several
// goroutines at once; copies are independent.
type Solver struct{ last neighbour }

// Between is a starting state for a point at a fraction of the way from one solved point to another;
// beyond the second where part is above 1.
func Between(a, b *Solver, part float64) Solver {
	if a.last.pair && b.last.pair {
		return betweenPairs(a, b, part)
	}
	if !a.last.mixed || !b.last.mixed {
		return *b
	}
	from, to := a.last.handover, b.last.handover
	at := handover{from.amps + part*(to.amps-from.amps), from.trio + part*(to.trio-from.trio)}
	if !(at.amps > 0 && at.trio > 0 && at.trio < sixth) {
		return *b
	}
	return Solver{neighbour{mixed: true, handover: at}}
}

// neighbour is the state of a solved circuit, as far as another can start from it.
type neighbour struct {
	mixed bool
	handover
	// For two phases: the currents at the start of the march, in the circuit's unit.
	pair bool
	two  [2]float64
}

// Solve is the function [Solve], started from the previous point.
func (near *Solver) Solve(s Source, l Load) (Point, error) {
	if !sound(&s, &l) {
		if err := errors.Join(checkSource(s), checkLoad(l), l.Rectifier.Takes(s.Phases)); err != nil {
			return Point{}, fmt.Errorf("charge: %w", err)
		}
	}
	kappa, flows := drive(s, l)
	if !flows {
		return Point{DCVolts: l.Volts, Mode: Off, Kappa: kappa}, nil
	}
	c, err := reduce(s, l)
	if err != nil {
		return Point{}, fmt.Errorf("charge: %w", err)
	}
	p, err := c.solve(s, l, &near.last)
	if err != nil {
		return Point{}, fmt.Errorf("charge: %w", err)
	}
	p.Kappa = kappa
	if !p.finite() {
		return Point{}, errors.New("charge: the figures are so large or so small that the answer cannot be held; check their units")
	}
	return p, nil
}

// drive is the peak EMF between lines over the voltage of the load and its diodes, and whether that
// lets any current flow.
func drive(s Source, l Load) (kappa float64, flows bool) {
	line, held := s.EMFPeak*l.peakPerPhase(s.Phases, s.Delta), l.held()
	if held > 0 {
		kappa = min(line/held, math.MaxFloat64)
	}
	return kappa, line > held && s.EMFPeak > 0
}

// solve gives the point of a circuit that conducts.
func (c *circuit) solve(s Source, l Load, near *neighbour) (Point, error) {
	var sum sums
	var mode Mode
	var err error
	switch {
	case s.Phases == 2 && l.Rectifier == Doubler:
		sum, mode, err = c.doublers()
	case s.Phases == 2:
		sum, mode, err = c.pair(l.Rectifier == HalfWave, near)
	case l.Rectifier == HalfWave:
		sum, mode, err = c.halfWave()
	case l.Rectifier == Doubler:
		sum, mode, err = c.doubler()
	case s.Phases == 1:
		sum, mode, err = c.bridge1()
	default:
		sum, mode, err = c.bridge3(near)
	}
	if err != nil {
		return Point{}, err
	}
	p := sum.point(c, s, l)
	p.Mode = mode
	return p, nil
}

// finite reports whether every figure of the point is finite.
func (p Point) finite() bool {
	sum := p.DCAmps + p.DCAmpsRMS + p.PhaseAmpsRMS + p.LineAmpsRMS + p.DCVolts + p.Watts + p.BatteryWatts +
		p.CopperWatts + p.DiodeWatts + p.InputWatts
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}
