package winding_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sum works out a formula as someone with a pocket calculator would: numbers, + − × /, squares, √ and
// parentheses; units are skipped. ok is false where it contains a word.
type sum struct {
	text string
	ok   bool
}

var (
	unitWords = regexp.MustCompile(`(Ω·mm²/m|A/mm²|kg/cm³|K/W|°C|mm²|mWb|rpm|mm|Hz|Ω|°|\bV\b|\bA\b|\bW\b|\bm\b|\bkg\b|\bmH\b)`)
	sumNumber = regexp.MustCompile(`^\d+(\.\d+)?(e-?\d+)?`)
)

func evaluate(text string) (float64, bool) {
	text = strings.NewReplacer(" ", "", "π", "3.14159265", "√2", "1.41421356").Replace(unitWords.ReplaceAllString(text, ""))
	s := &sum{text, true}
	v := s.plus()
	return v, s.ok && s.text == ""
}

func (s *sum) take(sign string) bool {
	rest, found := strings.CutPrefix(s.text, sign)
	s.text = rest
	return found
}

func (s *sum) plus() float64 {
	v := s.times()
	for {
		switch {
		case s.take("+"):
			v += s.times()
		case s.take("−"):
			v -= s.times()
		default:
			return v
		}
	}
}

func (s *sum) times() float64 {
	v := s.square()
	for {
		switch {
		case s.take("×"):
			v *= s.square()
		case s.take("/"):
			v /= s.square()
		default:
			return v
		}
	}
}

func (s *sum) square() float64 {
	v := 0.0
	if s.take("√") {
		v = math.Sqrt(s.square())
	} else if s.take("(") {
		v = s.plus()
		s.ok = s.ok && s.take(")")
	} else if n := sumNumber.FindString(s.text); n != "" {
		s.text = s.text[len(n):]
		v, _ = strconv.ParseFloat(n, 64)
	} else {
		s.ok = false
	}
	if s.take("²") {
		v *= v
	}
	return v
}

// Working out a formula with the numbers written in it gives the figure that is shown, in every stored
// job.
func TestTheNumbersOfAFormulaGiveTheFigure(t *testing.T) {
	for text, want := range map[string]float64{"= (12.60 V + 2 × 0.75 V) / 0.01": 1410, "9 × (2 mm)² / 4 mm²": 9, "25 °C + 0.5 K/W × (10 W − 4 W)": 28, "√(50 W / 2 Ω) / 2": 2.5, "6 A / √9.000": 2} {
		v, ok := evaluate(strings.TrimPrefix(text, "= "))
		require.True(t, ok, text)
		assert.InEpsilon(t, want, v, 1e-9, text)
	}
	worked := map[string]int{}
	for name, w := range everyWorked(t) {
		o := &w.outcome
		for i := range o.Trials {
			tr := &o.Trials[i]
			for _, f := range winding.Outputs() {
				figure := f.Of(tr)
				h := winding.HowOf(f.ID)
				text := h.Numbers(&w.job, &o.Machine, tr, quantity.Choice{})
				v, ok := evaluate(strings.TrimPrefix(text, "= "))
				if !figure.Known() || text == "" || !ok || math.IsNaN(v) {
					continue
				}
				worked[f.ID]++
				want := figure.Value
				if f.ID == "turns_that_fit" {
					v = math.Floor(v + 0.02)
					assert.InDelta(t, want, v, 1, "%s %s %s: %s", name, tr.Name, f.ID, text)
					continue
				}
				if f.Dim[0].Name == "%" {
					want, v = 100*want, 100*v
				}
				if f.ID == "volts_phase_rms_per_rpm" {
					assert.InEpsilon(t, want, v, 0.35, "the flux's shape is left out: %s %s: %s", name, tr.Name, text)
					continue
				}
				// Amperes are written to hundredths, watts to tenths.
				last := map[string]float64{"A": 0.011, "W": 0.11}[f.Dim[0].Name]
				if f.ID == "efficiency_usual" {
					last = 100 * 0.11 / tr.Operating[1].DriveWatts
				}
				assert.InDelta(t, want, v, 0.006*math.Abs(want)+last+1e-4, "%s %s %s: %s", name, tr.Name, f.ID, text)
			}
		}
	}
	for _, id := range []string{"wire_fill", "turns_that_fit", "series_turns", "cut_in_rpm", "lead_ohms_20c", "phase_ohms_20c", "metal_kg", "wire_to_buy_kg",
		"limit_amps_dc", "volts_line_rms_per_1000rpm", "amps_dc_slow", "amps_dc_usual", "net_w_usual", "efficiency_usual", "winding_c_usual", "winding_c_top", "copper_fill", "volts_dc_open_top", "volts_phase_rms_per_rpm"} {
		assert.Greater(t, worked[id], 20, id)
	}
}
