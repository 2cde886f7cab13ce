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
// told as it runs on in them, and marked. There may be winds besides in which it would stay charging though
// neither rest nor the jump leads there, as where drag holds it in every wind up to the strongest. Those
// are told so where the drag is only a guess, for then nobody knows that nothing starts it.
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
	if load.Pushed {
		c.push(points)
	}
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
		c.tell(p, e, list)
		rpm = e.RPM
	}
}

// push tells it at the slowest speed at which it stays charging, in winds in which it does not charge.
func (c *climber) push(points []WindPoint) {
	for i := range points {
		p := &points[i]
		charging := func(e Equilibrium) bool { return e.Stable && e.RPM >= c.load.CutInRPM }
		if p.RPM >= c.load.CutInRPM || !slices.ContainsFunc(p.Others, charging) {
			continue
		}
		list := c.balances(i)
		if k := slices.IndexFunc(list, charging); k >= 0 {
			c.tell(p, list[k], list)
			p.Pushed = true
		}
	}
}

// tell puts a point at another of the balances in its wind, of which the finder has just found all.
func (c *climber) tell(p *WindPoint, e Equilibrium, list []Equilibrium) {
	p.fill(c.shaft, e)
	c.others(p, list)
	p.Gust, p.Region = true, c.shaft.Rotor.region(p.RPM, c.load.CutInRPM, p.Lambda)
}
