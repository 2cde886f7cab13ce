package drive

import "slices"

// Settle is the equilibrium that a shaft settles at from a speed: upwards while torque is in excess,
// downwards while it is short, to the next stable one. ok is false when there is none: upwards it runs
// away, downwards it stops. The equilibria must go up, as Balance gives them.
func Settle(equilibria []Equilibrium, rpm, over float64) (e Equilibrium, ok bool) {
	if over >= 0 {
		for _, e := range equilibria {
			if e.Stable && e.RPM >= rpm*(1-1e-9) {
				return e, true
			}
		}
		return Equilibrium{}, false
	}
	for _, e := range slices.Backward(equilibria) {
		if e.Stable && e.RPM <= rpm*(1+1e-9) {
			return e, true
		}
	}
	return Equilibrium{}, false
}
