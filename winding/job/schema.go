package job

import (
	"slices"
	"strings"

	"slotwright/winding/quantity"
)

// Kind is what may stand in a field.
type Kind int

const (
	// Number is a quantity with a unit, possibly guessed, possibly with ±.
	Number Kind = iota
	// Whole is a number without a fraction.
	Whole
	// Word is one of a few words.
	Word
	// Text is anything.
	Text
	// Wire is a gauge or a measured diameter.
	Wire
	// List is a few whole numbers.
	List
)

// Input is one field of the job file, something a person may give: its key, what it means, how to find
// it, what is allowed. The reader, the template of a new file, the form on the screen and the card's
// list of inputs all use this table, so that none can know a field the others do not.
type Input struct {
	Table string // the file's table, "" at the top
	Name  string // the key without its unit
	Label string // for the screen and the card
	Kind  Kind
	Dim   quantity.Dimension
	// Min and Max are the limits of what is possible at all, in the base unit.
	Min, Max float64
	// Allowed are the only values allowed, where the limits are not enough.
	Allowed []float64
	Words   []string
	// Help says in a line what it is; How, how to measure it or where to read it.
	Help, How string
	// Default is what is used when the field is empty, where that is the same for every job; nil where
	// there is none. Ghost says in words what is used where it is computed, or that nothing is. Empty
	// is the text of either.
	Default *Default
	Ghost   string
	// round is the default in a job whose coils lie round one tooth each, nil where it is the usual
	// one.
	round *Default
	// magnets is set where the field describes the magnets of a rotor.
	magnets bool
	// when says whether the field has a meaning in this job; nil is always.
	when func(*Job) bool
	// at is where the value lives; i counts in a table that comes many times.
	at func(j *Job, i int) any
	// typed is where a value is also kept as typed; nil where its number is enough.
	typed func(j *Job) *string
	// pairs is where the readings of each pair of leads are kept, where several may be given; nil
	// elsewhere.
	pairs func(j *Job, i int) *[]float64
	// step is where the last digit of such readings is kept.
	step func(j *Job, i int) *float64
}

// Applies reports whether the field has a meaning for this job: the diameter of a
// wind rotor has none for pedals.
func (f *Input) Applies(j *Job) bool { return f.when == nil || f.when(j) }

// OfMagnets reports whether the field describes the magnets of a rotor, which have a meaning beside a
// wound one too: they may replace it.
func (f *Input) OfMagnets() bool { return f.magnets }

// Keys lists the ways to write the field's key, the base unit's first.
func (f *Input) Keys() []string {
	if f.Kind != Number {
		return []string{f.Name}
	}
	keys := make([]string, len(f.Dim))
	for i, u := range f.Dim {
		keys[i] = f.key(u)
	}
	return keys
}

// key is the field's key with a unit.
func (f *Input) key(u quantity.Unit) string {
	if u.Suffix == "" {
		return f.Name
	}
	return f.Name + "_" + u.Suffix
}

// Path is the field's place, without a unit: "machine.bore".
func (f *Input) Path() string { return join(f.Table, f.Name) }

// Table is one table of the job file.
type Table struct {
	Name  string
	Title string
	// Most is how often it may come; 1 for a plain table.
	Most int
	Help string
	// grow makes room for entry i and returns how many there are.
	grow func(j *Job, n int)
}

// Many reports whether the table comes as [[name]].
func (t *Table) Many() bool { return t.Most > 1 }

// MaxTrials is the most candidate windings side by side.
const MaxTrials = 4

// Tables is the file's tables in their order.
var Tables = []Table{
	{Name: "", Title: "The job", Most: 1},
	{Name: "machine", Title: "The machine", Most: 1, Help: "The iron, as counted and measured."},
	{Name: "slot", Title: "The slot", Most: 1, Help: "One slot, measured at the iron with the old wire and paper out."},
	{Name: "old", Title: "Old winding", Most: 1, Help: "What came out of the slots, and what the plate said. Count before you cut."},
	{Name: "spin", Title: "Spin-up reading", Most: 24, Help: "Open-circuit volts between two leads of the OLD winding at a speed.",
		grow: func(j *Job, n int) { j.Spins = make([]SpinReading, n) }},
	{Name: "short", Title: "Short-circuit reading", Most: 24, Help: "Amps in a lead of the OLD winding with all its leads joined, at a speed.",
		grow: func(j *Job, n int) { j.Shorts = make([]ShortReading, n) }},
	{Name: "amps", Title: "Amps reading", Most: 24, Help: "Amps of the OLD winding into a battery at a speed: just above where it begins to charge, and as fast as it goes, tell most.",
		grow: func(j *Job, n int) { j.Amps = make([]AmpsReading, n) }},
	{Name: "coil", Title: "Trial coil", Most: 24, Help: "Known turns of any wire laid into the bare iron, and its volts at a speed: the flux, where the old winding is gone.",
		grow: func(j *Job, n int) { j.Coils = make([]CoilReading, n) }},
	{Name: "field", Title: "What makes the flux", Most: 1, Help: "A wound rotor and its current, or magnets."},
	{Name: "drive", Title: "What turns it", Most: 1, Help: "The drive, and what lies between it and the alternator."},
	{Name: "drive_point", Title: "Drive power curve", Most: 40, Help: "What the drive can give at a speed of its own shaft. Two points or more.",
		grow: func(j *Job, n int) { j.Drive.Points = make([]PowerPoint, n) }},
	{Name: "battery", Title: "What it charges", Most: 1, Help: "Battery, cable and diodes."},
	{Name: "target", Title: "What is wanted", Most: 1, Help: "The speeds that matter and the amps wanted."},
	{Name: "trial", Title: "Trial winding", Most: MaxTrials, Help: "A candidate winding. Up to four stand side by side.",
		grow: func(j *Job, n int) { j.Trials = make([]Trial, n) }},
	{Name: "wound", Title: "As wound", Most: 24, Help: "What was really put in, and what it read. It stands beside the plan, which stays as it was.",
		grow: func(j *Job, n int) { j.AsWound = make([]AsWound, n) }},
}

// TableOf finds a table by name.
func TableOf(name string) (*Table, bool) {
	i := slices.IndexFunc(Tables, func(t Table) bool { return t.Name == name })
	if i < 0 {
		return nil, false
	}
	return &Tables[i], true
}

// Fields is every field of the file, in order.
var Fields = slices.Concat(topFields, machineFields, slotFields, oldFields, spinFields, shortFields, ampsFields, coilFields, fieldFields,
	driveFields, batteryFields, targetFields, trialFields, recordFields)

// byTable and byKey index Fields for reading.
var (
	byTable = make(map[string][]*Input, len(Tables))
	byKey   = make(map[string]keyed, 2*len(Fields))
	byPath  = make(map[string]*Input, len(Fields))
)

// keyed is a field with the unit that a key of it ends with.
type keyed struct {
	field *Input
	unit  *quantity.Unit // one of the field's dimension
}

func init() {
	for i := range Fields {
		f := &Fields[i]
		if f.Dim == nil {
			f.Dim = quantity.None
		}
		byTable[f.Table] = append(byTable[f.Table], f)
		byPath[f.Path()] = f
		if f.Kind != Number {
			byKey[f.Path()] = keyed{f, &f.Dim[0]}
			continue
		}
		for k := range f.Dim {
			byKey[join(f.Table, f.key(f.Dim[k]))] = keyed{f, &f.Dim[k]}
		}
	}
}

// InputsOf is the fields of a table in order.
func InputsOf(table string) []*Input { return byTable[table] }

// goesOn begins the label of a field that continues one above it: "… at" under "Lead to lead".
const goesOn = "… "

// WholeLabel is the label where the fields above are not visible: "Lead to lead, at".
func (in *Input) WholeLabel() string {
	rest, on := strings.CutPrefix(in.Label, goesOn)
	if !on {
		return in.Label
	}
	whole := rest
	for _, above := range InputsOf(in.Table) {
		if above == in {
			break
		}
		if !strings.HasPrefix(above.Label, goesOn) {
			whole = above.Label + ", " + rest
		}
	}
	return whole
}

// InputAt finds a field by its path; "trial[1].turns" finds the turns of any trial.
func InputAt(path string) (*Input, bool) {
	f, ok := byPath[Unindexed(path)]
	return f, ok
}

// join makes a path of a table and a key.
func join(table, key string) string {
	if table == "" {
		return key
	}
	return table + "." + key
}
