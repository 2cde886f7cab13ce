package winding

import (
	"fmt"
	"math"

	"slotwright/winding/drive"
)

// Defaults of a wind rotor; common practice, no source. The wind of the slow speed is
// the light one from which a small machine is expected to charge.
const (
	defaultPeakCp     = 0.35
	defaultPeakLambda = 6.0
	defaultMeanWind   = 5.0
	defaultFurl       = 14.0
	defaultGale       = 20.0
	defaultAirC       = 15.0
	lightWind         = 3.5
)

// windRotor is the job's rotor; why says what is wrong or missing.
func (b *Bench) windRotor() (rotor drive.Rotor, why string) {
	d := b.job.Drive
	if !d.RotorM.Given() {
		return rotor, "needs the diameter of the wind rotor"
	}
	shape, _ := drive.ParseShape(orWord(d.Curve, drive.Heier.String()))
	rotor = drive.Rotor{DiameterM: d.RotorM.Value, Shape: shape, PeakCp: d.PeakCp.Or(defaultPeakCp), PeakLambda: d.PeakLambda.Or(defaultPeakLambda)}
	if err := rotor.Check(); err != nil {
		return rotor, err.Error()
	}
	return rotor, ""
}

// windSpeeds are the alternator speeds at the rotor's best tip-speed ratio: in a light
// wind, in the mean wind and in that at which it furls.
func (b *Bench) windSpeeds(s speeds) speeds {
	rotor, why := b.windRotor()
	if why != "" || !s.ratio.Known() {
		return s
	}
	d := b.job.Drive
	at := func(own Figure, wind float64) Figure {
		if own.Known() {
			return own
		}
		return s.ratio.times(rotor.RPM(wind, rotor.PeakLambda)).because(fmt.Sprintf("the rotor at its best in %.1f m/s", wind))
	}
	s.slow, s.usual, s.top = at(s.slow, lightWind), at(s.usual, d.MeanWindMS.Or(defaultMeanWind)), at(s.top, d.CutOutMS.Or(defaultFurl))
	return s
}

// windStep is the spacing of winds, m/s.
const windStep = 0.5

// windShaft is a rotor behind its transmission: torque on the alternator's shaft.
type windShaft struct {
	rotor   drive.Rotor
	ratio   float64
	eff     float64
	density float64
}

func (w *windShaft) torque(wind float64) drive.Torque {
	return func(rpm float64) float64 { return w.rotor.Torque(wind, rpm/w.ratio, w.density) * w.eff / w.ratio }
}

// meetWind follows the rotor through rising wind, from rest.
func (b *Bench) meetWind(r *runner, t *TrialOutcome) Driven {
	rotor, why := b.windRotor()
	d := b.job.Drive
	switch {
	case why != "":
		return noDrive(why)
	case !b.speeds.ratio.Known():
		return noDrive(b.speeds.ratio.Why)
	}
	year := drive.Weibull{Mean: d.MeanWindMS.Or(defaultMeanWind), K: d.WeibullK.Or(2)}
	if err := year.Check(); err != nil {
		return noDrive(err.Error())
	}
	shaft := windShaft{rotor, b.speeds.ratio.Value, b.transmission().Efficiency, drive.AirDensity(d.AltitudeM.Or(0), d.AirC.Or(defaultAirC))}
	furl := d.CutOutMS.Or(defaultFurl)
	high := shaft.ratio * rotor.RPM(furl, rotor.Runaway()) * 1.02
	table := r.sample(high)
	out := noDrive("only for drives with a power of their own")
	rpm := 0.0
	for n := 2; ; n++ {
		wind := min(float64(n)*windStep, furl)
		p := b.windPoint(r, &table, &shaft, wind, rpm)
		out.Points = append(out.Points, p)
		rpm = p.RPM
		if wind >= furl {
			break
		}
	}
	b.readWind(&out, &shaft, year, t)
	return out
}

// windPoint is where a shaft that turns at a speed comes to in a wind.
func (b *Bench) windPoint(r *runner, table *sampled, shaft *windShaft, wind, rpm float64) DrivePoint {
	given := shaft.torque(wind)
	p := DrivePoint{X: wind, Region: Still}
	if rpm == 0 && given(0) <= b.job.Drive.StartTorque.Or(0) {
		return p
	}
	list := r.balance(table, given)
	start := max(rpm, table.rpm[0])
	e, ok := drive.Settle(list, start, given(start)-r.at(start, table.warmAt(start)).TorqueNm)
	for _, other := range list {
		if !ok || other.RPM != e.RPM {
			p.Others = append(p.Others, other)
		}
	}
	if !ok {
		return p
	}
	run := r.at(e.RPM, table.warmAt(e.RPM))
	p.RPM, p.AmpsDC, p.BatteryWatts = e.RPM, run.AmpsDC, run.BatteryWatts
	p.Lambda = shaft.rotor.Lambda(wind, e.RPM/shaft.ratio)
	p.Cp = shaft.rotor.Cp(p.Lambda)
	p.DriveWatts = shaft.rotor.Watts(wind, e.RPM/shaft.ratio, shaft.density)
	if p.DriveWatts > 0 {
		p.Efficiency = p.BatteryWatts / p.DriveWatts
	}
	p.Region = windRegion(&shaft.rotor, p)
	return p
}

// windRegion names how the rotor fares: it is stalled when it is held so far below its
// best tip-speed ratio that a fifth of its power is gone, racing when so far above.
func windRegion(rotor *drive.Rotor, p DrivePoint) Region {
	switch weak := p.Cp < 0.8*rotor.PeakCp; {
	case p.AmpsDC == 0:
		return Idling
	case weak && p.Lambda < rotor.PeakLambda:
		return Stalled
	case weak:
		return Racing
	}
	return Charges
}

// readWind reads year, start and verdict off the points.
func (b *Bench) readWind(out *Driven, shaft *windShaft, year drive.Weibull, t *TrialOutcome) {
	origin := t.AmpsUsual.Origin
	out.StartsAt = missing("it does not charge below the furling wind")
	breaks := make([]float64, len(out.Points))
	for i, p := range out.Points {
		breaks[i] = p.X
		if p.AmpsDC > 0 && !out.StartsAt.Known() {
			out.StartsAt = derived(p.X, origin)
		}
	}
	at := func(wind float64) float64 {
		i := int(math.Min(float64(len(out.Points)-2), math.Max(0, math.Floor(wind/windStep)-2)))
		a, c := out.Points[i], out.Points[i+1]
		return a.BatteryWatts + (c.BatteryWatts-a.BatteryWatts)*(wind-a.X)/(c.X-a.X)
	}
	out.YearKWh = derived(year.EnergyKWh(at, breaks...), Guessed)
	b.judgeWind(out, shaft, year)
}

// judgeWind weighs the regions by the wind power a year has in each, and says in words
// how the winding suits the rotor.
func (b *Bench) judgeWind(out *Driven, shaft *windShaft, year drive.Weibull) {
	share := map[Region]float64{}
	total, first := 0.0, map[Region]float64{}
	for _, p := range out.Points {
		w := year.Density(p.X) * p.X * p.X * p.X
		share[p.Region] += w
		total += w
		if _, seen := first[p.Region]; !seen {
			first[p.Region] = p.X
		}
	}
	if total == 0 {
		return
	}
	switch {
	case !out.StartsAt.Known():
		out.region = Racing
		out.Suits = "it never charges: the rotor does not reach its cut-in speed before it furls"
		out.Mends = []string{"more turns", "gear the alternator up"}
	case share[Stalled] > 0.4*total:
		out.region = Stalled
		out.Suits = fmt.Sprintf("it stalls the rotor: from %.1f m/s the blades are held below their best speed and give less than four fifths of what they could", first[Stalled])
		out.Mends = []string{"fewer turns of thicker wire, so that it cuts in later", "a resistance in line with the battery", "a star/delta change-over: delta above that wind", "gear the alternator down"}
	case share[Racing] > 0.4*total:
		out.region = Racing
		out.Suits = fmt.Sprintf("it loads the rotor too little: from %.1f m/s it runs away from its best speed", first[Racing])
		out.Mends = []string{"more turns, so that it cuts in earlier", "thicker wire or a lower resistance to the battery", "gear the alternator up"}
	default:
		out.region = Charges
		out.Suits = fmt.Sprintf("suits the rotor: charges from %.1f m/s and keeps near its best speed in %.0f %% of the wind's power", out.StartsAt.Value, 100*share[Charges]/total)
		if s := first[Stalled]; s > 0 {
			out.Suits += fmt.Sprintf(", stalling it from %.1f m/s, which holds it in strong wind", s)
		}
	}
}

// openAtGale is peak DC unloaded in the gale, the rotor running free.
func (b *Bench) openAtGale(t *TrialOutcome) Figure {
	if b.job.Drive.Kind != "wind" {
		return missing("only for a wind rotor")
	}
	rotor, why := b.windRotor()
	if why != "" {
		return missing(why)
	}
	free := rotor.RPM(b.job.Drive.GaleMS.Or(defaultGale), rotor.Runaway())
	return t.PeakDCPerRPM.with(b.speeds.ratio, func(v, ratio float64) float64 { return v * ratio * free })
}
