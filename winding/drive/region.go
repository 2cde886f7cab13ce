package drive

// Region says how a wind rotor fares with its alternator in one wind.
type Region string

// The regions.
const (
	Still    Region = "still"    // it does not turn
	Idling   Region = "idling"   // it turns, below cut-in
	Charging Region = "charging" // as it should be
	Stalled  Region = "stalled"  // held far below its best tip-speed ratio
	Runaway  Region = "runaway"  // loaded too little: far above it, or not held at all
)

// Weak is the part of its best Cp below which a rotor counts as stalled or running away (our own
// choice: a fifth of the power lost).
const Weak = 0.8

// region names how the rotor fares at an alternator speed and a tip-speed ratio.
func (r Rotor) region(rpm, cutIn, lambda float64) Region {
	switch weak := r.Cp(lambda) < Weak*r.PeakCp; {
	case !(rpm > 0):
		return Still
	case rpm < cutIn:
		return Idling
	case weak && lambda < r.PeakLambda:
		return Stalled
	case weak:
		return Runaway
	}
	return Charging
}

// Remedy is a kind of change that would suit the rotor better.
type Remedy string

// The remedies.
const (
	FewerTurns    Remedy = "fewer turns"              // of thicker wire: cuts in later
	MoreTurns     Remedy = "more turns"               // cuts in earlier
	InLine        Remedy = "resistance in line"       // between alternator and battery: softer
	ChangeOver    Remedy = "star/delta change-over"   // star in light wind, delta in strong
	GearUp        Remedy = "gear up"                  // alternator faster
	GearDown      Remedy = "gear down"                // alternator slower
	LowResistance Remedy = "lower resistance"         // thicker wire, thicker cable: stiffer
	EasierStart   Remedy = "less to overcome at rest" // skewed magnets, lighter seals, more blade at the root
)

// Mend is a remedy and, where the balance gives it, a factor: on turns for FewerTurns and MoreTurns, on
// the ratio for GearUp and GearDown. 0 is not known.
type Mend struct {
	Remedy Remedy  `json:"remedy"`
	Factor float64 `json:"factor,omitempty"`
}

// Verdict is how an alternator suits a rotor over a year of winds.
type Verdict struct {
	// Region is the one that governs: Charging when it suits.
	Region Region `json:"region"`
	// Share is the part of the year's wind power in each region.
	Share map[Region]float64 `json:"share"`
	// The weakest winds, m/s, in which it turns, charges, is stalled, runs away and jumps;
	// 0 is in none.
	TurnsFrom    float64 `json:"turns_from_m_s"`
	ChargesFrom  float64 `json:"charges_from_m_s"`
	StartsFrom   float64 `json:"starts_from_m_s"` // charges from rest
	StallsFrom   float64 `json:"stalls_from_m_s"`
	RunsAwayFrom float64 `json:"runs_away_from_m_s"`
	JumpsAt      float64 `json:"jumps_at_m_s"`
	// EarlyCutIn is set when it is stalled, and the rotor at its best reaches cut-in in much less wind
	// than it should (below 0.6 of the year's mean, by a fifth and more): cut-in comes too early. If it
	// is stalled without that, the winding is too stiff.
	EarlyCutIn bool `json:"early_cut_in,omitempty"`
	// Mends are ordered by likelihood. None when it suits.
	Mends []Mend `json:"mends,omitempty"`
}

// Shares above which a region governs (our own choice), and the wind, as a part of the year's mean, in
// which a rotor at its best should reach cut-in (common practice, no source: 3 m/s for a mean of 5).
const (
	governs   = 0.4
	wantedCut = 0.6
	early     = 0.8
)

// Judge weights the regions of Climb's or Run's points by the wind power of the year there.
func Judge(s WindShaft, load Load, points []WindPoint, year Weibull) (Verdict, error) {
	v := Verdict{Share: map[Region]float64{}}
	if err := s.Check(); err != nil {
		return v, err
	}
	if err := year.Check(); err != nil {
		return v, err
	}
	v.weigh(points, year)
	v.from(points)
	switch {
	case v.TurnsFrom == 0 || v.Share[Still] > governs:
		v.Region = Still
	case v.ChargesFrom == 0 || v.Share[Idling] > governs:
		v.Region = Idling
	case v.Share[Stalled] > governs:
		v.Region = Stalled
	case v.Share[Runaway] > governs:
		v.Region = Runaway
	default:
		v.Region = Charging
	}
	turns := wantedTurns(s, load, year)
	v.EarlyCutIn = v.StallsFrom > 0 && turns < early
	v.mend(turns)
	return v, nil
}

// weigh fills in the shares.
func (v *Verdict) weigh(points []WindPoint, year Weibull) {
	total := 0.0
	for i, p := range points {
		width := p.WindMPS
		if i > 0 {
			width -= points[i-1].WindMPS
		}
		power := year.Density(p.WindMPS) * p.WindMPS * p.WindMPS * p.WindMPS * width
		v.Share[p.Region] += power
		total += power
	}
	for r := range v.Share {
		if total > 0 {
			v.Share[r] /= total
		}
	}
}

// from fills in the winds from which things happen.
func (v *Verdict) from(points []WindPoint) {
	first := func(at *float64, p WindPoint, is bool) {
		if is && *at == 0 {
			*at = p.WindMPS
		}
	}
	for _, p := range points {
		charges := p.Region == Charging || p.Region == Stalled || p.Region == Runaway
		first(&v.TurnsFrom, p, p.Region != Still)
		first(&v.ChargesFrom, p, charges)
		first(&v.StartsFrom, p, charges && !p.Gust)
		first(&v.StallsFrom, p, p.Region == Stalled)
		first(&v.RunsAwayFrom, p, p.Region == Runaway)
		first(&v.JumpsAt, p, p.Jumped)
	}
}

// wantedTurns is the factor on the turns with which the rotor, at its best, reaches cut-in in the
// wanted wind; 0 when it has no cut-in. Cut-in speed goes with one over turns.
func wantedTurns(s WindShaft, load Load, year Weibull) float64 {
	wanted := s.Turns * s.Rotor.RPM(wantedCut*year.Mean, s.Rotor.PeakLambda)
	return load.CutInRPM / wanted
}

// mend lists remedies; turns is the factor that puts cut-in where it is wanted.
func (v *Verdict) mend(turns float64) {
	more, less := 0.0, 0.0
	if turns > 1 {
		more = turns
	} else {
		less = turns
	}
	switch v.Region {
	case Still:
		v.Mends = []Mend{{EasierStart, 0}, {GearDown, 0}}
	case Idling:
		v.Mends = []Mend{{MoreTurns, more}, {GearUp, more}}
	case Runaway:
		v.Mends = []Mend{{LowResistance, 0}, {MoreTurns, more}, {GearUp, more}}
	case Stalled:
		if v.EarlyCutIn {
			v.Mends = []Mend{{FewerTurns, less}, {GearDown, less}, {ChangeOver, 0}, {InLine, 0}}
			return
		}
		v.Mends = []Mend{{InLine, 0}, {ChangeOver, 0}, {FewerTurns, less}, {GearDown, less}}
	}
}
