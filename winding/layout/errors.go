package layout

import (
	"errors"
	"fmt"
	"strings"
)

// ErrSpec is wrapped by every error about a [Spec] or a coil list.
var ErrSpec = errors.New("layout")

// SpecError says why such a layout does not exist. Its text ends with the nearest ones that do.
type SpecError struct {
	Spec Spec
	Why  string // what was read, what was expected
}

// errorf makes a SpecError.
func (s Spec) errorf(format string, args ...any) error {
	return &SpecError{Spec: s, Why: fmt.Sprintf(format, args...)}
}

// problemf makes an error about what was read, where no other layout is the remedy.
func problemf(format string, args ...any) error {
	return fmt.Errorf("%w: "+format, append([]any{ErrSpec}, args...)...)
}

// Unwrap makes errors.Is(err, ErrSpec) true.
func (e *SpecError) Unwrap() error { return ErrSpec }

// Error is the reason and the nearest layouts that work.
func (e *SpecError) Error() string {
	near := e.Nearest()
	if len(near) == 0 {
		return "layout: " + e.Why
	}
	words := make([]string, len(near))
	for i, s := range near {
		words[i] = s.difference(e.Spec)
	}
	return "layout: " + e.Why + "; nearest that work: " + strings.Join(words, ", or ")
}

// difference names what in s differs from the spec that it replaces.
func (s Spec) difference(from Spec) string {
	var parts []string
	add := func(now, then int, unit string) {
		if now != then {
			parts = append(parts, fmt.Sprintf("%d %s", now, unit))
		}
	}
	add(s.Slots, from.Slots, "slots")
	add(s.Poles, from.Poles, "poles")
	add(s.Phases, from.Phases, "phases")
	if s.Span != from.Span {
		parts = append(parts, fmt.Sprintf("span %d", s.Span))
	}
	add(s.Layers, from.Layers, "layers")
	if s.Kind != from.Kind {
		parts = append(parts, s.Kind.String())
	}
	if now, then := max(s.Sets, 1), max(from.Sets, 1); now != then {
		parts = append(parts, []string{"one set", "two sets"}[now-1])
	}
	if s.TwoThirds != from.TwoThirds {
		parts = append(parts, "every slot wound")
	}
	return strings.Join(parts, " with ")
}

// How far Nearest looks: slots and poles either way of what was asked.
const (
	nearSlots = 24
	nearPoles = 16
)

// Nearest is up to six layouts that work, each a small change to the spec: the span, the layers, the
// kind or sets, the slots below and above, the poles below and above. Empty when the numbers are so far
// out that nothing is near.
func (e *SpecError) Nearest() []Spec {
	base, ok := e.Spec.tidied()
	if !ok {
		return nil
	}
	var found []Spec
	add := func(s Spec) bool {
		s, ok := s.withNearSpan()
		if ok && s != e.Spec {
			found = append(found, s)
		}
		return ok
	}
	if add(base) {
		return found
	}
	other := base
	other.Layers, other.Kind = 2, Lap
	if other == base || !add(other) {
		other.Sets = 1
		if base.Sets == 2 {
			add(other)
		}
	}
	for _, dir := range [2]int{-1, 1} {
		for d := 1; d <= nearSlots; d++ {
			s := base
			if s.Slots += dir * d; add(s) {
				break
			}
		}
	}
	for _, dir := range [2]int{-1, 1} {
		for d := 1; d <= nearPoles/2; d++ {
			s := base
			if s.Poles += dir * 2 * d; add(s) {
				break
			}
		}
	}
	return found
}

// tidied brings numbers that are just out of range back into it; false when the spec is too far out for
// a nearest layout to mean anything.
func (s Spec) tidied() (Spec, bool) {
	if s.Slots < 2 || s.Slots > MaxSlots || s.Poles < 1 || s.Poles > MaxPoles {
		return s, false
	}
	s.Poles += s.Poles % 2
	if s.Phases < 1 || s.Phases > 3 {
		s.Phases = 3
	}
	if s.Layers != 1 {
		s.Layers = 2
	}
	if s.Kind < Lap || s.Kind > Wave {
		s.Kind = Lap
	}
	s.Sets = max(1, min(s.Sets, 2))
	if s.Phases != 3 {
		s.Sets = 1
	}
	if s.Phases != 1 {
		s.TwoThirds = false
	}
	s.Span = max(1, min(s.Span, s.Slots-1))
	return s, true
}

// withNearSpan finds the span nearest to the one asked, or to the pole pitch,
// with which the spec works.
func (s Spec) withNearSpan() (Spec, bool) {
	if s.checkRange() != nil || (s.thirds() && !Balanced(s.Slots, s.Poles, 3)) {
		return s, false
	}
	pitch := max(1, s.Slots/s.Poles)
	for _, centre := range [2]int{s.Span, pitch} {
		for d := 0; d <= 4; d++ {
			for _, span := range [2]int{centre - d, centre + d} {
				try := s
				try.Span = span
				if _, err := New(try); err == nil {
					return try, true
				}
			}
		}
	}
	return s, false
}
