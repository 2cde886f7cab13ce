package drive

import "fmt"

// Running is how a drive fares at a speed asked of it.
type Running struct {
	DriveRPM      float64 `json:"drive_rpm"`
	AlternatorRPM float64 `json:"alternator_rpm"`
	TorqueNm      float64 `json:"torque_nm"`     // taken at the alternator's shaft
	TakenWatts    float64 `json:"drive_w"`       // the resulting load on the drive's own shaft
	GivesWatts    float64 `json:"drive_gives_w"` // what the drive could give; 0 for one whose speed is fixed
	// Enough says that the drive can: TakenWatts is within GivesWatts.
	Enough bool `json:"enough"`
	// Settles is where the shaft settles when it cannot: the next stable equilibrium below, at full
	// power of the drive. Stops: there is none.
	Settles Equilibrium `json:"settles"`
	Stops   bool        `json:"stops"`
}

// Driven is a source behind a transmission, and its load: pedals, a water wheel, an engine, anything
// with a power of its own. The same balance as for the wind, with one curve.
type Driven struct {
	source     Source
	taken      Torque
	turns      float64
	passes     float64
	Equilibria []Equilibrium // at full power, against the alternator's speed
}

// drivenSteps is the number of samples of a load for a drive with one curve.
const drivenSteps = 96

// NewDriven balances a source at full power with the torque taken at the alternator's shaft. Samples of
// that may be given to save calls; they must reach the alternator's speed at the drive's top speed.
func NewDriven(s Source, t Transmission, taken Torque, samples Samples) (*Driven, error) {
	given, err := Geared(s, t)
	if err != nil {
		return nil, err
	}
	turns, _ := t.Turns()
	top := turns * s.Top()
	if samples, err = covered(samples, taken, top*1.01, drivenSteps); err != nil {
		return nil, err
	}
	return &Driven{s, taken, turns, t.Passes(), samples.Balance(given, taken)}, nil
}

// covered is samples that reach a speed: those given, or fresh ones.
func covered(s Samples, taken Torque, high float64, steps int, corners ...float64) (Samples, error) {
	if len(s.RPM) == 0 {
		return Sample(taken, high, steps, corners...), nil
	}
	if last := s.RPM[len(s.RPM)-1]; last < high*(1-1e-9) || len(s.Nm) != len(s.RPM) {
		return s, fmt.Errorf("torque samples: read %d speeds up to %g rpm and %d torques, expected as many of both, up to %g rpm", len(s.RPM), last, len(s.Nm), high)
	}
	return s, nil
}

// At is how it fares at a speed of the drive's shaft, above 0: slow, usual, top.
func (d *Driven) At(driveRPM float64) (Running, error) {
	if !(driveRPM > 0 && driveRPM <= 1e6) {
		return Running{}, fmt.Errorf("speed of the drive: read %g rpm, expected above 0 and at most 1e6", driveRPM)
	}
	r := runAt(driveRPM, d.turns, d.passes, d.taken)
	r.GivesWatts = max(0, d.source.Watts(driveRPM))
	r.Enough = r.TakenWatts <= r.GivesWatts*(1+1e-9)
	if !r.Enough {
		e, ok := Settle(d.Equilibria, r.AlternatorRPM, -1)
		r.Settles, r.Stops = e, !ok
	}
	return r, nil
}

// FullPower is where the shaft settles from rest when the drive gives all it can; ok is false when it
// does not turn, or is not held.
func (d *Driven) FullPower() (e Equilibrium, ok bool) {
	low := d.source.Top() * d.turns * 1e-6
	return Settle(d.Equilibria, low, geared(d.source.Torque(low/d.turns), d.turns, d.passes)-d.taken(low))
}

// runAt is what the load takes at a speed of the drive.
func runAt(driveRPM, turns, passes float64, taken Torque) Running {
	r := Running{DriveRPM: driveRPM, AlternatorRPM: driveRPM * turns}
	r.TorqueNm = taken(r.AlternatorRPM)
	r.TakenWatts = r.TorqueNm * radPerSecond(r.AlternatorRPM) / passes
	return r
}
