// Package published reads the published tables in testdata, for tests. A table is CSV; its head is
// comment lines that give source, units and status, and the first row names the columns. Each row names
// its own source where they differ.
//
// It checks nothing itself and is part of no program: only tests import it.
package published

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"
)

// Row is a row, by column name.
type Row map[string]string

// Rows reads a table of the module's testdata folder, "layout/winding_factors.csv". It
// fails the test when there is none or it has no row.
func Rows(t testing.TB, name string) []Row {
	t.Helper()
	_, here, _, _ := runtime.Caller(0)
	path := filepath.Join(filepath.Dir(here), "..", "..", "testdata", filepath.FromSlash(name))
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	if len(lines) < 2 {
		t.Fatalf("%s: no rows", path)
	}
	rows := make([]Row, 0, len(lines)-1)
	for _, line := range lines[1:] {
		row := Row{}
		for i, column := range lines[0] {
			row[column] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}

// Number is a column as a number; the test fails when it is not one.
func (r Row) Number(t testing.TB, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("column %s: %v in %v", column, err, r)
	}
	return v
}

// Whole is a column as a whole number.
func (r Row) Whole(t testing.TB, column string) int {
	t.Helper()
	v, err := strconv.Atoi(r[column])
	if err != nil {
		t.Fatalf("column %s: %v in %v", column, err, r)
	}
	return v
}

// Inputs reads the numbers of a column such as "poles=12;rpm=600;pitch=5/6"; what is not a
// number is left out.
func (r Row) Inputs(column string) map[string]float64 {
	m := map[string]float64{}
	for _, part := range strings.Split(r[column], ";") {
		key, value, _ := strings.Cut(strings.TrimSpace(part), "=")
		if v, ok := quotient(value); ok {
			m[key] = v
		}
	}
	return m
}

// quotient reads "12" and "5/6".
func quotient(text string) (float64, bool) {
	top, bottom, ok := strings.Cut(text, "/")
	a, err := strconv.ParseFloat(top, 64)
	if err != nil || !ok {
		return a, err == nil
	}
	b, err := strconv.ParseFloat(bottom, 64)
	return a / b, err == nil && b != 0
}
