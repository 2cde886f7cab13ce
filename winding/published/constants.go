package published

import "testing"

// Constant is a figure of the trade as a test knows it: what it is, the number written out, what the
// program uses, and the standard or book it is from; or that it is from memory, or common practice
// without a source, and then only this row guards it.
type Constant struct {
	What       string
	Want, Have float64
	Source     string
}

// Constants fails the test for every row in which the program uses another number, to the
// last bit, and for a row that does not say where it is from.
func Constants(t testing.TB, rows []Constant) {
	t.Helper()
	for _, c := range rows {
		if c.Have != c.Want {
			t.Errorf("%s: the program uses %v, the table of constants has %v (%s)", c.What, c.Have, c.Want, c.Source)
		}
		if c.Source == "" {
			t.Errorf("%s: no source", c.What)
		}
	}
}

// Words for figures that nobody printed.
const (
	Practice = "common practice, no source"
	Memory   = "from memory"
	Choice   = "our own choice: how finely something is worked out"
)
