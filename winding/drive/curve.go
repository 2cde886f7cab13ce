package drive

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"gonum.org/v1/gonum/interp"
)

// Point is the power a drive can give at a speed of its own shaft.
type Point struct{ RPM, Watts float64 }

// ErrPoints is wrapped by the errors about a power curve.
var ErrPoints = errors.New("drive power curve")

// Curve is a drive's power against its speed: monotone between the points (Fritsch and Butland, 1984,
// by gonum), so that it has no bump that nobody measured. Below the first point the torque is that of
// the first point; above the last the power falls linearly to zero at the free speed, if it is not zero
// there.
type Curve struct {
	// FreeRPM is its speed with the load off; where it is not above the last point, 1.2 times the
	// speed of that (common practice, no source).
	FreeRPM float64
	points  []Point
	fit     interp.FritschButland
}

// overrun is the ratio of free speed to the last point, where the free speed is not given.
const overrun = 1.2

// NewCurve makes a curve of two or more points, in any order: rpm 0 to 1e6, watts 0 to
// 1e9, no speed twice, and no watts at rest.
func NewCurve(points []Point) (*Curve, error) {
	if len(points) < 2 {
		return nil, fmt.Errorf("%w: read %d points, expected two or more", ErrPoints, len(points))
	}
	c := &Curve{points: slices.Clone(points)}
	slices.SortStableFunc(c.points, func(a, b Point) int { return cmp.Compare(a.RPM, b.RPM) })
	xs, ys := make([]float64, len(points)), make([]float64, len(points))
	for i, p := range c.points {
		if err := p.check(); err != nil {
			return nil, err
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

func (p Point) check() error {
	switch {
	case !(p.RPM >= 0 && p.RPM <= 1e6):
		return fmt.Errorf("%w: speed: read %g rpm, expected 0 to 1e6", ErrPoints, p.RPM)
	case !(p.Watts >= 0 && p.Watts <= 1e9):
		return fmt.Errorf("%w: power: read %g W, expected 0 to 1e9", ErrPoints, p.Watts)
	case p.RPM == 0 && p.Watts > 0:
		return fmt.Errorf("%w: read %g W at 0 rpm, expected 0 W: a shaft at rest gives no power", ErrPoints, p.Watts)
	}
	return nil
}

// Watts is the power the drive can give at a speed.
func (c *Curve) Watts(rpm float64) float64 {
	first, last := c.points[0], c.points[len(c.points)-1]
	switch {
	case !(rpm > 0):
		return 0
	case rpm < first.RPM:
		return first.Watts * rpm / first.RPM
	case rpm > last.RPM && last.Watts == 0:
		return 0
	case rpm > last.RPM:
		return max(0, last.Watts*(1-(rpm-last.RPM)/(c.Top()-last.RPM)))
	}
	return max(0, c.fit.Predict(rpm))
}

// Torque is the same in N·m, also at rest, where it is the slope of the power.
func (c *Curve) Torque(rpm float64) float64 {
	if first := c.points[0]; first.RPM > 0 && rpm < first.RPM {
		return first.Watts / radPerSecond(first.RPM)
	}
	if rpm > c.points[1].RPM*1e-6 {
		return c.Watts(rpm) / radPerSecond(rpm)
	}
	return c.fit.PredictDerivative(0) / radPerSecond(1)
}

// Top is the speed above which the drive gives nothing.
func (c *Curve) Top() float64 {
	last := c.points[len(c.points)-1]
	switch {
	case last.Watts == 0:
		return last.RPM
	case c.FreeRPM > last.RPM:
		return c.FreeRPM
	}
	return last.RPM * overrun
}

// Last is the last point.
func (c *Curve) Last() Point { return c.points[len(c.points)-1] }
