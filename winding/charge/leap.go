package charge

import "math"

// maxLooks is how often a leap looks for its event before it gives up.
const maxLooks = 6

// leap tries to go from t, where the event functions are as given and positive, to the next event or by
// limit, whichever is nearer. It returns how far, and the function then at zero or -1, and false if it
// cannot prove that no event lies between. It looks first where the parabolas predict it, or for the
// event that is due near an angle.
func (p *piece) leap(t, limit, near float64, due int, here []jet) (way float64, event int, ok bool) {
	way, event = limit, -1
	if near > 0 && near <= limit {
		way, event = near, due
	} else {
		for k := range here {
			if tau := here[k].expected(); tau < way {
				way, event = tau, k
			}
		}
	}
	if !(way > 0) {
		return 0, -1, false
	}
	for range maxLooks {
		jets, _ := p.jets(newArc(t + way))
		there := jets[:len(here)]
		at, turn := nearest(there, event)
		switch {
		case at == -1:
			return way, -1, nothingBetween(here, there, way, 0, -1)
		case math.IsNaN(turn) || way+turn <= 0:
			return 0, -1, false
		case way+turn >= limit && turn > 0:
			if way == limit {
				return way, -1, nothingBetween(here, there, way, 0, -1)
			}
			way, event = limit, -1
		case math.Abs(turn*turn*turn)*there[at].third <= -1e-16*(t+way)*there[at].first:
			return way + turn, at, nothingBetween(here, there, way+turn, turn, at)
		default:
			way, event = way+turn, at
		}
	}
	return 0, -1, false
}

// nearest is the function that is due first, seen from an angle: one that is past its zero, or the one
// looked for; and how far on (or back) its zero is expected, NaN if the parabola there has none. It is
// -1 if none was looked for and none is past.
func nearest(there []jet, event int) (at int, turn float64) {
	at = event
	if event >= 0 {
		turn = there[event].zero()
	}
	for k := range there {
		if there[k].value >= 0 || k == event {
			continue
		}
		if back := there[k].zero(); at < 0 || !(back >= turn) {
			at, turn = k, back
		}
	}
	return at, turn
}

// expected is where the parabola through value, slope and curvature first reaches zero from above; +Inf
// if it does not.
func (j *jet) expected() float64 {
	disc := j.first*j.first - 2*j.second*j.value
	switch {
	case disc < 0 || j.first >= 0 && j.second >= 0:
		return math.Inf(1)
	case j.first < 0:
		return 2 * j.value / (-j.first + math.Sqrt(disc))
	}
	return (j.first + math.Sqrt(disc)) / -j.second
}

// zero is the distance to the zero of a falling function, by its parabola: Halley's step in its
// irrational form.
func (j *jet) zero() float64 {
	if j.first >= 0 {
		return math.NaN()
	}
	return 2 * j.value / (-j.first + math.Sqrt(j.first*j.first-2*j.second*j.value))
}

// nothingBetween reports whether no function has a zero on the way, its end excepted: from here over
// the first half and from its end backwards over the second. The jets there are those at turn before
// the end, where the function event is at zero.
func nothingBetween(here, there []jet, way, turn float64, event int) bool {
	for k := range here {
		end, m := there[k], here[k].third
		end.value += end.first*turn + end.second*turn*turn/2
		end.first += end.second * turn
		if k == event {
			end.value = 0
		}
		c := m * way / 6
		if !above(here[k].value, here[k].first, here[k].second-c, way/2) ||
			!above(end.value, -end.first, end.second-m*math.Abs(turn)-c, way/2) {
			return false
		}
	}
	return true
}

// above reports whether value + slope·τ + curvature·τ²/2 is positive for all τ in (0, within].
func above(value, slope, curvature, within float64) bool {
	if value < 0 || value == 0 && slope < 0 || value == 0 && slope == 0 && curvature <= 0 {
		return false
	}
	if slope < 0 && curvature > 0 && -slope < curvature*within {
		return 2*value*curvature > slope*slope
	}
	return value+within*(slope+within*curvature/2) > 0
}
