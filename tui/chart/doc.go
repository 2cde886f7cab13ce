// Package chart draws pictures and charts in terminal cells: braille dots, two across and four down in
// each cell, with text on top. As cells are about twice as high as wide, the dots are square. A theme
// without Unicode gets plain characters from the same dots. It knows nothing of what it draws.
//
//	c := chart.New(t, 40, 20)
//	c.ViewSquare(-10, -10, 10, 10) // millimetres, say
//	c.Disc(chart.XY{0, 0}, 9, kit.Border)
//	c.Text(3, 0, "bore", kit.Label)
//	lines := c.Lines()
//
//	lines = chart.Chart{
//		Width: 80, Height: 20,
//		X: chart.Axis{Label: "speed", Unit: "rpm"},
//		Y: chart.Axis{Label: "current", Unit: "A", Zero: true},
//		Series: []chart.Series{{Letter: "A", Name: "48 turns", Points: points}},
//		VLines: []chart.Limit{{At: 310, Label: "cut-in A"}},
//	}.Lines(t)
package chart
