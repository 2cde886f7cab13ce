package wiretable

// Build is the thickness of the enamel: of ANSI/NEMA MW 1000 (single, heavy, triple) or of IEC
// 60317-0-1 (grades 1 to 3). The zero value is Heavy, the usual choice for a rewind (common practice,
// no source).
type Build uint8

// The builds.
const (
	Heavy Build = iota
	Single
	Triple
	Grade1
	Grade2
	Grade3
	// BareWire has no enamel: overall and bare diameter are the same.
	BareWire
	buildCount
)

var buildNames = [buildCount]string{"heavy", "single", "triple", "grade 1", "grade 2", "grade 3", "bare"}

// Builds lists every build in the order in which they are offered.
func Builds() []Build {
	return []Build{Single, Heavy, Triple, Grade1, Grade2, Grade3, BareWire}
}

// String is the word for the file and the screen: "heavy", "grade 2", "bare".
func (b Build) String() string {
	if b >= buildCount {
		return "unknown build"
	}
	return buildNames[b]
}

// MarshalText writes String.
func (b Build) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// UnmarshalText reads what ParseBuild reads; empty text is Heavy.
func (b *Build) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*b = Heavy
		return nil
	}
	read, err := ParseBuild(string(text))
	if err != nil {
		return err
	}
	*b = read
	return nil
}

// ParseBuild reads a build: "heavy", "Grade 2", "grade2", "G2", "bare". The
// error is a *ParseError.
func ParseBuild(text string) (Build, error) {
	switch squash(text) {
	case "heavy", "heavybuild", "double", "doublebuild":
		return Heavy, nil
	case "single", "singlebuild":
		return Single, nil
	case "triple", "triplebuild":
		return Triple, nil
	case "grade1", "g1", "gr1":
		return Grade1, nil
	case "grade2", "g2", "gr2":
		return Grade2, nil
	case "grade3", "g3", "gr3":
		return Grade3, nil
	case "bare", "barewire", "none":
		return BareWire, nil
	}
	return Heavy, &ParseError{
		Read:     clip(text),
		Expected: "an enamel build",
		Fix:      "write single, heavy, triple, grade 1, grade 2, grade 3 or bare",
	}
}
