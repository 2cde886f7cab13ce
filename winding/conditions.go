package winding

import (
	"fmt"
	"strings"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/ratio"
)

// Condition is one state of the drive that a job asks about.
type Condition struct {
	// Name is [SlowCondition], [UsualCondition] or [TopCondition].
	Name string `json:"name"`
	// X is the speed of the drive's own shaft in rpm, or the wind in m/s; the alternator's speed where
	// no drive is described.
	X quantity.Figure `json:"x"`
	// RPM is the alternator's speed, where the drive does not give way; otherwise each trial has a
	// speed of its own.
	RPM quantity.Figure `json:"alternator_rpm"`
	// Label is short: "wheel 60 rpm", or "full water" where it finds its own speed.
	Label string `json:"label"`
	// Same is usual when this condition, slow or top, is the same: a drive that gives way gives all it
	// can in both, or both are one speed. It is then shown once, as the usual one.
	Same string `json:"same_as,omitempty"`
	// asked is the alternator speed that something holds, as far as the power goes; 0 where drive and
	// alternator settle at a speed of their own.
	asked float64
	// free is set where each winding settles at a speed of its own, with all that the drive gives.
	free bool
}

// The conditions by their index in every list.
const (
	slow = iota
	usual
	top
	conditionCount
)

// The names of the conditions, as the outcome and JSON have them.
const (
	SlowCondition  = "slow"
	UsualCondition = "usual"
	TopCondition   = "top"
)

var conditionNames = [conditionCount]string{SlowCondition, UsualCondition, TopCondition}

// Condition is one of the conditions by name; nil where there is none.
func (m *MachineOutcome) Condition(name string) *Condition {
	for i := range m.Conditions {
		if m.Conditions[i].Name == name {
			return &m.Conditions[i]
		}
	}
	return nil
}

// driveSide is what turns the machine, prepared for any trial.
type driveSide struct {
	kind       string
	ratio      quantity.Figure
	through    drive.Transmission // its ratio is that of ratio, slip included
	conditions [conditionCount]Condition
	// shaft, year and gale are the wind rotor's; source is that of any other drive with a power of its
	// own. why says what is missing for the one asked for.
	shaft drive.WindShaft
	year  drive.Weibull
	furl  float64 // m/s
	gale  float64
	// rising is the winds of a trial's year and coarse those of an offer's; each is worked out when
	// first asked for.
	rising, coarse func() (*climb, error)
	// inOneMetre is the wind rotor in a wind of 1 m/s, from a tip-speed ratio of 1 up to its best.
	inOneMetre func() *[marginSteps + 1]turning
	source     drive.Source
	best       drive.Point // where legs or water give the most power
	why        string
	// fastest is the highest alternator speed to which a drive that gives way may take it; 0 for any
	// other.
	fastest float64
}

// newDriveSide prepares the job's drive.
func newDriveSide(d *job.DriveSpec, at *speeds) driveSide {
	s := driveSide{kind: d.Kind, ratio: at.ratio, through: ratio.Transmission(d)}
	if s.ratio.Known() {
		s.through.Ratio, s.through.Stages, s.through.Slip = s.ratio.Value, 0, 0
	}
	s.conditions = nominalConditions(d, at)
	s.alike()
	switch {
	case d.Kind == "":
	case !s.ratio.Known():
		s.why = s.ratio.Why
	case d.Kind == job.DriveWind:
		s.ofWind(d)
	case d.Kind != job.DriveFixed:
		s.source, s.why = sourceOf(d)
		s.letGo()
		if yields(s.kind) && s.source != nil {
			s.best = drive.Best(s.source)
		}
	}
	switch {
	case !s.hasPower():
	case s.kind == job.DriveWind:
		s.fastest = 1.02 * s.shaft.FreeRPM(s.furl)
	default:
		s.fastest = 1.01 * s.ratio.Value * s.source.Top()
	}
	return s
}

// letGo marks the usual and top speeds of a drive that gives way as not held: legs or water go as fast
// as the winding lets them.
func (s *driveSide) letGo() {
	if s.source == nil || !yields(s.kind) {
		return
	}
	for i := range s.conditions {
		if c := &s.conditions[i]; c.asked == 0 && c.X.Known() {
			c.free, c.Label = true, allGiven[s.kind]
		}
	}
}

// alike marks the conditions that are the same as the usual one.
func (s *driveSide) alike() {
	u := &s.conditions[usual]
	for _, i := range []int{slow, top} {
		if c := &s.conditions[i]; c.X.Known() && u.X.Known() && c.X.Value == u.X.Value && c.asked == u.asked {
			c.Same = u.Name
		}
	}
}

// SameAs says that it is the same as another; "" where it is not.
func (c *Condition) SameAs() string {
	switch {
	case c.Same == "":
		return ""
	case c.free:
		return fmt.Sprintf("At its %s speed (%s) it comes to the same as at its %s one: the drive gives all it can.", c.Name, c.Label, c.Same)
	}
	return fmt.Sprintf("Its %s speed is its %s one, %s.", c.Name, c.Same, c.Label)
}

// Again reports whether the condition of a figure, if it has one, is shown as another.
func (o *Output) Again(m *MachineOutcome) bool {
	return o.At > 0 && o.At <= len(m.Conditions) && m.Conditions[o.At-1].Same != ""
}

// allGiven is the usual condition of a drive that gives way, in words.
var allGiven = map[string]string{job.DrivePedals: "full effort", job.DriveWater: "full water"}

// nominalConditions is the three conditions with the speeds they are asked for at.
func nominalConditions(d *job.DriveSpec, at *speeds) [conditionCount]Condition {
	var list [conditionCount]Condition
	winds := windsOf(d)
	for i, rpm := range []quantity.Figure{at.slow, at.usual, at.top} {
		c := Condition{Name: conditionNames[i], X: rpm, RPM: rpm}
		switch {
		case d.Kind == job.DriveWind:
			c.X, c.Label = winds[i], fmt.Sprintf("wind %.3g m/s", winds[i].Value)
		case d.Kind != "" && at.ratio.Known() && rpm.Known():
			c.X = rpm.Times(1 / at.ratio.Value)
			c.Label = fmt.Sprintf("%s %s rpm", whose(d.Kind), asTyped(c.X.Value))
		case rpm.Known():
			c.Label = fmt.Sprintf("%s%s rpm", onlyShaft, asTyped(rpm.Value))
		default:
			c.Label = c.Name + " speed"
		}
		if rpm.Known() && (i == slow || !yields(d.Kind)) && d.Kind != job.DriveWind {
			c.asked = rpm.Value
		}
		if i == top && yields(d.Kind) {
			c.Same = conditionNames[usual]
		}
		list[i] = c
	}
	return list
}

// yields reports whether a kind of drive settles at a speed of its own: legs and water push as hard as
// they can and go as fast as that takes them. An engine's throttle or governor holds the speed, as far
// as its power goes.
func yields(kind string) bool { return kind == job.DrivePedals || kind == job.DriveWater }

// onlyShaft begins a condition's name where no drive is described: there is no other shaft.
const onlyShaft = "alternator "

// Head is the label where room is short: without the alternator where there is no other shaft.
func (c *Condition) Head() string { return strings.TrimPrefix(c.Label, onlyShaft) }

// whose is what turns, in a word.
func whose(kind string) string {
	if kind == job.DriveWater {
		return "wheel"
	}
	if kind == job.DriveFixed {
		return "drive"
	}
	return kind
}

// label is the label of the condition in which a trial runs.
func (s *driveSide) label(p *Operating) string { return s.conditions[indexOf(p.Condition)].Label }

// hasPower reports whether the drive gives way, so that what it gives and what is taken have to
// balance.
func (s *driveSide) hasPower() bool {
	return s.why == "" && (s.kind == job.DriveWind || s.source != nil)
}

// given is the torque that the drive gives at the alternator's shaft over the alternator's speed, at a
// wind speed for a wind rotor; nil for a drive that does not give way.
func (s *driveSide) given(wind float64) drive.Torque {
	switch {
	case !s.hasPower():
		return nil
	case s.kind == job.DriveWind:
		return s.shaft.Torque(wind)
	}
	t, err := drive.Geared(s.source, s.through)
	if err != nil {
		return nil
	}
	return t
}

// ofWind prepares the rotor.
func (s *driveSide) ofWind(d *job.DriveSpec) {
	rotor, why := windRotor(d)
	if s.why = why; why != "" {
		return
	}
	s.shaft = drive.WindShaft{Rotor: rotor, Turns: s.ratio.Value, Efficiency: s.through.Passes(),
		Density: drive.AirDensity(d.AltitudeM.Or(0), d.AirC.Or(defaultAirC)), StartNm: d.StartTorque.Or(0)}
	s.furl, s.gale = d.CutOutMS.Or(defaultFurl), d.GaleMS.Or(defaultGale)
	s.year = drive.Weibull{Mean: d.MeanWindMS.Or(defaultMeanWind), K: d.WeibullK.Or(2)}
	if err := s.shaft.Check(); err != nil {
		s.why = err.Error()
	} else if err := s.year.Check(); err != nil {
		s.why = err.Error()
	}
	s.rising, s.coarse = s.ascent(windStep), s.ascent(coarseStep)
	s.inOneMetre = s.turning()
}

// windsOf is the light, the mean and the furling wind.
func windsOf(d *job.DriveSpec) [conditionCount]quantity.Figure {
	mean, furl := d.MeanWindMS.OrReading(defaultMeanWind).Figure(""), d.CutOutMS.OrReading(defaultFurl).Figure("")
	light := quantity.Of(min(lightWind, mean.Value, furl.Value), quantity.Guessed)
	if mean.Value > furl.Value {
		mean = furl
	}
	return [conditionCount]quantity.Figure{light, mean, furl}
}
