package wants

import (
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # Ways to volts
//
// All volts depend on one number, the flux, and one reading gives it. Which reading a person can take
// depends on what is on the bench: an old winding that still turns, bare iron into which a few turns of
// hook-up wire can be laid, magnets with a name on their box. So they are offered as alternatives, and
// none is waited for once one is complete.

// Way is one way to volts.
type Way struct {
	// Name is what is done, Note how good it is or what it is for.
	Name, Note string
	// Begun is set when something of it was given, Whole when volts follow from it.
	Begun, Whole bool
	fields       []wayField
}

// wayField is a field of a way. The rotor's current at a reading is asked for, but no way waits for it.
type wayField struct {
	path       string
	said, free bool
}

// WaysToVolts are the ways open in a job, the best first: a reading of the winding itself, one of the
// iron, the speed at which charging began, the magnets (±15 %, [field.Uncertainty]). While the kind of rotor
// is not given, magnets are no way.
func WaysToVolts(j *job.Job) []Way {
	list := []Way{spinWay(j), coilWay(j)}
	if j.Old.Turns.Given() && !j.Old.Gone() || j.Old.CutInRPM.Given() {
		list = append(list, Way{
			Name: "the speed at which the old winding began to charge", Note: "rougher",
			Begun: j.Old.CutInRPM.Given(), Whole: j.Old.CutInRPM.Given() && j.Old.Turns.Given(),
			fields: []wayField{{path: "old.cut_in", said: j.Old.CutInRPM.Given()}},
		})
	}
	if j.Field.Kind == job.FieldMagnets {
		list = append(list, Way{
			Name: "the magnets' grade and thickness", Note: "±15 %",
			Begun: j.Field.RemanenceTesla.Given(), Whole: magnetsAreTold(j),
			fields: []wayField{{path: "field.remanence", said: j.Field.RemanenceTesla.Given()}, {path: magnetThickness, said: j.Field.MagnetMM.Given()}},
		})
	}
	return list
}

// spinWay is the old winding spun up. Volts read with a current in the rotor say nothing once magnets
// have replaced it.
func spinWay(j *job.Job) Way {
	w := Way{Name: "spin the old winding up and read its volts", Note: "the best"}
	r := look(&w, j.Spins, func(s *job.SpinReading) (of, whole bool) {
		return ofThisRotor(j, s.FieldAmps.Given()), (s.RPM.Given() || s.Hertz.Given()) && s.LineVolts.Given() && j.Old.Turns.Given()
	})
	w.fields = []wayField{{path: "spin[0].speed", said: r.RPM.Given() || r.Hertz.Given()}, {path: "spin[0].line", said: r.LineVolts.Given()}}
	w.askCurrent(j, "spin[0].field", r.FieldAmps)
	return w
}

// coilWay is a trial coil.
func coilWay(j *job.Job) Way {
	w := Way{Name: "lay a trial coil of a few turns into the bare iron", Note: "as good, and nothing of the old winding is needed"}
	r := look(&w, j.Coils, func(c *job.CoilReading) (of, whole bool) {
		return ofThisRotor(j, c.FieldAmps.Given()), c.Turns.Given() && c.RPM.Given() && c.Volts.Given()
	})
	w.fields = []wayField{{path: "coil[0].turns", said: r.Turns.Given()}, {path: "coil[0].speed", said: r.RPM.Given()}, {path: "coil[0].voltage", said: r.Volts.Given()}}
	w.askCurrent(j, "coil[0].field", r.FieldAmps)
	return w
}

// look goes through the readings of a way: of says whether one is for the present rotor, and whether it
// is complete. It returns the first reading, an empty one where there is none.
func look[T any](w *Way, list []T, of func(*T) (of, whole bool)) (first T) {
	for i := range list {
		is, whole := of(&list[i])
		w.Begun, w.Whole = w.Begun || is, w.Whole || is && whole
	}
	if len(list) > 0 {
		first = list[0]
	}
	return first
}

// askCurrent asks for the rotor's current at a reading, except with magnets.
func (w *Way) askCurrent(j *job.Job, path string, amps quantity.Reading) {
	if j.Field.Kind != job.FieldMagnets {
		w.fields = append(w.fields, wayField{path: path, said: amps.Given(), free: true})
	}
}

// ofThisRotor reports whether volts read with or without a current in the rotor are for the present
// one.
func ofThisRotor(j *job.Job, current bool) bool { return j.Field.Kind != job.FieldMagnets || !current }

// next is the first field of the way that something waits for; the old winding's turns when all of the
// way is there.
func (w Way) next() string {
	for _, f := range w.fields {
		if !f.said && !f.free {
			return f.path
		}
	}
	return "old.turns"
}

// wantsOfWays are the fields of the ways to volts: of all until one is complete, then only of those
// that were begun.
func wantsOfWays(j *job.Job) []Want {
	begun, whole := false, j.Field.GapTesla.Given()
	ways := WaysToVolts(j)
	for _, w := range ways {
		begun, whole = begun || w.Begun, whole || w.Whole
	}
	var list []Want
	for i, w := range ways {
		for _, f := range w.fields {
			gone := i == 0 && (ways[1].Begun && !oldIsTold(j) || j.Old.Gone()) // the iron is bare: nothing left to spin up
			said := f.said && !(whole && f.path == magnetThickness)            // it would move as it is typed: see [thickness]
			if w.Begun || said || !whole && !gone {
				list = append(list, Want{Path: f.path, Unlocks: "volts, and where charging begins", Part: partVolts, Way: w.Name, Instead: (begun || whole) && !w.Begun})
			}
		}
	}
	return list
}

// toVolts is the field to go to where the volts are missing: the next of the way that was begun, or the
// first of one that is open. An old winding of which nothing is given, although the rotor or a trial
// is, was skipped.
func toVolts(j *job.Job) string {
	ways := WaysToVolts(j)
	for _, w := range ways {
		if w.Begun && !w.Whole {
			return w.next()
		}
	}
	passed := j.Old.Gone() || j.Field.Kind != "" || len(j.Trials) > 0 && j.Trials[0].Turns.Given()
	switch {
	case oldIsTold(j) && len(j.Spins) == 0 && !j.Old.Gone():
		return ways[0].next()
	case oldIsTold(j) || passed && j.Field.Kind != job.FieldMagnets:
		return "coil[0].turns"
	case passed:
		return "field.remanence"
	}
	return "old.turns"
}
