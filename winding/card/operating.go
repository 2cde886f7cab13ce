package card

import (
	"slices"
	"strings"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/text"
)

// The columns of a table of conditions: the label and three of them make 80.
const (
	conditionLabel = 26
	conditionCell  = 18
)

// flow is one line of where the drive's watts go.
type flow struct {
	label string
	dim   quantity.Dimension
	of    func(*winding.Operating) float64
}

// figures is the number of figures shown: volts to hundredths, as a meter shows a battery's.
func (f *flow) figures() int {
	if f.dim[0].Name == quantity.Volts[0].Name {
		return 4
	}
	return 3
}

// controllerLine is written only where something holds the amps and takes watts for it.
const controllerLine = "  controller"

// What does not apply to a lamp or a resistor: it holds no voltage, so it is neither empty nor full.
const (
	intoBattery = "net into the battery"
	ifEmpty     = "  battery empty"
	ifFull      = "  battery nearly full"
)

// flows are the lines, from the drive to the battery.
var flows = []flow{
	{"drive turns", quantity.RPM, func(o *winding.Operating) float64 { return o.DriveRPM }},
	{"alternator turns", quantity.RPM, func(o *winding.Operating) float64 { return o.RPM }},
	{"taken of the drive", quantity.Watts, func(o *winding.Operating) float64 { return o.DriveWatts }},
	{"  lost in between", quantity.Watts, func(o *winding.Operating) float64 { return o.BeltWatts }},
	{"  iron and drag", quantity.Watts, func(o *winding.Operating) float64 { return o.IronWatts }},
	{"  copper", quantity.Watts, func(o *winding.Operating) float64 { return o.CopperWatts }},
	{"  diodes", quantity.Watts, func(o *winding.Operating) float64 { return o.DiodeWatts }},
	{"  cable", quantity.Watts, func(o *winding.Operating) float64 { return o.CableWatts }},
	{controllerLine, quantity.Watts, func(o *winding.Operating) float64 { return o.ControllerWatts }},
	{"  the rotor's field", quantity.Watts, func(o *winding.Operating) float64 { return o.FieldWatts }},
	{intoBattery, quantity.Watts, func(o *winding.Operating) float64 { return o.NetWatts }},
	{"  volts at its posts", quantity.Volts, func(o *winding.Operating) float64 { return o.PostsVolts }},
	{"net amps", quantity.Amps, func(o *winding.Operating) float64 { return o.NetAmps }},
	{ifEmpty, quantity.Amps, func(o *winding.Operating) float64 { return o.EmptyAmps }},
	{ifFull, quantity.Amps, func(o *winding.Operating) float64 { return o.FullAmps }},
	{"bridge amps", quantity.Amps, func(o *winding.Operating) float64 { return o.AmpsDC }},
}

// operating is the operating points of a trial, and where the watts go.
func (w *writer) operating(t *winding.TrialOutcome) {
	w.gap()
	list := w.ownConditions(t)
	if len(list) == 0 {
		w.say(2, notKnown(w.whyNotOperating(t)))
		return
	}
	holds := w.holdsVolts()
	if holds {
		w.say(2, "Where it really runs, the battery taking charge at "+w.machineText("battery_charging_v")+":")
	} else {
		w.say(2, "Where it really runs:")
	}
	w.gap()
	heads := make([]string, len(list))
	for i, o := range list {
		c := w.condition(o)
		heads[i] = w.opt.Units.Words(c.Head())
	}
	w.across("", heads)
	for _, f := range flows {
		if f.label == controllerLine && !slices.ContainsFunc(list, func(o *winding.Operating) bool { return o.ControllerWatts > 0 }) {
			continue
		}
		if !holds {
			if f.label == ifEmpty || f.label == ifFull {
				continue
			}
			f.label = strings.Replace(strings.Replace(f.label, intoBattery, "into the load", 1), "its posts", "the load", 1)
		}
		w.flow(f, list)
	}
	w.windingRow(t, list)
	if w.job.Battery.HeldBy != job.HeldByShunt && slices.ContainsFunc(list, func(o *winding.Operating) bool { return o.ControllerWatts > 0 }) {
		w.say(2, "Controller: taken as one that drops volts and burns them; "+winding.IfItSwitches+".")
	}
	for _, c := range w.o.Machine.Conditions {
		if same := c.SameAs(); same != "" {
			w.say(2, same)
		}
	}
	w.gap()
}

// holdsVolts reports whether the load is a battery, which has a charging voltage.
func (w *writer) holdsVolts() bool { return w.o.Machine.ChargingVolts.Known() }

// ownConditions are those that are not the same as another.
func (w *writer) ownConditions(t *winding.TrialOutcome) []*winding.Operating {
	var list []*winding.Operating
	for i := range t.Operating {
		if o := &t.Operating[i]; w.condition(o).Same == "" {
			list = append(list, o)
		}
	}
	return list
}

// condition is the state of the drive that a trial is in.
func (w *writer) condition(o *winding.Operating) winding.Condition {
	for _, c := range w.o.Machine.Conditions {
		if c.Name == o.Condition {
			return c
		}
	}
	return winding.Condition{Name: o.Condition, Label: o.Condition}
}

func (w *writer) whyNotOperating(t *winding.TrialOutcome) string {
	if t.NoCharging != "" {
		return t.NoCharging
	}
	return t.AmpsUsual.Why
}

// flow is one line; one that is zero in every condition is left out.
func (w *writer) flow(f flow, list []*winding.Operating) {
	cells, any := make([]string, len(list)), false
	for i, o := range list {
		v := f.of(o)
		cells[i], any = quantity.File.Value(v, f.dim[0], f.figures()), any || v != 0
	}
	if any {
		w.across(strings.TrimRight(f.label+", "+f.dim[0].Name, ", "), cells)
	}
}

// windingRow is the winding's temperature in each condition.
func (w *writer) windingRow(t *winding.TrialOutcome, list []*winding.Operating) {
	of := map[string]quantity.Figure{winding.SlowCondition: t.HotSlowC, winding.UsualCondition: t.HotUsualC, winding.TopCondition: t.HotTopC}
	u := w.opt.Units.For(quantity.Celsius)
	cells := make([]string, len(list))
	for i, o := range list {
		switch c := of[o.Condition]; {
		case o.TooHot:
			cells[i] = "TOO HOT"
		case !c.Known():
			cells[i] = "-"
		default:
			cells[i] = c.Text(u, 3)
		}
	}
	w.across("winding, "+u.Name, cells)
}

// across sets a label and a cell for each condition.
func (w *writer) across(label string, cells []string) {
	label = w.clean("  " + label)
	at := min(conditionLabel, w.wide-conditionCell*len(cells))
	if text.Width(label) > at {
		w.raw(label)
		label = ""
	}
	line := text.Pad(label, at)
	for _, c := range cells {
		line += text.PadLeft(w.clean(c), conditionCell)
	}
	w.raw(line)
}

// allOperating is that of every trial.
func (w *writer) allOperating() {
	w.section("WHERE EACH TRIAL REALLY RUNS")
	for i := range w.o.Trials {
		w.heading("Trial " + w.o.Trials[i].Name)
		w.operating(&w.o.Trials[i])
	}
	w.ifNoTrials()
}
