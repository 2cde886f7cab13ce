package winding

// zeroOf is where a function crosses zero in a bracket with values of two signs, to 1 part in 10⁵:
// false position that halves the value at an end that stays (Illinois).
func zeroOf(f func(float64) float64, a, b, fa, fb float64) float64 {
	side := 0
	for range 60 {
		m := (fa*b - fb*a) / (fa - fb)
		if !(m > a && m < b) {
			m = (a + b) / 2
		}
		fm := f(m)
		if fm == 0 {
			return m
		}
		moved := m - a
		if (fm > 0) == (fa > 0) {
			if a, fa = m, fm; side == 1 {
				fb /= 2
			}
			side = 1
		} else {
			moved = b - m
			if b, fb = m, fm; side == -1 {
				fa /= 2
			}
			side = -1
		}
		if b-a <= 1e-5*b || moved <= 1e-6*b {
			return m
		}
	}
	return (a + b) / 2
}

// bisect is where a condition begins to hold in a bracket, to 1 part in 10⁵.
func bisect(low, high float64, holds func(float64) bool) float64 {
	for high-low > 1e-5*high {
		mid := (low + high) / 2
		if holds(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return (low + high) / 2
}
