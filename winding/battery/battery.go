// Package battery says at what voltages and currents a battery is charged, by its chemistry and number
// of cells, what its own resistance and its cable's are, and which fuse belongs at its post.
//
// The figures are starting points for a bench, each with its source; the battery maker's data sheet
// takes precedence, and every figure can be given instead. The package does not model charging over
// time.
package battery

import (
	"errors"
	"fmt"
	"math"
	"strings"
)

// Chemistry is the kind of battery.
type Chemistry int

// The chemistries.
const (
	Flooded Chemistry = iota // lead-acid with liquid acid
	AGM                      // lead-acid, acid in glass mat
	Gel                      // lead-acid, acid in gel
	LFP                      // lithium iron phosphate
	Custom                   // voltages given by the person
)

var names = [...]string{"flooded", "agm", "gel", "lfp", "custom"}

// String is the word for it, as a job file writes it.
func (c Chemistry) String() string {
	if c < 0 || int(c) >= len(names) {
		return fmt.Sprintf("chemistry %d", int(c))
	}
	return names[c]
}

// Chemistries lists them all.
func Chemistries() []Chemistry { return []Chemistry{Flooded, AGM, Gel, LFP, Custom} }

// ParseChemistry reads the word for a chemistry, in any case.
func ParseChemistry(text string) (Chemistry, error) {
	for i, n := range names {
		if strings.EqualFold(strings.TrimSpace(text), n) {
			return Chemistry(i), nil
		}
	}
	return Flooded, fmt.Errorf("battery chemistry: read %q, expected one of %s", text, strings.Join(names[:], ", "))
}

// Spec is a battery as a person gives it. Zero means not given.
type Spec struct {
	Chemistry       Chemistry
	Cells           int     // in series, 1 to 200
	CapacityAh      float64 // 0.001 to 1e5
	RestVolts       float64 // of the whole battery, as are the next two
	AbsorptionVolts float64
	FloatVolts      float64
	MaxChargeAmps   float64
	Ohms            float64 // inside the battery
}

// Level is one figure and its source.
type Level struct {
	Value  float64
	Source string
	Given  bool // by the person
}

// Limits are the levels for a kind of battery. A level of 0 is not known.
type Limits struct {
	RestVolts, AbsorptionVolts, FloatVolts Level
	MaxChargeAmps                          Level
	Ohms                                   Level
}

// cell is the levels of one cell of a chemistry.
type cell struct {
	rest, absorption, float float64 // V
	rate                    float64 // charge limit, A per Ah
	ohmAh                   float64 // ohms of a cell times Ah
	cells12                 int     // in a "12 V" battery
	volts, current          string  // sources
}

const (
	sourceLead    = "lead-acid at 25 °C, 2.25-2.30 V float and 2.40-2.45 V absorption a cell (Remco battery guide); rest 2.10 V a cell is a charged one (from memory)"
	sourceAGM     = "lead-acid at 25 °C, 2.25-2.30 V float and 2.40-2.45 V absorption a cell (Remco battery guide); rest 2.13 V a cell is a charged one in glass mat (from memory)"
	sourceLeadMax = "lead-acid, at most 0.3 A for each Ah at first (Remco battery guide)"
	sourceGel     = "gel, 2.25 V float and 2.35 V absorption a cell (from memory)"
	sourceLFP     = "12.8 V lithium iron phosphate, 14.2 V absorption and 13.5 V float (a maker's guide); rest 3.30 V a cell (from memory)"
	sourceLFPMax  = "lithium iron phosphate at 25 to 50 °C, 0.5 A for each Ah (maker's manual, APL48-50LFP)"
	sourceGiven   = "given"
	sourceNone    = "not given, and a custom battery has no usual one"
	sourceOhms    = "typical of its size, a guess (common practice, no source)"
)

var cells = map[Chemistry]cell{
	Flooded: {2.10, 2.42, 2.27, 0.2, 0.08, 6, sourceLead, "flooded lead-acid, 0.2 A for each Ah, below the 0.3 of " + sourceLeadMax},
	AGM:     {2.13, 2.42, 2.27, 0.3, 0.06, 6, sourceAGM, sourceLeadMax},
	Gel:     {2.13, 2.35, 2.25, 0.2, 0.08, 6, sourceGel, "gel, 0.2 A for each Ah (from memory)"},
	LFP:     {3.30, 3.55, 3.375, 0.5, 0.05, 4, sourceLFP, sourceLFPMax},
	Custom:  {volts: sourceNone, current: sourceNone},
}

// CellsOf12V is the number of cells of a "12 V" battery of a chemistry, 0 for custom.
func CellsOf12V(c Chemistry) int { return cells[c].cells12 }

// Levels fills in what was not given, per cell times cells; the internal resistance goes with cells
// over capacity and is a guess. The error wraps ErrSpec and says what is out of range, which voltage is
// out of order, or that a custom battery needs its rest voltage.
func Levels(s Spec) (Limits, error) {
	if err := s.check(); err != nil {
		return Limits{}, err
	}
	c, n := cells[s.Chemistry], float64(s.Cells)
	l := Limits{
		RestVolts:       pick(s.RestVolts, c.rest*n, c.volts),
		AbsorptionVolts: pick(s.AbsorptionVolts, c.absorption*n, c.volts),
		FloatVolts:      pick(s.FloatVolts, c.float*n, c.volts),
		MaxChargeAmps:   pick(s.MaxChargeAmps, c.rate*s.CapacityAh, c.current),
		Ohms:            pick(s.Ohms, 0, sourceOhms),
	}
	if s.Ohms == 0 && s.CapacityAh > 0 {
		l.Ohms.Value = n * c.ohmAh / s.CapacityAh
	}
	if l.RestVolts.Value >= l.AbsorptionVolts.Value && l.AbsorptionVolts.Value > 0 {
		return Limits{}, fmt.Errorf("%w: rest voltage: read %.2f V, expected below the absorption voltage of %.2f V", ErrSpec, l.RestVolts.Value, l.AbsorptionVolts.Value)
	}
	if l.FloatVolts.Value > l.AbsorptionVolts.Value && l.AbsorptionVolts.Value > 0 {
		return Limits{}, fmt.Errorf("%w: float voltage: read %.2f V, expected no more than the absorption voltage of %.2f V", ErrSpec, l.FloatVolts.Value, l.AbsorptionVolts.Value)
	}
	return l, nil
}

// ErrSpec is wrapped by the errors about a battery.
var ErrSpec = errors.New("battery")

// smallestAh is the smallest battery, a coin cell.
const smallestAh = 0.001

func (s Spec) check() error {
	if s.Chemistry < Flooded || s.Chemistry > Custom {
		return fmt.Errorf("%w: chemistry: read %d, expected one of %s", ErrSpec, int(s.Chemistry), strings.Join(names[:], ", "))
	}
	if s.Chemistry != Custom && (s.Cells < 1 || s.Cells > 200) {
		return fmt.Errorf("%w: cells: read %d, expected 1 to 200", ErrSpec, s.Cells)
	}
	for _, v := range [...]struct {
		name  string
		value float64
	}{{"capacity, Ah", s.CapacityAh}, {"rest voltage", s.RestVolts}, {"absorption voltage", s.AbsorptionVolts},
		{"float voltage", s.FloatVolts}, {"charge limit, A", s.MaxChargeAmps}, {"ohms", s.Ohms}} {
		if !(v.value >= 0 && v.value <= 1e5) {
			return fmt.Errorf("%w: %s: read %g, expected 0 (not given) to 100000", ErrSpec, v.name, v.value)
		}
	}
	if s.CapacityAh > 0 && s.CapacityAh < smallestAh {
		return fmt.Errorf("%w: capacity, Ah: read %g, expected 0 (not given) or %g and up", ErrSpec, s.CapacityAh, smallestAh)
	}
	if s.Chemistry == Custom && s.RestVolts == 0 {
		return fmt.Errorf("%w: rest voltage: read nothing, expected volts; a custom battery needs it", ErrSpec)
	}
	return nil
}

func pick(given, table float64, source string) Level {
	if given > 0 {
		return Level{given, sourceGiven, true}
	}
	return Level{table, source, false}
}

// NominalVolts is the nominal voltage: 2 V per cell of lead, 3.2 V of lithium iron phosphate; 0 for one
// whose chemistry is not known. Common practice, no source.
func (s Spec) NominalVolts() float64 {
	switch s.Chemistry {
	case Flooded, AGM, Gel:
		return 2 * float64(s.Cells)
	case LFP:
		return 3.2 * float64(s.Cells)
	}
	return 0
}

// Usual reports whether batteries of so many volts are common: one cell, and those called 6,
// 12, 24, 36 and 48 V, of lead or of four, eight, twelve, fifteen or sixteen cells of lithium
// iron phosphate. Common practice, no source.
func Usual(volts float64) bool {
	for _, v := range []float64{2, 3.2, 6, 12, 24, 36, 48, 12.8, 25.6, 38.4, 51.2} {
		if math.Abs(volts-v) < 0.01 {
			return true
		}
	}
	return false
}
