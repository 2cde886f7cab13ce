package field

import "math"

// InductanceAirGap is the part of a phase's inductance that crosses the gap, H, with all m phases
// carrying current:
//
//	L = m·μ0·D·L·(kw·N)²/(π·g·p²)
//
// A phase alone has 2·μ0·D·L·(kw·N)²/(π·g·p²); m of them with balanced currents add up to m/2 of that.
// A single phase has no others, and gets the factor 2, not 1. phases 1 to 12; boreMM, stackMM above 0
// to 10 000; gapMM effective, including Carter factor, saturation and, under surface magnets, their
// thickness over the recoil permeability, above 0 to 1000; poles 2 to 400; seriesTurns up to 1e6; kw
// above 0 to 1. Iron takes no magnetomotive force and the field is taken as radial: below a pole pitch
// of some ten gaps it reads low. Source: Pyrhönen, Jokinen and Hrabovcová, Design of Rotating
// Electrical Machines, magnetising inductance 2m·μ0·τp·l·(kw·N)²/(π²·p·δ) with τp = πD/2p (from memory;
// the two forms are the same).
func InductanceAirGap(phases, boreMM, stackMM, gapMM, poles, seriesTurns, kw float64) (henries float64, err error) {
	if err := within(ErrInductance, bounds{"phases", phases, 1, 12}, bounds{"bore, mm", boreMM, 0.1, 1e4}, bounds{"stack, mm", stackMM, 0.1, 1e4},
		bounds{"effective gap, mm", gapMM, 0.01, 1e3}, bounds{"poles", poles, 2, 400},
		bounds{"turns in series", seriesTurns, 0.5, 1e6}, bounds{"winding factor", kw, 1e-3, 1}); err != nil {
		return 0, err
	}
	n, p := kw*seriesTurns, poles/2
	together := phases
	if phases == 1 {
		together = 2
	}
	return together * Mu0 * boreMM * stackMM * 1e-3 * n * n / (math.Pi * gapMM * p * p), nil
}

// InductanceSlot is the slot leakage inductance of a phase, H:
//
//	L = 2·μ0·L·N²/(p·q)·λ
//
// stackMM above 0 to 10 000; polePairs 1 to 200; slotsPerPolePhase q above 0 to 50, may be fractional;
// permeance λ of the slot's shape, 0 to 50 (about 1 to 2.5 for a small semi-closed slot; common
// practice, no source). Source: Pyrhönen et al., slot leakage 4m/Q·μ0·l·N²·λ with Q = 2pqm (from
// memory).
func InductanceSlot(stackMM, seriesTurns, polePairs, slotsPerPolePhase, permeance float64) (henries float64, err error) {
	if err := within(ErrInductance, bounds{"stack, mm", stackMM, 0.1, 1e4}, bounds{"turns in series", seriesTurns, 0.5, 1e6},
		bounds{"pole pairs", polePairs, 1, 200}, bounds{"slots per pole and phase", slotsPerPolePhase, 0.01, 50},
		bounds{"slot permeance", permeance, 0, 50}); err != nil {
		return 0, err
	}
	return 2 * Mu0 * stackMM * 1e-3 * seriesTurns * seriesTurns / (polePairs * slotsPerPolePhase) * permeance, nil
}

// EndPermeance is the usual permeance of end turns per length, where their shape is not known: Pyrhönen
// et al. give 0.2 to 0.5 by shape (from memory).
const EndPermeance = 0.3

// EndLeakage is the end-turn leakage inductance of a phase, H, an estimate:
//
//	L = 2·μ0·N²·l_end·λ/p
//
// endMM is the wire of half a turn outside the iron at one end, mean turn over two less the stack, 0 to
// 10 000; permeance 0 to 5, EndPermeance where not known. Source: Pyrhönen et al., 4m/Q·q·N²·μ0·l_w·λ_w
// with Q = 2pqm (from memory).
func EndLeakage(endMM, seriesTurns, polePairs, permeance float64) (henries float64, err error) {
	if err := within(ErrInductance, bounds{"end turn, mm", endMM, 0, 1e4}, bounds{"turns in series", seriesTurns, 0.5, 1e6},
		bounds{"pole pairs", polePairs, 1, 200}, bounds{"end permeance", permeance, 0, 5}); err != nil {
		return 0, err
	}
	return 2 * Mu0 * seriesTurns * seriesTurns * endMM * 1e-3 * permeance / polePairs, nil
}
