package wiretable

// Words for the origin of a figure, by standard and status of its row.
var nemaBasis = map[rowStatus]string{
	published:         "MW 1000 table",
	maximumFromMemory: "MW 1000 table, maximum from memory",
	maximumComputed:   "MW 1000 table, maximum by formula",
	fromMemory:        "MW 1000, from memory",
}

var iecBasis = map[rowStatus]string{
	published:  "IEC 60317-0-1 table, nominal midway",
	fromMemory: "IEC 60317-0-1, from memory, nominal midway",
	computed:   "IEC 60317-0-1 rule for intermediate sizes, nominal midway",
}

// fillCurves turns the two tables into one curve for each build with enamel.
func fillCurves() (c [BareWire]curve) {
	for i := range c {
		c[i] = curve{
			between: "between rows of MW 1000",
			thinner: "extrapolated: thinner than MW 1000 goes in this build, its ratio held",
			thicker: "extrapolated: thicker than MW 1000 goes in this build, its increase held",
		}
	}
	for _, row := range nemaRows {
		c[Single].addNEMA(row.gauge, row.single)
		c[Heavy].addNEMA(row.gauge, row.heavy)
		c[Triple].addNEMA(row.gauge, row.triple)
	}
	for grade, b := range []Build{Grade1, Grade2, Grade3} {
		c[b].between = "between rows of IEC 60317-0-1, nominal midway"
		c[b].thinner = "extrapolated: thinner than IEC 60317-0-1 goes here, its ratio held"
		c[b].thicker = "extrapolated: thicker than IEC 60317-0-1 goes, its increase held"
		for _, row := range iecRows {
			c[b].addIEC(row, grade)
		}
	}
	return c
}

func (c *curve) addNEMA(gauge int, cell nemaCell) {
	if cell.nominal == 0 {
		return
	}
	const mm = mmPerMil / 100
	c.points = append(c.points, point{
		bareMM:    float64(awgHundredthMil[gauge-awgFirst/2]) * mm,
		nominalMM: float64(cell.nominal) * mm,
		maxMM:     float64(cell.maximum) * mm,
		basis:     nemaBasis[cell.status],
	})
}

func (c *curve) addIEC(row iecRow, grade int) {
	const mm = 1e-3
	least := row.bare + row.increase[grade]
	c.points = append(c.points, point{
		bareMM:    float64(row.bare) * mm,
		nominalMM: float64(least+row.maximum[grade]) / 2 * mm,
		maxMM:     float64(row.maximum[grade]) * mm,
		basis:     iecBasis[row.status],
	})
}
