package charge

import "math"

// single solves one phase on four diodes: half a cycle, one mode.
//
//	x·i' + (r + rb)·i = sin θ - v
//
// A pulse begins where sin θ = v. If it has not ended 180° later, there are no pulses: the current
// reverses in the bridge the moment it reaches zero, at the angle that makes half a cycle end where it
// began, i = 0. With z and φ the magnitude and angle of the impedance, λ = (r + rb)/x,
//
//	sin(θ - φ) = -(v·z/(r + rb))·tanh(λπ/2)
//
// where for no resistance z·tanh(λπ/2)/(r + rb) is its limit π/2.
func (c *circuit) single() (piece, Mode, error) {
	rho := c.r + c.rb
	theta := math.Asin(c.v)
	cos := math.Sqrt((1 - c.v) * (1 + c.v))
	p := piece{kind: alone, main: newMode(rho, c.x, 0, 0, cos, c.v)}
	span, event := p.firstEvent(math.Pi)
	if event == -2 {
		return p, Off, errUnsettled
	}
	if event == 0 {
		p.span = span
		return p, Pulses, nil
	}
	lambda := rho / c.x
	z := math.Hypot(rho, c.x)
	limit := z * math.Pi / 2 / c.x
	if half := lambda * math.Pi / 2; half > 0 {
		limit *= math.Tanh(half) / half
	}
	theta = math.Atan2(c.x, rho) - math.Asin(min(c.v*limit, 1))
	sin, cos := math.Sincos(theta)
	p = piece{kind: alone, span: math.Pi, main: newMode(rho, c.x, 0, sin-c.v, cos, sin)}
	return p, Continuous, nil
}

// bridge1 solves one phase: the means over half a cycle, and the mode.
func (c *circuit) bridge1() (sums, Mode, error) {
	p, mode, err := c.single()
	if err != nil {
		return sums{}, Off, err
	}
	var sum sums
	p.integrate(mode == Pulses, &sum)
	return sum.over(math.Pi), mode, nil
}
