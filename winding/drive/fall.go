package drive

import (
	"math"
	"slices"
)

// # Once it turns
//
// In weak wind what iron and friction take may hold a shaft from rest far below the speed that it
// would keep if it had it: blades give little torque at a low tip-speed ratio. A wind is never steady.
// A gust takes the shaft past the balance in between, and when it is over the shaft slows down to the
// next one below the speed that it had, which is the fast one down to the wind in which that vanishes:
//
//	speed             ______-- from rest: the jump
//	  |      ...----''|
//	  |   .-'  falling|
//	  |  |            |
//	  |__v____________^
//	  +------------------- wind
//	     runs to      starts from
//
// So a shaft is first taken up from rest. From the weakest wind in which it then charges it is taken
// down again through the weaker ones, as far as it keeps another speed than from rest. Those winds are
// told as it runs on in them, and marked.
//
// Not valid for how often in a year it is started and stopped: the figures of these winds are those
// of a rotor that turns.

// Run takes the shaft up with an alternator and, from the wind in which it charges by itself, down again.
func (a *Ascent) Run(load Load) ([]WindPoint, error) {
	c, err := a.climber(load)
	if err != nil {
		return nil, err
	}
	points := c.climb()
	c.fall(points)
	return points, nil
}

// fall takes the shaft down from the weakest wind in which it charges from rest.
func (c *climber) fall(points []WindPoint) {
	first := slices.IndexFunc(points, func(p WindPoint) bool { return p.RPM > 0 && p.RPM >= c.load.CutInRPM })
	if first < 1 {
		return
	}
	rpm := points[first].RPM
	for i := first - 1; i >= 0 && len(points[i].Others) > 0; i-- {
		p := &points[i]
		list := c.balances(i)
		e, ok := Settle(list, rpm, c.torque[i](rpm)-c.load.Taken(rpm))
		if !ok || math.Abs(e.RPM-p.FromRest) <= alike*e.RPM {
			return
		}
		p.fill(c.shaft, e)
		c.others(p, list)
		p.Gust, p.Region = true, c.shaft.Rotor.region(p.RPM, c.load.CutInRPM, p.Lambda)
		rpm = e.RPM
	}
}
