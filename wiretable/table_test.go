package wiretable

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tableRow is one row of a reference table by column name.
type tableRow map[string]string

// readTable reads a reference table of testdata/wire; its head gives the source of the figures.
func readTable(t *testing.T, name string) []tableRow {
	t.Helper()
	file, err := os.Open("../testdata/wire/" + name)
	require.NoError(t, err)
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	records, err := reader.ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(records), 20)
	var rows []tableRow
	for _, record := range records[1:] {
		row := tableRow{}
		for i, column := range records[0] {
			row[column] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

// printed gives the number in a cell and half its last digit; ok is false for
// an empty cell.
func (r tableRow) printed(t *testing.T, column string) (value, half float64, ok bool) {
	t.Helper()
	text, there := r[column]
	require.True(t, there, column)
	if text == "" {
		return 0, 0, false
	}
	value, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	half = 0.5
	if _, decimals, found := strings.Cut(text, "."); found {
		for range decimals {
			half /= 10
		}
		return value, half, true
	}
	for trimmed := strings.TrimRight(text, "0"); len(trimmed) < len(text); text = text[:len(text)-1] {
		half *= 10
	}
	return value, half, true
}

// agrees checks a figure against a printed cell to a share of half its last digit; floating-point
// rounding is tolerated.
func (r tableRow) agrees(t *testing.T, column string, got, share float64) bool {
	t.Helper()
	want, half, ok := r.printed(t, column)
	if ok {
		assert.InDelta(t, want, got, share*half*(1+1e-6), "%s of %v", column, r)
	}
	return ok
}

func mustParse(t *testing.T, text string) Gauge {
	t.Helper()
	g, err := Parse(text)
	require.NoError(t, err)
	return g
}
