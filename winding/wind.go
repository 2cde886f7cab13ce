package winding

import (
	"cmp"
	"fmt"
	"math"
	"sync"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// Defaults of a wind rotor that is not described.
var (
	defaultPeakCp     = job.DefaultOf("drive.peak_cp")
	defaultPeakLambda = job.DefaultOf("drive.peak_tsr")
	defaultMeanWind   = job.DefaultOf("drive.mean_wind")
	defaultFurl       = job.DefaultOf("drive.furl")
	defaultGale       = job.DefaultOf("drive.gale")
	defaultAirC       = job.DefaultOf("drive.air")
)

// lightWind, m/s, is the wind of the slow condition, from which a small machine is expected to
// charge; common practice, no source.
const lightWind = 3.5

// windRotor is the job's rotor; why says what is wrong or missing.
func windRotor(d *job.DriveSpec) (rotor drive.Rotor, why string) {
	if !d.RotorM.Given() {
		return rotor, "needs the diameter of the wind rotor"
	}
	shape, _ := drive.ParseShape(cmp.Or(d.Curve, drive.Heier.String()))
	rotor = drive.Rotor{DiameterM: d.RotorM.Value, Shape: shape, PeakCp: d.PeakCp.Or(defaultPeakCp), PeakLambda: d.PeakLambda.Or(defaultPeakLambda)}
	if err := rotor.Check(); err != nil {
		return rotor, err.Error()
	}
	return rotor, ""
}

// ofWind gives the alternator speeds at the rotor's best tip-speed ratio: in a light wind, in the
// mean wind and in the furling wind.
func (s speeds) ofWind(d *job.DriveSpec) speeds {
	rotor, why := windRotor(d)
	if why != "" {
		return s
	}
	at := func(own quantity.Figure, wind float64) quantity.Figure {
		switch {
		case own.Known():
			return own
		case !s.ratio.Known():
			return s.ratio
		}
		return s.ratio.Times(rotor.RPM(wind, rotor.PeakLambda)).Because(fmt.Sprintf("the rotor at its best in %.1f m/s", wind))
	}
	s.slow, s.usual, s.top = at(s.slow, lightWind), at(s.usual, d.MeanWindMS.Or(defaultMeanWind)), at(s.top, d.CutOutMS.Or(defaultFurl))
	return s
}

// The spacing of winds, m/s, of a trial's year and of an offer's.
const (
	windStep   = 0.5
	coarseStep = 1.0
)

// climb takes a rotor up through the winds of a year; perWatt is what a watt in each of them adds to it, kWh.
type climb struct {
	*drive.Ascent
	perWatt []float64
}

// ascent climbs through rising wind in steps of that size; the light and the mean wind are among
// them.
func (s *driveSide) ascent(step float64) func() (*climb, error) {
	shaft, year, furl, light, mean := s.shaft, s.year, s.furl, s.conditions[slow].X.Value, s.conditions[usual].X.Value
	return sync.OnceValues(func() (*climb, error) {
		winds, err := drive.Winds(furl, step, light, mean)
		if err != nil {
			return nil, err
		}
		up, err := drive.NewAscent(shaft, winds, driveSamples)
		if err != nil {
			return nil, err
		}
		return &climb{up, year.LineKWh(winds)}, nil
	})
}

// yearOf is the energy of a year, kWh, from its points, one for each wind; net watts are linear between them.
func (u *climb) yearOf(points []DrivePoint) float64 {
	sum := 0.0
	for i, part := range u.perWatt {
		sum += part * points[i].kept()
	}
	return sum
}

// # As it turns
//
// Wind is never steady. Where iron and drag hold the rotor from rest, so that nothing comes in, a gust may
// take it to a speed that it then keeps. That speed is the one shown (drive.Ascent.Run): in the usual
// condition, in every wind of the year, on a ladder and in offers, net of the rotor's current as everywhere.
// Whether the rotor starts by itself depends on its drag at rest, which is seldom measured and guessed
// within a factor of two at best; that it goes on turning depends on it much less. So findings say from
// which wind it starts without a gust, and how much of the year comes in less wind. Where there is no such
// speed, what it comes to from rest is shown; so it is where the drag was measured and no wind up to the
// furling wind starts it.

// meetWind follows the rotor through the winds and picks the three winds asked for.
func (b *bed) meetWind(c *characteristic, t *TrialOutcome) (spots [conditionCount]spot) {
	s := b.drive
	t.Driven = noDrive("only for drives with a power of their own")
	up, err := s.rising()
	if err != nil {
		t.Driven = noDrive(err.Error())
		return spots
	}
	load := b.inWind(c)
	points, err := up.Run(load)
	if err != nil {
		t.Driven = noDrive(err.Error())
		return spots
	}
	verdict, err := drive.Judge(s.shaft, load, points, s.year)
	if err != nil {
		t.Driven = noDrive(err.Error())
		return spots
	}
	t.Points = make([]DrivePoint, 0, len(points))
	for _, p := range points {
		t.Points = append(t.Points, windPoint(p, c.at(p.RPM)))
		for i := range spots {
			if math.Abs(p.WindMPS-s.conditions[i].X.Value) <= 1e-6 {
				spots[i] = spot{asked: true, rpm: p.RPM, warm: c.at(p.RPM).WindingC, region: p.Region, stops: p.RPM == 0}
				spots[i].other, spots[i].gust, spots[i].pushed = p.Others, p.Gust, p.Pushed
				for _, e := range p.Others {
					if e.Stable {
						spots[i].also = append(spots[i].also, e.RPM)
					}
				}
			}
		}
	}
	t.YearKWh = quantity.Of(up.yearOf(t.Points), quantity.Guessed)
	t.StartsAt = quantity.Missing("it does not charge below the furling wind")
	if verdict.ChargesFrom > 0 {
		t.StartsAt = quantity.Of(verdict.ChargesFrom, t.PhasePerRPM.Origin)
		t.StartsAlone = b.startsAlone(verdict)
	}
	t.region, t.verdict = verdict.Region, &verdict
	t.other = otherBalance(c, points, s.conditions[usual].X.Value)
	return spots
}

// startsAlone is the wind from which it starts without a gust, where it charges in less wind too.
func (b *bed) startsAlone(v drive.Verdict) quantity.Figure {
	switch {
	case v.StartsFrom == 0:
		return quantity.Missing("no wind up to the furling wind starts it by itself")
	case v.StartsFrom <= v.ChargesFrom:
		return quantity.Missing("it starts by itself wherever it charges")
	}
	return quantity.Of(v.StartsFrom, b.drag.origin)
}

// inWind is a trial as a rotor in the wind sees it. A guessed drag alone is no reason to say that it never
// starts.
func (b *bed) inWind(c *characteristic) drive.Load {
	load := c.torque(b.drive.fastest)
	load.Pushed = b.pushed()
	return load
}

// pushed reports whether what holds the shaft is a guess, so that a balance counts that no wind leads to.
func (b *bed) pushed() bool { return b.drag.origin.Weak() && b.drive.shaft.StartNm == 0 }

// windPoint is what the trial charges where the rotor settles.
func windPoint(p drive.WindPoint, run RunPoint) DrivePoint {
	d := DrivePoint{X: p.WindMPS, RPM: p.RPM, AmpsDC: run.AmpsDC, BatteryWatts: run.BatteryWatts, NetAmps: run.NetAmps, NetWatts: run.NetWatts,
		DriveWatts: p.RotorWatts, WindingC: run.WindingC, TooHot: run.TooHot, followed: run.followed, lowered: run.lowers(), Held: run.Held, Gust: p.Gust, pushed: p.Pushed, Lambda: p.Lambda, Cp: p.Cp, Region: p.Region, Others: p.Others}
	if d.DriveWatts > 0 {
		d.Efficiency = max(0, d.NetWatts) / d.DriveWatts
	}
	return d
}

// # What counts for a year
//
// A year is the energy that its winds leave in the battery. Winds above the furling wind bring
// nothing, nor do winds in which the winding burns: a winding that withstands them brings more.
//
// A wound rotor takes its current whether amps come or not. Nobody leaves it on in winds in which
// it takes more than it brings: a hand, or a switch by speed, turns it on where it begins to gain.
// So the year counts only those winds and cannot be negative; the figure for a current left on is
// given beside it (leftOnIn). Every shaft speed is one reached with the current on; a
// rotor that has run up with it off may hold another of its balances, and bring more.

// kept is the net watts that count for the year: none where the rotor takes more than comes in, nor
// where the winding would burn.
func (p *DrivePoint) kept() float64 {
	if p.TooHot {
		return 0
	}
	return max(0, p.NetWatts)
}

// leftOnIn is the year's energy, kWh, with the field current left on all year: the rotor takes its
// watts also in winds that bring nothing, in calms and above the furling wind. Winds in which the
// winding burns count nothing, as in climb.yearOf.
func (dr *Driven) leftOnIn(year drive.Weibull, fieldWatts float64) float64 {
	winds, watts := make([]float64, len(dr.Points)), make([]float64, len(dr.Points))
	for i := range dr.Points {
		if winds[i] = dr.Points[i].X; !dr.Points[i].TooHot {
			watts[i] = dr.Points[i].NetWatts
		}
	}
	beyond := 1 - year.Above(winds[0]) + year.Above(winds[len(winds)-1])
	return year.LinesKWh(winds, watts) - beyond*fieldWatts*drive.HoursPerYear/1000
}

// yearOf is the energy of a year, kWh, from some of its winds; the others bring nothing.
func (dr *Driven) yearOf(year drive.Weibull, counts func(*DrivePoint) bool) float64 {
	winds, watts := make([]float64, len(dr.Points)), make([]float64, len(dr.Points))
	for i := range dr.Points {
		p := &dr.Points[i]
		if winds[i] = p.X; counts(p) {
			watts[i] = p.kept()
		}
	}
	return year.LinesKWh(winds, watts)
}

// # The part of a year that the winding does not withstand
//
// A year's energy covers all winds in which the winding finds a steady temperature. In some of them it
// may exceed its current limit or its class, since a winding survives some hours of that, and nobody
// knows how many. The energy from such winds is a separate figure. A stretch between two winds counts
// as withstood if both ends are, so that a rotor that furls at the last wind withstood keeps exactly
// what is not in that figure (yearTo).

// yearPast is the energy, kWh, in winds that the winding does not withstand; missing with its reason if
// there is none.
func (t *TrialOutcome) yearPast(b *bed) quantity.Figure {
	if !t.YearKWh.Known() {
		return t.YearKWh
	}
	stood, from := 0.0, 0
	for i := range t.Points {
		if t.standsAt(&t.Points[i], b.air) {
			continue
		}
		stood += b.drive.year.LinesKWh(windsAndWatts(t.Points[from:i]))
		from = i + 1
	}
	stood += b.drive.year.LinesKWh(windsAndWatts(t.Points[from:]))
	past := t.YearKWh.Value - stood
	if past <= pastNothing*t.YearKWh.Value {
		return quantity.Missing("it withstands every wind that counts towards its year")
	}
	return quantity.Of(past, quantity.Guessed)
}

// pastNothing is the part of a year's energy in winds not withstood that still counts as none; our
// choice.
const pastNothing = 1e-6

// windsAndWatts returns points as LinesKWh takes them.
func windsAndWatts(points []DrivePoint) (winds, watts []float64) {
	winds, watts = make([]float64, len(points)), make([]float64, len(points))
	for i := range points {
		winds[i], watts[i] = points[i].X, points[i].kept()
	}
	return winds, watts
}

// yearTo is climb.yearOf for a rotor that furls above a wind, m/s, which is one of the points'.
func (dr *Driven) yearTo(furls float64, year drive.Weibull) float64 {
	winds, watts := make([]float64, 0, len(dr.Points)), make([]float64, 0, len(dr.Points))
	for i := range dr.Points {
		if p := &dr.Points[i]; p.X <= furls*(1+1e-9) {
			winds, watts = append(winds, p.X), append(watts, p.kept())
		}
	}
	return year.LinesKWh(winds, watts)
}

// suitsWind is a verdict in one plain sentence, and from which wind it starts without a gust.
func suitsWind(v drive.Verdict) string {
	switch {
	case v.ChargesFrom > 0 && v.StartsFrom == 0:
		return suitsTurning(v) + "; no wind up to the furling wind starts it by itself, a push has to"
	case v.StartsFrom > v.ChargesFrom:
		return fmt.Sprintf("%s; it starts by itself from %.1f m/s, in less wind a gust has to start it", suitsTurning(v), v.StartsFrom)
	}
	return suitsTurning(v)
}

// suitsTurning is the same of a rotor that turns.
func suitsTurning(v drive.Verdict) string {
	switch v.Region {
	case drive.Still:
		return "it does not start the rotor in the winds of this place"
	case drive.Idling:
		if v.ChargesFrom == 0 {
			return "it never charges: the rotor does not reach its cut-in speed before it furls"
		}
		return fmt.Sprintf("it charges from %.1f m/s only, more wind than this place has most of the time", v.ChargesFrom)
	case drive.Stalled:
		text := fmt.Sprintf("it stalls the rotor: from %.1f m/s the blades are held below their best speed and give less than four fifths of what they could", v.StallsFrom)
		if v.EarlyCutIn {
			return text + "; it cuts in too early"
		}
		return text + "; once it charges, the winding holds the rotor too hard"
	case drive.Runaway:
		return fmt.Sprintf("it loads the rotor too little: from %.1f m/s it runs away from its best speed", v.RunsAwayFrom)
	}
	text := fmt.Sprintf("loads the rotor well: charges from %.1f m/s and keeps near its best speed in %.0f %% of the wind's power", v.ChargesFrom, 100*v.Share[drive.Charging])
	if v.StallsFrom > 0 {
		text += fmt.Sprintf("; from %.1f m/s it is stalled, which holds it in strong wind", v.StallsFrom)
	}
	return text
}
