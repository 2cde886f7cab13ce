package drive

import (
	"fmt"
	"math"
	"slices"
)

// # Following a rotor up through rising wind
//
// In one wind there may be two stable speeds of rotor and alternator. Which one a shaft has depends on
// where it comes from, so the winds are taken in rising order and the shaft is followed:
//
//   - At rest, the rotor's torque at rest has to exceed what holds the shaft (the pull of
//     teeth and magnets, seals, brushes) and what the alternator takes. Until then it stands
//     still, whatever equilibria there are for one that already turns.
//   - Once it turns, it is at a stable equilibrium. A little more wind moves that a
//     little. The speed it had is then no longer balanced: with excess torque it speeds up
//     to the next stable one above, with a deficit it slows down to the next below.
//     That is all that inertia can do to a shaft with one degree of freedom, however
//     heavy the rotor is.
//   - A stable and an unstable one can merge and vanish, as when the alternator holds the
//     blades stalled until the wind is strong enough. Then the next stable one is far
//     away and the shaft jumps. With falling wind it would jump back later (hysteresis);
//     Climb is for rising wind, as when a calm ends. Run goes back down too (fall.go).
//
// Cost: the torque of the alternator is sampled once for all winds, closer together when slow, and with
// both sides of the corner at cut-in; that of the rotor in each wind once for all alternators. Each
// wind then costs some four to six calls an equilibrium. 96 samples and 28 winds with one each took 230
// calls.
//
// Accuracy: each speed is balanced to 1e-6. The wind of a jump is known to a step of the wind. Not
// valid where the wind changes faster than the shaft can follow (gusts: a rotor of some 2 m takes
// seconds), for blades that bend or pitch, or beyond the furling wind; the Cp curves are for steady
// wind square on.

// WindShaft is a wind rotor behind its transmission.
type WindShaft struct {
	Rotor      Rotor
	Turns      float64 // alternator turns for one of the rotor, above 0
	Efficiency float64 // of the transmission, above 0, at most 1
	Density    float64 // of the air, kg/m³, 0.1 to 2
	StartNm    float64 // holds the alternator's shaft at rest, 0 or more
}

// Check tests the numbers.
func (s WindShaft) Check() error {
	if err := s.Rotor.Check(); err != nil {
		return err
	}
	switch {
	case !(s.Turns >= 1/maxTurns && s.Turns <= maxTurns):
		return fmt.Errorf("%w: ratio: read %g, expected %g to %g turns for one", ErrTransmission, s.Turns, 1/maxTurns, maxTurns)
	case !(s.Efficiency > 0 && s.Efficiency <= 1):
		return fmt.Errorf("%w: efficiency: read %g, expected above 0 and at most 1", ErrTransmission, s.Efficiency)
	case !(s.Density >= 0.1 && s.Density <= 2):
		return fmt.Errorf("%w: density: read %g kg/m³, expected 0.1 to 2", ErrAir, s.Density)
	case !(s.StartNm >= 0) || math.IsInf(s.StartNm, 0):
		return fmt.Errorf("%w: starting torque: read %g N·m, expected 0 or more", ErrRotor, s.StartNm)
	}
	return nil
}

// Torque is what the rotor gives in a wind, on the alternator's shaft, against the alternator's speed.
func (s WindShaft) Torque(wind float64) Torque {
	rotor, turns, passes := s.Rotor.in(wind, s.Density), s.Turns, s.Efficiency
	return func(rpm float64) float64 { return geared(rotor.torque(rpm/turns), turns, passes) }
}

// FreeRPM is the alternator's speed in a wind with no load.
func (s WindShaft) FreeRPM(wind float64) float64 {
	return s.Turns * s.Rotor.RPM(wind, s.Rotor.Runaway())
}

// Load is an alternator as the rotor sees it.
type Load struct {
	// Taken is the torque at its shaft against its own speed, 0 or more: iron, friction and charging.
	Taken Torque
	// CutInRPM is the speed from which it charges.
	CutInRPM float64
	// Samples of Taken, to save calls when they exist already; they must reach FreeRPM of the strongest
	// wind. They may be empty.
	Samples Samples
	// Pushed has Run tell it as it turns also where no wind takes it there from rest: what holds it is a
	// guess.
	Pushed bool
}

// WindPoint is how the shaft turns in one wind.
type WindPoint struct {
	WindMPS    float64 `json:"wind_m_s"`
	RPM        float64 `json:"rpm"` // of the alternator
	RotorRPM   float64 `json:"rotor_rpm"`
	Lambda     float64 `json:"tip_speed_ratio"`
	Cp         float64 `json:"cp"`
	RotorWatts float64 `json:"rotor_w"` // taken from the wind
	TorqueNm   float64 `json:"torque_nm"`
	ShaftWatts float64 `json:"shaft_w"` // at the alternator's shaft
	Region     Region  `json:"region"`
	// Jumped is set when the speed it held in the weaker wind has vanished, and it has passed an
	// unstable one.
	Jumped bool `json:"jumped,omitempty"`
	// Gust is set by Run where the shaft keeps this speed when the wind falls, and does not come to
	// it from rest: there it comes to FromRest, rpm of the alternator, 0 of a shaft that stands.
	// Pushed is set besides where no gust takes it there either.
	Gust     bool    `json:"gust,omitempty"`
	Pushed   bool    `json:"pushed,omitempty"`
	FromRest float64 `json:"from_rest_rpm"`
	// Others are the other equilibria in this wind.
	Others []Equilibrium `json:"other_equilibria,omitempty"`
}

// Steps of Climb.
const (
	climbSteps = 96
	mostWinds  = 10_000
	mostWind   = 100.0
)

// Winds is every step of the wind up to the cut-out wind, m/s, plus the extra ones asked for, going up.
func Winds(cutOut, step float64, also ...float64) ([]float64, error) {
	switch {
	case !(cutOut > 0 && cutOut <= mostWind):
		return nil, fmt.Errorf("%w: strongest wind: read %g m/s, expected above 0 and at most %g", ErrWind, cutOut, mostWind)
	case !(step > 0 && cutOut/step <= mostWinds):
		return nil, fmt.Errorf("%w: step: read %g m/s, expected above 0, and at most %d of them", ErrWind, step, mostWinds)
	}
	list := []float64{cutOut}
	for n := 1; float64(n)*step < cutOut*(1-1e-9); n++ {
		list = append(list, float64(n)*step)
	}
	for _, wind := range also {
		if wind > 0 && wind < cutOut {
			list = append(list, wind)
		}
	}
	slices.Sort(list)
	return slices.CompactFunc(list, func(a, b float64) bool { return math.Abs(b-a) < 1e-9*b }), nil
}

// Ascent is a shaft and the winds of its climb, with what the rotor gives in each at the speeds at
// which alternators are sampled. That is the same for every alternator, and most of the cost of a
// climb: it is worked out once for all climbs through the same winds.
type Ascent struct {
	shaft  WindShaft
	winds  []float64
	torque []Torque    // by wind
	at     []float64   // rpm
	given  [][]float64 // N·m by wind and speed
	free   float64     // rpm with no load, for each m/s of wind
}

// NewAscent is for winds, m/s, which must go up from above 0, and alternators sampled in so many steps
// ([Sample]).
func NewAscent(s WindShaft, winds []float64, steps int) (*Ascent, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	if len(winds) == 0 || !(winds[0] > 0) || !(winds[len(winds)-1] <= mostWind) || !slices.IsSorted(winds) {
		return nil, fmt.Errorf("%w: read %d winds, expected some, going up from above 0 to at most %g m/s", ErrWind, len(winds), mostWind)
	}
	a := &Ascent{shaft: s, winds: winds, torque: make([]Torque, len(winds)), given: make([][]float64, len(winds)), free: s.FreeRPM(1)}
	a.at = speedsTo(1.02*a.free*winds[len(winds)-1], steps)
	for i, wind := range winds {
		a.torque[i], a.given[i] = s.Torque(wind), make([]float64, len(a.at))
		for k, rpm := range a.at {
			a.given[i][k] = a.torque[i](rpm)
		}
	}
	return a, nil
}

// Winds is its winds, m/s.
func (a *Ascent) Winds() []float64 { return a.winds }

// Climb takes the shaft up through winds, m/s, which must go up from above 0.
func Climb(s WindShaft, load Load, winds []float64) ([]WindPoint, error) {
	a, err := NewAscent(s, winds, climbSteps)
	if err != nil {
		return nil, err
	}
	return a.Climb(load)
}

// Climb takes the shaft up with an alternator.
func (a *Ascent) Climb(load Load) ([]WindPoint, error) {
	c, err := a.climber(load)
	if err != nil {
		return nil, err
	}
	return c.climb(), nil
}

// climber makes a shaft with an alternator ready at the foot.
func (a *Ascent) climber(load Load) (*climber, error) {
	if load.Taken == nil || !(load.CutInRPM >= 0) {
		return nil, fmt.Errorf("%w: read a cut-in at %g rpm, expected a torque and 0 rpm or more", ErrRotor, load.CutInRPM)
	}
	samples, err := covered(load.Samples, load.Taken, a.at[len(a.at)-1], len(a.at)-1, load.CutInRPM)
	if err != nil {
		return nil, err
	}
	c := &climber{Ascent: a, load: load, samples: samples, over: make([]float64, len(samples.RPM))}
	c.finder = finder{taken: load.Taken, high: samples.RPM[len(samples.RPM)-1]}
	return c, nil
}

// climb is every wind, going up.
func (c *climber) climb() []WindPoint {
	points := make([]WindPoint, len(c.winds))
	for i := range points {
		points[i] = c.to(i)
	}
	return points
}

// climber is a shaft on its way up.
type climber struct {
	*Ascent
	load    Load
	samples Samples
	over    []float64     // N·m by sample: given less taken, in the present wind
	finder  finder        // for the balances in the present wind
	rpm     float64       // its speed in the weaker wind
	before  []Equilibrium // all balances in the weaker wind
}

// balances are those in a wind. The samples beside the corner at cut-in are each alternator's own. Above
// the rotor's free speed it takes torque, and so does any alternator: two samples more are enough.
func (c *climber) balances(wind int) []Equilibrium {
	n, _ := slices.BinarySearch(c.samples.RPM, c.free*c.winds[wind])
	n = min(n+2, len(c.samples.RPM))
	c.finder.given, c.finder.xs, c.finder.ys = c.torque[wind], c.samples.RPM[:n], c.over[:n]
	k := 0
	for i, rpm := range c.finder.xs {
		for k < len(c.at)-1 && c.at[k] < rpm {
			k++
		}
		nm := c.given[wind][k]
		if c.at[k] != rpm {
			nm = c.torque[wind](rpm)
		}
		c.finder.ys[i] = nm - c.samples.Nm[i]
	}
	return c.finder.roots()
}

// to takes the shaft to a wind, counted from 0.
func (c *climber) to(i int) WindPoint {
	wind, given := c.winds[i], c.torque[i]
	list := c.balances(i)
	low := c.samples.RPM[0]
	from := max(c.rpm, low)
	over := given(from) - c.load.Taken(from)
	if c.rpm == 0 && given(0) <= c.shaft.StartNm+c.load.Taken(low) {
		over = -1 // held
	}
	p := WindPoint{WindMPS: wind, Region: Still}
	e, ok := Settle(list, from, over)
	switch {
	case ok:
		p.fill(c.shaft, e)
		p.Jumped = c.rpm > 0 && passed(c.before, c.rpm, e.RPM)
	case over > 0: // nothing holds it, as with a load that drives
		p.fill(c.shaft, Equilibrium{RPM: c.shaft.FreeRPM(wind)})
	}
	c.others(&p, list)
	p.Region, p.FromRest = c.shaft.Rotor.region(p.RPM, c.load.CutInRPM, p.Lambda), p.RPM
	c.rpm, c.before = p.RPM, append(c.before[:0], list...)
	return p
}

// others fills in all balances of a point's wind but its own; the finder is at that wind.
func (c *climber) others(p *WindPoint, list []Equilibrium) {
	p.Others = p.Others[:0]
	for _, e := range list {
		if e.RPM != p.RPM {
			e.Slope = c.finder.steep(e.RPM)
			p.Others = append(p.Others, e)
		}
	}
}

// passed reports whether an unstable equilibrium lies between two speeds.
func passed(list []Equilibrium, a, b float64) bool {
	for _, e := range list {
		if !e.Stable && e.RPM > min(a, b) && e.RPM < max(a, b) {
			return true
		}
	}
	return false
}

// fill fills in a point from an equilibrium.
func (p *WindPoint) fill(s WindShaft, e Equilibrium) {
	p.RPM, p.RotorRPM = e.RPM, e.RPM/s.Turns
	p.Lambda = s.Rotor.Lambda(p.WindMPS, p.RotorRPM)
	p.Cp = s.Rotor.Cp(p.Lambda)
	p.RotorWatts = s.Rotor.Watts(p.WindMPS, p.RotorRPM, s.Density)
	p.TorqueNm = e.Torque
	p.ShaftWatts = e.Torque * radPerSecond(e.RPM)
}
