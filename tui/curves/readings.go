package curves

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// hasCurve reports whether a trial has something to draw.
func hasCurve(t *winding.TrialOutcome) bool {
	return len(t.Curve) > 1 && t.Curve[len(t.Curve)-1].RPM > 0
}

// whyNone says why a trial has no curve.
func whyNone(t *winding.TrialOutcome) string {
	if t.NoCharging != "" {
		return t.NoCharging
	}
	return "needs a speed of the drive"
}

// endOf is the speed at which the curves end, 0 when there is none.
func endOf(s *session.Session) float64 {
	end := 0.0
	for i := range s.Outcome().Trials {
		if t := &s.Outcome().Trials[i]; hasCurve(t) {
			end = max(end, t.Curve[len(t.Curve)-1].RPM)
		}
	}
	return end
}

// cursor is the cursor's speed, within the curves.
func (v *View) cursor(s *session.Session) float64 {
	end := endOf(s)
	switch usual := s.Outcome().Machine.UsualRPM; {
	case !math.IsNaN(v.rpm):
		return max(0, min(v.rpm, end))
	case usual.Known():
		return max(0, min(usual.Value, end))
	}
	return end
}

// pointAt is a trial at a speed: the outcome's own point where it has one there, so that one figure is
// never shown in two ways, else the bench's.
func pointAt(s *session.Session, trial int, rpm float64) (winding.RunPoint, bool) {
	t := &s.Outcome().Trials[trial]
	if !hasCurve(t) {
		return winding.RunPoint{}, false
	}
	for _, p := range t.Curve {
		if p.RPM == rpm {
			return p, true
		}
	}
	for i := range t.Operating {
		if t.Operating[i].RPM == rpm {
			return t.Operating[i].RunPoint, true
		}
	}
	p, why := s.Bench().RunAt(trial, rpm)
	return p, why == ""
}

// speed is one of the job's own speeds.
type speed struct {
	name string
	rpm  float64
}

// short is the name where room is short: the last of several, without the test's.
func (sp speed) short() string {
	names := strings.Split(sp.name, "=")
	if n := len(names); n > 1 && names[n-1] == test {
		names = names[:n-1]
	}
	return names[len(names)-1]
}

// leaves is the squeeze from which on it is left out.
func (sp speed) leaves() int {
	if sp.name == test {
		return withoutTest
	}
	return 0
}

// test is the name of the speed of the test.
const test = "test"

// speedsOf are the job's speeds, lowest first; those that are the same are one.
func speedsOf(s *session.Session, withTest bool) []speed {
	m := s.Outcome().Machine
	var list []speed
	add := func(name string, f quantity.Figure) {
		if !f.Known() {
			return
		}
		for i := range list {
			if list[i].rpm == f.Value {
				list[i].name += "=" + name
				return
			}
		}
		list = append(list, speed{name, f.Value})
	}
	add("slow", m.SlowRPM)
	add("usual", m.UsualRPM)
	add("top", m.TopRPM)
	if withTest {
		add(test, m.TestRPM)
	}
	slices.SortStableFunc(list, func(a, b speed) int { return cmp.Compare(a.rpm, b.rpm) })
	return list
}

// marks are the speeds that matter, lowest first, none twice.
func marks(s *session.Session) []float64 {
	var list []float64
	end := endOf(s)
	add := func(f quantity.Figure) {
		if f.Known() && f.Value >= 0 && f.Value <= end {
			list = append(list, f.Value)
		}
	}
	for i := range s.Outcome().Trials {
		t := &s.Outcome().Trials[i]
		if hasCurve(t) {
			add(t.CutInRPM)
			add(t.CrossRPM)
			add(t.TargetRPM)
			add(t.LimitRPM)
			add(t.RunsUsual)
		}
	}
	for _, sp := range speedsOf(s, true) {
		add(quantity.Figure{Value: sp.rpm, Origin: quantity.Derived})
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// letters are one character for every trial: the first of its name, or digits when those are not all
// different or not one cell wide.
func letters(s *session.Session) []string {
	trials := s.Outcome().Trials
	out := make([]string, len(trials))
	seen := map[string]bool{}
	for i, t := range trials {
		first, _ := utf8.DecodeRuneInString(t.Name)
		out[i] = strings.ToUpper(string(first))
		if t.Name == "" || kit.Width(out[i]) != 1 || seen[out[i]] {
			for k := range out {
				out[k] = string(rune('1' + k))
			}
			return out
		}
		seen[out[i]] = true
	}
	return out
}

// overLimit reports whether the bridge's current at a point exceeds the trial's limit.
func overLimit(t *winding.TrialOutcome, p winding.RunPoint) bool {
	return t.PassedIn(&p)
}

// tooWarm reports whether the winding's mean is past what its class allows there, or has no steady
// value.
func tooWarm(s *session.Session, p winding.RunPoint) bool {
	limit := s.Outcome().Machine.MeanLimitC.Value
	return p.TooHot || p.WindingC > limit
}
