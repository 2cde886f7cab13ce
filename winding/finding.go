package winding

// Severity is how much a finding weighs.
type Severity int

const (
	// Note is worth knowing.
	Note Severity = iota
	// Doubt is a value or a result that is probably not meant, or will not do.
	Doubt
	// Broken is a limit passed, an impossibility, or a winding that leaves the battery nothing in the
	// usual condition: not one to wind.
	Broken
)

// String is the word for it.
func (s Severity) String() string {
	switch s {
	case Broken:
		return "broken"
	case Doubt:
		return "doubt"
	default:
		return "note"
	}
}

// MarshalText makes JSON carry the word.
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Finding is something worth telling about the job: what, where, by how much, what to change.
type Finding struct {
	Severity Severity `json:"severity"`
	// Path is the field it is about, as in the job file: "trial[1].gauge".
	Path string `json:"path,omitempty"`
	// Trial is the trial's name, "" when it is about the job.
	Trial string `json:"trial,omitempty"`
	Text  string `json:"text"`
	Fix   string `json:"fix,omitempty"`
	// Source is the source of the rule.
	Source string `json:"source,omitempty"`
	// NoUse says that the trial leaves nothing for its load where it runs most of the time: it can be
	// wound, but time and copper would be wasted.
	NoUse bool `json:"-"`
	// Past says that the winding passes its own current limit where the drive takes it.
	Past bool `json:"-"`
	// Danger says that a person can be hurt by it.
	Danger bool `json:"-"`
	// First says that it has to be settled before anything else: with it every figure of how a winding
	// runs may change.
	First bool `json:"-"`
	// Short says that less comes than is wanted.
	Short bool `json:"-"`
}
