package drive

import "math"

// # The most that a held rotor can give
//
// Blades that are held far below their best speed give little, however strong the wind. Where a load
// takes more torque at some speed than the rotor gives there in any wind of a climb, a shaft that comes
// from rest never passes that speed: between it and the speed at which the torque was still in excess lies
// a balance, and that is where it stays. So one solved point, and the blades' power curve, which has a
// single maximum, bound what such a load takes in every wind.
//
// A load told at a balance to which no wind leads (Load.Pushed) is bounded so only in winds that leave
// torque in excess at cut-in, for then its slowest balance lies below that speed too. In any other wind it
// may be told above, and the bound is the rotor's best.

// Holds reports whether a torque, N·m, taken at a speed of the alternator, rpm, is more than the rotor
// gives there in every wind of the climb.
func (a *Ascent) Holds(rpm, nm float64) bool {
	for _, given := range a.torque {
		if given(rpm) >= nm {
			return false
		}
	}
	return true
}

// MostWatts is for each wind the most that reaches the alternator's shaft, W, of a load that charges from
// one speed of it, rpm, where it takes so many N·m, and is held below another; pushed is as in [Load].
func (a *Ascent) MostWatts(cutIn, nm, held float64, pushed bool) []float64 {
	most := make([]float64, len(a.winds))
	rotor := a.shaft.Rotor
	for i, wind := range a.winds {
		to := held
		if pushed && a.torque[i](cutIn) <= nm {
			to = math.Inf(1)
		}
		at := a.shaft.Turns * rotor.RPM(wind, rotor.PeakLambda)
		at = max(cutIn, min(at, to))
		most[i] = a.shaft.Efficiency * max(0, rotor.Watts(wind, at/a.shaft.Turns, a.shaft.Density))
	}
	return most
}
