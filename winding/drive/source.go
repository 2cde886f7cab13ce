package drive

import (
	"errors"
	"fmt"
	"slices"

	"gonum.org/v1/gonum/interp"
)

// Point is what a drive can give at a speed of its own shaft.
type Point struct{ RPM, Watts float64 }

// ErrPoints is wrapped by the errors about a power curve.
var ErrPoints = errors.New("drive power curve")

// Curve is a drive's power against its speed: monotone between the points (Fritsch and
// Butland, 1984, by gonum), so that it makes no bump that nobody measured. Below the
// first point the torque is that of the first point; above the last it falls in a
// straight line to nothing at 1.2 times the last speed, if it is not nothing there.
type Curve struct {
	points []Point
	fit    interp.FritschButland
}

// overrun is how far above its last point a drive still gives something.
const overrun = 1.2

// NewCurve makes a curve of two or more points, in any order.
func NewCurve(points []Point) (*Curve, error) {
	if len(points) < 2 {
		return nil, fmt.Errorf("%w: read %d points, expected two or more", ErrPoints, len(points))
	}
	c := &Curve{points: slices.Clone(points)}
	slices.SortFunc(c.points, func(a, b Point) int {
		switch {
		case a.RPM < b.RPM:
			return -1
		case a.RPM > b.RPM:
			return 1
		}
		return 0
	})
	xs, ys := make([]float64, len(points)), make([]float64, len(points))
	for i, p := range c.points {
		if !(p.RPM >= 0 && p.RPM <= 1e6) || !(p.Watts >= 0 && p.Watts <= 1e9) {
			return nil, fmt.Errorf("%w: read %g W at %g rpm, expected both 0 or more", ErrPoints, p.Watts, p.RPM)
		}
		if i > 0 && p.RPM == c.points[i-1].RPM {
			return nil, fmt.Errorf("%w: read two points at %g rpm, expected one", ErrPoints, p.RPM)
		}
		xs[i], ys[i] = p.RPM, p.Watts
	}
	if err := c.fit.Fit(xs, ys); err != nil {
		return nil, fmt.Errorf("%w: %v", ErrPoints, err)
	}
	return c, nil
}

// Watts is what the drive can give at a speed.
func (c *Curve) Watts(rpm float64) float64 {
	first, last := c.points[0], c.points[len(c.points)-1]
	switch {
	case rpm <= 0:
		return 0
	case rpm < first.RPM:
		return first.Watts * rpm / first.RPM
	case rpm > last.RPM:
		return max(0, last.Watts*(1-(rpm-last.RPM)/(last.RPM*(overrun-1))))
	}
	return c.fit.Predict(rpm)
}

// Top is the speed above which the drive gives nothing.
func (c *Curve) Top() float64 {
	last := c.points[len(c.points)-1]
	if last.Watts == 0 {
		return last.RPM
	}
	return last.RPM * overrun
}
