package wiretable

import (
	"math"
	"strconv"
	"strings"
)

const (
	awgRange = "American gauges run from 4/0 (0000) to 50, in whole and half sizes like 18.5 from 0 on"
	swgRange = "imperial standard gauges run from 7/0 to 50, in whole sizes"
)

// parseAWG reads the number of an American gauge.
func parseAWG(digits string) (Gauge, string) {
	if n, ok := noughts(digits); ok {
		if 2*n < awgFirst {
			return Gauge{}, awgRange
		}
		return Gauge{system: AWG, n: int32(2 * n)}, ""
	}
	x, ok := plainNumber(digits)
	if !ok {
		return Gauge{}, usualForms
	}
	if 2*x != math.Trunc(2*x) || 2*x > awgLast {
		return Gauge{}, awgRange
	}
	return Gauge{system: AWG, n: int32(2 * x)}, ""
}

// parseSWG reads the number of an imperial standard gauge.
func parseSWG(digits string) (Gauge, string) {
	if n, ok := noughts(digits); ok {
		if n < swgFirst {
			return Gauge{}, swgRange
		}
		return Gauge{system: SWG, n: int32(n)}, ""
	}
	x, ok := plainNumber(digits)
	if !ok {
		return Gauge{}, usualForms
	}
	if x != math.Trunc(x) || x > swgLast {
		return Gauge{}, swgRange
	}
	return Gauge{system: SWG, n: int32(x)}, ""
}

// noughts reads the numbers beyond 1: "0" and "1/0" are 0, "00" and "2/0" are
// -1, and so on.
func noughts(digits string) (int, bool) {
	if count, found := strings.CutSuffix(digits, "/0"); found {
		n, err := strconv.Atoi(count)
		if err != nil || n < 1 || n > 9 || len(count) != 1 {
			return 0, false
		}
		return 1 - n, true
	}
	if digits == "" || strings.Trim(digits, "0") != "" {
		return 0, false
	}
	return 1 - len(digits), true
}

// parseIEC reads a size of IEC 60317-0-1, which must be one of its table.
func parseIEC(digits string) (Gauge, string) {
	g, fix := parseLength(digits, IEC, nmPerMM)
	if fix != "" {
		return Gauge{}, fix
	}
	for _, row := range iecRows {
		if row.bare*nmPerMicrometre == g.n {
			return g, ""
		}
	}
	near := NearestToMM(g.typedMM(), IEC)
	if near.IsZero() {
		return Gauge{}, "IEC 60317-0-1 sizes run from 0.018 to 5 mm"
	}
	return Gauge{}, "IEC 60317-0-1 has no such size; the nearest is \"" + near.String() + "\", or leave out IEC for a measured diameter"
}
