package winding

import (
	"fmt"
	"math"
	"sort"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// A wind rotor of which nothing was said.
var (
	defaultPeakCp     = job.DefaultOf("drive.peak_cp")
	defaultPeakLambda = job.DefaultOf("drive.peak_tsr")
	defaultMeanWind   = job.DefaultOf("drive.mean_wind")
	defaultFurl       = job.DefaultOf("drive.furl")
	defaultGale       = job.DefaultOf("drive.gale")
	defaultAirC       = job.DefaultOf("drive.air")
)

// lightWind, m/s, is the wind of the slow speed, from which a small machine is expected to
// charge; common practice, no source.
const lightWind = 3.5

// windRotor is the job's rotor; why says what is wrong or missing.
func windRotor(d *job.DriveSpec) (rotor drive.Rotor, why string) {
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

// ofWind are the alternator speeds at the rotor's best tip-speed ratio: in a light
// wind, in the mean wind and in that at which it furls.
func (s speeds) ofWind(d *job.DriveSpec) speeds {
	rotor, why := windRotor(d)
	if why != "" || !s.ratio.Known() {
		return s
	}
	at := func(own quantity.Figure, wind float64) quantity.Figure {
		if own.Known() {
			return own
		}
		return s.ratio.Times(rotor.RPM(wind, rotor.PeakLambda)).Because(fmt.Sprintf("the rotor at its best in %.1f m/s", wind))
	}
	s.slow, s.usual, s.top = at(s.slow, lightWind), at(s.usual, d.MeanWindMS.Or(defaultMeanWind)), at(s.top, d.CutOutMS.Or(defaultFurl))
	return s
}

// windStep is the spacing of winds, m/s.
const windStep = 0.5

// meetWind follows the rotor through rising wind, from rest.
func (b *Bench) meetWind(r *charger, t *TrialOutcome) Driven {
	rotor, why := windRotor(&b.job.Drive)
	d := b.job.Drive
	switch {
	case why != "":
		return noDrive(why)
	case !b.speeds.ratio.Known():
		return noDrive(b.speeds.ratio.Why)
	}
	shaft := drive.WindShaft{Rotor: rotor, Turns: b.speeds.ratio.Value, Efficiency: transmissionOf(&b.job.Drive).Passes(),
		Density: drive.AirDensity(d.AltitudeM.Or(0), d.AirC.Or(defaultAirC)), StartNm: d.StartTorque.Or(0)}
	furl := d.CutOutMS.Or(defaultFurl)
	load := r.torque(t.CutInRPM.Value, 1.02*shaft.FreeRPM(furl))
	points, err := drive.Climb(shaft, load, furl, windStep)
	if err != nil {
		return noDrive(err.Error())
	}
	year := drive.Weibull{Mean: d.MeanWindMS.Or(defaultMeanWind), K: d.WeibullK.Or(2)}
	verdict, err := drive.Judge(shaft, load, points, year)
	if err != nil {
		return noDrive(err.Error())
	}
	out := noDrive("only for drives with a power of their own")
	for _, p := range points {
		out.Points = append(out.Points, r.windPoint(p))
	}
	out.YearKWh = quantity.Of(year.EnergyKWh(out.wattsAt, out.winds()...), quantity.Guessed)
	out.StartsAt = quantity.Missing("it does not charge below the furling wind")
	if verdict.ChargesFrom > 0 {
		out.StartsAt = quantity.Of(verdict.ChargesFrom, t.AmpsUsual.Origin)
	}
	out.region = verdict.Region
	out.Suits, out.Mends = suitsWind(verdict), mends(verdict.Mends, t.Turns)
	return out
}

// windPoint is what the trial charges where the rotor comes to.
func (r *charger) windPoint(p drive.WindPoint) DrivePoint {
	run := r.at(p.RPM, r.air.ambientC)
	d := DrivePoint{X: p.WindMPS, RPM: p.RPM, AmpsDC: run.AmpsDC, BatteryWatts: run.BatteryWatts, DriveWatts: p.RotorWatts,
		Lambda: p.Lambda, Cp: p.Cp, Region: p.Region, Others: p.Others}
	if d.DriveWatts > 0 {
		d.Efficiency = d.BatteryWatts / d.DriveWatts
	}
	return d
}

// winds is those of the points.
func (dr *Driven) winds() []float64 {
	list := make([]float64, len(dr.Points))
	for i, p := range dr.Points {
		list[i] = p.X
	}
	return list
}

// wattsAt is battery watts in a straight line between the points.
func (dr *Driven) wattsAt(wind float64) float64 {
	i := sort.Search(len(dr.Points), func(i int) bool { return dr.Points[i].X >= wind })
	if i == 0 || i == len(dr.Points) {
		return 0
	}
	a, c := dr.Points[i-1], dr.Points[i]
	return a.BatteryWatts + (c.BatteryWatts-a.BatteryWatts)*(wind-a.X)/(c.X-a.X)
}

// suitsWind is a verdict in one plain sentence.
func suitsWind(v drive.Verdict) string {
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
		return text + "; the winding is too stiff"
	case drive.Runaway:
		return fmt.Sprintf("it loads the rotor too little: from %.1f m/s it runs away from its best speed", v.RunsAwayFrom)
	}
	text := fmt.Sprintf("suits the rotor: charges from %.1f m/s and keeps near its best speed in %.0f %% of the wind's power", v.ChargesFrom, 100*v.Share[drive.Charging])
	if v.StallsFrom > 0 {
		text += fmt.Sprintf("; from %.1f m/s it is stalled, which holds it in strong wind", v.StallsFrom)
	}
	return text
}

// mends puts remedies in words, with how many turns where that is known.
func mends(list []drive.Mend, turns quantity.Figure) []string {
	words := map[drive.Remedy]string{
		drive.FewerTurns: "fewer turns of thicker wire, so that it cuts in later", drive.MoreTurns: "more turns, so that it cuts in earlier",
		drive.InLine: "a resistance in line with the battery", drive.ChangeOver: "a star/delta change-over: star in light wind, delta in strong",
		drive.GearUp: "gear the alternator up", drive.GearDown: "gear the alternator down",
		drive.LowResistance: "a lower resistance: thicker wire, thicker cable", drive.EasierStart: "less to overcome at rest: skewed magnets, lighter seals",
	}
	var out []string
	for _, m := range list {
		text := words[m.Remedy]
		if m.Factor > 0 && turns.Known() && (m.Remedy == drive.FewerTurns || m.Remedy == drive.MoreTurns) {
			text = fmt.Sprintf("%s: about %.0f", text, math.Max(1, math.Round(turns.Value*m.Factor)))
		}
		out = append(out, text)
	}
	return out
}

// openAtGale is peak DC unloaded in the gale, the rotor running free.
func (b *Bench) openAtGale(t *TrialOutcome) quantity.Figure {
	if b.job.Drive.Kind != "wind" {
		return quantity.Missing("only for a wind rotor")
	}
	rotor, why := windRotor(&b.job.Drive)
	if why != "" {
		return quantity.Missing(why)
	}
	free := rotor.RPM(b.job.Drive.GaleMS.Or(defaultGale), rotor.Runaway())
	return t.PeakDCPerRPM.With(b.speeds.ratio, func(v, ratio float64) float64 { return v * ratio * free })
}
