package kit

// Role says what a piece of text is; the theme decides what that looks like.
// Screens name roles, never colours.
type Role uint8

// The roles. Plain is the zero value: the terminal's own colours.
const (
	Plain    Role = iota
	Title         // headings, names of boxes
	Label         // the name of a value
	Value         // the value itself
	Unit          // its unit
	Hint          // help in one line, placeholders
	Warning       // doubtful: look again
	Broken        // a limit that is broken, an input that cannot be read
	Better        // better than the reference
	Worse         // worse than the reference
	Chosen        // the chosen one among several
	Focus         // where the keys go
	Dim           // less important at present
	Border        // box lines, axes
	Key           // a key's name in help and status line
	Measured      // read on the bench
	Derived       // follows from other values
	Guessed       // assumed, for lack of better
	Needed        // empty, and a figure waits for it
	Series1       // chart series, in order
	Series2
	Series3
	Series4
	Series5
	Series6
	PhaseU // winding phases
	PhaseV
	PhaseW
	roleCount
)

// seriesCount is how many series roles there are.
const seriesCount = int(Series6-Series1) + 1

// Series returns the role of the i-th series, counted from 0; it repeats after
// the last. A negative i counts as 0.
func Series(i int) Role {
	if i < 0 {
		i = 0
	}
	return Series1 + Role(i%seriesCount)
}

// Phase returns the role of the i-th phase, 0 for U; it repeats after W. A
// negative i counts as 0.
func Phase(i int) Role {
	if i < 0 {
		i = 0
	}
	return PhaseU + Role(i%3)
}
