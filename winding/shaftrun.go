package winding

import (
	"fmt"
	"math"

	"slotwright/winding/drive"
)

// powerCurve is what the drive can give against its own speed: the points that were
// typed, else a curve of the usual kind through the power at the usual speed. Pedals,
// water and engines all give little when slow; above its top speed each gives nothing.
func (b *Bench) powerCurve() (*drive.Curve, string) {
	d := b.job.Drive
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
	usual, top := d.UsualRPM.Value, d.TopRPM.Or(1.6*d.UsualRPM.Value)
	if top <= usual {
		top = usual * 1.2
	}
	points = []drive.Point{{RPM: usual / 2, Watts: d.Watts.Value / 2}, {RPM: usual, Watts: d.Watts.Value}, {RPM: top, Watts: 0}}
	if b.job.Drive.Kind == "engine" { // governed: it keeps its power up to its top speed
		points = []drive.Point{{RPM: usual / 2, Watts: d.Watts.Value / 2}, {RPM: usual, Watts: d.Watts.Value},
			{RPM: top * 0.98, Watts: d.Watts.Value * top * 0.98 / usual}, {RPM: top * 1.03, Watts: 0}}
	}
	c, err := drive.NewCurve(points)
	if err != nil {
		return nil, err.Error()
	}
	return c, ""
}

// meetShaft sets a trial against a drive with a power of its own: at each speed what it
// takes and what there is, and where it comes to rest when the drive gives all it can.
func (b *Bench) meetShaft(r *runner, t *TrialOutcome) Driven {
	if !b.speeds.ratio.Known() {
		return noDrive(b.speeds.ratio.Why)
	}
	curve, why := b.powerCurve()
	if why != "" {
		return noDrive(why)
	}
	ratio, eff := b.speeds.ratio.Value, b.transmission().Efficiency
	out := noDrive("needs a wind rotor")
	table := r.samples(t.Curve, ratio*curve.Top())
	given := func(rpm float64) float64 {
		if rpm <= 0 {
			return 0
		}
		return curve.Watts(rpm/ratio) * eff / (2 * math.Pi * rpm / 60)
	}
	equilibria := r.balance(&table, given)
	for _, p := range t.Curve {
		if x := p.RPM / ratio; x > 0 && x <= curve.Top() {
			out.Points = append(out.Points, shaftPoint(p, curve, ratio, eff))
		}
	}
	out.StartsAt = t.CutInRPM.times(1 / ratio)
	b.readShaft(&out, r, t, &table, curve, equilibria)
	return out
}

// shaftPoint is a trial turned at a drive speed, and whether the drive can.
func shaftPoint(run RunPoint, curve *drive.Curve, ratio, eff float64) DrivePoint {
	x := run.RPM / ratio
	p := DrivePoint{X: x, RPM: run.RPM, AmpsDC: run.AmpsDC, BatteryWatts: run.BatteryWatts, DriveWatts: run.ShaftWatts / eff, GivesWatts: curve.Watts(x)}
	if p.DriveWatts > 0 {
		p.Efficiency = p.BatteryWatts / p.DriveWatts
	}
	switch {
	case p.DriveWatts > p.GivesWatts:
		p.Region = Overload
	case p.AmpsDC == 0:
		p.Region = Idling
	default:
		p.Region = Charges
	}
	return p
}

// readShaft says where full power ends up and how that suits.
func (b *Bench) readShaft(out *Driven, r *runner, t *TrialOutcome, table *sampled, curve *drive.Curve, list []drive.Equilibrium) {
	ratio, eff := b.speeds.ratio.Value, b.transmission().Efficiency
	e, ok := drive.Settle(list, table.rpm[0], 1)
	if !ok {
		out.RunRPM, out.RunAmps, out.RunWatts = missing("it comes to no rest within the drive's speeds"), missing("no running speed"), missing("no running speed")
	} else {
		run := r.at(e.RPM, table.warmAt(e.RPM))
		out.RunRPM, out.RunAmps = derived(e.RPM, Guessed), derived(run.AmpsDC, Guessed)
		out.RunWatts = derived(run.ShaftWatts/eff, Guessed)
	}
	usual := b.speeds.usual
	if !usual.Known() {
		return
	}
	p := shaftPoint(r.at(usual.Value, table.warmAt(usual.Value)), curve, ratio, eff)
	out.region = p.Region
	switch {
	case p.AmpsDC == 0:
		out.Suits = fmt.Sprintf("does not charge at the usual speed: it begins at %.0f rpm of the drive", out.StartsAt.Value)
		out.Mends = []string{"more turns", "a larger ratio"}
		out.region = Racing
	case p.Region == Overload && ok:
		out.Suits = fmt.Sprintf("asks for %.0f W at the usual speed, the drive gives %.0f W: it is held back to %.0f rpm of the drive and %.1f A", p.DriveWatts, p.GivesWatts, e.RPM/ratio, out.RunAmps.Value)
		out.Mends = []string{"fewer turns", "a smaller ratio", "a resistance in line with the battery"}
	case p.Region == Overload:
		out.Suits = fmt.Sprintf("asks for %.0f W at the usual speed, the drive gives %.0f W: it cannot be turned that fast", p.DriveWatts, p.GivesWatts)
		out.Mends = []string{"fewer turns", "a smaller ratio"}
	default:
		out.Suits = fmt.Sprintf("takes %.0f W of the %.0f W the drive gives at its usual speed, for %.1f A", p.DriveWatts, p.GivesWatts, p.AmpsDC)
		if ok && e.RPM > usual.Value*1.02 {
			out.Suits += fmt.Sprintf("; given all of it, it runs up to %.0f rpm of the drive and %.1f A", e.RPM/ratio, out.RunAmps.Value)
		}
	}
}

// meetFixed is a drive whose speed does not give way.
func (b *Bench) meetFixed(r *runner, t *TrialOutcome) Driven {
	if !b.speeds.ratio.Known() {
		return noDrive(b.speeds.ratio.Why)
	}
	out := noDrive("its speed does not give way")
	ratio, eff := b.speeds.ratio.Value, b.transmission().Efficiency
	for _, p := range t.Curve[1:] {
		pt := DrivePoint{X: p.RPM / ratio, RPM: p.RPM, AmpsDC: p.AmpsDC, BatteryWatts: p.BatteryWatts, DriveWatts: p.ShaftWatts / eff, Region: Charges}
		if pt.AmpsDC == 0 {
			pt.Region = Idling
		}
		if pt.DriveWatts > 0 {
			pt.Efficiency = pt.BatteryWatts / pt.DriveWatts
		}
		out.Points = append(out.Points, pt)
	}
	out.StartsAt = t.CutInRPM.times(1 / ratio)
	if usual := b.speeds.usual; usual.Known() {
		p := r.at(usual.Value, b.air.ambientC)
		out.region = Charges
		out.Suits = fmt.Sprintf("takes %.0f W at the usual speed for %.1f A", p.ShaftWatts/eff, p.AmpsDC)
		if p.AmpsDC == 0 {
			out.region = Racing
			out.Suits = "does not charge at the usual speed"
			out.Mends = []string{"more turns", "a larger ratio"}
		}
	}
	return out
}
