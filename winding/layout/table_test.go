package layout

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"slotwright/winding/published"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every row of testdata/layout/winding_factors.csv; the column source names the sources. Rows without a
// balanced layout must be refused.
func TestPublishedWindingFactors(t *testing.T) {
	for _, row := range published.Rows(t, "layout/winding_factors.csv") {
		t.Run(row["id"], func(t *testing.T) {
			spec := Spec{
				Slots: row.Whole(t, "Q"), Poles: row.Whole(t, "poles"), Phases: row.Whole(t, "phases"),
				Span: row.Whole(t, "pitch"), Layers: row.Whole(t, "layers"),
			}
			l, err := New(spec)
			if row["balanced_3ph"] == "no" {
				// The book's pitch factor still holds: one phase has it too.
				spec.Phases = 1
				one, oneErr := New(spec)
				require.NoError(t, oneErr)
				assert.Empty(t, misprints(t, row, one))
				require.ErrorIs(t, err, ErrSpec)
				assert.ErrorContains(t, err, "no balanced three-phase layout")
				assert.ErrorContains(t, err, "nearest that work")
				return
			}
			require.NoError(t, err)
			for column, h := range map[string]int{"kw1": 1, "kw3": 3, "kw5": 5, "kw7": 7} {
				assert.InDelta(t, number(t, row[column]), l.Factor(h), 0.6e-5, column)
			}
			assert.InDelta(t, number(t, row["kp1"]), l.PitchFactor(1), 0.6e-5, "kp1")
			assert.Equal(t, row["kw1_published"] != "" && row["agree"] == "yes", publishedAgrees(t, row, l))
			assert.Equal(t, row["agree"] == "NO", len(misprints(t, row, l)) > 0, "%v", misprints(t, row, l))
		})
	}
	assert.Equal(t, map[string]int{"kp1": 13, "kd1": 20, "kw1": 42, "kd3": 1, "kd5": 1, "kw3": 1, "kw5": 1}, printedCells(t))
}

// printed is every factor that a source prints for a row, by name: kp1, kd1, kw1, and the
// harmonics as kd3=0.6667;kw5=0.2053.
func printed(row map[string]string) map[string]string {
	cells := map[string]string{"kp1": row["kp1_published"], "kd1": row["kd1_published"], "kw1": row["kw1_published"]}
	for _, cell := range strings.Split(row["harmonics_published"], ";") {
		name, value, _ := strings.Cut(cell, "=")
		cells[name] = value
	}
	for name, value := range cells {
		if value == "" {
			delete(cells, name)
		}
	}
	return cells
}

// printedCells counts the printed cells of the table, so that none is skipped.
func printedCells(t *testing.T) map[string]int {
	n := map[string]int{}
	for _, row := range published.Rows(t, "layout/winding_factors.csv") {
		for name := range printed(row) {
			n[name]++
		}
	}
	return n
}

// misprints are the printed factors that differ from ours by more than a unit of their last digit:
// three of the sources truncate the last digit instead of rounding it (WF019, WF020, WF037).
func misprints(t *testing.T, row map[string]string, l *Layout) (bad []string) {
	for name, text := range printed(row) {
		h, err := strconv.Atoi(name[2:])
		require.NoError(t, err)
		have := l.Factor(h)
		switch name[:2] {
		case "kp":
			have = l.PitchFactor(h)
		case "kd":
			have /= l.PitchFactor(h)
		}
		_, decimals, _ := strings.Cut(text, ".")
		if math.Abs(number(t, text)-have) >= math.Pow(10, -float64(len(decimals))) {
			bad = append(bad, name+" is printed "+text)
		}
	}
	return bad
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err, s)
	return v
}

// publishedAgrees compares kw1 with the printed value, to one and a half units of its last digit.
func publishedAgrees(t *testing.T, row map[string]string, l *Layout) bool {
	s := row["kw1_published"]
	if s == "" {
		return false
	}
	digits := len(s) - 2
	return math.Abs(number(t, s)-l.Factor(1)) < 0.75*math.Pow(10, -float64(digits))
}

// The slots of phase U in the table's column phase_A are those of our coil list up
// to turning the machine, mirroring it and changing all signs.
func TestPublishedSlotsOfPhaseU(t *testing.T) {
	checked := 0
	for _, row := range published.Rows(t, "layout/winding_factors.csv") {
		if row["phase_A"] == "" || row["phases"] != "3" {
			continue
		}
		spec := Spec{
			Slots: row.Whole(t, "Q"), Poles: row.Whole(t, "poles"), Phases: 3,
			Span: row.Whole(t, "pitch"), Layers: row.Whole(t, "layers"),
		}
		l, err := New(spec)
		require.NoError(t, err, row["id"])
		want := parseSlots(t, row["phase_A"], spec.Slots)
		allSides := spec.Layers == 1 && spec.Span > 1
		ours := make([][]int, 3)
		for _, c := range l.Coils() {
			if ours[c.Phase] == nil {
				ours[c.Phase] = make([]int, spec.Slots)
			}
			ours[c.Phase][c.Start-1] += c.Sense
			if allSides {
				ours[c.Phase][c.Finish-1] -= c.Sense
			}
		}
		assert.True(t, sameRing(ours[0], want), "%s: have %v, table %s", row["id"], ours[0], row["phase_A"])
		checked++
	}
	assert.Greater(t, checked, 100)
}

func parseSlots(t *testing.T, s string, slots int) []int {
	ring := make([]int, slots)
	for _, f := range strings.Fields(s) {
		n, err := strconv.Atoi(f)
		require.NoError(t, err)
		if n < 0 {
			ring[-n-1]--
		} else {
			ring[n-1]++
		}
	}
	return ring
}

// sameRing compares two rings up to turn, mirror and sign.
func sameRing(a, b []int) bool {
	n := len(a)
	for turn := range n {
		for _, dir := range [2]int{1, -1} {
			for _, sign := range [2]int{1, -1} {
				same := true
				for i := range n {
					if a[i] != sign*b[wrap(turn+dir*i, n)] {
						same = false
						break
					}
				}
				if same {
					return true
				}
			}
		}
	}
	return false
}
