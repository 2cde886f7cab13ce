package winding

import (
	"fmt"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// sourceOf is what the drive can give against its own speed: the points that were typed,
// else the usual shape of its kind through the power at the usual speed.
func sourceOf(d *job.DriveSpec) (drive.Source, string) {
	var points []drive.Point
	for _, p := range d.Points {
		if p.RPM.Given() && p.Watts.Given() {
			points = append(points, drive.Point{RPM: p.RPM.Value, Watts: p.Watts.Value})
		}
	}
	if len(points) >= 2 {
		c, err := drive.NewCurve(points)
		if err != nil {
			return nil, err.Error()
		}
		return c, ""
	}
	if !d.Watts.Given() || !d.UsualRPM.Given() {
		return nil, "needs the drive's usual speed and power, or two points of its power curve"
	}
	if d.Kind == "engine" {
		g := drive.Governed{UsualRPM: d.UsualRPM.Value, UsualWatts: d.Watts.Value, TopRPM: max(d.UsualRPM.Value, d.TopRPM.Or(1.6*d.UsualRPM.Value))}
		if err := g.Check(); err != nil {
			return nil, err.Error()
		}
		return g, ""
	}
	y := drive.Yielding{UsualRPM: d.UsualRPM.Value, UsualWatts: d.Watts.Value}
	if err := y.Check(); err != nil {
		return nil, err.Error()
	}
	return y, ""
}

// meetShaft sets a trial against a drive with a power of its own: at each speed what it
// takes and what there is, and where it comes to rest when the drive gives all it can.
func (b *Bench) meetShaft(r *charger, t *TrialOutcome) Driven {
	source, why := sourceOf(&b.job.Drive)
	switch {
	case !b.speeds.ratio.Known():
		return noDrive(b.speeds.ratio.Why)
	case why != "":
		return noDrive(why)
	}
	through := transmissionOf(&b.job.Drive)
	through.Ratio, through.Slip = b.speeds.ratio.Value, 0
	load := r.torque(t.CutInRPM.Value, 1.01*through.Ratio*source.Top())
	met, err := drive.NewDriven(source, through, load.Taken, load.Samples)
	if err != nil {
		return noDrive(err.Error())
	}
	out := noDrive("needs a wind rotor")
	for _, p := range t.Curve {
		if x := p.RPM / through.Ratio; x > 0 && x <= source.Top() {
			out.Points = append(out.Points, shaftPoint(p, x, through.Passes(), source.Watts(x)))
		}
	}
	out.StartsAt = t.CutInRPM.Times(1 / through.Ratio)
	b.readShaft(&out, r, met, through)
	return out
}

// shaftPoint is a trial turned at a drive speed, and whether the drive can.
func shaftPoint(run RunPoint, x, passes, gives float64) DrivePoint {
	p := DrivePoint{X: x, RPM: run.RPM, AmpsDC: run.AmpsDC, BatteryWatts: run.BatteryWatts, DriveWatts: run.ShaftWatts / passes, GivesWatts: gives}
	if p.DriveWatts > 0 {
		p.Efficiency = p.BatteryWatts / p.DriveWatts
	}
	switch {
	case p.DriveWatts > p.GivesWatts:
		p.Region = Overload
	case p.AmpsDC == 0:
		p.Region = drive.Idling
	default:
		p.Region = drive.Charging
	}
	return p
}

// readShaft says where full power ends up and how that suits.
func (b *Bench) readShaft(out *Driven, r *charger, met *drive.Driven, through drive.Transmission) {
	no := quantity.Missing("it comes to no rest within the drive's speeds")
	out.RunRPM, out.RunAmps, out.RunWatts = no, no, no
	e, held := met.FullPower()
	if held {
		out.RunRPM, out.RunWatts = quantity.Of(e.RPM, quantity.Guessed), quantity.Of(e.Watts/through.Passes(), quantity.Guessed)
		out.RunAmps = quantity.Of(r.at(e.RPM, b.air.ambientC).AmpsDC, quantity.Guessed)
	}
	usual := b.speeds.usual
	if !usual.Known() {
		return
	}
	run, err := met.At(usual.Value / through.Ratio)
	if err != nil {
		return
	}
	amps := r.at(usual.Value, b.air.ambientC).AmpsDC
	switch {
	case amps == 0:
		out.region = drive.Idling
		out.Suits = fmt.Sprintf("does not charge at the usual speed: it begins at %.0f rpm of the drive", out.StartsAt.Value)
		out.Mends = []string{"more turns", "a larger ratio"}
	case !run.Enough:
		out.region = Overload
		out.Suits = fmt.Sprintf("asks for %.0f W at the usual speed, the drive gives %.0f W: ", run.TakenWatts, run.GivesWatts)
		out.Mends = []string{"fewer turns", "a smaller ratio", "a resistance in line with the battery"}
		if run.Stops {
			out.Suits += "it is stopped"
		} else {
			out.Suits += fmt.Sprintf("it is held back to %.0f rpm of the drive and %.1f A", run.Settles.RPM/through.Ratio, r.at(run.Settles.RPM, b.air.ambientC).AmpsDC)
		}
	default:
		out.region = drive.Charging
		out.Suits = fmt.Sprintf("takes %.0f W of the %.0f W the drive gives at its usual speed, for %.1f A", run.TakenWatts, run.GivesWatts, amps)
		if held && e.RPM > usual.Value*1.02 {
			out.Suits += fmt.Sprintf("; given all of it, it runs up to %.0f rpm of the drive and %.1f A", e.RPM/through.Ratio, out.RunAmps.Value)
		}
	}
}

// meetFixed is a drive whose speed does not give way.
func (b *Bench) meetFixed(r *charger, t *TrialOutcome) Driven {
	if !b.speeds.ratio.Known() {
		return noDrive(b.speeds.ratio.Why)
	}
	out := noDrive("its speed does not give way")
	through := transmissionOf(&b.job.Drive)
	through.Ratio, through.Slip = b.speeds.ratio.Value, 0
	for _, p := range t.Curve[1:] {
		pt := shaftPoint(p, p.RPM/through.Ratio, through.Passes(), 0)
		pt.Region = drive.Charging
		if pt.AmpsDC == 0 {
			pt.Region = drive.Idling
		}
		out.Points = append(out.Points, pt)
	}
	out.StartsAt = t.CutInRPM.Times(1 / through.Ratio)
	usual := b.speeds.usual
	if !usual.Known() {
		return out
	}
	run, err := drive.RunFixed(usual.Value/through.Ratio, through, func(rpm float64) float64 { return r.at(rpm, b.air.ambientC).TorqueNm })
	if err != nil {
		return noDrive(err.Error())
	}
	amps := r.at(usual.Value, b.air.ambientC).AmpsDC
	out.region = drive.Charging
	out.Suits = fmt.Sprintf("takes %.0f W at the usual speed for %.1f A", run.TakenWatts, amps)
	if amps == 0 {
		out.region = drive.Idling
		out.Suits, out.Mends = "does not charge at the usual speed", []string{"more turns", "a larger ratio"}
	}
	return out
}
