package drive

import "slices"

// Settle is the equilibrium that a shaft at a speed comes to: up while torque is over,
// down while it is short, to the next one it can stay at. ok is false when there is
// none that way: upwards it runs away, downwards it stops. The equilibria must go up, as
// Balance gives them.
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
