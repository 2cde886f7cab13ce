package winding

import (
	"testing"

	"slotwright/winding/drive"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// The wind named is the one in which most of a year's energy is lost, weighted by how often it blows:
// Rayleigh's π/2·v/v̄²·exp(−π/4·(v/v̄)²) is 0.143 for each m/s at a mean of 5 m/s and 0.0008 at 15 m/s,
// so 10 W lost at 5 m/s are 18 times as much in a year as 100 W at 15 m/s.
func TestWhereAYearIsLostGoesByHowOftenTheWindBlows(t *testing.T) {
	l := ladder{bed: &bed{drag: new(drag), drive: &driveSide{kind: "wind", year: drive.Rayleigh(5)}}}
	rung := func(at5, at15 DrivePoint) *Rung {
		r := new(Rung)
		for _, p := range []DrivePoint{at5, at15} {
			p.AmpsDC, p.Region = 1, drive.Charging
			r.Points = append(r.Points, p)
		}
		r.YearKWh = quantity.Of(0)
		return r
	}
	best := rung(DrivePoint{X: 5, RPM: 200, NetWatts: 60, DriveWatts: 90}, DrivePoint{X: 15, RPM: 600, NetWatts: 600, DriveWatts: 900})
	best.YearKWh = quantity.Of(300)
	n := rung(DrivePoint{X: 5, RPM: 150, NetWatts: 50, DriveWatts: 80}, DrivePoint{X: 15, RPM: 700, NetWatts: 500, DriveWatts: 800})
	why, wind := l.worseYear(n, best)
	assert.Equal(t, "holds the rotor below its best", why)
	assert.Equal(t, "(5 m/s)", wind)

	l.air = &thermal{meanC: 140}
	n.HottestC, n.YearKWh = quantity.Of(150), quantity.Of(200)
	why, _ = l.worseYear(n, best)
	assert.Equal(t, "holds the rotor below its best", why, "too hot as well, but it brings less anyway")
	n.YearKWh = quantity.Of(310)
	why, _ = l.worseYear(n, best)
	assert.Equal(t, "gets too hot", why)
}

// The reason given for a difference is its larger part: watts that the drive does not give, those that
// iron and drag take, or those lost in the winding.
func TestWorseIsTheGreaterPartOfWhatIsLost(t *testing.T) {
	l := ladder{bed: &bed{drive: new(driveSide)}}
	best := ranIn{rpm: 400, amps: 5, net: 60, drive: 100, iron: 10, open: 20, region: drive.Charging}
	for _, c := range []struct {
		a    ranIn
		says string
	}{
		{ranIn{rpm: 400, amps: 4, net: 50, drive: 100, iron: 10, open: 20}, "loses more in the winding"},
		{ranIn{rpm: 460, amps: 4, net: 50, drive: 98, iron: 16, open: 23}, "turns faster: iron and drag take more"},
		{ranIn{rpm: 460, amps: 4, net: 50, drive: 98, iron: 14, open: 23}, "loses more in the winding"},
		{ranIn{rpm: 460, amps: 4, net: 50, drive: 92, iron: 16, open: 23}, "lets the drive run past its best"},
		{ranIn{rpm: 350, amps: 4, net: 50, drive: 92, iron: 8, open: 23}, "holds the drive below its best"},
		{ranIn{rpm: 350, amps: 4, net: 50, drive: 92, iron: 8, open: 23, region: drive.Stalled}, "stalls the drive"},
		{ranIn{rpm: 400, amps: 4, net: 50, drive: 92, iron: 10, open: 18}, "has fewer volts to spare"},
		{ranIn{rpm: 400, amps: 4, net: 50, drive: 92, iron: 10, open: 22}, "takes less of the drive"},
		{ranIn{rpm: 350, net: -10, drive: 10, iron: 8, open: 11, region: drive.Stalled}, "stops the drive"},
		{ranIn{rpm: 400, amps: 5, net: 60, drive: 100, iron: 10, open: 20}, "brings as much"},
		{ranIn{rpm: 400, amps: 9, net: 50, drive: 100, iron: 10, open: 20, hot: true}, "burns"},
	} {
		assert.Equal(t, c.says, l.worse(c.a, best, new(TrialOutcome), new(TrialOutcome)), "%+v", c.a)
	}
}
